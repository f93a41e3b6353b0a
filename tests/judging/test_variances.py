"""Variances: in force only from the house's own file, for one job, and for a time."""

from __future__ import annotations

from pathlib import Path

import pytest
from typer.testing import CliRunner

from checker.command import app
from checker.judging.day import day_of, read_day
from checker.judging.house import load_house
from checker.judging.review_data import MET, NOT_MET
from tests.judging.houses import LOT, VARIANCE, faults, finding, reviewed, write
from tests.support import spec_of

RULE = "drain.flat"


def varied(tmp_path: Path, house: str = VARIANCE, lot: str = LOT, day: str = "") -> str:
    load_house.cache_clear()
    return finding(reviewed(write(tmp_path, belowgrade=house, lot=lot), day), RULE).varied


def test_what_is_covered_stays_visible_and_counts_no_more(tmp_path: Path) -> None:
    # drain.flat is minor and the only fault looked at here.
    review = reviewed(write(tmp_path, belowgrade=VARIANCE, lot=LOT))
    found = finding(review, RULE)
    assert (found.outcome, found.varied, found.open) == (NOT_MET, "V-07", False)
    (allowance,) = review.variances
    assert (allowance.id, allowance.state, allowance.by) == ("V-07", "in force", "K. Fenn")


def test_a_variance_takes_a_fault_out_of_what_holds(tmp_path: Path) -> None:
    import dataclasses

    review = reviewed(write(tmp_path, belowgrade=VARIANCE, lot=LOT))
    met = next(one for one in review.findings if one.outcome == MET)
    alone = dataclasses.replace(review, findings=(met, finding(review, RULE)))
    assert not alone.holds("minor")
    bare = dataclasses.replace(alone, findings=(met, finding(review, RULE)._replace(varied="")))
    assert bare.holds("minor")


@pytest.mark.parametrize(
    ("day", "wanted"),
    [("2031-04-14", ""), ("2031-04-15", "V-07"), ("2031-07-15", "V-07"), ("2031-07-16", "")],
)
def test_it_counts_from_its_first_day_to_its_last(tmp_path: Path, day: str, wanted: str) -> None:
    assert varied(tmp_path, day=day) == wanted


def test_the_day_after_is_told(tmp_path: Path) -> None:
    review = reviewed(write(tmp_path, belowgrade=VARIANCE, lot=LOT), "2031-07-16")
    assert [one.state for one in review.variances] == ["expired 2031-07-15"]
    assert review.day == "2031-07-16"


@pytest.mark.parametrize(
    ("scope", "wanted"),
    [
        ('{lot: "14"}', "V-07"),
        ('{lot: "15"}', ""),
        ("{job: quillwater lane}", "V-07"),
        ("{job: Elm Grove}", ""),
        ('{job: Quillwater Lane, lot: "15"}', ""),
        ('{lot: "14", assembly: walk-out wall}', ""),
        ('{lot: "14", item: SW}', ""),
    ],
)
def test_its_scope_is_matched_to_the_job(tmp_path: Path, scope: str, wanted: str) -> None:
    house = VARIANCE.replace('{job: Quillwater Lane, lot: "14"}', scope)
    assert varied(tmp_path, house) == wanted


def test_it_reaches_one_item_of_a_list(tmp_path: Path) -> None:
    house = VARIANCE.replace("drain.flat", "grade.slope").replace(
        'lot: "14"', 'lot: "14", item: east'
    )
    sides = "grade: {sides: [{id: east, fall: 2 in, in_distance: 10 ft}, {id: west, fall: 2 in, in_distance: 10 ft}]}\n"
    review = reviewed(write(tmp_path, belowgrade=house, lot=LOT + sides))
    assert {one.item: one.varied for one in review.findings if one.rule == "grade.slope"} == {
        "east": "V-07",
        "west": "",
    }


def test_what_is_not_shown_is_not_allowed(tmp_path: Path) -> None:
    lot = LOT.replace("slope: 1/32 in/ft, run_long: 72 ft", "diameter: 4 in")
    load_house.cache_clear()
    found = finding(reviewed(write(tmp_path, belowgrade=VARIANCE, lot=lot)), RULE)
    assert (found.outcome, found.varied) == ("not shown", "")


