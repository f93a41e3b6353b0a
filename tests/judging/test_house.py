"""The house file: where it is found, what it settles, and what it may not."""

from __future__ import annotations

from pathlib import Path

import pytest
from typer.testing import CliRunner

from checker.command import app
from checker.judging.house import find_house, load_house
from checker.judging.judge import review as judge
from checker.judging.review_data import MET, NOT_MET
from checker.judging.standing import HOUSE_STANDARD
from checker.reading.reader import load_spec
from tests.judging.houses import BOOK, LOT, faults, finding, reviewed, settled, write

SPECS = Path(__file__).parents[2] / "specs"

HOUSE = "house: Harrow and Fenn Homes\n"
WITH_BOOK = HOUSE + "rules: [rules]\n"
RULE = """\
- id: drain.house-fall
  title: Drain flatter than the house standard
  severity: major
  how_often: common
  stage: drain
  trade: drain
  protects: building
  applies: [{value: drain.present, is: yes}]
  require: {value: drain.flattest_slope, at least: 1/8 in/ft}
  sources: house standard
  rationale: Silt.
  remedy: Give it more fall.
  examples:
    met: [{says: steep, spec: {drain: {present: yes, slope: 1/8 in/ft, run_long: 72 ft}}}]
    not met: [{says: flat, spec: {drain: {present: yes, slope: 1/16 in/ft, run_long: 72 ft}}}]
"""
COVER = """\
- amends: stone.cover
  reason: pipe was crushed on two lots
  require: {value: stone.over_crown, at least: 8 in}
  sources: house standard
"""
SEVEN = LOT + "stone: {cover: 7 in}\n"


# -- where it is found -----------------------------------------------------------------------------


def test_the_nearest_file_upward_counts(tmp_path: Path) -> None:
    lot = write(tmp_path, belowgrade=HOUSE, lot=LOT)
    assert find_house(str(lot)) == tmp_path / "belowgrade.yaml"
    (lot.parent / "belowgrade.yaml").write_text("house: Nearer\n", encoding="utf-8")
    assert find_house(str(lot)) == lot.parent / "belowgrade.yaml"


def test_the_search_ends_at_the_top_of_a_checkout(tmp_path: Path) -> None:
    (tmp_path / "belowgrade.yaml").write_text(HOUSE, encoding="utf-8")
    inner = tmp_path / "checkout"
    inner.mkdir()
    assert find_house(str(write(inner, lot=LOT))) is None
    (inner / "belowgrade.yaml").write_text(HOUSE, encoding="utf-8")
    assert find_house(str(inner / "lots" / "lot-14.yaml")) == inner / "belowgrade.yaml"


def test_the_search_ends_at_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "belowgrade.yaml").write_text(HOUSE, encoding="utf-8")
    home = tmp_path / "home"
    home.mkdir()
    (home / "lot.yaml").write_text(LOT, encoding="utf-8")
    assert find_house(str(home / "lot.yaml")) == tmp_path / "belowgrade.yaml"
    monkeypatch.setenv("HOME", str(home))
    assert find_house(str(home / "lot.yaml")) is None


def test_a_folder_that_everybody_may_write_to_settles_nothing(tmp_path: Path) -> None:
    lot = write(tmp_path, belowgrade=HOUSE, lot=LOT)
    tmp_path.chmod(0o777)
    assert find_house(str(lot)) is None


def test_whoever_submits_does_not_bring_the_rules(tmp_path: Path) -> None:
    lot = write(tmp_path, belowgrade=HOUSE, lot=LOT)
    beside = lot.parent / "belowgrade.yaml"
    beside.write_text("house: The sub's own\noff: [{rule: drain.crush, reason: no}]\n", "utf-8")
    assert find_house(str(lot), submittal=True) == tmp_path / "belowgrade.yaml"
    lot.write_text(LOT.replace("paper: house", "paper: submittal"), encoding="utf-8")
    assert finding(reviewed(lot), "drain.crush")


