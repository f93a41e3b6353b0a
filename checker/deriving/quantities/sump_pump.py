"""The sump pit and its pump: what it gives, how often it starts, and how long without power."""

from __future__ import annotations

import math

from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import sump
from checker.values import Range

# Voids of clean stone, where its own are not shown: the upper end of what a federal manual gives.
VOIDS = 0.35
UNATTENDED = "told to one digit; do not leave a pump unattended on this"

PIPE = ("sump.discharge_rise", "sump.pump_flow", "sump.discharge_size", "sump.discharge_run")


@quantity(
    "sump.storage",
    title="water the pit holds between pump on and pump off",
    kind="volume",
    needs=("sump.diameter", "sump.pump_on_level", "sump.pump_off_level"),
    rises_with=("sump.diameter", "sump.pump_on_level"),
    falls_with=("sump.pump_off_level",),
    formula="pi d2 / 4 x (pump on - pump off)",
    source="geometry",
    told_in=("gal", "L"),
)
def storage(diameter: float, on: float, off: float) -> float:
    """Return what the pump moves each time it starts, without what runs in meanwhile [m3]."""
    return sump.volume(diameter, on, off)


@quantity(
    "sump.total_head",
    title="head that the pump works against at the flow named",
    kind="length",
    needs=PIPE,
    rises_with=("sump.discharge_rise", "sump.pump_flow", "sump.discharge_run"),
    falls_with=("sump.discharge_size",),
    formula="rise + 10.67 L Q^1.852 / (C^1.852 d^4.8704) + V2 / 2g, C = 140 (m, m3/s)",
    source="FHWA HEC-22 section 12.1.3.1; Hazen-Williams",
    told_in=("ft", "m"),
)
def total_head(rise: float, flow: float, size: float, run: float) -> Assumed:
    """Return the head at the pump's own flow [m]."""
    found = sump.total_head(rise, flow, size, run)
    return Assumed(found, "plastic pipe as wide as its nominal size, fittings not counted")


@quantity(
    "sump.pump_duty",
    title="flow that the pump gives through its own pipe",
    kind="flow",
    needs=("sump.pump_head", "sump.total_head", "sump.pump_shutoff_head?", *PIPE),
    rises_with=("sump.pump_head", "sump.pump_shutoff_head", "sump.discharge_size"),
    falls_with=("sump.total_head", "sump.discharge_rise", "sump.discharge_run"),
    formula="the flow named where its head is not less than the head it works against, else where "
    "H = Ho - (Ho - Hn) (Q / Qn)2 meets that head",
    source="FHWA HEC-22 section 12.1.3.2; the curve is common practice",
)
def pump_duty(
    named_head: float,
    head: float,
    shutoff: float | None,
    rise: float,
    named_flow: float,
    size: float,
    run: float,
) -> float | Assumed:
    """Return the flow that the pump gives where it stands [m3/s]."""
    if head <= named_head:
        return Assumed(named_flow, "at least the flow named, as it is named at a higher head")
    if shutoff is None:
        raise NotShown(
            "the head at which the pump gives nothing, or its curve", "sump.pump_shutoff_head"
        )
    found = sump.duty(rise, size, run, shutoff, (named_flow, named_head))
    return Assumed(found, "by a curve through the two points of the pump that are shown")


@quantity(
    "sump.cycle_time",
    title="time from one start of the pump to the next",
    kind="duration",
    needs=("sump.storage", "sump.pump_duty", "sump.inflow_planned"),
    rises_with=("sump.storage",),
    formula="V / (D - Q) + V / Q",
    source="MIL-HDBK-1005/9A section 2.5.3.6",
)
def cycle_time(held: float, pump: float, arriving: float) -> float:
    """Return the time between starts at the inflow to plan with [s]."""
    return sump.cycle_time(held, pump, arriving)


@quantity(
    "sump.cycle_least",
    title="shortest time from one start of the pump to the next",
    kind="duration",
    needs=("sump.storage", "sump.pump_duty"),
    rises_with=("sump.storage",),
    falls_with=("sump.pump_duty",),
    formula="4 V / D, when half of what the pump gives runs in",
    source="MIL-HDBK-1005/9A section 2.5.3.6; EI 11C201 page 7",
)
def cycle_least(held: float, pump: float) -> float:
    """Return the time between starts at the worst inflow [s]."""
    return sump.shortest_cycle(held, pump)


@quantity(
    "sump.room",
    title="room for water between pump on and the underside of the slab",
    kind="volume",
    needs=(
        "sump.diameter",
        "sump.pump_on_level",
        "slab.underside_level",
        "drain.gathering_length?",
        "drain.pipe_inside_diameter?",
        "stone.quantity?",
        "slab.area?",
        "slab.base_thickness?",
        "slab.base_linked_to_drain?",
    ),
    formula="from the pit alone to pit + pipe + 35 % of the drain stone and of a base that is "
    "linked to the drain",
    source="geometry; UFC 3-250-01 chapter 20 for the voids of stone",
    told_in=("gal", "L"),
)
def room(
    diameter: float,
    on: float,
    slab: float,
    length: float | None,
    pipe: float | None,
    stone: float | None,
    area: float | None,
    base: float | None,
    linked: bool | None,
) -> Assumed:
    """Return the least and the most that the rising water has to fill [m3]."""
    pit = sump.volume(diameter, max(on, slab), on)
    in_pipe = math.pi * pipe**2 / 4 * length if pipe is not None and length is not None else 0.0
    under = area * base if linked and area is not None and base is not None else 0.0
    most = pit + in_pipe + VOIDS * ((stone or 0.0) + under)
    return Assumed(Range(pit, most), "how much of pipe, stone and base fills is not known")


@quantity(
    "sump.time_to_slab",
    title="time until water reaches the slab when the power fails",
    kind="duration",
    needs=("sump.room", "sump.inflow_planned"),
    rises_with=("sump.room",),
    falls_with=("sump.inflow_planned",),
    formula="room / inflow, rounded down to one digit",
    source="definition",
)
def time_to_slab(space: float, arriving: float) -> Assumed:
    """Return the time that is left without power, to one digit [s]."""
    return Assumed(_one_digit(sump.time_to_fill(space, arriving)), UNATTENDED)


def _one_digit(seconds: float) -> float:
    """Round a time down to one digit of the minutes or hours that it is told in."""
    if seconds <= 0 or not math.isfinite(seconds):
        return seconds
    unit = 3_600.0 if seconds >= 3_600.0 else 60.0
    told = seconds / unit
    step = 10.0 ** math.floor(math.log10(told))
    return math.floor(told / step) * step * unit
