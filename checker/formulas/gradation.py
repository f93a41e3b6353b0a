"""Sieve curves: the size that a share is finer than, the share finer than a size, regrading.

A curve is a tuple of pairs, opening [m] and share passing by weight [-], the finest first.
Between two sieves it is read linear in the share and logarithmic in the size, as the US Army Corps
of Engineers, Risk Management Center, technical manual on filter evaluation, v1.0, states for base
gradations. Beyond its ends it is not read at all.
"""

from __future__ import annotations

import math
from itertools import pairwise

Curve = tuple[tuple[float, float], ...]

NO_4 = 4.75e-3  # m, opening of the No. 4 sieve, where gravel begins
NO_200 = 0.075e-3  # m, opening of the No. 200 sieve, where fines end

# Shares are given to a tenth of a percent at best; this only takes up binary rounding.
_SAME_SHARE = 1e-9
_SAME_SIZE = 1e-9

_FEW_FINES = 0.15


def fault_in(curve: Curve) -> str:
    """Return what makes a set of points no sieve curve, or nothing when it is one.

    Parameters: curve, pairs of opening [m] and share passing [-]. Source: definition. No limits.
    """
    if len(curve) < 2:
        return "a sieve curve needs two sieves or more"
    if any(size <= 0 for size, _ in curve):
        return "a sieve has an opening above nothing"
    if any(not 0 <= share <= 1 for _, share in curve):
        return "a share lies between none and all"
    for (finer, less), (coarser, more) in pairwise(curve):
        if coarser <= finer * (1 + _SAME_SIZE):
            return f"the sieve curve has two points at {_mm(coarser)}"
        if more < less - _SAME_SHARE:
            return (
                f"the sieve curve falls: {less:.4g} passes {_mm(finer)} and only {more:.4g} "
                f"passes {_mm(coarser)}, which is wider"
            )
    return ""


def check(curve: Curve) -> None:
    """Refuse a set of points that is no sieve curve.

    Parameters: curve, pairs of opening [m] and share passing [-]. Source: definition. Raises
    ValueError with what is wrong.
    """
    fault = fault_in(curve)
    if fault:
        raise ValueError(fault)


def size_at(curve: Curve, share: float, *, coarser: bool = False) -> float:
    """Return the size D_x that a share x of the material is finer than [m].

    log D = log D1 + (x - P1) / (P2 - P1) (log D2 - log D1) between the sieves on either side.
    Where the curve runs level at x, any size along the level would do: the finest is returned,
    or the coarsest with `coarser`.

    Parameters: curve; share x [-]; coarser, which end of a level stretch. Source: Corps of
    Engineers as named above, base gradation. Raises ValueError for no sieve curve and for a share
    that the curve does not reach: there is no reading beyond its ends.
    """
    check(curve)
    if coarser:
        turned = tuple((1 / size, 1 - part) for size, part in reversed(curve))
        return 1 / _first_reaching(turned, 1 - share, curve, share)
    return _first_reaching(curve, share, curve, share)


def _first_reaching(points: Curve, wanted: float, curve: Curve, share: float) -> float:
    at = next((n for n, (_, part) in enumerate(points) if part >= wanted - _SAME_SHARE), None)
    if at is None or (at == 0 and points[0][1] > wanted + _SAME_SHARE):
        (finest, least), (coarsest, most) = curve[0], curve[-1]
        raise ValueError(
            f"the sieve curve does not reach {_percent(share)}: it runs from {_percent(least)} at "
            f"{_mm(finest)} to {_percent(most)} at {_mm(coarsest)}"
        )
    size, part = points[at]
    if part <= wanted + _SAME_SHARE:
        return size
    before, less = points[at - 1]
    along = (wanted - less) / (part - less)
    return before * math.pow(size / before, along)


