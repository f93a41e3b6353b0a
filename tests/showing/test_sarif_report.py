"""SARIF: it obeys the standard, says the same as the review, and lets nothing in a spec act."""

from __future__ import annotations

import dataclasses
import json
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from checker.judging.carried import as_earlier, compare
from checker.judging.judge import review as judge
from checker.judging.review_data import (
    DOES_NOT_APPLY,
    NOT_MET,
    NOT_SHOWN,
    Allowance,
    Finding,
    Review,
)
from checker.judging.rulebook import Rulebook, load_rulebook
from checker.reading.faults import Fault
from checker.reading.reader import read_specs
from checker.showing.sarif_report import FINGERPRINT, LEVELS, as_sarif

ROOT = Path(__file__).parents[2]
# What `.ci/run` installs: matchers for SARIF, with the standard's schema.
SCHEMA = ROOT / ".ci/node/node_modules/@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json"
BAD = ROOT / "specs" / "bad.yaml"


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


@pytest.fixture(scope="module")
def bad(rulebook: Rulebook) -> Review:
    (spec,) = read_specs(BAD.read_text(encoding="utf-8"), "specs/bad.yaml")
    return judge(spec, rulebook)


def run_of(text: str) -> Any:
    (run,) = json.loads(text)["runs"]
    return run


def changed(review: Review, number: int, **fields: Any) -> Review:
    """Return a review in which one finding that is not met is another."""
    finding = review.of(NOT_MET)[number]
    other = finding._replace(**fields)
    findings = tuple(other if one is finding else one for one in review.findings)
    return dataclasses.replace(review, findings=findings)


def every_text(value: Any) -> Iterator[str]:
    if isinstance(value, dict):
        for one in value.values():
            yield from every_text(one)
    elif isinstance(value, list):
        for one in value:
            yield from every_text(one)
    elif isinstance(value, str):
        yield value


# -- the standard ----------------------------------------------------------------------------------


def faults_in_log(log: Any) -> list[str]:
    """What the schema cannot see: an index that leads elsewhere, unknown ids, ends before starts."""
    found = []
    for run in log["runs"]:
        rules = run["tool"]["driver"]["rules"]
        known = [rule["id"] for rule in rules]
        for result in run["results"]:
            if result["ruleId"] not in known:
                found.append(f"{result['ruleId']} is no rule")
            elif known[result["ruleIndex"]] != result["ruleId"]:
                found.append(f"the index of {result['ruleId']} leads to another rule")
            if (result["kind"] == "fail") == (result["level"] == "none"):
                found.append(f"level {result['level']} of kind {result['kind']}")
            for location in [*result["locations"], *result.get("relatedLocations", [])]:
                region = location["physicalLocation"].get("region", {"startLine": 1})
                line, column = region["startLine"], region.get("startColumn", 1)
                end = region.get("endLine", line), region.get("endColumn", 10**9)
                if end < (line, column):
                    found.append(f"a region ends before it starts: {region}")
    return found


def test_the_log_is_sound(bad: Review, rulebook: Rulebook) -> None:
    assert faults_in_log(json.loads(as_sarif([bad], rulebook))) == []


@pytest.mark.parametrize(
    ("spoil", "says"),
    [
        (lambda result: result.update(ruleIndex=result["ruleIndex"] + 1), "leads to another"),
        (lambda result: result.update(ruleId="drain.gap-in-time"), "is no rule"),
        (lambda result: result.update(level="none"), "of kind fail"),
        (
            lambda result: result["locations"][0]["physicalLocation"]["region"].update(endLine=1),
            "ends",
        ),
    ],
    ids=["index", "id", "level", "end"],
)
def test_an_unsound_log_would_be_seen(
    bad: Review, rulebook: Rulebook, spoil: Any, says: str
) -> None:
    log = json.loads(as_sarif([bad], rulebook))
    spoil(log["runs"][0]["results"][0])
    (fault,) = faults_in_log(log)
    assert says in fault


@pytest.fixture(scope="module")
def schema() -> Any:
    if not SCHEMA.is_file():
        pytest.skip("the schema of SARIF is not installed here; .ci/run installs it with npm")
    return json.loads(SCHEMA.read_text(encoding="utf-8"))


def test_log_obeys_the_schema_of_the_standard(bad: Review, rulebook: Rulebook, schema: Any) -> None:
    faults = [Fault("a b/é.yaml", 3, 1, "there is no 'wal' here"), Fault("gone.yaml", 0, 0, "no")]
    before = [as_earlier(bad)]
    for log in (
        as_sarif([bad], rulebook),
        as_sarif([bad], rulebook, faults=faults, exit_status=2, version="0.1.0"),
        as_sarif([], rulebook, faults=faults, exit_status=2),
        as_sarif([bad], rulebook, comparison=compare(before, [bad], "before.json")),
    ):
        jsonschema.Draft4Validator(schema).validate(json.loads(log))


