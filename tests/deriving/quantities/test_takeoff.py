"""What to order through a spec: shapes and places, what is left out, how it scales, any unit."""

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
CUBIC_YARD = 27 * FOOT**3
SQUARE_FOOT = FOOT**2

LINE: dict[str, Any] = {
    "levels": {"unit": "ft", "footing_top": 91.67},
    "footing": {"projection": "6 in"},
    "drain": {
        "shape": "line",
        "offset": "3 in",
        "outside_diameter": "4 in",
        "wall_thickness": "0.1 in",
        "invert_low": 91.00,
        "corners": [
            {"id": "A", "invert": 91.00, "run_to_next": "30 ft"},
            {"id": "B", "invert": 91.00, "run_to_next": "20 ft"},
            {"id": "C", "invert": 91.00},
        ],
    },
    "stone": {"bedding": "2.9 in", "beyond_footing": "12 in", "top_level": 92.75},
}


def find(name: str, item: str = "", **sections: Any) -> Derived:
    return Deriver(spec_of(sections)).get(name, item)


def runs(first: str, second: str) -> dict[str, Any]:
    corners = [
        {"id": "A", "invert": 91.00, "run_to_next": first},
        {"id": "B", "invert": 91.00, "run_to_next": second},
        {"id": "C", "invert": 91.00, "run_to_next": "1 ft"},
    ]
    return {**LINE, "drain": {**LINE["drain"], "corners": corners}}


def test_stone_along_a_line() -> None:
    # Trench 91.00 - 0.25 = 90.75: 2.0 x 1.0 + 0.5 x 1.08 = 2.54 sq ft x 50 ft = 127.0, less the pipe
    # 0.0873 x 50 = 4.4: 122.6 cu ft = 4.54 cu yd.
    found = find("stone.volume", **runs("30 ft", "20 ft"))
    assert found.value / CUBIC_YARD == pytest.approx(4.54, abs=0.01)
    assert any("along the length of the pipe" in note for note in found.assumed)


@given(first=st.integers(5, 120), second=st.integers(5, 120))
def test_twice_the_drain_takes_twice_the_stone_and_fabric(first: int, second: int) -> None:
    fabrics = [{"id": "wrap", "position": "around_stone", "top_lap": "12 in"}]
    once = Deriver(spec_of(runs(f"{first} ft", f"{second} ft") | {"fabrics": fabrics}))
    twice = Deriver(spec_of(runs(f"{2 * first} ft", f"{2 * second} ft") | {"fabrics": fabrics}))
    for name, item in (
        ("stone.volume", ""),
        ("stone.mass", ""),
        ("fabrics.each.area_needed", "wrap"),
    ):
        assert twice.get(name, item).value == pytest.approx(2 * once.get(name, item).value)


@given(
    reach=st.floats(0.3, 0.6),
    unit=st.sampled_from(["in", "ft", "mm", "cm", "m"]),
)
def test_a_reach_in_any_unit_takes_the_same_stone(reach: float, unit: str) -> None:
    def volume(text: str) -> float:
        stone = LINE["stone"] | {"beyond_footing": text}
        value = find("stone.volume", **runs("30 ft", "20 ft") | {"stone": stone}).value
        assert isinstance(value, float)
        return value

    written = volume(format_quantity("length", reach, unit, places=6))
    assert written == pytest.approx(
        volume(format_quantity("length", reach, "mm", places=6)), rel=1e-5
    )


def test_the_last_corner_of_a_line_needs_no_run() -> None:
    # 30 + 20 ft; a loop would need the way back as well.
    assert find("drain.length_to_order", **LINE).value / FOOT == pytest.approx(50)
    loop = LINE | {"drain": LINE["drain"] | {"shape": "loop"}}
    assert find("drain.length_to_order", **loop).missing == ("wall.perimeter", "drain.corners")


def test_stone_alone_has_no_pipe_in_it() -> None:
    spec = runs("30 ft", "20 ft")
    alone = find("stone.volume", **spec | {"drain": spec["drain"] | {"kind": "stone_only"}})
    # 127.0 cu ft
    assert alone.value / FOOT**3 == pytest.approx(127.0, abs=0.05)


def test_a_drain_on_the_footing_is_outside_the_sum() -> None:
    spec = runs("30 ft", "20 ft")
    found = find("stone.volume", **spec | {"drain": spec["drain"] | {"position": "on_footing"}})
    assert "beside the footing" in found.because


def test_a_range_of_reaches_is_a_range_of_stone() -> None:
    stone = LINE["stone"] | {"beyond_footing": "12 to 14 in"}
    value = find("stone.volume", **runs("30 ft", "20 ft") | {"stone": stone}).value
    assert isinstance(value, Range)
    # 2 in more: 1/6 x 2.0 x 50 = 16.7 cu ft
    assert (value.high - value.low) / FOOT**3 == pytest.approx(16.7, abs=0.05)


