"""Rain that runs off and soaks in: nothing comes from nothing, and no more than falls."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import surface_water

INCH = 0.0254
FOOT = 0.3048
GPM = 231 * INCH**3 / 60
INCH_PER_HOUR = INCH / 3_600

rains = st.floats(0.0, 1e-4)
areas = st.floats(0.0, 1e4)
shares = st.floats(0.0, 1.0)


def test_a_thousand_square_feet_at_four_inches_an_hour() -> None:
    # Derived: 1 in/h on 96.25 sq ft is 1 gpm, so 4 x 1000 / 96.25 = 41.56 gpm.
    found = surface_water.rational(1.0, 4 * INCH_PER_HOUR, 1_000 * FOOT**2)
    assert found == pytest.approx(41.56 * GPM, rel=1e-4)


@given(share=shares, rain=rains, area=areas)
def test_no_more_runs_off_than_falls(share: float, rain: float, area: float) -> None:
    assert 0 <= surface_water.rational(share, rain, area) <= rain * area


@given(rain=rains, k=st.floats(0.0, 1.0), area=areas)
def test_no_more_soaks_in_than_falls_or_than_the_ground_takes(
    rain: float, k: float, area: float
) -> None:
    found = surface_water.soaking(rain, k, area)
    assert found <= rain * area
    assert found <= k * area
    assert found in (rain * area, k * area)


@given(small=st.floats(0.05, 0.2), more=st.floats(1.0, 3.0), filled=st.floats(0.05, 1 / 3))
def test_a_larger_leader_never_carries_less(small: float, more: float, filled: float) -> None:
    least = surface_water.leader(small, filled)
    assert surface_water.leader(small * more, filled) >= least
    assert surface_water.leader(small, 1 / 3) >= least


@pytest.mark.parametrize("bad", [-1.0, math.nan])
def test_what_cannot_be_is_refused(bad: float) -> None:
    for share in (bad, 1.01):
        with pytest.raises(ValueError, match="runs off"):
            surface_water.rational(share, 1e-5, 100)
    with pytest.raises(ValueError, match="nothing upward"):
        surface_water.rational(0.5, bad, 100)
    with pytest.raises(ValueError, match="nothing upward"):
        surface_water.rational(0.5, 1e-5, bad)
    with pytest.raises(ValueError, match="nothing upward"):
        surface_water.soaking(1e-5, bad, 100)
    with pytest.raises(ValueError, match="lasts some time"):
        surface_water.intensity(bad, 60)
    for none in (bad, 0.0):
        with pytest.raises(ValueError, match="lasts some time"):
            surface_water.intensity(0.01, none)
        with pytest.raises(ValueError, match="diameter"):
            surface_water.leader(none)
        with pytest.raises(ValueError, match="chokes"):
            surface_water.leader(0.1, none)
    with pytest.raises(ValueError, match="chokes"):
        surface_water.leader(0.1, 0.5)
