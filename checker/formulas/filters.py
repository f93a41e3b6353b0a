"""What grains may lie against a soil so that it is held back and its water still gets through.

Two sets of criteria. That of four categories is chapter 26 of the National Engineering Handbook,
part 633, in the form that the sources below print it; its fines are those of the soil after
regrading on the No. 4 sieve. Mind the numbers: research papers call the soil with less than 15 %
fines group 3 and that with 15 to 40 % group 4; here, as in the handbook, they are categories 4 and
3. The classic set is older and knows sizes alone. F stands for the filter, B for the base, the soil
that it protects.
"""

from __future__ import annotations

# Least fines of categories 2 and 3; category 1 has more than 85 %.
MOST_OF_CATEGORY_2 = 0.85
LEAST_OF_CATEGORY_2 = 0.40
LEAST_OF_CATEGORY_3 = 0.15

LEAST_D15 = 0.1e-3  # m, no filter need be finer

_FINEST_CATEGORY_1 = 0.2e-3  # m
_OF_CATEGORY_2 = 0.7e-3  # m
_OF_CATEGORY_2_DISPERSIVE = 0.5e-3  # m
_PURE_CLAY = 0.4e-3  # m
_SAME_SHARE = 1e-9

# Least D10 of the filter up to [m], and its largest D90 [m]. From memory.
_SEGREGATION = (
    (0.5e-3, 20e-3),
    (1.0e-3, 25e-3),
    (2.0e-3, 30e-3),
    (5.0e-3, 40e-3),
    (10e-3, 50e-3),
    (50e-3, 60e-3),
)


def category(fines: float) -> int:
    """Return the category of a soil: 1 above 85 % fines, 2 from 40 %, 3 from 15 %, 4 below.

    Parameters: fines, share passing No. 200 of the finest curve after regrading [-]. Source: NEH
    633 chapter 26; which curve: US Army Corps of Engineers, Risk Management Center, technical
    manual on filter evaluation, v1.0, particle retention. Raises ValueError outside 0 to 1.
    """
    if not 0 <= fines <= 1:
        raise ValueError("a share lies between none and all")
    if fines > MOST_OF_CATEGORY_2 + _SAME_SHARE:
        return 1
    if fines >= LEAST_OF_CATEGORY_2 - _SAME_SHARE:
        return 2
    return 3 if fines >= LEAST_OF_CATEGORY_3 - _SAME_SHARE else 4


def max_d15(fines: float, d85: float, *, dispersive: bool = False) -> float:
    """Return the largest D15F that holds a soil back [m].

    Category 1: 9 d85, of dispersive clay 6.5 d85, and never below 0.2 mm. Category 2: 0.7 mm, of
    dispersive clay 0.5 mm. Category 3, A being the percentage of fines:
    (40 - A) / 25 (4 d85 - 0.7 mm) + 0.7 mm. Category 4: 4 d85.

    Some print that category 3 takes 0.7 mm where 4 d85 is less. That loosens the limit, the table
    that was read does not have it, and it is not done here.

    Parameters: fines, share passing No. 200, and d85, size [m], both of the finest curve after
    regrading; dispersive. Source: Fell and others, Geotechnical Engineering of Dams, table 9.2, for
    categories 1 to 4 (that table: 6.4 d85 for the dispersive of category 1); the floor of 0.2 mm
    and 6.5 d85 from a summary of NEH 633 chapter 26. Raises ValueError for shares and sizes that
    cannot be.
    """
    if d85 <= 0:
        raise ValueError("a size lies above nothing")
    which = category(fines)
    if which == 1:
        return max((6.5 if dispersive else 9.0) * d85, _FINEST_CATEGORY_1)
    if which == 2:
        return _OF_CATEGORY_2_DISPERSIVE if dispersive else _OF_CATEGORY_2
    if which == 3:
        part = (LEAST_OF_CATEGORY_2 - fines) / (LEAST_OF_CATEGORY_2 - LEAST_OF_CATEGORY_3)
        return part * (4 * d85 - _OF_CATEGORY_2) + _OF_CATEGORY_2
    return 4 * d85


def min_d15(d15: float, times: float = 5.0) -> float:
    """Return the least D15F that lets the water of a soil through [m]: 5 d15, never under 0.1 mm.

    Parameters: d15 of the coarsest curve before regrading [m]; times, 3 to 5 by the agency: 5 by
    NRCS 2017 and the Bureau of Reclamation 2011, 4 by NRCS 1994 as remembered, 3 to 5 by
    EM 1110-2-1901. Source: Corps of Engineers as named above, permeability. Raises ValueError for a
    size of nothing and for other multiples.
    """
    if d15 <= 0:
        raise ValueError("a size lies above nothing")
    if not 3 <= times <= 5:
        raise ValueError("agencies ask for 3 to 5 times d15")
    return max(times * d15, LEAST_D15)


def max_d90(d10: float) -> float:
    """Return the largest D90F at which a filter does not come apart when it is placed [m].

    Parameters: least D10 of the filter [m]. Source: NEH 633 chapter 26, table 26-6, from memory.
    Raises ValueError for a size of nothing and above 50 mm.
    """
    if d10 <= 0:
        raise ValueError("a size lies above nothing")
    for upto, largest in _SEGREGATION:
        # An end belongs to the band above it, but for the last.
        if d10 < upto or d10 == upto == _SEGREGATION[-1][0]:
            return largest
    raise ValueError("the table of segregation ends at a D10 of 50 mm")


def classic_max_d15(d85: float, *, pure_clay: bool = False) -> float:
    """Return the largest D15F by the classic set [m]: 5 d85.

    Parameters: d85 of the soil [m]; pure_clay, a clay without particles of sand or silt may lie
    against up to 0.4 mm. Source: UFC 3-250-01, section 20-2.5.2. Raises ValueError for a size of
    nothing.
    """
    if d85 <= 0:
        raise ValueError("a size lies above nothing")
    return max(5 * d85, _PURE_CLAY) if pure_clay else 5 * d85


def classic_max_d50(d50: float) -> float:
    """Return the largest D50F by the classic set [m]: 25 d50.

    Parameters: d50 of the soil [m]; the rule falls away for a clay without sand or silt. Source:
    UFC 3-250-01, section 20-2.5.2. Raises ValueError for a size of nothing.
    """
    if d50 <= 0:
        raise ValueError("a size lies above nothing")
    return 25 * d50


def classic_min_d15(d15: float) -> float:
    """Return the least D15F by the classic set [m]: 5 d15.

    Parameters: d15 of the soil [m]. Source: UFC 3-250-01, section 20-2.5.3. Raises ValueError for a
    size of nothing.
    """
    if d15 <= 0:
        raise ValueError("a size lies above nothing")
    return 5 * d15


def highway_max_d15(d15: float, d85: float) -> float:
    """Return the largest D15F by the highway set [m]: the less of 40 d15 and 5 d85.

    Parameters: sizes of the soil [m]. Source: FHWA, Highways in the River Environment, problem
    6.11.2. Raises ValueError for a size of nothing.
    """
    return min(40 * classic_min_d15(d15) / 5, classic_max_d15(d85))


def highway_max_d50(d50: float) -> float:
    """Return the largest D50F by the highway set [m]: 40 d50.

    Parameters: d50 of the soil [m]. Source: FHWA, Highways in the River Environment, problem
    6.11.2. Raises ValueError for a size of nothing.
    """
    if d50 <= 0:
        raise ValueError("a size lies above nothing")
    return 40 * d50
