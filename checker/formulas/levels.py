"""Levels of pipe, slab and footing, and the room between them. All in metres on one datum."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise


def height_above(upper: float, lower: float) -> float:
    """Return how far `upper` lies above `lower`; negative when it lies below [m].

    Source: geometry. No limits.
    """
    return upper - lower


def crown(invert: float, outside_diameter: float, wall: float) -> float:
    """Return the level of the outside top of a pipe [m].

    Parameters: invert, level of the inside bottom [m]; outside_diameter [m]; wall, thickness of
    the pipe's wall [m]. Source: geometry; the invert is the inside bottom, so the outside bottom
    is one wall lower and the crown one diameter above that.

    Raises ValueError when the wall does not fit the diameter.
    """
    _check_pipe(outside_diameter, wall)
    return invert + outside_diameter - wall


def outside_bottom(invert: float, wall: float) -> float:
    """Return the level of the outside bottom of a pipe [m].

    Parameters: invert, level of the inside bottom [m]; wall, thickness of the pipe's wall [m].
    Source: geometry. Raises ValueError for a negative wall.
    """
    if wall < 0:
        raise ValueError("the wall of a pipe cannot be thinner than nothing")
    return invert - wall


def trench_bottom(invert: float, wall: float, bedding: float) -> float:
    """Return the level the trench is dug to: under the pipe and its bedding [m].

    Parameters: invert [m]; wall, thickness of the pipe's wall [m]; bedding, stone under the pipe
    [m]. Source: geometry. Raises ValueError for a negative wall or bedding.
    """
    if bedding < 0:
        raise ValueError("bedding cannot be thinner than nothing")
    return outside_bottom(invert, wall) - bedding


def window(
    slab_underside: float, footing_underside: float, bedding: float, outside_diameter: float
) -> float:
    """Return the room left for fall between floor and bearing [m]; negative when there is none.

    The crown may rise to the underside of the slab and the bedding may reach down to the underside
    of the footing; bedding and pipe take their share, and what is left is for fall.

    Parameters: two levels [m]; bedding [m]; outside_diameter of the pipe [m]. Source: common
    practice ("pipe window"), geometry. Raises ValueError for a negative bedding or a pipe without
    a diameter.
    """
    _check_layer(bedding, outside_diameter)
    return slab_underside - footing_underside - bedding - outside_diameter


def thickness_needed(
    bedding: float, outside_diameter: float, fall: float, footing_top: float, slab_underside: float
) -> float:
    """Return the thinnest footing beside which bedding, pipe and fall fit under the floor [m].

    It is `window` set equal to the fall and solved for the footing's thickness; where the slab
    lies above the top of the footing, that height is room as well. The answer may be below zero
    when the slab lies so high that any footing does.

    Parameters: bedding [m]; outside_diameter of the pipe [m]; fall along the run [m]; two levels
    [m]. Source: common practice, geometry. Raises ValueError for a negative bedding or fall, or a
    pipe without a diameter.
    """
    _check_layer(bedding, outside_diameter)
    if fall < 0:
        raise ValueError("fall is counted downward and cannot be less than nothing")
    return bedding + outside_diameter + fall + (footing_top - slab_underside)


def out_of_order(rising: Sequence[str], levels: Mapping[str, float]) -> list[tuple[str, str]]:
    """Return each pair of neighbours that should rise but does not, as (lower, upper).

    Parameters: rising, names from the lowest to the highest; levels, those that are known [m].
    Names without a level are passed over and their neighbours compared. Source: geometry.
    """
    known = [name for name in rising if name in levels]
    return [(low, high) for low, high in pairwise(known) if levels[low] >= levels[high]]


def disagreement(upper: float, lower: float, stated: float) -> float:
    """Return how far a stated thickness is from the difference of two levels [m].

    Parameters: upper and lower, levels of its two faces [m]; stated, the thickness [m]. Source:
    geometry. Raises ValueError for a negative thickness.
    """
    if stated < 0:
        raise ValueError("a thickness cannot be less than nothing")
    return abs(stated - (upper - lower))


def _check_pipe(outside_diameter: float, wall: float) -> None:
    if outside_diameter <= 0:
        raise ValueError("a pipe needs a diameter above nothing")
    if not 0 <= wall < outside_diameter / 2:
        raise ValueError("a pipe's wall must be thinner than half its outside diameter")


def _check_layer(bedding: float, outside_diameter: float) -> None:
    if bedding < 0:
        raise ValueError("bedding cannot be thinner than nothing")
    if outside_diameter <= 0:
        raise ValueError("a pipe needs a diameter above nothing")
