"""Flows against independent libraries, and tables against the data that one of them carries.

`fluids` and `scipy` are used here alone. `fluids` carries open tables of pipe sizes and of Manning's
n after Chow (1959): an outside check on `shared/tables/roughness.yaml` and `pipes.yaml`. No package
was found that carries measured rainfall or the inflow of house drains.
"""

from __future__ import annotations

import math
from typing import Any

import fluids
import pint
import pytest
from fluids import open_flow
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import integrate, optimize

from checker.data import load_table
from checker.deriving.flow_tables import roughness
from checker.formulas import groundwater, pipe_flow, sump, surface_water
from checker.reading.notations import read_quantity

INCH = 0.0254
UNITS: Any = pint.UnitRegistry()


@given(
    depth=st.floats(0.02, 1.0),
    diameter=st.floats(0.05, 2.0),
    slope=st.floats(1e-4, 0.1),
    n=st.floats(0.008, 0.03),
)
def test_velocity_is_that_of_fluids(depth: float, diameter: float, slope: float, n: float) -> None:
    wetted = pipe_flow.part_full(depth * diameter, diameter)
    theirs = open_flow.V_Manning(wetted.hydraulic_radius, slope, n)
    assert pipe_flow.velocity(wetted, slope, n) == pytest.approx(theirs, rel=1e-9)


@pytest.mark.parametrize("depth", [0.05, 0.3, 0.5, 0.8, 0.99])
def test_wet_part_of_a_circle_by_integration(depth: float) -> None:
    area, _ = integrate.quad(lambda y: 2 * math.sqrt(y * (1 - y)), 0, depth)
    assert pipe_flow.part_full(depth, 1.0).area == pytest.approx(area, rel=1e-6)


@pytest.mark.parametrize("carried", [0.0005, 0.002, 0.010])
def test_depth_of_flow_is_the_root_that_scipy_finds(carried: float) -> None:
    def short(depth: float) -> float:
        return pipe_flow.flow(pipe_flow.part_full(depth, 0.2), 0.001, 0.013) - carried

    theirs = optimize.brentq(short, 1e-6, pipe_flow.FULLEST * 0.2)
    assert pipe_flow.depth_of_flow(carried, 0.2, 0.001, 0.013) == pytest.approx(theirs, rel=1e-6)


def test_the_fullest_depth_is_the_one_that_scipy_finds() -> None:
    found = optimize.minimize_scalar(
        lambda depth: -pipe_flow.flow(pipe_flow.part_full(depth, 1.0), 0.01, 0.013),
        bounds=(0.5, 1.0),
        method="bounded",
        options={"xatol": 1e-9},
    )
    assert found.x == pytest.approx(pipe_flow.FULLEST, abs=1e-5)


def test_dupuit_by_integrating_darcy() -> None:
    # h dh/dx = -q / k from the source to the drain, h by Runge-Kutta: it must arrive at the drain's
    # head. Fair, Geyer and Okun, example 10.3.
    foot, k = 0.3048, 1e-3
    flow = groundwater.line_flow(k, 20 * foot, 2 * foot, 30 * foot)
    found = integrate.solve_ivp(
        lambda _, h: [-flow / (k * h[0])], (0, 30 * foot), [20 * foot], rtol=1e-9, atol=1e-9
    )
    assert found.y[0][-1] == pytest.approx(2 * foot, rel=1e-3)


def test_drains_with_rain_by_integrating_darcy() -> None:
    # From the middle, where nothing flows, to the drain: h dh/dx = -rain x / k.
    k, drain, middle, spacing = 1e-4, 8.2, 8.5, 147.1
    rain = groundwater.recharge_carried(k, drain, middle - drain, spacing)
    found = integrate.solve_ivp(
        lambda x, h: [-rain * x / (k * h[0])], (0, spacing / 2), [middle], rtol=1e-9, atol=1e-9
    )
    assert found.y[0][-1] == pytest.approx(drain, rel=1e-6)


