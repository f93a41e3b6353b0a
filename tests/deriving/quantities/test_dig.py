"""The dig through a spec: slopes, benches, room, spoil, the neighbour, and where an engineer begins."""

from __future__ import annotations

from typing import Any

import pytest

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Derived, Deriver
from tests.support import spec_of

FOOT = 0.3048


def find(name: str, **sections: Any) -> Derived:
    sections["levels"] = {"unit": "ft"} | sections.get("levels", {})
    return Deriver(spec_of(sections)).get(name)


def test_the_deeper_figure_counts() -> None:
    # 100.00 - 90.67 = 9.33 ft by the levels
    levels = {"finished_grade_at_wall": 100.00, "footing_underside": 90.67}
    assert find(
        "excavation.deepest", levels=levels, excavation={"depth": "5 ft"}
    ).value / FOOT == pytest.approx(9.33)
    assert find(
        "excavation.deepest", levels=levels, excavation={"depth": "9.4 ft"}
    ).value / FOOT == pytest.approx(9.4)
    assert find("excavation.deepest", excavation={"depth": "9.4 ft"}).value / FOOT == pytest.approx(
        9.4
    )


@pytest.mark.parametrize(
    ("excavation", "slope"),
    [
        ({"run_per_rise": "1.5H:1V"}, 1.5),
        ({"bench_width": "2 ft", "bench_height": "5 ft"}, 0.4),
        # both: the steeper counts
        ({"run_per_rise": "1.5H:1V", "bench_width": "2 ft", "bench_height": "4 ft"}, 0.5),
        ({"run_per_rise": "0.3H:1V", "bench_width": "2 ft", "bench_height": "4 ft"}, 0.3),
        # half a bench is none
        ({"run_per_rise": "1.5H:1V", "bench_width": "2 ft"}, 1.5),
    ],
)
def test_a_bench_is_run_per_rise(excavation: dict[str, str], slope: float) -> None:
    assert find("excavation.bank_slope", excavation=excavation).value == pytest.approx(slope)


def test_a_bench_without_a_height_is_not_shown() -> None:
    found = find("excavation.bank_slope", excavation={"bench_width": "2 ft"})
    assert not found.known
    assert found.missing == ("excavation.run_per_rise",)


def test_a_bench_without_a_face_gives_no_slope() -> None:
    found = find(
        "excavation.bank_slope", excavation={"bench_width": "2 ft", "bench_height": "0 ft"}
    )
    assert "face" in found.because


def test_over_20_feet_there_is_no_table() -> None:
    for name in ("excavation.steepest_allowed", "excavation.run_out", "excavation.room_needed"):
        found = find(name, excavation={"depth": "20.5 ft", "osha_type": "B"})
        assert not found.known
        assert "engineer" in found.because
    assert (
        find("excavation.steepest_allowed", excavation={"depth": "20 ft", "osha_type": "B"}).value
        == 1.0
    )


def test_room_counts_what_is_known() -> None:
    # 9.4 x 1.5 = 14.1; + 3 + 7/12 = 17.68 ft
    excavation = {"depth": "9.4 ft", "bottom_clear_width": "3 ft"}
    full = find("excavation.room_needed", excavation=excavation, footing={"projection": "7 in"})
    assert full.value / FOOT == pytest.approx(17.683, abs=1e-3)
    bare = find("excavation.room_needed", excavation={"depth": "9.4 ft"})
    assert bare.value / FOOT == pytest.approx(14.1)
    assert any("nothing is added" in note for note in bare.assumed)


def test_a_bank_without_a_slope_stands_upright() -> None:
    found = find("excavation.setback_needed", excavation={"depth": "9 ft"})
    assert found.value / FOOT == pytest.approx(9)
    assert any("upright" in note for note in found.assumed)


def test_the_neighbours_base_moves_the_line() -> None:
    # 96.00 - (100.00 - 9.4) = 5.4 ft; laid back at 0.5: 5.4 - 4.7 = 0.7 ft
    levels = {"finished_grade_at_wall": 100.00, "footing_underside": 90.67}
    excavation = {"depth": "9.4 ft", "adjacent_base_level": 96.00}
    sheer = find("excavation.adjacent_distance_needed", levels=levels, excavation=excavation)
    assert sheer.value / FOOT == pytest.approx(5.4)
    laid_back = find(
        "excavation.adjacent_distance_needed",
        levels=levels,
        excavation=excavation | {"run_per_rise": "0.5H:1V"},
    )
    assert laid_back.value / FOOT == pytest.approx(0.7)


def test_a_neighbour_whose_base_is_not_known_counts_from_the_ground() -> None:
    found = find("excavation.adjacent_distance_needed", excavation={"depth": "9.4 ft"})
    assert found.value / FOOT == pytest.approx(9.4)
    assert any("counts from the ground" in note for note in found.assumed)


def test_no_depth_no_figure() -> None:
    assert "excavation.depth" in find("excavation.setback_needed").missing
