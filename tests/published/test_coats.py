"""Film thickness against published spreading rates."""

from __future__ import annotations

import pytest

from checker.formulas import coating

MIL = 2.54e-5
GALLON = 3.785411784e-3
SQUARE_FOOT = 0.09290304
PER_GALLON = SQUARE_FOOT / GALLON  # square feet per gallon, in 1/m


def test_spreading_rate_of_a_coat_of_65_percent_solids() -> None:
    # A spreading-rate note for paint: 65 % solids at 5.0 mil dry cover 208.52 sq ft/gal. It
    # reckons with 1604 where 1604.17 is exact.
    rate = coating.coverage(5 * MIL, 0.65)
    assert rate * GALLON / SQUARE_FOOT == pytest.approx(208.52, rel=2e-4)


def test_the_same_coat_in_metric_units() -> None:
    # The same note: 65 % solids at 125 micrometres cover 5.2 square metres a litre.
    assert coating.coverage(125e-6, 0.65) * 1e-3 == pytest.approx(5.2, rel=1e-4)


def test_ten_wet_mils() -> None:
    # A page of wet-film formulae: 10 mil wet cover 160.417 sq ft/gal.
    wet = coating.wet_film(GALLON, 160.417 * SQUARE_FOOT)
    assert wet / MIL == pytest.approx(10, rel=1e-4)


def test_the_trade_constant_1604() -> None:
    # Trade rule: wet mil = 1604 x gallons / square feet.
    assert coating.wet_film(GALLON, SQUARE_FOOT) / MIL == pytest.approx(1604, rel=2e-4)


def test_twenty_five_square_feet_a_gallon() -> None:
    # A municipal file asks 25 sq ft/gal on a smooth wall for 40 mil cured: 1604 / 25 = 64 mil wet,
    # and 40 of 64 implies solids of about 62 %.
    wet = coating.wet_film(GALLON, 25 * SQUARE_FOOT)
    assert wet / MIL == pytest.approx(64, abs=0.2)
    assert coating.dry_film(wet, 0.62) / MIL == pytest.approx(40, abs=0.5)


def test_a_gallon_on_a_hundred_square_feet() -> None:
    # Roofing rule: 1 gal per 100 sq ft is 16.04 mil wet.
    assert coating.wet_film(GALLON, 100 * SQUARE_FOOT) / MIL == pytest.approx(16.04, abs=0.01)
