"""Two reviews compared: what is new, what is fixed, what is carried over, and what none of these."""

from __future__ import annotations

import dataclasses

import pytest

from checker.judging.carried import Comparison, as_earlier, compare, fingerprint
from checker.judging.review_data import (
    DOES_NOT_APPLY,
    MET,
    NOT_MET,
    NOT_SHOWN,
    At,
    Compared,
    Finding,
    Review,
)

GOOD = Finding(
    rule="drain.above-slab", title="Drain too high", severity="critical", how_often="known",
    stage="drain", trade="drain", protects="building", item="", outcome=MET, because="",
    compared=(Compared("drain.crown_high", "crown", MET, "91.50 ft", "below 91.67 ft", "", "2 in", True),),
    places=(At("drain.invert_high", "invert", "91.2", 4, 9, "", ""),),
    missing=(), assumed=(), tight=False, by_exception=False, standing="common practice",
    sources=(), elsewhere=(), rationale="", differs="", remedy="", stop=False, ask="", safety="",
)  # fmt: skip


def failing(shown: str, **fields: object) -> Finding:
    compared = (
        Compared("drain.crown_high", "crown", NOT_MET, shown, "below 91.67 ft", "1 in", "", True),
    )
    return GOOD._replace(outcome=NOT_MET, compared=compared)._replace(**fields)


HIGH = failing("91.75 ft")
OPEN = GOOD._replace(
    outcome=NOT_SHOWN, missing=("drain.invert_high",),
    compared=(Compared("drain.crown_high", "crown", NOT_SHOWN, "not shown", "below", "", "", True),),
)  # fmt: skip
OUT = GOOD._replace(outcome=DOES_NOT_APPLY, because="outside its scope", compared=())


def review_of(*findings: Finding, **fields: object) -> Review:
    review = Review(
        file="lot.yaml", assembly="Lot 14", paper="submittal", stage="desk", stage_assumed=False,
        by="", rulebook="belowgrade", digest="aa", cautions=(), findings=findings, questions=(),
        notes=(),
    )  # fmt: skip
    return dataclasses.replace(review, **fields)  # type: ignore[arg-type]


def compared(before: Finding | None, now: Finding | None) -> Comparison:
    earlier = as_earlier(review_of(*([before] if before else [])))
    return compare([earlier], [review_of(*([now] if now else []))], "before.json")


def counts(comparison: Comparison) -> tuple[int, int, int, int]:
    return (
        len(comparison.fresh), len(comparison.fixed), len(comparison.dropped), comparison.carried,
    )  # fmt: skip


NEW, FIXED, DROPPED, CARRIED, NOTHING = (
    (1, 0, 0, 0), (0, 1, 0, 0), (0, 0, 1, 0), (0, 0, 0, 1), (0, 0, 0, 0),
)  # fmt: skip


@pytest.mark.parametrize(
    ("before", "now", "became"),
    [
        (HIGH, HIGH, CARRIED),
        (OPEN, OPEN, CARRIED),
        (GOOD, GOOD, NOTHING),
        (OUT, GOOD, NOTHING),
        (None, HIGH, NEW),
        (None, OPEN, NEW),
        (GOOD, HIGH, NEW),
        (OUT, HIGH, NEW),
        (HIGH, GOOD, FIXED),
        (OPEN, GOOD, FIXED),
        (HIGH, OUT, DROPPED),
        (HIGH, None, DROPPED),
        # Whoever takes the value away has mended nothing.
        (HIGH, OPEN, NEW),
        (OPEN, HIGH, NEW),
        # A little better or a little worse: somebody looks again.
        (HIGH, failing("91.80 ft"), NEW),
        # Of something else.
        (HIGH, failing("91.75 ft", item="NE"), (1, 0, 1, 0)),
        (failing("91.75 ft", varied="V-1"), HIGH, NEW),
        (HIGH, failing("91.75 ft", varied="V-1"), DROPPED),
    ],
)
def test_what_became_of_a_finding(
    before: Finding | None, now: Finding | None, became: tuple[int, int, int, int]
) -> None:
    assert counts(compared(before, now)) == became


