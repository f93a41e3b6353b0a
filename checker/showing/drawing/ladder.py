"""All levels on one axis: the whole wall, and enlarged the room in which the pipe must lie."""

from __future__ import annotations

from typing import NamedTuple

from checker.judging.review_data import Review
from checker.showing.drawing import sheet
from checker.showing.drawing.callouts import Callout, Column, draw_callouts
from checker.showing.drawing.dimensions import scale_bar, view_title, water_mark
from checker.showing.drawing.figures import NOT_SHOWN, Figures, Measure
from checker.showing.drawing.hatches import fill_of
from checker.showing.drawing.keynotes import PAPER, Places, at_places, keynotes_of
from checker.showing.drawing.view import View, fitting

_TITLE = 24.0
_BAND = 40.0  # width of the axis with the pipe in it


class Rung(NamedTuple):
    """One level: its place for keynotes, what it is, and whether it belongs to the building."""

    place: str
    title: str
    level: Measure
    building: bool
    water: bool = False


_RUNGS = (
    ("top_of_wall", "top of wall", "levels.top_of_wall", True),
    ("grade", "finished grade", "grade.highest_at_wall", True),
    ("floor", "top of floor", "slab.top_level", True),
    ("slab", "underside of slab", "slab.underside_level", True),
    ("footing", "top of footing", "footing.top_level", True),
    ("base", "underside of footing", "footing.underside_level", True),
    ("coat_top", "top of coat", "coat.top_level", False),
    ("sheet_top", "top of sheet", "sheet.top_level", False),
    ("zone", "top of free-draining fill", "backfill.free_draining_top", False),
    ("stone_top", "top of stone", "stone.surface_level", False),
    ("coat_bottom", "bottom of coat", "coat.bottom_level", False),
    ("sheet_bottom", "bottom of sheet", "sheet.bottom_level", False),
    ("crown", "crown of the pipe, highest", "drain.crown_high", False),
    ("entry", "water enters the pipe", "drain.entry_level", False),
    ("invert", "invert, highest", "drain.highest_invert", False),
    ("pipe_low", "invert, lowest", "drain.lowest_invert", False),
    ("trench", "bottom of trench, lowest", "drain.trench_bottom_low", False),
    ("water", "seasonal high water", "levels.seasonal_high_water", False),
    ("seen", "water seen", "levels.water_seen", False),
    ("sump", "inlet of the sump", "sump.inlet_invert", False),
)

LADDER_PLACES: Places = {
    "coat.bottom-short": ("coat_bottom",),
    "coat.over-joint": ("coat_bottom",),
    "coat.top-short": ("coat_top",),
    "drain.above-slab": ("crown",),
    "drain.on-footing": ("crown",),
    "drain.below-bearing": ("trench",),
    "drain.entry-height": ("entry",),
    "drain.ponding": ("pipe_low",),
    "drain.flat": ("pipe_low",),
    "drain.contradiction": ("pipe_low",),
    "drain.vertical-budget": ("crown", "slab"),
    "grade.reveal": ("grade",),
    "levels": ("water", "slab"),
    "levels.contradiction": ("footing", "slab"),
    "outlets.gravity": ("outlet", "pipe_low"),
    "sheet.bottom-short": ("sheet_bottom",),
    "sheet.stone-gap": ("sheet_bottom", "stone_top"),
    "sheet.top-level": ("sheet_top",),
    "slab.uplift": ("slab",),
    "stone.cover": ("stone_top",),
    "stone.above-footing": ("stone_top",),
    "stone.bedding": ("trench",),
    "sump": ("sump",),
}


def rungs_of(figures: Figures) -> list[Rung]:
    """Return every level that is shown or follows from what is, the highest first."""
    rungs = []
    for place, title, path, building in _RUNGS:
        level = figures.find(path)
        if level is not None:
            rungs.append(Rung(place, title, level, building, place in ("water", "seen", "entry")))
    for item in figures.items("outlets"):
        level = figures.find("outlets.each.invert", item)
        if level is not None:
            rungs.append(Rung(f"outlet {item}", f"outlet {item}", level, False))
    return sorted(rungs, key=lambda rung: -rung.level.value)


def draw_ladder(sheets: sheet.Sheets, figures: Figures, review: Review) -> None:
    """Put the levels on a new sheet."""
    _Ladder(sheets, figures, review).draw()