@given(flow=st.floats(0.0008, 0.004), diameter=st.floats(0.03, 0.08))
def test_friction_is_near_darcy_s(flow: float, diameter: float) -> None:
    # Water at 20 C in new plastic pipe of 1.5 um, from 0.5 to 3 m/s: Hazen-Williams with 150 stays
    # within a tenth of Darcy-Weisbach.
    speed = flow / (math.pi * diameter**2 / 4)
    assume(0.5 <= speed <= 3.0)
    reynolds = fluids.Reynolds(V=speed, D=diameter, nu=1.004e-6)
    factor = fluids.friction_factor(Re=reynolds, eD=1.5e-6 / diameter)
    darcy = factor * 10 / diameter * speed**2 / (2 * sump.GRAVITY)
    assert sump.friction(flow, diameter, 10, 150) == pytest.approx(darcy, rel=0.10)


def test_friction_in_schedule_40_pipe() -> None:
    # 100 ft of 1 1/2 in schedule 40, its bore from the data of fluids, 30 gpm.
    # Sizes come in halves, though the annotation of fluids says int.
    _, bore, _, _ = fluids.nearest_pipe(NPS=1.5, schedule="40")  # type: ignore[arg-type]
    flow = (30 * UNITS.gallon / UNITS.minute).to("m**3/s").magnitude
    speed = flow / (math.pi * bore**2 / 4)
    factor = fluids.friction_factor(
        Re=fluids.Reynolds(V=speed, D=bore, nu=1.004e-6), eD=1.5e-6 / bore
    )
    darcy = factor * 30.48 / bore * speed**2 / (2 * sump.GRAVITY)
    assert sump.friction(flow, bore, 30.48, 150) == pytest.approx(darcy, rel=0.01)


def test_units_are_those_of_pint() -> None:
    rain = (1 * UNITS.inch / UNITS.hour).to("m/s").magnitude
    area = (1_000 * UNITS.foot**2).to("m**2").magnitude
    gallons = (10.3896 * UNITS.gallon / UNITS.minute).to("m**3/s").magnitude
    assert surface_water.rational(1.0, rain, area) == pytest.approx(gallons, rel=1e-5)


# -- open tables -----------------------------------------------------------------------------------

CHOW = open_flow.n_closed_conduit


@pytest.mark.parametrize(
    ("material", "chow"),
    [
        ("clay", CHOW["Clay"]["Common drainage tile"]),
        ("concrete", CHOW["Concrete"]["Finished"]),
        ("rigid_pvc", CHOW["Acrylic"]["Smooth"]),
        ("corrugated_coil", CHOW["Corrugated metal"]["Subdrain"]),
    ],
)
def test_rough_ends_are_no_smoother_than_chow_s_usual(
    material: str, chow: tuple[float, float, float]
) -> None:
    least, usual, _ = chow
    assert roughness()[material].high >= usual
    assert roughness()[material].low == pytest.approx(least, rel=0.13)


def test_rows_that_are_chow_s_own() -> None:
    for material, (least, _, most) in (
        ("clay", CHOW["Clay"]["Common drainage tile"]),
        (
            "short_grass",
            open_flow.n_excavated_dredged["Earth, straight, and uniform"][
                "With short grass and few weeds"
            ],
        ),
    ):
        assert roughness()[material] == (least, most)


# FHWA HEC-22, Table 9.1, and Table 4.4 for concrete; UFC 3-250-01, Table 20-8, for rigid plastic.
@pytest.mark.parametrize(
    ("material", "smooth", "rough"),
    [
        ("rigid_pvc", 0.009, 0.013),
        ("dual_wall_pe", 0.009, 0.015),
        ("corrugated_coil", 0.018, 0.025),
        ("concrete", 0.010, 0.015),
    ],
)
def test_roughness_as_printed(material: str, smooth: float, rough: float) -> None:
    assert roughness()[material] == (smooth, rough)


def test_schedule_40_sizes_are_those_that_fluids_carries() -> None:
    rows = [row for row in load_table("pipes")["rows"] if "schedule 40" in row.get("printed", "")]
    assert len(rows) == 3
    for row in rows:
        size = int(row["nominal"].removesuffix(" in"))
        _, _, outside, wall = fluids.nearest_pipe(NPS=size, schedule="40")
        assert read_quantity("length", row["outside_diameter"]).value == pytest.approx(
            outside, abs=2e-4
        )
        assert read_quantity("length", row["wall"]).value == pytest.approx(wall, abs=1e-4)
