"""Depth of frost: what makes it deeper, and where the sums end."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import frost

PCF = 4.4482216152605 / 0.3048**3
F_DAY = 86_400 * 5 / 9
DAY = 86_400.0
INDEXES = st.floats(100, 6000).map(lambda days: days * F_DAY)
WATER = st.floats(0.05, 0.5)


@given(index=INDEXES, water=WATER, more=st.floats(1.01, 3))
def test_frost_goes_with_the_root_of_the_index(index: float, water: float, more: float) -> None:
    shallow = frost.stefan_depth(1.3, index, 100 * PCF, water)
    deep = frost.stefan_depth(1.3, index * more, 100 * PCF, water)
    assert deep == pytest.approx(shallow * math.sqrt(more))


@given(index=INDEXES, water=WATER)
def test_wet_soil_freezes_less_deep(index: float, water: float) -> None:
    dry = frost.stefan_depth(1.3, index, 100 * PCF, water)
    assert frost.stefan_depth(1.3, index, 100 * PCF, water * 1.5) < dry


@given(alpha=st.floats(0, 10), mu=st.floats(0, 3))
def test_the_warmth_of_the_ground_only_shortens(alpha: float, mu: float) -> None:
    factor = frost.correction(alpha, mu)
    assert 0 < factor <= 1
    assert frost.correction(alpha + 0.1, mu + 0.1) < factor


def test_ground_that_begins_at_freezing_still_cools() -> None:
    # alpha 0, mu 1: 1 / sqrt(1 + 0.5) = 0.816
    assert frost.correction(0, 1) == pytest.approx(0.8165, abs=1e-4)


def test_no_frost_in_the_air_no_frost_in_the_ground() -> None:
    assert frost.stefan_depth(1.3, 0.0, 100 * PCF, 0.15) == 0
    assert frost.surface_index(0.7, 0.0) == 0


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="nothing to freeze"):
        frost.stefan_depth(1.3, 1e8, 100 * PCF, 0.0)
    with pytest.raises(ValueError, match="weight"):
        frost.stefan_depth(1.3, 1e8, 0.0, 0.15)
    with pytest.raises(ValueError, match="conductivity"):
        frost.stefan_depth(0.0, 1e8, 100 * PCF, 0.15)
    with pytest.raises(ValueError, match="for good"):
        frost.thermal_ratio(273.15, 1e8, 100 * DAY)
    with pytest.raises(ValueError, match="season"):
        frost.thermal_ratio(280.0, 1e8, 0.0)
    with pytest.raises(ValueError, match="season"):
        frost.fusion_ratio(1e8, 0.0, 0.15)
    with pytest.raises(ValueError, match="nothing to freeze"):
        frost.fusion_ratio(1e8, 100 * DAY, 0.0)
    with pytest.raises(ValueError, match="negative"):
        frost.correction(-0.1, 0.2)
    with pytest.raises(ValueError, match="upward"):
        frost.surface_index(-0.1, 1e8)
