"""What the fabric round the drain takes: its width with the lap, and its area with waste."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotApplicable, quantity
from checker.formulas import takeoff

USUAL_LAP = 12 * 0.0254
FABRIC_WASTE = 0.10
ALLOWED_SHORT = 0.05


@quantity(
    "fabrics.each.width_needed",
    title="width of the fabric with its lap",
    kind="length",
    needs=(
        "fabrics.each.position",
        "fabrics.each.top_lap?",
        "stone.breadth",
        "stone.height",
    ),
    rises_with=("fabrics.each.top_lap", "stone.breadth", "stone.height"),
    formula="round the stone 2 x (breadth + height) + lap; over it breadth + lap; at the bank "
    "height + lap",
    source="geometry",
    told_in=("ft", "m"),
)
def fabric_width(
    position: str, lap: float | None, breadth: float, height: float
) -> float | Assumed:
    """Return the width of fabric that does what its place asks [m]."""
    lapped = USUAL_LAP if lap is None else lap
    if position in ("around_stone", "both"):
        width = takeoff.wrap_width(breadth, height, lapped)
    elif position == "over_stone":
        width = takeoff.cover_width(breadth, lapped)
    elif position == "against_bank":
        width = takeoff.bank_width(height, lapped)
    else:
        raise NotApplicable("a sock comes on the pipe and is not cut from a roll")
    return width if lap is not None else Assumed(width, "a lap of 12 in, for none is shown")


@quantity(
    "fabrics.each.area_needed",
    title="fabric to order, with waste",
    kind="area",
    needs=("fabrics.each.width_needed", "drain.length_to_order"),
    rises_with=("fabrics.each.width_needed", "drain.length_to_order"),
    formula="width with its lap x length of the drain + 10 %",
    source="geometry; common practice for the 10 %",
)
def fabric_area(width: float, length: float) -> Assumed:
    """Return the area of fabric with what is cut off and lapped at ends [m2]."""
    area = takeoff.with_waste(width * length, FABRIC_WASTE)
    return Assumed(area, "10 % for cuts and for laps at the ends of rolls")


@quantity(
    "fabrics.each.least_order",
    title="least fabric to order",
    kind="area",
    needs=("fabrics.each.area_needed",),
    rises_with=("fabrics.each.area_needed",),
    formula="fabric to order, less 5 %",
    source="common practice for the 5 %",
)
def fabric_least(area: float) -> float:
    """Return the smallest order that the takeoff bears out [m2]."""
    return area * (1 - ALLOWED_SHORT)
