"""A review as a text message."""

from __future__ import annotations

from typing import Any

from checker.judging.review_data import Caution, Finding, Review
from checker.showing.console import as_text
from checker.showing.short import short


def test_the_three_worst_come_first_then_what_is_open(review: Review) -> None:
    lines = as_text(short([review])).splitlines()
    assert lines == [
        "DANGER: Nobody goes in until a competent person has looked today.",
        "1. Drain too high to protect the floor: STOP, ask first; by stage drain",
        "2. No coat on a wall that holds back earth: none, needed one of dampproofing, "
        "waterproofing; by stage coating",
        "3. Ground falls too little away from the wall, east: off by 1.5 %; by stage final grade",
        # Four questions and one in brackets, which no single value would settle.
        "Quillwater Lane, lot 14: 4 questions. 20 met, 3 not met, 6 could not be judged. "
        "This is not a release.",
    ]


def test_a_fourth_fault_is_only_counted(review: Review, blank: Finding) -> None:
    more = tuple(
        blank._replace(rule=f"drain.{at}", outcome="not met", severity="minor") for at in "ab"
    )
    changed = _with(review, findings=review.findings + more)
    text = as_text(short([changed]))
    assert "5 not met" in text
    assert "drain.a" not in text
    assert text.count("by stage") == 3


def test_only_what_kills_is_told_of_the_safety_block(review: Review) -> None:
    changed = _with(review, cautions=(Caution("WARNING", "Mark the lines."),))
    assert "Mark the lines" not in as_text(short([changed]))


def test_a_spec_that_shows_nothing_is_no_clean_sheet(empty: Review) -> None:
    assert as_text(short([empty])).splitlines() == [
        "assembly 1: 0 questions. Nothing could be judged. This is not a release."
    ]


def test_what_was_measured_is_called_so(review: Review) -> None:
    assert "lot 14 as measured: 4 questions" in as_text(short([_with(review, basis="measured")]))


def test_text_from_a_spec_cannot_move_a_cursor_or_flood_a_phone(review: Review) -> None:
    hostile = review.findings[0]._replace(item="\x1b[2Jeast\n" + "x" * 5_000)
    lines = as_text(short([_with(review, findings=(hostile,))])).splitlines()
    assert len(lines) == 3
    assert "\x1b" not in "".join(lines)
    assert max(map(len, lines[:-1])) <= 300


def _with(review: Review, **changes: Any) -> Review:
    import dataclasses

    return dataclasses.replace(review, **changes)
