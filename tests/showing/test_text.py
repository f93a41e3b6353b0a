"""A review as text, held to reviews that were built by hand."""

from __future__ import annotations

import dataclasses
import random

import pytest

from checker.judging.review_data import (
    DOES_NOT_APPLY,
    MET,
    NOT_MET,
    NOT_SHOWN,
    At,
    Caution,
    Compared,
    Finding,
    Question,
    Review,
)
from checker.showing.console import as_text
from checker.showing.text import by_weight, closing, render

NOT_A_RELEASE = "This is not a release."


def shown(*reviews: Review, width: int = 80, accepted: bool = False) -> str:
    return as_text(render(reviews, width=width, accepted=accepted))


def flat(text: str) -> str:
    """The words alone, so that a line break is no matter."""
    return " ".join(text.split())


def block(text: str, title: str) -> str:
    """The lines from one that begins with a title to the next blank one."""
    lines = text.splitlines()
    first = next(number for number, one in enumerate(lines) if one.startswith(title))
    last = lines.index("", first)
    return "\n".join(lines[first:last])


def test_safety_stands_before_every_finding(review: Review) -> None:
    text = shown(review)
    assert text.index("DANGER   Nobody goes in") < text.index("WARNING  Have buried")
    assert text.index("NOTICE   The local code") < text.index("Not met")


def test_at_most_three_safety_lines_stand_on_top_and_none_is_lost(review: Review) -> None:
    more = (*review.cautions, Caution("CAUTION", "Window wells are falls."))
    text = shown(dataclasses.replace(review, cautions=more))
    assert text.index("Window wells are falls.") > text.index("Not met")
    assert text.count("Window wells are falls.") == 1


def test_worst_and_commonest_come_first(review: Review) -> None:
    text = shown(review)
    places = [
        text.index(title)
        for title in (
            "1.  critical: Drain too high to protect the floor",
            "2.  critical: No coat on a wall that holds back earth",
            "3.  major: Ground falls too little away from the wall, east",
        )
    ]
    assert places == sorted(places)


def test_order_is_severity_then_frequency_whatever_order_they_came_in(blank: Finding) -> None:
    wanted = [
        blank._replace(severity=severity, how_often=how_often)
        for severity in ("critical", "major", "minor")
        for how_often in ("common", "known", "rare")
    ]
    mixed = list(wanted)
    random.Random(5).shuffle(mixed)
    assert mixed != wanted
    assert by_weight(mixed) == wanted


def test_finding_shows_its_numbers_places_standing_and_remedy(review: Review) -> None:
    lines = block(shown(review), "1.  critical").splitlines()
    assert lines[:7] == [
        "1.  critical: Drain too high to protect the floor",
        "    shown      91.92 ft (crown of the pipe at its highest corner)",
        "    needed     below underside of slab 91.67 ft",
        "    off by     3 in",
        "    where      line 41, drain.corners.NE.invert: 91.58 (from SUB-03 p2, on",
        "               paper)",
        "               line 12, levels.slab_underside: 91.67",
    ]
    text = flat("\n".join(lines))
    assert "says common practice: no code is cited for it why Water stands" in text
    assert "differs Some counties accept a pipe that rests on the footing." in text
    assert "STOP There is no room to lower it" in text
    assert " do " not in text.replace("Do not", "")
    assert "assumed outside diameter of the pipe: 4.215 in, from the table of pipes" in text
    assert (
        "elsewhere Ontario Building Code 2012 9.14.3.3(1): met, "
        "needed at most top of footing 91.67 ft"
    ) in text
    assert "rule drain.above-slab; trade drain; last cheap to put right at stage drain" in text


def test_source_is_shown_with_its_standing_and_how_far_it_was_read(review: Review) -> None:
    text = flat(block(shown(review), "3.  major"))
    assert (
        "says International Residential Code 2018 R401.3 (law here; as quoted elsewhere): "
        "Ground falls 6 in within the first 10 ft from the wall. why"
    ) in text
    assert "do Raise the ground at the wall by 1.1 in." in text
    assert "STOP" not in text
    assert "safety Mark buried lines before regrading." in text


def test_safety_text_of_a_finding_that_stands_on_top_is_not_said_again(review: Review) -> None:
    said = (*review.cautions[:2], Caution("CAUTION", "Mark buried lines before regrading."))
    text = shown(dataclasses.replace(review, cautions=said))
    assert text.count("Mark buried lines before regrading.") == 1


