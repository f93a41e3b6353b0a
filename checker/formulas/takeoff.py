"""How much to order: volumes and areas along a drain and a wall.

A ring runs round a wall with square corners at a distance from its face; it is longer than the
wall by eight times that distance (see `pipe_run.length_at_offset`).
"""

from __future__ import annotations

import math

GRAVITY = 9.80665


def ring_area(around_wall: float, inner: float, outer: float) -> float:
    """Return the area of a strip round a wall with square corners, seen from above [m2].

    Width times the ring length at its middle: (outer - inner) x (around + 8 x (inner + outer) / 2).

    Parameters: around_wall, length round the wall's outside face [m]; inner and outer, distances
    of the strip's edges from that face [m]. Source: geometry. Raises ValueError for a wall without
    length and for edges that are not in order.
    """
    if around_wall <= 0:
        raise ValueError("a wall needs a length above nothing")
    if not 0 <= inner <= outer:
        raise ValueError("the edges of a strip are counted outward from the wall")
    return (outer - inner) * (around_wall + 4 * (inner + outer))


def stone_section(reach: float, deep: float, toe: float, over_footing: float) -> float:
    """Return the area of stone in a section beside a footing and over its toe, pipe included [m2].

    Parameters: reach, stone beyond the footing [m]; deep, from the trench's bottom to the stone's
    top [m]; toe, footing beyond the wall [m]; over_footing, stone over the top of the footing,
    nothing where it stops lower [m]. Source: geometry. Raises ValueError for a reach or depth of
    nothing and for a negative toe.
    """
    _check_section(reach, deep, toe)
    return reach * deep + toe * max(0.0, over_footing)


def stone_in_ring(
    around_wall: float, reach: float, deep: float, toe: float, over_footing: float
) -> float:
    """Return the volume of stone in a loop round a wall, pipe included [m3].

    Each part of the section has the ring length of its own middle.

    Parameters as `stone_section`, and around_wall, length round the wall's outside face [m].
    Source: geometry. Raises ValueError as `ring_area` and `stone_section`.
    """
    _check_section(reach, deep, toe)
    beside = ring_area(around_wall, toe, toe + reach) * deep
    return beside + ring_area(around_wall, 0.0, toe) * max(0.0, over_footing)


def pipe_volume(length: float, outside_diameter: float) -> float:
    """Return the volume that a pipe takes from the stone round it [m3].

    Parameters: length [m]; outside_diameter [m]. Source: geometry. Raises ValueError for a
    negative length or a pipe without a diameter.
    """
    if length < 0 or outside_diameter <= 0:
        raise ValueError("a pipe has a length, and a diameter above nothing")
    return math.pi / 4 * outside_diameter**2 * length


def mass(volume: float, unit_weight: float) -> float:
    """Return what a volume weighs, as mass [kg].

    Parameters: volume [m3]; unit_weight as it is delivered [N/m3]. Source: definition; standard
    gravity. Raises ValueError for a negative volume or something without weight.
    """
    if volume < 0 or unit_weight <= 0:
        raise ValueError("a volume is not negative, and what fills it has a weight")
    return volume * unit_weight / GRAVITY


def wrap_width(width: float, height: float, lap: float) -> float:
    """Return the width of a fabric that goes all round the stone and laps over itself [m].

    The girth of any section with square corners is that of the rectangle about it.

    Parameters: width and height of the stone's section, at its widest and highest [m]; lap on top
    [m]. Source: geometry. Raises ValueError for a side of nothing or a negative lap.
    """
    _check_fabric(width, height, lap)
    return 2 * (width + height) + lap


def bank_width(height: float, lap: float) -> float:
    """Return the width of a fabric that hangs against the bank and laps over the stone [m].

    Parameters: height of the stone [m]; lap on top [m]. Source: geometry. Raises ValueError for a
    height of nothing or a negative lap.
    """
    _check_fabric(height, height, lap)
    return height + lap


def cover_width(width: float, lap: float) -> float:
    """Return the width of a fabric that lies on the stone and turns down or up at its edges [m].

    Parameters: width of the stone's top [m]; lap at its edges, both together [m]. Source: geometry.
    Raises ValueError for a width of nothing or a negative lap.
    """
    _check_fabric(width, width, lap)
    return width + lap


def with_waste(net: float, share: float) -> float:
    """Return a net amount and the share of it that is cut off, spilt or lapped at ends.

    Parameters: net, in any unit; share of the net amount [-]. The result has the unit of net.
    Source: common practice. Raises ValueError for a negative amount or share.
    """
    if net < 0 or share < 0:
        raise ValueError("an amount and its waste are counted from nothing upward")
    return net * (1 + share)


def lapped(net: float, roll: float, lap: float) -> float:
    """Return the area of sheet to buy where each roll laps over the one before [m2].

    Parameters: net area to be covered [m2]; roll, its width [m]; lap [m]. net x roll / (roll -
    lap). Source: geometry. Raises ValueError for a negative area or lap, and for a lap as wide as
    the roll.
    """
    if net < 0 or lap < 0:
        raise ValueError("an area and a lap are counted from nothing upward")
    if roll <= lap:
        raise ValueError("a roll must be wider than its lap")
    return net * roll / (roll - lap)


def wall_face(
    around_wall: float, top: float, bottom: float, footing_top: float, toe: float
) -> float:
    """Return the area of wall, footing top and footing side from one level down to another [m2].

    Parameters: around_wall, length round the wall's outside face [m]; top, bottom and footing_top,
    levels [m]; toe, footing beyond the wall [m]. Where the bottom lies lower than the footing's
    top, the top of the toe and its side down to there are counted. Source: geometry. Raises
    ValueError where the top is not above the bottom and the footing, for a wall without length or
    a negative toe.
    """
    if around_wall <= 0 or toe < 0:
        raise ValueError("a wall needs a length, and a toe that is not negative")
    foot = max(bottom, footing_top)
    if top <= foot:
        raise ValueError("the top must lie above the bottom and the footing")
    side = (around_wall + 8 * toe) * (footing_top - bottom)
    over_footing = ring_area(around_wall, 0.0, toe) + side if bottom < footing_top else 0.0
    return around_wall * (top - foot) + over_footing


def coat_volume(area: float, dry: float, solids: float, loss: float) -> float:
    """Return the volume of coat that makes a dry thickness on an area [m3].

    In the units of the trade: gallons = square feet x dry mil / (1604 x solids x (1 - loss)).

    Parameters: area [m2]; dry thickness [m]; solids, share of the volume that stays [-]; loss,
    share that does not reach the wall [-]. Source: definition of volume. Raises ValueError for an
    area or thickness of nothing, solids outside 0 to 1, or a loss of all.
    """
    if area <= 0 or dry <= 0:
        raise ValueError("a coat needs an area and a thickness above nothing")
    if not 0 < solids <= 1 or not 0 <= loss < 1:
        raise ValueError("solids and loss are shares of the volume")
    return area * dry / (solids * (1 - loss))


def _check_section(reach: float, deep: float, toe: float) -> None:
    if reach <= 0 or deep <= 0 or toe < 0:
        raise ValueError("the stone needs a width and a depth above nothing")


def _check_fabric(width: float, height: float, lap: float) -> None:
    if width <= 0 or height <= 0 or lap < 0:
        raise ValueError("the stone needs a width and a height, and a lap is not negative")
