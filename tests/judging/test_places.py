"""Places: each file has examples that come out otherwise than by the built-in rules alone."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from typer.testing import CliRunner

from checker.command import app
from checker.data import load_json
from checker.judging.headed import read_headed
from checker.judging.places import (
    Place,
    by_the_law_of,
    find_place,
    in_place,
    load_place,
    place_files,
    place_of,
    read_place,
)
from checker.judging.review_data import MET, NOT_MET, Finding
from checker.judging.rulebook import Rulebook, load_rulebook
from checker.judging.settle import settle
from checker.judging.standing import GUIDANCE, LAW_HERE
from checker.reading.faults import Unreadable
from tests.support import spec_of

BOOK = load_rulebook()
IRC = {"job": {"codes": [{"id": "IRC", "edition": "2018"}]}}
OTHERWISE = {MET: NOT_MET, NOT_MET: MET}


@cache
def examples(place: str) -> list[dict[str, Any]]:
    return list(read_headed(place_files()[place], "place.schema.json", "place").content["examples"])


EVERY = [
    pytest.param(place, example, id=f"{place}-{number}")
    for place in place_files()
    for number, example in enumerate(examples(place), 1)
]


def asked(spec: dict[str, Any], rule: str, place: str) -> list[Finding]:
    settled = settle(spec_of(spec), BOOK, place)
    return [one for one in settled.review().findings if one.rule == rule]


@pytest.mark.parametrize("place", place_files())
def test_a_place_obeys_its_schema_and_may_change_what_it_changes(place: str) -> None:
    assert list(Draft202012Validator(load_json("place.schema.json")).iter_errors({})) != []
    found = read_place(place_files()[place])
    assert by_the_law_of(found, BOOK).rules


@pytest.mark.parametrize(("place", "example"), EVERY)
def test_an_example_comes_out_as_it_says(place: str, example: dict[str, Any]) -> None:
    outcomes = {one.outcome for one in asked(example["spec"], example["rule"], place)}
    assert outcomes == ({example["outcome"]} if example["outcome"] != "not asked" else set())


@pytest.mark.parametrize("place", place_files())
def test_a_place_has_both_sides_and_one_that_is_otherwise_elsewhere(place: str) -> None:
    outcomes = {one["outcome"] for one in examples(place)}
    assert {MET, NOT_MET} <= outcomes
    differs = [
        one
        for one in examples(place)
        if any(
            finding.outcome == OTHERWISE.get(one["outcome"], NOT_MET)
            for finding in asked({**IRC, **one["spec"]}, one["rule"], "")
        )
    ]
    assert differs, f"{place} changes nothing that its examples would show"


@pytest.mark.parametrize("place", place_files())
def test_each_amended_rule_has_an_example_and_a_reason(place: str) -> None:
    shown = {one["rule"] for one in examples(place)}
    for amendment in load_place(place).amendments:
        assert amendment.rule in shown
        assert amendment.reason


def test_nothing_of_germany_is_critical() -> None:
    # Only summaries of the standard were read.
    for example in examples("din-4095"):
        for finding in asked(example["spec"], example["rule"], "din-4095"):
            assert finding.severity != "critical"
            assert finding.standing == GUIDANCE


SOCK = next(one for one in examples("henrico-va") if one["outcome"] == NOT_MET)["spec"]


@pytest.mark.parametrize(
    "name", ["henrico-va", "Henrico County, Virginia", "HENRICO county", "henrico"]
)
def test_a_jurisdiction_names_a_place_by_any_of_its_names(name: str) -> None:
    spec = spec_of({"job": {"jurisdiction": name}, **SOCK})
    (finding,) = (
        one for one in settle(spec, BOOK).review().findings if one.rule == "fabrics.missing"
    )
    assert finding.outcome == NOT_MET
    assert finding.standing == LAW_HERE
    assert finding.amended[0].by == "Henrico County, Virginia"
    assert "even with a sock" in finding.amended[0].reason


def test_a_town_without_a_file_is_noted_and_judged_as_before() -> None:
    spec = spec_of({"job": {"jurisdiction": "Town of Marrowfield"}, **SOCK})
    settled = settle(spec, BOOK)
    assert settled.rulebook is BOOK
    assert any("Town of Marrowfield" in note for note in settled.spec.notes)
    assert settle(spec_of(SOCK), BOOK).spec.notes == ()


def test_an_unknown_place_asked_for_is_an_error_that_names_the_nearest() -> None:
    with pytest.raises(LookupError, match=r"nearest known: wisconsin"):
        find_place("wisconson")


def test_the_place_asked_for_goes_before_the_one_the_spec_names() -> None:
    spec = spec_of({"job": {"jurisdiction": "Ontario"}})
    assert place_of(spec) is not None
    assert settle(spec, BOOK, "wisconsin").rulebook.books[-1].name == "Wisconsin"


def test_codes_are_taken_from_a_place_only_where_a_spec_names_none() -> None:
    ontario = find_place("ontario")
    silent = in_place(spec_of({"slab": {"thickness": "4 in"}}), ontario)
    assert silent.lists["job.codes"] == ("O. Reg. 332/12",)
    assert any("O. Reg. 332/12" in note for note in silent.notes)
    named = in_place(spec_of({"job": {"codes": [{"id": "IRC", "edition": "2018"}]}}), ontario)
    assert named.lists["job.codes"] == ("IRC",)
    said = in_place(spec_of({"job": {"codes": "unknown"}}), ontario)
    assert "job.codes" not in said.lists


def test_a_regulation_is_law_in_its_place() -> None:
    (finding,) = asked(
        {"slab": {"base_material": "clean_stone", "base_thickness": "100 mm"}},
        "slab.base",
        "ontario",
    )
    assert finding.standing == LAW_HERE


def test_an_edition_that_was_not_read_is_asked_for() -> None:
    spec = {"drain": {"present": "yes"}, "stone": {"beyond_footing": "8 in"}}
    settled = settle(spec_of(spec), BOOK, "olathe-ks")
    assert settled.spec.lists["job.codes"] == ("IRC",)
    assert "job.codes.IRC.edition" not in settled.spec.values


def test_the_books_of_a_review_are_named_with_their_digests() -> None:
    review = settle(spec_of(SOCK), BOOK, "henrico-va").review()
    assert [book.name for book in review.books] == ["belowgrade", "Henrico County, Virginia"]
    assert review.books[0].digest == BOOK.digest
    assert review.digest not in {book.digest for book in review.books}
    assert settle(spec_of(SOCK), BOOK).review().digest == BOOK.digest


def test_the_ordinary_rule_book_reads_no_place() -> None:
    assert all("local" not in Path(rule.file).parts for rule in BOOK.rules)
    assert not any(rule.amended for rule in BOOK.rules)


# -- what a place may not do -----------------------------------------------------------------------


def place_with(tmp_path: Path, rules: str) -> Place:
    file = tmp_path / "elm-grove.yaml"
    head = "place: elm-grove\ntitle: Elm Grove\ncountry: us\n"
    examples = (
        "examples:\n  - {rule: slab.base, outcome: met, says: a, spec: {}}\n"
        "  - {rule: slab.base, outcome: not met, says: b, spec: {}}\n"
    )
    file.write_text(f"{head}rules:\n{rules}{examples}", encoding="utf-8")
    return read_place(file)


def refused(tmp_path: Path, rules: str) -> list[str]:
    with pytest.raises(Unreadable) as caught:
        by_the_law_of(place_with(tmp_path, rules), BOOK)
    return [str(fault) for fault in caught.value.faults]


PEOPLE = {
    "off": ("off: yes", "cannot be switched off"),
    "severity": ("severity: minor", "cannot be made less than critical"),
    "limit": (
        "require: {value: drain.trench_bottom_low, at least: drain.lowest_invert}\n    sources: common practice",
        "can only be made stricter",
    ),
    "exception": (
        "unless: [{require: {value: drain.present, is: yes}, sources: common practice}]",
        "takes no further exception",
    ),
}


@pytest.mark.parametrize(("change", "said"), PEOPLE.values(), ids=PEOPLE)
def test_what_protects_people_is_not_loosened(tmp_path: Path, change: str, said: str) -> None:
    rules = f"  - amends: drain.below-bearing\n    reason: custom\n    {change}\n"
    (fault,) = refused(tmp_path, rules)
    assert "drain.below-bearing protects people" in fault
    assert said in fault
    assert "elm-grove.yaml:5:" in fault


def test_what_is_critical_rests_on_no_summary(tmp_path: Path) -> None:
    rules = (
        "  - amends: drain.above-slab\n    reason: standard case\n"
        "    require: {value: drain.crown_high, below: levels.slab_underside}\n"
        "    sources: [{ref: din-4095, at: standard case}]\n"
    )
    (fault,) = refused(tmp_path, rules)
    assert "may not rest on a source that was not read" in fault


@pytest.mark.parametrize(
    ("rules", "said"),
    [
        ("  - {amends: drain.flatt, reason: a, off: yes}\n", "nearest known: drain.flat"),
        ("  - {amends: drain.vertical-budget, reason: a, off: yes}\n", "guards the remedy of"),
        (
            "  - amends: slab.base\n    reason: a\n    sources: common practice\n"
            "    require: {value: fabrics.each.kind, is: woven}\n",
            "not of each of fabrics",
        ),
    ],
)
def test_what_cannot_be_changed_is_said(tmp_path: Path, rules: str, said: str) -> None:
    assert any(said in fault for fault in refused(tmp_path, rules))


@pytest.mark.parametrize(
    ("rules", "said"),
    [
        ("  - {amends: drain.flat, off: yes}\n", "'reason' is missing"),
        ("  - {amends: drain.flat, reason: a}\n", "changes nothing"),
        ("  - {amends: drain.flat, reason: a, severity: grave}\n", "is not one of critical"),
        ("  - {amends: drain.flat, reason: a, severety: minor}\n", "nearest known: severity"),
        (
            "  - amends: drain.flat\n    reason: a\n    sources: house standard\n"
            "    require: {value: drain.slope, at least: 1 %}\n",
            "'sources' is missing",
        ),
    ],
)
def test_faults_of_a_place_stand_at_their_line(tmp_path: Path, rules: str, said: str) -> None:
    with pytest.raises(Unreadable) as caught:
        place_with(tmp_path, rules)
    assert any(said in str(fault) and ":5:" in str(fault) for fault in caught.value.faults)


def test_what_is_dropped_from_a_book_is_said(tmp_path: Path) -> None:
    place = place_with(tmp_path, "  - {amends: drain.crush, reason: all pipe is rigid, off: yes}\n")
    book: Rulebook = by_the_law_of(place, BOOK)
    assert book.rule("drain.crush") is None
    assert any("drain.crush" in note and "all pipe is rigid" in note for note in book.notes)


def test_the_page_of_a_rule_shows_what_a_place_changes() -> None:
    page = " ".join(
        CliRunner().invoke(app, ["why", "sump.size", "--place", "Chicago"]).output.split()
    )
    assert "amended by Chicago, Illinois: 18-29-1111.3.2 asks for a pit 30 in deep." in page
    assert page.index("at least 30 in") < page.index("at least 24 in")
    plain = CliRunner().invoke(app, ["why", "sump.size"]).output
    assert "amended" not in plain
    wrong = CliRunner().invoke(app, ["why", "sump.size", "--place", "chicaggo"])
    assert wrong.exit_code == 2
    assert "nearest known: chicago-il" in wrong.output