def test_comparisons_that_hold_are_not_shown_as_faults(review: Review, blank: Finding) -> None:
    two = (
        Compared("a.b", "first", NOT_MET, "1 in", "at least 2 in", "1 in", "", False),
        Compared("a.c", "second", MET, "3 in", "at least 2 in", "", "1 in", False),
        Compared("a.d", "third", NOT_MET, "4 in", "at least 6 in", "2 in", "", False),
    )
    finding = blank._replace(outcome=NOT_MET, compared=two)
    text = shown(dataclasses.replace(review, findings=(finding,)))
    assert text.index("1 in (first)") < text.index("4 in (third)")
    assert "second" not in text


def test_many_places_are_cut_short_and_counted(review: Review) -> None:
    finding = review.of(NOT_MET)[0]
    many = finding._replace(places=finding.places[:1] * 9)
    text = shown(dataclasses.replace(review, findings=(many,)))
    assert text.count("line 77, grade.sides.east.fall") == 6
    assert "and 3 more" in text


def test_place_in_another_file_is_said_with_its_name(review: Review, blank: Finding) -> None:
    places = (
        At("drain.slope", "slope", "1 %", 7, 3, "", "", "specs/quillwater.yaml"),
        At("drain.diameter", "pipe size", "3 in", 9, 3, "", "", "standards/HF-FDN-02.yaml"),
    )
    short = blank._replace(outcome=NOT_MET, places=places)
    text = shown(dataclasses.replace(review, findings=(short,)))
    assert "where      line 7, drain.slope: 1 %\n" in text
    assert "           standards/HF-FDN-02.yaml line 9, drain.diameter: 3 in\n" in text


def test_what_the_stage_buries_stands_between_safety_and_faults(review: Review) -> None:
    text = shown(
        dataclasses.replace(review, buried=("The soil under the footing.", "The sleeves."))
    )
    heading = text.index("After this stage you can no longer change:\n  - The soil under")
    assert text.index("NOTICE") < heading < text.index("  - The sleeves.") < text.index("Not met")
    assert "After this stage" not in shown(review)


def test_review_by_what_was_measured_says_so_in_its_head(review: Review) -> None:
    assert "judged by what was measured" in shown(dataclasses.replace(review, basis="measured"))
    assert "measured" not in block(shown(review), "Review of")


def open_paper(blank: Finding) -> dict[str, Finding]:
    """One finding that is not shown for each of what decides whether it is folded."""
    kinds = {
        "minor.old": ("minor", "building", "desk"),
        "record.old": ("major", "record", "forms"),
        "minor.now": ("minor", "building", "drain"),
        "major.old": ("major", "building", "desk"),
        "grave.old": ("critical", "record", "desk"),
    }
    return {
        rule: blank._replace(
            rule=rule, outcome=NOT_SHOWN, severity=severity, protects=protects, stage=stage,
            missing=(f"value.{rule}",),
        )
        for rule, (severity, protects, stage) in kinds.items()
    }  # fmt: skip


def test_older_paper_is_folded_into_one_line_when_a_stage_is_asked_for(
    review: Review, blank: Finding
) -> None:
    findings = (blank, *open_paper(blank).values())
    questions = tuple(
        Question(
            f"value.{one.rule}", f"title {one.rule}", "", one.severity, one.stage, (one.rule,), ""
        )
        for one in findings[1:]
    )
    of_all = dataclasses.replace(review, findings=findings, questions=questions)
    by_stage = flat(shown(dataclasses.replace(of_all, by="drain", stage="drain")))
    assert "Older open paper: 2 findings not shown (minor.old, record.old)." in by_stage
    assert "title minor.old" not in by_stage
    assert "value.record.old" not in by_stage
    for rule in ("minor.now", "major.old", "grave.old"):
        assert f"title {rule}" in by_stage
    assert "5 could not be judged" in by_stage
    whole = flat(shown(of_all))
    assert "Older open paper" not in whole
    assert all(f"title {one.rule}" in whole for one in findings[1:])


def test_a_value_that_something_newer_waits_for_too_is_asked_for(
    review: Review, blank: Finding
) -> None:
    kinds = open_paper(blank)
    rules = ("minor.old", "major.old")
    both = Question("stone.kind", "kind of stone", "", "major", "desk", rules, "")
    findings = tuple(kinds[rule]._replace(missing=("stone.kind",)) for rule in rules)
    text = shown(
        dataclasses.replace(review, by="drain", stage="drain", findings=findings, questions=(both,))
    )
    assert "kind of stone" in text


def test_questions_name_the_value_who_waits_and_what_the_spec_says(review: Review) -> None:
    text = shown(review)
    assert "Questions: 4 values not shown" in text
    first = flat(text[text.index("Q1.") : text.index("Q2.")])
    assert first == (
        "Q1. major: seasonal high water (levels.seasonal_high_water) "
        "ask How high does the water stand? "
        'note the spec says "by others" '
        "waiting site.high-water-missing, levels.floor-near-water; by stage desk"
    )


