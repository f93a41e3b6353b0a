"""One house worked through by hand, from levels to outlet.

42 ft x 30 ft, wall perimeter 144 ft, pipe round it falling from NE to SW, outlet leg at SW. Every
number is derived beside its check with a pocket calculator; levels are in feet.
"""

from __future__ import annotations

from typing import Any

import pytest

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Deriver
from tests.support import spec_of

FOOT = 0.3048
INCH = 0.0254
MIL = 2.54e-5

HOUSE: dict[str, Any] = {
    "levels": {
        "unit": "ft",
        "top_of_wall": 100.67,
        "finished_grade_at_wall": 100.00,
        "floor_top": 92.00,
        "slab_underside": 91.67,
        "footing_top": 91.67,
        "footing_underside": 90.67,
        "seasonal_high_water": 88.50,
    },
    "excavation": {"depth": "9.4 ft"},
    "footing": {"width": "24 in", "thickness": "12 in"},
    "wall": {"thickness": "10 in", "height": "9 ft", "perimeter": "144 ft"},
    "coat": {
        "solids": "62 %",
        "area": "1428 sq ft",
        "quantity": "60 gal",
        "bottom_level": 90.67,
        "top_level": 100.00,
    },
    "sheet": {"bottom_level": 91.00, "top_level": 100.00, "reaches_stone": "yes"},
    "drain": {
        "offset": "3 in",
        "diameter": "4 in",
        "outside_diameter": "4.215 in",
        "wall_thickness": "0.120 in",
        "material": "rigid_pvc",
        "holes": "down",
        "hole_size": "3/8 in",
        "hole_rows_apart": "120 deg",
        "shape": "loop",
        "outlet_at": "SW",
        "corners": [
            {"id": "NE", "invert": 91.16, "run_to_next": "42 ft"},
            {"id": "NW", "invert": 90.98, "run_to_next": "30 ft"},
            {"id": "SW", "invert": 90.86, "run_to_next": "42 ft"},
            {"id": "SE", "invert": 91.04, "run_to_next": "30 ft"},
        ],
    },
    "stone": {
        "bedding": "2 in",
        "cover": "12 in",
        "side": "6 in",
        "beyond_footing": "14 in",
        "top_level": 92.50,
    },
    "outlets": [{"id": "main", "invert": 89.60, "leg_length": "95 ft", "leg_slope": "1/8 in/ft"}],
    "slab": {"thickness": "4 in"},
    "backfill": {"slab_placed": "no"},
    "grade": {
        "sides": [
            {"id": "north", "fall": "6 in", "in_distance": "10 ft"},
            {"id": "east", "fall": "5 in", "in_distance": "7 ft"},
        ]
    },
}


@pytest.fixture(scope="module")
def house() -> Deriver:
    return Deriver(spec_of(HOUSE))


IN_FEET = {
    # 91.16 - 90.86
    "drain.fall_total": 0.30,
    # NE by NW to SW: 42 + 30, and by SE the same
    "drain.longest_run": 72.0,
    # 91.16 + (4.215 - 0.120) / 12 = 91.16 + 0.341
    "drain.crown_high": 91.50,
    # 90.86 - (0.120 + 2) / 12 = 90.86 - 0.177
    "drain.trench_bottom_low": 90.68,
    # 90.67 - 88.50
    "levels.water_under_footing": 2.17,
    # 88.50 - 91.67
    "levels.water_over_slab": -3.17,
    # no slab yet: 100.00 - 91.67; with it 100.00 - 92.00
    "backfill.unbalanced_height": 8.33,
    "backfill.unbalanced_height_slab_in": 8.00,
    # 9.4 x 1.5, soil not classed
    "excavation.run_out": 14.10,
    # 100.00 - 90.67, the footing lying lower than the trench by 0.01
    "excavation.depth_by_levels": 9.33,
    # toe (24 - 10) / 2 = 7; 7 + 3 + 4.215 / 2 = 12.11 in = 1.009 ft; 144 + 8 x 1.009
    "drain.length_at_pipe": 152.07,
    # as the runs are written: twice 42 and twice 30
    "drain.loop_length": 144.0,
    # 92.50 - 91.67
    "stone.over_footing": 0.83,
}

