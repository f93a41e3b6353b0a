"""What a sheet holds: extracts counted by hand, margins, and calculations that can be followed."""

from __future__ import annotations

from checker.judging.review_data import Finding, Review
from checker.showing.report.contents import contents_of, margin
from checker.showing.report.extracts import Extract, extracts_of
from tests.showing.report.conftest import Pairs


def test_extracts_count_what_each_trade_and_stage_must_answer(review: Review) -> None:
    # Faults: grading at final grade, coating at coating, drain at drain. Questions about a value:
    # high water (desk), what the coat may touch (coating), opening and guard (drain), whose rules
    # are all of the drain trade; the fifth, in brackets, is about no value.
    assert extracts_of(review) == [
        Extract("trade", "coating", 1, 0),
        Extract("trade", "drain", 1, 4),
        Extract("trade", "grading", 1, 0),
        Extract("stage", "desk", 0, 1),
        Extract("stage", "coating", 1, 1),
        Extract("stage", "drain", 1, 2),
        Extract("stage", "final_grade", 1, 0),
    ]


def test_margin_is_told_only_where_it_is_small(review: Review, blank: Finding) -> None:
    tight = next(one for one in review.findings if one.tight)
    assert margin(tight) == "tight: 90.68 ft, needed at least underside of footing 90.67 ft, " + (
        "1/8 in left"
    )
    assert margin(tight._replace(compared=())) == (
        "tight: by less than its readings can be trusted to"
    )
    assert margin(blank._replace(by_exception=True)) == "by an exception"
    assert margin(blank) == ""


def test_calculation_of_a_fault_ends_in_what_it_compares(bad: Pairs) -> None:
    ((spec, review),) = bad
    sheet = contents_of(spec, review, 1, accepted=False)
    (high,) = [one for one in sheet.faults if one.finding.rule == "drain.above-slab"]
    assert [step.number for step in high.steps] == list(range(1, len(high.steps) + 1))
    last = high.steps[-1]
    assert last.path == "drain.crown_high"
    # 91.80 + (4.215 - 0.12)/12 = 92.1412 ft = 28.0847 m
    gives = dict(row for row in last.rows if row[0])["gives"]
    assert gives.startswith("92.14")
    assert "28.084" in gives


def test_calculation_of_an_item_is_that_of_the_item(bad: Pairs) -> None:
    ((spec, review),) = bad
    sheet = contents_of(spec, review, 1, accepted=False)
    slopes = {f.finding.item: f for f in sheet.faults if f.finding.rule == "grade.slope"}
    assert set(slopes) == {"south", "west"}
    for side, fault in slopes.items():
        assert fault.steps[-1].path == f"grade.sides.{side}.slope"


def test_calculation_is_shown_for_every_quantity_that_is_missed(bad: Pairs) -> None:
    ((spec, review),) = bad
    for fault in contents_of(spec, review, 1, accepted=False).faults:
        compared = {one.path for one in fault.finding.compared if one.is_quantity}
        assert compared <= {step.path for step in fault.steps}, fault.finding.rule


def test_waiting_findings_name_the_questions_they_wait_for(bad: Pairs) -> None:
    ((spec, review),) = bad
    sheet = contents_of(spec, review, 1, accepted=False)
    paths = {one.number: one.question.path for one in (*sheet.asked_first, *sheet.asked_later)}
    named = [one for one in sheet.waiting if one.questions]
    assert named
    for one in named:
        assert {paths[number] for number in one.questions} <= set(one.finding.missing)


def test_what_lies_at_its_limit_is_said_to(review: Review) -> None:
    tight = next(one for one in review.findings if one.tight)
    (compared,) = tight.compared
    limit = tight._replace(compared=(compared._replace(room="0 in"),))
    assert margin(limit) == "at the limit: 90.68 ft"
