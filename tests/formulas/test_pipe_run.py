"""The drain as corners and runs. Inverts in the examples are small whole numbers, so any pond
can be read off a sketch."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import pipe_run

inverts_and_outlet = st.lists(st.floats(-10, 10), min_size=2, max_size=9).flatmap(
    lambda inverts: st.tuples(st.just(inverts), st.integers(0, len(inverts) - 1))
)


def test_fall_and_slope() -> None:
    # 1 in 100 over 30 m is 0.3 m, and back.
    assert pipe_run.fall(0.01, 30.0) == pytest.approx(0.3)
    assert pipe_run.slope(0.3, 30.0) == pytest.approx(0.01)
    assert pipe_run.slope(-0.3, 30.0) == pytest.approx(-0.01)


def test_two_ways_round_a_loop_and_one_along_a_line() -> None:
    assert pipe_run.ways_to_outlet(4, 0, 2, closed=True) == [[0, 1, 2], [0, 3, 2]]
    assert pipe_run.ways_to_outlet(4, 3, 1, closed=True) == [[3, 0, 1], [3, 2, 1]]
    assert pipe_run.ways_to_outlet(4, 2, 2, closed=True) == [[2]]
    assert pipe_run.ways_to_outlet(4, 0, 2, closed=False) == [[0, 1, 2]]
    assert pipe_run.ways_to_outlet(4, 3, 1, closed=False) == [[3, 2, 1]]


def test_a_loop_that_falls_both_ways_to_its_outlet_keeps_no_water() -> None:
    assert pipe_run.standing_depths([5, 3, 0, 2], 2, closed=True) == [0, 0, 0, 0]


def test_a_dip_on_one_side_fills_to_the_lower_of_its_two_lips() -> None:
    # 5 > 1 < 4 > 0 < 2 < 5: the dip of 1 leaves over 4 (to the outlet) or over 5 (back over the
    # top): the lower lip is 4, so 3 stay. Nothing else ponds.
    assert pipe_run.standing_depths([5, 1, 4, 0, 2], 3, closed=True) == [0, 3, 0, 0, 0]


def test_water_takes_the_lower_way_round_only_in_a_loop() -> None:
    # Corner 1 lies at 1 between a lip of 4 before the outlet and an open way back over 2: in a
    # loop 1 stays. Cut open between the last corner and the first, it must climb over the 4.
    inverts = [2, 1, 4, 0, 1.5]
    assert pipe_run.standing_depths(inverts, 3, closed=True) == [0, 1, 0, 0, 0]
    assert pipe_run.standing_depths(inverts, 3, closed=False) == [2, 3, 0, 0, 0]


def test_an_outlet_that_is_not_the_lowest_corner_leaves_the_low_corner_full() -> None:
    assert pipe_run.standing_depths([3, 1, 2], 2, closed=True) == [0, 1, 0]


@given(inverts_and_outlet)
def test_water_never_stands_below_nothing_and_never_above_the_top(
    case: tuple[list[float], int],
) -> None:
    inverts, outlet = case
    for closed in (True, False):
        depths = pipe_run.standing_depths(inverts, outlet, closed)
        for depth, invert in zip(depths, inverts, strict=True):
            assert depth >= 0
            assert invert + depth <= max(inverts) + 1e-9
        assert depths[outlet] == 0


@given(inverts_and_outlet)
def test_a_loop_never_holds_more_water_than_the_same_drain_cut_open(
    case: tuple[list[float], int],
) -> None:
    inverts, outlet = case
    loop = pipe_run.standing_depths(inverts, outlet, closed=True)
    line = pipe_run.standing_depths(inverts, outlet, closed=False)
    assert all(a <= b for a, b in zip(loop, line, strict=True))


def test_slope_of_each_run_whichever_way_it_falls() -> None:
    # drops of 2, 3, 2 and 3 over 100, 100, 50 and 200
    slopes = pipe_run.run_fractions([5, 3, 0, 2], [100, 100, 50, 200], closed=True)
    assert slopes == pytest.approx([0.02, 0.03, 0.04, 0.015])
    assert pipe_run.run_fractions([5, 3, 0], [100, 100], closed=False) == pytest.approx(
        [0.02, 0.03]
    )


def test_longest_way_is_the_longer_of_the_two_from_the_highest_corner() -> None:
    # From corner 0 to corner 2: 42 + 30 one way, 50 + 20 the other.
    assert pipe_run.longest_way([5, 3, 0, 2], [42, 30, 20, 50], 2, closed=True) == 72
    # A line has one way only, in either direction.
    assert pipe_run.longest_way([5, 3, 0, 2], [42, 30, 20], 2, closed=False) == 72
    assert pipe_run.longest_way([0, 3, 4, 5], [42, 30, 20], 0, closed=False) == 92


def test_of_equally_high_corners_the_farther_from_the_outlet_counts() -> None:
    # Corners 0 and 1 are both at 5, the outlet at 2. Corner 1 is 30 away (or 112 back round);
    # corner 0 is 72 away (or 70 the other way). Corner 0 is the farther by its shorter way.
    assert pipe_run.longest_way([5, 5, 0, 2], [42, 30, 20, 50], 2, closed=True) == 72


def test_total_length_leaves_out_the_closing_run_of_a_line() -> None:
    assert pipe_run.total_length([42, 30, 42, 30], 4, closed=True) == 144
    assert pipe_run.total_length([42, 30, 42, 30], 4, closed=False) == 114
    assert pipe_run.total_length([42, 30, 42], 4, closed=False) == 114


def test_lengths_add_up_the_same_in_every_python() -> None:
    # Ten times 0.1, added one after the other in floating point, are 0.9999999999999999.
    assert pipe_run.total_length([0.1] * 10, 10, True) == 1.0


@given(length=st.floats(1, 100), width=st.floats(1, 100), offset=st.floats(0, 3))
def test_length_at_offset_agrees_with_a_rectangle_grown_on_all_sides(
    length: float, width: float, offset: float
) -> None:
    grown = 2 * (length + 2 * offset) + 2 * (width + 2 * offset)
    around = 2 * (length + width)
    assert pipe_run.length_at_offset(around, offset) == pytest.approx(grown)


def test_what_cannot_be_a_drain_is_refused() -> None:
    with pytest.raises(ValueError, match="do not make a loop"):
        pipe_run.run_fractions([5, 3, 0], [100, 100], closed=True)
    with pytest.raises(ValueError, match="do not make a line"):
        pipe_run.run_fractions([5, 3, 0], [100], closed=False)
    with pytest.raises(ValueError, match="do not make a loop"):
        pipe_run.total_length([100], 1, closed=True)
    with pytest.raises(ValueError, match="length"):
        pipe_run.run_fractions([5, 3], [0, 10], closed=True)
    with pytest.raises(ValueError, match="corners"):
        pipe_run.longest_way([5, 3], [10, 10], 2, closed=True)
    with pytest.raises(ValueError, match="corners"):
        pipe_run.standing_depths([5, 3], 2, closed=True)
    with pytest.raises(ValueError, match="corner"):
        pipe_run.standing_depths([], 0, closed=True)
    with pytest.raises(ValueError, match="nothing"):
        pipe_run.fall(-0.01, 10)
    with pytest.raises(ValueError, match="length"):
        pipe_run.slope(1.0, 0.0)
    with pytest.raises(ValueError, match="length"):
        pipe_run.length_at_offset(0.0, 1.0)


# -- where water parts, and what each run gathers ---------------------------------------------------


def test_water_parts_at_the_highest_corner_farthest_from_the_outlet() -> None:
    assert pipe_run.parting_corner([3.0, 2.0, 1.0, 2.0], 2) == 0
    assert pipe_run.parting_corner([2.0, 2.0, 2.0, 2.0, 2.0], 4) in (1, 2)
    with pytest.raises(ValueError, match="one of the corners"):
        pipe_run.parting_corner([1.0, 2.0], 2)


def test_each_run_gathers_from_where_the_water_parts() -> None:
    # A loop of 42, 30, 42 and 30 from corner 0 to an outlet at 2: 42 and 72 of 144 one way round,
    # 30 and 72 the other. The run numbered 2 leads from 3 to 2.
    runs = pipe_run.runs_to_outlet([42.0, 30.0, 42.0, 30.0], 4, 0, 2)
    assert [(run.upper, run.lower) for run in runs] == [(0, 1), (1, 2), (3, 2), (0, 3)]
    assert [run.share * 144 for run in runs] == pytest.approx([42, 72, 72, 30])


@given(
    lengths=st.lists(st.floats(0.5, 50), min_size=3, max_size=8),
    parting=st.integers(0, 7),
    outlet=st.integers(0, 7),
)
def test_all_the_water_of_a_loop_comes_out_at_the_outlet(
    lengths: list[float], parting: int, outlet: int
) -> None:
    corners = len(lengths)
    parting, outlet = parting % corners, outlet % corners
    if parting == outlet:
        with pytest.raises(ValueError, match="highest corner"):
            pipe_run.runs_to_outlet(lengths, corners, parting, outlet)
        return
    runs = pipe_run.runs_to_outlet(lengths, corners, parting, outlet)
    assert len(runs) == corners
    assert sum(run.share for run in runs if run.lower == outlet) == pytest.approx(1.0)


def test_a_line_gathers_from_its_ends() -> None:
    runs = pipe_run.runs_to_outlet([10.0, 20.0], 3, None, 1)
    assert [(run.upper, run.lower) for run in runs] == [(0, 1), (2, 1)]
    assert [run.share for run in runs] == pytest.approx([1 / 3, 2 / 3])
