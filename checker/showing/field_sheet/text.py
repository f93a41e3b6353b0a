"""The field sheet as text, for a printer that knows nothing else."""

from __future__ import annotations

from collections.abc import Iterable

from checker.showing.field_sheet import phrases
from checker.showing.field_sheet.contents import Sheet
from checker.showing.field_sheet.fill_in import fill_in
from checker.showing.field_sheet.rows import Row
from checker.showing.field_sheet.words import Words
from checker.showing.lines import BLANK, PIPE_WIDTH, WIDEST, Line, heading, joined, line, paragraph

_NUMBER = 4
_SIGNAL = 9
_LABEL = 10
_SIGNATURE = "____________________"


def as_text(sheet: Sheet, words: Words, *, width: int = PIPE_WIDTH) -> list[Line]:
    """Return a sheet as lines of at most `width` columns; every blank in it is empty."""
    width = min(width, WIDEST)
    return [
        *_head(sheet, words, width),
        *_safety(sheet, words, width),
        *_list(words("After this stage you can no longer change:"),
               map(words, sheet.buried), width),
        *_list(words("If you measure only three things"),
               (phrases.first(one, words) for one in sheet.first), width),
        *_measure(sheet, words, width),
        *_look(sheet, words, width),
        *_list(words("Tape over the forms") if sheet.stage == "forms" else words("Tape"),
               (phrases.pipe(one, phrases.where(sheet), words) for one in sheet.pipe), width),
        *_photos(sheet, words, width),
        *_list(words("Earliest days"), (phrases.day(one, words) for one in sheet.dates), width),
        *_holds(sheet, words, width),
        *_fill_in(sheet, words, width),
        *_foot(sheet, words, width),
    ]  # fmt: skip


def _head(sheet: Sheet, words: Words, width: int) -> list[Line]:
    instrument = words("instrument at {level}", level=sheet.instrument) if sheet.instrument else ""
    about = joined(
        [
            sheet.assembly,
            words("levels: {datum}", datum=sheet.datum or words("datum not shown")),
            instrument,
        ]
    )
    title = words("Field sheet, stage {stage}", stage=phrases.stage(sheet, words))
    return [
        *paragraph(title, width, style="heading"),
        *paragraph(about, width),
        *paragraph(words.mark, width),
    ]


def _safety(sheet: Sheet, words: Words, width: int) -> list[Line]:
    rows = [
        row
        for signal, text in sheet.cautions
        for row in paragraph(
            words(text), width, label=words(signal), hang=_SIGNAL, label_style=signal
        )
    ]
    return [BLANK, *rows] if rows else []


def _measure(sheet: Sheet, words: Words, width: int) -> list[Line]:
    if not sheet.measure:
        return []
    lines = heading(words("Measure"), width)
    lines += paragraph(words("Each by itself, everything else as drawn."), width)
    lines += paragraph(phrases.no_permission(sheet, words), width)
    for row in sheet.measure:
        lines += [BLANK, *_title(row, words, width)]
        tolerance = words("read to {tolerance}", tolerance=row.tolerance) if row.tolerance else ""
        lines += _row("expected", joined([phrases.expected(row, words), tolerance]), words, width)
        lines += _row("passes", phrases.passes(row, words), words, width)
        lines += _rod(row, words, width)
        lines += _row("measured", phrases.blank(row, words), words, width)
    return lines


def _title(row: Row, words: Words, width: int) -> list[Line]:
    failing = f" ({words('does not pass as drawn')})" if phrases.fails(row) else ""
    title = f"{phrases.row_title(row, words)}{failing}"
    return paragraph(title, width, label=f"{row.number}.", hang=_NUMBER, style="title")


def _rod(row: Row, words: Words, width: int) -> list[Line]:
    lines = []
    for number, one in enumerate(row.rods):
        ends = phrases.rod(one, words)
        told = joined([one.expected, f"{words('passes')} {ends}" if ends else ""])
        lines += _row("rod" if number == 0 else "", told, words, width)
    return lines


def _look(sheet: Sheet, words: Words, width: int) -> list[Line]:
    if not sheet.look:
        return []
    lines = heading(words("Look"), width)
    for row in sheet.look:
        lines += [BLANK, *_title(row, words, width)]
        lines += _row("expected", phrases.expected(row, words), words, width)
        lines += _row("passes", phrases.passes(row, words), words, width)
        lines += _row("seen", phrases.blank(row, words), words, width)
    return lines


def _photos(sheet: Sheet, words: Words, width: int) -> list[Line]:
    if not sheet.photos:
        return []
    lines = heading(words("Photograph before it is covered"), width)
    for photo in sheet.photos:
        where = phrases.place(photo, words)
        for text, name in zip(phrases.shows(photo, words), photo.files, strict=True):
            lines += paragraph(f"{where}: {text}", width, label="[ ]", hang=_NUMBER)
            lines += paragraph(name, width, indent=_NUMBER)
    return lines


def _holds(sheet: Sheet, words: Words, width: int) -> list[Line]:
    rows = [
        joined([words("hold {id}", id=one.id), words(one.type), one.by])
        + f"  {words('signed')} {_SIGNATURE} {words('date')} __________"
        for one in sheet.holds
    ] or [words("No hold point is named for this stage.")]
    signed = f"{words('Measured by')} {_SIGNATURE} {words('date')} __________"
    return _list(words("Hold points and signatures"), [*rows, signed], width)


def _fill_in(sheet: Sheet, words: Words, width: int) -> list[Line]:
    if not sheet.rows:
        return []
    text = words("Type the readings in here and add it to the spec; then: {command}",
                 command="belowgrade review SPEC --measured both")  # fmt: skip
    lines = [*heading(words("To be typed in"), width), *paragraph(text, width), BLANK]
    return lines + [line(one) for one in fill_in(sheet, words)]


def _foot(sheet: Sheet, words: Words, width: int) -> list[Line]:
    made = words("Prepared with rules of {book}, digest {digest}.",
                 book=sheet.rulebook, digest=sheet.digest[:12])  # fmt: skip
    return [
        BLANK,
        *paragraph(f"{sheet.file}. {made} {words(NOT_A_RELEASE)}", width, style="faint"),
    ]


def _row(label: str, text: str, words: Words, width: int) -> list[Line]:
    return paragraph(
        text, width, label=words(label), indent=_NUMBER, hang=_LABEL, label_style="label"
    )


def _list(title: str, texts: Iterable[str], width: int) -> list[Line]:
    lines = [row for text in texts for row in paragraph(text, width, label="-", indent=2, hang=2)]
    return [*heading(title, width), *lines] if lines else []


NOT_A_RELEASE = (
    "This sheet releases nothing. The local authority, the competent person and the licensed "
    "engineer decide."
)
