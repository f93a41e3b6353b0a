"""What is new stands in full, what is fixed in a line, and nothing hides what is still open."""

from __future__ import annotations

import dataclasses

from checker.judging.carried import as_earlier, compare
from checker.judging.review_data import MET, NOT_MET, Review
from checker.showing.carried_text import render_comparison
from checker.showing.console import as_text


def with_one(review: Review, number: int, **fields: object) -> Review:
    finding = review.of(NOT_MET)[number]
    other = finding._replace(**fields)
    findings = tuple(other if one is finding else one for one in review.findings)
    return dataclasses.replace(review, findings=findings)


def shown(before: Review, now: Review, width: int = 80) -> str:
    comparison = compare([as_earlier(before)], [now], "before.json")
    return as_text(render_comparison([now], comparison, width=width))


def test_nothing_new(review: Review) -> None:
    text = shown(review, review)
    assert "Compared with before.json" in text
    assert "\nNew: 0\n" in text
    assert "Fixed" not in text
    # Three that are not met, and six that are not shown.
    assert "\nCarried over: 9\n" in text


def test_what_is_new_stands_in_full(review: Review) -> None:
    before = with_one(review, 0, outcome=MET, compared=())
    text = shown(before, review)
    finding = review.of(NOT_MET)[0]
    new = text[text.index("New: 1") : text.index("Carried over")]
    for word in (
        finding.title,
        finding.compared[0].shown,
        finding.remedy,
        finding.rule,
        "before     met",
    ):
        assert word in new
    assert "Carried over: 8" in text


def test_a_changed_value_says_what_it_was(review: Review) -> None:
    was = review.of(NOT_MET)[0].compared[0]._replace(shown="4.1 %")
    text = shown(with_one(review, 0, compared=(was,)), review)
    assert "before     not met, 4.1 %" in text
    assert "Fixed" not in text


def test_a_question_that_is_new(review: Review) -> None:
    finding = next(one for one in review.findings if one.outcome == "not shown")
    findings = tuple(one for one in review.findings if one is not finding)
    text = shown(dataclasses.replace(review, findings=findings), review)
    assert f"{finding.severity}, not shown: {finding.title}" in text
    assert finding.missing[0] in text
    assert "before     not asked" in text


def test_what_is_fixed_and_what_was_not_asked_again(review: Review) -> None:
    first, second, _ = review.of(NOT_MET)
    now = with_one(review, 0, outcome=MET, compared=())
    now = dataclasses.replace(
        now, findings=tuple(one for one in now.findings if one.rule != second.rule)
    )
    text = shown(review, now, width=100)
    fixed = text[text.index("Fixed: 1") : text.index("No longer asked: 1")]
    assert f"({first.rule}): was not met" in fixed
    dropped = text[text.index("No longer asked: 1") : text.index("Carried over")]
    assert f"({second.rule})" in dropped
    assert "not asked again" in " ".join(dropped.split())


def test_a_variance_is_no_cure(review: Review) -> None:
    text = " ".join(shown(review, with_one(review, 0, varied="V-7")).split())
    assert "now not met, allowed by variance V-7" in text
    assert "Fixed" not in text


def test_the_safety_block_and_the_last_line_stay(review: Review) -> None:
    text = shown(review, review)
    for caution in review.cautions:
        assert caution.text in " ".join(text.split())
    assert text.endswith("20 met, 3 not met, 6 could not be judged. This is not a release.\n")


def test_several_assemblies_are_named(review: Review) -> None:
    other = dataclasses.replace(review, assembly="Quillwater Lane, lot 16")
    comparison = compare([as_earlier(review)], [review, other], "before.json")
    text = as_text(render_comparison([review, other], comparison))
    assert "of         Quillwater Lane, lot 16 (specs/quillwater.yaml)" in text
    assert "Quillwater Lane, lot 16 was not reviewed before" in text


def test_no_line_is_wider_than_asked(review: Review) -> None:
    text = shown(with_one(review, 0, outcome=MET, compared=()), review, width=60)
    assert max(len(line) for line in text.split("\n")[:-2]) <= 60
