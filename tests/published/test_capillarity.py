"""How high water climbs, against textbook answers."""

from __future__ import annotations

import pytest

from checker.formulas import capillarity

CM = 0.01
MM = 0.001
INCH = 0.0254


def test_a_tube_of_a_tenth_of_a_millimetre() -> None:
    # Fair, Geyer and Okun, example 9.1 (p. 9-11), as a companion of worked examples prints it:
    # water of 74.2 dyn/cm at 10 C in a tube of 0.01 cm climbs 30.3 cm (with 981 dyn/cm3).
    rise = capillarity.rise_in_tube(0.01 * CM, tension=0.0742, weight=9810)
    assert rise / CM == pytest.approx(30.3, abs=0.1)


def test_sand_of_0_12_mm() -> None:
    # A page of exam questions: D10 0.12 mm, 25 % water when saturated, G 2.67, C 0.5 cm2. By hand
    # e = 0.25 x 2.67 = 0.6675; 0.5 / (0.6675 x 0.012) = 62.4 cm. The page prints 0.0119 cm, from a
    # formula that makes no sense; its answer is not used.
    void_ratio = 0.25 * 2.67
    rise = capillarity.rise_between_grains(0.12 * MM, void_ratio, 0.5 * CM**2)
    assert rise / CM == pytest.approx(62.4, abs=0.05)
    assert rise / CM != pytest.approx(0.0119, rel=0.5)


def test_four_inches_break_the_climb_from_1_23_mm_derived() -> None:
    # Derived: C 0.5 cm2, e 0.40: 0.5 / (0.40 x 10.16) = 0.123 cm.
    size = capillarity.size_for_rise(4 * INCH, 0.40, 0.5 * CM**2)
    assert size / MM == pytest.approx(1.23, abs=0.005)


def test_the_range_of_c() -> None:
    # Terzaghi and Peck (1948), as Elements of Soil Mechanics quotes it: C from 10.0 to 50.0 mm2.
    assert pytest.approx(10.0) == capillarity.LEAST_C / MM**2
    assert pytest.approx(50.0) == capillarity.MOST_C / MM**2