class _Ladder:
    def __init__(self, sheets: sheet.Sheets, figures: Figures, review: Review) -> None:
        self.canvas = sheets.new()
        self.sheets, self.figures, self.review = sheets, figures, review
        self.rungs = rungs_of(figures)

    def draw(self) -> None:
        """Draw both axes and the sheet round them."""
        keynotes = keynotes_of(self.review)
        self.numbers = at_places(keynotes, {rung.place for rung in self.rungs}, LADDER_PLACES)
        middle = sheet.LEFT + 210
        scales = "no level is shown"
        if self.rungs:
            foot = self._foot()
            whole = self._axis(sheet.LEFT, middle, self.rungs, 1, "All levels", foot)
            near = self._axis(middle, sheet.RIGHT, foot, 2, "Foot of the wall", foot)
            scales = f"{whole.scale.name} and {near.scale.name}"
            self.canvas.line((middle, sheet.TOP), (middle, sheet.BOTTOM), "thin")
        else:
            self.canvas.text((sheet.LEFT + 20, sheet.TOP + 40), "No level is shown.", size=11,
                             bold=True)  # fmt: skip
        here = {n for place, some in self.numbers.items() if place != PAPER for n in some}
        page = sheet.Page(
            "levels", scales, [note for note in keynotes if note.number in here],
            ("window", "water"), self._notes(), lines=False,
        )  # fmt: skip
        self.sheets.finish(self.canvas, page, sheet.job_of(self.figures, self.review))

    def _foot(self) -> list[Rung]:
        """Return the levels near the joint, which the second axis enlarges."""
        centre = next((r.level.value for r in self.rungs if r.place == "footing"), None)
        if centre is None:
            centre = self.rungs[len(self.rungs) // 2].level.value
        near = [rung for rung in self.rungs if abs(rung.level.value - centre) < 0.62]
        return near or self.rungs

    def _axis(
        self, left: float, right: float, rungs: list[Rung], number: int, title: str,
        foot: list[Rung],
    ) -> View:  # fmt: skip
        high, low = rungs[0].level.value, rungs[-1].level.value
        height = sheet.BOTTOM - sheet.TOP - _TITLE - 40
        span = max(high - low, 0.05)
        scale = fitting(0.0, span, (1.0, height), self.figures.spec.system)
        spare = height / scale.per_metre - span
        side = (right - left - _BAND) / 2
        view = View(left + side, sheet.TOP + 20, _BAND, height, 0.0, high + spare / 2, scale)
        enlarged = number == 2
        self._band(view, "foot" if enlarged else "whole")
        notes: tuple[list[Callout], list[Callout]] = ([], [])
        for rung in rungs:
            if enlarged or rung not in foot or rung.place in ("footing", "base", "slab"):
                self._rung(view, rung, notes, enlarged)
        for one, where in zip(notes, (left + 6, view.right + 26), strict=True):
            column = Column(where, view.top - 12, side - 32, view.bottom + 12,
                            leaders_left=where > view.left)  # fmt: skip
            draw_callouts(self.canvas, one, column)
        y = sheet.BOTTOM - 9
        view_title(self.canvas, (left + 16, y), number, title, scale.name)
        if enlarged:
            scale_bar(self.canvas, (right - 14, y), view, self.figures.spec.system)
        return view

    def _rung(
        self, view: View, rung: Rung, notes: tuple[list[Callout], list[Callout]], enlarged: bool
    ) -> None:
        y = view.y(rung.level.value)
        name = f"{'foot' if enlarged else 'whole'}-{rung.place}"
        ends = (view.left - 8, view.right) if rung.building else (view.left, view.right + 8)
        self.canvas.line((ends[0], y), (ends[1], y), "water" if rung.water else
                         "cut" if rung.building else "edge", name=name)  # fmt: skip
        if rung.water:
            water_mark(self.canvas, (view.right - 6, y))
        numbers = self.numbers.get(rung.place, ())
        # Each keynote stands once: on the axis that enlarges its level, if one does.
        shown_there = not enlarged and rung in self._foot()
        at = (ends[0], y) if rung.building else (ends[1], y)
        text = f"{rung.title} {rung.level.text}"
        note = Callout(rung.place, at, text, () if shown_there else numbers)
        notes[0 if rung.building else 1].append(note)

    def _band(self, view: View, part: str) -> None:
        """Shade the room between slab and bearing, and draw the pipe at its two ends in it."""
        canvas, find = self.canvas, self.figures.find
        canvas.line((view.left, view.top - 8), (view.left, view.bottom + 8), "thin")
        canvas.line((view.right, view.top - 8), (view.right, view.bottom + 8), "thin")
        slab, base = find("slab.underside_level"), find("footing.underside_level")
        if slab and base and slab.value > base.value:
            top = max(view.y(slab.value), view.top - 8)
            bottom = min(view.y(base.value), view.bottom + 8)
            canvas.rect((view.left, top), (_BAND, max(bottom - top, 0.0)), "edge",
                        fill=fill_of("window"), name=f"{part}-window")  # fmt: skip
        crown, low = find("drain.crown_high"), find("drain.outside_bottom_low")
        od = find("drain.pipe_outside_diameter")
        if crown and od:
            self._pipe(view, view.left + 4, crown.value, od.value, f"{part}-pipe-high")
        if low and od:
            self._pipe(
                view, view.left + _BAND / 2 + 1, low.value + od.value, od.value, f"{part}-pipe-low"
            )

    def _pipe(self, view: View, x: float, crown: float, od: float, name: str) -> None:
        tall = od * view.scale.per_metre
        if view.y(crown) < view.top - 8 or view.y(crown) + tall > view.bottom + 8:
            return
        self.canvas.rect((x, view.y(crown)), (_BAND / 2 - 5, tall), "edge", fill="#fff",
                         name=name)  # fmt: skip

    def _notes(self) -> list[str]:
        notes = ["Hatched: the room for bedding, pipe and fall, from the underside of the slab "
                 "down to the underside of the footing."]  # fmt: skip
        if self.figures.find("drain.crown_high"):
            notes.append("In it the pipe at its highest corner (left) and its lowest (right).")
        room, spare = self.figures.find("drain.window"), self.figures.find("drain.window_spare")
        if room:
            left = spare.text if spare else NOT_SHOWN
            notes.append(f"Room for fall: {room.text}; left over: {left}.")
        return notes
