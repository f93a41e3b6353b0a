"""Loads, frost, capillary rise and ages through a spec: by hand, and what is missing or outside."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Derived, Deriver
from checker.reading.notations import format_quantity
from checker.values import Range
from tests.support import spec_of

FOOT = 0.3048
INCH = 0.0254
POUND = 4.4482216152605
PCF = POUND / FOOT**3
LB_FT = POUND / FOOT
DAY = 86_400.0

WALL: dict[str, Any] = {
    "levels": {"unit": "ft", "finished_grade_at_wall": 100.00, "footing_top": 92.00},
    "backfill": {"slab_placed": "no"},
    "soil": {"backfill": {"usc": "GP"}},
}


def find(name: str, item: str = "", **sections: Any) -> Derived:
    return Deriver(spec_of(sections)).get(name, item)


# -- the wall -------------------------------------------------------------------------------------


def test_gravel_at_rest_on_8_feet_of_wall() -> None:
    # 60 pcf x 8 ft = 480 psf; x 8 / 2 = 1920 lb/ft, 2.67 ft up. Active 30 pcf: 960 lb/ft.
    house = Deriver(spec_of(WALL))
    assert house.get("wall.rest_load").value / PCF == pytest.approx(60)
    assert house.get("wall.rest_pressure").value / (PCF * FOOT) == pytest.approx(480)
    assert house.get("wall.rest_thrust").value / LB_FT == pytest.approx(1920)
    assert house.get("wall.active_thrust").value / LB_FT == pytest.approx(960)
    assert house.get("wall.thrust_height").value / FOOT == pytest.approx(8 / 3)


def test_the_same_gravel_full_of_water() -> None:
    # K 60 / 120 = 0.5; 0.5 x (120 - 62.4) + 62.4 = 91.2 pcf; x 64 / 2 = 2918 lb/ft
    house = Deriver(spec_of(WALL))
    assert house.get("wall.undrained_load").value / PCF == pytest.approx(91.2)
    found = house.get("wall.undrained_thrust")
    assert found.value / LB_FT == pytest.approx(2918.4)
    assert any("120 pcf" in note for note in found.assumed)


def test_water_2_feet_over_the_footing() -> None:
    # 6 ft moist at 60: 60 x 36 / 2 = 1080, 2 + 2 = 4 ft up. Below: 360 x 2 = 720, 1 ft up; buoyant
    # 0.5 x 57.6 x 4 / 2 = 57.6 and water 62.4 x 4 / 2 = 124.8, both 2/3 ft up. In all 1982.4 lb/ft;
    # moment 4320 + 720 + 121.6 = 5161.6; 2.604 ft up.
    levels = WALL["levels"] | {"seasonal_high_water": 94.00}
    house = Deriver(spec_of(WALL | {"levels": levels}))
    assert house.get("wall.water_head").value / FOOT == pytest.approx(2)
    assert house.get("wall.water_thrust").value / LB_FT == pytest.approx(124.8)
    assert house.get("wall.thrust_at_high_water").value / LB_FT == pytest.approx(1982.4)
    height = house.get("wall.thrust_at_high_water_height").value
    assert height / FOOT == pytest.approx(2.604, abs=5e-4)


def test_water_below_the_footing_adds_nothing() -> None:
    levels = WALL["levels"] | {"seasonal_high_water": 90.00}
    house = Deriver(spec_of(WALL | {"levels": levels}))
    assert house.get("wall.water_thrust").value == 0
    dry = house.get("wall.rest_thrust").value
    assert house.get("wall.thrust_at_high_water").value == pytest.approx(dry)


def test_a_friction_angle_from_the_report_comes_before_the_table() -> None:
    # 33 degrees: 1 - 0.5446 = 0.4554; x 125 = 56.9 pcf
    soil = {"backfill": {"usc": "SM", "friction_angle": "33 deg", "unit_weight": "125 pcf"}}
    found = find("wall.rest_load", soil=soil)
    assert found.value / PCF == pytest.approx(56.9, abs=0.05)
    assert not found.assumed


def test_rows_from_memory_say_so() -> None:
    assert any(
        "from memory" in note
        for note in find("wall.rest_load", soil={"backfill": {"usc": "CL"}}).assumed
    )
    assert not any(
        "from memory" in n for n in find("wall.rest_load", soil={"backfill": {"usc": "GP"}}).assumed
    )


@pytest.mark.parametrize("symbol", ["OL", "MH", "CH", "OH", "Pt"])
def test_the_sum_stops_at_soil_that_is_unsuitable(symbol: str) -> None:
    found = find("wall.rest_thrust", **WALL | {"soil": {"backfill": {"usc": symbol}}})
    assert not found.known
    assert "the engineer decides" in found.because


def test_the_sum_stops_at_20_feet() -> None:
    levels = {"unit": "ft", "finished_grade_at_wall": 112.50, "footing_top": 92.00}
    for name in ("wall.rest_thrust", "wall.undrained_thrust", "wall.rest_pressure"):
        found = find(name, **WALL | {"levels": levels})
        assert not found.known
        assert "20 ft" in found.because


def test_what_is_missing_is_named() -> None:
    assert find("wall.rest_load").missing == ("soil.backfill.usc",)
    gravel = {"backfill": {"usc": "GP"}}
    assert find("wall.rest_thrust", soil=gravel).missing == ("levels.finished_grade_at_wall",)


def test_a_range_of_weights_gives_a_range_of_loads() -> None:
    # K0 at 30 degrees 0.5: 100 to 130 pcf give 50 to 65.
    soil = {"backfill": {"friction_angle": "30 deg", "unit_weight": "100 to 130 pcf"}}
    value = find("wall.rest_load", soil=soil).value
    assert isinstance(value, Range)
    assert (value.low / PCF, value.high / PCF) == pytest.approx((50, 65))


def test_the_level_of_water_that_lifts_a_slab() -> None:
    # 4 in x 150 / 62.4 = 9.615 in = 0.801 ft over 91.67
    house = Deriver(
        spec_of({"levels": {"unit": "ft", "slab_underside": 91.67}, "slab": {"thickness": "4 in"}})
    )
    assert house.get("slab.floats_at").value / INCH == pytest.approx(9.615, abs=1e-3)
    assert house.get("slab.floats_at_level").value / FOOT == pytest.approx(92.471, abs=1e-3)


@given(depth=st.floats(1.0, 9.5), deeper=st.floats(0.05, 0.45))
def test_pressure_grows_with_depth(depth: float, deeper: float) -> None:
    def pressure(fill: float) -> float:
        levels = {"unit": "ft", "finished_grade_at_wall": round(90 + fill, 4), "footing_top": 90}
        value = find("wall.rest_pressure", **WALL | {"levels": levels}).value
        assert isinstance(value, float)
        return value

    assert pressure(depth + deeper) > pressure(depth)


@given(height=st.floats(0.3, 5.5), unit=st.sampled_from(["ft", "in", "mm", "m", "ft-in"]))
def test_a_head_in_any_unit_gives_the_same_slab(height: float, unit: str) -> None:
    # The thickness of a slab as anybody may write it; what lifts it does not care how.
    thickness = height / 10
    written = format_quantity("length", thickness, unit, places=6)
    plain = format_quantity("length", thickness, "mm", places=6)
    there = find("slab.floats_at", slab={"thickness": written}).value
    assert there == pytest.approx(find("slab.floats_at", slab={"thickness": plain}).value, rel=1e-4)


@given(
    pounds=st.floats(80, 140),
    unit=st.sampled_from(["pcf", "lb/cu ft", "lb/cu yd", "kN/m3", "kg/m3"]),
)
def test_a_weight_in_any_unit_gives_the_same_load(pounds: float, unit: str) -> None:
    written = format_quantity("unit_weight", pounds * PCF, unit, places=6)
    soil = {"backfill": {"friction_angle": "30 deg", "unit_weight": written}}
    assert find("wall.rest_load", soil=soil).value / PCF == pytest.approx(pounds / 2, rel=1e-5)


# -- frost ----------------------------------------------------------------------------------------

WINTER: dict[str, Any] = {
    "climate": {
        "air_freezing_index": "2500 F-days",
        "freezing_season": "160 days",
        "mean_temperature": "37.2 F",
        "ground_cover": "turf",
    },
    "soil": {
        "bank": {
            "dry_weight": "100 pcf",
            "water_content": "15 %",
            "conductivity": "0.76 Btu/h/ft/F",
        }
    },
}


def test_frost_under_turf() -> None:
    # n 0.5: 1250 F-days. Stefan sqrt(48 x 0.76 x 1250 / 2160) = 4.595 ft. vs 7.8125 F; alpha 5.2 /
    # 7.8125 = 0.666; mu 28.25 x 7.8125 / 2160 = 0.1022; lambda 1/sqrt(1 + 0.1022 x 1.166) = 0.945;
    # 4.34 ft.
    house = Deriver(spec_of(WINTER))
    assert house.get("climate.frost_stefan").value / FOOT == pytest.approx(4.595, abs=2e-3)
    assert house.get("climate.frost_alpha").value == pytest.approx(0.666, abs=1e-3)
    assert house.get("climate.frost_mu").value == pytest.approx(0.1022, abs=1e-4)
    found = house.get("climate.frost_berggren")
    assert found.value / FOOT == pytest.approx(4.34, abs=5e-3)
    assert any("runs high" in note for note in found.assumed)


def test_ground_whose_cover_is_not_shown_counts_as_the_coldest() -> None:
    climate = {key: value for key, value in WINTER["climate"].items() if key != "ground_cover"}
    found = find("climate.surface_factor", climate=climate)
    assert found.value == 1.0
    assert "coldest" in found.assumed[0]


def test_ground_that_stays_frozen_has_no_such_depth() -> None:
    climate = WINTER["climate"] | {"mean_temperature": "30 F"}
    found = find("climate.frost_berggren", **WINTER | {"climate": climate})
    assert not found.known
    assert "freezes the ground for good" in found.because


def test_what_frost_asks_for_is_named() -> None:
    missing = find("climate.frost_berggren", climate={"air_freezing_index": "1500 F-days"}).missing
    assert {
        "climate.mean_temperature",
        "climate.freezing_season",
        "soil.bank.conductivity",
        "soil.bank.dry_weight",
        "soil.bank.water_content",
    } == set(missing)


def test_frost_finds_the_low_side_of_a_walk_out() -> None:
    # 92.17 - 90.67 = 1.5 ft on the open side
    levels = {"unit": "ft", "finished_grade_at_wall": 100, "footing_underside": 90.67}
    sides = [{"id": "hill"}, {"id": "open", "grade_at_wall": 92.17}]
    found = find("footing.frost_cover", levels=levels, grade={"sides": sides})
    assert found.value / FOOT == pytest.approx(1.5)


# -- capillary rise -------------------------------------------------------------------------------


def test_rise_in_bank_run_gravel() -> None:
    # 0.5 / (0.4 x 0.03) = 41.7 cm with the highest C, 8.3 with the lowest, 25.2 in a clean tube
    slab = {"base_d10": "0.3 mm", "base_void_ratio": "0.4"}
    house = Deriver(spec_of({"slab": slab}))
    assert house.get("slab.capillary_rise").value == pytest.approx(0.417, abs=5e-4)
    assert house.get("slab.capillary_rise_least").value == pytest.approx(0.0833, abs=5e-4)
    assert house.get("slab.capillary_rise_in_tube").value == pytest.approx(0.252, abs=5e-4)


def test_the_smallest_stone_bounds_d10_from_below() -> None:
    found = find("slab.capillary_rise", slab={"base_min_size": "1/2 in", "base_void_ratio": "0.4"})
    # 0.5 / (0.4 x 1.27) = 0.984 cm
    assert found.value == pytest.approx(0.00984, abs=1e-5)
    assert any("at least that" in note for note in found.assumed)


def test_rise_asks_for_a_size() -> None:
    assert find("slab.capillary_rise").missing == ("slab.base_d10",)


# -- ages -----------------------------------------------------------------------------------------


def test_ages_of_the_wall_in_days() -> None:
    wall = {"poured": "2031-04-06"}
    coated = find("coat.wall_age", wall=wall, coat={"applied": "2031-04-16"})
    assert coated.value == 10 * DAY
    assert coated.unit == "days"
    # over the end of a month: 24 days to the 30th of April and 2 more
    filled = find("backfill.wall_age", wall=wall, backfill={"starts": "2031-05-02"})
    assert filled.value == 26 * DAY
    assert not filled.assumed


def test_the_day_of_the_spec_stands_in_for_the_day_of_the_fill() -> None:
    found = find("backfill.wall_age", wall={"poured": "2031-04-06"}, job={"as_of": "2031-04-20"})
    assert found.value == 14 * DAY
    assert found.assumed
    assert find("backfill.wall_age", wall={"poured": "2031-04-06"}).missing == ("backfill.starts",)


def test_a_coat_older_than_its_wall_gives_no_age() -> None:
    found = find("coat.wall_age", wall={"poured": "2031-04-06"}, coat={"applied": "2031-04-05"})
    assert not found.known
    assert "before the wall was poured" in found.because
