"""Slopes of the ground as codes and guides print them."""

from __future__ import annotations

import pytest

from checker.formulas import grading

INCH = 0.0254
FOOT = 0.3048


def test_six_inches_in_ten_feet_is_five_percent() -> None:
    # IRC R401.3 and IBC 1804.4 give both figures. One web page calls it 6 %, which is wrong.
    slope = grading.slope(6 * INCH, 10 * FOOT)
    assert slope == pytest.approx(0.05)
    assert slope != pytest.approx(0.06, abs=0.005)


def test_half_an_inch_per_foot_is_less_than_six_inches_in_ten_feet() -> None:
    # EPA Indoor airPLUS 1.1 and Wisconsin SPS 321.12 ask 1/2 in/ft: 4.17 %, 5 in in 10 ft.
    slope = grading.slope(0.5 * INCH, FOOT)
    assert slope == pytest.approx(0.0417, abs=5e-5)
    assert slope * 10 * FOOT == pytest.approx(5 * INCH)
    assert slope < grading.slope(6 * INCH, 10 * FOOT)


def test_a_quarter_inch_per_foot() -> None:
    # EPA Indoor airPLUS 1.1 asks 1/4 in/ft of patios and walks: 2.1 %.
    assert grading.slope(0.25 * INCH, FOOT) == pytest.approx(0.021, abs=5e-4)


def test_fill_that_settles_by_a_twentieth() -> None:
    # By hand: 8 ft of fill at 5 % sink 4.8 in; of the 6 in in 10 ft, 1.2 in are left, which is 1 %.
    sinks = grading.settlement(8 * FOOT)
    assert sinks == pytest.approx(4.8 * INCH)
    left = grading.settled_slope(6 * INCH, sinks, 10 * FOOT)
    assert left * 10 * FOOT == pytest.approx(1.2 * INCH)
    assert left == pytest.approx(0.01)
