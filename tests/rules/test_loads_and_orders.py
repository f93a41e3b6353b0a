"""Rules on loads, frost, the dig and orders, walked to their limits and just past them.

Each limit is worked out by hand; the value on either side of it differs by less than 1 %.
"""

from __future__ import annotations

from typing import Any

import pytest

from checker.judging.judge import review
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, NOT_SHOWN, Finding
from checker.judging.rulebook import Rulebook, load_rulebook
from tests.support import spec_of

BOOK = load_rulebook()

SEEN = {"how": "measured", "by": "R. Halloway", "date": "2031-04-20"}
LOOP: dict[str, Any] = {
    "levels": {"unit": "ft", "footing_top": 91.67, "footing_underside": 90.67},
    "wall": {"perimeter": "144 ft"},
    "footing": {"projection": "7 in"},
    "drain": {
        "present": "yes",
        "shape": "loop",
        "offset": "3 in",
        "outside_diameter": "4.215 in",
        "wall_thickness": "0.12 in",
        "invert_low": 90.86,
    },
    "stone": {"bedding": "2 in", "beyond_footing": "14 in", "top_level": 92.50},
}
CLAY: dict[str, Any] = {
    "job": {"codes": [{"id": "IRC", "edition": "2018"}]},
    "soil": {"backfill": {"usc": "CL"}},
}
PLAN: dict[str, Any] = {
    "levels": {"unit": "ft", "slab_underside": 91.67, "footing_underside": 90.67},
    "drain": {
        "present": "yes",
        "outside_diameter": "4.215 in",
        "wall_thickness": "0.12 in",
        "slope": "0.05 in/ft",
        "run_long": "72 ft",
    },
    "stone": {"bedding": "2 in"},
}


def finding(rule: str, mapping: dict[str, Any]) -> Finding:
    """Judge a mapping by one rule, at the stage where its facts exist."""
    asked = BOOK.rule(rule)
    assert asked is not None
    if asked.due:
        mapping = {**mapping, "job": {"stage": asked.due, **mapping.get("job", {})}}
    (found,) = review(spec_of(mapping), Rulebook((asked,), BOOK.digest)).findings
    return found


def put(mapping: dict[str, Any], path: str, value: Any) -> dict[str, Any]:
    """Return a mapping with one value changed."""
    section, _, key = path.partition(".")
    return {**mapping, section: {**mapping.get(section, {}), key: value}}


LIMITS: list[Any] = [
    # 14.115 cu yd x 0.95 = 13.41
    ("stone.quantity-short", LOOP, "stone.quantity", "13.42 cy", "13.40 cy"),
    # 152.07 ft
    ("drain.quantity-short", LOOP, "drain.quantity", "152.08 ft", "152.05 ft"),
    # 1433.55 x 0.95 = 1361.9 sq ft
    (
        "coat.area-short",
        put(LOOP, "coat", {}) | {"coat": {"class": "waterproofing", "top_level": 100, "bottom_level": 90.67}},
        "coat.area",
        "1362 sq ft",
        "1361 sq ft",
    ),
    # 1473.05 x 0.95 = 1399.4 sq ft
    (
        "sheet.quantity-short",
        {
            "levels": {"unit": "ft"},
            "wall": {"perimeter": "144 ft"},
            "sheet": {"kind": "dimpled_plain", "bottom_level": 91, "top_level": 100, "side_lap": "6 in"},
        },
        "sheet.quantity",
        "1400 sq ft",
        "1399 sq ft",
    ),
    # 0.5 / (0.4 x 0.13) = 9.615 cm = 3.79 in
    (
        "slab.capillary-break",
        {"slab": {"base_material": "clean_stone", "base_d10": "1.3 mm", "base_void_ratio": "0.4"}},
        "slab.base_thickness",
        "3.80 in",
        "3.78 in",
    ),
    # 100.00 - 90.67 = 9.33 ft
    (
        "footing.frost",
        {"levels": {"unit": "ft", "finished_grade_at_wall": 100, "footing_underside": 90.67}},
        "climate.frost_depth",
        "9.33 ft",
        "9.34 ft",
    ),
    # 5.785 in at 1/16 in/ft: 92.56 ft
    (
        "footing.fits-too-far",
        {"footing": {"thickness": "12 in"}, "drain": {"outside_diameter": "4.215 in"}, "stone": {"bedding": "2 in"}},
        "fits.run_long",
        "92.5 ft",
        "92.6 ft",
    ),
]  # fmt: skip


