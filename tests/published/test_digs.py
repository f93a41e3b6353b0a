"""Slopes of a dig against the federal table, as the regulation and a handbook print it."""

from __future__ import annotations

import math

import pytest

from checker.formulas import excavation

FOOT = 0.3048


@pytest.mark.parametrize(
    ("soil", "degrees"), [("stable_rock", 90), ("a", 53), ("b", 45), ("c", 34)]
)
def test_steepest_slopes_in_degrees(soil: str, degrees: float) -> None:
    # 29 CFR 1926 Subpart P, Appendix B, Table B-1 prints each slope in degrees as well.
    per_rise = excavation.run_per_rise(soil)
    assert math.degrees(math.atan2(1, per_rise)) == pytest.approx(degrees, abs=0.5)


def test_an_unclassed_soil_at_34_degrees() -> None:
    # 29 CFR 1926.652(b)(1)(i): not steeper than one and one-half horizontal to one vertical,
    # 34 degrees measured from the horizontal.
    angle = math.degrees(math.atan2(1, excavation.UNCLASSIFIED))
    assert angle == pytest.approx(34, abs=0.5)


def test_a_dig_of_9_4_feet_at_one_and_a_half_to_one() -> None:
    # By hand: 9.4 x 1.5 = 14.1 ft of room all round.
    assert excavation.run_out(9.4 * FOOT, 1.5) == pytest.approx(14.1 * FOOT)
