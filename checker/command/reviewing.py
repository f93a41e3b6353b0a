"""The command `review`."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from enum import StrEnum
from functools import partial
from itertools import chain, islice
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, TypeVar

import typer

from checker.command.options import (
    ByStage,
    DayJudged,
    HoldAt,
    Jobs,
    PlaceName,
    SpecPaths,
    ToFile,
    day_asked,
    place_asked,
    rulebook_of,
    stage_asked,
)
from checker.command.printing import complain, paper_of, put, put_pieces
from checker.command.reading import Reading

if TYPE_CHECKING:
    from checker.judging.carried import Earlier
    from checker.judging.review_data import Review
    from checker.reading.spec import Spec
    from checker.showing.forms import Output

Given = TypeVar("Given")


class Form(StrEnum):
    """What a review can be printed as."""

    text = "text"
    json = "json"
    jsonl = "jsonl"
    sarif = "sarif"
    junit = "junit"
    html = "html"


class Basis(StrEnum):
    """Which values of a spec are judged."""

    design = "design"
    measured = "measured"
    both = "both"


def review(
    specs: SpecPaths,
    by: ByStage = "",
    measured: Annotated[
        Basis, typer.Option(help="Judge the design, what was measured, or both.")
    ] = Basis.design,
    hold_at: HoldAt = None,
    place: PlaceName = "",
    on: DayJudged = "",
    form: Annotated[Form, typer.Option("--as", help="What to print.")] = Form.text,
    short: Annotated[
        bool, typer.Option("--short", help="As a text message: the three worst, and how many.")
    ] = False,
    to: ToFile = None,
    against: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Show what is new since this review as JSON."),
    ] = None,
    specs_only: Annotated[
        bool, typer.Option("--specs-only", help="Leave alone every file that is no spec.")
    ] = False,
    jobs: Jobs = 1,
) -> None:
    """Review assemblies: what fails, by how much, on whose authority, and what was not shown.

    Exit status: 0 nothing stands open at or above --hold-at; 1 something does (a value that is not
    shown counts like a fault of its rule), or nothing could be judged; 2 a file could not be read.
    With --against only what is new counts.
    """
    from checker.judging.carried import compare
    from checker.judging.many import Asked
    from checker.showing.forms import compared, output

    stage = stage_asked(by)
    if short and form is not Form.text:
        complain(f"--short is text, and --as {form.value} is not")
        raise typer.Exit(2)
    earlier = _earlier(against, form) if against else None
    day = day_asked(on)
    book = rulebook_of()
    at, where = hold_at.value if hold_at else "", place_asked(place)
    reading = Reading()
    files = reading.files(specs, specs_only=specs_only)
    name, paper = "short" if short else form.value, paper_of(to)
    ask = partial(Asked, book, by=stage, basis=measured.value, day=day, place=where)
    if earlier is None:
        out = output(name, book, paper)
        quiet = form is not Form.html and _in_sight(to)
        made = reading.judged(files, ask(partial(_part, out.make, at)), jobs, quiet=quiet)
        held = _stream(out, made, reading, form, to)
    else:
        reviews = list(reading.judged(files, ask(_review_alone), jobs))
        comparison = compare(earlier, reviews, str(against))
        held = [comparison.holds(at) or not one.judged for one in reviews]
        if reviews or (form is Form.sarif and reading.unreadable):
            end = reading.end(any(held))
            put(compared(name, reviews, comparison, book, end, paper.width), to)
    if not held and not specs_only:
        reading.found_nothing()
    if status := reading.status(any(held)):
        raise typer.Exit(status)


def _earlier(against: Path, form: Form) -> tuple[Earlier, ...]:
    from checker.judging.earlier import load_earlier
    from checker.reading.faults import Unreadable
    from checker.showing.forms import COMPARED

    if form.value not in COMPARED:
        complain(f"--against goes with --as {', '.join(COMPARED)}")
        raise typer.Exit(2)
    try:
        return load_earlier(against)
    except Unreadable as error:
        complain(str(error))
    raise typer.Exit(2)


def _review_alone(_: Spec, review: Review) -> Review:
    return review


def _part(
    make: Callable[[Spec, Review], Given], hold_at: str, spec: Spec, review: Review
) -> tuple[Given, bool]:
    """Return what a review adds to an output, and whether it holds."""
    return make(spec, review), review.holds(hold_at)


def _stream(
    output: Output, made: Iterator[tuple[Any, bool]], reading: Reading, form: Form, to: Path | None
) -> list[bool]:
    """Write an output while files are judged, and return for each review whether it holds."""
    held: list[bool] = []

    def parts() -> Iterator[Any]:
        for part, holds in made:
            held.append(holds)
            yield part

    rest = parts()
    first = list(islice(rest, 1))
    # With nothing judged, no lines are lines still, and a log tells of what could not be read.
    if first or form is Form.jsonl or (form is Form.sarif and reading.unreadable):
        pieces = output.pieces(chain(first, rest), lambda: reading.end(any(held)))
        put_pieces(pieces, to, for_people=output.for_people)
    return held


def _in_sight(to: Path | None) -> bool:
    """Say whether an output is read as it comes, and says by itself how far that has come."""
    from checker.showing.console import in_sight

    return to is None and in_sight(sys.stdout)
