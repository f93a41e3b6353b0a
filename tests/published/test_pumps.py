"""Pits and pumps against worked examples of their sources."""

from __future__ import annotations

import pytest

from checker.deriving.quantities.sump_inflow import BY_RULE
from checker.formulas import sump

FOOT = 0.3048
INCH = 0.0254
GALLON = 231 * INCH**3
GPM = GALLON / 60


def test_extension_example_of_a_rising_pit() -> None:
    # University of Illinois Extension, Sizing up a sump pump: 18 in of rise in 60 s in an 18 in pit,
    # by its rule of a gallon to the inch 18 gpm. The true pit holds 1.10 gal to the inch: 19.8 gpm.
    found = sump.measured_inflow(18 * INCH, 18 * INCH, 60)
    assert found == pytest.approx(19.8 * GPM, rel=2e-3)
    assert found == pytest.approx(18 * GPM, rel=0.11)


def test_extension_gallons_to_the_inch() -> None:
    # The same: an inch of an 18 in pit is a gallon, of a 24 in pit two, roughly.
    assert sump.volume(18 * INCH, INCH, 0) == pytest.approx(1 * GALLON, rel=0.11)
    assert sump.volume(24 * INCH, INCH, 0) == pytest.approx(2 * GALLON, rel=0.03)


@pytest.mark.parametrize(("soil", "gallons"), [("sand", 21), ("clay", 12)])
def test_extension_rule_for_new_houses(soil: str, gallons: float) -> None:
    # The same: 14 gpm per 1,000 sq ft on sand, 8 on clay; for 1,500 sq ft 21 and 12.
    found = sump.by_floor_area(1_500 * FOOT**2, BY_RULE[soil])
    assert found == pytest.approx(gallons * GPM, rel=1e-6)


def test_wet_well_that_drops_six_inches_in_two_minutes() -> None:
    # wastewater101.net, 2019: 10 ft well, 6 in in 2 min: 146.8 gpm, with pi 3.14 and 7.48 gal/ft3.
    found = sump.measured_inflow(10 * FOOT, 6 * INCH, 120)
    assert found == pytest.approx(146.8 * GPM, rel=1e-3)


def test_storage_for_a_least_cycle() -> None:
    # Engineering Instructions 11C201, page 7: V = t q / 4. Derived point: 30 gpm, 10 min, 75 gal.
    assert sump.shortest_cycle(75 * GALLON, 30 * GPM) == pytest.approx(10 * 60)


@pytest.mark.parametrize(("part", "minutes"), [(0.25, 13.33), (0.5, 10.0), (0.75, 13.33)])
def test_full_cycle(part: float, minutes: float) -> None:
    # MIL-HDBK-1005/9A section 2.5.3.6, derived points: 75 gal, 30 gpm.
    found = sump.cycle_time(75 * GALLON, 30 * GPM, part * 30 * GPM)
    assert found == pytest.approx(minutes * 60, rel=1e-3)


def test_friction_in_a_hundred_feet_of_inch_and_a_half_pipe() -> None:
    # Derived, Hazen-Williams C 150: 1.610 in inside, 30 gpm: 5.24 ft in 100 ft; 4.73 ft/s. The forms
    # in use round its factor and exponents differently and spread from 5.21 to 5.27.
    found = sump.friction(30 * GPM, 1.610 * INCH, 100 * FOOT, 150)
    assert found == pytest.approx(5.24 * FOOT, rel=0.01)
    # 4.73 squared over 64.35 = 0.348 ft
    assert sump.velocity_head(30 * GPM, 1.610 * INCH) == pytest.approx(0.348 * FOOT, rel=5e-3)
