"""A sump pit and its pump: what the pit holds, how often the pump starts, what it has to lift.

Sources: MIL-HDBK-1005/9A section 2.5.3.6 and Engineering Instructions 11C201 (now UFC 3-240-04A),
page 7 (cycles); FHWA HEC-22, fourth edition (2024), section 12.1.3.1 (total head); University of
Illinois Extension, "Sizing up a sump pump" (what comes in).
"""

from __future__ import annotations

import math

GRAVITY = 9.80665  # m/s2

# Hazen-Williams: 150 is the figure for new plastic pipe, 140 for pipe that has been in use.
USED_PLASTIC = 140.0


def volume(diameter: float, upper: float, lower: float) -> float:
    """Return what a round pit holds between two levels [m3].

    Parameters: diameter, inside [m]; upper and lower level [m]. Source: geometry. Raises
    ValueError for a pit without width and for an upper level that lies below the lower one.
    """
    if not diameter > 0:
        raise ValueError("a pit needs a diameter above nothing")
    if not upper >= lower:
        raise ValueError("the upper level lies below the lower one")
    return math.pi * diameter**2 / 4 * (upper - lower)


def measured_inflow(diameter: float, rise: float, time: float) -> float:
    """Return what runs into a pit in which the water was watched rising [m3/s].

    Parameters: diameter of the pit, inside [m]; rise of the water [m] with the pump off; time it
    took [s]. Source: geometry. Raises ValueError as `volume` does and for no time.
    """
    if not time > 0:
        raise ValueError("the water must have risen in some time")
    return volume(diameter, rise, 0.0) / time


def by_floor_area(area: float, per_area: float) -> float:
    """Return the inflow to plan with by a rule of thumb [m3/s].

    Parameters: area of the house [m2]; per_area, flow for each unit of it [m/s]. Source: University
    of Illinois Extension: 14 gpm per 1,000 sq ft on sandy soil, 8 on clay. Raises ValueError for
    an area or flow that is not above nothing.
    """
    if not (area > 0 and per_area > 0):
        raise ValueError("area and flow per area must be above nothing")
    return area * per_area


def cycle_time(storage: float, pump: float, inflow: float) -> float:
    """Return the time from one start of the pump to the next [s].

    Parameters: storage between on and off [m3]; pump, its flow [m3/s]; inflow [m3/s].
    t = (V/D) (1 / (1 - Q/D) + 1 / (Q/D)), the time to empty and the time to fill. Source:
    MIL-HDBK-1005/9A section 2.5.3.6. Raises ValueError where nothing comes in, so that it never
    starts, and where as much or more comes in than goes out, so that it never stops.
    """
    _positive(storage, pump)
    if not inflow > 0:
        raise ValueError("nothing runs in, so the pump never starts")
    if not inflow < pump:
        raise ValueError("as much runs in as the pump moves, or more, so it never stops")
    return storage / (pump - inflow) + storage / inflow


def shortest_cycle(storage: float, pump: float) -> float:
    """Return the shortest time from one start to the next [s]: when half the pump's flow comes in.

    Parameters: storage between on and off [m3]; pump, its flow [m3/s]. t = 4 V / q. Source:
    MIL-HDBK-1005/9A; EI 11C201 page 7 writes it V = t q / 4. Raises ValueError when one of them is
    not above nothing.
    """
    _positive(storage, pump)
    return 4 * storage / pump


def friction(flow: float, diameter: float, length: float, c: float = USED_PLASTIC) -> float:
    """Return the head lost along a full pressed pipe [m].

    Parameters: flow [m3/s]; diameter, inside [m]; length [m]; c, Hazen-Williams coefficient [-].
    h = 10.67 L Q^1.852 / (C^1.852 d^4.8704). Limits: water of ordinary temperature in turbulent
    flow. Source: Hazen-Williams in SI form. Raises ValueError for a flow or length below nothing
    and for no diameter or coefficient.
    """
    if not (flow >= 0 and length >= 0 and diameter > 0 and c > 0):
        raise ValueError("a pressed pipe needs a width, and a flow and length of nothing or more")
    lost: float = 10.67 * length * flow**1.852 / (c**1.852 * diameter**4.8704)
    return lost


