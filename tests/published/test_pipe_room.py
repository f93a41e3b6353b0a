"""The sums that builders and trade writers do for a footing drain, with their own answers."""

from __future__ import annotations

import math

import pytest

from checker.formulas import entry, levels, pipe_run

INCH = 0.0254
FOOT = 0.3048
EIGHTH_PER_FOOT = 1 / 96


def test_an_eighth_of_an_inch_per_foot_round_half_a_20_by_30_house() -> None:
    # Journal of Light Construction, question and answer on laying a foundation drain: round a
    # house of 20 x 30 ft an eighth of an inch per foot takes about 6 in. Half of 100 ft is 50 ft,
    # and 50 / 8 = 6.25 in.
    runs = [20 * FOOT, 30 * FOOT, 20 * FOOT, 30 * FOOT]
    high, outlet = 0, 2
    inverts = [1.0, 0.9, 0.8, 0.9]
    half_loop = pipe_run.longest_way(inverts, runs, outlet, closed=True)
    assert inverts[high] == max(inverts)
    assert half_loop == pytest.approx(50 * FOOT)
    assert pipe_run.fall(EIGHTH_PER_FOOT, half_loop) == pytest.approx(6.25 * INCH)


@pytest.mark.parametrize(("footing", "left"), [(8, 1.8), (12, 5.8)])
def test_room_for_fall_beside_a_footing(footing: float, left: float) -> None:
    # Common practice, the sum done before a footing is formed: slab on the footing's top, 2 in of
    # bedding and a 4.2 in pipe; an 8 in footing leaves 1.8 in of fall and a 12 in one 5.8 in.
    room = levels.window(footing * INCH, 0.0, 2 * INCH, 4.2 * INCH)
    assert room == pytest.approx(left * INCH)


def test_the_20_by_30_house_needs_more_than_a_12_inch_footing() -> None:
    # Same sum the other way: 2 + 4.2 + 6.25 = 12.45 in.
    needed = levels.thickness_needed(2 * INCH, 4.2 * INCH, 6.25 * INCH, 0.0, 0.0)
    assert needed == pytest.approx(12.45 * INCH)


def test_holes_that_start_ten_inches_over_the_footing_let_ten_inches_stand() -> None:
    # Common practice: water enters at the lowest hole, not at the pipe's bottom. A pipe of 4 in
    # inside, rows 120 degrees apart and turned up, has its lowest holes 3 in over its bottom
    # (1.5 radii); bottom 7 in over the footing, so 10 in of water stand on the footing.
    hole = entry.hole_edge_above(2 * INCH, 0.0, math.radians(120))
    assert levels.height_above(7 * INCH + hole, 0.0) == pytest.approx(10 * INCH)


def test_outlet_leg_by_gravity() -> None:
    # Common practice: 95 ft of leg at 1/8 in/ft takes 95 / 96 = 0.99 ft.
    assert pipe_run.fall(EIGHTH_PER_FOOT, 95 * FOOT) == pytest.approx(0.99 * FOOT, rel=1e-3)


def test_a_sixteenth_of_an_inch_per_foot_is_half_a_percent() -> None:
    # Hunting Valley, Ohio, chapter 1381, asks 1/16 in/ft, which is 1/192 = 0.52 %.
    assert pipe_run.slope(1 / 16 * INCH, FOOT) == pytest.approx(0.0052, abs=5e-5)