def test_the_schema_sees_what_it_should(bad: Review, rulebook: Rulebook, schema: Any) -> None:
    log = json.loads(as_sarif([bad], rulebook))
    log["runs"][0]["results"][0]["level"] = "critical"
    assert not jsonschema.Draft4Validator(schema).is_valid(log)


# -- the review ------------------------------------------------------------------------------------


def test_results_are_the_findings(bad: Review, rulebook: Rulebook) -> None:
    results = run_of(as_sarif([bad], rulebook))["results"]
    kinds = Counter(result["kind"] for result in results)
    assert kinds["fail"] == len(bad.of(NOT_MET)) > 50
    assert kinds["open"] == len(bad.of(NOT_SHOWN)) > 0
    person = [one for one in bad.of(DOES_NOT_APPLY) if one.because.startswith("no objection")]
    assert kinds["review"] == len(person) > 0
    assert sum(kinds.values()) == kinds["fail"] + kinds["open"] + kinds["review"]


@pytest.mark.parametrize(
    ("severity", "level"), [("critical", "error"), ("major", "warning"), ("minor", "note")]
)
def test_level_follows_the_severity(
    bad: Review, rulebook: Rulebook, severity: str, level: str
) -> None:
    run = run_of(as_sarif([bad], rulebook))
    failed = [one for one in run["results"] if one["kind"] == "fail"]
    assert {one["level"] for one in failed if one["properties"]["severity"] == severity} == {level}
    rules = {one["id"]: one for one in run["tool"]["driver"]["rules"]}
    for rule in rulebook.rules:
        if rule.id in rules:
            assert rules[rule.id]["defaultConfiguration"]["level"] == LEVELS[rule.severity]


def test_a_case_may_be_graver_than_its_rule(bad: Review, rulebook: Rulebook) -> None:
    (result, *_) = run_of(as_sarif([changed(bad, 0, severity="minor")], rulebook))["results"]
    assert result["level"] == "note"


def test_place_of_a_result_is_that_of_the_value(bad: Review, rulebook: Rulebook) -> None:
    lines = BAD.read_text(encoding="utf-8").split("\n")
    run = run_of(as_sarif([bad], rulebook))
    assert run["columnKind"] == "unicodeCodePoints"
    seen = 0
    for result in run["results"]:
        location = result["locations"][0]
        where = location["physicalLocation"]
        assert where["artifactLocation"] == {"uri": "specs/bad.yaml", "uriBaseId": "%SRCROOT%"}
        if "region" in where:
            written = location["message"]["text"].partition(": ")[2]
            rest = lines[where["region"]["startLine"] - 1][where["region"]["startColumn"] - 1 :]
            assert rest.lstrip("'\"[").startswith(written.split(",")[0].split("\n")[0][:20])
            seen += 1
    assert seen > 50


def test_every_value_that_a_finding_rests_on_is_there(bad: Review, rulebook: Rulebook) -> None:
    (finding,) = (one for one in bad.findings if one.rule == "grade.slope" and one.item == "south")
    results = run_of(as_sarif([bad], rulebook))["results"]
    (result,) = (
        one
        for one in results
        if one["ruleId"] == "grade.slope" and one["properties"]["item"] == "south"
    )
    places = [*result["locations"], *result["relatedLocations"]]
    names = [place["logicalLocations"][0]["fullyQualifiedName"] for place in places]
    assert names == [place.path for place in finding.places]


def test_value_of_another_file_is_shown_there(bad: Review, rulebook: Rulebook) -> None:
    places = tuple(one._replace(file="standards/house.yaml") for one in bad.of(NOT_MET)[0].places)
    (result, *_) = run_of(as_sarif([changed(bad, 0, places=places)], rulebook))["results"]
    where = result["locations"][0]["physicalLocation"]["artifactLocation"]
    assert where["uri"] == "standards/house.yaml"


def test_what_is_not_shown_names_the_value(bad: Review, rulebook: Rulebook) -> None:
    results = run_of(as_sarif([bad], rulebook))["results"]
    waiting = [one for one in results if one["kind"] == "open" and one["properties"]["missing"]]
    for result in waiting:
        for path in result["properties"]["missing"]:
            assert path in result["message"]["text"]
    assert waiting


