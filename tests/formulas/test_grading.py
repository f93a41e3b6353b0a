"""Slope of the ground and what settling takes from it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import grading


def test_ground_that_rises_from_the_wall_has_a_slope_below_nothing() -> None:
    assert grading.slope(-0.2, 4.0) == pytest.approx(-0.05)


def test_settling_may_turn_the_slope_round() -> None:
    # 8 in of fall less 10 in of settling over 100 in: 2 in the wrong way, -2 %
    assert grading.settled_slope(8, 10, 100) == pytest.approx(-0.02)


@given(fall=st.floats(-3, 3), sinks=st.floats(0, 1), distance=st.floats(0.1, 20))
def test_settling_never_makes_the_ground_steeper(
    fall: float, sinks: float, distance: float
) -> None:
    assert grading.settled_slope(fall, sinks, distance) <= grading.slope(fall, distance)


def test_settlement_takes_the_share_given() -> None:
    assert grading.settlement(3.0, 0.1) == pytest.approx(0.3)
    assert grading.settlement(3.0, 0.0) == 0.0
    assert grading.settlement(3.0, 1.0) == 3.0
    assert grading.settlement(0.0) == 0.0


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="distance"):
        grading.slope(0.1, 0.0)
    with pytest.raises(ValueError, match="fill"):
        grading.settlement(-0.1)
    with pytest.raises(ValueError, match="fill"):
        grading.settlement(1.0, 1.1)
    with pytest.raises(ValueError, match="settling"):
        grading.settled_slope(0.1, -0.1, 1.0)
