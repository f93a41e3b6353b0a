"""Finished ground at the wall: its level, its slope away, and what settling leaves of it."""

from __future__ import annotations

from collections.abc import Sequence

from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import backfill, grading

PerSide = tuple[tuple[str, float | None], ...] | None

GRADE_NEEDS = ("levels.finished_grade_at_wall?", "grade.sides.all.grade_at_wall?")
GRADE_PATHS = ("levels.finished_grade_at_wall", "grade.sides.all.grade_at_wall")


def on_each_side(general: float | None, sides: PerSide, path: str) -> list[float]:
    """Return a level on every side: the side's own, or else the one that means all.

    Without listed sides there is one answer, the general one. Raises NotShown naming `path` when
    a side has neither.
    """
    own: Sequence[float | None] = [level for _, level in sides] if sides else [None]
    levels = [level if level is not None else general for level in own]
    known = [level for level in levels if level is not None]
    if len(known) < len(levels):
        raise NotShown("a level on every side", path)
    return known


def least_over_grade(
    top: float | None, ground: float | None, tops: PerSide, grounds: PerSide, path: str
) -> float:
    """Return by how much a top edge clears the ground on the worst side [m].

    Raises NotShown naming `path` or the finished grade when a side lacks one of them.
    """
    edges = on_each_side(top, tops, path)
    grades = on_each_side(ground, grounds, GRADE_PATHS[0])
    return min(edge - grade for edge, grade in zip(edges, grades, strict=True))


@quantity(
    "grade.highest_at_wall",
    title="highest finished ground at the wall",
    kind="level",
    needs=GRADE_NEEDS,
    rises_with=GRADE_PATHS,
    formula="highest of the sides, each its own or the level that means all",
    source="geometry",
)
def highest_at_wall(general: float | None, sides: PerSide) -> float:
    """Return the highest ground at the wall [m]."""
    return max(on_each_side(general, sides, GRADE_PATHS[0]))


@quantity(
    "grade.lowest_at_wall",
    title="lowest finished ground at the wall",
    kind="level",
    needs=GRADE_NEEDS,
    rises_with=GRADE_PATHS,
    formula="lowest of the sides, each its own or the level that means all",
    source="geometry",
)
def lowest_at_wall(general: float | None, sides: PerSide) -> float:
    """Return the lowest ground at the wall [m]."""
    return min(on_each_side(general, sides, GRADE_PATHS[0]))


@quantity(
    "grade.sides.each.slope",
    title="slope of the ground away from the wall",
    kind="slope",
    needs=("grade.sides.each.fall", "grade.sides.each.in_distance"),
    rises_with=("grade.sides.each.fall",),
    formula="fall / distance",
    source="definition of slope",
)
def slope(fall: float, distance: float) -> float:
    """Return the slope on one side [-], negative where the ground falls to the wall."""
    return grading.slope(fall, distance)


@quantity(
    "grade.sides.each.settlement",
    title="settling of the fill at the wall",
    kind="length",
    needs=(
        "grade.sides.each.expected_settlement?",
        "grade.sides.each.grade_at_wall?",
        "levels.finished_grade_at_wall?",
        "footing.top_level?",
    ),
    rises_with=(
        "grade.sides.each.expected_settlement",
        "grade.sides.each.grade_at_wall",
        "levels.finished_grade_at_wall",
    ),
    falls_with=("footing.top_level",),
    formula="the settling shown, else 5 % of the fill over the top of the footing",
    source="common practice, from memory; no measured figure was found",
)
def settlement(
    shown: float | None, own: float | None, general: float | None, footing_top: float | None
) -> float | Assumed:
    """Return how far the ground at the wall may sink on one side [m]."""
    if shown is not None:
        return shown
    ground = own if own is not None else general
    if ground is None or footing_top is None:
        lacking = GRADE_PATHS[0] if ground is None else "levels.footing_top"
        raise NotShown(
            "the settling to expect, or the height of fill",
            "grade.sides.each.expected_settlement",
            lacking,
        )
    fill = backfill.unbalanced_height(ground, footing_top)
    return Assumed(grading.settlement(fill), "5 % of the height of fill, a common guess")


@quantity(
    "grade.sides.each.slope_settled",
    title="slope of the ground once the fill has settled",
    kind="slope",
    needs=(
        "grade.sides.each.fall",
        "grade.sides.each.settlement",
        "grade.sides.each.in_distance",
    ),
    rises_with=("grade.sides.each.fall",),
    falls_with=("grade.sides.each.settlement",),
    formula="(fall - settling) / distance",
    source="geometry",
)
def slope_settled(fall: float, sinks: float, distance: float) -> float:
    """Return the slope that settling leaves on one side [-]."""
    return grading.settled_slope(fall, sinks, distance)


@quantity(
    "grade.reveal_least",
    title="least height of the wall's top over the finished grade",
    kind="length",
    needs=("levels.top_of_wall", "grade.highest_at_wall"),
    rises_with=("levels.top_of_wall",),
    falls_with=("grade.highest_at_wall",),
    formula="top of the wall - highest finished grade at the wall",
    source="geometry",
)
def reveal_least(top: float, grade: float) -> float:
    """Return how much of the wall shows where the ground is highest [m]."""
    return top - grade