def test_standard_input_has_no_house(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write(tmp_path, belowgrade=HOUSE, lot=LOT)
    monkeypatch.chdir(tmp_path)
    assert find_house("standard input") is None


def test_without_a_house_a_review_is_what_it_was(tmp_path: Path) -> None:
    (spec,) = load_spec(write(tmp_path, lot=LOT))
    assert settled(tmp_path / "lots" / "lot-14.yaml").review() == judge(spec, BOOK)


# -- what it settles -------------------------------------------------------------------------------


def test_a_rule_of_the_house_has_the_standing_of_its_standard(tmp_path: Path) -> None:
    found = finding(
        reviewed(write(tmp_path, belowgrade=WITH_BOOK, book=RULE, lot=LOT)), "drain.house-fall"
    )
    assert (found.outcome, found.standing, found.sources) == (NOT_MET, HOUSE_STANDARD, ())
    assert found.amended == ()


def test_only_a_house_may_cite_its_standard(tmp_path: Path) -> None:
    from checker.judging.rulebook import load_rulebook
    from checker.reading.faults import Unreadable

    write(tmp_path, book=RULE)
    with pytest.raises(Unreadable, match="'sources' is missing"):
        load_rulebook(tmp_path / "rules")


def test_an_amended_rule_asks_what_the_house_asks_and_says_who_and_why(tmp_path: Path) -> None:
    lot = write(tmp_path, belowgrade=WITH_BOOK, book=COVER, lot=SEVEN)
    found = finding(reviewed(lot), "stone.cover")
    assert (found.outcome, found.compared[0].needed) == (NOT_MET, "at least 8 in")
    assert [tuple(one) for one in found.amended] == [
        ("Harrow and Fenn Homes", "pipe was crushed on two lots")
    ]
    (spec,) = load_spec(lot)
    built_in = finding(judge(spec, BOOK), "stone.cover")
    assert (built_in.outcome, built_in.amended) == (MET, ())


def test_law_that_a_house_goes_below_is_still_told(tmp_path: Path) -> None:
    # 5 in is enough for this house and not for the code its lot is built by.
    lot = LOT.replace("job: {", 'job: {codes: [{id: IRC, edition: "2018"}], ')
    file = write(
        tmp_path,
        belowgrade=WITH_BOOK,
        book=COVER.replace("8 in", "4 in"),
        lot=lot + "stone: {cover: 5 in}\n",
    )
    found = finding(reviewed(file), "stone.cover")
    assert found.outcome == MET
    assert ("not met", "law here") in {
        (other.outcome, source.standing) for other in found.elsewhere for source in other.cited
    }


def test_the_law_of_the_place_stands_beside_what_the_house_asks(tmp_path: Path) -> None:
    # Massachusetts asks for laps of 12 in. A house cannot ask for less.
    book = "- amends: slab.retarder-lap\n  reason: short rolls\n  sources: house standard\n  require: {value: slab.retarder_lap, at least: 4 in}\n"
    lot = LOT + "slab: {retarder: yes, retarder_lap: 6 in}\n"
    house = WITH_BOOK + "place: massachusetts\n"
    found = finding(
        reviewed(write(tmp_path, belowgrade=house, book=book, lot=lot)), "slab.retarder-lap"
    )
    assert found.outcome == NOT_MET
    assert [one.by for one in found.amended] == ["Massachusetts", "Harrow and Fenn Homes"]


def test_a_severity_alone_is_changed(tmp_path: Path) -> None:
    book = "- {amends: drain.flat, reason: silt, severity: major}\n"
    found = finding(
        reviewed(write(tmp_path, belowgrade=WITH_BOOK, book=book, lot=LOT)), "drain.flat"
    )
    assert found.severity == "major"
    assert (
        finding(judge(load_spec(tmp_path / "lots/lot-14.yaml")[0], BOOK), "drain.flat").severity
        == "minor"
    )


def test_what_is_switched_off_is_not_asked_and_is_said(tmp_path: Path) -> None:
    house = HOUSE + "off: [{rule: drain.flat, reason: level is allowed}]\n"
    review = reviewed(write(tmp_path, belowgrade=house, lot=LOT))
    assert all(one.rule != "drain.flat" for one in review.findings)
    assert any("drain.flat" in note and "level is allowed" in note for note in review.notes)


def test_the_place_of_the_house_is_taken_where_the_spec_names_none(tmp_path: Path) -> None:
    lot = write(tmp_path, belowgrade=HOUSE + "place: henrico-va\n", lot=LOT)
    assert "Henrico County, Virginia" in [book.name for book in settled(lot).rulebook.books]
    lot.write_text(LOT.replace("job: {", "job: {jurisdiction: Town of Marrowfield, "), "utf-8")
    assert "Henrico County, Virginia" not in [book.name for book in settled(lot).rulebook.books]


def test_the_house_decides_what_holds(tmp_path: Path) -> None:
    for severity in ("critical", "minor"):
        lot = write(tmp_path, belowgrade=f"{HOUSE}hold_at: {severity}\n", lot=LOT)
        load_house.cache_clear()
        assert reviewed(lot).hold_at == severity


def test_the_digest_changes_with_the_house_and_with_its_book(tmp_path: Path) -> None:
    digests = set()
    for house, book in (
        (WITH_BOOK, RULE),
        (WITH_BOOK + "hold_at: minor\n", RULE),
        (WITH_BOOK, COVER),
    ):
        load_house.cache_clear()
        review = reviewed(write(tmp_path, belowgrade=house, book=book, lot=LOT))
        digests |= {review.digest, review.books[-1].digest}
    assert len(digests) == 6


# -- what is wrong with it -------------------------------------------------------------------------

WRONG = {
    "no house": ("rules: [rules]\n", "1:1: 'house' is missing"),
    "a key": (HOUSE + "hold_att: minor\n", "2:1: there is no 'hold_att' here (nearest known: hold_at)"),
    "a word": (HOUSE + "hold_at: grave\n", "2:1: 'grave' is not one of critical, major, minor"),
    "a shape": (HOUSE + "approvers: K. Fenn\n", "2:1: approvers: a list is wanted"),
    "a key again": (HOUSE + HOUSE, "2:1: 'house' stands here twice"),
    "a place": (HOUSE + "place: henrico\nrules: [none]\n", "3:9: there is no rule file in 'none'"),
    "no place": (HOUSE + "place: henrico-vb\n", "nearest known: henrico-va"),
    "outside": (HOUSE + "rules: [../other]\n", "2:9: '../other' leads out of the folder"),
    "no reason": (HOUSE + "off: [{rule: drain.flat}]\n", "'reason' is missing"),
    "no rule": (HOUSE + "off: [{rule: drain.flatt, reason: a}]\n", "nearest known: drain.flat"),
    "people": (
        HOUSE + "off: [{rule: drain.below-bearing, reason: a}]\n",
        "2:8: drain.below-bearing protects people and cannot be switched off",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("house", "said"), WRONG.values(), ids=WRONG)
def test_a_fault_stands_at_its_place(tmp_path: Path, house: str, said: str) -> None:
    found = faults(write(tmp_path, belowgrade=house, lot=LOT))
    assert any(said in fault for fault in found), found
    assert all("belowgrade.yaml:" in fault for fault in found)


def test_a_rule_of_the_house_may_not_take_the_name_of_another(tmp_path: Path) -> None:
    book = RULE.replace("drain.house-fall", "drain.flat")
    (fault,) = faults(write(tmp_path, belowgrade=WITH_BOOK, book=book, lot=LOT))
    assert "two rules are called 'drain.flat'" in fault
    assert "own.yaml:1:" in fault


def test_a_stricter_limit_for_people_is_welcome(tmp_path: Path) -> None:
    rule = BOOK.rule("backfill.before-brace")
    assert rule is not None
    assert rule.protects == "people"
    book = "- amends: excavation.egress\n  reason: a\n  severity: minor\n"
    (fault,) = faults(write(tmp_path, belowgrade=WITH_BOOK, book=book, lot=LOT))
    assert "cannot be made less than" in fault


# -- the command -----------------------------------------------------------------------------------


def test_a_house_at_fault_is_said_once_and_ends_with_2(tmp_path: Path) -> None:
    lot = write(tmp_path, belowgrade="hose: a\n", lot=LOT + "---\n" + LOT)
    (lot.parent / "other.yaml").write_text(LOT, encoding="utf-8")
    run = CliRunner().invoke(app, ["review", str(tmp_path)])
    assert run.exit_code == 2
    assert run.output.count("'house' is missing") == 1


def test_the_example_house_is_sound_and_its_standard_is_judged_by_it() -> None:
    (spec,) = load_spec(SPECS / "standards" / "HF-FDN-02.yaml")
    from checker.judging.settle import settle

    found = settle(spec, BOOK)
    assert found.house
    assert found.house.name == "Harrow and Fenn Homes"
    assert finding(found.review(), "drain.house-fall").outcome == MET


def test_the_examples_of_its_rules_come_out_as_they_say() -> None:
    from checker.judging.rulebook import Rulebook
    from tests.support import spec_of

    house = load_house(SPECS / "standards" / "belowgrade.yaml")
    assert house.rules
    for rule in house.rules:
        for side in (MET, NOT_MET):
            for example in rule.raw["examples"][side]:
                (found,) = judge(spec_of(example["spec"]), Rulebook((rule,), "")).findings
                assert found.outcome == side


def test_every_form_of_a_review_knows_the_rules_of_a_house(tmp_path: Path) -> None:
    import json

    lot = write(tmp_path, belowgrade=WITH_BOOK, book=RULE, lot=LOT)
    for form in ("text", "json", "jsonl", "html", "sarif", "junit"):
        run = CliRunner().invoke(app, ["review", str(lot), "--as", form])
        assert run.exit_code == 1
        assert "drain.house-fall" in run.output
    sarif = json.loads(CliRunner().invoke(app, ["review", str(lot), "--as", "sarif"]).stdout)
    rules = sarif["runs"][0]["tool"]["driver"]["rules"]
    assert "drain.house-fall" in {rule["id"] for rule in rules}


def test_the_report_as_json_obeys_its_schema_with_all_that_a_house_adds(tmp_path: Path) -> None:
    import json

    from jsonschema import Draft202012Validator

    from checker.data import load_json
    from checker.showing.json_report import as_json
    from tests.judging.houses import VARIANCE

    house = VARIANCE + "rules: [rules]\nplace: henrico-va\n"
    review = reviewed(write(tmp_path, belowgrade=house, book=COVER, lot=SEVEN))
    report = json.loads(as_json([review]))
    Draft202012Validator(load_json("review.schema.json")).validate(report)
    (one,) = report["reviews"]
    assert [book["name"] for book in one["books"]] == [
        "belowgrade", "Henrico County, Virginia", "Harrow and Fenn Homes",
    ]  # fmt: skip
    assert one["variances"][0]["state"] == "in force"
    assert one["day"] == "2031-05-01"
    by_rule = {each["rule"]: each for each in one["findings"]}
    assert by_rule["drain.flat"]["varied"] == "V-07"
    assert by_rule["drain.flat"]["open"] is False
    assert by_rule["stone.cover"]["amended"][0]["by"] == "Harrow and Fenn Homes"
