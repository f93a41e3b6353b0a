"""Numbered notes: which finding belongs to which place, and the legend that says what it is.

The numbers are those of the review as text, so that a sheet and a review can be read together.
"""

from __future__ import annotations

from collections.abc import Container, Mapping
from typing import NamedTuple

from checker.judging.review_data import NOT_MET, Compared, Finding, Review
from checker.showing.drawing.svg import words
from checker.showing.finding_text import named
from checker.showing.text import by_weight

PAPER = "paper"

Places = Mapping[str, tuple[str, ...]]

# Rule, or the section it begins with, and the places it can stand at: the first that is drawn.
PLACES: Places = {
    "areaways": ("well",),
    "backfill": ("fill",),
    "backfill.before-brace": ("brace",),
    "backfill.cap": ("cap",),
    "backfill.no-base-restraint": ("slab_edge", "joint"),
    "backfill.settlement-plan": ("cap",),
    "backfill.too-soon": ("wall",),
    "backfill.wall-design": ("wall",),
    "backfill.zone-width": ("zone",),
    "backfill.clay-at-wall": ("zone",),
    "coat": ("coat",),
    "coat.absent": ("coat",),
    "coat.bottom-short": ("coat_bottom",),
    "coat.over-joint": ("coat_bottom",),
    "coat.top-short": ("coat_top",),
    "deviations": (PAPER,),
    "documents": (PAPER,),
    "drain": ("pipe",),
    "drain.above-slab": ("crown",),
    "drain.below-bearing": ("trench",),
    "drain.entry-height": ("entry", "holes"),
    "drain.on-footing": ("pipe",),
    "drain.ponding": ("pipe_low", "invert"),
    "drain.ponding-full": ("pipe_low", "invert"),
    "drain.flat": ("pipe_low", "invert"),
    "drain.too-far": ("pipe_low", "invert"),
    "drain.contradiction": ("pipe_low", "invert"),
    "drain.vertical-budget": ("crown",),
    "drain.trench-by-footing": ("trench",),
    "drain.under-building": ("pipe",),
    "drain.roof-tied": ("roof",),
    "excavation": ("bank",),
    "excavation.bottom-width": ("hole",),
    "excavation.edge-fall": ("bank_edge",),
    "excavation.spoil-setback": ("bank_edge",),
    "excavation.no-room": ("bank_edge",),
    "excavation.near-structure": ("bank_edge",),
    "excavation.utilities": ("bank_edge",),
    "excavation.water": ("hole",),
    "fabrics": ("fabric",),
    "fabrics.closure": ("fabric_top",),
    "fits": (PAPER,),
    "fits.run-long": ("pipe_low", "invert"),
    "footing": ("footing",),
    "footing.break-missing": ("break_over",),
    "footing.break-approval": ("footing_base",),
    "footing.break-continuity": ("footing_base",),
    "footing.break-torn": ("footing_base",),
    "footing.frost": ("footing_base",),
    "footing.frost-deeper": ("footing_base",),
    "footing.shallow": ("footing_base",),
    "footing.subgrade": ("footing_base",),
    "footing.frozen-or-wet": ("footing_base",),
    "footing.sleeve-missing": ("sleeve", "footing"),
    "grade": ("ground",),
    "grade.reveal": ("grade_at_wall",),
    "holds": (PAPER,),
    "inside_drain": ("inside_drain", "base"),
    "insulation": ("insulation", "wall"),
    "joint": ("joint",),
    "joint.penetration": ("penetration", "wall"),
    "joint.cold-joint": ("wall",),
    "levels": (PAPER,),
    "levels.contradiction": ("inside", PAPER),
    "levels.floor-in-water": ("slab",),
    "levels.floor-near-water": ("slab",),
    "levels.high-water-missing": ("water", PAPER),
    "outlets": ("outlet",),
    "record": (PAPER,),
    "roof": ("roof",),
    "sheet": ("sheet",),
    "sheet.bottom-short": ("sheet_bottom",),
    "sheet.stone-gap": ("sheet_bottom",),
    "sheet.top-level": ("sheet_top",),
    "sheet.top-seal": ("sheet_top",),
    "site": ("ground",),
    "site.mottling-unread": ("water", "bearing"),
    "site.water-in-hole": ("hole",),
    "site.iron-slime": ("pipe",),
    "site.report-conflict": (PAPER,),
    "slab": ("slab",),
    "slab.base": ("base", "slab"),
    "slab.base-link": ("base", "slab"),
    "slab.base-stone-fine": ("base", "slab"),
    "slab.capillary-break": ("base", "slab"),
    "slab.edge-open": ("slab_edge", "joint"),
    "slab.retarder": ("retarder", "slab"),
    "slab.retarder-buried": ("retarder", "slab"),
    "slab.retarder-lap": ("retarder", "slab"),
    "soil": ("bearing",),
    "stone": ("stone",),
    "stone.bedding": ("bedding",),
    "stone.beyond-footing": ("stone_side", "stone"),
    "stone.side": ("stone_side", "stone"),
    "stone.cover": ("stone_top", "stone"),
    "stone.above-footing": ("stone_top", "stone"),
    "sump": ("outlet",),
    "upper_drain": ("upper_drain", "zone"),
    "variances": (PAPER,),
    "wall": ("wall",),
    "wells": ("well",),
}  # fmt: skip


class Keynote(NamedTuple):
    """A finding that is not met, under its number in the review."""

    number: int
    finding: Finding

    @property
    def title(self) -> str:
        """Return what is wrong, and with which item."""
        return named(self.finding.title, self.finding.item)

    @property
    def figures(self) -> list[str]:
        """Return what is shown, what is needed and how far off it is, comparison by comparison."""
        return [_figures(one) for one in self.finding.compared if one.outcome == NOT_MET]


def keynotes_of(review: Review) -> list[Keynote]:
    """Return what is not met, numbered as the review numbers it."""
    return [Keynote(at, one) for at, one in enumerate(by_weight(review.of(NOT_MET)), start=1)]


def place_of(finding: Finding, drawn: Container[str], places: Places = PLACES) -> str:
    """Return the place a finding belongs to among those drawn; the paper when it has none."""
    candidates = places.get(finding.rule) or places.get(finding.rule.partition(".")[0], ())
    for place in candidates:
        one = f"{place} {finding.item}"
        if one in drawn:
            return one
        if place in drawn:
            return place
    return PAPER


def at_places(
    keynotes: list[Keynote], drawn: Container[str], places: Places = PLACES
) -> dict[str, tuple[int, ...]]:
    """Return the numbers that stand at each place, in their order."""
    placed: dict[str, tuple[int, ...]] = {}
    for note in keynotes:
        place = place_of(note.finding, drawn, places)
        placed[place] = (*placed.get(place, ()), note.number)
    return placed


def _figures(compared: Compared) -> str:
    parts = [
        f"shown {compared.shown}" if compared.shown else "",
        f"needed {compared.needed}" if compared.needed else "",
        f"off by {compared.off_by}" if compared.off_by else "",
    ]
    return words("; ".join(part for part in parts if part))
