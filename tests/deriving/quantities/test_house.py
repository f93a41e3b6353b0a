"""Levels, footing, coat, sheet, ground, fill and dig through a spec.

Levels are in feet; every expected number is worked out by hand beside its check.
"""

from __future__ import annotations

from typing import Any

import pytest

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Derived, Deriver
from checker.values import Range
from tests.support import spec_of

FOOT = 0.3048
INCH = 0.0254
PSF = 47.88025898

LEVELS: dict[str, Any] = {
    "unit": "ft",
    "footing_underside": 90.67,
    "footing_top": 91.67,
    "slab_underside": 91.67,
    "floor_top": 92.00,
    "top_of_wall": 100.67,
    "finished_grade_at_wall": 100.00,
}


def find(name: str, item: str = "", **sections: Any) -> Derived:
    sections["levels"] = {"unit": "ft"} | sections.get("levels", {})
    return Deriver(spec_of(sections)).get(name, item)


# -- levels ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("changed", "lower", "upper"),
    [
        ({"footing_underside": 91.67}, "underside of the footing", "top of the footing"),
        ({"slab_underside": 90.60}, "underside of the footing", "underside of the slab"),
        ({"slab_underside": 92.10}, "underside of the slab", "top of the floor"),
        ({"floor_top": 101.0}, "top of the floor", "top of the wall"),
        ({"footing_top": 100.70}, "top of the footing", "top of the wall"),
    ],
)
def test_levels_in_the_wrong_order_are_named(
    changed: dict[str, float], lower: str, upper: str
) -> None:
    says = find("levels.contradiction", levels=LEVELS | changed).value
    assert f"the {upper} is not above the {lower}" in says


@pytest.mark.parametrize(
    "changed",
    [
        {},
        # A walk-out: the ground on one side lies below the floor.
        {"finished_grade_at_wall": 91.50},
        # A slab above and one below the top of the footing.
        {"slab_underside": 91.75, "floor_top": 92.08},
        {"slab_underside": 91.50, "floor_top": 91.83},
    ],
)
def test_levels_of_houses_that_are_built_do_not_contradict(changed: dict[str, float]) -> None:
    assert find("levels.contradiction", levels=LEVELS | changed).value == "none"


@pytest.mark.parametrize(
    ("section", "says"),
    [
        ({"footing": {"thickness": "10 in"}}, "thickness of the footing"),
        ({"slab": {"thickness": "6 in"}}, "thickness of the slab"),
        ({"wall": {"height": "8 ft"}}, "height of the wall"),
    ],
)
def test_a_height_that_is_not_the_difference_of_its_levels_is_named(
    section: dict[str, Any], says: str
) -> None:
    assert says in find("levels.contradiction", levels=LEVELS, **section).value


def test_heights_within_two_readings_agree() -> None:
    # 91.67 - 90.67 = 12 in; 12 3/8 in is 0.03 ft off, inside 0.04 ft.
    found = find("levels.contradiction", levels=LEVELS, footing={"thickness": "12 3/8 in"})
    assert found.value == "none"


def test_two_levels_are_enough_to_contradict() -> None:
    found = find("levels.contradiction", levels={"footing_top": 91.0, "footing_underside": 92.0})
    assert "underside of the footing" in found.value


def test_one_level_alone_contradicts_nothing_and_proves_nothing() -> None:
    assert not find("levels.contradiction", levels={"footing_top": 91.67}).known


def test_a_level_follows_from_its_other_face_and_the_thickness() -> None:
    # 91.67 - 1.00, 90.67 + 1.00, 92.00 - 0.333, 91.667 + 0.333
    footing, slab = {"thickness": "12 in"}, {"thickness": "4 in"}
    low = find("footing.underside_level", levels={"footing_top": 91.67}, footing=footing)
    top = find("footing.top_level", levels={"footing_underside": 90.67}, footing=footing)
    slab_base = find("slab.underside_level", levels={"floor_top": 92.00}, slab=slab)
    floor = find("slab.top_level", levels={"slab_underside": 91.667}, slab=slab)
    assert low.value == pytest.approx(90.67 * FOOT)
    assert top.value == pytest.approx(91.67 * FOOT)
    assert slab_base.value == pytest.approx(91.667 * FOOT, abs=2e-4)
    assert floor.value == pytest.approx(92.00 * FOOT, abs=2e-4)


