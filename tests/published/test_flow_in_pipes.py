"""Manning's equation and the orifice equation against worked examples of their sources."""

from __future__ import annotations

import pytest

from checker.formulas import perforations, pipe_flow, surface_water

FOOT = 0.3048
INCH = 0.0254
CFS = FOOT**3
GPM = 231 * INCH**3 / 60


# -- pipes -----------------------------------------------------------------------------------------


def test_hec_22_example_9_1_concrete() -> None:
    # FHWA HEC-22, 4th ed. (2024), example 9.1: 17.6 cfs at 0.015 and n 0.013 needs 1.69 ft; a 21 in
    # pipe carries 19.3 cfs at 8.0 ft/s. The book writes the exponents 2.67 and 0.67 for 8/3 and
    # 2/3, which is 0.5 % and 0.9 % less than the exact ones.
    assert pipe_flow.full_flow(1.69 * FOOT, 0.015, 0.013) == pytest.approx(17.6 * CFS, rel=0.01)
    full = pipe_flow.full(21 * INCH)
    assert pipe_flow.flow(full, 0.015, 0.013) == pytest.approx(19.3 * CFS, rel=0.01)
    assert pipe_flow.velocity(full, 0.015, 0.013) == pytest.approx(8.0 * FOOT, rel=0.01)


def test_hec_22_example_9_1_corrugated_metal() -> None:
    # The same example, second choice: 24 in, n 0.017: 21.1 cfs at 6.8 ft/s. Same rounding.
    full = pipe_flow.full(24 * INCH)
    assert pipe_flow.flow(full, 0.015, 0.017) == pytest.approx(21.1 * CFS, rel=0.01)
    assert pipe_flow.velocity(full, 0.015, 0.017) == pytest.approx(6.8 * FOOT, rel=0.01)


def test_hec_22_example_4_2_step_1c() -> None:
    # 15 in concrete pipe, n 0.011, slope 0.008: 479 ft take 1.4 min at 5.58 ft/s (factor 1.49).
    found = pipe_flow.velocity(pipe_flow.full(15 * INCH), 0.008, 0.011)
    assert found == pytest.approx(5.58 * FOOT, rel=0.005)
    assert 479 * FOOT / found / 60 == pytest.approx(1.4, abs=0.05)


@pytest.mark.parametrize(
    ("times", "by"),
    [("diameter", 6.35), ("slope", 1.4), ("roughness", 0.5)],
)
def test_hec_22_what_doubling_does(times: str, by: float) -> None:
    # Section 9.1.3: twice the diameter carries 6.35 times as much, twice the slope 1.4 times, and
    # twice the roughness half.
    size = {"diameter": 0.3, "slope": 0.01, "roughness": 0.013}
    before = pipe_flow.full_flow(size["diameter"], size["slope"], size["roughness"])
    size[times] *= 2
    after = pipe_flow.full_flow(size["diameter"], size["slope"], size["roughness"])
    assert after / before == pytest.approx(by, rel=0.015)


@pytest.mark.parametrize(
    ("depth", "area"),
    [(0.2, 1.5), (0.4, 4.1), (0.6, 7.1), (0.8, 10.3), (1.0, 13.5), (1.2, 16.3), (1.4, 18.5)],
)
def test_hec_22_example_10_5_wet_areas(depth: float, area: float) -> None:
    # Table 10.3: end areas of water in a 60 in (1,500 mm) pipe, in square feet. The depths are
    # printed in feet to one decimal; they are steps of 0.2 m, and so they stand here.
    found = pipe_flow.part_full(depth, 1.5).area
    assert found == pytest.approx(area * FOOT**2, abs=0.06 * FOOT**2)


def test_clay_drain_tile_half_full() -> None:
    # Mott, Applied Fluid Mechanics, example 14.2, as the CRAN package iemisc prints it: 200 mm, half
    # full, n 0.013, slope 0.001: A 0.015708 m2, R 0.05 m, V 0.3301 m/s, Q 5.186e-3 m3/s.
    half = pipe_flow.part_full(0.1, 0.2)
    assert half.area == pytest.approx(0.015708, rel=1e-4)
    assert half.hydraulic_radius == pytest.approx(0.05, rel=1e-4)
    assert pipe_flow.velocity(half, 0.001, 0.013) == pytest.approx(0.3301, rel=1e-3)
    assert pipe_flow.flow(half, 0.001, 0.013) == pytest.approx(5.186e-3, rel=1e-3)


def test_depth_of_a_flow_in_a_200_mm_pipe() -> None:
    # CRAN package hydraulics, vignette: 0.010 m3/s, n 0.013, slope 0.001, 0.2 m: depth 0.16 m,
    # V 0.38, A 0.027, P 0.44, R 0.061.
    depth = pipe_flow.depth_of_flow(0.010, 0.2, 0.001, 0.013)
    wetted = pipe_flow.part_full(depth, 0.2)
    assert depth == pytest.approx(0.16, abs=0.005)
    assert wetted.area == pytest.approx(0.027, abs=5e-4)
    assert wetted.edge == pytest.approx(0.44, abs=5e-3)
    assert wetted.hydraulic_radius == pytest.approx(0.061, abs=5e-4)
    assert pipe_flow.velocity(wetted, 0.001, 0.013) == pytest.approx(0.38, abs=0.005)


