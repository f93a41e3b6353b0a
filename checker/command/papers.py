"""The commands that make a paper of each assembly: from `calc` to `owner`."""

from __future__ import annotations

import sys
from collections.abc import Callable
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, TypeVar

import typer

from checker.command import shells
from checker.command.options import ByStage, SpecPaths, ToFile, rulebook_of, stage_asked
from checker.command.printing import complain, put
from checker.command.reading import Reading

if TYPE_CHECKING:
    from checker.judging.review_data import Review
    from checker.reading.spec import Spec
    from checker.showing.letter import Letter
    from checker.showing.lines import Line

Setting = TypeVar("Setting")


class LetterForm(StrEnum):
    """What a letter can be written as."""

    markdown = "markdown"
    html = "html"
    docx = "docx"
    json = "json"


class SheetForm(StrEnum):
    """What a field sheet can be printed as."""

    text = "text"
    html = "html"


class Picture(StrEnum):
    """What of an assembly is drawn."""

    section = "section"
    plan = "plan"
    levels = "levels"


def calc(
    spec: Annotated[str, typer.Argument(metavar="SPEC", help="A file, or - for standard input.")],
    quantity: Annotated[
        str, typer.Argument(metavar="[QUANTITY]", help="Such as drain.crown_high.")
    ] = "",
) -> None:
    """Show the calculation behind every number, or behind one: formula, inputs, result, source."""
    from checker.deriving.quantity import REGISTRY
    from checker.reading.vocabulary import nearest
    from checker.showing.calc_sheet import calc_sheet
    from checker.showing.console import write

    rulebook_of()
    if quantity and quantity not in REGISTRY:
        complain(f"there is no quantity '{quantity}'{nearest(quantity, list(REGISTRY))}")
        raise typer.Exit(2)
    reading = Reading()
    for one in reading.specs([spec]):
        write(calc_sheet(one, quantity), sys.stdout)
    if reading.unreadable:
        raise typer.Exit(2)


def takeoff(
    specs: SpecPaths,
    to: ToFile = None,
) -> None:
    """List what to order: pipe, fittings, stone, fabric, coat, sheet, fill; and what is missing."""
    from checker.showing.console import PIPE_WIDTH, width_of
    from checker.showing.lines import BLANK
    from checker.showing.takeoff_sheet import takeoff_sheet

    reading = Reading()
    width = PIPE_WIDTH if to else width_of(sys.stdout)
    lines: list[Line] = []
    for one in reading.specs(specs):
        lines += [BLANK] if lines else []
        lines += takeoff_sheet(one, width=width)
    if not lines:
        reading.found_nothing()
    put(lines, to)
    if reading.unreadable:
        raise typer.Exit(2)


def section(
    specs: SpecPaths,
    picture: Annotated[
        Picture, typer.Option(help="The section, the drain in plan and profile, or all levels.")
    ] = Picture.section,
    by: ByStage = "",
    to: ToFile = None,
) -> None:
    """Draw the assembly to scale as a sheet in SVG, with what is not met as keynotes."""
    from checker.judging.many import Asked
    from checker.showing.drawing import draw

    stage = stage_asked(by)
    book = rulebook_of()
    reading = Reading()
    asked = Asked(book, _pair, stage)
    pairs = list(reading.judged(reading.files(specs), asked, 1, quiet=True))
    if pairs:
        put(draw(pairs, picture.value), to)
    else:
        reading.found_nothing()
    if reading.unreadable:
        raise typer.Exit(2)


def letter(
    specs: SpecPaths,
    trade: Annotated[
        str, typer.Option(metavar="TRADE", help="Leave in it only what concerns this trade.")
    ] = "",
    form: Annotated[
        LetterForm, typer.Option("--as", help="What to write; the next letter reads json.")
    ] = LetterForm.markdown,
    to: ToFile = None,
    earlier: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="The letter or review before this one, as JSON."),
    ] = None,
    by: ByStage = "",
) -> None:
    """Write the comment letter: numbered items, a suggestion for each, and the questions.

    It approves nothing: the words of the stamp stand beside boxes that a person ticks. Exit
    status: 0 it was written, 2 something could not be read.
    """
    from checker.showing.letter import letter_of, load_dispositions, load_earlier, matching

    stage, whose = stage_asked(by), _trade(trade)
    if form is LetterForm.docx and to is None:
        complain("--as docx goes into a file: name it with --to")
        raise typer.Exit(2)
    before = _setting(load_earlier, earlier) if earlier else ()
    usual, reading = load_dispositions(), Reading()
    settled = list(reading.settled(specs, rulebook_of()))
    letters = []
    for one in settled:
        last = matching(before, one.spec.name, alone=len(settled) == 1)
        if earlier and last is None:
            complain(f"{earlier}: says nothing of {one.spec.name}, so its items are numbered anew")
        own = usual.changed(one.house.dispositions) if one.house else usual
        letters.append(letter_of(one.spec, one.review(stage), whose, last, own))
    if letters:
        _send(letters, form, to)
    else:
        reading.found_nothing()
    if status := reading.status(False):
        raise typer.Exit(status)


