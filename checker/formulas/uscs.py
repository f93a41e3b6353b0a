"""The group symbol of a soil from its sieve curve and its Atterberg limits.

Source: ASTM D2487 as restated in UFC 3-220-10, section 1-3.3. The A-line, the box of CL-ML and how
the fines give the second half of a pair are from memory. Organic soil and peat are told by colour,
smell and an oven-dried limit, none of which is asked here: every answer takes the soil as
inorganic.
"""

from __future__ import annotations

# Shares of fines that make a clean soil, a pair of symbols, and a soil named after its fines.
CLEAN = 0.05
DIRTY = 0.12
FINE = 0.5
# Least coefficient of uniformity of what is well graded.
WELL_GRADED_GRAVEL = 4.0
WELL_GRADED_SAND = 6.0
_SAME = 1e-9  # takes up binary rounding alone


def plasticity_index(liquid_limit: float, plastic_limit: float) -> float:
    """Return the plasticity index PI = LL - PL [-].

    Parameters: Atterberg limits [percent of water, a plain number]. Source: definition. Raises
    ValueError for a plastic limit above the liquid limit, and for limits below nothing.
    """
    if plastic_limit < 0:
        raise ValueError("a limit cannot be below nothing")
    if plastic_limit > liquid_limit:
        raise ValueError(
            f"the plastic limit of {plastic_limit:g} lies above the liquid limit of "
            f"{liquid_limit:g}, which cannot be"
        )
    return liquid_limit - plastic_limit


def a_line(liquid_limit: float) -> float:
    """Return the plasticity index on the A-line, PI = 0.73 (LL - 20) [-].

    Parameters: liquid limit [-]. Source: ASTM D2487, from memory. No limits.
    """
    return 0.73 * (liquid_limit - 20)


def symbol_of_fines(liquid_limit: float, index: float) -> str:
    """Return ML, CL, CL-ML, MH or CH for fines by their place on the plasticity chart.

    On or over the A-line: CL, or CH from a liquid limit of 50 on; with an index of 4 to 7, CL-ML.
    Under it, or with an index below 4: ML, or MH.

    Parameters: liquid limit and plasticity index [-]. Source: as the module. Raises ValueError for
    an index below nothing or above the liquid limit.
    """
    if not 0 <= index <= liquid_limit:
        raise ValueError("a plasticity index lies between nothing and the liquid limit")
    over = index >= a_line(liquid_limit)
    if liquid_limit >= 50:
        return "CH" if over else "MH"
    if over and index > 7:
        return "CL"
    return "CL-ML" if over and index >= 4 else "ML"


def needs_limits(fines: float) -> bool:
    """Say whether the symbol hangs on the Atterberg limits: with 5 % fines or more it does.

    Parameters: fines, share passing No. 200 [-]. Source: as the module. Raises ValueError outside
    0 to 1.
    """
    _check(fines)
    return fines >= CLEAN - _SAME


def needs_shape(fines: float) -> bool:
    """Say whether the symbol hangs on Cu and Cc: with 12 % fines or less it does.

    Parameters: fines, share passing No. 200 [-]. Source: as the module. Raises ValueError outside
    0 to 1.
    """
    _check(fines)
    return fines <= DIRTY + _SAME


def well_graded(cu: float, cc: float, *, gravel: bool) -> bool:
    """Say whether a coarse soil is well or broadly graded: 1 <= Cc <= 3, and Cu at its least.

    Parameters: cu and cc, coefficients of uniformity and curvature [-]; gravel, 4 is the least Cu,
    of sand 6. Source: ASTM D2487 as restated in UFC 3-220-10, section 1-3.3, which says "greater
    than 6" where D2487 takes 6 itself in, as here. No limits.
    """
    least = WELL_GRADED_GRAVEL if gravel else WELL_GRADED_SAND
    return cu >= least * (1 - _SAME) and 1 - _SAME <= cc <= 3 * (1 + _SAME)


def is_gravel(passing_no4: float, fines: float) -> bool:
    """Say whether more than half of the coarse part of a soil is held on the No. 4 sieve.

    Parameters: shares passing No. 4 and No. 200 [-]. Source: ASTM D2487 as restated in UFC
    3-220-10, section 1-3.3. Raises ValueError for shares that cannot be.
    """
    if not 0 <= fines <= passing_no4 <= 1:
        raise ValueError("no more can pass the No. 200 sieve than the No. 4, and no more than all")
    return 1 - passing_no4 > 0.5 * (1 - fines) + _SAME


def group_symbol(
    fines: float,
    passing_no4: float | None = None,
    cu: float | None = None,
    cc: float | None = None,
    of_fines: str | None = None,
) -> str:
    """Return the group symbol, such as CL, SW or GP-GM.

    Half or more fines: the symbol of the fines. Else gravel or sand, whichever is the larger part
    of the coarse; well or poorly graded up to 12 % fines; named after the fines from 5 % on.

    Parameters: fines and passing_no4, shares passing No. 200 and No. 4 [-]; cu and cc, coefficients
    of uniformity and curvature [-]; of_fines, what `symbol_of_fines` gives. What the share of fines
    makes needless may be None. Source: as the module. Raises ValueError when something that is
    needed is None, and for shares that cannot be.
    """
    _check(fines)
    if fines >= FINE:
        return _given(of_fines)
    if passing_no4 is None:
        raise ValueError("the group symbol needs the share passing No. 4")
    gravel = is_gravel(passing_no4, fines)
    letter = "G" if gravel else "S"
    graded = letter + _grading(cu, cc, gravel=gravel) if needs_shape(fines) else ""
    if not needs_limits(fines):
        return graded
    named = _given(of_fines)
    if graded:
        return f"{graded}-{letter}{'M' if named in ('ML', 'MH') else 'C'}"
    if named == "CL-ML":
        return f"{letter}C-{letter}M"
    return letter + ("M" if named in ("ML", "MH") else "C")


def _grading(cu: float | None, cc: float | None, *, gravel: bool) -> str:
    if cu is None or cc is None:
        raise ValueError("the group symbol needs the coefficients of uniformity and curvature")
    return "W" if well_graded(cu, cc, gravel=gravel) else "P"


def _given(of_fines: str | None) -> str:
    if of_fines is None:
        raise ValueError("the group symbol needs the Atterberg limits")
    return of_fines


def _check(fines: float) -> None:
    if not 0 <= fines <= 1:
        raise ValueError("a share lies between none and all")
