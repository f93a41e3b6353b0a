"""Water pressure and uplift: sign, limits, and agreement of the two ways to say one thing."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import hydrostatics


def test_fresh_water_weighs_9802_newtons_a_cubic_metre() -> None:
    # 62.4 lb/ft3 x 16.018463 kg/m3 per lb/ft3 x 9.80665 = 9802.3 N/m3
    assert pytest.approx(9802.3, abs=0.1) == hydrostatics.WATER


def test_water_below_the_point_presses_on_nothing() -> None:
    assert hydrostatics.pressure(-1.0) == 0.0
    assert hydrostatics.thrust(-1.0) == 0.0


def test_thrust_is_half_the_pressure_at_the_foot_times_the_head() -> None:
    # Half a metre at 10 N/m3: 5 Pa at the foot, 5 x 0.5 / 2 = 1.25 N/m.
    assert hydrostatics.thrust(0.5, 10.0) == pytest.approx(1.25)


@given(thickness=st.floats(0.05, 1), head=st.floats(0.01, 5))
def test_a_slab_under_its_balanced_head_has_the_factor_asked(thickness: float, head: float) -> None:
    factor = hydrostatics.uplift_factor(thickness, head)
    assert hydrostatics.balanced_head(thickness, factor) == pytest.approx(head)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="nothing lifts it"):
        hydrostatics.uplift_factor(0.1, 0.0)
    with pytest.raises(ValueError, match="nothing lifts it"):
        hydrostatics.uplift_factor(0.1, -1.0)
    for thickness, concrete in ((0.0, 1.0), (0.1, 0.0)):
        with pytest.raises(ValueError, match="above nothing"):
            hydrostatics.uplift_factor(thickness, 1.0, concrete)
    for thickness, factor, concrete in ((0.0, 1.0, 1.0), (0.1, 0.0, 1.0), (0.1, 1.0, 0.0)):
        with pytest.raises(ValueError, match="above nothing"):
            hydrostatics.balanced_head(thickness, factor, concrete)
    with pytest.raises(ValueError, match="weight"):
        hydrostatics.pressure(1.0, 0.0)
