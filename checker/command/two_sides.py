"""The commands that set one side beside another: `compare` and `effect`."""

from __future__ import annotations

import sys
from enum import StrEnum
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from checker.command.options import (
    ByStage,
    DayJudged,
    HoldAt,
    Jobs,
    PlaceName,
    ToFile,
    day_asked,
    place_asked,
    rulebook_of,
    stage_asked,
)
from checker.command.printing import complain, put
from checker.command.reading import Reading

if TYPE_CHECKING:
    from checker.showing.lines import Line


class EffectForm(StrEnum):
    """What an effect can be printed as."""

    text = "text"
    markdown = "markdown"
    json = "json"
    html = "html"


def compare(
    standard: Annotated[str, typer.Argument(metavar="STANDARD", help="The file of one standard.")],
    submittal: Annotated[str, typer.Argument(metavar="SUBMITTAL", help="A file, or -.")],
    place: PlaceName = "",
    to: ToFile = None,
) -> None:
    """Set a submittal against a standard: same, stricter, looser, different, not shown.

    Exit status: 0 nothing is looser or different without being declared as a deviation; 1
    something is; 2 a file could not be read.
    """
    from checker.judging.compare import compare as beside
    from checker.judging.settle import settle
    from checker.reading.faults import Unreadable
    from checker.showing.compare_page import compare_page
    from checker.showing.console import PIPE_WIDTH, width_of
    from checker.showing.lines import BLANK

    book, where = rulebook_of(), place_asked(place)
    reading = Reading()
    standards, submitted = list(reading.specs([standard])), list(reading.specs([submittal]))
    if not reading.unreadable and (len(standards) != 1 or not submitted):
        complain(f"{standard}: one assembly is wanted as the standard, and one or more beside it")
        raise typer.Exit(2)
    lines: list[Line] = []
    differs = False
    width = PIPE_WIDTH if to else width_of(sys.stdout)
    for one in submitted if standards else []:
        try:
            settled = settle(one, book, where)
        except Unreadable as error:
            reading.note(error.faults)
            continue
        found = beside(standards[0], settled.spec, settled.rulebook)
        lines += [BLANK] if lines else []
        lines += compare_page(found, width=width)
        differs = differs or found.open
    if lines:
        put(lines, to)
    if status := reading.status(differs):
        raise typer.Exit(status)


def effect(
    before: Annotated[
        Path, typer.Argument(metavar="BEFORE", exists=True, help="The folder, or file, as it was.")
    ],
    after: Annotated[
        Path, typer.Argument(metavar="AFTER", exists=True, help="The same with the edit in it.")
    ],
    by: ByStage = "",
    hold_at: HoldAt = None,
    place: PlaceName = "",
    on: DayJudged = "",
    form: Annotated[EffectForm, typer.Option("--as", help="What to print.")] = EffectForm.text,
    to: ToFile = None,
    jobs: Jobs = 1,
) -> None:
    """Show what an edit of a standard or of house rules does to every lot that it reaches.

    Exit status: 0 nothing gets worse at or above --hold-at; 1 something does: it stands open and
    did not, is not met where it was not shown, is held graver, or is missed by more; 2 a file could
    not be read. What is new stands beside nothing and does not count.
    """
    from checker.judging.effect import Terms, both_sides, find_effect, tasks_of
    from checker.showing.console import PIPE_WIDTH, width_of
    from checker.showing.effect_page import in_form
    from checker.showing.progress import Progress

    stage, day, where = stage_asked(by), day_asked(on), place_asked(place)
    terms = Terms(before, after, rulebook_of(), stage, day, where)
    try:
        tasks = tasks_of(before, after)
    except LookupError as error:
        complain(str(error.args[0]))
        raise typer.Exit(2) from None
    progress = Progress(sys.stderr, len(tasks))
    try:
        found = find_effect(tasks, terms, jobs, progress.step)
    finally:
        progress.clear()
    for one in found.unread:
        complain(str(one))
    width = PIPE_WIDTH if to else width_of(sys.stdout)
    put(in_form(form.value, found, partial(both_sides, terms=terms), width), to)
    status = 2 if found.unread else int(found.holds(hold_at.value if hold_at else ""))
    if status:
        raise typer.Exit(status)
