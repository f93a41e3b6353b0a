"""The command line: thin, and the only place that prints or ends the process."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from checker.judging.carried import Earlier
    from checker.judging.many import Asked, Made
    from checker.judging.review_data import Review
    from checker.judging.rulebook import Rulebook
    from checker.reading.spec import Spec
    from checker.showing.lines import Line

app = typer.Typer(
    name="belowgrade",
    help="Judge below-grade assemblies against written rules, before they are buried.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
)


class Form(StrEnum):
    """What a review can be printed as."""

    text = "text"
    json = "json"
    jsonl = "jsonl"
    sarif = "sarif"
    junit = "junit"
    html = "html"


class Severity(StrEnum):
    """How bad a finding is."""

    critical = "critical"
    major = "major"
    minor = "minor"


class Picture(StrEnum):
    """What of an assembly is drawn."""

    section = "section"
    plan = "plan"
    levels = "levels"


class Basis(StrEnum):
    """Which values of a spec are judged."""

    design = "design"
    measured = "measured"
    both = "both"


SpecPaths = Annotated[
    list[str], typer.Argument(metavar="SPEC...", help="Files, folders, or - for standard input.")
]


def main() -> None:
    """Run the command; exit status 0, 1, 2, or 130 when interrupted."""
    try:
        app()
    except KeyboardInterrupt:
        _complain("interrupted")
        sys.exit(130)
    except BrokenPipeError:
        # The reader of the pipe went away; nothing more can be said to it.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(1)


@app.command()
def review(
    specs: SpecPaths,
    by: Annotated[
        str, typer.Option(metavar="STAGE", help="Ask only what must be right by this stage.")
    ] = "",
    measured: Annotated[
        Basis, typer.Option(help="Judge the design, what was measured, or both.")
    ] = Basis.design,
    hold_at: Annotated[
        Severity, typer.Option(help="The least severity that makes the exit status 1.")
    ] = Severity.major,
    form: Annotated[Form, typer.Option("--as", help="What to print.")] = Form.text,
    to: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write here instead of printing.")
    ] = None,
) -> None:
    """Review assemblies: what fails, by how much, on whose authority, and what was not shown.

    Exit status: 0 nothing stands open at or above --hold-at; 1 something does (a value that is not
    shown counts like a fault of its rule), or nothing could be judged; 2 a file could not be read.
    With --against only what is new counts.
    """
    from checker.judging.many import Asked

    stage = _stage(by)
    earlier = _earlier(against, form)
    book = _rulebook()
    reading = Reading()
    files = reading.files(specs, specs_only=specs_only)
    if form is Form.jsonl:
        asked = Asked(book, partial(_line, hold_at.value), stage, measured.value)
        held = _stream(reading.judged(files, asked, jobs, quiet=to is None), to)
    else:
        pairs = list(reading.judged(files, Asked(book, _pair, stage, measured.value), jobs))
        held = _show_all(pairs, form, to, reading, book, hold_at, earlier, against)
    if not held and not reading.unreadable and not specs_only:
        _complain("no spec was found: a spec is a YAML file that begins with 'vocabulary: 1'")
        reading.unreadable = True
    if status := reading.status(any(held)):
        raise typer.Exit(status)


@app.command()
def rules(
    paths: Annotated[
        list[Path] | None, typer.Argument(metavar="[FILE...]", help="Rule files or folders.")
    ] = None,
) -> None:
    """List the rules, or check the rule files given and list theirs."""
    from checker.showing.console import write
    from checker.showing.rule_page import rules_list

    write(rules_list(_rulebook(*(paths or ()))), sys.stdout)


@app.command()
def why(
    rule: Annotated[str, typer.Argument(metavar="ID", help="A rule, such as drain.above-slab.")],
) -> None:
    """Show one rule: what it asks, why, on whose authority, and examples of both outcomes."""
    from checker.judging.standing import register
    from checker.reading.vocabulary import nearest
    from checker.showing.console import write
    from checker.showing.rule_page import rule_page

    book = _rulebook()
    found = book.rule(rule)
    if found is None:
        _complain(f"there is no rule '{rule}'{nearest(rule, [each.id for each in book.rules])}")
        raise typer.Exit(2)
    write(rule_page(found, register()), sys.stdout)


@app.command()
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

    _rulebook()
    if quantity and quantity not in REGISTRY:
        _complain(f"there is no quantity '{quantity}'{nearest(quantity, list(REGISTRY))}")
        raise typer.Exit(2)
    reading = Reading()
    for one in reading.specs([spec]):
        write(calc_sheet(one, quantity), sys.stdout)
    if reading.unreadable:
        raise typer.Exit(2)


@app.command()
def takeoff(
    specs: SpecPaths,
    to: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write here instead of printing.")
    ] = None,
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
    if not lines and not reading.unreadable:
        _complain("no spec was found: a spec is a YAML file that begins with 'vocabulary: 1'")
        reading.unreadable = True
    _put(lines, to)
    if reading.unreadable:
        raise typer.Exit(2)


@app.command()
def section(
    specs: SpecPaths,
    picture: Annotated[
        Picture, typer.Option(help="The section, the drain in plan and profile, or all levels.")
    ] = Picture.section,
    by: Annotated[
        str, typer.Option(metavar="STAGE", help="Ask only what must be right by this stage.")
    ] = "",
    to: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write here instead of printing.")
    ] = None,
) -> None:
    """Draw the assembly to scale as a sheet in SVG, with what is not met as keynotes."""
    from checker.judging.judge import review as judge
    from checker.showing.drawing import draw

    stage = _stage(by)
    book = _rulebook()
    reading = Reading()
    pairs = [(spec, judge(spec, book, stage)) for spec in reading.specs(specs)]
    if pairs:
        _put(draw(pairs, picture.value), to)
    elif not reading.unreadable:
        _complain("no spec was found: a spec is a YAML file that begins with 'vocabulary: 1'")
        reading.unreadable = True
    if reading.unreadable:
        raise typer.Exit(2)


class Reading:
    """Reads specs one after another; what cannot be read is said and does not stop the others."""

    def __init__(self) -> None:
        self.unreadable = False

    def specs(self, paths: list[str]) -> Iterator[Spec]:
        """Yield every assembly that can be read among files, folders and `-`."""
        from checker.reading.faults import Unreadable
        from checker.reading.reader import find_specs, load_spec

        for path, note in find_specs(paths):
            if note:
                _complain(f"{path}: {note}")
                continue
            try:
                yield from load_spec(path)
            except Unreadable as error:
                self.unreadable = True
                for fault in error.faults:
                    _complain(str(fault))


def _rulebook(*paths: Path) -> Rulebook:
    from checker.judging.rulebook import load_rulebook
    from checker.reading.faults import Unreadable

    try:
        return load_rulebook(*paths)
    except Unreadable as error:
        for fault in error.faults:
            _complain(str(fault))
    except FileNotFoundError as error:
        _complain(str(error))
    raise typer.Exit(2)


def _stage(given: str) -> str:
    from checker.judging.review_data import STAGES
    from checker.reading.vocabulary import nearest, plain_word

    stages = {plain_word(stage): stage for stage in STAGES}
    if given and plain_word(given) not in stages:
        known = ", ".join(STAGES).replace("_", " ")
        _complain(f"there is no stage '{given}'{nearest(given, list(STAGES))}; stages: {known}")
        raise typer.Exit(2)
    return stages.get(plain_word(given), "")


def _show(pairs: list[tuple[Spec, Review]], form: Form, to: Path | None) -> None:
    from checker.showing.console import PIPE_WIDTH, width_of

    content: str | list[Line]
    reviews = [one for _, one in pairs]
    if form is Form.json:
        from checker.showing.json_report import as_json

        content = as_json(reviews)
    elif form is Form.html:
        from checker.showing.report.html import report_page

        content = report_page(pairs)
    else:
        from checker.showing.text import render

        content = render(reviews, width=PIPE_WIDTH if to else width_of(sys.stdout))
    _put(content, to)


def _put(content: str | list[Line], to: Path | None) -> None:
    """Write an output whole into a file, or print it."""
    from checker.showing.console import write, write_file

    if to:
        try:
            write_file(to, content)
        except OSError as error:
            _complain(f"{to}: cannot be written: {error.strerror or error}")
            raise typer.Exit(2) from None
    elif isinstance(content, str):
        sys.stdout.write(content)
    else:
        write(content, sys.stdout)


def _complain(message: str) -> None:
    from checker.showing.console import plain

    sys.stderr.write(f"{plain(message)}\n")