def test_minor_questions_are_folded_into_one(review: Review) -> None:
    text = shown(review)
    assert "Q3" not in text
    assert (
        "Also not shown, minor "
        "fabrics apparent opening size (wrap) (wrap.aos) "
        "outlets guard (main) (main.guard)"
    ) in flat(text)


def test_finding_that_no_one_value_would_settle_is_said_with_its_reason(review: Review) -> None:
    text = flat(shown(review))
    assert (
        "Could not be judged for another reason - minor: Water stands in the pipe "
        "(drain.ponding): it is met at one end of the range and not at the other"
    ) in text
    assert "(drain.ponding) (" not in text


def test_finding_whose_value_nobody_asks_for_is_not_lost(review: Review) -> None:
    silent = dataclasses.replace(review, questions=())
    text = flat(shown(silent))
    assert "Outlet without a guard (outlets.guard): not shown: outlets.main.guard" in text


def test_person_decides_is_neither_good_nor_counted_as_met(review: Review) -> None:
    text = shown(review)
    assert flat(block(text, "No objection from these rules")) == (
        "No objection from these rules; a competent person or the engineer decides "
        "- excavation.protection (protection slope)"
    )
    assert "excavation" not in block(text, "Checked and good")


def test_what_the_spec_says_does_not_apply_is_named_and_the_rest_counted(review: Review) -> None:
    text = shown(review)
    assert '- the spec says "not applicable": footing.winter-cover' in text
    assert "2 findings do not apply here: 1 not due yet, 1 outside its scope." in text
    assert "record.photos" not in text


def test_good_is_said_by_section_with_items_tight_ones_and_exceptions(review: Review) -> None:
    text = block(shown(review), "Checked and good: 20")
    assert "    coat          over-joint, thickness, coverage\n" in text
    assert "    grade         slope (north, west), short-run (south)\n" in text
    assert (
        "tight drain.below-bearing: 1/8 in left; bottom of the trench at its lowest 90.68 ft, "
        "needed at least underside of footing 90.67 ft"
    ) in flat(text)
    assert "    by exception  grade.short-run south" in text


@pytest.mark.parametrize("room", ["0 in", "0", "0.00 ft"])
def test_good_with_nothing_left_is_said_to_be_at_the_limit(review: Review, room: str) -> None:
    (tight,) = (one for one in review.of(MET) if one.tight)
    exact = tight._replace(compared=(tight.compared[0]._replace(room=room),))
    text = block(shown(dataclasses.replace(review, findings=(exact,))), "Checked and good: 1")
    assert "    at the limit  drain.below-bearing (90.68 ft)" in text
    assert "    tight" not in text


@pytest.mark.parametrize("room", ["0.05 in", "0 1/8 in"])
def test_good_by_a_hair_is_not_at_the_limit(review: Review, room: str) -> None:
    (tight,) = (one for one in review.of(MET) if one.tight)
    close = tight._replace(compared=(tight.compared[0]._replace(room=room),))
    text = flat(shown(dataclasses.replace(review, findings=(close,))))
    assert f"tight drain.below-bearing: {room} left; bottom of the trench" in text


def test_assumptions_and_the_readers_notes_are_listed(review: Review) -> None:
    text = shown(review)
    assert flat(block(text, "Assumed")) == (
        "Assumed, because the spec does not show it "
        "- outside diameter of the pipe: 4.215 in, from the table of pipes"
    )
    assert "- line 9: 'cut sheet' was read as product data" in text


def test_head_says_what_was_reviewed_when_and_by_which_rules(review: Review) -> None:
    assert shown(review).splitlines()[:3] == [
        "Review of Quillwater Lane, lot 14",
        "specs/quillwater.yaml; submittal; stage desk (assumed: the spec names none)",
        "rule book belowgrade, digest 0123456789ab",
    ]
    held = dataclasses.replace(review, stage="pre_backfill", by="pre_backfill", stage_assumed=False)
    assert "stage pre backfill; only what must be right by stage pre backfill" in flat(shown(held))


def test_every_finding_appears_once(blank: Finding, review: Review) -> None:
    outcomes = (MET, NOT_MET, NOT_SHOWN)
    findings = tuple(
        blank._replace(
            rule=f"drain.fault-{number:03}", title="A fault", outcome=outcomes[number % 3],
            severity=("critical", "major", "minor")[number % 7 % 3],
            because="the range is too wide" if number % 3 == 2 else "",
        )
        for number in range(90)
    )  # fmt: skip
    text = shown(dataclasses.replace(review, findings=findings, questions=()))
    assert [text.count(f"fault-{number:03}") for number in range(90)] == [1] * 90