def test_numbers_and_remedy_stand_in_the_message(bad: Review, rulebook: Rulebook) -> None:
    results = run_of(as_sarif([bad], rulebook))["results"]
    failed = [result for result in results if result["kind"] == "fail"]
    for finding, result in zip(bad.of(NOT_MET), failed, strict=True):
        text = result["message"]["text"]
        assert text.startswith(finding.title)
        for compared in finding.compared:
            if compared.outcome == NOT_MET:
                assert f"shown {compared.shown}".lower() in text.lower()
        assert finding.remedy.replace("{", "{{").replace("}", "}}") in text


def test_rules_come_from_the_rule_book(bad: Review, rulebook: Rulebook) -> None:
    rules = run_of(as_sarif([bad], rulebook))["tool"]["driver"]["rules"]
    listed = [one.rule for one in bad.findings if one.outcome in (NOT_MET, NOT_SHOWN)]
    ids = [rule["id"] for rule in rules]
    assert len(set(ids)) == len(ids)
    # Each has its place from the first result that names it; a person's rules are among them.
    assert [one for one in ids if one in listed] == list(dict.fromkeys(listed))
    for listed in rules:
        rule = rulebook.rule(listed["id"])
        assert rule is not None
        assert listed["fullDescription"]["text"] == rule.rationale
        assert f"belowgrade why {rule.id}" in listed["help"]["text"]
        told = listed["properties"]
        assert (told["severity"], told["stage"], told["trade"]) == (
            rule.severity, rule.stage, rule.trade,
        )  # fmt: skip
    kinds = {kind for listed in rules for kind in listed["properties"]["sourceKinds"]}
    assert {"common practice", "model code"} <= kinds


def test_the_last_line_and_the_safety_block_are_there(bad: Review, rulebook: Rulebook) -> None:
    told = run_of(as_sarif([bad], rulebook))["properties"]
    assert told["closing"].endswith("This is not a release.")
    assert len(told["cautions"]) == len(bad.cautions) > 0
    assert told["assemblies"][0]["counts"]["not met"] == len(bad.of(NOT_MET))


# -- fingerprints ----------------------------------------------------------------------------------


def fingerprints(text: str, rulebook: Rulebook, name: str = "lot.yaml") -> list[str]:
    reviews = [judge(spec, rulebook) for spec in read_specs(text, name)]
    results = run_of(as_sarif(reviews, rulebook))["results"]
    return [result["partialFingerprints"][FINGERPRINT] for result in results]


def test_fingerprints_outlive_moved_lines_and_other_names(rulebook: Rulebook) -> None:
    text = BAD.read_text(encoding="utf-8")
    moved = text.replace("\nwall:", "\n# one line\n\n# and more\nwall:", 1)
    assert moved != text
    assert fingerprints(text, rulebook) == fingerprints(moved, rulebook, "other/lot.yaml")


def test_fingerprints_of_a_run_are_all_different(bad: Review, rulebook: Rulebook) -> None:
    results = run_of(as_sarif([bad], rulebook))["results"]
    found = Counter(one["partialFingerprints"][FINGERPRINT] for one in results)
    assert max(found.values()) == 1


def test_another_value_is_another_fingerprint(rulebook: Rulebook) -> None:
    text = BAD.read_text(encoding="utf-8")
    other = text.replace("{id: NW, invert: 91.80", "{id: NW, invert: 91.81", 1)
    assert other != text
    assert set(fingerprints(text, rulebook)) != set(fingerprints(other, rulebook))


def test_results_say_what_is_new_where_that_is_known(bad: Review, rulebook: Rulebook) -> None:
    compared = bad.of(NOT_MET)[0].compared
    other = tuple(one._replace(shown=f"{one.shown} or so") for one in compared)
    before = as_earlier(bad)
    now = changed(bad, 0, compared=other)
    results = run_of(as_sarif([now], rulebook, comparison=compare([before], [now], "x")))["results"]
    states = Counter(result["baselineState"] for result in results)
    assert states["updated"] == 1
    assert states["unchanged"] == len(results) - 1
    alone = run_of(as_sarif([now], rulebook, comparison=compare([], [now], "x")))["results"]
    assert {one["baselineState"] for one in alone if one["kind"] != "review"} == {"new"}
    assert "baselineState" not in run_of(as_sarif([now], rulebook))["results"][0]


# -- the run ---------------------------------------------------------------------------------------


