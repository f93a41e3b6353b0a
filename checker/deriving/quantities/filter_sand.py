"""A layer of graded sand as a filter: its own sizes, and the stone that may lie against it."""

from __future__ import annotations

from functools import partial

from checker.deriving.quantities.filter_limits import NEH
from checker.deriving.quantities.grain_sizes import (
    CORPS,
    GRAINS,
    READING,
    base_curve,
    most_fines,
    size,
    uniformity,
)
from checker.deriving.quantity import quantity
from checker.formulas import filters
from checker.formulas.gradation import Curve

CURVE = "fabrics.each.gradation"

for _share in (0.05, 0.10, 0.15, 0.50, 0.60, 0.85, 0.90, 1.00):
    quantity(
        f"fabrics.each.sand_d{_share * 100:.0f}",
        title=f"D{_share * 100:.0f} of the sand filter",
        kind="length",
        needs=(CURVE,),
        formula=READING,
        source=CORPS,
        told_in=GRAINS,
    )(partial(size, _share))

quantity(
    "fabrics.each.sand_fines",
    title="most of the sand filter that may pass the No. 200 sieve",
    kind="fraction",
    needs=(CURVE,),
    formula="the curve at 0.075 mm, or at its finest sieve where that is wider",
    source=CORPS,
)(most_fines)

quantity(
    "fabrics.each.sand_uniformity",
    title="coefficient of uniformity of the sand filter",
    kind="ratio",
    needs=(CURVE,),
    formula="Cu = D60 / D10",
    source="UFC 3-220-10, equation 1-1",
)(uniformity)


@quantity(
    "fabrics.each.sand_max_d90",
    title="largest D90 at which the sand filter does not come apart",
    kind="length",
    needs=("fabrics.each.sand_d10",),
    formula="20 mm for D10 under 0.5 mm, and more for coarser sand",
    source="NEH 633 chapter 26, table 26-6, from memory",
    told_in=GRAINS,
)
def sand_max_d90(d10: float) -> float:
    """Return the largest D90 of the sand [m]."""
    return filters.max_d90(d10)


@quantity(
    "fabrics.each.stone_max_d15",
    title="largest D15 of stone that holds the sand filter back",
    kind="length",
    needs=(CURVE,),
    formula="4 x D85 of the sand; by its category where it has 15 % fines or more",
    source=NEH,
    told_in=GRAINS,
)
def stone_max_d15(curve: Curve) -> float:
    """Return the largest D15 of stone against the sand [m]."""
    base = base_curve(curve, most_fines(curve))
    return filters.max_d15(most_fines(base), size(0.85, base))


@quantity(
    "fabrics.each.stone_min_d15",
    title="least D15 of stone that lets the water of the sand filter through",
    kind="length",
    needs=("fabrics.each.sand_d15",),
    formula="5 x D15 of the sand, and never under 0.1 mm",
    source="NRCS 2017 as stated by USACE Risk Management Center, permeability",
    told_in=GRAINS,
)
def stone_min_d15(d15: float) -> float:
    """Return the least D15 of stone against the sand [m]."""
    return filters.min_d15(d15)
