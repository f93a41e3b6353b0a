"""The grains that may lie against the soil in the bank, by the sizes of its own curve."""

from __future__ import annotations

from checker.deriving.quantities.grain_sizes import GRAINS, size
from checker.deriving.quantity import Assumed, quantity
from checker.formulas import filters, gradation
from checker.formulas.gradation import Curve
from checker.values import Range

NEH = "NEH 633 chapter 26 as printed by Fell and others, table 9.2"
CLASSIC = "UFC 3-250-01, section 20-2.5"
HIGHWAY = "FHWA, Highways in the River Environment, problem 6.11.2"
NOT_TESTED = "the soil was not tested for dispersion and is taken as not dispersive"
D15_SHARE = 0.15


@quantity(
    "soil.bank.filter_category",
    title="category of the soil in the bank for its filter",
    kind="count",
    needs=("soil.bank.base_fines",),
    formula="fines above 85 %: 1; from 40 %: 2; from 15 %: 3; below: 4",
    source=NEH,
)
def filter_category(fines: float) -> int:
    """Return the category of the soil, 1 to 4."""
    return filters.category(fines)


@quantity(
    "soil.bank.filter_max_d15",
    title="largest D15 of grains that hold the soil in the bank back",
    kind="length",
    needs=("soil.bank.base_fines", "soil.bank.base_d85", "soil.bank.dispersive?"),
    formula=(
        "category 1: 9 D85, at least 0.2 mm; 2: 0.7 mm; "
        "3: (40 - fines in %) / 25 x (4 D85 - 0.7 mm) + 0.7 mm; 4: 4 D85; "
        "dispersive: 6.5 D85 and 0.5 mm"
    ),
    source=NEH,
    told_in=GRAINS,
)
def filter_max_d15(fines: float, d85: float, dispersive: bool | None) -> float | Assumed:
    """Return the largest D15 of a filter for the soil [m]."""
    largest = filters.max_d15(fines, d85, dispersive=bool(dispersive))
    matters = dispersive is None and filters.category(fines) <= 2
    return Assumed(largest, NOT_TESTED) if matters else largest


@quantity(
    "soil.bank.filter_min_d15",
    title="least D15 of grains that let the water of the soil in the bank through",
    kind="length",
    needs=("soil.bank.gradation",),
    formula="5 x D15 before regrading, and never under 0.1 mm",
    source="NRCS 2017 as stated by USACE Risk Management Center, permeability",
    told_in=GRAINS,
)
def filter_min_d15(curve: Curve) -> float | Assumed:
    """Return the least D15 of a filter for the soil [m].

    A soil whose D15 is finer than its finest sieve asks for something between the least that any
    soil asks for and what that sieve would.
    """
    gradation.check(curve)
    finest, least = curve[0]
    if least <= D15_SHARE:
        return filters.min_d15(size(D15_SHARE, curve))
    most = filters.min_d15(finest)
    why = "the soil's D15 is finer than its finest sieve"
    return Assumed(Range(filters.LEAST_D15, most), why)


@quantity(
    "soil.bank.classic_max_d15",
    title="largest D15 of grains against the soil in the bank, classic set",
    kind="length",
    needs=("soil.bank.d85",),
    formula="5 x D85",
    source=CLASSIC,
    told_in=GRAINS,
)
def classic_max_d15(d85: float) -> float:
    """Return the largest D15 by the classic set [m]."""
    return filters.classic_max_d15(d85)


@quantity(
    "soil.bank.classic_max_d50",
    title="largest D50 of grains against the soil in the bank, classic set",
    kind="length",
    needs=("soil.bank.d50",),
    formula="25 x D50",
    source=CLASSIC,
    told_in=GRAINS,
)
def classic_max_d50(d50: float) -> float:
    """Return the largest D50 by the classic set [m]."""
    return filters.classic_max_d50(d50)


@quantity(
    "soil.bank.classic_min_d15",
    title="least D15 of grains against the soil in the bank, classic set",
    kind="length",
    needs=("soil.bank.d15",),
    formula="5 x D15",
    source=CLASSIC,
    told_in=GRAINS,
)
def classic_min_d15(d15: float) -> float:
    """Return the least D15 by the classic set [m]."""
    return filters.classic_min_d15(d15)


@quantity(
    "soil.bank.highway_max_d15",
    title="largest D15 of stone against the soil in the bank, highway set",
    kind="length",
    needs=("soil.bank.d15", "soil.bank.d85"),
    formula="the less of 40 x D15 and 5 x D85",
    source=HIGHWAY,
    told_in=GRAINS,
)
def highway_max_d15(d15: float, d85: float) -> float:
    """Return the largest D15 by the highway set [m]."""
    return filters.highway_max_d15(d15, d85)


@quantity(
    "soil.bank.highway_max_d50",
    title="largest D50 of stone against the soil in the bank, highway set",
    kind="length",
    needs=("soil.bank.d50",),
    formula="40 x D50",
    source=HIGHWAY,
    told_in=GRAINS,
)
def highway_max_d50(d50: float) -> float:
    """Return the largest D50 by the highway set [m]."""
    return filters.highway_max_d50(d50)
