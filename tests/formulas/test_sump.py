"""A pit and its pump: volumes, cycles, heads, and where the two curves cross."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from checker.formulas import sump

INCH = 0.0254
FOOT = 0.3048
GALLON = 231 * INCH**3
GPM = GALLON / 60

flows = st.floats(1e-5, 0.01)
volumes = st.floats(0.001, 2.0)


def test_what_an_18_inch_pit_holds() -> None:
    # pi x 81 x 8 / 231 = 8.81 gal between floats 8 in apart; 1.10 gal to the inch.
    assert sump.volume(18 * INCH, 8 * INCH, 0) == pytest.approx(8.81 * GALLON, rel=1e-3)
    assert sump.volume(18 * INCH, INCH, 0) == pytest.approx(1.10 * GALLON, rel=5e-3)


def test_a_small_pit_with_a_common_pump_starts_within_a_minute_or_so() -> None:
    # Derived: 4 x 8.8 / 30 = 1.17 min.
    assert sump.shortest_cycle(8.8 * GALLON, 30 * GPM) == pytest.approx(1.17 * 60, rel=5e-3)


@given(storage=volumes, pump=flows, part=st.floats(0.01, 0.99))
def test_no_inflow_starts_the_pump_more_often_than_half_its_flow(
    storage: float, pump: float, part: float
) -> None:
    least = sump.shortest_cycle(storage, pump)
    assert sump.cycle_time(storage, pump, part * pump) >= least * (1 - 1e-9)
    assert sump.cycle_time(storage, pump, pump / 2) == pytest.approx(least)


@given(flow=flows, diameter=st.floats(0.02, 0.1), length=st.floats(0.0, 100.0))
def test_a_wider_or_shorter_pipe_never_asks_more_head(
    flow: float, diameter: float, length: float
) -> None:
    most = sump.total_head(2.0, flow, diameter, length)
    assert sump.total_head(2.0, flow, diameter * 1.2, length) <= most
    assert sump.total_head(2.0, flow, diameter, length / 2) <= most
    assert most >= 2.0


@given(
    lift=st.floats(0.5, 4.0),
    length=st.floats(1.0, 60.0),
    named_flow=st.floats(0.0005, 0.004),
    named_head=st.floats(0.5, 4.0),
    spare=st.floats(0.5, 5.0),
)
def test_at_its_duty_the_pump_gives_the_head_it_works_against(
    lift: float, length: float, named_flow: float, named_head: float, spare: float
) -> None:
    shutoff = max(lift, named_head) + spare
    assume(sump.total_head(lift, named_flow, 0.04, length) > named_head)
    found = sump.duty(lift, 0.04, length, shutoff, (named_flow, named_head))
    assert 0 < found < named_flow
    given_head = sump.curve_head(found, shutoff, named_flow, named_head)
    assert given_head == pytest.approx(sump.total_head(lift, found, 0.04, length), rel=1e-6)


def test_a_pump_that_does_not_reach_gives_nothing() -> None:
    assert sump.duty(4.0, 0.04, 10, 3.0, (0.002, 1.0)) == pytest.approx(0.0, abs=1e-12)


def test_the_curve_goes_through_its_two_points() -> None:
    assert sump.curve_head(0.0, 6.0, 0.002, 3.0) == 6.0
    assert sump.curve_head(0.002, 6.0, 0.002, 3.0) == pytest.approx(3.0)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="diameter"):
        sump.volume(0.0, 1, 0)
    with pytest.raises(ValueError, match="below the lower"):
        sump.volume(0.5, 0, 1)
    with pytest.raises(ValueError, match="some time"):
        sump.measured_inflow(0.5, 0.1, 0)
    with pytest.raises(ValueError, match="above nothing"):
        sump.by_floor_area(0, 1e-6)
    with pytest.raises(ValueError, match="never starts"):
        sump.cycle_time(0.1, 0.002, 0)
    for arriving in (0.002, 0.003):
        with pytest.raises(ValueError, match="never stops"):
            sump.cycle_time(0.1, 0.002, arriving)
    for storage, pump in ((0.0, 0.002), (0.1, 0.0), (math.nan, 0.002)):
        with pytest.raises(ValueError, match="above nothing"):
            sump.shortest_cycle(storage, pump)
    with pytest.raises(ValueError, match="pressed pipe"):
        sump.friction(0.002, 0.0, 10)
    with pytest.raises(ValueError, match="pressed pipe"):
        sump.velocity_head(-0.1, 0.04)
    with pytest.raises(ValueError, match="contradict"):
        sump.curve_head(0.001, 3.0, 0.002, 3.0)
    with pytest.raises(ValueError, match="not known"):
        sump.duty(1.0, 0.1, 1, 6.0, (0.001, 4.0))
    with pytest.raises(ValueError, match="nothing fills"):
        sump.time_to_fill(1.0, 0.0)
    with pytest.raises(ValueError, match="holds"):
        sump.time_to_fill(-1.0, 0.1)
