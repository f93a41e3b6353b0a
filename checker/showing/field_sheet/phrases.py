"""Sentences that the sheet on paper and the sheet as text have in common."""

from __future__ import annotations

from checker.showing.field_sheet.contents import First, Sheet
from checker.showing.field_sheet.dates import Earliest
from checker.showing.field_sheet.photos import VISIBLE, Photo
from checker.showing.field_sheet.pipe import HIGHEST, PipeWord
from checker.showing.field_sheet.rows import JOIN, Rod, Row
from checker.showing.field_sheet.words import Words
from checker.showing.finding_text import named

# How the rules say what they want, before a figure or a word.
_COMPARATORS = (
    "at most", "at least", "below", "above", "between", "is not", "one of", "none of",
    "to be shown", "to be left out", "not before", "before",
)  # fmt: skip
NO_PERMISSION = (
    "A figure that passes is no leave to go in or to fill: the competent person and the engineer "
    "decide."
)


def stage(sheet: Sheet, words: Words) -> str:
    """Return the stage as it is said."""
    return words(sheet.stage.replace("_", " "))


def row_title(row: Row, words: Words) -> str:
    """Return what a row is about, with the corner or other item it belongs to."""
    return named(words(row.title), row.item)


def expected(row: Row, words: Words) -> str:
    """Return what the spec shows, or that it shows nothing."""
    return row.expected if row.expected else words("not shown")


def passes(row: Row, words: Words) -> str:
    """Return what still passes, in one phrase; empty where nothing more is known."""
    if row.low and row.high:
        return words("{low} to {high}", low=_bare(row.low, row.high), high=row.high)
    if row.low:
        return words("{low} or more", low=row.low)
    if row.high:
        return words("{high} or less", high=row.high)
    if row.needed or row.as_shown or row.missing:
        return needed(row.needed, words)
    return words("nothing by itself: stop and ask")


def _bare(low: str, high: str) -> str:
    """Return the lower end without its unit, where the upper one tells it."""
    figure, space, unit = low.rpartition(" ")
    return figure if space and unit.isalpha() and high.endswith(f" {unit}") else low


def rod(one: Rod, words: Words) -> str:
    """Return the least and the most that a rod may read; empty where no rule ends it."""
    if one.least and one.most:
        return words("{low} to {high}", low=_bare(one.least, one.most), high=one.most)
    if one.least:
        return words("{low} or more", low=one.least)
    return words("{high} or less", high=one.most) if one.most else ""


def needed(text: str, words: Words) -> str:
    """Return what rules want, the first words of each in the language."""
    return JOIN.join(_wanted(one, words) for one in text.split(JOIN))


def _wanted(text: str, words: Words) -> str:
    start = next((one for one in _COMPARATORS if text.startswith(one)), "")
    rest = text.removeprefix(start).strip()
    title = max((one for one in words.texts if rest.startswith(f"{one} ")), key=len, default="")
    told = f"{words(title)} {rest.removeprefix(title).strip()}" if title else words(rest)
    return f"{words(start) if start else ''} {told}".strip()


def fails(row: Row) -> bool:
    """Say whether the value shown does not pass as it stands."""
    return not row.missing and not row.as_shown


def first(one: First, words: Words) -> str:
    """Return one of the three things to measure first, and why."""
    title = row_title(one.row, words)
    start = f"{one.row.number}. {title}: "
    if one.row.missing:
        return start + words("not shown, and critical")
    if not one.row.as_shown:
        return start + words("does not pass as drawn")
    spare = words("{spare} to spare", spare=one.spare)
    twice = words("less than it can be read to: measure it twice")
    return f"{start}{spare}, {twice}" if one.close else start + spare


def blank(row: Row, words: Words) -> str:
    """Return the blank of a row, with its unit or its answers; nothing is ever in it."""
    if row.kind == "yes_no":
        return f"[ ] {words('yes')}  [ ] {words('no')}"
    return f"__________ {unit(row)}".rstrip()


def unit(row: Row) -> str:
    """Return the unit to write a reading in."""
    return "ft, in" if row.unit == "ft-in" else row.unit


def no_permission(sheet: Sheet, words: Words) -> str:
    """Return the line that stands under figures on which somebody's life may hang."""
    grave = any(row.path.startswith(("excavation.", "backfill.")) for row in sheet.rows)
    return words(NO_PERMISSION) if grave else ""


def pipe(one: PipeWord, where: str, words: Words) -> str:
    """Return how far the top of the pipe lies under the top of form or footing at a corner."""
    corner = words(one.corner) if one.corner == HIGHEST else one.corner
    if one.shown is None:
        start = words("top of the pipe at {corner}, below the {where}",
                      where=words(where), corner=corner)  # fmt: skip
    else:
        side = "above" if one.shown.above else "below"
        start = words(f"top of the pipe {{shown}} {side} the {{where}} at {{corner}}",
                      shown=one.shown.distance, where=words(where), corner=corner)  # fmt: skip
    text = ", ".join(part for part in (start, _least(one, words), _most(one, words)) if part)
    return f"{text[:1].upper()}{text[1:]}."


def _least(one: PipeWord, words: Words) -> str:
    if one.least is None:
        return ""
    if one.least.above:
        return words("never more than {distance} above", distance=one.least.distance)
    return words("never less than {distance}", distance=one.least.distance)


def _most(one: PipeWord, words: Words) -> str:
    if one.most is None:
        return ""
    if one.most.above:
        return words("never less than {distance} above", distance=one.most.distance)
    return words("never more than {distance}", distance=one.most.distance)


def where(sheet: Sheet) -> str:
    """Return what the tape hangs from: the form while it stands, then the footing."""
    return "top of the form" if sheet.stage == "forms" else "top of the footing"


def day(one: Earliest, words: Words) -> str:
    """Return the earliest day of a step with what it rests on, or why there is none."""
    because = words(one.because, days=one.days)
    if not one.day:
        return f"{words(one.step)}: {words('no day can be told')}: {because}"
    moved = words("moved by: {what}", what=words(one.moved_by))
    lines = words("lines {lines}", lines=one.lines)
    return f"{words(one.step)}: {words('not before')} {one.day} ({because}; {lines}); {moved}"


def shows(photo: Photo, words: Words) -> list[str]:
    """Return what each picture must show, in words."""
    return [words(VISIBLE.get(one, one.replace("_", " "))) for one in photo.shows]


def place(photo: Photo, words: Words) -> str:
    """Return where a picture is taken."""
    return photo.at or words("once")
