"""The command line: thin, and the only place that prints or ends the process."""

from __future__ import annotations

import contextlib
import gc
import os
import sys
from collections.abc import Callable, Iterable, Iterator
from enum import StrEnum
from functools import partial
from itertools import chain, islice
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, TypeVar

import typer

if TYPE_CHECKING:
    from checker.judging.carried import Earlier
    from checker.judging.many import Asked, Made
    from checker.judging.review_data import Review
    from checker.judging.rulebook import Rulebook
    from checker.judging.settle import Settled
    from checker.reading.faults import Fault
    from checker.reading.spec import Spec
    from checker.showing.forms import End, Output, Paper
    from checker.showing.letter import Letter
    from checker.showing.lines import Line

Setting = TypeVar("Setting")

# How many objects are made before the collector looks among them. A review makes fewer.
_SELDOM = 20_000

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


class EffectForm(StrEnum):
    """What an effect can be printed as."""

    text = "text"
    markdown = "markdown"
    json = "json"
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
PlaceName = Annotated[
    str, typer.Option(metavar="ID", help="Judge by the law of this place, such as henrico-va.")
]


def main() -> None:
    """Run the command; exit status 0, 1, 2, or 130 when interrupted."""
    _open_streams()
    try:
        status = _run()
        sys.stdout.flush()
    except KeyboardInterrupt:
        status = 130
    except BrokenPipeError:
        # The reader of the pipe went away; nothing more can be said to it.
        status = 1
    except OSError as error:
        _complain(f"cannot go on: {error.strerror or error}")
        status = 2
    if status == 130:
        _complain("interrupted")
    # What could not be written now cannot be written on the way out either.
    with contextlib.suppress(OSError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    sys.exit(status)


def _run() -> int:
    try:
        app()
    except SystemExit as ended:
        return ended.code if isinstance(ended.code, int) else 0
    return 0


def _open_streams() -> None:
    """Put something in place of a stream that whoever started this has closed."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            setattr(sys, name, open(os.devnull, mode, encoding="utf-8"))  # noqa: SIM115


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
        Severity | None,
        typer.Option(
            help="The least severity that makes the exit status 1; else the house's, else major."
        ),
    ] = None,
    place: PlaceName = "",
    on: Annotated[
        str, typer.Option(metavar="DATE", help="The day judged: a date, or the word today.")
    ] = "",
    form: Annotated[Form, typer.Option("--as", help="What to print.")] = Form.text,
    short: Annotated[
        bool, typer.Option("--short", help="As a text message: the three worst, and how many.")
    ] = False,
    to: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write here instead of printing.")
    ] = None,
    against: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Show what is new since this review as JSON."),
    ] = None,
    specs_only: Annotated[
        bool, typer.Option("--specs-only", help="Leave alone every file that is no spec.")
    ] = False,
    jobs: Annotated[
        int, typer.Option(min=1, metavar="N", help="How many processes share the work.")
    ] = 1,
) -> None:
    """Review assemblies: what fails, by how much, on whose authority, and what was not shown.

    Exit status: 0 nothing stands open at or above --hold-at; 1 something does (a value that is not
    shown counts like a fault of its rule), or nothing could be judged; 2 a file could not be read.
    With --against only what is new counts.
    """
    from checker.judging.carried import compare
    from checker.judging.many import Asked
    from checker.showing.forms import compared, output

    stage = _stage(by)
    if short and form is not Form.text:
        _complain(f"--short is text, and --as {form.value} is not")
        raise typer.Exit(2)
    earlier = _earlier(against, form) if against else None
    day = _day(on)
    book = _rulebook()
    at, where = hold_at.value if hold_at else "", _place(place)
    reading = Reading()
    files = reading.files(specs, specs_only=specs_only)
    name, paper = "short" if short else form.value, _paper(to)
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
            _put(compared(name, reviews, comparison, book, end, paper.width), to)
    if not held and not specs_only:
        reading.found_nothing()
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
    place: PlaceName = "",
) -> None:
    """Show one rule: what it asks, why, on whose authority, and examples of both outcomes."""
    from checker.judging.places import by_the_law_of, load_place
    from checker.judging.standing import register
    from checker.reading.vocabulary import nearest
    from checker.showing.console import write
    from checker.showing.rule_page import rule_page

    book = _rulebook()
    if where := _place(place):
        book = by_the_law_of(load_place(where), book)
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
    if not lines:
        reading.found_nothing()
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
    from checker.judging.many import Asked
    from checker.showing.drawing import draw

    stage = _stage(by)
    book = _rulebook()
    reading = Reading()
    asked = Asked(book, _pair, stage)
    pairs = list(reading.judged(reading.files(specs), asked, 1, quiet=True))
    if pairs:
        _put(draw(pairs, picture.value), to)
    else:
        reading.found_nothing()
    if reading.unreadable:
        raise typer.Exit(2)


@app.command()
def letter(
    specs: SpecPaths,
    trade: Annotated[
        str, typer.Option(metavar="TRADE", help="Leave in it only what concerns this trade.")
    ] = "",
    form: Annotated[
        LetterForm, typer.Option("--as", help="What to write; the next letter reads json.")
    ] = LetterForm.markdown,
    to: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write here instead of printing.")
    ] = None,
    earlier: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="The letter or review before this one, as JSON."),
    ] = None,
    by: Annotated[
        str, typer.Option(metavar="STAGE", help="Ask only what must be right by this stage.")
    ] = "",
) -> None:
    """Write the comment letter: numbered items, a suggestion for each, and the questions.

    It approves nothing: the words of the stamp stand beside boxes that a person ticks. Exit
    status: 0 it was written, 2 something could not be read.
    """
    from checker.showing.letter import letter_of, load_dispositions, load_earlier, matching

    stage, whose = _stage(by), _trade(trade)
    if form is LetterForm.docx and to is None:
        _complain("--as docx goes into a file: name it with --to")
        raise typer.Exit(2)
    before = _setting(load_earlier, earlier) if earlier else ()
    usual, reading = load_dispositions(), Reading()
    settled = list(reading.settled(specs, _rulebook()))
    letters = []
    for one in settled:
        last = matching(before, one.spec.name, alone=len(settled) == 1)
        if earlier and last is None:
            _complain(f"{earlier}: says nothing of {one.spec.name}, so its items are numbered anew")
        own = usual.changed(one.house.dispositions) if one.house else usual
        letters.append(letter_of(one.spec, one.review(stage), whose, last, own))
    if letters:
        _send(letters, form, to)
    else:
        reading.found_nothing()
    if status := reading.status(False):
        raise typer.Exit(status)


@app.command()
def fieldsheet(
    specs: SpecPaths,
    by: Annotated[str, typer.Option(metavar="STAGE", help="The stage it is taken to.")],
    instrument: Annotated[
        str, typer.Option(metavar="LEVEL", help="Level of the instrument: print rod readings.")
    ] = "",
    language: Annotated[str, typer.Option(metavar="WORD", help="en, or es for Spanish.")] = "en",
    form: Annotated[SheetForm, typer.Option("--as", help="What to print.")] = SheetForm.text,
    to: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write here instead of printing.")
    ] = None,
) -> None:
    """Print the page for the site: what to measure, what still passes, what to photograph."""
    from checker.showing.console import PIPE_WIDTH, width_of
    from checker.showing.field_sheet import in_form, languages, sheet_of, words_in

    stage = _stage(by)
    if not stage or language not in languages():
        wanted = f"one of {', '.join(languages())}" if stage else "the stage is wanted: --by"
        _complain(f"--language {language}: {wanted}" if stage else wanted)
        raise typer.Exit(2)
    reading = Reading()
    try:
        sheets = [
            sheet_of(one.spec, one.review(stage), one.rulebook, instrument)
            for one in reading.settled(specs, _rulebook())
        ]
    except ValueError as error:
        _complain(str(error))
        raise typer.Exit(2) from None
    if sheets:
        width = PIPE_WIDTH if to else width_of(sys.stdout)
        _put(in_form(sheets, words_in(language), form.value, width), to)
    else:
        reading.found_nothing()
    if status := reading.status(False):
        raise typer.Exit(status)


@app.command()
def owner(
    specs: SpecPaths,
    to: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write here instead of printing.")
    ] = None,
) -> None:
    """Write the owner's page in Markdown: what to keep up, by what was built."""
    from checker.reading.spec import MEASURED
    from checker.showing.owner_page import owner_page

    reading = Reading()
    built = [
        (one.spec, one.review("handover")) for one in reading.settled(specs, _rulebook(), MEASURED)
    ]
    if built:
        _put(owner_page(built), to)
    else:
        reading.found_nothing()
    if status := reading.status(False):
        raise typer.Exit(status)


@app.command()
def compare(
    standard: Annotated[str, typer.Argument(metavar="STANDARD", help="The file of one standard.")],
    submittal: Annotated[str, typer.Argument(metavar="SUBMITTAL", help="A file, or -.")],
    place: PlaceName = "",
    to: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write here instead of printing.")
    ] = None,
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

    book, where = _rulebook(), _place(place)
    reading = Reading()
    standards, submitted = list(reading.specs([standard])), list(reading.specs([submittal]))
    if not reading.unreadable and (len(standards) != 1 or not submitted):
        _complain(f"{standard}: one assembly is wanted as the standard, and one or more beside it")
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
        _put(lines, to)
    if status := reading.status(differs):
        raise typer.Exit(status)


@app.command()
def effect(
    before: Annotated[
        Path, typer.Argument(metavar="BEFORE", exists=True, help="The folder, or file, as it was.")
    ],
    after: Annotated[
        Path, typer.Argument(metavar="AFTER", exists=True, help="The same with the edit in it.")
    ],
    by: Annotated[
        str, typer.Option(metavar="STAGE", help="Ask only what must be right by this stage.")
    ] = "",
    hold_at: Annotated[
        Severity | None,
        typer.Option(
            help="The least severity that makes the exit status 1; else the house's, else major."
        ),
    ] = None,
    place: PlaceName = "",
    on: Annotated[
        str, typer.Option(metavar="DATE", help="The day judged: a date, or the word today.")
    ] = "",
    form: Annotated[EffectForm, typer.Option("--as", help="What to print.")] = EffectForm.text,
    to: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write here instead of printing.")
    ] = None,
    jobs: Annotated[
        int, typer.Option(min=1, metavar="N", help="How many processes share the work.")
    ] = 1,
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

    stage, day, where = _stage(by), _day(on), _place(place)
    terms = Terms(before, after, _rulebook(), stage, day, where)
    try:
        tasks = tasks_of(before, after)
    except LookupError as error:
        _complain(str(error.args[0]))
        raise typer.Exit(2) from None
    progress = Progress(sys.stderr, len(tasks))
    try:
        found = find_effect(tasks, terms, jobs, progress.step)
    finally:
        progress.clear()
    for one in found.unread:
        _complain(str(one))
    width = PIPE_WIDTH if to else width_of(sys.stdout)
    _put(in_form(form.value, found, partial(both_sides, terms=terms), width), to)
    status = 2 if found.unread else int(found.holds(hold_at.value if hold_at else ""))
    if status:
        raise typer.Exit(status)


class Reading:
    """Reads specs one after another; what cannot be read is said and does not stop the others."""

    def __init__(self) -> None:
        self.unreadable = False
        self.faults: list[Fault] = []
        self._said: set[Fault] = set()

    def files(self, paths: list[str], *, specs_only: bool = False) -> list[Path | None]:
        """Return every spec file among files, folders and `-`, which is None."""
        from checker.reading.reader import find_specs

        found: list[Path | None] = []
        for path, note in find_specs(paths, specs_only=specs_only):
            if not note:
                found.append(path)
            elif not specs_only:
                _complain(f"{path}: {note}")
        return found

    def specs(self, paths: list[str]) -> Iterator[Spec]:
        """Yield every assembly that can be read."""
        from checker.reading.faults import Unreadable
        from checker.reading.reader import load_spec

        for path in self.files(paths):
            try:
                yield from load_spec(path)
            except Unreadable as error:
                self.note(error.faults)

    def settled(
        self, paths: list[str], rulebook: Rulebook, basis: str = "design"
    ) -> Iterator[Settled]:
        """Yield every assembly that can be read, with what it is judged by."""
        from checker.judging.settle import settle
        from checker.reading.faults import Unreadable
        from checker.reading.measured import on_basis

        for spec in self.specs(paths):
            for one in on_basis(spec, basis):
                try:
                    yield settle(one, rulebook)
                except Unreadable as error:
                    self.note(error.faults)

    def judged(
        self, files: list[Path | None], asked: Asked[Made], jobs: int, *, quiet: bool = False
    ) -> Iterator[Made]:
        """Yield what is made of every assembly; how far that has come is said unless `quiet`."""
        from checker.judging.many import judge_files
        from checker.showing.progress import Progress

        # A review leaves nothing behind that refers to itself in a circle. To look for that as
        # often as Python does takes a twentieth of the time, here and in copies of this process.
        gc.set_threshold(_SELDOM)
        progress = Progress(None if quiet else sys.stderr, len(files))
        try:
            for one in judge_files(files, asked, jobs):
                progress.step()
                if one.faults:
                    progress.clear()
                    self.note(one.faults)
                yield from one.made
        finally:
            progress.clear()

    def found_nothing(self) -> None:
        """Say so, unless what could not be read was said already."""
        if not self.unreadable:
            _complain("no spec was found: a spec is a YAML file that begins with 'vocabulary: 1'")
            self.unreadable = True

    def status(self, held: bool) -> int:
        """Return the exit status; `held` says that something stands open."""
        return 2 if self.unreadable else int(held)

    def end(self, held: bool) -> End:
        """Return how the run ended."""
        from checker.showing.forms import End

        return End(self.faults, self.status(held))

    def note(self, faults: Iterable[Fault]) -> None:
        """Say what is wrong with a file."""
        self.unreadable = True
        for fault in faults:
            # A house file at fault is at fault for every spec of the house.
            if fault not in self._said:
                self._said.add(fault)
                self.faults.append(fault)
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


def _day(given: str) -> str:
    """Return the day asked for. Only the word today reads the clock."""
    from datetime import date

    from checker.judging.day import read_day

    try:
        return read_day(date.today().isoformat() if given == "today" else given) if given else ""
    except ValueError as error:
        _complain(f"--on: {error}, or as the word today")
    raise typer.Exit(2)


def _place(given: str) -> str:
    """Return the id of the place asked for."""
    from checker.judging.places import find_place
    from checker.reading.faults import Unreadable

    try:
        return find_place(given).id if given else ""
    except (LookupError, Unreadable) as error:
        _complain(str(error.args[0]))
    raise typer.Exit(2)


def _trade(given: str) -> str:
    from checker.judging.rulebook import TRADES
    from checker.reading.vocabulary import nearest, plain_word

    if given and plain_word(given) not in TRADES:
        near = nearest(given, list(TRADES))
        _complain(f"there is no trade '{given}'{near}; trades: {', '.join(TRADES)}")
        raise typer.Exit(2)
    return plain_word(given)


def _setting(read: Callable[[Path], Setting], path: Path) -> Setting:
    """Read a file that a letter is written by."""
    try:
        return read(path)
    except OSError as error:
        _complain(f"{path}: cannot be read: {error.strerror or error}")
    except ValueError as error:
        _complain(str(error))
    raise typer.Exit(2)


def _send(letters: list[Letter], form: LetterForm, to: Path | None) -> None:
    from checker.showing.console import write_bytes
    from checker.showing.letter import in_form

    try:
        content = in_form(letters, form.value)
    except ModuleNotFoundError:
        _complain("--as docx needs one library more: pip install 'belowgrade[docx]'")
        raise typer.Exit(2) from None
    if isinstance(content, str) or to is None:
        _put(str(content), to)
        return
    try:
        write_bytes(to, content)
    except OSError as error:
        _complain(f"{to}: cannot be written: {error.strerror or error}")
        raise typer.Exit(2) from None


def _earlier(against: Path, form: Form) -> tuple[Earlier, ...]:
    from checker.judging.earlier import load_earlier
    from checker.reading.faults import Unreadable
    from checker.showing.forms import COMPARED

    if form.value not in COMPARED:
        _complain(f"--against goes with --as {', '.join(COMPARED)}")
        raise typer.Exit(2)
    try:
        return load_earlier(against)
    except Unreadable as error:
        _complain(str(error))
    raise typer.Exit(2)


def _pair(spec: Spec, review: Review) -> tuple[Spec, Review]:
    return spec, review


def _review_alone(_: Spec, review: Review) -> Review:
    return review


def _part(
    make: Callable[[Spec, Review], Setting], hold_at: str, spec: Spec, review: Review
) -> tuple[Setting, bool]:
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
        _put_pieces(pieces, to, for_people=output.for_people)
    return held


def _paper(to: Path | None) -> Paper:
    from checker.showing.console import PIPE_WIDTH, in_colour, width_of
    from checker.showing.forms import Paper

    if to:
        return Paper(PIPE_WIDTH, coloured=False)
    return Paper(width_of(sys.stdout), coloured=in_colour(sys.stdout))


def _in_sight(to: Path | None) -> bool:
    """Say whether an output is read as it comes, and says by itself how far that has come."""
    from checker.showing.console import in_sight

    return to is None and in_sight(sys.stdout)


def _put(content: str | list[Line], to: Path | None) -> None:
    """Write an output whole into a file, or print it."""
    _put_pieces(iter((content,)), to, for_people=isinstance(content, list))


def _put_pieces(pieces: Iterator[str | list[Line]], to: Path | None, *, for_people: bool) -> None:
    """Write an output piece by piece as it comes; a file stands there whole or not at all."""
    from checker.showing.console import write, write_pieces

    if to:
        try:
            write_pieces(to, pieces)
        except OSError as error:
            _complain(f"{to}: cannot be written: {error.strerror or error}")
            raise typer.Exit(2) from None
        return
    for piece in pieces:
        if for_people:
            write(piece, sys.stdout)
        else:
            # The same bytes on every machine, whatever its locale.
            sys.stdout.buffer.write(str(piece).encode("utf-8"))
        sys.stdout.flush()


def _complain(message: str) -> None:
    from checker.showing.console import plain

    # Where not even this can be said, the exit status must do.
    with contextlib.suppress(OSError):
        sys.stderr.write(f"{plain(message)}\n")
