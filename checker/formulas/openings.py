"""Holes, slots and open joints of a pipe against the grains that lie round it."""

from __future__ import annotations

import math
from itertools import pairwise

# D85 of the stone over the opening: the form in common use, and the upper end of what is asked.
HOLE, STRICT_HOLE = 1.0, 1.2
SLOT, STRICT_SLOT = 1.2, 1.4

# Opening over D95 of the grains, and how likely it is that they go on washing out through it.
_EROSION = ((0.5, 1e-4), (0.75, 1e-3), (1.0, 0.1), (2.0, 0.5), (3.0, 0.9))
_NONE_BELOW = 0.4


def least_d85(opening: float, *, slot: bool, strict: bool = False) -> float:
    """Return the least D85 of the stone round a pipe [m].

    The diameter of a hole, or 1.2 times the width of a slot. The source asks for more than 1.0 to
    1.2 times a hole and more than 1.2 to 1.4 times a slot; `strict` takes the upper end.

    Parameters: opening, diameter of the hole or width of the slot [m]; slot. Source: US Army Corps
    of Engineers, coastal engineering guidance on filters, equations 9 and 10. Raises ValueError for
    an opening of nothing.
    """
    if opening <= 0:
        raise ValueError("an opening is wider than nothing")
    if slot:
        return opening * (STRICT_SLOT if strict else SLOT)
    return opening * (STRICT_HOLE if strict else HOLE)


def share_of_band_finer(opening: float, finest: float, coarsest: float) -> float:
    """Return the share of a band of D95 that is finer than a joint or crack [-], by log of size.

    Parameters: opening [m]; finest and coarsest D95 of the band [m]. Source: US Army Corps of
    Engineers, Risk Management Center, technical manual on filter evaluation, v1.0, constricted
    exit. Raises ValueError for sizes of nothing or in the wrong order.
    """
    if not 0 < finest <= coarsest or opening <= 0:
        raise ValueError("sizes lie above nothing, the finest first")
    if opening <= finest:
        return 0.0
    if opening >= coarsest:
        return 1.0
    return math.log(opening / finest) / math.log(coarsest / finest)


def continuing_erosion(opening: float, d95: float) -> float:
    """Return how likely it is that grains go on washing out through a joint or crack [-].

    Between the ratios of the table the probability is read on the scale of normal quantiles, linear
    in opening / d95. Below a ratio of 0.4 it is none; from there to 0.5 the figure at 0.5 is taken,
    the next that the table has.

    Parameters: opening [m]; d95 of the finest grains after regrading [m]. Source: US Army Corps of
    Engineers, Risk Management Center, technical manual on filter evaluation, v1.0, constricted
    exit. It was made for dams with steady flow. Raises ValueError for sizes of nothing.
    """
    if opening <= 0 or d95 <= 0:
        raise ValueError("an opening and a size lie above nothing")
    ratio = opening / d95
    if ratio < _NONE_BELOW:
        return 0.0
    if ratio <= _EROSION[0][0]:
        return _EROSION[0][1]
    # It takes as long to load as twenty reviews, and few specs have joints that open.
    from statistics import NormalDist

    normal = NormalDist()
    for (left, less), (right, more) in pairwise(_EROSION):
        if ratio <= right:
            low, high = normal.inv_cdf(less), normal.inv_cdf(more)
            return normal.cdf(low + (high - low) * (ratio - left) / (right - left))
    return _EROSION[-1][1]