IN_INCHES = {
    # 91.67 - 91.50 = 0.169 ft
    "drain.floor_cover": 2.0,
    # 90.683 - 90.67 = 0.013 ft
    "drain.bearing_cover": 0.2,
    # 12 - 2 - 4.215 = 5.785; less 0.30 ft = 3.6
    "drain.window": 5.785,
    "drain.window_spare": 2.2,
    # 2 + 4.215 + 3.6, the slab lying on the footing's top
    "footing.thickness_needed": 9.8,
    # 14 - 3 - 4.215
    "stone.side_left": 6.785,
    # 92.50 - 91.501 = 0.999 ft
    "stone.over_crown": 12.0,
    # 91.00 - 92.50: the sheet hangs 18 in into the stone; the stone is 12 in over the pipe
    "sheet.gap_to_stone": -18.0,
    "drain.path_to_pipe": -12.0,
    # 91.67 - 91.00 = 0.67 ft, 91.67 - 90.67 and 92.00 - 90.67
    "sheet.below_joint": 8.0,
    "coat.below_joint": 12.0,
    "coat.below_floor": 16.0,
    # pipe 3.975 in inside, R 1.9875; asin(0.1875 / 1.9875) = 5.41 degrees; 60 - 5.41 = 54.59;
    # R (1 - cos 54.59) = 1.9875 x 0.4205
    "drain.hole_height": 0.836,
    # 91.16 ft + 0.836 in = 91.230; less 91.67 = -0.440 ft
    "drain.entry_over_joint": -5.3,
    # 8.33 ft x 5 % = 0.4165 ft
    "grade.sides.north.settlement": 5.0,
}


@pytest.mark.parametrize(("name", "feet"), IN_FEET.items())
def test_in_feet(house: Deriver, name: str, feet: float) -> None:
    assert house.get(name).value / FOOT == pytest.approx(feet, abs=0.006)


@pytest.mark.parametrize(("name", "inches"), IN_INCHES.items())
def test_in_inches(house: Deriver, name: str, inches: float) -> None:
    pattern, item = name.replace("sides.north", "sides.each"), "north" if "north" in name else ""
    assert house.get(pattern, item).value / INCH == pytest.approx(inches, abs=0.06)


def test_slopes(house: Deriver) -> None:
    # 0.30 / 72 = 0.42 %, that is 0.05 in/ft; the flattest runs are 0.12 / 30 = 0.40 %.
    assert house.get("drain.average_slope").value == pytest.approx(0.0042, abs=5e-5)
    assert house.get("drain.average_slope").value * 12 == pytest.approx(0.05, abs=0.001)
    assert house.get("drain.flattest_slope").value == pytest.approx(0.0040, abs=5e-5)
    # north 6 in in 120 in; once settled 6 - 5 = 1 in in 120. East 5 in in 84 in.
    assert house.get("grade.sides.each.slope", "north").value == pytest.approx(0.05)
    assert house.get("grade.sides.each.slope", "east").value == pytest.approx(0.0595, abs=5e-5)
    settled = house.get("grade.sides.each.slope_settled", "north").value
    assert settled == pytest.approx(0.0083, abs=2e-4)


def test_the_outlet_leg_has_fall_enough(house: Deriver) -> None:
    # 90.86 - 89.60 = 1.26 ft there is; 95 / 96 = 0.99 ft it takes; 0.27 ft to spare.
    assert house.get("outlets.each.fall_available", "main").value / FOOT == pytest.approx(1.26)
    needed = house.get("outlets.each.fall_needed", "main").value / FOOT
    assert needed == pytest.approx(0.99, abs=0.005)
    assert house.get("outlets.each.fall_left", "main").value / FOOT == pytest.approx(
        0.27, abs=0.005
    )


def test_the_coat_is_thick_enough_when_nothing_is_lost(house: Deriver) -> None:
    # 1604 x 60 / 1428 = 67 mil wet; x 0.62 = 41.8 dry.
    assert house.get("coat.wet_film").value / MIL == pytest.approx(67.4, abs=0.1)
    assert house.get("coat.dry_film").value / MIL == pytest.approx(41.8, abs=0.05)
    assert "nothing is lost" in house.get("coat.dry_film").assumed[0]


def test_the_loop_empties(house: Deriver) -> None:
    assert house.get("drain.ponding_depth").value == 0
    assert house.get("drain.ponding_at").value == "none"
    assert house.get("drain.outlet_corner").value == "SW"


def test_nothing_contradicts(house: Deriver) -> None:
    assert house.get("levels.contradiction").value == "none"
    assert house.get("footing.level_difference").value == pytest.approx(0, abs=1e-9)
    assert house.get("sheet.unbroken_path").value is True


def test_no_water_no_uplift(house: Deriver) -> None:
    assert house.get("levels.water_pressure_at_slab").value == 0
    assert not house.get("slab.uplift_factor").known
    assert "nothing lifts it" in house.get("slab.uplift_factor").because
