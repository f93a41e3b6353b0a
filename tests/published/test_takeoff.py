"""Amounts for the worked house, ring by ring with a pocket calculator.

42 ft x 30 ft, wall 144 ft round; 7 in of footing, stone 14 in beyond it from the trench's bottom at
90.683 to 92.50, footing's top at 91.67; pipe 4.215 in, 3 in off the footing.
"""

from __future__ import annotations

import pytest

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Deriver
from tests.published.test_worked_example import HOUSE
from tests.support import spec_of

FOOT = 0.3048
INCH = 0.0254
CUBIC_YARD = 27 * FOOT**3
SQUARE_FOOT = FOOT**2
GALLON = 231 * INCH**3


@pytest.fixture(scope="module")
def house() -> Deriver:
    fabrics = [{"id": "wrap", "position": "around_stone", "top_lap": "12 in"}]
    coat = HOUSE["coat"] | {"dry_thickness": "40 mil"}
    return Deriver(spec_of({**HOUSE, "fabrics": fabrics, "coat": coat}))


def test_the_loop_runs_at_the_middle_of_the_pipe(house: Deriver) -> None:
    # 7 + 3 + 4.215 / 2 = 12.11 in = 1.009 ft out; 144 + 8 x 1.009 = 152.07 ft, and not 144.
    found = house.get("drain.length_to_order").value / FOOT
    assert found == pytest.approx(152.07, abs=0.01)
    assert found > 1.05 * 144


def test_stone_by_ring_lengths(house: Deriver) -> None:
    # Beside the footing, middle 7 + 7 = 14 in out: 144 + 8 x 14/12 = 153.33 ft; 14/12 x (92.50 -
    # 90.683) = 2.120 sq ft; 325.0 cu ft. Over the toe, middle 3.5 in out: 144 + 8 x 3.5/12 =
    # 146.33 ft; 7/12 x (92.50 - 91.67) = 0.484 sq ft; 70.9 cu ft. Pipe 0.785 x 0.351^2 x 152.07 =
    # 14.7 cu ft. 325.0 + 70.9 - 14.7 = 381.1 cu ft = 14.1 cu yd, of which 95 % are 13.4.
    assert house.get("stone.volume").value / CUBIC_YARD == pytest.approx(14.1, abs=0.03)
    assert house.get("stone.least_order").value / CUBIC_YARD == pytest.approx(13.4, abs=0.03)


def test_stone_by_weight(house: Deriver) -> None:
    # 14.1 cu yd x 2700 lb = 38,100 lb = 19.1 short tons
    found = house.get("stone.mass")
    assert found.value / 907.18474 == pytest.approx(19.1, abs=0.05)
    assert found.unit == "short ton"
    assert any("100 pcf" in note for note in found.assumed)


def test_fabric_round_the_stone(house: Deriver) -> None:
    # 2 x (21 + 21.8) + 12 = 97.6 in; 97.6 / 12 x 152.07 x 1.1 = 1360 sq ft
    width = house.get("fabrics.each.width_needed", "wrap").value
    assert width / INCH == pytest.approx(97.6, abs=0.05)
    area = house.get("fabrics.each.area_needed", "wrap").value
    assert area / SQUARE_FOOT == pytest.approx(1360, abs=2)


def test_coat_on_wall_and_footing(house: Deriver) -> None:
    # 144 x 8.33 = 1199.5; footing's top 7/12 x 146.33 = 85.4; its side (144 + 8 x 7/12) x 1.0 =
    # 148.7; in all 1433.6 sq ft. 1428 sq ft are shown: 1428 x 40 / (1604.17 x 0.62 x 0.95) = 60.5 gal
    assert house.get("coat.area_by_levels").value / SQUARE_FOOT == pytest.approx(1433.6, abs=0.1)
    found = house.get("coat.volume_needed")
    assert found.value / GALLON == pytest.approx(60.45, abs=0.05)
    assert found.unit == "gal"


def test_sheet_with_laps(house: Deriver) -> None:
    # 144 x (100 - 91) = 1296 sq ft; rolls of 2 m lapped 6 in: 2 / (2 - 0.1524) = 1.0825; x 1.05 =
    # 1473 sq ft
    found = house.get("sheet.area_needed").value
    assert found / SQUARE_FOOT == pytest.approx(1473, abs=1)


def test_levels_that_the_highest_invert_may_have(house: Deriver) -> None:
    # Top: 91.67 - (4.215 - 0.12)/12 = 91.329. Bottom: 90.67 + (0.12 + 2)/12 + 0.30 = 91.147; the
    # outlet would allow 89.60 + 95/96 + 0.30 = 90.890. The house has 91.16.
    assert house.get("drain.invert_window_top").value / FOOT == pytest.approx(91.329, abs=5e-4)
    assert house.get("drain.invert_window_bottom").value / FOOT == pytest.approx(91.147, abs=5e-4)
    assert "slab" in house.get("drain.invert_window_top_by").value
    assert "footing" in house.get("drain.invert_window_bottom_by").value
    # 91.329 - 91.147 = 0.182 ft = 2.19 in; and 12 - 2.19 = 9.81 in of footing would do.
    assert house.get("drain.invert_window").value / INCH == pytest.approx(2.19, abs=0.01)
    assert house.get("footing.thickness_that_fits").value / INCH == pytest.approx(9.81, abs=0.01)


def test_how_far_a_half_loop_carries(house: Deriver) -> None:
    # 12 - 2 - 4.215 = 5.785 in; at 1/16 in/ft 92.56 ft.
    found = house.get("drain.longest_run_that_fits").value
    assert found / FOOT == pytest.approx(92.56, abs=0.01)
