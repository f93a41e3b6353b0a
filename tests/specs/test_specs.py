"""The specs that ship with the program say what their headers promise, number for number.

Every number below was worked out by hand from the spec's own levels; the working stands in the
header of the spec or beside the number here. `shown` and `off by` are rounded to the unsafe and the
safe side in turn, so a hand figure of 1.67 % may read 1.6 %, and 3.33 % short reads 3.4 %.
"""

from __future__ import annotations

import functools
from pathlib import Path

import pytest

from checker import load_rulebook, load_spec, review
from checker.judging.review_data import MET, NOT_MET, NOT_SHOWN, Finding, Review
from checker.judging.rulebook import Rulebook

SPECS = Path(__file__).parents[2] / "specs"


@functools.cache
def rulebook() -> Rulebook:
    """Return the rule book, read once."""
    return load_rulebook()


@functools.cache
def reviews(name: str) -> tuple[Review, ...]:
    """Return the review of every assembly of a spec in `specs/`."""
    return tuple(review(spec, rulebook()) for spec in load_spec(SPECS / name))


def only(name: str) -> Review:
    """Return the review of a spec of one assembly."""
    (one,) = reviews(name)
    return one


def failed(one: Review) -> dict[str, Finding]:
    """Return what is not met, by rule and, after a colon, item."""
    return {_key(finding): finding for finding in one.of(NOT_MET)}


def off_by(finding: Finding) -> str:
    """Return the first gap of a finding, or nothing where there is none to measure."""
    return next((one.off_by for one in finding.compared if one.off_by), "")


def _key(finding: Finding) -> str:
    return f"{finding.rule}: {finding.item}" if finding.item else finding.rule


# -- good -------------------------------------------------------------------------------------------


def test_good_is_judged_and_not_passed_over_in_silence() -> None:
    assert len(only("good.yaml").of(MET)) >= 100


def test_good_leaves_nothing_open_that_matters() -> None:
    one = only("good.yaml")
    left = [_key(f) for f in one.of(NOT_MET) + one.of(NOT_SHOWN) if f.severity != "minor"]
    assert left == []
    assert not one.holds("major")


def test_good_is_flatter_than_usual_and_says_so() -> None:
    # 0.12 ft in 32 ft = 0.375 %; 1/16 in/ft = 0.521 %; 0.146 % apart
    one = only("good.yaml")
    assert list(failed(one)) == ["drain.flat"]
    assert one.holds("minor")


def test_good_prints_what_is_tight() -> None:
    tight = {f.rule: f.compared[0].room for f in only("good.yaml").of(MET) if f.tight}
    # 90.86 - (0.12 + 2)/12 - 90.67 = 0.0133 ft
    assert tight["drain.below-bearing"] == "0.16 in"


# -- bad --------------------------------------------------------------------------------------------

BAD = {
    # the drain
    "drain.above-slab": "5.7 in",  # 91.80 + (4.215 - 0.12)/12 - 91.67 = 0.471 ft = 5.66 in
    "drain.on-footing": "5.7 in",
    "drain.ponding": "1.2 in",  # 91.70 - 91.60
    "drain.flat": "0.41 %",  # 0.05 ft in 44 ft = 0.114 %; 0.521 - 0.114
    "drain.entry-height": "4.4 in",  # R (1 + cos(60 + 5.4 deg)) = 2.81 in; 91.80 + 2.81/12 - 91.67
    "drain.cleanout": "2",
    "drain.crush": "",
    "drain.roof-tied: L1": "",
    # stone and fabric
    "stone.bedding": "1 in",
    "stone.cover": "4.1 in",  # 92.30 - 92.141 = 0.159 ft = 1.9 in of 6
    "stone.side": "2 in",
    "stone.beyond-footing": "6 in",
    "stone.fines": "",
    "stone.size-vs-hole": "1/8 in",  # 3/8 - 1/4
    "fabrics.missing": "",
    # outlet
    "outlets.gravity: main": "6.8 in",  # 91.60 - 91.75 - 40/96 = -0.567 ft
    "outlets.distance-line: main": "6 ft",
    "outlets.perforated-leg: main": "",
    "outlets.guard: main": "",
    # coat and sheet
    "coat.over-joint": "4 in",  # 92.00 - 91.67 = 0.33 ft
    "coat.bottom-short": "4 in",
    "coat.top-short": "12 in",
    "coat.coverage": "6.7 mil",  # 1604 x 20 / 1200 x 50 % = 13.37; 20 - 13.37 = 6.63
    "sheet.bottom-short": "16 in",  # 93.00 - 91.67 = 1.33 ft
    "sheet.stone-gap": "8.4 in",  # 93.00 - 92.30
    "sheet.top-seal": "",
    # footing, joint, slab
    "footing.break-missing": "",
    "footing.sleeve-missing": "",
    "slab.base": "2 in",
    "slab.retarder": "",
    "slab.edge-open": "",
    # earth
    "backfill.before-brace": "",
    "backfill.no-base-restraint": "",
    "backfill.cap": "",
    "backfill.lifts": "7 ft",
    "backfill.zone-width": "12 in",
    "backfill.settlement-plan": "",
    # ground, wells, roof
    "grade.slope: west": "7.5 %",  # -3 in in 120 in
    "grade.slope: south": "3.4 %",  # 2 in in 120 in = 1.67 %
    "grade.toward-house: west": "2.5 %",
    "grade.settlement: west": "6.7 %",  # 5 % of 8.33 ft = 5.0 in; (-3 - 5.0)/120
    "grade.settlement: south": "2.5 %",  # (2 - 5.0)/120
    "grade.hardscape: south patio": "0.115 in/ft",  # 2 % = 0.24 in/ft; 0.24 - 0.125
    "wells.drain: W1": "",
    "wells.rim: W1": "4 in",
    "wells.sill-low: W1": "4 in",
    "wells.fill: W1": "",
    "roof.discharge-close: L2": "4 ft",
    # the hole
    "excavation.protection": "",
    "excavation.bottom-width": "6 in",
    "excavation.spoil-setback": "1 ft",
    "excavation.egress": "35 ft",
    "excavation.edge-fall": "",
    "excavation.distress": "",
    "excavation.competent-person": "",
    # paper
    "holds.unsigned: H1": "",
    "record.levels": "",
    "record.photos": "",
}


