"""Water pressure and uplift against published answers."""

from __future__ import annotations

import pytest

from checker.formulas import hydrostatics

FOOT = 0.3048
INCH = 0.0254
POUND = 4.4482216152605
PCF = POUND / FOOT**3
PSF = POUND / FOOT**2


def test_five_feet_of_sea_water() -> None:
    # T. B. Quimby, tutorial on ASCE 7 loads, example 6.1 option A: 64.0 pcf, 5 ft: 320 psf at the
    # bottom, 800 lb on each foot of wall.
    assert hydrostatics.pressure(5 * FOOT, 64 * PCF) / PSF == pytest.approx(320)
    assert hydrostatics.thrust(5 * FOOT, 64 * PCF) / (POUND / FOOT) == pytest.approx(800)


def test_four_feet_of_water_at_62_and_a_half_pounds() -> None:
    # Illinois DOT, 1979: water of 62.5 pcf, 4 ft deep, presses with 250 psf.
    assert hydrostatics.pressure(4 * FOOT, 62.5 * PCF) / PSF == pytest.approx(250)


def test_each_inch_of_head_is_5_2_pounds_per_square_foot() -> None:
    # Trade rule: 5.2 psf, about 250 Pa, for each inch of water.
    assert hydrostatics.pressure(INCH) / PSF == pytest.approx(5.2, abs=0.01)
    assert hydrostatics.pressure(INCH) == pytest.approx(250, rel=0.01)


def test_a_four_inch_slab_balances_9_6_inches_of_water() -> None:
    # By hand: 4 in of concrete at 150 pcf weigh 50 psf; 50 / 62.4 = 0.80 ft = 9.6 in. With a
    # factor of 1.1: 0.73 ft.
    assert hydrostatics.balanced_head(4 * INCH) == pytest.approx(9.6 * INCH, rel=0.005)
    assert hydrostatics.balanced_head(4 * INCH, 1.1) == pytest.approx(0.73 * FOOT, rel=0.005)
    assert hydrostatics.uplift_factor(4 * INCH, 50 / 62.4 * FOOT) == pytest.approx(1.0)


def test_three_feet_of_saturation_more_than_lifts_a_floor() -> None:
    # Iowa State University Extension PM-1561 says so of a basement floor.
    assert hydrostatics.uplift_factor(4 * INCH, 3 * FOOT) < 1
