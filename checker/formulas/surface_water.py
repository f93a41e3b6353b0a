"""Rain on roofs and ground: how much runs off, how much soaks in, what a downspout carries.

Sources: FHWA HEC-22, fourth edition (2024), section 4.2.2, equations 4.1 and 4.2 (rational method);
National Standard Plumbing Code 2006, Table 13.6.1 (vertical leaders).
"""

from __future__ import annotations

INCH = 0.0254
GALLON_PER_MINUTE = 231 * INCH**3 / 60

# A downspout runs as a film on its wall. Tables of codes count on 7/24 of it filled with water.
WALL_FILM = 7 / 24


def rational(share: float, intensity: float, area: float) -> float:
    """Return the greatest flow that rain sends off an area [m3/s].

    Parameters: share of the rain that runs off, C [-]; intensity of rain [m/s]; area on plan [m2].
    Q = C i A. Limits: areas under 200 acres, and a storm at least as long as water takes to run
    down the area. Source: HEC-22 equation 4.1. Raises ValueError for a share outside 0 to 1 and
    for an intensity or area below nothing.
    """
    if not 0 <= share <= 1:
        raise ValueError("between none and all of the rain runs off")
    if not (intensity >= 0 and area >= 0):
        raise ValueError("rain and area are counted from nothing upward")
    return share * intensity * area


def intensity(depth: float, duration: float) -> float:
    """Return the mean intensity of a storm [m/s].

    Parameters: depth of rain that falls [m]; duration [s]. Source: definition; NOAA Atlas 14 gives
    the depths. Raises ValueError for a depth below nothing and for a storm without duration.
    """
    if not (depth >= 0 and duration > 0):
        raise ValueError("a storm has a depth of nothing or more and lasts some time")
    return depth / duration


def soaking(rain: float, permeability: float, area: float) -> float:
    """Return what soaks into open ground while it rains [m3/s].

    Parameters: rain, intensity [m/s]; permeability of the ground [m/s]; area on plan [m2]. The
    lesser of the two rates: ground takes no more than falls on it, and, once wet through and with
    no pond on it, no more than its permeability. Source: Darcy at a gradient of one. Raises
    ValueError for a number below nothing.
    """
    if not (rain >= 0 and permeability >= 0 and area >= 0):
        raise ValueError("rain, permeability and area are counted from nothing upward")
    return min(rain, permeability) * area


def leader(diameter: float, filled: float = WALL_FILM) -> float:
    """Return what an upright round pipe carries with water clinging to its wall [m3/s].

    Parameters: diameter, inside [m]; filled, share of the cross-section that is water [-].
    q = 27.8 r^(5/3) d^(8/3) in gallons a minute and inches. Limits: 2 to 8 in. Source: the form
    given by plumbing handbooks, from memory; it gives NSPC Table 13.6.1 within 1 %. Raises
    ValueError for a pipe without width and a share outside 0 to 1/3, beyond which it chokes.
    """
    if not diameter > 0:
        raise ValueError("a leader needs a diameter above nothing")
    if not 0 < filled <= 1 / 3:
        raise ValueError("a leader runs filled to a third at most; beyond that it chokes")
    gallons: float = 27.8 * filled ** (5 / 3) * (diameter / INCH) ** (8 / 3)
    return gallons * GALLON_PER_MINUTE
