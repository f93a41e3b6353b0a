"""Sideways load of soil and water: limits, signs, and agreement of the ways to say one thing."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import earth_pressure
from checker.formulas.earth_pressure import FOOT, POUND, Layer

PCF = POUND / FOOT**3
COEFFICIENTS = st.floats(0.1, 1.0)
WEIGHTS = st.floats(14_000, 22_000)
HEIGHTS = st.floats(0.1, 3.0)


def test_a_wall_at_rest_bears_more_than_one_that_leans() -> None:
    # 30 degrees: 1 - sin 30 = 0.5 at rest; tan2(45 - 15) = 1/3 active.
    angle = math.radians(30)
    assert earth_pressure.rest_coefficient(angle) == pytest.approx(0.5)
    assert earth_pressure.active_coefficient(angle) == pytest.approx(1 / 3)


def test_soil_that_bore_more_before_presses_more() -> None:
    # 30 degrees, ratio 4: 0.5 x 4^0.5 = 1.0
    assert earth_pressure.rest_coefficient(math.radians(30), 4) == pytest.approx(1.0)


def test_water_in_the_soil_by_hand() -> None:
    # K 0.5, 120 pcf: dry 60 pcf; full of water 0.5 x (120 - 62.4) + 62.4 = 91.2 pcf.
    assert earth_pressure.fluid_weight(0.5, 120 * PCF) / PCF == pytest.approx(60)
    wet = earth_pressure.fluid_weight_in_water(0.5, 120 * PCF)
    assert wet / PCF == pytest.approx(91.2)


def test_a_fluid_of_60_pounds_on_8_feet() -> None:
    # 60 x 8 = 480 psf at the foot, 480 x 8 / 2 = 1920 lb/ft, 8 / 3 = 2.67 ft up.
    assert earth_pressure.fluid_pressure(60 * PCF, 8 * FOOT) / (PCF * FOOT) == pytest.approx(480)
    force, height = earth_pressure.fluid_thrust(60 * PCF, 8 * FOOT)
    assert force / (POUND / FOOT) == pytest.approx(1920)
    assert height / FOOT == pytest.approx(8 / 3)


@given(share=COEFFICIENTS, weight=WEIGHTS, height=HEIGHTS)
def test_one_dry_layer_is_its_fluid(share: float, weight: float, height: float) -> None:
    layered = earth_pressure.thrust([Layer(height, share, weight)])
    fluid = earth_pressure.fluid_thrust(earth_pressure.fluid_weight(share, weight), height)
    assert layered.force == pytest.approx(fluid.force)
    assert layered.height == pytest.approx(fluid.height)


@given(share=COEFFICIENTS, weight=WEIGHTS, height=HEIGHTS)
def test_one_wet_layer_is_its_fluid(share: float, weight: float, height: float) -> None:
    layered = earth_pressure.thrust([Layer(height, share, weight, in_water=True)])
    fluid = earth_pressure.fluid_thrust(earth_pressure.fluid_weight_in_water(share, weight), height)
    assert layered.force == pytest.approx(fluid.force)
    assert layered.height == pytest.approx(fluid.height)


@given(share=COEFFICIENTS, weight=WEIGHTS, height=HEIGHTS, cut=st.floats(0.1, 0.9))
def test_a_layer_cut_in_two_presses_as_before(
    share: float, weight: float, height: float, cut: float
) -> None:
    whole = earth_pressure.thrust([Layer(height, share, weight)])
    parts = [Layer(height * cut, share, weight), Layer(height * (1 - cut), share, weight)]
    halves = earth_pressure.thrust(parts)
    assert halves.force == pytest.approx(whole.force)
    assert halves.height == pytest.approx(whole.height)


@given(share=COEFFICIENTS, weight=WEIGHTS, height=HEIGHTS, deeper=st.floats(0.01, 1.0))
def test_pressure_and_thrust_grow_with_depth(
    share: float, weight: float, height: float, deeper: float
) -> None:
    fluid = earth_pressure.fluid_weight(share, weight)
    assert earth_pressure.fluid_pressure(fluid, height + deeper) > earth_pressure.fluid_pressure(
        fluid, height
    )
    more = earth_pressure.thrust([Layer(height + deeper, share, weight)])
    assert more.force > earth_pressure.thrust([Layer(height, share, weight)]).force


@given(share=COEFFICIENTS, weight=WEIGHTS, height=HEIGHTS, wet=st.floats(0.1, 0.9))
def test_rising_water_never_lightens_the_load(
    share: float, weight: float, height: float, wet: float
) -> None:
    dry = earth_pressure.thrust([Layer(height, share, weight)])
    both = [Layer(height * (1 - wet), share, weight), Layer(height * wet, share, weight, True)]
    assert earth_pressure.thrust(both).force >= dry.force * (1 - 1e-12)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="friction angle"):
        earth_pressure.active_coefficient(math.pi / 2)
    with pytest.raises(ValueError, match="friction angle"):
        earth_pressure.rest_coefficient(-0.1)
    with pytest.raises(ValueError, match="borne less"):
        earth_pressure.rest_coefficient(0.5, 0.9)
    with pytest.raises(ValueError, match="weight"):
        earth_pressure.fluid_weight(0.5, 0.0)
    with pytest.raises(ValueError, match="floats"):
        earth_pressure.fluid_weight_in_water(0.5, 9_000)
    with pytest.raises(ValueError, match="20 ft"):
        earth_pressure.fluid_pressure(9_000, 20.01 * FOOT)
    with pytest.raises(ValueError, match="upward"):
        earth_pressure.fluid_pressure(9_000, -1.0)
    with pytest.raises(ValueError, match="thickness"):
        earth_pressure.thrust([Layer(0.0, 0.5, 18_000)])
    with pytest.raises(ValueError, match="dry"):
        earth_pressure.thrust([Layer(1, 0.5, 18_000, True), Layer(1, 0.5, 18_000)])
    with pytest.raises(ValueError, match="floats"):
        earth_pressure.thrust([Layer(1, 0.5, 9_000, True)])


def test_no_layer_no_load() -> None:
    assert earth_pressure.thrust([]) == (0.0, 0.0)
