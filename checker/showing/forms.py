"""Reviews in the form that was asked for; only what that form needs is loaded."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    from checker.judging.carried import Comparison
    from checker.judging.review_data import Review
    from checker.judging.rulebook import Rulebook
    from checker.reading.faults import Fault
    from checker.reading.spec import Spec
    from checker.showing.lines import Line


class End(NamedTuple):
    """How a run ended: what could not be read, and the exit status."""

    faults: Sequence[Fault]
    status: int


class Output(NamedTuple):
    """An output that is written as the reviews come, so that it needs no room for all of them.

    `make` gives what one review adds to it and runs where that was judged, maybe in another
    process. `pieces` puts that into a row, and asks how the run ended once there is no more of it.
    `for_people` says that the pieces are text for people, not a file for programs.
    """

    make: Callable[[Spec, Review], Any]
    pieces: Callable[[Iterable[Any], Callable[[], End]], Iterator[str | list[Line]]]
    for_people: bool = False


class Paper(NamedTuple):
    """What text is written on: how wide it is, and whether it has colours."""

    width: int
    coloured: bool


def output(form: str, rulebook: Rulebook, paper: Paper) -> Output:
    """Return how to write a form, for reviews that none are compared with."""
    if form in ("text", "short"):
        return _text(form, paper)
    if form == "jsonl":
        from checker.showing.json_report import as_json_line

        return Output(partial(_of_review, as_json_line), lambda lines, _: iter(lines))
    if form == "json":
        from checker.showing import json_report

        make = partial(_of_review, json_report.part)
        return Output(make, lambda parts, _: json_report.in_one(parts))
    if form == "sarif":
        from checker.showing import sarif_report

        return Output(
            partial(_of_review, partial(sarif_report.part, rulebook)),
            lambda parts, end: sarif_report.in_one(parts, rulebook, end, _version()),
        )
    if form == "junit":
        from checker.showing import junit_report

        return Output(
            partial(_of_review, junit_report.suite),
            lambda suites, end: junit_report.in_one(suites, lambda: end().faults),
        )
    from checker.showing.report.html import report_page

    # One page with all of them, and a list of them at its top.
    return Output(_pair, lambda pairs, _: iter([report_page(list(pairs))]))


def _text(form: str, paper: Paper) -> Output:
    from checker.showing import text
    from checker.showing.console import as_text

    shape: Callable[[list[Line]], Any] = list if paper.coloured else as_text
    if form == "short":
        make = partial(_message, shape)
        return Output(make, lambda parts, _: text.with_blanks(parts, shape), for_people=True)
    make = partial(_of_review, partial(text.part, shape, width=paper.width))
    return Output(make, lambda parts, _: text.in_a_row(parts, shape), for_people=True)


def _message(shape: Callable[[list[Line]], Any], _: Spec, review: Review) -> Any:
    from checker.showing.short import message

    return shape(message(review))


def _of_review(make: Callable[[Review], Any], _: Spec, review: Review) -> Any:
    return make(review)


def _pair(spec: Spec, review: Review) -> tuple[Spec, Review]:
    return spec, review


# The forms that can say what is new.
COMPARED = ("text", "json", "sarif")


def compared(
    form: str,
    reviews: Sequence[Review],
    comparison: Comparison,
    rulebook: Rulebook,
    end: End,
    width: int,
) -> str | list[Line]:
    """Return what has become of earlier reviews, which is known when all are there."""
    if form == "json":
        from checker.showing.json_report import as_json

        return as_json(reviews, comparison=comparison)
    if form == "sarif":
        from checker.showing.sarif_report import as_sarif

        return as_sarif(
            reviews,
            rulebook,
            faults=end.faults,
            exit_status=end.status,
            comparison=comparison,
            version=_version(),
        )
    if form == "short":
        from checker.showing.short import short

        return short(reviews)
    from checker.showing.carried_text import render_comparison

    return render_comparison(reviews, comparison, width=width)


def _version() -> str:
    """Return the version that is installed, or nothing where it only lies in a folder."""
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version("belowgrade")
    except PackageNotFoundError:
        return ""
