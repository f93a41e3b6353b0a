"""Levels: each expected number is worked out by hand in inches or feet beside the check."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import levels

INCH = 0.0254
FOOT = 0.3048

a_level = st.floats(-100, 100)
a_pipe = st.tuples(st.floats(0.05, 0.4), st.floats(0, 0.49)).map(lambda p: (p[0], p[0] * p[1]))
a_length = st.floats(0, 10)


def test_height_above_is_negative_below() -> None:
    assert levels.height_above(92.0, 90.5) == 1.5
    assert levels.height_above(90.5, 92.0) == -1.5


def test_crown_lies_one_diameter_over_the_outside_bottom() -> None:
    # Invert 100 in, pipe 4 in over all with a wall of 1/4 in: the outside bottom is 99.75 in and
    # the crown 4 in above that, 103.75 in.
    assert levels.crown(100 * INCH, 4 * INCH, 0.25 * INCH) == pytest.approx(103.75 * INCH)
    assert levels.outside_bottom(100 * INCH, 0.25 * INCH) == pytest.approx(99.75 * INCH)


def test_trench_goes_under_wall_and_bedding() -> None:
    # 100 - 0.25 - 2 = 97.75 in
    assert levels.trench_bottom(100 * INCH, 0.25 * INCH, 2 * INCH) == pytest.approx(97.75 * INCH)


@given(invert=a_level, pipe=a_pipe, lift=st.floats(-5, 5))
def test_raising_the_invert_raises_the_crown_equally(
    invert: float, pipe: tuple[float, float], lift: float
) -> None:
    raised = levels.crown(invert + lift, *pipe) - levels.crown(invert, *pipe)
    assert raised == pytest.approx(lift, abs=1e-9)


@given(invert=a_level, pipe=a_pipe, bedding=a_length)
def test_crown_to_trench_is_diameter_and_bedding_whatever_the_wall(
    invert: float, pipe: tuple[float, float], bedding: float
) -> None:
    outside, wall = pipe
    height = levels.crown(invert, outside, wall) - levels.trench_bottom(invert, wall, bedding)
    assert height == pytest.approx(outside + bedding, abs=1e-9)


def test_window() -> None:
    # 12 in from the underside of the footing to the underside of the slab, less 2 in of bedding
    # and a 4.2 in pipe, leave 5.8 in.
    room = levels.window(12 * INCH, 0.0, 2 * INCH, 4.2 * INCH)
    assert room == pytest.approx(5.8 * INCH)


@given(slab=a_level, thickness=a_length, drop=st.floats(-1, 1), pipe=a_pipe, fall=a_length)
def test_a_footing_of_the_thickness_needed_has_a_window_of_just_the_fall(
    slab: float, thickness: float, drop: float, pipe: tuple[float, float], fall: float
) -> None:
    top = slab + drop
    needed = levels.thickness_needed(thickness, pipe[0], fall, top, slab)
    assert levels.window(slab, top - needed, thickness, pipe[0]) == pytest.approx(fall, abs=1e-9)


def test_a_slab_over_the_footing_gives_room() -> None:
    # bedding 2 + pipe 4.2 + fall 3 = 9.2 in with the slab on the footing's top; a slab 1.2 in
    # higher leaves 8 in to find.
    needed = levels.thickness_needed(2 * INCH, 4.2 * INCH, 3 * INCH, 0.0, 1.2 * INCH)
    assert needed == pytest.approx(8 * INCH)


def test_out_of_order_names_neighbours_only() -> None:
    rising = ("base", "top", "wall")
    assert levels.out_of_order(rising, {"base": 1.0, "top": 2.0, "wall": 3.0}) == []
    assert levels.out_of_order(rising, {"base": 2.0, "top": 2.0}) == [("base", "top")]
    assert levels.out_of_order(rising, {"base": 3.0, "wall": 1.0}) == [("base", "wall")]
    assert levels.out_of_order(rising, {"wall": 1.0}) == []


def test_disagreement_has_no_sign() -> None:
    # 91.67 - 90.67 = 1.00 ft against 12 in: none. Against 10 in: 2 in either way round.
    top, base = 91.67 * FOOT, 90.67 * FOOT
    assert levels.disagreement(top, base, 12 * INCH) == pytest.approx(0, abs=1e-9)
    assert levels.disagreement(top, base, 10 * INCH) == pytest.approx(2 * INCH)
    assert levels.disagreement(top, base, 14 * INCH) == pytest.approx(2 * INCH)
    assert levels.disagreement(top, base, 0.0) == pytest.approx(1 * FOOT)


@pytest.mark.parametrize(("outside", "wall"), [(0.0, 0.0), (-0.1, 0.0), (0.1, -0.01), (0.1, 0.05)])
def test_a_pipe_that_cannot_be_is_refused(outside: float, wall: float) -> None:
    with pytest.raises(ValueError, match="pipe"):
        levels.crown(0.0, outside, wall)


def test_layers_below_nothing_are_refused() -> None:
    with pytest.raises(ValueError, match="bedding"):
        levels.trench_bottom(0.0, 0.01, -0.01)
    with pytest.raises(ValueError, match="wall"):
        levels.outside_bottom(0.0, -0.01)
    with pytest.raises(ValueError, match="bedding"):
        levels.window(1.0, 0.0, -0.01, 0.1)
    with pytest.raises(ValueError, match="diameter"):
        levels.window(1.0, 0.0, 0.05, 0.0)
    with pytest.raises(ValueError, match="fall"):
        levels.thickness_needed(0.05, 0.1, -0.01, 0.0, 0.0)
    with pytest.raises(ValueError, match="thickness"):
        levels.disagreement(1.0, 0.0, -1.0)