def test_bad_is_faulted_for_exactly_what_is_wrong_with_it() -> None:
    assert sorted(failed(only("bad.yaml"))) == sorted(BAD)


@pytest.mark.parametrize("key", [key for key in BAD if BAD[key]])
def test_bad_is_off_by_what_a_pocket_calculator_gives(key: str) -> None:
    assert off_by(failed(only("bad.yaml"))[key]) == BAD[key]


def test_bad_can_still_be_told_to_lower_its_pipe() -> None:
    # trench at SE: 91.60 - (0.12 + 1)/12 = 91.507, so 6.1 in above bearing, and 5.66 in are wanted
    assert not failed(only("bad.yaml"))["drain.above-slab"].stop


def test_bad_opens_with_danger() -> None:
    assert [one.signal for one in only("bad.yaml").cautions][0] == "DANGER"


# -- the two that know little -----------------------------------------------------------------------


def test_prepour_finds_the_footing_too_thin() -> None:
    # 8 - 2 - 4.2 = 1.8 in; 72 ft at 1/16 in/ft = 4.5 in
    one = only("prepour.yaml")
    assert {key: off_by(f) for key, f in failed(one).items()} == {"drain.vertical-budget": "2.7 in"}
    assert one.holds("major")
    assert not any(f.outcome == NOT_MET and f.severity == "critical" for f in one.findings)


def test_submittal_comes_back_as_questions() -> None:
    one = only("submittal.yaml")
    assert list(failed(one)) == ["documents.product-data"]
    assert len(one.of(NOT_SHOWN)) > 5 * len(one.of(MET))
    assert one.holds("critical")
    asked = {question.path for question in one.questions}
    assert {"outlets.main.kind", "drain.corners", "levels.slab_underside"} <= asked


def test_what_a_sheet_says_without_a_unit_is_quoted_and_not_guessed() -> None:
    (spec,) = load_spec(SPECS / "submittal.yaml")
    assert spec.values["drain.wall_thickness"].value is None
    assert spec.values["drain.wall_thickness"].written == "0.120 min"


# -- the others -------------------------------------------------------------------------------------

OTHERS = {
    "as_built.yaml": {
        "drain.below-bearing": "0.32 in",  # 90.67 - (90.82 - (0.12 + 2)/12)
        "drain.ponding": "0.72 in",  # 90.88 - 90.82
    },
    "metric.yaml": {
        "grade.slope: north": "1 %",  # 100 mm in 2.5 m
        "stone.side": "30 mm",
    },
    "crawlspace.yaml": {"drain.absent": ""},
    "inside_drain.yaml": {
        "sump.inlet: pit": "1.8 in",  # 91.00 - 90.85
        "sump.pump-starts-late": "1.2 in",  # 91.10 - 91.00
        "sump.size": "2 in",
        "levels.floor-near-water": "30.4 in",  # 2 ft + 0.53 ft
    },
    "icf.yaml": {"coat.compatibility": ""},
}


@pytest.mark.parametrize("name", sorted(OTHERS))
def test_the_faults_that_a_header_names_are_found(name: str) -> None:
    found = failed(only(name))
    assert {key: off_by(found[key]) for key in OTHERS[name] if key in found} == OTHERS[name]


def test_a_dip_that_may_not_be_cured_by_digging_says_stop() -> None:
    assert failed(only("as_built.yaml"))["drain.ponding"].stop


def test_the_two_sides_of_a_walkout_are_judged_apart() -> None:
    hill, open_side = reviews("walkout.yaml")
    assert failed(hill) == {}
    met = {f.rule for f in hill.of(MET)}
    assert {"drain.above-slab", "drain.below-bearing", "coat.absent", "outlets.gravity"} <= met
    assert "coat.absent" not in {f.rule for f in open_side.of(MET) + open_side.of(NOT_MET)}


def test_a_standard_meets_its_own_rules_without_one_level() -> None:
    one = only("standards/HF-FDN-02.yaml")
    assert failed(one) == {}
    assert len(one.of(MET)) >= 40


@pytest.mark.parametrize("path", sorted(SPECS.rglob("*.yaml")), ids=lambda p: p.name)
def test_every_spec_says_what_it_teaches(path: Path) -> None:
    head = path.read_text(encoding="utf-8").split("vocabulary:")[0]
    assert "What to learn from it" in head
