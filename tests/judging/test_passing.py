"""How far a reading may be off: the rules asked at one value after another, against hand sums."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from checker import load_rulebook, load_spec
from checker.judging.passing import Passes, Passing, rests_on
from checker.judging.rulebook import Rule, Rulebook
from checker.reading.spec import Spec
from tests.support import spec_of

SPECS = Path(__file__).parents[2] / "specs"
FOOT, INCH = 0.3048, 0.0254
HOUSE: dict[str, Any] = {
    "levels": {"unit": "ft", "slab_underside": "91.67", "footing_top": "91.67",
               "footing_underside": "90.67"},
    "drain": {
        "present": "yes", "position": "beside", "outside_diameter": "4.215 in",
        "wall_thickness": "0.12 in", "outlet_at": "SW",
        "corners": [{"id": "NE", "invert": "91.16"}, {"id": "SW", "invert": "90.86"}],
    },
    "stone": {"bedding": "2 in"},
}  # fmt: skip


@pytest.fixture(scope="module")
def two_rules() -> Rulebook:
    """The window of the pipe: its crown under the floor, its trench above bearing."""
    book = load_rulebook()
    kept = ("drain.above-slab", "drain.below-bearing", "stone.bedding")
    return Rulebook(tuple(rule for rule in book.rules if rule.id in kept), book.digest)


def passes(mapping: dict[str, Any], book: Rulebook, path: str) -> Passing:
    found = Passes(spec_of(mapping), book).of(path)
    assert found is not None
    return found


def test_a_high_corner_ends_where_its_crown_reaches_the_slab(two_rules: Rulebook) -> None:
    found = passes(HOUSE, two_rules, "drain.corners.NE.invert")
    # 91.67 - (4.215 - 0.12)/12 = 91.32875 ft
    assert found.high == pytest.approx(91.32875 * FOOT, abs=1e-5)
    assert found.high_by == "drain.above-slab"
    # NE lowered until it is the lowest corner: 90.67 + (2 + 0.12)/12 = 90.84667 ft
    assert found.low == pytest.approx(90.84667 * FOOT, abs=1e-5)
    assert found.low_by == "drain.below-bearing"
    assert found.as_shown


def test_a_limit_that_a_tape_shows_is_that_limit(two_rules: Rulebook) -> None:
    found = passes(HOUSE, two_rules, "stone.bedding")
    # At least 2 in; and 90.86 - (b + 0.12)/12 >= 90.67 gives b <= 2.28 - 0.12 = 2.16 in.
    assert found.low == pytest.approx(2 * INCH, abs=1e-9)
    assert found.high == pytest.approx(2.16 * INCH, abs=1e-5)


def test_a_value_that_fails_is_led_to_where_it_passes(two_rules: Rulebook) -> None:
    high = HOUSE | {"drain": HOUSE["drain"] | {"corners": [{"id": "NE", "invert": "91.50"}]}}
    found = passes(high, two_rules, "drain.corners.NE.invert")
    assert not found.as_shown
    assert found.high == pytest.approx(91.32875 * FOOT, abs=1e-5)


def test_where_nothing_passes_there_is_no_interval(two_rules: Rulebook) -> None:
    # The window: 91.67 - 91.50 ft = 2 in of room for a pipe of 4.2 in.
    tight = HOUSE | {"levels": HOUSE["levels"] | {"footing_underside": "91.50"}}
    assert Passes(spec_of(tight), two_rules).of("drain.corners.NE.invert") is None


def test_a_range_is_kept_whole(two_rules: Rulebook) -> None:
    ranged = HOUSE | {"stone": {"bedding": "2 to 2.1 in"}}
    found = passes(ranged, two_rules, "stone.bedding")
    assert found.as_shown
    assert found.high == pytest.approx(2.16 * INCH, abs=1e-5)


def test_thin_films_are_followed_as_finely_as_they_are_read() -> None:
    book = load_rulebook()
    coat = {
        "job": {"codes": [{"id": "IRC", "edition": "2018"}]},
        "coat": {"class": "waterproofing", "base": "polymer_modified_asphalt",
                 "dry_thickness": "45 mil"},
    }  # fmt: skip
    found = Passes(spec_of(coat), book).of("coat.dry_thickness")
    # IRC 2018 R406.2: 40 mil of polymer-modified asphalt.
    assert found is not None
    assert found.low == pytest.approx(40 * INCH / 1000, abs=1e-8)


def test_what_is_not_shown_or_no_length_has_no_interval(two_rules: Rulebook) -> None:
    found = Passes(spec_of(HOUSE), two_rules)
    assert found.of("drain.corners.SE.invert") is None
    assert found.of("drain.present") is None


def test_minor_faults_of_the_design_close_no_interval() -> None:
    (spec,) = load_spec(str(SPECS / "good.yaml"))
    found = Passes(spec, load_rulebook()).of("drain.corners.SW.invert")
    assert found is not None
    assert found.as_shown
    # 90.67 + (0.12 + 2)/12
    assert found.low == pytest.approx(90.84667 * FOOT, abs=1e-5)


@pytest.mark.parametrize("side", ["low", "high"])
@pytest.mark.parametrize("path", ["drain.corners.NE.invert", "stone.side", "outlets.main.invert"])
def test_just_inside_passes_and_just_outside_does_not(path: str, side: str) -> None:
    import dataclasses

    from checker import review

    (spec,) = load_spec(str(SPECS / "good.yaml"))
    book = load_rulebook()
    found = Passes(spec, book).of(path)
    assert found is not None
    limit, by = (found.low, found.low_by) if side == "low" else (found.high, found.high_by)
    if limit is None:
        return

    def faults(value: float) -> set[str]:
        shown = spec.values[path]._replace(value=value)
        moved: Spec = dataclasses.replace(spec, values=spec.values | {path: shown})
        return {f"{one.rule} {one.item}".rstrip() for one in review(moved, book).of("not met")}

    outward = 2e-5 if side == "high" else -2e-5
    before = faults(limit)
    assert not set(by.split(", ")) & before
    assert set(by.split(", ")) & faults(limit + outward)


def test_a_rule_rests_on_what_its_quantities_rest_on() -> None:
    rule = load_rulebook().rule("drain.above-slab")
    assert isinstance(rule, Rule)
    assert {"drain.corners.each.invert", "drain.wall_thickness", "levels.slab_underside"} <= (
        rests_on(rule)
    )
    assert "coat.class" not in rests_on(rule)