def test_half_full_two_metre_conduit() -> None:
    # Subramanya, 1000 Solved Problems in Fluid Mechanics, problem 12.6: half full, 1.10 m3/s,
    # n 0.018, slope 0.0004: 2.0 m across.
    found = pipe_flow.flow(pipe_flow.part_full(1.0, 2.0), 0.0004, 0.018)
    assert found == pytest.approx(1.10, rel=0.005)


def test_six_inch_horizontal_drain_of_the_plumbing_code() -> None:
    # Uniform Plumbing Code, appendix D: a 6 in drain at 1/8 in/ft takes 21,400 sq ft at 1 in/h,
    # which is 222.3 gpm. That its figures are Manning's at n 0.015 is our finding, not its words.
    rain = surface_water.rational(1.0, INCH / 3_600, 21_400 * FOOT**2)
    assert rain == pytest.approx(222.3 * GPM, rel=1e-3)
    assert pipe_flow.full_flow(6 * INCH, 1 / 96, 0.015) == pytest.approx(rain, rel=0.005)


# Derived, no published table of small drain pipe was found: D in inches, n, slope, gallons a minute,
# by 1.486 / n x A x R^(2/3) x sqrt(S), nominal size, worked out apart from this program.
@pytest.mark.parametrize(
    ("size", "n", "slope", "gallons"),
    [
        (3, 0.013, 0.005, 28.0),
        (3, 0.017, 0.02, 42.9),
        (4, 0.011, 0.01, 100.9),
        (4, 0.013, 0.001, 27.0),
        (4, 0.013, 1 / 96, 87.1),
        (4, 0.018, 0.005, 43.6),
        (6, 0.013, 0.01, 251.8),
        (6, 0.018, 1 / 96, 185.5),
    ],
)
def test_derived_grid_of_small_pipes(size: float, n: float, slope: float, gallons: float) -> None:
    assert pipe_flow.full_flow(size * INCH, slope, n) == pytest.approx(gallons * GPM, rel=2e-3)


@pytest.mark.parametrize(("slope", "speed"), [(0.001, 0.69), (0.005, 1.54), (0.01, 2.18)])
def test_derived_speeds_in_a_4_inch_pipe(slope: float, speed: float) -> None:
    found = pipe_flow.velocity(pipe_flow.full(4 * INCH), slope, 0.013)
    assert found == pytest.approx(speed * FOOT, rel=5e-3)


# -- ditches ---------------------------------------------------------------------------------------


def test_hec_22_example_6_1_ditch() -> None:
    # n 0.03, slope 0.01, bottom 2.6 ft, sides 3 to 1, 1.6 ft deep: A 11.8 ft2, P 12.7 ft, R 0.93 ft,
    # 55.7 cfs, 4.7 ft/s.
    wetted = pipe_flow.ditch(1.6 * FOOT, 3, 2.6 * FOOT)
    assert wetted.area == pytest.approx(11.8 * FOOT**2, abs=0.05 * FOOT**2)
    assert wetted.edge == pytest.approx(12.7 * FOOT, abs=0.05 * FOOT)
    assert wetted.hydraulic_radius == pytest.approx(0.93 * FOOT, abs=0.005 * FOOT)
    assert pipe_flow.flow(wetted, 0.01, 0.03) == pytest.approx(55.7 * CFS, rel=5e-3)
    assert pipe_flow.velocity(wetted, 0.01, 0.03) == pytest.approx(4.7 * FOOT, rel=0.01)


def test_derived_lawn_swale() -> None:
    # Derived: point at the bottom, z 4, 0.25 ft deep, n 0.035, 2 %: R 0.1213 ft, 0.367 cfs,
    # 165 gpm, 1.47 ft/s.
    wetted = pipe_flow.ditch(0.25 * FOOT, 4)
    assert pipe_flow.flow(wetted, 0.02, 0.035) == pytest.approx(0.367 * CFS, rel=3e-3)
    assert pipe_flow.flow(wetted, 0.02, 0.035) == pytest.approx(165 * GPM, rel=3e-3)
    assert pipe_flow.velocity(wetted, 0.02, 0.035) == pytest.approx(1.47 * FOOT, rel=3e-3)


# -- openings --------------------------------------------------------------------------------------


def test_slotted_pipe_of_the_trca_guide() -> None:
    # TRCA and CVC guide, flow through perforated pipe: slots of 8 x 1.5 mm, 6 to a ring, a ring each
    # 30 mm: 0.0024 m2/m; 8 m of pipe half clogged, Cd 0.61, head 1.1 m: 27 L/s.
    area = perforations.open_area(0.008 * 0.0015, 6, 0.030)
    assert area == pytest.approx(0.0024)
    assert perforations.inflow(8, area, 1.1, 0.5, 0.61) == pytest.approx(0.027, abs=5e-4)


@pytest.mark.parametrize(("depth", "flow"), [(0.7, 0.61), (2.0, 1.20), (3.3, 1.59), (5.9, 2.16)])
def test_hec_22_example_10_10_orifice(depth: float, flow: float) -> None:
    # An opening 0.49 ft across, Co 0.60; the head is taken to its middle (at 3.3 ft: 3.06 ft). Depths
    # are printed to one decimal of a foot.
    head = (depth - 0.49 / 2) * FOOT
    found = perforations.orifice(perforations.round_hole(0.49 * FOOT), head, 0.60)
    assert found == pytest.approx(flow * CFS, rel=0.015)
