"""Amounts to order: by hand, how they scale, and what cannot be ordered."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import takeoff

INCH = 0.0254
FOOT = 0.3048
LENGTHS = st.floats(1, 200)
PARTS = st.floats(0.05, 2)


def test_a_ring_by_its_outer_and_inner_rectangle() -> None:
    # A 10 m x 5 m house, strip from 1 m to 3 m off: 16 x 11 - 12 x 7 = 176 - 84 = 92 m2.
    assert takeoff.ring_area(30.0, 1.0, 3.0) == pytest.approx(92.0)


@given(around=LENGTHS, reach=PARTS, deep=PARTS, toe=PARTS, over=PARTS)
def test_twice_the_wall_adds_its_section(
    around: float, reach: float, deep: float, toe: float, over: float
) -> None:
    # The corners stay four, so a longer wall adds the plain section along what is added.
    once = takeoff.stone_in_ring(around, reach, deep, toe, over)
    twice = takeoff.stone_in_ring(2 * around, reach, deep, toe, over)
    assert twice - once == pytest.approx(takeoff.stone_section(reach, deep, toe, over) * around)


@given(around=LENGTHS, reach=PARTS, deep=PARTS, toe=PARTS, over=PARTS)
def test_a_house_twice_as_large_in_every_way_takes_eight_times_the_stone(
    around: float, reach: float, deep: float, toe: float, over: float
) -> None:
    small = takeoff.stone_in_ring(around, reach, deep, toe, over)
    large = takeoff.stone_in_ring(*(2 * part for part in (around, reach, deep, toe, over)))
    assert large == pytest.approx(8 * small)


@given(length=LENGTHS, outside=PARTS)
def test_twice_the_pipe_takes_twice_the_room(length: float, outside: float) -> None:
    once = takeoff.pipe_volume(length, outside)
    assert takeoff.pipe_volume(2 * length, outside) == pytest.approx(2 * once)
    assert once == pytest.approx(math.pi * (outside / 2) ** 2 * length)


@given(area=LENGTHS, dry=st.floats(1e-4, 5e-3), solids=st.floats(0.2, 1), loss=st.floats(0, 0.5))
def test_coat_ordered_dries_to_the_thickness(
    area: float, dry: float, solids: float, loss: float
) -> None:
    volume = takeoff.coat_volume(area, dry, solids, loss)
    assert volume * (1 - loss) * solids / area == pytest.approx(dry)


def test_a_wrap_round_21_by_22_inches() -> None:
    # 2 x (21 + 22) + 12 = 98 in; over it 21 + 12 = 33; at the bank 22 + 12 = 34.
    assert takeoff.wrap_width(21 * INCH, 22 * INCH, 12 * INCH) == pytest.approx(98 * INCH)
    assert takeoff.cover_width(21 * INCH, 12 * INCH) == pytest.approx(33 * INCH)
    assert takeoff.bank_width(22 * INCH, 12 * INCH) == pytest.approx(34 * INCH)


def test_rolls_of_2_metres_lapped_200_mm() -> None:
    # 1.8 m of each 2 m shows: 90 m2 of wall take 100 m2.
    assert takeoff.lapped(90.0, 2.0, 0.2) == pytest.approx(100.0)
    assert takeoff.with_waste(100.0, 0.05) == pytest.approx(105.0)


def test_a_wall_with_and_without_its_footing() -> None:
    # 10 m x 5 m house, 3 m of wall, down to the footing: 90 m2. Over a toe of 0.5 m and 0.2 m down
    # its side: 11 x 6 - 10 x 5 = 16 m2, and 34 m x 0.2 = 6.8 m2 more.
    assert takeoff.wall_face(30.0, 3.0, 0.0, 0.0, 0.5) == pytest.approx(90.0)
    assert takeoff.wall_face(30.0, 3.0, -0.2, 0.0, 0.5) == pytest.approx(112.8)
    # One that stops half a metre over the footing: 75 m2.
    assert takeoff.wall_face(30.0, 3.0, 0.5, 0.0, 0.5) == pytest.approx(75.0)


def test_a_cubic_yard_of_stone_at_100_pounds() -> None:
    # 27 cu ft x 100 lb = 2700 lb = 1224.7 kg
    pcf = 4.4482216152605 / FOOT**3
    assert takeoff.mass(27 * FOOT**3, 100 * pcf) == pytest.approx(2700 * 0.45359237)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="wall"):
        takeoff.ring_area(0.0, 0.0, 1.0)
    with pytest.raises(ValueError, match="outward"):
        takeoff.ring_area(30.0, 1.0, 0.5)
    with pytest.raises(ValueError, match="width and a depth"):
        takeoff.stone_section(0.3, 0.0, 0.2, 0.1)
    with pytest.raises(ValueError, match="diameter"):
        takeoff.pipe_volume(10.0, 0.0)
    with pytest.raises(ValueError, match="weight"):
        takeoff.mass(1.0, 0.0)
    with pytest.raises(ValueError, match="lap"):
        takeoff.wrap_width(0.5, 0.5, -0.1)
    with pytest.raises(ValueError, match="wider"):
        takeoff.lapped(10.0, 0.15, 0.15)
    with pytest.raises(ValueError, match="upward"):
        takeoff.with_waste(10.0, -0.1)
    with pytest.raises(ValueError, match="above"):
        takeoff.wall_face(30.0, 0.0, -0.2, 0.0, 0.5)
    with pytest.raises(ValueError, match="shares"):
        takeoff.coat_volume(10.0, 0.001, 0.6, 1.0)
