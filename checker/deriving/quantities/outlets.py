"""Whether the drain can run out by gravity: fall there is against fall the leg takes."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, quantity
from checker.formulas import levels, pipe_run

USUAL_LEG_SLOPE = 1 / 96


@quantity(
    "outlets.each.fall_available",
    title="fall from the drain to its outlet",
    kind="length",
    needs=("drain.lowest_invert", "outlets.each.invert"),
    rises_with=("drain.lowest_invert",),
    falls_with=("outlets.each.invert",),
    formula="lowest invert of the drain - invert of the outlet",
    source="geometry",
)
def fall_available(lowest: float, outlet: float) -> float:
    """Return how much lower the outlet is than the drain, negative when it is higher [m]."""
    return levels.height_above(lowest, outlet)


@quantity(
    "outlets.each.fall_needed",
    title="fall that the outlet leg takes",
    kind="length",
    needs=("outlets.each.leg_length", "outlets.each.leg_slope?"),
    rises_with=("outlets.each.leg_length", "outlets.each.leg_slope"),
    formula="length x slope of the leg, 1/8 in/ft unless another is shown",
    source="geometry; common practice for the slope",
)
def fall_needed(length: float, slope: float | None) -> float | Assumed:
    """Return the drop along the outlet leg [m]."""
    if slope is not None:
        return pipe_run.fall(slope, length)
    return Assumed(pipe_run.fall(USUAL_LEG_SLOPE, length), "the leg falls 1/8 in/ft")


@quantity(
    "outlets.each.fall_left",
    title="fall to spare at the outlet",
    kind="length",
    needs=("outlets.each.fall_available", "outlets.each.fall_needed"),
    rises_with=("outlets.each.fall_available",),
    falls_with=("outlets.each.fall_needed",),
    formula="fall from drain to outlet - fall that the leg takes",
    source="geometry",
)
def fall_left(available: float, needed: float) -> float:
    """Return the fall to spare, negative when the outlet is too high [m]."""
    return available - needed
