"""Granular filters, pipe openings and geotextiles against published and derived answers."""

from __future__ import annotations

from importlib import import_module

import pytest

from checker.formulas import filters, geotextiles, openings

MM = 1e-3
INCH = 0.0254

# FHWA, Highways in the River Environment, problem 6.11.2: the base under a riprap.
D15, D50, D85 = 0.17 * MM, 0.5 * MM, 1.5 * MM


def test_river_environment_problem_6_11_2() -> None:
    # Pages 6.62 and 6.63: D15 of the filter under 40 x 0.17 = 6.8 mm, under 5 x 1.5 = 7.5 mm and
    # over 5 x 0.17 = 0.85 mm, so 0.85 to 6.8 mm; D50 under 40 x 0.5 = 20 mm. (The copy of p. 6.63
    # prints 2 mm; p. 6.62 prints 20.)
    assert filters.classic_max_d15(D85) == pytest.approx(7.5 * MM)
    assert filters.classic_min_d15(D15) == pytest.approx(0.85 * MM)
    assert filters.highway_max_d15(D15, D85) == pytest.approx(6.8 * MM)
    assert filters.highway_max_d50(D50) == pytest.approx(20 * MM)


def test_riprap_placed_on_that_base_fails() -> None:
    # The same problem: riprap of D15 100 mm has 588 times D15 of the base (printed 600), where 40 is
    # allowed, and 67 times its D85, where 5 is.
    riprap = 100 * MM
    assert riprap / filters.highway_max_d15(D15, D85) == pytest.approx(588 / 40, rel=0.001)
    assert riprap / filters.classic_max_d15(D85) == pytest.approx(67 / 5, rel=0.006)


@pytest.mark.parametrize(
    ("fines", "d85", "category", "max_d15"),
    [
        # Derived, by hand, from NEH 633 chapter 26 as Fell and others print it.
        (0.90, 0.030, 1, 0.27),  # 9 x 0.03
        (0.90, 0.020, 1, 0.20),  # 9 x 0.02 = 0.18, under the floor
        (0.60, 0.050, 2, 0.70),
        (0.60, 0.060, 2, 0.70),
        (0.25, 0.90, 3, 2.44),  # 15 / 25 x (3.6 - 0.7) + 0.7
        (0.05, 2.7, 4, 10.8),  # 4 x 2.7
        (0.15, 0.50, 3, 2.00),  # meets category 4
        (0.30, 0.50, 3, 1.22),  # 10 / 25 x (2.0 - 0.7) + 0.7
        (0.35, 0.60, 3, 1.04),  # 5 / 25 x (2.4 - 0.7) + 0.7
        # Research papers call this soil group 3; the handbook's category is 4.
        (0.10, 0.50, 4, 2.00),
    ],
)
def test_four_categories(fines: float, d85: float, category: int, max_d15: float) -> None:
    assert filters.category(fines) == category
    assert filters.max_d15(fines, d85 * MM) == pytest.approx(max_d15 * MM)


def test_dispersive_clay_in_two_books() -> None:
    # A summary of NEH 633 chapter 26 prints 6.5 d85, Foster and Fell (2001) 6.4: 1.6 % apart. The
    # first is used. Of category 2, Fell and others, table 9.2, note b: 0.5 mm.
    ours = filters.max_d15(0.90, 0.05 * MM, dispersive=True)
    assert ours == pytest.approx(6.5 * 0.05 * MM)
    assert ours == pytest.approx(6.4 * 0.05 * MM, rel=0.017)
    assert filters.max_d15(0.60, 0.05 * MM, dispersive=True) == pytest.approx(0.5 * MM)


@pytest.mark.parametrize(
    ("d15", "times", "min_d15"),
    [
        # Derived from the rule as the Corps states it: 5 times, or 3 to 5, never under 0.1 mm.
        (0.03, 5, 0.15),
        (0.03, 4, 0.12),
        (0.03, 3, 0.10),
        (0.20, 5, 1.0),
        (0.20, 4, 0.8),
        (0.20, 3, 0.6),
        # A dam's filter report: D15 of the base 0.0123 mm, 4 times is 0.0492 (printed 0.05), so
        # 0.1 mm. Its largest D15 of 0.4 mm is then 4 times that, within the 5 of a band.
        (0.0123, 4, 0.1),
    ],
)
def test_least_d15(d15: float, times: float, min_d15: float) -> None:
    assert filters.min_d15(d15 * MM, times) == pytest.approx(min_d15 * MM)