def test_what_stood_before_is_told() -> None:
    (fresh,) = compared(HIGH, failing("91.80 ft")).fresh
    assert fresh.before is not None
    assert (fresh.before.outcome, fresh.before.shown) == (NOT_MET, "91.75 ft")
    (fixed,) = compared(HIGH, GOOD).fixed
    assert fixed.now is not None
    assert (fixed.before.shown, fixed.now.outcome) == ("91.75 ft", MET)


@pytest.mark.parametrize(
    "other",
    [
        failing("91.75 ft", places=(At("drain.invert_high", "invert", "91.2", 400, 2, "", ""),)),
        failing("91.75 ft", severity="major", title="Drain above the floor", stage="forms"),
        failing("91.75 ft", remedy="Lower it.", standing="law here"),
    ],
    ids=["moved lines", "reworded rule", "another standing"],
)
def test_what_makes_no_other_finding(other: Finding) -> None:
    assert counts(compared(HIGH, other)) == CARRIED


def test_a_met_part_of_a_comparison_may_change() -> None:
    two = HIGH._replace(compared=(*HIGH.compared, *GOOD.compared))
    moved = GOOD.compared[0]._replace(shown="91.40 ft")
    assert counts(compared(two, two._replace(compared=(*HIGH.compared, moved)))) == CARRIED


def test_how_the_spec_says_that_it_shows_nothing_may_change() -> None:
    (only,) = OPEN.compared
    other = OPEN._replace(compared=(only._replace(shown='the spec says "by others"'),))
    assert counts(compared(OPEN, other)) == CARRIED


def test_a_renamed_file_is_the_same_assembly() -> None:
    earlier = as_earlier(review_of(HIGH))
    now = review_of(HIGH, file="elsewhere/renamed.yaml")
    assert counts(compare([earlier], [now], "")) == CARRIED


def test_assemblies_of_one_name_are_told_apart_by_their_files() -> None:
    before = [
        as_earlier(review_of(HIGH, file="a.yaml")),
        as_earlier(review_of(GOOD, file="b.yaml")),
    ]
    now = [review_of(GOOD, file="b.yaml"), review_of(HIGH, file="a.yaml")]
    assert counts(compare(before, now, "")) == CARRIED


def test_another_assembly_is_new_and_the_old_one_was_not_asked_again() -> None:
    comparison = compare([as_earlier(review_of(HIGH))], [review_of(HIGH, assembly="Lot 15")], "")
    assert counts(comparison) == (1, 0, 1, 0)
    assert any("Lot 15 was not reviewed before" in note for note in comparison.notes)


def test_design_and_measured_are_two_reviews() -> None:
    before = [as_earlier(review_of(HIGH)), as_earlier(review_of(GOOD, basis="measured"))]
    now = [review_of(HIGH), review_of(HIGH, basis="measured")]
    assert counts(compare(before, now, "")) == (1, 0, 0, 1)


def test_other_rules_and_another_stage_are_told() -> None:
    earlier = as_earlier(review_of(HIGH))
    now = review_of(HIGH, digest="bb", by="forms")
    told = " ".join(compare([earlier], [now], "").notes)
    assert "aa then, bb now" in told
    assert "every stage then, for forms now" in told
    assert compare([earlier], [review_of(HIGH)], "").notes == ()


@pytest.mark.parametrize(
    ("severity", "hold_at", "holds"),
    [
        ("critical", "critical", True),
        ("major", "critical", False),
        ("major", "major", True),
        ("minor", "major", False),
    ],
)
def test_only_what_is_new_holds(severity: str, hold_at: str, holds: bool) -> None:
    finding = failing("91.75 ft", severity=severity)
    assert compared(None, finding).holds(hold_at) is holds
    assert compared(finding, finding).holds(hold_at) is False


def test_fingerprints_do_not_run_together() -> None:
    one = fingerprint(review_of(), failing("1", rule="drain.a", item="b"))
    other = fingerprint(review_of(), failing("1", rule="drain.ab", item=""))
    assert one != other


def test_a_fingerprint_of_any_text() -> None:
    assert len(fingerprint(review_of(assembly="\ud800"), failing("\ud800"))) == 32
