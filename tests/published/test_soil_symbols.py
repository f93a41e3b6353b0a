"""Group symbols against the Army's courses and a library of soil mechanics."""

from __future__ import annotations

import itertools
from importlib import import_module

import pytest

from checker.formulas import uscs


def test_army_clayey_sand() -> None:
    # US Army Engineer School, EN5341A, p. 101: 60 % held on No. 200, 30 % of that coarse part held
    # on No. 4, fines clayey: SC. No. 4 passes 1 - 0.6 x 0.3 = 82 %.
    assert uscs.group_symbol(0.40, 1 - 0.6 * 0.3, of_fines="CL") == "SC"


def test_army_gravel_of_two_symbols() -> None:
    # The same page: 90 % held on No. 200, 75 % of that on No. 4, well graded, LL 40, PI 4: GW-GM.
    # "Well graded" stands for any Cu of 4 or more with Cc from 1 to 3.
    of_fines = uscs.symbol_of_fines(40, 4)
    assert uscs.group_symbol(0.10, 1 - 0.9 * 0.75, 5.0, 2.0, of_fines) == "GW-GM"


def test_army_silty_sand() -> None:
    # EN5453, answer key p. 63: 40 % fines, sand the main coarse part, LL 63, PI 15: SM. The A-line
    # is at 0.73 x 43 = 31.4.
    assert uscs.group_symbol(0.40, 0.95, of_fines=uscs.symbol_of_fines(63, 15)) == "SM"


def test_well_graded_sand() -> None:
    # Inputs of example 15.1 of a teaching site, which classes it by another system; Cu and Cc by
    # hand 1.50 / 0.18 = 8.33 and 0.61^2 / (1.50 x 0.18) = 1.378, so SW.
    cu, cc = 1.50 / 0.18, 0.61**2 / (1.50 * 0.18)
    assert cu == pytest.approx(8.33, abs=5e-3)
    assert cc == pytest.approx(1.378, abs=5e-4)
    assert uscs.group_symbol(0.04, 0.90, cu, cc) == "SW"


def test_the_a_line_from_memory() -> None:
    # From memory: PI = 0.73 (LL - 20); at 50 it is 21.9.
    assert uscs.a_line(50) == pytest.approx(21.9)


# geolysis takes exactly half fines as coarse, tells a pair by the A-line alone where the index is
# below 4, and names GC or SC where D2487 has GC-GM or SC-SM. No such soil is among these.
SHARES = ((0.02, 0.4), (0.02, 0.9), (0.08, 0.4), (0.08, 0.9), (0.3, 0.45), (0.3, 0.9), (0.7, 0.9))
SIZES = ((0.1, 0.3, 0.95), (0.1, 0.2, 0.3), (0.1, 0.1, 1.0))
LIMITS = ((41, 20), (40, 36), (63, 48), (80, 30), (35, 20))


@pytest.mark.parametrize(
    ("shares", "sizes", "limits"), list(itertools.product(SHARES, SIZES, LIMITS))
)
def test_against_an_independent_library(
    shares: tuple[float, float], sizes: tuple[float, float, float], limits: tuple[float, float]
) -> None:
    (fines, passing_no4), (d10, d30, d60), (liquid, plastic) = shares, sizes, limits
    of_fines = uscs.symbol_of_fines(liquid, uscs.plasticity_index(liquid, plastic))
    ours = uscs.group_symbol(fines, passing_no4, d60 / d10, d30**2 / (d10 * d60), of_fines)
    classifier = import_module("geolysis.soil_classifier").create_uscs_classifier(
        liquid, plastic, fines * 100, (passing_no4 - fines) * 100, d10, d30, d60
    )
    assert ours == classifier.classify().symbol
