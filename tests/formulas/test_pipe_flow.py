"""Manning's equation: what grows with what, the peak before a pipe is full, and what is refused."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import pipe_flow

FOOT = 0.3048
GPM = 231 * 0.0254**3 / 60
PVC = 0.013

diameters = st.floats(0.05, 2.0)
slopes = st.floats(1e-4, 0.2)
roughnesses = st.floats(0.008, 0.03)
fractions = st.floats(0.01, 1.0)


def test_four_inch_pipe_at_an_eighth_of_an_inch_per_foot() -> None:
    # D = 1/3 ft: A = 0.08727 ft2, R = 0.08333 ft, R^(2/3) = 0.19079; S = 1/96, root 0.10206.
    # V = 1.486 / 0.013 x 0.19079 x 0.10206 = 2.226 ft/s; Q = 0.1943 cfs = 87.2 gpm.
    wetted = pipe_flow.full(4 * 0.0254)
    assert wetted.hydraulic_radius == pytest.approx(0.08333 * FOOT, rel=1e-3)
    assert pipe_flow.velocity(wetted, 1 / 96, PVC) == pytest.approx(2.226 * FOOT, rel=1e-3)
    assert pipe_flow.full_flow(4 * 0.0254, 1 / 96, PVC) == pytest.approx(87.2 * GPM, rel=1e-3)


def test_a_ditch_that_comes_to_a_point() -> None:
    # z 4, d 0.25 ft: A = 4 x 0.0625 = 0.25 ft2, P = 0.5 x sqrt(17) = 2.0616 ft, R = 0.1213 ft.
    wetted = pipe_flow.ditch(0.25 * FOOT, 4)
    assert wetted.area == pytest.approx(0.25 * FOOT**2)
    assert wetted.edge == pytest.approx(2.0616 * FOOT, rel=1e-4)


@given(diameter=diameters)
def test_part_full_meets_full_and_half(diameter: float) -> None:
    full, half = pipe_flow.full(diameter), pipe_flow.part_full(diameter / 2, diameter)
    brim = pipe_flow.part_full(diameter, diameter)
    assert brim.area == pytest.approx(full.area)
    assert brim.edge == pytest.approx(full.edge)
    assert half.area == pytest.approx(full.area / 2)
    # Half full runs as fast as full.
    assert half.hydraulic_radius == pytest.approx(full.hydraulic_radius)


@given(small=diameters, more=st.floats(1.0, 4.0), slope=slopes, n=roughnesses)
def test_a_larger_pipe_never_carries_less(
    small: float, more: float, slope: float, n: float
) -> None:
    assert pipe_flow.full_flow(small * more, slope, n) >= pipe_flow.full_flow(small, slope, n)


@given(diameter=diameters, gentle=slopes, more=st.floats(1.0, 10.0), n=roughnesses)
def test_a_steeper_pipe_never_carries_less(
    diameter: float, gentle: float, more: float, n: float
) -> None:
    assert pipe_flow.full_flow(diameter, gentle * more, n) >= pipe_flow.full_flow(
        diameter, gentle, n
    )


@given(
    diameter=diameters,
    slope=slopes,
    n=roughnesses,
    low=st.floats(0.001, pipe_flow.FULLEST),
    high=st.floats(0.001, pipe_flow.FULLEST),
)
def test_deeper_water_carries_more_up_to_the_peak(
    diameter: float, slope: float, n: float, low: float, high: float
) -> None:
    low, high = sorted((low, high))
    shallow, deep = (
        pipe_flow.flow(pipe_flow.part_full(depth * diameter, diameter), slope, n)
        for depth in (low, high)
    )
    assert shallow <= deep * (1 + 1e-12)


@given(diameter=diameters, slope=slopes, n=roughnesses, depth=st.floats(pipe_flow.FULLEST, 1.0))
def test_the_peak_before_full_is_the_one_exception(
    diameter: float, slope: float, n: float, depth: float
) -> None:
    # Known of round pipes: from the peak to full the flow falls, by 7.6 % of the full flow in all.
    peak = pipe_flow.flow(pipe_flow.part_full(pipe_flow.FULLEST * diameter, diameter), slope, n)
    there = pipe_flow.flow(pipe_flow.part_full(depth * diameter, diameter), slope, n)
    brim = pipe_flow.full_flow(diameter, slope, n)
    assert brim * (1 - 1e-9) <= there <= peak * (1 + 1e-9)
    assert peak / brim == pytest.approx(1.0757, abs=2e-4)


@given(diameter=diameters, slope=slopes, n=roughnesses, depth=st.floats(0.001, pipe_flow.FULLEST))
def test_the_depth_of_a_flow_is_the_depth_that_gives_it(
    diameter: float, slope: float, n: float, depth: float
) -> None:
    carried = pipe_flow.flow(pipe_flow.part_full(depth * diameter, diameter), slope, n)
    carried = min(carried, pipe_flow.full_flow(diameter, slope, n))
    found = pipe_flow.depth_of_flow(carried, diameter, slope, n)
    back = pipe_flow.flow(pipe_flow.part_full(found, diameter), slope, n)
    assert back == pytest.approx(carried, rel=1e-6)
    assert found <= pipe_flow.FULLEST * diameter


def test_no_flow_no_depth() -> None:
    assert pipe_flow.depth_of_flow(0.0, 0.1, 0.01, PVC) == 0.0


def test_of_two_depths_that_carry_the_full_flow_the_lower_is_told() -> None:
    brim = pipe_flow.full_flow(0.1, 0.01, PVC)
    # Known of round pipes: 0.82 of the depth carries as much as the full pipe.
    assert pipe_flow.depth_of_flow(brim, 0.1, 0.01, PVC) == pytest.approx(0.082, abs=2e-4)


@pytest.mark.parametrize("slope", [0.0, -0.01, math.nan])
def test_a_level_pipe_has_no_flow_by_manning(slope: float) -> None:
    with pytest.raises(ValueError, match="needs a fall"):
        pipe_flow.full_flow(0.1, slope, PVC)


@pytest.mark.parametrize("bad", [0.0, -1.0, math.nan])
def test_what_cannot_be_is_refused(bad: float) -> None:
    with pytest.raises(ValueError, match="diameter"):
        pipe_flow.full(bad)
    with pytest.raises(ValueError, match="diameter"):
        pipe_flow.part_full(0.1, bad)
    with pytest.raises(ValueError, match="bottom and the top"):
        pipe_flow.part_full(bad, 0.1)
    with pytest.raises(ValueError, match="roughness"):
        pipe_flow.velocity(pipe_flow.full(0.1), 0.01, bad)
    with pytest.raises(ValueError, match="depth"):
        pipe_flow.ditch(bad, 3)


def test_limits_of_depth_and_shape() -> None:
    with pytest.raises(ValueError, match="bottom and the top"):
        pipe_flow.part_full(0.2, 0.1)
    with pytest.raises(ValueError, match="bottom or sloped sides"):
        pipe_flow.ditch(0.1, 0, 0)
    with pytest.raises(ValueError, match="bottom or sloped sides"):
        pipe_flow.ditch(0.1, -1, 2)
    with pytest.raises(ValueError, match="without pressure"):
        pipe_flow.depth_of_flow(1.0, 0.1, 0.01, PVC)
    with pytest.raises(ValueError, match="without pressure"):
        pipe_flow.depth_of_flow(-1.0, 0.1, 0.01, PVC)
