"""Sieve curves against a textbook's, a package's and an independent interpolation."""

from __future__ import annotations

import math
from importlib import import_module

import pytest

from checker.formulas import filters, gradation, uscs

MM = 1e-3
# B. M. Das, Principles of Geotechnical Engineering, example 2.1 (sieve test of a sand).
SIEVES = (0.075, 0.150, 0.180, 0.250, 0.425, 0.850, 2.00, 4.75)
PASSING = (0.017, 0.093, 0.381, 0.549, 0.741, 0.863, 0.945, 1.0)
DAS = tuple((size * MM, share) for size, share in zip(SIEVES, PASSING, strict=True))


@pytest.mark.parametrize(
    ("share", "by_eye", "size"),
    [
        # The book reads D10, D30 and D60 off its printed graph. By hand, log-linear, D60 lies
        # between 0.250 mm (54.9 %) and 0.425 mm (74.1 %): 0.250 x 1.7^(5.1 / 19.2) = 0.2878 mm.
        # The book's 0.27 mm is 6 % low; the others are a hair from the curve.
        (0.10, 0.15, 0.1507),
        (0.30, 0.17, 0.1710),
        (0.60, 0.27, 0.2878),
        (0.15, None, 0.1555),
        (0.50, None, 0.2272),
        (0.85, None, 0.7895),
    ],
)
def test_das_example_2_1(share: float, by_eye: float | None, size: float) -> None:
    found = gradation.size_at(DAS, share) / MM
    assert found == pytest.approx(size, abs=6e-5)
    if by_eye is not None:
        assert found == pytest.approx(by_eye, rel=0.07)


def test_das_example_2_2() -> None:
    # Cu and Cc of the same sand. The book, by its graph: 1.8 and 0.71. By the sizes above:
    # 0.2878 / 0.1507 = 1.910 and 0.1710^2 / (0.2878 x 0.1507) = 0.674.
    d10, d30, d60 = (gradation.size_at(DAS, share) for share in (0.10, 0.30, 0.60))
    cu, cc = gradation.uniformity(d10, d60), gradation.curvature(d10, d30, d60)
    assert cu == pytest.approx(1.910, abs=1e-3)
    assert cc == pytest.approx(0.674, abs=1e-3)
    assert cu == pytest.approx(1.8, rel=0.07)
    assert cc == pytest.approx(0.71, rel=0.06)
    # With the book's own sizes: 0.27 / 0.15 and 0.17^2 / (0.27 x 0.15).
    assert gradation.uniformity(0.15, 0.27) == pytest.approx(1.8)
    assert gradation.curvature(0.15, 0.17, 0.27) == pytest.approx(0.71, abs=0.005)


@pytest.mark.parametrize(("share", "wrong"), [(0.60, 0.2965), (0.85, 0.8047)])
def test_reading_the_size_linear_would_be_wrong(share: float, wrong: float) -> None:
    # Derived: the same sand read linear in size gives 3 % and 2 % more.
    assert gradation.size_at(DAS, share) / MM != pytest.approx(wrong, rel=0.01)


def test_coefficients_of_a_package_manual() -> None:
    # Inputs of the manual of the R package geotech 1.0; by hand 0.10 / 0.002 = 50 and
    # 0.03^2 / (0.10 x 0.002) = 4.5.
    assert gradation.uniformity(0.002, 0.10) == pytest.approx(50)
    assert gradation.curvature(0.002, 0.03, 0.10) == pytest.approx(4.5)


def test_against_an_independent_interpolation() -> None:
    interp = import_module("numpy").interp
    logs = [math.log10(size) for size in SIEVES]
    for percent in range(2, 101):
        theirs = 10 ** float(interp(percent / 100, PASSING, logs))
        assert gradation.size_at(DAS, percent / 100) / MM == pytest.approx(theirs, rel=1e-9)


def test_regrading_moves_a_soil_from_category_4_to_3() -> None:
    # Derived from the Corps' rule: 60 % passes No. 4, 36 % No. 40 and 12 % No. 200. Divided by 60:
    # 100, 60 and 20 %. To skip it is a common error, and gives category 4.
    soil = ((0.075 * MM, 0.12), (0.425 * MM, 0.36), (4.75 * MM, 0.60), (75 * MM, 1.0))
    regraded = gradation.regrade(soil)
    assert [share for _, share in regraded] == pytest.approx([0.20, 0.60, 1.0])
    assert filters.category(soil[0][1]) == 4
    assert filters.category(regraded[0][1]) == 3


def test_das_sand_has_nothing_to_regrade() -> None:
    assert gradation.regrade(DAS) == DAS
    assert not gradation.needs_regrading(1.0, 0.017, broad=False)
    assert uscs.group_symbol(0.017, 1.0, 1.910, 0.674) == "SP"