@pytest.mark.parametrize(
    ("opening", "slot", "strict", "d85"),
    [
        # Derived from the Corps' coastal guidance on filters, equations 9 and 10.
        (3 / 8 * INCH, False, False, 9.53),
        (3 / 8 * INCH, False, True, 11.43),
        (1 / 8 * INCH, True, False, 3.81),
        (1 / 8 * INCH, True, True, 4.45),
    ],
)
def test_stone_against_holes_and_slots(
    opening: float, slot: bool, strict: bool, d85: float
) -> None:
    found = openings.least_d85(opening, slot=slot, strict=strict)
    assert found == pytest.approx(d85 * MM, abs=0.006 * MM)


@pytest.mark.parametrize(
    ("ratio", "chance"), [(0.39, 0.0), (0.5, 1e-4), (0.75, 1e-3), (1, 0.1), (2, 0.5), (3, 0.9)]
)
def test_open_joints(ratio: float, chance: float) -> None:
    # Corps of Engineers, Risk Management Center, constricted exit: table of probabilities.
    assert openings.continuing_erosion(ratio * MM, MM) == pytest.approx(chance)


def test_share_of_a_band_finer_than_a_joint() -> None:
    # Derived from the same manual: joint 2 mm, D95 from 0.5 to 4 mm, on a log scale
    # log(2 / 0.5) / log(4 / 0.5) = 2 / 3.
    assert openings.share_of_band_finer(2 * MM, 0.5 * MM, 4 * MM) == pytest.approx(2 / 3)
    assert openings.share_of_band_finer(0.4 * MM, 0.5 * MM, 4 * MM) == 0
    assert openings.share_of_band_finer(4 * MM, 0.5 * MM, 4 * MM) == 1


def test_open_joints_between_the_figures() -> None:
    # Derived: 0.9 lies 0.15 / 0.25 = 60 % of the way from 0.75 to 1. On normal quantiles, -3.0902
    # and -1.2816, that is -2.0050, a probability of 0.02248.
    assert openings.continuing_erosion(0.9, 1.0) == pytest.approx(0.02248, rel=1e-3)
    norm = import_module("scipy.stats").norm
    quantile = norm.ppf(1e-3) + 0.6 * (norm.ppf(0.1) - norm.ppf(1e-3))
    assert openings.continuing_erosion(0.9, 1.0) == pytest.approx(float(norm.cdf(quantile)))


@pytest.mark.parametrize(("cu", "opening"), [(1.5, 0.40), (3, 0.60), (5, 0.64), (10, 0.40)])
def test_retention_of_a_geotextile_from_memory(cu: float, opening: float) -> None:
    # FHWA NHI-07-092, from memory, with D85 0.40 mm: B is 1, 3 / 2, 8 / 5 and 1.
    factor = geotextiles.retention_factor(0.30, cu, nonwoven=True)
    assert geotextiles.max_opening(0.40 * MM, factor) == pytest.approx(opening * MM)


def test_retention_above_half_fines() -> None:
    # From memory: 1 for a woven, 1.8 for a nonwoven. The limit of 0.3 mm for a nonwoven stands in
    # the geotextile page of the Toronto and Region Conservation Authority as well.
    assert geotextiles.retention_factor(0.6, None, nonwoven=False) == 1
    assert geotextiles.retention_factor(0.6, None, nonwoven=True) == pytest.approx(1.8)
    most = geotextiles.MOST_NONWOVEN
    assert most == pytest.approx(0.3 * MM)


def test_permeability_of_a_geotextile() -> None:
    # Derived from UFC 3-220-10, equation 6-16: 0.5 per second x 1.5 mm = 0.075 cm/s, which is 75
    # times a soil of 1e-3 cm/s; 10 is asked.
    fabric = geotextiles.permeability(0.5, 1.5 * MM)
    assert fabric == pytest.approx(0.075e-2)
    assert geotextiles.permeability_factor(fabric, 1e-5) == pytest.approx(75)


def test_the_no_70_sieve_is_what_manuals_round() -> None:
    # UFC 3-220-10 prints 0.21 mm, UFC 3-250-01 0.212 mm, UFC 3-270-04 0.0083 in.
    opening = geotextiles.army_max_opening(0.72, None)
    assert opening / MM == pytest.approx(0.21, abs=0.005)
    assert opening / INCH == pytest.approx(0.0083, abs=0.0001)
