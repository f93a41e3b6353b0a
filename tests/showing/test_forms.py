"""An output that is written as the reviews come: in order, and none waits for the next."""

from __future__ import annotations

import json
import pickle
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from checker.judging.judge import review as judge
from checker.judging.review_data import Review
from checker.judging.rulebook import Rulebook, load_rulebook
from checker.reading.faults import Fault
from checker.reading.reader import load_spec
from checker.reading.spec import Spec
from checker.showing.console import as_text
from checker.showing.forms import End, Paper, output
from checker.showing.lines import BLANK, Line
from checker.showing.text import render
from tests.support import spec_of

SPECS = Path(__file__).parents[2] / "specs"
STREAMED = ("text", "short", "json", "jsonl", "sarif", "junit")
PLAIN = Paper(80, coloured=False)
NOTHING_WRONG = End((), 0)
# Text looks at nothing of a spec but its review.
NO_SPEC = spec_of({})


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


@pytest.fixture(scope="module")
def pairs(rulebook: Rulebook) -> list[tuple[Spec, Review]]:
    names = ("prepour.yaml", "crawlspace.yaml", "icf.yaml")
    return [(spec, judge(spec, rulebook)) for name in names for spec in load_spec(SPECS / name)]


def text_of(*reviews: Review) -> str:
    written = output("text", Rulebook((), ""), PLAIN)
    parts = (written.make(NO_SPEC, review) for review in reviews)
    return "".join(map(str, written.pieces(parts, lambda: NOTHING_WRONG)))


# -- text ------------------------------------------------------------------------------------------


def test_one_review_stands_alone(review: Review) -> None:
    # 16 good, one tight, two sides and one by exception; five open and one at a range.
    assert text_of(review).endswith(
        "\n\n20 met, 3 not met, 6 could not be judged. This is not a release.\n"
    )
    assert "in all" not in text_of(review)


def test_of_several_the_sums_stand_below(review: Review, empty: Review) -> None:
    # The second has the same five open, and nothing that could be judged.
    assert text_of(review, empty, review) == "\n".join(
        [
            text_of(review),
            text_of(empty),
            text_of(review),
            "3 assemblies in all:",
            "40 met, 6 not met, 17 could not be judged. This is not a release.\n",
        ]
    )


def test_of_none_there_is_the_last_line() -> None:
    assert text_of() == "\n0 assemblies in all:\nNothing could be judged. This is not a release.\n"


@pytest.mark.parametrize("number", [0, 1, 2])
def test_a_terminal_gets_the_same_lines_with_their_styles(
    review: Review, empty: Review, number: int
) -> None:
    reviews = [review, empty][:number]
    written = output("text", Rulebook((), ""), Paper(90, coloured=True))
    parts = (written.make(NO_SPEC, one) for one in reviews)
    lines: list[Line] = []
    for piece in written.pieces(parts, lambda: NOTHING_WRONG):
        assert isinstance(piece, list)
        lines += piece
    assert lines == render(reviews, width=90)
    assert {"heading", "closing"} <= {span.style for line in lines for span in line} or not reviews


def test_text_messages_have_a_blank_line_between_them(review: Review, empty: Review) -> None:
    written = output("short", Rulebook((), ""), Paper(80, coloured=True))
    first, second = (written.make(NO_SPEC, one) for one in (review, empty))
    assert list(written.pieces([first, second], lambda: NOTHING_WRONG)) == [
        first,
        [BLANK, *second],
    ]
    assert as_text(first).startswith("DANGER: Nobody goes in")


# -- every form ------------------------------------------------------------------------------------


@pytest.mark.parametrize("form", STREAMED)
def test_no_review_waits_for_the_next(
    form: str, rulebook: Rulebook, pairs: list[tuple[Spec, Review]]
) -> None:
    written = output(form, rulebook, PLAIN)
    taken: list[str] = []

    def parts() -> Iterator[Any]:
        for spec, review in pairs:
            taken.append(spec.name)
            yield written.make(spec, review)

    pieces = [(len(taken), piece) for piece in written.pieces(parts(), lambda: NOTHING_WRONG)]
    # Something was written when one had been taken, when two had, and when all three had.
    assert {number for number, piece in pieces if piece} >= {1, 2, 3}
    assert all(name in "".join(str(piece) for _, piece in pieces) for name in taken)


@pytest.mark.parametrize("form", [*STREAMED, "html"])
def test_what_makes_a_part_can_be_sent_to_another_process(
    form: str, rulebook: Rulebook, pairs: list[tuple[Spec, Review]]
) -> None:
    make = output(form, rulebook, PLAIN).make
    (sent, *_) = (pickle.loads(pickle.dumps(make))(*pair) for pair in pairs)
    assert pickle.loads(pickle.dumps(sent)) == make(*pairs[0])


@pytest.mark.parametrize("form", ["sarif", "junit"])
def test_how_the_run_ended_is_asked_when_it_has(
    form: str, rulebook: Rulebook, pairs: list[tuple[Spec, Review]]
) -> None:
    written = output(form, rulebook, PLAIN)
    faults: list[Fault] = []

    def parts() -> Iterator[Any]:
        for number, pair in enumerate(pairs):
            yield written.make(*pair)
            faults.append(Fault(f"lot-{number}.yaml", 1, 1, "is empty"))

    whole = "".join(map(str, written.pieces(parts(), lambda: End(faults, 2))))
    assert [f"lot-{number}.yaml" in whole for number in range(3)] == [True] * 3
    if form == "sarif":
        (call,) = json.loads(whole)["runs"][0]["invocations"]
        assert (call["exitCode"], len(call["toolExecutionNotifications"])) == (2, 3)
