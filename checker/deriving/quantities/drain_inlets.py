"""What the openings of the drain's pipe let in."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, OutsideLimits, quantity
from checker.formulas import perforations

INCH = 0.0254
# One square inch of openings for each foot of pipe, the least that a federal specification takes.
LEAST_OPEN_AREA = INCH**2 / 0.3048

ORIFICE = "orifice equation, TRCA/CVC LID guide; HEC-22 section 10.3.3.2"


@quantity(
    "drain.open_area_known",
    title="openings of the pipe per length",
    kind="area_per_length",
    needs=(
        "drain.open_area?",
        "drain.holes?",
        "drain.hole_size?",
        "drain.hole_rows?",
        "drain.hole_spacing?",
        "drain.slot_length?",
    ),
    rises_with=(
        "drain.open_area",
        "drain.hole_size",
        "drain.hole_rows",
        "drain.slot_length",
    ),
    falls_with=("drain.hole_spacing",),
    formula="the open area shown, else rows x area of a hole or slot / spacing",
    source="geometry",
)
def open_area_known(
    shown: float | None,
    holes: tuple[str, ...] | None,
    size: float | None,
    rows: int | None,
    spacing: float | None,
    slot: float | None,
) -> float:
    """Return the area of all openings per length of pipe [m2/m]."""
    if shown is not None:
        return shown
    slotted = "slotted" in (holes or ())
    if size is None or rows is None or spacing is None or (slotted and slot is None):
        paths = ["drain.open_area"]
        raise NotShown("the open area of the pipe, or size, rows and spacing of its holes", *paths)
    one = size * slot if slotted and slot is not None else perforations.round_hole(size)
    return perforations.open_area(one, rows, spacing)


@quantity(
    "drain.open_area_planned",
    title="openings of the pipe per length, to plan with",
    kind="area_per_length",
    needs=("drain.open_area_known?",),
    rises_with=("drain.open_area_known",),
    formula="the open area where it is known, else 1 sq in/ft",
    source="NRCS construction specification 444 for the 1 sq in/ft",
)
def open_area_planned(known: float | None) -> float | Assumed:
    """Return the open area to reckon with before one is shown [m2/m]."""
    if known is not None:
        return known
    return Assumed(LEAST_OPEN_AREA, "the openings are not shown; 1 sq in/ft, the least asked")


@quantity(
    "drain.gathering_length",
    title="length of drain that takes in water",
    kind="length",
    needs=("drain.loop_length?", "drain.length_at_pipe?", "drain.run_long?"),
    rises_with=("drain.loop_length", "drain.length_at_pipe", "drain.run_long"),
    formula="sum of the runs, else the loop round the wall, else the longest run",
    source="geometry",
)
def gathering_length(
    runs: float | None, around: float | None, longest: float | None
) -> float | Assumed:
    """Return how much drain there is for water to come in at [m]."""
    found = runs if runs is not None else around
    if found is not None:
        return found
    if longest is None:
        raise NotShown("the length of the drain", "drain.corners", "wall.perimeter")
    return Assumed(longest, "only the longest run is shown, and it alone is counted")


@quantity(
    "drain.inlet_capacity",
    title="inflow through the openings with water up to the floor",
    kind="flow",
    needs=("drain.gathering_length", "drain.open_area_planned", "drain.floor_cover"),
    rises_with=("drain.gathering_length", "drain.open_area_planned", "drain.floor_cover"),
    formula="Q = L B Cd Ao sqrt(2 g h), B = 0.5, Cd = 0.61, h = underside of the slab - crown",
    source=ORIFICE,
)
def inlet_capacity(length: float, open_area: float, head: float) -> Assumed:
    """Return the inflow through the openings with water up to the slab and the pipe full [m3/s]."""
    if head <= 0:
        raise OutsideLimits(
            "the crown of the pipe does not lie under the slab, so no head drives water in"
        )
    found = perforations.inflow(length, open_area, head)
    return Assumed(found, "half of the openings clogged, the pipe full; soil may let less by")