@pytest.mark.parametrize(
    ("name", "asks"),
    [
        ("footing.top_level", "levels.footing_top"),
        ("footing.underside_level", "levels.footing_underside"),
        ("footing.depth", "footing.thickness"),
        ("footing.toe", "footing.projection"),
        ("slab.underside_level", "levels.slab_underside"),
        ("slab.top_level", "levels.floor_top"),
        ("slab.depth", "slab.thickness"),
        ("stone.surface_level", "stone.top_level"),
        ("stone.over_crown", "stone.cover"),
        ("grade.highest_at_wall", "levels.finished_grade_at_wall"),
        ("coat.wet_film", "coat.quantity"),
        ("excavation.run_out", "excavation.depth"),
        ("backfill.unbalanced_height", "levels.finished_grade_at_wall"),
    ],
)
def test_what_is_lacking_is_asked_for(name: str, asks: str) -> None:
    found = find(name)
    assert not found.known
    assert asks in found.missing


@pytest.mark.parametrize(
    ("name", "half"),
    [
        ("footing.top_level", {"levels": {"footing_underside": 90.67}}),
        ("footing.top_level", {"footing": {"thickness": "12 in"}}),
        ("footing.underside_level", {"levels": {"footing_top": 91.67}}),
        ("footing.underside_level", {"footing": {"thickness": "12 in"}}),
        ("footing.depth", {"levels": {"footing_top": 91.67}}),
        ("footing.depth", {"levels": {"footing_underside": 90.67}}),
        ("footing.toe", {"footing": {"width": "24 in"}}),
        ("footing.toe", {"wall": {"thickness": "10 in"}}),
        ("slab.underside_level", {"levels": {"floor_top": 92.00}}),
        ("slab.underside_level", {"slab": {"thickness": "4 in"}}),
        ("slab.top_level", {"levels": {"slab_underside": 91.67}}),
        ("slab.top_level", {"slab": {"thickness": "4 in"}}),
        ("slab.depth", {"levels": {"floor_top": 92.00}}),
        ("slab.depth", {"levels": {"slab_underside": 91.67}}),
    ],
)
def test_one_face_alone_gives_neither_level_nor_thickness(name: str, half: dict[str, Any]) -> None:
    found = find(name, **half)
    assert not found.known
    assert found.missing


def test_thickness_from_levels() -> None:
    assert find("footing.depth", levels=LEVELS).value == pytest.approx(12 * INCH)
    # 92.00 - 91.67 = 0.33 ft = 3.96 in
    assert find("slab.depth", levels=LEVELS).value == pytest.approx(3.96 * INCH)
    shown = find("footing.depth", levels=LEVELS, footing={"thickness": "10 in"})
    assert shown.value == pytest.approx(10 * INCH)
    off = find("footing.level_difference", levels=LEVELS, footing={"thickness": "10 in"})
    assert off.value == pytest.approx(2 * INCH)


def test_a_footing_in_the_middle_of_its_wall() -> None:
    # (24 - 10) / 2 = 7 in
    found = find("footing.toe", footing={"width": "24 in"}, wall={"thickness": "10 in"})
    assert found.value == pytest.approx(7 * INCH)
    assert "middle" in found.assumed[0]
    flush = find("footing.toe", footing={"width": "10 in"}, wall={"thickness": "10 in"})
    assert flush.value == pytest.approx(0)
    narrow = find("footing.toe", footing={"width": "8 in"}, wall={"thickness": "10 in"})
    assert "narrower" in narrow.because


