"""The levels a drawing is built on: those that are shown, and where the others are dashed in."""

from __future__ import annotations

from dataclasses import dataclass

from checker.showing.drawing.figures import USUAL, Figures, Measure

# What makes a section one that can be drawn to scale: without any of them there is none.
_BASIC = (
    "footing.top_level", "footing.underside_level", "slab.underside_level", "slab.top_level",
    "levels.top_of_wall", "grade.highest_at_wall",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Levels:
    """Levels [m] on the datum of the spec; one that is not shown stands where it usually would."""

    top_of_wall: Measure
    grade: Measure
    floor_top: Measure
    slab_underside: Measure
    footing_top: Measure
    footing_underside: Measure
    to_scale: bool


def levels_of(figures: Figures) -> Levels:
    """Return the levels of a spec.

    What is missing is put at a usual distance from its nearest neighbour that is shown.
    """
    find = figures.find
    ground = find("grade.highest_at_wall") or find("levels.finished_grade_at_wall")
    slab = find("slab.underside_level")
    footing = find("footing.top_level") or _first_of(
        find("footing.underside_level"), USUAL["footing.depth"],
        slab, 0.0,
        find("slab.top_level"), -figures.size("slab.depth").value,
        ground, -USUAL["height over floor"],
        find("levels.top_of_wall"), -USUAL["height over floor"] - USUAL["wall over ground"],
    )  # fmt: skip
    underside = find("footing.underside_level") or _off(
        footing, -figures.size("footing.depth").value
    )
    thickness = figures.size("slab.depth").value
    floor = find("slab.top_level")
    slab = slab or (_off(floor, -thickness) if floor else _off(footing, 0.0))
    floor = floor or _off(slab, thickness)
    height = find("wall.height")
    top = find("levels.top_of_wall") or (_off(footing, height.value) if height else None)
    ground = ground or _off(top or floor, -USUAL["wall over ground"] if top else _storey(figures))
    top = top or _off(ground, USUAL["wall over ground"])
    basic = any(find(path) for path in _BASIC)
    return Levels(top, ground, floor, slab, footing, underside, basic)


def _storey(figures: Figures) -> float:
    crawl = figures.word("wall.encloses") == "crawl_space"
    return USUAL["height over floor"] * (0.35 if crawl else 1.0)


def _off(base: Measure | None, by: float) -> Measure:
    return Measure((base.value if base else 0.0) + by, shown=False)


def _first_of(*pairs: Measure | float | None) -> Measure:
    for base, by in zip(pairs[::2], pairs[1::2], strict=True):
        if isinstance(base, Measure) and isinstance(by, float):
            return _off(base, by)
    return Measure(0.0, shown=False)
