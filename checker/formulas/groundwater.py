"""Groundwater that flows to a drain: from a source on one side, from rain, and from how far.

Dupuit's equations hold where the water table is gently sloped, the drain reaches near the tight
layer below, and the flow has settled: at first a drain takes about 30 % more (TM 5-818-5, paragraph
4-1f). Heads are measured from the top of the tight layer.
"""

from __future__ import annotations

import math

# Sichardt's factor [s^(1/2)/m^(1/2)] for a well is 3000. For flow to a line 1500 to 2000 is quoted.
# A short reach makes the gradient steep and the inflow large, so the least is the unfavourable one.
SICHARDT_LINE = 1500.0
SICHARDT_WELL = 3000.0

# Where the tight layer lies less deep than 1/(4 pi) of the spacing, another series is used.
_SHALLOW = 0.5
# Beneath it the two depths are the same to nine figures.
_VANISHING = 1e-9


def line_flow(k: float, far: float, near: float, distance: float) -> float:
    """Return the groundwater that reaches each length of a drain from one side [m2/s].

    Parameters: k, permeability [m/s]; far, head of the source over the tight layer [m]; near, head
    at the drain [m]; distance between them [m]. q = k (H2 - h2) / 2L; none where the drain stands
    as high as the source. Source: Dupuit, as in TM 5-818-5 Table 4-1 (line source, gravity flow).
    Raises ValueError for a permeability or head below nothing and for no distance.
    """
    _check(k, far, near)
    if not distance > 0:
        raise ValueError("the source must lie at a distance above nothing")
    return k * max(0.0, far**2 - near**2) / (2 * distance)


def reach(drawdown: float, k: float, factor: float) -> float:
    """Return how far out a drain lowers the groundwater [m].

    Parameters: drawdown of the water at the drain [m]; k, permeability [m/s]; factor,
    `SICHARDT_LINE` to `SICHARDT_WELL`. R = C s sqrt(k). It is a rough rule: other published rules
    differ from it by several times. Source: Sichardt, as in BYU CE 544. Raises ValueError for a
    drawdown or permeability below nothing and for a factor that is not above it.
    """
    if not (drawdown >= 0 and k >= 0 and factor > 0):
        raise ValueError("drawdown and permeability are counted from nothing upward")
    return factor * drawdown * math.sqrt(k)


def line_flow_within_reach(k: float, far: float, near: float, factor: float) -> float:
    """Return the groundwater that reaches each length of a drain from one side [m2/s].

    `line_flow` with the source as far away as the drawdown reaches: q = k (H2 - h2) / 2R with
    R = C (H - h) sqrt(k), which is sqrt(k) (H + h) / 2C. Parameters as of `line_flow` and `reach`.
    Source: Dupuit with Sichardt. Raises ValueError as they do.
    """
    _check(k, far, near)
    if not factor > 0:
        raise ValueError("Sichardt's factor lies above nothing")
    return math.sqrt(k) * (far + near) / (2 * factor) if far > near else 0.0


def rain_fed_flow_within_reach(k: float, far: float, near: float, factor: float) -> float:
    """Return the rain that reaches each length of a drain through the ground from one side [m2/s].

    The water is held up by steady rain on all the ground that the drawdown reaches, not by a source
    at its far end: `recharge_carried` at a spacing of twice the reach, the tight layer counted in
    full. It comes to twice `line_flow_within_reach`, with the same parameters and errors.
    Source: ellipse equation with Sichardt.
    """
    return 2 * line_flow_within_reach(k, far, near, factor)


def recharge_carried(k: float, depth: float, rise: float, spacing: float) -> float:
    """Return the steady rain that parallel drains carry off, per area [m/s].

    Parameters: k, permeability [m/s]; depth of the tight layer under the drains, or the smaller
    `equivalent_depth` [m]; rise of the water over the drains midway between them [m]; spacing of
    the drains [m]. q = (8 k d h + 4 k h2) / L2; with the depth itself it is the ellipse equation
    L2 = 4 k (b2 - a2) / q. Source: Hooghoudt. Raises ValueError for a permeability, depth or rise
    below nothing and for no spacing.
    """
    _check(k, depth, rise)
    if not spacing > 0:
        raise ValueError("drains must lie at a spacing above nothing")
    return (8 * k * depth * rise + 4 * k * rise**2) / spacing**2


def equivalent_depth(depth: float, spacing: float, radius: float) -> float:
    """Return the depth that stands in for the true one, as flow crowds together at a pipe [m].

    Parameters: depth of the tight layer under the drains [m]; spacing of the drains [m]; radius of
    the pipe [m]. d = (pi L / 8) / (ln(L / (pi r)) + F(x)), x = 2 pi D / L. Limits: a spacing wide
    against the radius. Source: Hooghoudt, closed form of van der Molen and Wesseling, as in the
    Noah-MP land model (there with 22/7 for pi). Raises ValueError for a depth below nothing, for
    no spacing or radius, and where the pipe is too wide for the spacing.
    """
    _check(depth)
    if not (radius > 0 and spacing > math.pi * radius):
        raise ValueError("drains must lie farther apart than pi times the radius of the pipe")
    x = 2 * math.pi * depth / spacing
    if x < _VANISHING:
        return depth
    found = (math.pi * spacing / 8) / (math.log(spacing / (math.pi * radius)) + crowding(x))
    return min(depth, found)


def crowding(x: float) -> float:
    """Return F(x) of the equivalent depth [-].

    Parameters: x, 2 pi times the depth over the spacing [-]. The sum over n = 1, 3, 5, ... of
    4 e^(-2nx) / (n (1 - e^(-2nx))), and for x up to 0.5, where the sum is slow,
    pi2 / 4x + ln(x / 2 pi). The two meet at 2.40378. Source: as of `equivalent_depth`.
    Raises ValueError unless x is above nothing.
    """
    if not x > 0:
        raise ValueError("a depth over a spacing must be above nothing")
    if x <= _SHALLOW:
        return math.pi**2 / (4 * x) + math.log(x / (2 * math.pi))
    return math.fsum(
        4 * math.exp(-2 * n * x) / (n * -math.expm1(-2 * n * x)) for n in range(1, 60, 2)
    )


def _check(*numbers: float) -> None:
    if not all(number >= 0 for number in numbers):
        raise ValueError("permeability, heads and depths are counted from nothing upward")