@pytest.mark.parametrize(
    ("rule", "mapping", "path", "at", "past"), LIMITS, ids=[limit[0] for limit in LIMITS]
)
def test_the_limit_and_just_past_it(
    rule: str, mapping: dict[str, Any], path: str, at: str, past: str
) -> None:
    assert finding(rule, put(mapping, path, at)).outcome == MET
    failed = finding(rule, put(mapping, path, past))
    assert failed.outcome == NOT_MET
    assert failed.compared[0].off_by


FOR_PERSON: list[Any] = [
    # 9.4 x 1.5 + 3 + 7/12 = 17.683 ft
    (
        "excavation.no-room",
        {
            "footing": {"projection": "7 in"},
            "excavation": {"depth": "9.4 ft", "protection": "slope", "bottom_clear_width": "3 ft"},
        },
        "excavation.room_at_top",
        "17.69 ft",
        "17.67 ft",
    ),
    # 96.00 - 90.60 = 5.4 ft, laid back 0.5 x 9.4 = 4.7 ft: 0.7 ft
    (
        "excavation.near-structure",
        {
            "levels": {"unit": "ft", "finished_grade_at_wall": 100},
            "excavation": {
                "depth": "9.4 ft",
                "run_per_rise": "0.5H:1V",
                "adjacent_structure": "garage footing on lot 13",
                "adjacent_base_level": 96.00,
                "adjacent_structure_approved_by": "none",
            },
        },
        "excavation.adjacent_structure_distance",
        {"value": "0.71 ft", **SEEN},
        "0.69 ft",
    ),
    # 9 - 0.5 x 9 = 4.5 ft
    (
        "excavation.spoil-surcharge",
        {
            "excavation": {
                "depth": {"value": "9 ft", **SEEN},
                "run_per_rise": {"value": "0.5H:1V", **SEEN},
            }
        },
        "excavation.spoil_setback",
        {"value": "4.5 ft", **SEEN},
        "4.49 ft",
    ),
    # a bench of 5 ft must be 5 ft wide in Type B
    (
        "excavation.steepness",
        {
            "excavation": {
                "depth": "9.4 ft",
                "protection": "bench",
                "osha_type": "B",
                "bench_height": {"value": "5 ft", **SEEN},
            }
        },
        "excavation.bench_width",
        {"value": "5 ft", **SEEN},
        "4.95 ft",
    ),
    # lean clay at rest 100 pcf
    ("wall.load-short", CLAY, "wall.design_load", "100 pcf", "99.5 pcf"),
    # clay full of water: 100 x (120 - 62.4) / 120 + 62.4 = 110.4 pcf
    (
        "wall.undrained",
        CLAY
        | {
            "drain": {"present": "no"},
            "soil": {"backfill": {"usc": "CL"}, "bank": {"usc": "CL"}},
            "wall": {"design_water": "no"},
        },
        "wall.design_load",
        "110.5 pcf",
        "110.3 pcf",
    ),
    # the footing's top
    (
        "wall.water-load",
        {"levels": {"unit": "ft", "footing_top": 91.67}, "wall": {"design_by": "none", "design_water": "no"}},
        "levels.seasonal_high_water",
        91.67,
        91.68,
    ),
    ("wall.outside-tables", {"levels": {"unit": "ft", "finished_grade_at_wall": 100, "footing_top": 91.67}, "wall": {"design_by": "none"}}, "wall.height", "10 ft", "10.1 ft"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("rule", "mapping", "path", "at", "past"), FOR_PERSON, ids=[limit[0] for limit in FOR_PERSON]
)
def test_what_a_person_decides_is_never_met(
    rule: str, mapping: dict[str, Any], path: str, at: Any, past: Any
) -> None:
    kept = finding(rule, put(mapping, path, at))
    assert kept.outcome == DOES_NOT_APPLY
    assert kept.because.startswith("no objection")
    assert finding(rule, put(mapping, path, past)).outcome == NOT_MET


LOADS = ("wall.water-load", "wall.soil-outside-table", "wall.support-not-stated",
         "wall.outside-tables", "wall.surcharge", "wall.load-short", "wall.undrained",
         "slab.uplift")  # fmt: skip


@pytest.mark.parametrize("rule", LOADS)
def test_a_load_is_never_met_whatever_is_shown(rule: str) -> None:
    asked = BOOK.rule(rule)
    assert asked is not None
    assert asked.at_best == "for_person"
    assert asked.protects == "people"


def test_an_outlet_too_high_for_any_level_of_the_drain() -> None:
    # 91.329 - 0.3 = 91.029 at most for the low end; the leg takes 1.0 ft: outlet at 90.029.
    def at(invert: float) -> Finding:
        outlets = [{"id": "main", "kind": "daylight", "invert": invert, "leg_length": "96 ft"}]
        return finding("footing.nothing-fits", {**PLAN, "outlets": outlets})

    assert at(90.02).outcome == MET
    assert at(90.04).outcome == NOT_MET


def test_a_fabric_as_wide_as_the_girth_and_its_lap() -> None:
    # 2 x (21 + 21.8) + 12 = 97.6 in; 1360.5 x 0.95 = 1292.5 sq ft
    def wrap(**more: str) -> dict[str, Any]:
        fabric = {"id": "wrap", "position": "around_stone", "top_lap": "12 in", **more}
        return {**LOOP, "fabrics": [fabric]}

    assert finding("fabrics.too-narrow", wrap(roll_width="97.7 in")).outcome == MET
    assert finding("fabrics.too-narrow", wrap(roll_width="97.5 in")).outcome == NOT_MET
    assert finding("fabrics.quantity-short", wrap(quantity="1293 sq ft")).outcome == MET
    assert finding("fabrics.quantity-short", wrap(quantity="1292 sq ft")).outcome == NOT_MET


def test_a_leg_in_frost_is_excused_by_its_fall() -> None:
    def leg(cover: str, falls: str) -> Finding:
        outlets = [
            {"id": "main", "kind": "daylight", "leg_cover": cover, "falls_all_the_way": falls}
        ]
        return finding(
            "outlets.leg-frost", {"climate": {"frost_depth": "4 ft"}, "outlets": outlets}
        )

    assert leg("4 ft", "no").outcome == MET
    assert leg("3.9 ft", "no").outcome == NOT_MET
    assert leg("3.9 ft", "yes").by_exception


def test_frost_of_an_unknown_depth_is_asked_for() -> None:
    levels = {"unit": "ft", "finished_grade_at_wall": 100, "footing_underside": 90.67}
    found = finding("footing.frost", {"levels": levels})
    assert found.outcome == NOT_SHOWN
    assert found.missing == ("climate.frost_depth",)


def test_a_dig_deeper_than_the_table_is_not_judged_by_it() -> None:
    excavation = {"depth": "22 ft", "protection": "slope", "run_per_rise": "1.5H:1V"}
    found = finding("excavation.steepness", {"excavation": excavation})
    assert found.outcome == NOT_SHOWN
    assert "engineer" in found.because


@pytest.mark.parametrize(
    ("rule", "mapping", "note"),
    [
        ("stone.quantity-short", put(LOOP, "stone.quantity", "15 cy"), "dug level"),
        ("slab.capillary-break", {"slab": {"base_material": "clean_stone", "base_min_size": "1/2 in", "base_thickness": "4 in"}}, "0.5 cm2"),
        ("wall.load-short", put(CLAY, "wall.design_load", "60 pcf"), "from memory"),
    ],
)  # fmt: skip
def test_what_was_assumed_stands_in_the_finding(
    rule: str, mapping: dict[str, Any], note: str
) -> None:
    assert any(note in text for text in finding(rule, mapping).assumed)