def test_water_over_the_slab_lifts_it() -> None:
    # Water 1 ft over the underside: 62.4 psf. A 4 in slab weighs 50 psf: 50 / 62.4 = 0.80.
    levels = {"slab_underside": 90.0, "seasonal_high_water": 91.0}
    pressure = find("levels.water_pressure_at_slab", levels=levels)
    assert pressure.value / PSF == pytest.approx(62.4, rel=1e-4)
    factor = find("slab.uplift_factor", levels=levels, slab={"thickness": "4 in"})
    assert factor.value == pytest.approx(0.80, abs=0.005)
    assert any("150 lb/ft3" in note for note in factor.assumed)


def test_water_that_may_reach_the_slab_or_not_gives_no_single_factor() -> None:
    levels = {"slab_underside": 90.0, "seasonal_high_water": "89.5 to 90.5"}
    over = find("levels.water_over_slab", levels=levels)
    assert isinstance(over.value, Range)
    assert tuple(over.value) == pytest.approx((-0.5 * FOOT, 0.5 * FOOT))
    assert not find("slab.uplift_factor", levels=levels, slab={"thickness": "4 in"}).known


# -- coat, sheet and stone ------------------------------------------------------------------------


def test_the_top_edge_is_judged_on_its_worst_side() -> None:
    # North: 100.2 - 100.0; east has its own coat at 99.5 against ground at 99.8: -0.3 ft.
    sides = [{"id": "north"}, {"id": "east", "coat_top": 99.5, "grade_at_wall": 99.8}]
    coat = {"top_level": 100.2}
    found = find("coat.top_over_grade", levels=LEVELS, coat=coat, grade={"sides": sides})
    assert found.value == pytest.approx(-0.3 * FOOT)
    sheet = {"top_level": 100.2}
    found = find("sheet.top_over_grade", levels=LEVELS, sheet=sheet, grade={"sides": sides})
    assert found.value == pytest.approx(0.2 * FOOT)


def test_a_side_without_a_top_is_asked_for() -> None:
    sides = [{"id": "north", "coat_top": 100.0}, {"id": "east"}]
    found = find("coat.top_over_grade", levels=LEVELS, grade={"sides": sides})
    assert found.missing == ("coat.top_level",)


def test_a_loss_thins_the_coat() -> None:
    # 1 L on 1 m2 is 1 mm; a tenth lost leaves 0.9 mm.
    coat = {"quantity": "1 L", "area": "1 m2", "loss": "10 %"}
    found = find("coat.wet_film", coat=coat)
    assert found.value == pytest.approx(0.9e-3)
    assert found.assumed == ()


@pytest.mark.parametrize("alone", [{"quantity": "60 gal"}, {"area": "1428 sq ft"}])
def test_half_of_quantity_and_area_gives_no_film(alone: dict[str, str]) -> None:
    assert not find("coat.wet_film", coat=alone).known


def test_a_gauge_reading_stands_in_for_the_quantity() -> None:
    assert find("coat.wet_film", coat={"wet_thickness": "65 mil"}).value == pytest.approx(
        65 * 2.54e-5
    )


@pytest.mark.parametrize(
    ("sheet", "stone", "answer"),
    [
        # Sheet into the stone, stone over the pipe.
        ({"bottom_level": 91.0}, {"top_level": 92.0, "cover": "8 in"}, True),
        ({"reaches_stone": "yes"}, {"cover": "8 in"}, True),
        # The sheet stops over the stone.
        ({"bottom_level": 92.5}, {"top_level": 92.0, "cover": "8 in"}, False),
        ({"reaches_stone": "no"}, {"cover": "8 in"}, False),
        # Nobody says whether the stone covers the pipe, or whether the sheet reaches it.
        ({"reaches_stone": "yes"}, {}, None),
        ({}, {"cover": "8 in"}, None),
    ],
)
def test_path_from_sheet_to_pipe(
    sheet: dict[str, Any], stone: dict[str, Any], answer: bool | None
) -> None:
    assert find("sheet.unbroken_path", sheet=sheet, stone=stone).value is answer


