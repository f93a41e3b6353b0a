"""What a coat takes and what the gauge says, through a spec."""

from __future__ import annotations

from typing import Any

import pytest

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Derived, Deriver
from tests.support import spec_of

MIL = 2.54e-5
GALLON = 3.785411784e-3
SQUARE_FOOT = 0.09290304
COAT = {"dry_thickness": "40 mil", "solids": "62 %", "area": "1428 sq ft", "quantity": "60 gal"}


def coat(name: str, **facts: Any) -> Derived:
    return Deriver(spec_of({"coat": COAT | facts})).get(f"coat.{name}")


def test_gallons_needed() -> None:
    # 40 x 1428 / (1604 x 0.62) = 57.4 gal; a tenth lost, 63.8.
    found = coat("quantity_needed")
    assert found.value / GALLON == pytest.approx(57.4, abs=0.05)
    assert found.unit == "gal"
    assert "nothing is lost" in found.assumed[0]
    assert coat("quantity_needed", loss="10 %").value / GALLON == pytest.approx(63.8, abs=0.05)


def test_area_covered() -> None:
    # 60 x 1604 x 0.62 / 40 = 1,492 sq ft; a tenth lost, 1,343.
    assert coat("area_covered").value / SQUARE_FOOT == pytest.approx(1492, abs=1)
    assert coat("area_covered", loss="10 %").value / SQUARE_FOOT == pytest.approx(1343, abs=1)


def test_what_to_read_on_the_gauge() -> None:
    # 40 / 0.62
    assert coat("wet_needed").value / MIL == pytest.approx(64.5, abs=0.02)


def test_the_least_reading_counts() -> None:
    readings = [{"id": "NE", "wet": "72 mil"}, {"id": "SW", "wet": "60 mil"}]
    assert coat("least_reading", readings=readings).value / MIL == pytest.approx(60)
    # 60 x 0.62
    assert coat("dry_film_by_gauge", readings=readings).value / MIL == pytest.approx(37.2)


def test_a_reading_that_is_a_range_gives_a_range() -> None:
    readings = [{"id": "NE", "wet": "62 to 72 mil"}, {"id": "SW", "wet": "65 mil"}]
    found = coat("least_reading", readings=readings).value
    assert tuple(found) == pytest.approx((62 * MIL, 65 * MIL))


def test_a_reading_that_is_missing_is_asked_for() -> None:
    readings = [{"id": "NE", "wet": "72 mil"}, {"id": "SW"}]
    found = coat("dry_film_by_gauge", readings=readings)
    assert not found.known
    assert found.missing == ("coat.readings.SW.wet",)


def test_no_reading_is_no_film() -> None:
    assert not coat("dry_film_by_gauge").known
    assert not coat("dry_film_by_gauge", readings=[]).known


def test_a_range_of_solids_gives_both_ends() -> None:
    # 40 / 0.65 = 61.5 and 40 / 0.60 = 66.7 mil
    found = coat("wet_needed", solids="60 to 65 %").value
    assert found.low / MIL == pytest.approx(61.5, abs=0.05)
    assert found.high / MIL == pytest.approx(66.7, abs=0.05)