def test_without_a_day_nothing_is_in_force(tmp_path: Path) -> None:
    lot = LOT.replace(", as_of: 2031-05-01", "")
    assert varied(tmp_path, lot=lot) == ""
    assert "no day is known" in reviewed(tmp_path / "lots" / "lot-14.yaml").variances[0].state


WRONG = {
    "unknown rule": ("drain.flat", "drain.flatt", "nearest known: drain.flat"),
    "for people": ("drain.flat", "drain.below-bearing", "protects people: no variance covers it"),
    "no reason": ("    reason: no room above the bearing line\n", "", "'reason' is missing"),
    "no approver": ("    approved_by: K. Fenn\n", "", "'approved_by' is missing"),
    "not an approver": ("approved_by: K. Fenn", "approved_by: J. Doe", "is not among the approvers: K. Fenn"),
    "no date": ("    expires: 2031-07-15\n", "", "'expires' is missing"),
    "a date that is none": ("2031-07-15", "2031-07-32", "there is no day '2031-07-32'"),
    "a date in words": ("2031-07-15", "July", "write it as '2031-04-15'"),
    "over before it begins": ("expires: 2031-07-15", "expires: 2031-01-15", "before it is issued"),
    "for every job": ('{job: Quillwater Lane, lot: "14"}', "{item: SW}", "neither a job nor a lot"),
}  # fmt: skip


@pytest.mark.parametrize(("old", "new", "said"), WRONG.values(), ids=WRONG)
def test_what_can_never_be_in_force_is_a_fault(
    tmp_path: Path, old: str, new: str, said: str
) -> None:
    assert old in VARIANCE
    (fault,) = faults(write(tmp_path, belowgrade=VARIANCE.replace(old, new), lot=LOT))
    assert said in fault
    # Where a key is missing or out of line: inside the variance, which begins at line 4.
    assert int(fault.split("belowgrade.yaml:")[1].split(":")[0]) >= 4


REQUEST = LOT.replace("paper: house", "paper: submittal") + (
    "variances: [{id: R-1, rule: RULE, reason: no room, approved_by: K. Fenn, expires: 2039-01-01}]\n"
)


@pytest.mark.parametrize(
    ("rule", "said"),
    [
        ("drain.flat", "requested, not in force"),
        ("drain.below-bearing", "protects people"),
        ("drain.flatt", "there is no rule 'drain.flatt'"),
    ],
)
def test_a_submittal_only_asks(tmp_path: Path, rule: str, said: str) -> None:
    review = reviewed(write(tmp_path, lot=REQUEST.replace("RULE", rule)))
    (request,) = review.variances
    assert request.state.startswith("requested, not in force")
    assert said in request.state
    assert not any(one.varied for one in review.findings)


# -- the day ---------------------------------------------------------------------------------------


def test_the_day_is_as_of_else_the_latest_in_the_spec() -> None:
    seen = {"value": "yes", "how": "measured", "by": "R. Halloway", "date": "2031-04-20"}
    spec = {"wall": {"poured": "2031-04-11"}, "drain": {"present": seen}}
    assert day_of(spec_of(spec)) == "2031-04-20"
    assert day_of(spec_of({**spec, "job": {"as_of": "2031-04-01"}})) == "2031-04-01"
    assert day_of(spec_of({"drain": {"present": "yes"}})) == ""
    asked = {"variances": [{"id": "R-1", "expires": "2039-01-01"}]}
    assert day_of(spec_of({**spec, **asked})) == "2031-04-20"


@pytest.mark.parametrize("text", ["2031-02-29", "today", "31-07-02", "2031-7-2", "20310702"])
def test_a_day_that_is_none_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="day"):
        read_day(text)


def test_the_command_names_the_day_and_the_variance(tmp_path: Path) -> None:
    lot = write(tmp_path, belowgrade=VARIANCE, lot=LOT)
    load_house.cache_clear()
    held = CliRunner().invoke(app, ["review", str(lot)]).output
    assert "as of 2031-05-01" in held
    assert "V-07 allows" in " ".join(held.split())
    later = CliRunner().invoke(app, ["review", str(lot), "--on", "2031-07-16"]).output
    assert "as of 2031-07-16" in later
    assert "V-07 allows" not in " ".join(later.split())
    assert "expired 2031-07-15" in later