def test_stone_that_stops_below_the_crown_breaks_the_path() -> None:
    # Crown 91.0 ft + 4 in = 91.33, stone to 91.2.
    drain = {"outside_diameter": "4.2 in", "wall_thickness": "0.2 in", "invert_high": 91.0}
    found = find(
        "sheet.unbroken_path",
        drain=drain, sheet={"reaches_stone": "yes"}, stone={"top_level": 91.2},
    )  # fmt: skip
    assert found.value is False


def test_the_top_of_the_stone_follows_from_its_cover() -> None:
    # Crown 91.0 ft + 4 in, cover 8 in: 92.0 ft.
    drain = {"outside_diameter": "4.2 in", "wall_thickness": "0.2 in", "invert_high": 91.0}
    found = find("stone.surface_level", drain=drain, stone={"cover": "8 in"})
    assert found.value == pytest.approx(92.0 * FOOT)
    assert "cover" in found.assumed[0]


def test_cover_counts_where_a_level_of_stone_or_pipe_lacks() -> None:
    drain = {"outside_diameter": "4.2 in", "wall_thickness": "0.2 in", "invert_high": 91.0}
    for known in ({"stone": {"top_level": 92.0}}, {"drain": drain, "stone": {}}):
        sections = known | {"stone": known["stone"] | {"cover": "8 in"}}
        assert find("stone.over_crown", **sections).value == pytest.approx(8 * INCH)


# -- ground, fill and dig -------------------------------------------------------------------------


def test_one_level_of_the_ground_means_all_sides_but_those_that_differ() -> None:
    sides = [{"id": "north"}, {"id": "east", "grade_at_wall": 99.5}]
    found = {
        name: find(name, levels=LEVELS, grade={"sides": sides}).value / FOOT
        for name in ("grade.highest_at_wall", "grade.lowest_at_wall")
    }
    assert found == pytest.approx({"grade.highest_at_wall": 100.0, "grade.lowest_at_wall": 99.5})
    only = find("grade.highest_at_wall", grade={"sides": [{"id": "east", "grade_at_wall": 99.5}]})
    assert only.value == pytest.approx(99.5 * FOOT)
    assert not find("grade.highest_at_wall", grade={"sides": sides}).known


def test_a_settlement_shown_takes_the_place_of_the_guess() -> None:
    # 6 in less 4 in over 100 in: 2 %
    side = {"id": "north", "fall": "6 in", "in_distance": "100 in", "expected_settlement": "4 in"}
    found = find("grade.sides.each.slope_settled", "north", grade={"sides": [side]})
    assert found.value == pytest.approx(0.02)
    assert found.assumed == ()
    guess = find(
        "grade.sides.each.settlement", "north", levels=LEVELS, grade={"sides": [{"id": "north"}]}
    )
    # 5 % of 8.33 ft
    assert guess.value == pytest.approx(0.4165 * FOOT)
    assert "5 %" in guess.assumed[0]


@pytest.mark.parametrize(("ground", "feet"), [(95.67, 0.2), (91.00, 0.0)])
def test_each_side_settles_by_its_own_height_of_fill(ground: float, feet: float) -> None:
    # 5 % of 95.67 - 91.67 = 4 ft; and none where a walk-out's ground lies below the footing's top.
    sides = [{"id": "east", "grade_at_wall": ground}]
    found = find("grade.sides.each.settlement", "east", levels=LEVELS, grade={"sides": sides})
    assert found.value == pytest.approx(feet * FOOT, abs=1e-9)


def test_settling_without_levels_is_asked_for() -> None:
    sides = [{"id": "east"}]
    found = find("grade.sides.each.settlement", "east", grade={"sides": sides})
    assert found.missing[0] == "grade.sides.east.expected_settlement"
    assert "levels.finished_grade_at_wall" in found.missing


