"""Run-out of the sides of a dig: order of the soil types and the limits of the table."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import excavation

FOOT = 0.3048


def test_an_unclassed_soil_counts_as_the_worst_type() -> None:
    worst = max(excavation.run_per_rise(soil) for soil in ("stable_rock", "a", "b", "c"))
    assert worst == excavation.UNCLASSIFIED


def test_weaker_soil_leans_back_farther() -> None:
    outs = [excavation.run_out(3.0, excavation.run_per_rise(soil)) for soil in ("a", "b", "c")]
    assert outs == sorted(outs)
    assert len(set(outs)) == 3


def test_the_table_ends_at_twenty_feet() -> None:
    # 20 ft at one to one: 20 ft. Any deeper there is no answer.
    assert excavation.run_out(20 * FOOT, 1.0) == pytest.approx(20 * FOOT)
    with pytest.raises(ValueError, match="engineer"):
        excavation.run_out(20.01 * FOOT, 1.0)


@given(depth=st.floats(0.1, 6.0), slope=st.floats(0, 3), deeper=st.floats(0, 0.09))
def test_a_deeper_dig_never_needs_less_room(depth: float, slope: float, deeper: float) -> None:
    assert excavation.run_out(depth + deeper, slope) >= excavation.run_out(depth, slope)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="depth"):
        excavation.run_out(0.0, 1.0)
    with pytest.raises(ValueError, match="slope"):
        excavation.run_out(1.0, -1.0)
    with pytest.raises(ValueError, match="soil type"):
        excavation.run_per_rise("d")


def test_benches_by_the_line_along_their_edges() -> None:
    # 2 ft back for each 5 ft of height: 0.4.
    assert excavation.bench_slope(2 * FOOT, 5 * FOOT) == pytest.approx(0.4)


def test_room_is_slope_and_working_width_and_footing() -> None:
    # 14.1 + 3 + 7/12 = 17.68 ft
    room = excavation.room_needed(14.1 * FOOT, 3 * FOOT, 7 / 12 * FOOT)
    assert room / FOOT == pytest.approx(17.683, abs=1e-3)


@pytest.mark.parametrize(
    ("base", "bottom", "run", "needed"),
    [
        # sheer: as far as the base stands over the bottom
        (96.0, 90.0, 0.0, 6.0),
        # the bank lies back 4 of the 6
        (96.0, 90.0, 4.0, 2.0),
        # or more than all of it
        (96.0, 90.0, 9.0, 0.0),
        # a base deeper than the dig is not undercut
        (89.0, 90.0, 0.0, 0.0),
    ],
)
def test_a_line_at_one_to_one_from_the_neighbours_footing(
    base: float, bottom: float, run: float, needed: float
) -> None:
    assert excavation.distance_needed(base, bottom, run) == pytest.approx(needed)


def test_spoil_stays_as_far_from_the_toe_as_the_hole_is_deep() -> None:
    # sheer 9 ft: 9 ft; 9 ft at 0.75: 9 - 6.75 = 2.25 ft; at 1.5: the 2 ft of the rule
    assert excavation.setback_needed(9 * FOOT, 0.0) == pytest.approx(9 * FOOT)
    assert excavation.setback_needed(9 * FOOT, 6.75 * FOOT) == pytest.approx(2.25 * FOOT)
    assert excavation.setback_needed(9 * FOOT, 13.5 * FOOT) == pytest.approx(2 * FOOT)


def test_what_no_bank_can_be_is_refused() -> None:
    with pytest.raises(ValueError, match="face"):
        excavation.bench_slope(1.0, 0.0)
    with pytest.raises(ValueError, match="narrower"):
        excavation.bench_slope(-1.0, 1.0)
    with pytest.raises(ValueError, match="upward"):
        excavation.room_needed(1.0, -1.0, 0.0)
    with pytest.raises(ValueError, match="outward"):
        excavation.distance_needed(96.0, 90.0, -1.0)
    with pytest.raises(ValueError, match="depth"):
        excavation.setback_needed(0.0, 0.0)
