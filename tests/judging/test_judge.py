"""How a rule is asked: cases, exceptions, silence, what must be seen, guards and ranges."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from checker.judging.judge import review
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, NOT_SHOWN, Finding
from checker.judging.rulebook import Rulebook, load_rulebook
from tests.support import spec_of

REST = """
  severity: major
  how_often: known
  stage: drain
  trade: drain
  protects: {protects}
  rationale: Because.
  remedy: Change it by {{off_by}}.
  examples: {{met: [{{spec: {{}}}}], not met: [{{spec: {{}}}}]}}
"""


def book(tmp_path: Path, *bodies: str, protects: str = "building") -> Rulebook:
    """Return a rule book of short rules, each given without the keys that every rule has."""
    text = "".join(body.rstrip() + REST.format(protects=protects) for body in bodies)
    path = tmp_path / "rules.yaml"
    path.write_text(text, encoding="utf-8")
    return load_rulebook(path)


def only(tmp_path: Path, body: str, mapping: dict[str, Any], protects: str = "building") -> Finding:
    """Return the one finding of one rule."""
    (finding,) = review(spec_of(mapping), book(tmp_path, body, protects=protects)).findings
    return finding


BEDDING = """
- id: stone.thin
  title: Thin bed
  require: {value: stone.bedding, at least: 2 in}
  sources: common practice
"""


@pytest.mark.parametrize(
    ("bedding", "outcome", "off_by"),
    [
        ("2 in", MET, ""),
        ("51 mm", MET, ""),
        ("1.99 in", NOT_MET, "0.01 in"),
        ("50 mm", NOT_MET, "0.8 mm"),
        ("2 to 4 in", MET, ""),
        ("1 to 4 in", NOT_SHOWN, ""),
        ("0.5 to 1 in", NOT_MET, "1 1/2 in"),
        ("2 in min", MET, ""),
        ("3 in max", NOT_SHOWN, ""),
        ("1 in max", NOT_MET, "2 in"),
        ("not shown", NOT_SHOWN, ""),
    ],
)
def test_at_least(tmp_path: Path, bedding: str, outcome: str, off_by: str) -> None:
    finding = only(tmp_path, BEDDING, {"stone": {"bedding": bedding}})
    assert finding.outcome == outcome
    assert finding.compared[0].off_by == off_by
    assert finding.standing == "common practice"


def test_remedy_has_the_number_in_it(tmp_path: Path) -> None:
    assert only(tmp_path, BEDDING, {"stone": {"bedding": "1 in"}}).remedy == "Change it by 1 in."


def test_finding_names_place_and_source(tmp_path: Path) -> None:
    mapping = {"stone": {"bedding": {"value": "1 in", "from": "SUB-03 p2"}}}
    (place,) = only(tmp_path, BEDDING, mapping).places
    assert (place.path, place.written, place.line, place.source) == (
        "stone.bedding",
        "1 in",
        4,
        "SUB-03 p2",
    )


def test_strict_limits_leave_the_limit_out(tmp_path: Path) -> None:
    rule = """
- id: drain.high
  title: High
  require: {value: levels.footing_top, below: levels.slab_underside}
  sources: common practice
"""
    levels = {"unit": "ft", "slab_underside": "91.67"}
    assert only(tmp_path, rule, {"levels": {**levels, "footing_top": "91.67"}}).outcome == NOT_MET
    met = only(tmp_path, rule, {"levels": {**levels, "footing_top": "91.66"}})
    assert met.outcome == MET
    assert met.tight, "0.01 ft is less than a rod reads"
    assert not only(tmp_path, rule, {"levels": {**levels, "footing_top": "91.00"}}).tight


def test_shown_and_needed_never_read_alike(tmp_path: Path) -> None:
    rule = """
- id: drain.high
  title: High
  require: {value: levels.footing_top, below: levels.slab_underside}
  sources: common practice
"""
    levels = {"unit": "ft", "slab_underside": "91.670", "footing_top": "91.6704"}
    (compared,) = only(tmp_path, rule, {"levels": levels}).compared
    assert compared.shown not in compared.needed


CASES = """
- id: coat.low
  title: Low
  cases:
    - where: [{value: adopted.irc, at least: 2018}]
      require: {value: coat.lap_onto_footing, at least: 1 in}
      sources: common practice
    - where: [{value: adopted.irc, at most: 2012}]
      require: {value: coat.lap_onto_footing, at least: 4 in}
      sources: common practice