@pytest.mark.parametrize(
    ("placed", "feet"), [({"slab_placed": "no"}, 8.33), ({"slab_placed": "yes"}, 8.00), ({}, 8.33)]
)
def test_unbalanced_fill_follows_the_day(placed: dict[str, str], feet: float) -> None:
    found = find("backfill.unbalanced_height", levels=LEVELS, backfill=placed)
    assert found.value == pytest.approx(feet * FOOT)
    assert bool(found.assumed) is not bool(placed)


def test_the_level_that_the_day_counts_to_is_asked_for() -> None:
    levels = {"finished_grade_at_wall": 100.00}
    for placed, asked in (("yes", "levels.floor_top"), ("no", "levels.footing_top")):
        found = find("backfill.unbalanced_height", levels=levels, backfill={"slab_placed": placed})
        assert found.missing == (asked,)


def test_run_out_takes_the_deeper_of_two_depths_and_the_worst_soil() -> None:
    # By levels 100.00 - 90.67 = 9.33 ft; shown 8 ft. 9.33 x 1.5 = 13.995 ft.
    found = find("excavation.run_out", levels=LEVELS, excavation={"depth": "8 ft"})
    assert found.value == pytest.approx(13.995 * FOOT)
    assert any("worst" in note for note in found.assumed)
    classed = find("excavation.run_out", excavation={"depth": "8 ft", "osha_type": "A"})
    # 8 x 3/4
    assert classed.value == pytest.approx(6 * FOOT)
    assert classed.assumed == ()


def test_a_dig_beyond_twenty_feet_has_no_run_out() -> None:
    found = find("excavation.run_out", excavation={"depth": "21 ft", "osha_type": "A"})
    assert not found.known
    assert "engineer" in found.because


def test_a_drain_trench_below_the_footing_deepens_the_dig() -> None:
    # 90.5 - 0.2 in - 4 in = 90.15; 100.00 - 90.15 = 9.85 ft
    drain = {"invert_low": 90.5, "wall_thickness": "0.2 in"}
    found = find(
        "excavation.depth_by_levels", levels=LEVELS, drain=drain, stone={"bedding": "4 in"}
    )
    assert found.value == pytest.approx(9.85 * FOOT)


def test_an_outlet_leg_falls_an_eighth_per_foot_unless_shown() -> None:
    # 96 ft at 1/8 in/ft take 1 ft.
    outlet = {"id": "main", "leg_length": "96 ft"}
    found = find("outlets.each.fall_needed", "main", outlets=[outlet])
    assert found.value == pytest.approx(1 * FOOT)
    assert "1/8 in/ft" in found.assumed[0]
    shown = find("outlets.each.fall_needed", "main", outlets=[outlet | {"leg_slope": "2 %"}])
    assert shown.value == pytest.approx(1.92 * FOOT)
    assert shown.assumed == ()


# -- a slab told by its height over the footing ---------------------------------------------------


def test_a_slab_lies_as_high_as_it_is_said_to_lie_over_the_footing() -> None:
    # 91.67 ft + 4 in = 92.003 ft
    found = find(
        "slab.underside_level", levels={"footing_top": 91.67}, slab={"above_footing": "4 in"}
    )
    assert found.value / FOOT == pytest.approx(91.67 + 4 / 12)


def test_the_level_of_the_slab_counts_before_its_height_over_the_footing() -> None:
    found = find("slab.underside_level", levels=LEVELS, slab={"above_footing": "4 in"})
    assert found.value / FOOT == pytest.approx(91.67)


@pytest.mark.parametrize(
    ("height", "contradicts"), [("0 in", False), ("1/4 in", False), ("4 in", True)]
)
def test_level_and_height_of_the_slab_must_agree(height: str, contradicts: bool) -> None:
    # good to 0.04 ft, which is 0.48 in
    says = find("levels.contradiction", levels=LEVELS, slab={"above_footing": height}).value
    assert ("the height of the slab over the footing" in says) is contradicts
