"""Sideways load of soil, and of water in it, on a wall. For the engineer: it sizes nothing."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

FOOT = 0.3048
POUND = 4.4482216152605

# Unit weight of fresh water [N/m3]: 62.4 lb/ft3.
WATER = 62.4 * POUND / FOOT**3

# UFC 3-220-20 section 4-3.3 ends the use of an equivalent fluid at walls of 20 ft.
HIGHEST_BY_FLUID = 20 * FOOT


class Layer(NamedTuple):
    """One layer of soil behind a wall, from the top down.

    `thickness` [m]; `coefficient` of earth pressure K [-]; `unit_weight` of the soil as it lies,
    with its water [N/m3]; `in_water`, whether it lies under the water table.
    """

    thickness: float
    coefficient: float
    unit_weight: float
    in_water: bool = False


class Thrust(NamedTuple):
    """`force` on each metre of wall [N/m], and how far over the foot of the wall it acts [m]."""

    force: float
    height: float


def active_coefficient(friction_angle: float) -> float:
    """Return Ka, for a wall that can give way at its top [-].

    Ka = tan2(45 deg - phi/2). Parameters: friction_angle phi of the soil [rad]. Source: Rankine,
    as used in B. M. Das, Principles of Geotechnical Engineering, example 13.4. Limits: level
    ground, smooth wall, soil without cohesion. Raises ValueError outside 0 to 90 degrees.
    """
    _check_angle(friction_angle)
    return math.tan(math.pi / 4 - friction_angle / 2) ** 2


def rest_coefficient(friction_angle: float, overconsolidation: float = 1.0) -> float:
    """Return K0, for a wall that is held at its top, as a basement wall is [-].

    K0 = (1 - sin phi) x OCR^sin phi. Parameters: friction_angle phi [rad]; overconsolidation
    ratio OCR, 1 for fill that never bore more than it does now [-]. Source: UFC 3-220-20 Eq. 4-2.
    Raises ValueError outside 0 to 90 degrees, and for a ratio below 1.
    """
    _check_angle(friction_angle)
    if overconsolidation < 1:
        raise ValueError("soil cannot have borne less than it bears now")
    sine = math.sin(friction_angle)
    return (1 - sine) * math.pow(overconsolidation, sine)


def fluid_weight(coefficient: float, unit_weight: float) -> float:
    """Return the weight of the fluid that would press as the soil does [N/m3].

    Parameters: coefficient K [-]; unit_weight of the soil [N/m3]. Source: UFC 3-220-20 Eq. 4-13,
    equivalent fluid = K x unit weight. Raises ValueError for a negative coefficient or a soil
    without weight.
    """
    _check_soil(coefficient, unit_weight)
    return coefficient * unit_weight


def fluid_weight_in_water(coefficient: float, unit_weight: float, water: float = WATER) -> float:
    """Return the same for soil that stands full of water: its buoyant share and the water [N/m3].

    Parameters: coefficient K [-]; unit_weight of the soil with its water [N/m3]; water, unit
    weight of water [N/m3]. K x (unit weight - water) + water. Source: UFC 3-220-20 section 4-4.1;
    IBC 2021 section 1610.1 asks the full head of undrained backfill. Raises ValueError for a
    negative coefficient and for soil lighter than water.
    """
    _check_soil(coefficient, unit_weight)
    if unit_weight <= water:
        raise ValueError("soil lighter than water floats, and these sums do not hold for it")
    return coefficient * (unit_weight - water) + water


def fluid_pressure(fluid: float, height: float) -> float:
    """Return the pressure at the foot of the fill [Pa].

    Parameters: fluid, weight of the equivalent fluid [N/m3]; height of the fill [m]. Source: UFC
    3-220-20 section 4-3.3. Raises ValueError for a negative height or weight, and beyond 20 ft
    (6.096 m), where the section ends.
    """
    if fluid < 0 or height < 0:
        raise ValueError("weight and height of the fill are counted from nothing upward")
    if height > HIGHEST_BY_FLUID + 1e-9:
        raise ValueError("an equivalent fluid is for walls to 20 ft; the engineer goes further")
    return fluid * height


def fluid_thrust(fluid: float, height: float) -> Thrust:
    """Return the force of the fill on each metre of wall; it acts a third of the way up.

    Parameters, source and errors as `fluid_pressure`; F = fluid x height squared / 2.
    """
    return Thrust(fluid_pressure(fluid, height) * height / 2, height / 3)


def thrust(layers: Sequence[Layer], water: float = WATER) -> Thrust:
    """Return the force of layered ground, part of it under water, on each metre of wall.

    In each layer soil presses with K x effective vertical stress and water with its own head;
    under the water table the soil weighs less by the weight of water. The force acts at the
    centroid of all pressures.

    Parameters: layers from the top down; water, unit weight of water [N/m3]. Source: UFC 3-220-20
    section 4-4.1; worked by hand in B. M. Das, Principles of Geotechnical Engineering, example
    13.4. Raises ValueError for a layer without thickness or weight, a negative coefficient, and a
    dry layer under a wet one.
    """
    _check_layers(layers, water)
    stress = head = force = moment = 0.0
    left = math.fsum(layer.thickness for layer in layers)
    for layer in layers:
        high, share = layer.thickness, layer.coefficient
        weight = layer.unit_weight - (water if layer.in_water else 0.0)
        left -= high
        own = share * stress * high + head * high  # as great at the layer's top as at its foot
        growing = (share * weight + (water if layer.in_water else 0.0)) * high**2 / 2
        force += own + growing
        moment += own * (left + high / 2) + growing * (left + high / 3)
        stress += weight * high
        head += water * high if layer.in_water else 0.0
    return Thrust(force, moment / force if force else 0.0)


def _check_angle(friction_angle: float) -> None:
    if not 0 <= friction_angle < math.pi / 2:
        raise ValueError("a friction angle lies between 0 and 90 degrees")


def _check_soil(coefficient: float, unit_weight: float) -> None:
    if coefficient < 0 or unit_weight <= 0:
        raise ValueError("soil has a weight above nothing and does not pull on a wall")


def _check_layers(layers: Sequence[Layer], water: float) -> None:
    wet = False
    for layer in layers:
        _check_soil(layer.coefficient, layer.unit_weight)
        if layer.thickness <= 0:
            raise ValueError("a layer needs a thickness above nothing")
        if wet and not layer.in_water:
            raise ValueError("a layer under the water table cannot be dry")
        if layer.in_water and layer.unit_weight <= water:
            raise ValueError("soil lighter than water floats, and these sums do not hold for it")
        wet = layer.in_water