"""


@pytest.mark.parametrize(
    ("edition", "lap", "outcome"),
    [
        ("2018", "2 in", MET),
        ("2012", "2 in", NOT_MET),
        ("2012", "4 in", MET),
        ("2015", "9 in", NOT_SHOWN),  # no case holds the text of that edition
        (None, "2 in", NOT_SHOWN),  # the cases disagree, and no code is named
        (None, "5 in", MET),  # whichever holds, it is met
        (None, "0.5 in", NOT_MET),  # whichever holds, it is not
    ],
)
def test_cases(tmp_path: Path, edition: str | None, lap: str, outcome: str) -> None:
    mapping: dict[str, Any] = {"coat": {"lap_onto_footing": lap}}
    if edition:
        mapping["job"] = {"codes": [{"id": "IRC", "edition": edition}]}
    assert only(tmp_path, CASES, mapping).outcome == outcome


UNLESS = """
- id: grade.flat
  title: Flat
  require: {value: grade.sides.each.slope, at least: 5 %}
  sources: common practice
  unless:
    - require: {all: [{value: grade.sides.each.obstruction_distance, below: 10 ft}, {value: grade.sides.each.swale_slope, at least: 2 %}]}
      sources: common practice
"""


def test_exception_and_items(tmp_path: Path) -> None:
    sides = [
        {"id": "north", "fall": "6 in", "in_distance": "10 ft"},
        {
            "id": "east",
            "fall": "2 in",
            "in_distance": "7 ft",
            "obstruction_distance": "7 ft",
            "swale_slope": "2 %",
        },
        {"id": "south", "fall": "2 in", "in_distance": "10 ft"},
        {"id": "west", "fall": "2 in", "in_distance": "7 ft", "obstruction_distance": "7 ft"},
        {"id": "porch", "in_distance": "7 ft"},
    ]
    findings = {
        f.item: f
        for f in review(spec_of({"grade": {"sides": sides}}), book(tmp_path, UNLESS)).findings
    }
    assert {item: f.outcome for item, f in findings.items()} == {
        "north": MET,
        "east": MET,
        "south": NOT_MET,  # no obstruction is shown, which reads as none: no exception
        "west": NOT_SHOWN,  # the swale could excuse it
        "porch": NOT_SHOWN,
    }
    assert findings["east"].by_exception
    assert not findings["north"].by_exception
    assert findings["west"].missing == ("grade.sides.west.swale_slope",)
    assert findings["porch"].missing == ("grade.sides.porch.fall",)


def test_list_left_out_is_not_shown_and_an_empty_one_is_never_met(tmp_path: Path) -> None:
    assert only(tmp_path, UNLESS, {}).outcome == NOT_SHOWN
    rule = UNLESS.replace(
        "grade.sides.each.slope, at least: 5 %", "fabrics.each.top_lap, at least: 12 in"
    )
    rule = rule.partition("  unless:")[0]
    assert only(tmp_path, rule, {"fabrics": "none"}).outcome == DOES_NOT_APPLY


SEEN = """
- id: backfill.deck
  title: No deck
  seen: yes
  require: {value: backfill.deck_on, is: yes}
  sources: common practice
"""
LOOKED = {"how": "measured", "by": "R. Halloway", "date": "2031-04-20"}


def test_a_promise_is_not_a_fact(tmp_path: Path) -> None:
    promise: dict[str, Any] = {"backfill": {"deck_on": "yes"}}
    early = only(tmp_path, SEEN, promise, protects="people")
    assert early.outcome == DOES_NOT_APPLY, "before its stage a plan is only a plan"
    assert "must be seen" in early.because
    now = {"job": {"stage": "drain"}}
    promised = only(tmp_path, SEEN, now | promise, protects="people")
    assert promised.outcome == NOT_SHOWN
    assert "look, and write who looked" in promised.because
    assert promised.missing == ("backfill.deck_on",)
    seen = only(
        tmp_path, SEEN, {"backfill": {"deck_on": {"value": "yes", **LOOKED}}}, protects="people"
    )
    assert seen.outcome == MET
    assert only(tmp_path, SEEN, {"backfill": {"deck_on": "no"}}).outcome == NOT_MET


@pytest.mark.parametrize(("backup", "outcome"), [("none", NOT_MET), (["battery"], MET)])
def test_none_is_an_empty_list_and_no_word_in_one(
    tmp_path: Path, backup: Any, outcome: str
) -> None:
    rule = """
- id: sump.test
  title: Test
  require: {value: sump.backup, is not: none}
  sources: common practice