def fieldsheet(
    specs: SpecPaths,
    by: Annotated[
        str,
        typer.Option(
            metavar="STAGE", help="The stage it is taken to.", autocompletion=shells.stages
        ),
    ],
    instrument: Annotated[
        str, typer.Option(metavar="LEVEL", help="Level of the instrument: print rod readings.")
    ] = "",
    language: Annotated[str, typer.Option(metavar="WORD", help="en, or es for Spanish.")] = "en",
    form: Annotated[SheetForm, typer.Option("--as", help="What to print.")] = SheetForm.text,
    to: ToFile = None,
) -> None:
    """Print the page for the site: what to measure, what still passes, what to photograph."""
    from checker.showing.console import PIPE_WIDTH, width_of
    from checker.showing.field_sheet import in_form, languages, sheet_of, words_in

    stage = stage_asked(by)
    if not stage or language not in languages():
        wanted = f"one of {', '.join(languages())}" if stage else "the stage is wanted: --by"
        complain(f"--language {language}: {wanted}" if stage else wanted)
        raise typer.Exit(2)
    reading = Reading()
    try:
        sheets = [
            sheet_of(one.spec, one.review(stage), one.rulebook, instrument)
            for one in reading.settled(specs, rulebook_of())
        ]
    except ValueError as error:
        complain(str(error))
        raise typer.Exit(2) from None
    if sheets:
        width = PIPE_WIDTH if to else width_of(sys.stdout)
        put(in_form(sheets, words_in(language), form.value, width), to)
    else:
        reading.found_nothing()
    if status := reading.status(False):
        raise typer.Exit(status)


def owner(
    specs: SpecPaths,
    to: ToFile = None,
) -> None:
    """Write the owner's page in Markdown: what to keep up, by what was built."""
    from checker.reading.spec import MEASURED
    from checker.showing.owner_page import owner_page

    reading = Reading()
    built = [
        (one.spec, one.review("handover"))
        for one in reading.settled(specs, rulebook_of(), MEASURED)
    ]
    if built:
        put(owner_page(built), to)
    else:
        reading.found_nothing()
    if status := reading.status(False):
        raise typer.Exit(status)


def _trade(given: str) -> str:
    from checker.judging.rulebook import TRADES
    from checker.reading.vocabulary import nearest, plain_word

    if given and plain_word(given) not in TRADES:
        near = nearest(given, list(TRADES))
        complain(f"there is no trade '{given}'{near}; trades: {', '.join(TRADES)}")
        raise typer.Exit(2)
    return plain_word(given)


def _setting(read: Callable[[Path], Setting], path: Path) -> Setting:
    """Read a file that a letter is written by."""
    try:
        return read(path)
    except OSError as error:
        complain(f"{path}: cannot be read: {error.strerror or error}")
    except ValueError as error:
        complain(str(error))
    raise typer.Exit(2)


def _send(letters: list[Letter], form: LetterForm, to: Path | None) -> None:
    from checker.showing.console import write_bytes
    from checker.showing.letter import in_form

    try:
        content = in_form(letters, form.value)
    except ModuleNotFoundError:
        complain("--as docx needs one library more: pip install 'belowgrade[docx]'")
        raise typer.Exit(2) from None
    if isinstance(content, str) or to is None:
        put(str(content), to)
        return
    try:
        write_bytes(to, content)
    except OSError as error:
        complain(f"{to}: cannot be written: {error.strerror or error}")
        raise typer.Exit(2) from None


def _pair(spec: Spec, review: Review) -> tuple[Spec, Review]:
    return spec, review