def test_last_line_says_what_was_judged_and_that_it_is_no_release(review: Review) -> None:
    assert shown(review).splitlines()[-1] == (
        f"20 met, 3 not met, 6 could not be judged. {NOT_A_RELEASE}"
    )


def test_last_line_of_a_review_that_judged_nothing(empty: Review) -> None:
    assert shown(empty).splitlines()[-1] == f"Nothing could be judged. {NOT_A_RELEASE}"
    assert "No fault found" not in shown(empty)


def test_last_line_is_one_line_at_any_width(review: Review) -> None:
    for width in (30, 60, 80):
        last = shown(review, review, width=width, accepted=True).splitlines()[-1]
        assert last == f"40 met, 6 not met, 12 could not be judged (let pass). {NOT_A_RELEASE}"


def test_letting_pass_is_said_only_where_something_was(review: Review, blank: Finding) -> None:
    assert "(let pass)" in closing([review], accepted=True)
    sound = dataclasses.replace(review, findings=(blank,))
    assert (
        closing([sound], accepted=True)
        == f"1 met, 0 not met, 0 could not be judged. {NOT_A_RELEASE}"
    )


def test_several_reviews_have_a_head_each_and_one_total(review: Review, empty: Review) -> None:
    text = shown(review, empty)
    assert "This is not a release.\n\nReview of assembly 1\n" in text
    assert text.endswith(
        f"\n2 assemblies in all:\n20 met, 3 not met, 11 could not be judged. {NOT_A_RELEASE}\n"
    )


def test_no_review_at_all_is_no_release_either() -> None:
    assert shown().splitlines()[-1] == f"Nothing could be judged. {NOT_A_RELEASE}"


def test_sound_review_says_that_no_fault_was_found_in_what_could_be_judged(
    review: Review, blank: Finding
) -> None:
    text = shown(dataclasses.replace(review, findings=(blank,), questions=(), notes=()))
    assert "No fault found in what could be judged." in text
    assert "Not met" not in text


@pytest.mark.parametrize("word", ["approved", "safe ", "passed", " ok", "compliant", "certified"])
def test_nothing_is_ever_released(review: Review, empty: Review, word: str) -> None:
    assert word not in shown(review, empty).lower()


@pytest.mark.parametrize("width", [40, 80, 100])
def test_no_line_is_wider_than_asked(review: Review, width: int) -> None:
    long = "word " * 399 + "words"
    longer = dataclasses.replace(
        review, assembly="Q" * 300, file="/".join(["folder"] * 60), notes=(long, "x" * 2000)
    )
    lines = shown(longer, width=width).splitlines()
    # The last line is never broken: it has to be read alone.
    assert max(len(one) for one in lines if NOT_A_RELEASE not in one) <= width
    assert any(len(one) > width - 8 for one in lines)


def test_width_is_never_more_than_a_person_can_read(review: Review) -> None:
    assert max(len(one) for one in shown(review, width=400).splitlines()) <= 100


def test_long_note_is_kept_whole(review: Review) -> None:
    words = [f"w{number}" for number in range(420)]  # 1,990 characters with their spaces
    text = shown(dataclasses.replace(review, notes=(" ".join(words),)))
    assert " ".join(words) in flat(text)


def test_escapes_from_a_spec_reach_no_line_of_any_block(review: Review) -> None:
    evil = "\x1b[2J\x1b]0;owned\x07\u202eevil\nNothing is wrong here.\r"
    finding = review.of(NOT_MET)[0]
    bad = finding._replace(
        item=evil,
        compared=(finding.compared[0]._replace(shown=evil, needed=evil, off_by=evil),),
        places=(finding.places[0]._replace(path=evil, written=evil, source=evil, how=evil),),
        assumed=(evil,),
    )
    met = review.of(MET)[-1]._replace(item=evil, tight=True)
    later = bad._replace(outcome=DOES_NOT_APPLY, because=f"the spec says {evil}")
    infected = dataclasses.replace(
        review, file=evil, assembly=evil, paper=evil, notes=(evil,), findings=(bad, met, later),
        questions=(Question(evil, evil, evil, "major", "desk", (evil,), evil),),
    )  # fmt: skip
    text = shown(infected)
    assert text.count("evil") >= 15
    assert all(one.isprintable() for one in text.split("\n"))
    assert "owned" not in text
    # A line of one's own cannot be smuggled in.
    assert not any(one.startswith("Nothing is wrong here.") for one in text.splitlines())


def test_same_review_gives_the_same_text(review: Review) -> None:
    assert shown(review) == shown(review)
