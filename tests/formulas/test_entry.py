"""Lowest hole edge over the inside bottom, checked against circles that need no computer."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import entry

a_case = st.tuples(st.floats(0.02, 0.2), st.floats(0, 0.5), st.floats(0, math.pi)).map(
    lambda c: (c[0], c[0] * c[1], c[2])
)


def test_rows_a_third_of_the_round_apart() -> None:
    # Rows 120 degrees apart lie 60 degrees from the bottom; cos 60 = 1/2, so points there stand
    # half a radius up. Turned up they lie 60 degrees from the top, one and a half radii up.
    apart = math.radians(120)
    assert entry.hole_edge_below(2.0, 0.0, apart) == pytest.approx(1.0)
    assert entry.hole_edge_above(2.0, 0.0, apart) == pytest.approx(3.0)


def test_a_hole_takes_half_its_width_off_the_angle() -> None:
    # A hole of half the radius takes asin(1/2) = 30 degrees on each side of its middle. Rows 120
    # degrees apart: lower edges 60 - 30 = 30 degrees from the bottom, 1 - cos 30 = 0.133975 R.
    # Turned up: 180 - 60 - 30 = 90 degrees from the bottom, one radius up.
    # The same in a pipe twice the size gives twice the height.
    apart = math.radians(120)
    for size in (1.0, 2.0):
        below = entry.hole_edge_below(size, size / 2, apart)
        assert below == pytest.approx(size * 0.133975, abs=1e-6)
        assert entry.hole_edge_above(size, size / 2, apart) == pytest.approx(size)


def test_rows_side_by_side_reach_the_bottom_or_the_top() -> None:
    assert entry.hole_edge_below(1.0, 0.5, 0.0) == 0.0
    # One hole at the top, 30 degrees to each side: 1 + cos 30 = 1.866025
    assert entry.hole_edge_above(1.0, 0.5, 0.0) == pytest.approx(1.866025, abs=1e-6)


def test_rows_half_the_round_apart_are_the_same_up_and_down() -> None:
    below = entry.hole_edge_below(1.0, 0.1, math.pi)
    assert below == pytest.approx(entry.hole_edge_above(1.0, 0.1, math.pi))


@given(a_case)
def test_water_enters_between_the_bottom_and_the_top_of_the_pipe(
    case: tuple[float, float, float],
) -> None:
    below, above = entry.hole_edge_below(*case), entry.hole_edge_above(*case)
    assert 0 <= below <= above + 1e-12
    assert above <= 2 * case[0] + 1e-12


@given(a_case)
def test_a_larger_hole_never_lets_water_in_later(case: tuple[float, float, float]) -> None:
    radius, hole, apart = case
    larger = (hole + radius) / 2
    assert entry.hole_edge_below(radius, larger, apart) <= entry.hole_edge_below(*case) + 1e-12
    assert entry.hole_edge_above(radius, larger, apart) <= entry.hole_edge_above(*case) + 1e-12


@pytest.mark.parametrize(
    ("radius", "hole", "apart"),
    [(1.0, 1.0, 1.0), (1.0, -0.1, 1.0), (1.0, 0.1, -0.1), (1.0, 0.1, 3.2), (0.0, 0.0, 1.0)],
)
def test_holes_that_cannot_be_are_refused(radius: float, hole: float, apart: float) -> None:
    with pytest.raises(ValueError, match="hole"):
        entry.hole_edge_below(radius, hole, apart)
    with pytest.raises(ValueError, match="hole"):
        entry.hole_edge_above(radius, hole, apart)
