"""How deep the ground freezes: Stefan's sum and the modified Berggren formula.

Constants of the source: water gives up 144 Btu per pound as it freezes; dry soil takes 0.17 Btu
per pound and degree Fahrenheit, and its water 0.75 of its own weight, half water and half ice.
"""

from __future__ import annotations

import math

GRAVITY = 9.80665
BTU_PER_LB = 1055.05585262 / 0.45359237  # J/kg
BTU_PER_LB_F = BTU_PER_LB * 9 / 5  # J/(kg K)

FUSION = 144 * BTU_PER_LB
SOIL_HEAT = 0.17 * BTU_PER_LB_F
WATER_HEAT = 0.75 * BTU_PER_LB_F
FREEZING = 273.15


def stefan_depth(
    conductivity: float, surface_index: float, dry_weight: float, water_content: float
) -> float:
    """Return the depth of frost where all the cold goes into freezing water [m].

    X = sqrt(2 k n F / L), with L = 144 Btu/lb x dry weight x water content; in the units of the
    source X = sqrt(48 k n F / L). It leaves out the warmth that the ground holds, so it runs deep.

    Parameters: conductivity k, mean of frozen and thawed ground [W/(m K)]; surface_index n F,
    degree-days below freezing at the surface [K s]; dry_weight of the soil [N/m3]; water_content
    by dry weight [-]. Source: modified Berggren with lambda = 1, UFC 3-130-04 (TM 5-852-4) beside
    Fig. 4-63. Raises ValueError for a conductivity or weight of nothing, a negative index, and for
    dry soil: it has nothing to freeze.
    """
    _check_soil(dry_weight, water_content)
    if conductivity <= 0 or surface_index < 0:
        raise ValueError("conductivity is above nothing, and frost is counted from nothing upward")
    latent = FUSION * dry_weight / GRAVITY * water_content
    return math.sqrt(2 * conductivity * surface_index / latent)


def thermal_ratio(mean_temperature: float, surface_index: float, season: float) -> float:
    """Return alpha: how warm the ground begins over how cold its surface then is [-].

    alpha = v0 / vs, with v0 = mean annual temperature less freezing, vs = n F / t.

    Parameters: mean_temperature of the air over the year [K]; surface_index n F [K s]; season t,
    length of the freezing season [s]. Source: UFC 3-130-04 (TM 5-852-4) beside Fig. 4-63. Raises
    ValueError for a season or index of nothing, and where the mean lies at freezing or below: there
    the ground stays frozen and another case of the formula holds.
    """
    if season <= 0 or surface_index <= 0:
        raise ValueError("without a freezing season there is no ratio")
    if mean_temperature <= FREEZING:
        raise ValueError("a year that is cold on the mean freezes the ground for good")
    return (mean_temperature - FREEZING) / (surface_index / season)


def fusion_ratio(surface_index: float, season: float, water_content: float) -> float:
    """Return mu: heat the soil gives up in cooling over what its water gives up in freezing [-].

    mu = C vs / L, with C = dry weight x (0.17 + 0.75 w) and L = dry weight x 144 w; the weight
    falls out.

    Parameters: surface_index n F [K s]; season t [s]; water_content w by dry weight [-]. Source: a
    university notebook following UFC 3-130-06 for C and L; UFC 3-130-04 for mu. Raises ValueError
    for a season of nothing, a negative index and for dry soil.
    """
    if season <= 0 or surface_index < 0:
        raise ValueError("without a freezing season there is no ratio")
    if water_content <= 0:
        raise ValueError("dry soil has nothing to freeze")
    cooling = (SOIL_HEAT + WATER_HEAT * water_content) * (surface_index / season)
    return cooling / (FUSION * water_content)


def correction(alpha: float, mu: float) -> float:
    """Return lambda, by which the warmth of the ground shortens Stefan's depth [-].

    lambda = 1 / sqrt(1 + mu (alpha + 0.5)). It stands in for the chart of the source and runs
    high where winters are mild: 0.92 where the chart is said to give 0.89.

    Parameters: alpha and mu [-]. Source: Aldrich (1953), as a university notebook gives it. Raises
    ValueError for a negative ratio.
    """
    if alpha < 0 or mu < 0:
        raise ValueError("the ratios of the frost formula cannot be negative")
    return 1 / math.sqrt(1 + mu * (alpha + 0.5))


def surface_index(n: float, air_index: float) -> float:
    """Return the degree-days below freezing at the surface of the ground [K s].

    Parameters: n, surface over air index for the cover of the ground [-]; air_index F [K s].
    Source: UFC 3-130-04 (TM 5-852-4) Table 4-1. Raises ValueError for a negative factor or index.
    """
    if n < 0 or air_index < 0:
        raise ValueError("frost is counted from nothing upward")
    return n * air_index


def _check_soil(dry_weight: float, water_content: float) -> None:
    if dry_weight <= 0:
        raise ValueError("soil needs a weight above nothing")
    if water_content <= 0:
        raise ValueError("dry soil has nothing to freeze")
