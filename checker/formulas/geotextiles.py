"""How open a geotextile may be, how open it must be, and how much water it passes."""

from __future__ import annotations

NO_70 = 0.212e-3  # m, opening of the No. 70 sieve
NO_100 = 0.150e-3  # m, opening of the No. 100 sieve
HALF_FINES = 0.5
MOST_NONWOVEN = 0.3e-3  # m, largest opening of a nonwoven where more than half are fines

_COHESIVE_FINES = 0.10
_COHESIVE_INDEX = 5.0


def retention_factor(fines: float, cu: float | None, *, nonwoven: bool) -> float:
    """Return the factor B of retention, O95 <= B D85 [-].

    Up to half fines: 1 for Cu up to 2 and from 8 on, Cu / 2 from 2 to 4, 8 / Cu from 4 to 8. Above
    half fines: 1 for a woven, 1.8 for a nonwoven. Where Cu is not known B is 1, its least.

    Parameters: fines, share passing No. 200 [-]; cu, coefficient of uniformity [-] or None;
    nonwoven. Source: FHWA NHI-07-092, chapter 2, from memory; FHWA GEC-11, section 5.3.3, prints
    B = 1. Raises ValueError for a share or a coefficient that cannot be.
    """
    if not 0 <= fines <= 1:
        raise ValueError("a share lies between none and all")
    if fines > HALF_FINES:
        return 1.8 if nonwoven else 1.0
    if cu is None:
        return 1.0
    if cu < 1:
        raise ValueError("a coefficient of uniformity is at least 1")
    if cu <= 2 or cu >= 8:
        return 1.0
    return 0.5 * cu if cu <= 4 else 8 / cu


def max_opening(d85: float, factor: float) -> float:
    """Return the largest opening O95 that holds a soil back [m]: B D85.

    Parameters: d85 of the soil finer than No. 4 [m]; factor B [-]. Source: FHWA NHI-07-092,
    chapter 2, from memory. Raises ValueError for a size or factor of nothing.
    """
    if d85 <= 0 or factor <= 0:
        raise ValueError("a size and a factor lie above nothing")
    return factor * d85


def army_max_opening(fines: float, d85: float | None) -> float:
    """Return the largest opening by the Army's older form [m].

    Up to half fines it is d85; above, the No. 70 sieve, 0.212 mm. (No fabric alone will do where
    more than 85 % are fines; that is not asked here.)

    Parameters: fines, share passing No. 200 [-]; d85 of the soil [m], needless above half fines.
    Source: US Army Corps of Engineers, coastal engineering guidance on filters; UFC 3-270-04, p.
    83. Raises ValueError for a share or a size that cannot be.
    """
    if not 0 <= fines <= 1:
        raise ValueError("a share lies between none and all")
    if fines > HALF_FINES:
        return NO_70
    if d85 is None or d85 <= 0:
        raise ValueError("up to half fines the largest opening is the soil's D85")
    return d85


def is_cohesive(fines: float, index: float) -> bool:
    """Say whether a soil holds together, so that the No. 70 sieve limits the opening.

    More than 10 % fines and a plasticity index above 5, and not dispersive, which is asked apart.

    Parameters: fines, share passing No. 200 [-]; index, plasticity index [-]. Source: UFC 3-220-10,
    chapter 6, on geotextile filters, which prints the limit as 0.21 mm. Raises ValueError for a
    share or an index that cannot be.
    """
    if not 0 <= fines <= 1 or index < 0:
        raise ValueError("a share lies between none and all, and an index not below nothing")
    return fines > _COHESIVE_FINES and index > _COHESIVE_INDEX


def clogging_opening(d15: float, cu: float) -> float:
    """Return the least opening O95 that does not clog [m]: 3 D15 where Cu is above 3, else none.

    Parameters: d15 of the soil finer than No. 4 [m]; cu, its coefficient of uniformity [-]. Source:
    FHWA NHI-07-092, chapter 2, from memory. Raises ValueError for a size of nothing or a
    coefficient below 1.
    """
    if d15 <= 0 or cu < 1:
        raise ValueError("a size lies above nothing, and a coefficient of uniformity is at least 1")
    return 3 * d15 if cu > 3 else 0.0


def permeability(permittivity: float, thickness: float) -> float:
    """Return the permeability of a fabric across its plane [m/s], permittivity x thickness.

    Parameters: permittivity [1/s]; thickness [m]. Source: UFC 3-220-10, equation 6-16. Raises
    ValueError for either below nothing.
    """
    if permittivity < 0 or thickness < 0:
        raise ValueError("a permittivity and a thickness are not below nothing")
    return permittivity * thickness


def permeability_factor(fabric: float, soil: float) -> float:
    """Return how many times better than the soil a fabric lets water through [-].

    Parameters: permeability of the fabric and of the soil [m/s]; soil that lets none through makes
    it infinite. Source: UFC 3-220-10, equation 6-16, which asks for 10 at least; FHWA GEC-11,
    section 5.3.3. Raises ValueError for either below nothing.
    """
    if fabric < 0 or soil < 0:
        raise ValueError("a permeability is not below nothing")
    return fabric / soil if soil > 0 else float("inf")
