"""Groundwater that flows to drains against worked examples of their sources."""

from __future__ import annotations

import math

import pytest

from checker.formulas import groundwater

FOOT = 0.3048
DAY = 86_400
CM = 0.01


def test_infiltration_gallery_of_fair_geyer_and_okun() -> None:
    # Water and Wastewater Engineering, example 10.3: k 0.1 cm/s, H 20 ft, h 2 ft, 30 ft away:
    # 2.2e-2 cfs a foot. Unrounded 0.02165.
    found = groundwater.line_flow(0.1 * CM, 20 * FOOT, 2 * FOOT, 30 * FOOT)
    assert found == pytest.approx(0.02165 * FOOT**2, rel=1e-3)
    assert found == pytest.approx(2.2e-2 * FOOT**2, rel=0.02)


def test_derived_the_same_gallery_in_a_hundred_times_tighter_ground() -> None:
    # Derived: 2.2e-4 cfs a foot, 0.097 gpm a foot.
    found = groundwater.line_flow(1e-3 * CM, 20 * FOOT, 2 * FOOT, 30 * FOOT)
    assert found == pytest.approx(2.165e-4 * FOOT**2, rel=1e-3)
    assert found * FOOT == pytest.approx(0.097 * 231 * 0.0254**3 / 60, rel=5e-3)


def test_dupuit_between_two_water_levels() -> None:
    # Brigham Young University, CE 544: k 0.001 cm/s, 5 m and 1 m of water 100 m apart:
    # 0.10368 m3 a day for each metre; 4.4944 m at 20 m, 3.6056 at 50, 2.6458 at 75. The same flow
    # must pass every stretch.
    k, flow = 0.001 * CM, 0.10368 / DAY
    assert groundwater.line_flow(k, 5, 1, 100) == pytest.approx(flow, rel=1e-4)
    for at, head in ((20, 4.4944), (50, 3.6056), (75, 2.6458)):
        assert groundwater.line_flow(k, 5, head, at) == pytest.approx(flow, rel=1e-4)
        assert groundwater.line_flow(k, head, 1, 100 - at) == pytest.approx(flow, rel=1e-4)


def test_through_a_cut_off_wall_by_dupuit() -> None:
    # The same course: wall 3 ft thick, k 1e-6 cm/s, 18 ft of water against 4 ft. It prints 0.2381
    # ft3 a day and foot by Darcy over the full height and warns that this is too much; by Dupuit
    # 0.1455, our sum on its figures.
    found = groundwater.line_flow(1e-6 * CM, 18 * FOOT, 4 * FOOT, 3 * FOOT)
    assert found == pytest.approx(0.1455 * FOOT**2 / DAY, rel=1e-3)
    assert found < 0.2381 * FOOT**2 / DAY


def test_sichardt() -> None:
    # The same course, sheet on the radius of influence: 5 m of drawdown, k 0.001 m/s: 474.34 m.
    assert groundwater.reach(5, 0.001, groundwater.SICHARDT_WELL) == pytest.approx(474.34, rel=1e-4)


def test_how_far_other_rules_stray_from_sichardt() -> None:
    # The same sheet, 50 m of water: Weber 2,078.9 m after 50 days, Kusakin 642.87 m, and 14,039 m
    # from rain (Lembke). Nobody should read one of them as a measurement.
    ours = groundwater.reach(5, 0.001, groundwater.SICHARDT_WELL)
    assert [round(other / ours, 1) for other in (642.87, 2_078.9, 14_039)] == [1.4, 4.4, 29.6]


def test_punmia_spacing_of_drains() -> None:
    # Irrigation and Water Power Engineering, example 16.5: tight layer 10 m down, drains 1.8 m, water
    # kept 1.5 m down, k 1e-4 m/s, 0.8 cm a day: 147 m apart.
    drain, middle = 10 - 1.8, 10 - 1.5
    found = groundwater.recharge_carried(1e-4, drain, middle - drain, 147.1)
    assert found == pytest.approx(0.8 * CM / DAY, rel=2e-3)


def test_punmia_permeability_from_a_drain() -> None:
    # Example 16.6: 30 m apart, 4e-6 m3/s for each metre of drain, heads 8.0 and 8.3 m:
    # k = 6.13e-6 m/s.
    rate = groundwater.recharge_carried(6.13e-6, 8.0, 0.3, 30)
    assert rate * 30 == pytest.approx(4e-6, rel=2e-3)


@pytest.mark.parametrize(
    ("depth", "spacing", "radius", "equivalent"),
    [(2, 10, 0.05, 0.87133), (3, 20, 0.05, 1.41067), (1, 30, 0.05, 0.86422)],
)
def test_derived_equivalent_depths(
    depth: float, spacing: float, radius: float, equivalent: float
) -> None:
    # Derived from the closed form as the Noah-MP land model has it, with true pi for its 22/7.
    found = groundwater.equivalent_depth(depth, spacing, radius)
    assert found == pytest.approx(equivalent, rel=1e-4)


def test_derived_drain_with_equivalent_depth() -> None:
    # Derived: D 2, L 10, r 0.05 m; F(1.25664) = 0.353281; k 1e-5 m/s, 0.30 m of rise:
    # 2.4512e-7 m/s = 21.18 mm a day.
    assert groundwater.crowding(2 * math.pi * 2 / 10) == pytest.approx(0.353281, rel=1e-5)
    depth = groundwater.equivalent_depth(2, 10, 0.05)
    found = groundwater.recharge_carried(1e-5, depth, 0.30, 10)
    assert found == pytest.approx(2.4512e-7, rel=1e-3)
    assert found * DAY * 1_000 == pytest.approx(21.18, rel=1e-3)


def test_derived_both_series_meet() -> None:
    # Derived: at x = 0.5 both branches of F give 2.40378.
    assert groundwater.crowding(0.5) == pytest.approx(2.40378, abs=1e-5)
    assert groundwater.crowding(0.5 + 1e-9) == pytest.approx(2.40378, abs=1e-5)
