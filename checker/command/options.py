"""What several commands take, and what is meant by it."""

from __future__ import annotations

import gc
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from checker.command import shells
from checker.command.printing import complain

if TYPE_CHECKING:
    from checker.judging.rulebook import Rulebook


class Severity(StrEnum):
    """How bad a finding is."""

    critical = "critical"
    major = "major"
    minor = "minor"


SpecPaths = Annotated[
    list[str], typer.Argument(metavar="SPEC...", help="Files, folders, or - for standard input.")
]
PlaceName = Annotated[
    str,
    typer.Option(
        metavar="ID",
        help="Judge by the law of this place, such as henrico-va.",
        autocompletion=shells.places,
    ),
]
ByStage = Annotated[
    str,
    typer.Option(
        metavar="STAGE",
        help="Ask only what must be right by this stage.",
        autocompletion=shells.stages,
    ),
]
HoldAt = Annotated[
    Severity | None,
    typer.Option(
        help="The least severity that makes the exit status 1; else the house's, else major."
    ),
]
DayJudged = Annotated[
    str, typer.Option(metavar="DATE", help="The day judged: a date, or the word today.")
]
ToFile = Annotated[
    Path | None, typer.Option(metavar="FILE", help="Write here instead of printing.")
]
Jobs = Annotated[int, typer.Option(min=1, metavar="N", help="How many processes share the work.")]


def rulebook_of(*paths: Path) -> Rulebook:
    """Return the rule book in files or folders, else the one that comes with belowgrade."""
    from checker.reading.faults import Unreadable

    try:
        return _kept_to_the_end(*paths)
    except Unreadable as error:
        for fault in error.faults:
            complain(str(fault))
    except FileNotFoundError as error:
        complain(str(error))
    raise typer.Exit(2)


def _kept_to_the_end(*paths: Path) -> Rulebook:
    # What is loaded here stays: to look among it for garbage, now or later, finds none.
    gc.disable()
    try:
        from checker.judging.rulebook import load_rulebook

        book = load_rulebook(*paths)
        gc.freeze()
    finally:
        gc.enable()
    return book


def stage_asked(given: str) -> str:
    """Return the stage asked for, or nothing where none is."""
    from checker.judging.review_data import STAGES
    from checker.reading.vocabulary import nearest, plain_word

    stages = {plain_word(stage): stage for stage in STAGES}
    if given and plain_word(given) not in stages:
        known = ", ".join(STAGES).replace("_", " ")
        complain(f"there is no stage '{given}'{nearest(given, list(STAGES))}; stages: {known}")
        raise typer.Exit(2)
    return stages.get(plain_word(given), "")


def day_asked(given: str) -> str:
    """Return the day asked for. Only the word today reads the clock."""
    from datetime import date

    from checker.judging.day import read_day

    try:
        return read_day(date.today().isoformat() if given == "today" else given) if given else ""
    except ValueError as error:
        complain(f"--on: {error}, or as the word today")
    raise typer.Exit(2)


def place_asked(given: str) -> str:
    """Return the id of the place asked for."""
    from checker.judging.places import find_place
    from checker.reading.faults import Unreadable

    try:
        return find_place(given).id if given else ""
    except (LookupError, Unreadable) as error:
        complain(str(error.args[0]))
    raise typer.Exit(2)
