"""The plain geometry of a cut, against figures worked out by hand."""

from __future__ import annotations

import math

import pytest

from checker.showing.drawing.geometry import (
    bank_top,
    down_the_wall,
    ground_at,
    hole_angles,
    over_insulation,
    wrap,
)


def test_coat_over_the_footing_goes_down_its_side_to_its_bottom() -> None:
    line = down_the_wall(10.0, 1.0, joint=2.0, toe=0.2, lap=None)
    assert line == ((0.0, 10.0), (0.0, 2.0), (0.2, 2.0), (0.2, 1.0))


def test_coat_that_laps_half_the_footing_ends_there() -> None:
    line = down_the_wall(10.0, 1.0, joint=2.0, toe=0.2, lap=0.1)
    assert line == ((0.0, 10.0), (0.0, 2.0), (0.1, 2.0))


def test_coat_that_stops_above_the_joint_stops_on_the_wall() -> None:
    assert down_the_wall(10.0, 2.5, joint=2.0, toe=0.2, lap=0.1) == ((0.0, 10.0), (0.0, 2.5))


def test_coat_to_the_joint_without_a_lap_ends_at_the_joint() -> None:
    assert down_the_wall(10.0, 2.0, joint=2.0, toe=0.2, lap=0.0)[-1] == (0.0, 2.0)
    assert down_the_wall(10.0, 2.0, joint=2.0, toe=0.2, lap=0.15)[-1] == (0.15, 2.0)


def test_sheet_over_insulation_comes_back_to_the_wall_under_it() -> None:
    line = over_insulation(((0.0, 10.0), (0.0, 2.0)), thick=0.05, low=6.0)
    assert line == ((0.05, 10.0), (0.05, 6.0), (0.0, 6.0), (0.0, 2.0))


def test_sheet_under_the_insulation_is_left_as_it_is() -> None:
    line = ((0.0, 5.0), (0.0, 2.0))
    assert over_insulation(line, thick=0.05, low=6.0) == line


def test_sheet_over_insulation_down_to_the_footing_never_leaves_it() -> None:
    line = over_insulation(((0.0, 10.0), (0.0, 2.0)), thick=0.05, low=2.0)
    assert line == ((0.05, 10.0), (0.05, 2.0))


def test_stone_over_the_footing_lies_against_the_wall() -> None:
    assert wrap(0.2, 0.6, joint=2.0, bottom=1.0, top=3.0) == (
        (0.0, 3.0), (0.0, 2.0), (0.2, 2.0), (0.2, 1.0), (0.6, 1.0), (0.6, 3.0),
    )  # fmt: skip


def test_stone_that_stays_below_the_joint_stays_beside_the_footing() -> None:
    assert (0.0, 1.5) not in wrap(0.2, 0.6, joint=2.0, bottom=1.0, top=1.5)
    assert min(x for x, _ in wrap(0.2, 0.6, joint=2.0, bottom=1.0, top=1.5)) == 0.2


def test_stone_under_a_pipe_on_the_footing_is_a_shelf() -> None:
    outline = wrap(0.2, 0.6, joint=2.0, bottom=2.1, top=3.0)
    assert min(y for _, y in outline) == 2.1


def test_ground_falls_evenly_and_then_runs_level() -> None:
    ground = ((0.0, 100.0), (10.0, 99.5))
    assert ground_at(ground, 5.0) == pytest.approx(99.75)
    assert ground_at(ground, 20.0) == 99.5


def test_bank_comes_out_where_it_meets_falling_ground() -> None:
    # The bank rises 1 in 1.5 from (1, 90), the ground falls 1 in 20 from (0, 100):
    # 90 + r = 100 - (1 + 1.5 r) / 20, so 1.075 r = 9.95 and r = 9.2558.
    x, y = bank_top(((0.0, 100.0), (40.0, 98.0)), (1.0, 90.0), 1.5)
    assert y == pytest.approx(90 + 9.95 / 1.075)
    assert x == pytest.approx(1 + 1.5 * 9.95 / 1.075)


def test_upright_bank_stays_over_its_foot() -> None:
    assert bank_top(((0.0, 10.0), (30.0, 10.0)), (1.0, 7.0), 0.0) == pytest.approx((1.0, 10.0))


@pytest.mark.parametrize(
    ("holes", "degrees"),
    [
        (("down",), {120, 240}),
        (("up",), {-60, 60}),
        (("both",), {-60, 60, 120, 240}),
        ((), set()),
    ],
)
def test_rows_120_degrees_apart_lie_60_from_the_bottom_or_the_top(
    holes: tuple[str, ...], degrees: set[int]
) -> None:
    found = {round(math.degrees(angle)) for angle in hole_angles(holes, math.radians(120))}
    assert found == degrees


def test_slots_go_all_round() -> None:
    assert len(hole_angles(("slotted",), 1.0)) == 8
