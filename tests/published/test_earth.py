"""Load of water and earth on a wall against textbook answers."""

from __future__ import annotations

import math

import pytest

from checker.deriving.ground_tables import soil_load
from checker.formulas import earth_pressure, hydrostatics
from checker.formulas.earth_pressure import Layer

FOOT = 0.3048
POUND = 4.4482216152605
PCF = POUND / FOOT**3
KN = 1000.0


def test_five_feet_of_sea_water_on_twenty_feet_of_wall() -> None:
    # T. B. Quimby, tutorial on ASCE 7 loads, example 6.1 option A: water of 64.0 pcf, 5 ft deep,
    # on a wall 20 ft long: 16.0 kips, acting 3 ft 4 in below the surface.
    force, height = earth_pressure.fluid_thrust(64 * PCF, 5 * FOOT)
    assert force * 20 * FOOT / POUND == pytest.approx(16_000)
    assert (5 * FOOT - height) / FOOT == pytest.approx(3 + 4 / 12)
    assert force == pytest.approx(hydrostatics.thrust(5 * FOOT, 64 * PCF))


def test_two_layers_the_lower_one_in_water() -> None:
    # B. M. Das, Principles of Geotechnical Engineering, example 13.4 (p. 451), as a companion of
    # worked examples prints it: 3 m of phi 30 deg at 16 kN/m3, then 3 m of phi 35 deg at 18 kN/m3
    # under water; active. Parts 24, 39.0, 10.0 and 44.1 kN/m, in all 117.15, acting 1.78 m up.
    upper = earth_pressure.active_coefficient(math.radians(30))
    lower = earth_pressure.active_coefficient(math.radians(35))
    layers = [Layer(3, upper, 16 * KN), Layer(3, lower, 18 * KN, in_water=True)]
    force, height = earth_pressure.thrust(layers, water=9.81 * KN)
    assert force / KN == pytest.approx(117.15, abs=0.1)
    assert height == pytest.approx(1.78, abs=0.005)


def test_the_parts_of_that_example() -> None:
    # The same by hand: 16 x 3 / 3 = 16 kPa at 3 m, x 3 / 2 = 24; Ka 0.271 x 48 x 3 = 39.0;
    # 0.271 x (18 - 9.81) x 9 / 2 = 10.0; 9.81 x 9 / 2 = 44.1.
    lower = earth_pressure.active_coefficient(math.radians(35))
    dry = earth_pressure.thrust([Layer(3, 1 / 3, 16 * KN)])
    wet = earth_pressure.thrust([Layer(3, lower, 18 * KN, in_water=True)], water=9.81 * KN)
    assert dry.force / KN == pytest.approx(24)
    assert lower * 48 * 3 == pytest.approx(39.0, abs=0.05)
    assert wet.force / KN == pytest.approx(10.0 + 44.1, abs=0.1)


def test_at_rest_coefficient_derived() -> None:
    # Derived point, UFC 3-220-20 Eq. 4-2: phi 30 deg, OCR 1 gives 0.5.
    assert earth_pressure.rest_coefficient(math.radians(30)) == pytest.approx(0.5)


def test_a_slab_that_floats_derived() -> None:
    # Derived point: 4 in at 150 pcf weigh 50 psf and balance 50 / 62.4 = 0.80 ft; at 1.1, 0.73 ft.
    assert hydrostatics.balanced_head(FOOT / 3) / FOOT == pytest.approx(0.80, abs=0.005)
    assert hydrostatics.balanced_head(FOOT / 3, 1.1) / FOOT == pytest.approx(0.73, abs=0.005)


# IBC 2021 Table 1610.1: psf for each foot of depth is a fluid of as many pcf. GW to SP as read,
# the others from memory; a pair takes the greater of its two.
@pytest.mark.parametrize(
    ("symbol", "active", "at_rest", "from_memory"),
    [
        ("gw", 30, 60, False),
        ("gm", 40, 60, False),
        ("gc", 45, 60, False),
        ("gp_gc", 45, 60, False),
        ("sm", 45, 60, True),
        ("sc_sm", 45, 100, True),
        ("cl_ml", 60, 100, True),
        ("cl", 60, 100, True),
        ("sp_sc", 60, 100, True),
    ],
)
def test_soil_loads_as_fluids(
    symbol: str, active: float, at_rest: float, from_memory: bool
) -> None:
    load = soil_load(symbol)
    assert load is not None
    assert load.active / PCF == pytest.approx(active)
    assert load.at_rest / PCF == pytest.approx(at_rest)
    assert load.from_memory is from_memory


@pytest.mark.parametrize("symbol", ["ol", "mh", "ch", "oh", "pt"])
def test_soil_that_the_table_calls_unsuitable_has_no_load(symbol: str) -> None:
    # From memory: note b of the table. Peat is in no row.
    assert soil_load(symbol) is None


def test_metric_loads_of_the_table() -> None:
    # 1 psf/ft = 0.157 kPa/m: 30 gives 4.7, 60 gives 9.4, 45 gives 7.1.
    load = soil_load("gc")
    assert load is not None
    assert load.at_rest / KN == pytest.approx(9.4, abs=0.05)
    assert load.active / KN == pytest.approx(7.1, abs=0.05)
