"""Slope of the ground beside the wall, now and after the fill has settled."""

from __future__ import annotations

# No published figure for houses was found. Loose fill is said to settle by 5 to 15 % of its
# depth; the least of these is taken, so that a slope lost even then is a sure loss.
COMMON_SHARE = 0.05


def slope(fall: float, distance: float) -> float:
    """Return the slope of the ground away from the wall [-].

    Parameters: fall, how much lower the ground is at the end of the distance [m], negative where
    it rises; distance, measured level and square to the wall [m]. Source: definition of slope.
    Raises ValueError for a distance of nothing or less.
    """
    if distance <= 0:
        raise ValueError("a slope needs a distance above nothing")
    return fall / distance


def settlement(fill_height: float, share: float = COMMON_SHARE) -> float:
    """Return how far fill beside the wall may sink [m].

    Parameters: fill_height, from the footing to the ground [m]; share of it that is lost [-].
    Source: common practice, from memory; no measured figure. Raises ValueError for a negative
    height or a share outside 0 to 1.
    """
    if fill_height < 0:
        raise ValueError("there is no fill where the ground is under the footing")
    if not 0 <= share <= 1:
        raise ValueError("fill can lose between none and all of its height")
    return share * fill_height


def settled_slope(fall: float, sinks: float, distance: float) -> float:
    """Return the slope left when the ground at the wall has sunk and the far end has not [-].

    Parameters: fall before settling [m]; sinks, at the wall [m]; distance [m]. Source: geometry.
    Raises ValueError for a distance of nothing or less, or a negative settlement.
    """
    if sinks < 0:
        raise ValueError("settling is counted downward and cannot be less than nothing")
    return slope(fall - sinks, distance)
