"""Water that runs by its own weight in pipes and ditches: Manning's equation, full and part full.

Manning's equation holds for water in steady, uniform, turbulent flow. It takes the slope of the
pipe for the slope of the water, so a pipe without fall has no flow by it.

Sources: FHWA HEC-22, fourth edition (2024), sections 6.1.4, 6.2.2 and 9.1.3, equations 6.5, 6.7,
6.8 and 9.1 to 9.2, with the exact exponents 8/3 and 2/3 where the book rounds to 2.67 and 0.67.
"""

from __future__ import annotations

import math
from typing import NamedTuple

# Depth over diameter at which a round pipe carries most. There the wet part subtends an angle a of
# 5.278 rad, the root of 5 a (1 - cos a) = 2 (a - sin a), which is where the flow stops rising.
FULLEST = 0.938181


class Wetted(NamedTuple):
    """The wet part of a cross-section: its area [m2] and its wet edge [m]."""

    area: float
    edge: float

    @property
    def hydraulic_radius(self) -> float:
        """Area over wet edge [m]; a quarter of the diameter in a full pipe."""
        return self.area / self.edge


def full(diameter: float) -> Wetted:
    """Return the cross-section of a full pipe.

    Parameters: diameter, inside [m]. Source: geometry of a circle. Raises ValueError for a pipe
    without width.
    """
    _above_nothing(diameter=diameter)
    return Wetted(math.pi * diameter**2 / 4, math.pi * diameter)


def part_full(depth: float, diameter: float) -> Wetted:
    """Return the wet part of a pipe in which water stands to a depth.

    Parameters: depth of water over the inside bottom [m]; diameter, inside [m].
    angle = 4 asin(sqrt(y/D)), A = (angle - sin angle) D2/8, P = angle D/2. Source: geometry of a
    circle. Raises ValueError unless the water lies between the bottom and the top of the pipe.
    """
    _above_nothing(diameter=diameter)
    if not 0 < depth <= diameter:
        raise ValueError("the water must stand between the bottom and the top of the pipe")
    angle = 4 * math.asin(math.sqrt(depth / diameter))
    return Wetted((angle - math.sin(angle)) * diameter**2 / 8, angle * diameter / 2)


def ditch(depth: float, side: float, bottom: float = 0.0) -> Wetted:
    """Return the wet part of a ditch with sloped sides.

    Parameters: depth of water [m]; side, level run for each unit of rise of the sides [-]; bottom,
    width of a flat bottom [m], nothing for a ditch that comes to a point.
    A = B d + z d2, P = B + 2 d sqrt(z2 + 1). Source: HEC-22 equations 6.7 and 6.8. Raises
    ValueError for a ditch without depth or with a width or side below nothing.
    """
    _above_nothing(depth=depth)
    if not (side >= 0 and bottom >= 0) or side + bottom == 0:
        raise ValueError("a ditch needs a bottom or sloped sides")
    edge = bottom + 2 * depth * math.sqrt(side**2 + 1)
    return Wetted(bottom * depth + side * depth**2, edge)


def velocity(wetted: Wetted, slope: float, n: float) -> float:
    """Return the mean velocity of water by Manning's equation [m/s].

    Parameters: wetted cross-section; slope, fall over length [-]; n, Manning's roughness
    [s/m^(1/3)]. V = R^(2/3) S^(1/2) / n. Source: HEC-22 equation 6.5. Raises ValueError for a
    slope or roughness of nothing or less.
    """
    _above_nothing(roughness=n)
    if not slope > 0:
        raise ValueError("Manning's equation needs a fall; what lies level has no flow by it")
    by_radius: float = wetted.hydraulic_radius ** (2 / 3)
    return by_radius * math.sqrt(slope) / n


def flow(wetted: Wetted, slope: float, n: float) -> float:
    """Return the flow of water by Manning's equation [m3/s]: area times `velocity`.

    Parameters and errors as of `velocity`. Source: HEC-22 equation 6.5.
    """
    return wetted.area * velocity(wetted, slope, n)


def full_flow(diameter: float, slope: float, n: float) -> float:
    """Return what a pipe carries when it runs just full, without pressure [m3/s].

    It carries 7.6 % more at 0.938 of its depth; that peak is not counted on. Parameters: diameter,
    inside [m]; slope [-]; n, Manning's roughness. Source: HEC-22 equation 9.2. Raises ValueError
    as `full` and `velocity` do.
    """
    return flow(full(diameter), slope, n)


def depth_of_flow(carried: float, diameter: float, slope: float, n: float) -> float:
    """Return how deep water stands in a pipe that carries a flow [m].

    Between the full flow and the peak two depths carry the same; the lower one is returned.
    Parameters: carried, flow [m3/s]; diameter, inside [m]; slope [-]; n, Manning's roughness.
    Source: HEC-22 equation 6.5 solved by halving. Raises ValueError for a flow below nothing and
    for one that the pipe cannot carry without pressure.
    """
    low, high = 0.0, FULLEST * diameter
    if not 0 <= carried <= flow(part_full(high, diameter), slope, n):
        raise ValueError("this flow is more than the pipe carries without pressure")
    if carried == 0:
        return 0.0
    for _ in range(60):
        middle = (low + high) / 2
        if flow(part_full(middle, diameter), slope, n) < carried:
            low = middle
        else:
            high = middle
    return high


def _above_nothing(**numbers: float) -> None:
    for name, number in numbers.items():
        if not number > 0:
            raise ValueError(f"the {name} must be above nothing")
