"""Stone round the drain: what is over, beside and left out."""

from __future__ import annotations


def side_left(beyond_footing: float, offset: float, outside_diameter: float) -> float:
    """Return the stone left beyond the pipe, away from the footing [m]; negative when none is.

    Parameters: beyond_footing, how far the stone reaches past the footing's face [m]; offset, from
    that face to the near side of the pipe [m]; outside_diameter of the pipe [m]. Source: geometry.
    Raises ValueError for a negative distance or a pipe without a diameter.
    """
    if beyond_footing < 0 or offset < 0:
        raise ValueError("distances from the footing are counted outward")
    if outside_diameter <= 0:
        raise ValueError("a pipe needs a diameter above nothing")
    return beyond_footing - offset - outside_diameter


def soil_between(upper_bottom: float, stone_top: float) -> float:
    """Return the soil between what lies above and the top of the stone [m].

    Positive when the upper part stops short of the stone; negative by as much as it reaches in.

    Parameters: two levels [m]. Source: geometry. No limits.
    """
    return upper_bottom - stone_top