"""
    assert only(tmp_path, rule, {"sump": {"backup": backup}}).outcome == outcome


def test_a_person_decides(tmp_path: Path) -> None:
    rule = SEEN.replace("seen: yes", "at_best: for_person")
    finding = only(tmp_path, rule, {"backfill": {"deck_on": "yes"}}, protects="people")
    assert finding.outcome == DOES_NOT_APPLY
    assert finding.because.startswith("no objection")


def test_not_applicable_is_taken_at_its_word_but_not_where_people_are_protected(
    tmp_path: Path,
) -> None:
    said = {"backfill": {"deck_on": "not applicable"}}
    rule = SEEN.replace("  seen: yes\n", "")
    finding = only(tmp_path, rule, said)
    assert (finding.outcome, finding.because) == (DOES_NOT_APPLY, 'the spec says "not applicable"')
    assert only(tmp_path, rule, said, protects="people").outcome == NOT_SHOWN


def test_not_due_before_its_stage(tmp_path: Path) -> None:
    rule = SEEN.replace("seen: yes", "due: backfill")
    early = only(tmp_path, rule, {"job": {"stage": "drain"}})
    assert (early.outcome, early.because) == (DOES_NOT_APPLY, "not due until backfill")
    assert only(tmp_path, rule, {"job": {"stage": "backfill"}}).outcome == NOT_SHOWN


def test_by_asks_only_what_must_be_right_by_then(tmp_path: Path) -> None:
    rules = book(tmp_path, BEDDING, SEEN)
    assert len(review(spec_of({}), rules, by="coating").findings) == 0
    assert len(review(spec_of({}), rules, by="drain").findings) == 2


GUARDED = """
- id: drain.above-slab
  title: High
  guard: drain.below-bearing
  stop: No room, {room} left. Ask the engineer.
  require: {value: drain.crown_high, below: levels.slab_underside}
  sources: common practice
"""
GUARD = """
- id: drain.below-bearing
  title: Low
  require: {value: drain.trench_bottom_low, at least: levels.footing_underside}
  sources: common practice
"""


def pipe(low: str, underside: str) -> dict[str, Any]:
    """Return a pipe whose crown stands 3.6 in over the slab's underside (91.67 + 0.341 - 91.71 ft)."""
    return {
        "levels": {"unit": "ft", "slab_underside": "91.71", "footing_underside": underside},
        "drain": {
            "invert_high": "91.67", "invert_low": low, "outside_diameter": "4.215 in", "wall_thickness": "0.12 in",
        },
        "stone": {"bedding": "2 in"},
    }  # fmt: skip


def test_remedy_stops_where_the_guard_has_no_room(tmp_path: Path) -> None:
    rules = book(tmp_path, GUARDED, GUARD)
    # Trench bottom 91.50 - 0.01 - 0.1667 = 91.323 ft; over 91.30 that leaves 0.28 in, and 3.6 in is needed.
    high, low = review(spec_of(pipe("91.50", "91.30")), rules).findings
    assert (high.outcome, low.outcome) == (NOT_MET, MET)
    assert high.stop
    assert high.remedy == "No room, 0.28 in left. Ask the engineer."
    # Over 90.30 it leaves 12.3 in.
    high, _ = review(spec_of(pipe("91.50", "90.30")), rules).findings
    assert not high.stop
    assert high.remedy == "Change it by 3.7 in."


def test_remedy_waits_where_the_guard_is_not_shown(tmp_path: Path) -> None:
    mapping = pipe("91.50", "91.30")
    del mapping["levels"]["footing_underside"]
    high, _ = review(spec_of(mapping), book(tmp_path, GUARDED, GUARD)).findings
    assert high.stop
    assert "change no level" in high.remedy


ADOPTED = """
- id: grade.slope
  title: Flat
  require: {value: grade.sides.each.slope, at least: 5 %}
  sources: [{ref: irc-2015, at: R401.3}]
"""


@pytest.mark.parametrize(
    ("codes", "standing"),
    [
        ([{"id": "IRC", "edition": "2015"}], "law here"),
        ([{"id": "IRC", "edition": "1995"}], "law elsewhere"),
        ([{"id": "IBC", "edition": "2021"}], "law elsewhere"),
    ],
)
def test_standing_is_worked_out(tmp_path: Path, codes: list[dict[str, str]], standing: str) -> None:
    mapping = {
        "job": {"codes": codes},
        "grade": {"sides": [{"id": "n", "fall": "6 in", "in_distance": "10 ft"}]},
    }
    assert only(tmp_path, ADOPTED, mapping).standing == standing


def test_nothing_judged_holds(tmp_path: Path) -> None:
    result = review(spec_of({}), book(tmp_path, BEDDING))
    assert not result.judged
    assert result.holds("critical"), "a spec on which nothing could be judged is never let through"


def test_not_shown_counts_at_its_severity(tmp_path: Path) -> None:
    other = BEDDING.replace("stone.thin", "stone.side").replace("stone.bedding", "stone.side")
    result = review(spec_of({"stone": {"bedding": "2 in"}}), book(tmp_path, BEDDING, other))
    assert result.holds("major")
    assert not result.holds("critical")


def test_questions_are_grouped_by_what_is_missing(tmp_path: Path) -> None:
    other = BEDDING.replace("stone.thin", "stone.thick").replace("at least", "at most")
    (question,) = review(spec_of({}), book(tmp_path, BEDDING, other)).questions
    assert question.path == "stone.bedding"
    assert question.rules == ("stone.thick", "stone.thin")
