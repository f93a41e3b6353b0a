"""How high water climbs by itself, in a tube and between grains."""

from __future__ import annotations

WEIGHT = 9806.65  # N/m3, of water
TENSION = 0.0742  # N/m, of water at 10 degrees C

# Terzaghi and Peck's C, 0.1 to 0.5 cm2. It depends on the shape of the grains and how clean they
# are; rough and dirty ones have the higher.
LEAST_C = 0.1e-4
MOST_C = 0.5e-4


def rise_between_grains(size: float, void_ratio: float, constant: float = MOST_C) -> float:
    """Return how high water climbs in soil or stone [m].

    h = C / (e D10). Parameters: size D10, which 10 % of the grains are finer than [m]; void_ratio
    e [-]; constant C [m2]. Source: Terzaghi and Peck (1948), as a textbook, Elements of Soil
    Mechanics, quotes it with C from 10 to 50 mm2. Limits: sand and gravel. Raises ValueError for
    a size, a void ratio or a constant of nothing.
    """
    if size <= 0 or void_ratio <= 0 or constant <= 0:
        raise ValueError("grain size, void ratio and C are above nothing")
    return constant / (void_ratio * size)


def size_for_rise(rise: float, void_ratio: float, constant: float = MOST_C) -> float:
    """Return the D10 at which water climbs just so high [m].

    Parameters: rise [m]; void_ratio e [-]; constant C [m2]. Source: `rise_between_grains` solved
    for D10. Raises ValueError for a rise, a void ratio or a constant of nothing.
    """
    return rise_between_grains(rise, void_ratio, constant)


def rise_in_tube(width: float, tension: float = TENSION, weight: float = WEIGHT) -> float:
    """Return how high water climbs in a clean glass tube [m].

    h = 4 sigma / (weight x d). Parameters: width d of the tube [m]; tension sigma of the water
    [N/m]; weight of the water [N/m3]. Source: Fair, Geyer and Okun, example 9.1. Raises ValueError
    for a tube without width.
    """
    if width <= 0 or tension <= 0 or weight <= 0:
        raise ValueError("width, tension and weight are above nothing")
    return 4 * tension / (weight * width)