@pytest.mark.parametrize(
    ("position", "inches"),
    [
        # breadth 12 + 6 = 18, height 24, lap 12
        ("around_stone", 2 * (18 + 24) + 12),
        ("both", 2 * (18 + 24) + 12),
        ("over_stone", 18 + 12),
        ("against_bank", 24 + 12),
    ],
)
def test_width_of_the_fabric_by_its_place(position: str, inches: float) -> None:
    fabrics = [{"id": "wrap", "position": position, "top_lap": "12 in"}]
    found = find("fabrics.each.width_needed", "wrap", **LINE, fabrics=fabrics)
    assert found.value / INCH == pytest.approx(inches, abs=0.01)


def test_a_sock_is_not_cut_from_a_roll() -> None:
    fabrics = [{"id": "sock", "position": "around_pipe"}]
    found = find("fabrics.each.width_needed", "sock", **LINE, fabrics=fabrics)
    assert not found.known
    assert found.inapplicable


def test_fittings() -> None:
    corners = [
        {"id": "A", "turn": "left"},
        {"id": "B", "turn": "straight"},
        {"id": "C"},
    ]
    outlets = [
        {"id": "main", "kind": "daylight", "leg_length": "95 ft"},
        {"id": "none", "kind": "none"},
    ]
    house = Deriver(spec_of({"drain": {"corners": corners, "cleanouts": "2"}, "outlets": outlets}))
    assert house.get("drain.elbows").value == 2
    assert house.get("drain.tees").value == 3
    assert house.get("drain.solid_length").value / FOOT == pytest.approx(95)


def test_a_sump_has_no_leg_and_a_leg_without_a_length_is_asked_for() -> None:
    pit = find("drain.solid_length", outlets=[{"id": "pit", "kind": "sump"}])
    assert pit.value == 0
    bare = find("drain.solid_length", outlets=[{"id": "main", "kind": "daylight"}])
    assert bare.missing == ("outlets.main.leg_length",)


HOUSE: dict[str, Any] = {
    "levels": {"unit": "ft", "footing_top": 91.67},
    "wall": {"perimeter": "144 ft"},
    "footing": {"projection": "7 in"},
}


def test_coat_that_stops_on_the_wall() -> None:
    # 144 x (100 - 92) = 1152 sq ft
    coat = {"top_level": 100.00, "bottom_level": 92.00}
    found = find("coat.area_by_levels", **HOUSE, coat=coat)
    assert found.value / SQUARE_FOOT == pytest.approx(1152)


def test_loss_shown_replaces_the_guess() -> None:
    coat = {"area": "1000 sq ft", "dry_thickness": "40 mil", "solids": "50 %", "loss": "20 %"}
    found = find("coat.volume_needed", coat=coat)
    # 1000 x 40 / (1604.17 x 0.5 x 0.8) = 62.3 gal
    assert found.value / (231 * INCH**3) == pytest.approx(62.3, abs=0.05)
    assert not found.assumed


def test_free_draining_fill_and_its_cap() -> None:
    # 18 in wide, middle 9 in out: 144 + 6 = 150 ft; 1.5 x 150 = 225 sq ft; x (99.50 - 92.50) = 1575
    # cu ft = 58.3 cu yd; cap 225 x 0.5 = 112.5 cu ft = 4.17 cu yd.
    backfill = {
        "free_draining_width": "18 in",
        "free_draining_top": 99.50,
        "cap_material": "silty clay",
        "cap_thickness": "6 in",
    }
    house = Deriver(spec_of(HOUSE | {"backfill": backfill, "stone": {"top_level": 92.50}}))
    assert house.get("backfill.zone_volume").value / CUBIC_YARD == pytest.approx(58.3, abs=0.05)
    assert house.get("backfill.cap_volume").value / CUBIC_YARD == pytest.approx(4.17, abs=0.01)
    paved = backfill | {"cap_material": "paving"}
    assert find("backfill.cap_volume", **HOUSE, backfill=paved).inapplicable


def test_sheet_upside_down_is_no_area() -> None:
    sheet = {"top_level": 91.00, "bottom_level": 92.00}
    assert "not above" in find("sheet.net_area", **HOUSE, sheet=sheet).because


def test_a_lap_as_wide_as_the_roll_is_no_order() -> None:
    sheet = {"top_level": 100.00, "bottom_level": 92.00, "roll_width": "6 in", "side_lap": "6 in"}
    assert "wider than its lap" in find("sheet.area_needed", **HOUSE, sheet=sheet).because


def test_base_under_the_slab() -> None:
    # 1200 x 4/12 = 400 cu ft = 14.8 cu yd; x 100 lb = 20 short tons
    house = Deriver(spec_of({"slab": {"area": "1200 sq ft", "base_thickness": "4 in"}}))
    assert house.get("slab.base_volume").value / CUBIC_YARD == pytest.approx(14.8, abs=0.05)
    assert house.get("slab.base_mass").value / 907.18474 == pytest.approx(20, abs=0.01)
