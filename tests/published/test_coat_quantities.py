"""How much coat a thickness takes, with what is lost on the way."""

from __future__ import annotations

import pytest

from checker.formulas import coating

MIL = 2.54e-5
GALLON = 3.785411784e-3
SQUARE_FOOT = 0.09290304


def test_a_coat_of_which_35_percent_arrives() -> None:
    # Inputs of a paint consultant's answer to readers: 52 % solids, 35 % of the paint arrives, 1.5
    # mil dry. By hand 1604 x 0.52 / 1.5 x 0.35 = 194.6 sq ft/gal.
    rate = coating.coverage(1.5 * MIL, 0.52, loss=0.65)
    assert rate * GALLON / SQUARE_FOOT == pytest.approx(194.6, abs=0.1)


def test_gallons_for_a_basement() -> None:
    # By hand: 40 mil over 1,428 sq ft at 62 % solids take 40 x 1428 / (1604 x 0.62) = 57.4 gal; with
    # a tenth lost 63.8.
    area = 1428 * SQUARE_FOOT
    assert coating.volume_needed(40 * MIL, area, 0.62) / GALLON == pytest.approx(57.4, abs=0.05)
    with_loss = coating.volume_needed(40 * MIL, area, 0.62, loss=0.1)
    assert with_loss / GALLON == pytest.approx(63.8, abs=0.05)


def test_what_the_gauge_must_read() -> None:
    # By hand: 40 / 0.62 = 64.5 mil wet.
    assert coating.wet_needed(40 * MIL, 0.62) / MIL == pytest.approx(64.5, abs=0.02)
