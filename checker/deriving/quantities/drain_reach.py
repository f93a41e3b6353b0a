"""How long a run of the drain a footing has room for, with or without levels."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, OutsideLimits, quantity
from checker.formulas import levels

USUAL_SLOPE = 1 / 192


@quantity(
    "drain.window_planned",
    title="room for fall beside a footing, with or without levels",
    kind="length",
    needs=(
        "drain.window?",
        "footing.depth?",
        "drain.bedding_planned",
        "drain.outside_diameter_planned",
    ),
    rises_with=("drain.window", "footing.depth"),
    falls_with=("drain.bedding_planned", "drain.outside_diameter_planned"),
    formula="room for fall by the levels, else thickness of the footing - bedding - diameter",
    source="geometry; common practice",
)
def window_planned(
    by_levels: float | None, thickness: float | None, bedding: float, outside: float
) -> float | Assumed:
    """Return the room for fall, which a standard without levels has too [m]."""
    if by_levels is not None:
        return by_levels
    if thickness is None:
        raise NotShown("the thickness of the footing", "footing.thickness")
    room = levels.window(thickness, 0.0, bedding, outside)
    return Assumed(room, "the slab lies on the top of the footing")


@quantity(
    "drain.longest_run_that_fits",
    title="longest run of the drain that has room for its fall",
    kind="length",
    needs=("drain.window_planned", "drain.slope?"),
    rises_with=("drain.window_planned",),
    falls_with=("drain.slope",),
    formula="room for fall / slope, 1/16 in/ft unless another is shown; a loop is twice as long",
    source="geometry; common practice for the slope",
    told_in=("ft", "m"),
)
def longest_run_that_fits(room: float, slope: float | None) -> float | Assumed:
    """Return how far a half-loop beside this footing carries [m]."""
    if room < 0:
        raise OutsideLimits("not even a level pipe fits between floor and bearing")
    if slope is None:
        return Assumed(room / USUAL_SLOPE, "the drain falls 1/16 in/ft")
    if slope <= 0:
        raise OutsideLimits("a level pipe takes no room for fall, however long it is")
    return room / slope