def velocity_head(flow: float, diameter: float) -> float:
    """Return the head that goes into the speed of the water [m]: V2 / 2g.

    Parameters: flow [m3/s]; diameter, inside [m]. Source: HEC-22 section 12.1.3.1. Raises
    ValueError for a flow below nothing and for no diameter.
    """
    if not (flow >= 0 and diameter > 0):
        raise ValueError("a pressed pipe needs a width, and a flow of nothing or more")
    return (flow / (math.pi * diameter**2 / 4)) ** 2 / (2 * GRAVITY)


def total_head(
    lift: float, flow: float, diameter: float, length: float, c: float = USED_PLASTIC
) -> float:
    """Return the head that a pump works against [m]; losses in fittings are not counted.

    Parameters: lift of the water, from the level at which the pump stops to the top of its pipe
    [m]; flow [m3/s]; diameter of the pipe, inside [m]; length [m]; c, Hazen-Williams coefficient.
    TDH = Hs + Hf + Hv. Source: HEC-22 equation 12.1, without its losses in fittings. Raises
    ValueError as `friction` and `velocity_head` do.
    """
    return lift + friction(flow, diameter, length, c) + velocity_head(flow, diameter)


def curve_head(flow: float, shutoff: float, named_flow: float, named_head: float) -> float:
    """Return the head at which a pump gives a flow, by a curve through two points [m].

    Parameters: flow [m3/s]; shutoff, head at which it gives nothing [m]; named_flow [m3/s] that it
    gives at named_head [m]. H = Ho - (Ho - Hn) (Q / Qn)2, a parabola, which is what most small
    pumps come near. Source: common practice. Raises ValueError unless the head at no flow is the
    highest and the flow is above nothing.
    """
    if not (shutoff > named_head >= 0 and named_flow > 0 and flow >= 0):
        raise ValueError("a pump lifts highest where it gives nothing; its two points contradict")
    return shutoff - (shutoff - named_head) * (flow / named_flow) ** 2


def duty(
    lift: float, diameter: float, length: float, shutoff: float, named: tuple[float, float]
) -> float:
    """Return the flow at which the pump's head meets the head it works against [m3/s].

    Parameters: lift [m]; diameter of the pipe, inside [m]; length [m]; shutoff, head at which the
    pump gives nothing [m]; named, the flow [m3/s] that it gives at a head [m]. Nothing when the
    lift is as high as the pump reaches. Source: HEC-22 section 12.1.3.2 (where the two curves
    cross), with `curve_head`, solved by halving between nothing and the named flow. Raises
    ValueError as `curve_head` and `total_head` do, and where the crossing lies beyond the named
    flow, on a part of the curve that is not known.
    """
    named_flow, named_head = named

    def spare(flow: float) -> float:
        return curve_head(flow, shutoff, named_flow, named_head) - total_head(
            lift, flow, diameter, length
        )

    if spare(named_flow) > 0:
        raise ValueError("the pump gives more than the flow named, and that curve is not known")
    low, high = 0.0, named_flow
    for _ in range(60):
        middle = (low + high) / 2
        if spare(middle) > 0:
            low = middle
        else:
            high = middle
    return low


def time_to_fill(room: float, inflow: float) -> float:
    """Return how long inflow takes to fill a room [s]. Parameters: room [m3]; inflow [m3/s].

    Source: definition. Raises ValueError for a room below nothing, and where nothing runs in.
    """
    if not room >= 0:
        raise ValueError("a room holds nothing or more")
    if not inflow > 0:
        raise ValueError("nothing runs in, so nothing fills")
    return room / inflow


def _positive(storage: float, pump: float) -> None:
    if not (storage > 0 and pump > 0):
        raise ValueError("storage and the flow of the pump must be above nothing")
