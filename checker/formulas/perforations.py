"""Water through openings: the holes or slots of a drain pipe, and the mouth of a floor drain.

Sources: TRCA and CVC, LID Stormwater Management Planning and Design Guide, "Flow through perforated
pipe"; FHWA HEC-22, fourth edition (2024), section 10.3.3.2, equation 10.23.
"""

from __future__ import annotations

import math

GRAVITY = 9.80665  # m/s2

# A sharp-edged hole; HEC-22 writes 0.60. Ragged, torch-cut openings come down to 0.4.
SHARP_EDGED = 0.61
# Share of the openings that stays free: 1 when new, 0.5 once the pipe has lain in the ground.
MATURED = 0.5


def orifice(area: float, head: float, coefficient: float = SHARP_EDGED) -> float:
    """Return the flow through an opening under water [m3/s]; none without a head.

    Parameters: area of the opening [m2]; head of water over its middle, less what stands behind
    it [m]; coefficient of discharge [-]. Q = Cd A sqrt(2 g h). Limits: the opening is wholly under
    water. Source: HEC-22 equation 10.23. Raises ValueError for an area below nothing and for a
    coefficient that does not lie between 0 and 1.
    """
    if not area >= 0:
        raise ValueError("an opening has an area of nothing or more")
    if not 0 < coefficient <= 1:
        raise ValueError("a coefficient of discharge lies between 0 and 1")
    return coefficient * area * math.sqrt(2 * GRAVITY * head) if head > 0 else 0.0


def inflow(
    length: float,
    open_area: float,
    head: float,
    free: float = MATURED,
    coefficient: float = SHARP_EDGED,
) -> float:
    """Return what the wall of a perforated pipe lets in [m3/s].

    Parameters: length of the pipe [m]; open_area, of all openings per length of pipe [m2/m];
    head of water over the openings [m]; free, share of them that is not clogged [-]; coefficient
    of discharge [-]. Q = L B Cd Ao sqrt(2 g h). Limits: the wall of the pipe alone; soil, filter
    and stone often let through less. Source: TRCA and CVC. Raises ValueError for a length below
    nothing, a free share that is not above 0 and at most 1, and as `orifice` does.
    """
    if not length >= 0:
        raise ValueError("a pipe has a length of nothing or more")
    if not 0 < free <= 1:
        raise ValueError("the share of openings that stays free lies above 0 and at most at 1")
    return length * free * orifice(open_area, head, coefficient)


def open_area(one: float, rows: int, spacing: float) -> float:
    """Return the area of all openings per length of pipe [m2/m].

    Parameters: one, area of a single opening [m2]; rows of openings round the pipe; spacing, from
    the middle of an opening to that of the next in its row [m]. Source: geometry. Raises
    ValueError when one of them is not above nothing.
    """
    if not (one > 0 and rows > 0 and spacing > 0):
        raise ValueError("openings need a size, at least one row, and a spacing above nothing")
    return rows * one / spacing


def round_hole(diameter: float) -> float:
    """Return the area of a round hole [m2]. Parameters: diameter [m]. Source: geometry.

    Raises ValueError for a hole without width.
    """
    if not diameter > 0:
        raise ValueError("a hole needs a diameter above nothing")
    return math.pi * diameter**2 / 4