def test_what_could_not_be_read_is_told(bad: Review, rulebook: Rulebook) -> None:
    fault = Fault("specs/lot 16.yaml", 4, 7, "there is no 'wal' at the top of a spec")
    run = run_of(as_sarif([bad], rulebook, faults=[fault], exit_status=2))
    (call,) = run["invocations"]
    assert (call["executionSuccessful"], call["exitCode"]) == (False, 2)
    (told,) = call["toolExecutionNotifications"]
    assert "no 'wal'" in told["message"]["text"]
    where = told["locations"][0]["physicalLocation"]
    assert where["artifactLocation"]["uri"] == "specs/lot%2016.yaml"
    assert where["region"] == {"startLine": 4, "startColumn": 7}
    driver = run["tool"]["driver"]
    assert driver["notifications"][told["descriptor"]["index"]]["id"] == told["descriptor"]["id"]


@pytest.mark.parametrize("status", [0, 1])
def test_a_run_that_read_everything_was_successful(
    bad: Review, rulebook: Rulebook, status: int
) -> None:
    (call,) = run_of(as_sarif([bad], rulebook, exit_status=status))["invocations"]
    assert (call["executionSuccessful"], call["exitCode"]) == (True, status)
    assert call["toolExecutionNotifications"] == []


def test_runs_that_ask_different_things_have_different_ids(bad: Review, rulebook: Rulebook) -> None:
    def name(review: Review) -> str:
        return str(run_of(as_sarif([review], rulebook))["automationDetails"]["id"])

    forms, measured = (
        dataclasses.replace(bad, by="forms"),
        dataclasses.replace(bad, basis="measured"),
    )
    assert len({name(bad), name(forms), name(measured)}) == 3


@pytest.mark.parametrize(
    ("file", "uri"),
    [
        ("specs/a b.yaml", "specs/a%20b.yaml"),
        ("./specs/a.yaml", "specs/a.yaml"),
        ("été#1.yaml", "%C3%A9t%C3%A9%231.yaml"),
        ("100%.yaml", "100%25.yaml"),
        ("a:b.yaml", "a%3Ab.yaml"),
        ("bad\udcff.yaml", "bad%FF.yaml"),
    ],
)
def test_a_file_becomes_a_relative_uri(rulebook: Rulebook, file: str, uri: str) -> None:
    fault = Fault(file, 0, 0, "is empty")
    (call,) = run_of(as_sarif([], rulebook, faults=[fault]))["invocations"]
    (told,) = call["toolExecutionNotifications"]
    assert told["locations"][0]["physicalLocation"]["artifactLocation"] == {
        "uri": uri, "uriBaseId": "%SRCROOT%",
    }  # fmt: skip


def test_an_absolute_path_and_standard_input(rulebook: Rulebook, tmp_path: Path) -> None:
    def artifact(file: str) -> Any:
        fault = Fault(file, 0, 0, "is empty")
        (call,) = run_of(as_sarif([], rulebook, faults=[fault], exit_status=2))["invocations"]
        (told,) = call["toolExecutionNotifications"]
        return told["locations"][0]["physicalLocation"]["artifactLocation"]

    assert artifact(str(tmp_path / "a b.yaml")) == {"uri": (tmp_path / "a b.yaml").as_uri()}
    assert artifact("standard input") == {"description": {"text": "standard input"}}


# -- what a spec may hold --------------------------------------------------------------------------


def test_nothing_in_a_spec_acts_in_a_message(bad: Review, rulebook: Rulebook) -> None:
    evil = "\x1b[31m{0} [click](http://example.invalid/) <b>\x00\ud800\u202e"
    finding: Finding = bad.of(NOT_MET)[0]
    compared = tuple(one._replace(shown=evil) for one in finding.compared)
    text = as_sarif([changed(bad, 0, compared=compared, item=evil, remedy=evil)], rulebook)
    assert text.isascii()
    assert "\\ud800" not in text
    for one in every_text(json.loads(text)["runs"][0]["results"]):
        assert one.isprintable()
    message = run_of(text)["results"][0]["message"]["text"]
    assert "{{0}}" in message
    assert "](" not in message


def test_the_same_reviews_give_the_same_text(bad: Review, rulebook: Rulebook) -> None:
    assert as_sarif([bad], rulebook) == as_sarif([bad], rulebook)


def test_a_variance_suppresses_and_does_not_hide(bad: Review, rulebook: Rulebook) -> None:
    allowance = Allowance(
        "V-7", "roof.discharge-close", "in force", "R. Halloway", "Rock at 3 ft.", "", ""
    )
    varied = dataclasses.replace(changed(bad, 0, varied="V-7"), variances=(allowance,))
    results = run_of(as_sarif([varied], rulebook))["results"]
    first, second, *_ = (one for one in results if one["kind"] == "fail")
    (suppression,) = first["suppressions"]
    assert (suppression["kind"], suppression["status"]) == ("external", "accepted")
    assert "V-7: Rock at 3 ft. Approved by R. Halloway" in suppression["justification"]
    assert "suppressions" not in second
