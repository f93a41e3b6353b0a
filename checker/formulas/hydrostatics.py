"""Pressure of standing water under a floor, and the weight that holds the floor down."""

from __future__ import annotations

FOOT = 0.3048
POUND = 4.4482216152605

# Unit weights [N/m3]: fresh water 62.4 lb/ft3, normal concrete 150 lb/ft3.
WATER = 62.4 * POUND / FOOT**3
CONCRETE = 150 * POUND / FOOT**3


def pressure(head: float, unit_weight: float = WATER) -> float:
    """Return the pressure under a head of water [Pa]; none where the water stands lower.

    Parameters: head, height of the water over the point [m]; unit_weight of the water [N/m3].
    p = unit weight x head. Source: hydrostatics; ASCE 7-10 section 3.2.2 measures the head from
    the underside of the slab and over its whole area. Raises ValueError for water without weight.
    """
    if unit_weight <= 0:
        raise ValueError("water needs a weight above nothing")
    return unit_weight * max(0.0, head)


def thrust(head: float, unit_weight: float = WATER) -> float:
    """Return the force of water against each metre of wall [N/m]; it acts head / 3 above the foot.

    Parameters: head, height of the water over the foot of the wall [m]; unit_weight [N/m3].
    F = unit weight x head squared / 2. Source: hydrostatics. Raises ValueError for water without
    weight.
    """
    return pressure(head, unit_weight) * max(0.0, head) / 2


def uplift_factor(thickness: float, head: float, concrete: float = CONCRETE) -> float:
    """Return the weight of a slab over the upward push of the water under it [-].

    At 1 the slab floats; its bond to walls and footings is not counted.

    Parameters: thickness of the slab [m]; head of water over its underside [m]; concrete, unit
    weight [N/m3]. Source: balance of forces, EM 1110-2-2100 (2005) Eq. 3-2 without wall and
    ground loads. Raises ValueError for a slab without thickness, and where no water stands above
    the underside: there is no uplift and no factor.
    """
    if thickness <= 0 or concrete <= 0:
        raise ValueError("a slab needs a thickness and a weight above nothing")
    if head <= 0:
        raise ValueError("no water stands above the underside of the slab, so nothing lifts it")
    return concrete * thickness / pressure(head)


def balanced_head(thickness: float, factor: float = 1.0, concrete: float = CONCRETE) -> float:
    """Return the head of water at which a slab reaches an uplift factor [m].

    Parameters: thickness of the slab [m]; factor [-]; concrete, unit weight [N/m3]. Source:
    `uplift_factor` solved for the head. Raises ValueError for a thickness, factor or weight of
    nothing or less.
    """
    if thickness <= 0 or factor <= 0 or concrete <= 0:
        raise ValueError("thickness, factor and weight must be above nothing")
    return concrete * thickness / (factor * WATER)
