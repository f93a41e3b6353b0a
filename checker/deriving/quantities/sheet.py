"""The drainage sheet: how far it reaches down, and whether its water can reach the pipe."""

from __future__ import annotations

from checker.deriving.quantities.grade import PerSide, least_over_grade
from checker.deriving.quantity import NotShown, quantity
from checker.formulas import levels, stone


@quantity(
    "sheet.gap_to_stone",
    title="soil between the bottom of the sheet and the stone",
    kind="length",
    needs=("sheet.bottom_level", "stone.surface_level"),
    rises_with=("sheet.bottom_level",),
    falls_with=("stone.surface_level",),
    formula="bottom of the sheet - top of the stone",
    source="geometry",
)
def gap_to_stone(bottom: float, stone_top: float) -> float:
    """Return the gap under the sheet, negative when it hangs into the stone [m]."""
    return stone.soil_between(bottom, stone_top)


@quantity(
    "sheet.below_joint",
    title="sheet below the joint of footing and wall",
    kind="length",
    needs=("footing.top_level", "sheet.bottom_level"),
    rises_with=("footing.top_level",),
    falls_with=("sheet.bottom_level",),
    formula="top of the footing - bottom of the sheet",
    source="geometry",
)
def below_joint(footing_top: float, bottom: float) -> float:
    """Return how far the sheet reaches under the joint, negative above it [m]."""
    return levels.height_above(footing_top, bottom)


@quantity(
    "sheet.top_over_grade",
    title="top of the sheet over the ground at the wall",
    kind="length",
    needs=(
        "sheet.top_level?",
        "levels.finished_grade_at_wall?",
        "grade.sides.all.sheet_top?",
        "grade.sides.all.grade_at_wall?",
    ),
    rises_with=("sheet.top_level", "grade.sides.all.sheet_top"),
    falls_with=("levels.finished_grade_at_wall", "grade.sides.all.grade_at_wall"),
    formula="top of the sheet - finished grade at the wall, on the side where it is least",
    source="geometry",
)
def top_over_grade(
    top: float | None, ground: float | None, tops: PerSide, grounds: PerSide
) -> float:
    """Return how far the sheet ends above the ground, negative when it is buried [m]."""
    return least_over_grade(top, ground, tops, grounds, "sheet.top_level")


@quantity(
    "sheet.unbroken_path",
    title="unbroken path from sheet through stone to pipe",
    kind="yes_no",
    needs=("sheet.reaches_stone?", "sheet.gap_to_stone?", "drain.path_to_pipe?"),
    formula="the sheet reaches the stone and the stone covers the pipe",
    source="common practice",
)
def unbroken_path(reaches: bool | None, gap: float | None, short: float | None) -> bool:
    """Say whether water behind the sheet meets nothing but stone on its way to the pipe."""
    if reaches is False or (gap is not None and gap > 0) or (short is not None and short > 0):
        return False
    if gap is None and reaches is None:
        raise NotShown("that the sheet reaches the stone", "sheet.bottom_level", "stone.top_level")
    if short is None:
        raise NotShown("that the stone covers the pipe", "stone.top_level", "stone.cover")
    return True
