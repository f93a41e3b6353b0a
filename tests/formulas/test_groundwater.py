"""Groundwater to a drain: the two ways to the same number, and what grows with what."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from checker.formulas import groundwater

permeabilities = st.floats(1e-9, 1e-2)
heads = st.floats(0.0, 20.0)
distances = st.floats(0.5, 500.0)


def test_half_a_metre_of_silty_sand() -> None:
    # k 1e-6 m/s, drain on the tight layer, water 0.5 m over it: R = 1500 x 0.5 x 0.001 = 0.75 m;
    # q = 1e-6 x 0.25 / 1.5 = 1.667e-7 m2/s. By the short form 0.001 x 0.5 / 3000, the same.
    assert groundwater.reach(0.5, 1e-6, groundwater.SICHARDT_LINE) == pytest.approx(0.75)
    assert groundwater.line_flow(1e-6, 0.5, 0.0, 0.75) == pytest.approx(1.6667e-7, rel=1e-4)
    found = groundwater.line_flow_within_reach(1e-6, 0.5, 0.0, groundwater.SICHARDT_LINE)
    assert found == pytest.approx(1.6667e-7, rel=1e-4)


@given(k=permeabilities, near=heads, more=st.floats(0.01, 10.0), factor=st.floats(1000, 3000))
def test_the_short_forms_are_the_long_ones(
    k: float, near: float, more: float, factor: float
) -> None:
    far = near + more
    reach = groundwater.reach(more, k, factor)
    long = groundwater.line_flow(k, far, near, reach)
    assert groundwater.line_flow_within_reach(k, far, near, factor) == pytest.approx(long, rel=1e-6)
    rain = groundwater.recharge_carried(k, near, more, 2 * reach)
    fed = groundwater.rain_fed_flow_within_reach(k, far, near, factor)
    assert fed == pytest.approx(rain * reach, rel=1e-6)


@given(
    k=permeabilities,
    far=heads,
    near=heads,
    distance=distances,
    more=st.floats(1.0, 5.0),
)
def test_more_permeable_and_nearer_and_higher_bring_no_less(
    k: float, far: float, near: float, distance: float, more: float
) -> None:
    least = groundwater.line_flow(k, far, near, distance)
    assert groundwater.line_flow(k * more, far, near, distance) >= least
    assert groundwater.line_flow(k, far * more, near, distance) >= least
    assert groundwater.line_flow(k, far, near, distance / more) >= least


def test_a_drain_as_high_as_the_water_takes_none() -> None:
    assert groundwater.line_flow(1e-5, 2.0, 2.0, 10.0) == 0.0
    assert groundwater.line_flow(1e-5, 1.0, 2.0, 10.0) == 0.0
    assert groundwater.line_flow_within_reach(1e-5, 2.0, 2.0, 1500) == 0.0


def test_gravel_without_an_upper_end_gives_no_upper_end() -> None:
    assert groundwater.line_flow_within_reach(math.inf, 2.0, 1.0, 1500) == math.inf


@given(depth=st.floats(0.0, 30.0), spacing=st.floats(1.0, 100.0), radius=st.floats(0.02, 0.15))
def test_the_depth_that_stands_in_is_never_the_greater(
    depth: float, spacing: float, radius: float
) -> None:
    assume(spacing > math.pi * radius)
    assert 0 <= groundwater.equivalent_depth(depth, spacing, radius) <= depth


@pytest.mark.parametrize("bad", [-1.0, math.nan])
def test_what_cannot_be_is_refused(bad: float) -> None:
    with pytest.raises(ValueError, match="nothing upward"):
        groundwater.line_flow(bad, 2, 1, 10)
    with pytest.raises(ValueError, match="nothing upward"):
        groundwater.line_flow(1e-5, bad, 1, 10)
    with pytest.raises(ValueError, match="nothing upward"):
        groundwater.reach(bad, 1e-5, 1500)
    with pytest.raises(ValueError, match="nothing upward"):
        groundwater.line_flow_within_reach(bad, 2, 1, 1500)
    with pytest.raises(ValueError, match="nothing upward"):
        groundwater.recharge_carried(1e-5, bad, 1, 10)
    for none in (bad, 0.0):
        with pytest.raises(ValueError, match="distance"):
            groundwater.line_flow(1e-5, 2, 1, none)
        with pytest.raises(ValueError, match="factor"):
            groundwater.line_flow_within_reach(1e-5, 2, 1, none)
        with pytest.raises(ValueError, match="spacing"):
            groundwater.recharge_carried(1e-5, 2, 1, none)
        with pytest.raises(ValueError, match="farther apart"):
            groundwater.equivalent_depth(2, 10, none)
        with pytest.raises(ValueError, match="above nothing"):
            groundwater.crowding(none)
    with pytest.raises(ValueError, match="farther apart"):
        groundwater.equivalent_depth(2, 0.3, 0.1)