def share_at(curve: Curve, opening: float) -> float:
    """Return the share that passes an opening [-].

    Parameters: curve; opening [m]. Beyond a sieve that everything passes it is all, below one that
    nothing passes none. Source: as `size_at`. Raises ValueError for no sieve curve, and for an
    opening beyond its ends.
    """
    check(curve)
    (finest, least), (coarsest, most) = curve[0], curve[-1]
    if opening > coarsest * (1 + _SAME_SIZE):
        if most >= 1 - _SAME_SHARE:
            return 1.0
        raise ValueError(f"the sieve curve ends at {_mm(coarsest)}, where {_percent(most)} passes")
    if opening < finest * (1 - _SAME_SIZE):
        if least <= _SAME_SHARE:
            return 0.0
        raise ValueError(f"the sieve curve begins at {_mm(finest)}, where {_percent(least)} passes")
    for (finer, less), (coarser, more) in pairwise(curve):
        if opening <= coarser * (1 + _SAME_SIZE):
            along = math.log(opening / finer) / math.log(coarser / finer)
            return less + (more - less) * min(max(along, 0.0), 1.0)
    return most


def regrade(curve: Curve, opening: float = NO_4) -> Curve:
    """Return the curve of the part that passes an opening, as if the rest had been sieved off.

    P'(d) = P(d) / P(opening) for sizes up to the opening. To regrade twice changes nothing.

    Parameters: curve; opening [m], the No. 4 sieve unless a soil lacks another size. Source: Corps
    of Engineers as named above, base gradation. Raises ValueError for no sieve curve, for one that
    does not reach the opening, and where nothing passes it.
    """
    kept = share_at(curve, opening)
    if kept <= _SAME_SHARE:
        raise ValueError(f"nothing passes {_mm(opening)}, so there is nothing to regrade")
    finer = tuple(
        (size, min(share / kept, 1.0)) for size, share in curve if size < opening * (1 - _SAME_SIZE)
    )
    return (*finer, (opening, 1.0))


def needs_regrading(passing_no4: float, fines: float, *, broad: bool | None) -> bool:
    """Say whether a soil is regraded on the No. 4 sieve before its filter is chosen.

    It is, where it holds gravel; but not where it has less than 15 % fines and is not broadly
    graded. A soil of which nobody can say whether it is broadly graded (`broad` None, because its
    D10, D30 or D60 is not on the curve) is regraded, which asks for the finer filter.

    Parameters: passing_no4 and fines, shares passing No. 4 and No. 200 before regrading [-].
    Source: Corps of Engineers as named above, base gradation. A gap-graded soil is regraded on the
    size it lacks, which this does not find. Raises ValueError for shares that cannot be.
    """
    if not 0 <= fines <= passing_no4 <= 1:
        raise ValueError("no more can pass the No. 200 sieve than the No. 4, and no more than all")
    return passing_no4 < 1 and not (fines < _FEW_FINES and broad is False)


def uniformity(d10: float, d60: float) -> float:
    """Return the coefficient of uniformity Cu = D60 / D10 [-].

    Parameters: sizes [m]. Source: UFC 3-220-10, equation 1-1. Raises ValueError for sizes of
    nothing or in the wrong order.
    """
    _check_sizes(d10, d60)
    return d60 / d10


def curvature(d10: float, d30: float, d60: float) -> float:
    """Return the coefficient of curvature Cc = D30^2 / (D60 D10) [-].

    Parameters: sizes [m]. Source: UFC 3-220-10, equation 1-2. Raises ValueError for sizes of
    nothing or in the wrong order.
    """
    _check_sizes(d10, d30, d60)
    return d30**2 / (d60 * d10)


def _check_sizes(*sizes: float) -> None:
    if sizes[0] <= 0 or list(sizes) != sorted(sizes):
        raise ValueError("sizes are above nothing, and more is finer than the larger of two")


def _mm(size: float) -> str:
    return f"{size * 1000:.4g} mm"


def _percent(share: float) -> str:
    return f"{share * 100:.4g} %"
