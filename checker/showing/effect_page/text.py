"""The effect of an edit as lines: the edits, then the lots, the gravest first."""

from __future__ import annotations

from collections.abc import Sequence

from checker.judging.effect_data import WORSE
from checker.showing.effect_page.contents import Alike, Contents, Section
from checker.showing.effect_page.edited import Edited, EditRow
from checker.showing.effect_page.names import listed
from checker.showing.effect_page.rows import ROW_WAYS, Figure, Row, RuleRow, label_of, was_now
from checker.showing.finding_text import labelled, relabelled
from checker.showing.lines import (
    BLANK,
    PIPE_WIDTH,
    WIDEST,
    Line,
    heading,
    joined,
    line,
    paragraph,
)

TITLE = "What an edit does"
_SIDE = 8
_LINE = 11
# More than these hide the rest; the JSON has them all.
_FILES, _EDITS, _IN_FULL, _WORSE, _ROWS = 20, 40, 20, 30, 8


def as_lines(contents: Contents, *, width: int = PIPE_WIDTH) -> list[Line]:
    """Return the page as lines of at most `width` columns."""
    width = min(width, WIDEST)
    lines = paragraph(TITLE, width, style="heading")
    for label, text in contents.sides:
        lines += paragraph(text, width, label=label, hang=_SIDE, style="faint")
    lines += [BLANK, *paragraph(contents.summary, width, style="strong")]
    for edited in contents.edited[:_FILES]:
        lines += _edited(edited, width)
    lines += _more("Edited too", [one.file for one in contents.edited[_FILES:]], width)
    for section in contents.sections:
        lines += _section(section, width)
    for title, told in contents.alone:
        lines += heading(f"{title}: {len(told)}", width)
        lines += [row for one in told for row in paragraph(one, width, label="-", indent=2, hang=2)]
    if contents.same:
        lines += [BLANK, *paragraph(contents.same, width)]
    return [*lines, BLANK, line(contents.closing, "closing")]


def _edited(edited: Edited, width: int) -> list[Line]:
    lines = heading(f"Edited: {edited.file}", width)
    lines += paragraph(edited.reaches, width)
    lines.append(BLANK)
    for row in edited.rows[:_EDITS]:
        lines += _edit(row, width)
    lines += _more("and", [one.path for one in edited.rows[_EDITS:]], width)
    for rule in edited.rules:
        lines += _rule(rule, width)
    return lines


def _edit(row: EditRow, width: int) -> list[Line]:
    return [
        *labelled(row.line, f"{row.title} ({row.path})", width, _LINE),
        *labelled("", was_now((row.was, row.now)), width, _LINE),
        *labelled("", f"reaches {row.reaches}" if row.reaches else "", width, _LINE),
    ]


def _rule(rule: RuleRow, width: int) -> list[Line]:
    lines = labelled("rule", f"{rule.title} ({rule.rule}): {rule.how}", width, _LINE)
    for text in rule.texts:
        for label, side in relabelled(text.label, text.sides):
            lines += labelled(label, side, width, _LINE)
    return lines


def _section(section: Section, width: int) -> list[Line]:
    lines = heading(f"{section.title}: {section.lots}", width)
    for alike in section.alike[:_IN_FULL]:
        lines += [BLANK, *_alike(alike, width)]
    return [*lines, *_more("and", section.rest(_IN_FULL), width)]


def _alike(alike: Alike, width: int) -> list[Line]:
    lines = paragraph(alike.name, width, label=f"{alike.number}.", hang=4, style="title")
    lines += paragraph(alike.by, width, indent=4)
    for way in ROW_WAYS:
        rows = [row for row in alike.rows if row.way == way]
        most = _WORSE if way == WORSE else _ROWS
        for row in rows[:most]:
            lines += _row(row, width)
        label = _short(way)
        lines += _more(label, [row.rule for row in rows[most:]], width)
        for again in alike.again:
            text = f"as in {again.number}: {again.rules}"
            lines += labelled(label, text, width) if again.way == way else []
    if alike.others:
        count = len(alike.others)
        text = f"{count} more {'lots' if count > 1 else 'lot'} alike: {listed(alike.others)}"
        lines += labelled("and", text, width)
    return lines


def _row(row: Row, width: int) -> list[Line]:
    if not row.outcome[1]:
        (figure,) = row.figures
        text = joined([f"{row.title} ({row.rule})", _room(figure)], ": ")
        return labelled(_short(row.way), text, width)
    title = f"{row.title} ({row.rule}): was {row.outcome[0]}, now {row.outcome[1]}"
    lines = labelled(label_of(row), title, width)
    for figure in row.figures:
        lines += _figure(figure, width)
    for name, text in (("because", row.because), ("safety", row.safety)):
        lines += labelled(name, text, width)
    return lines


def _figure(figure: Figure, width: int) -> list[Line]:
    shown = was_now(figure.shown)
    rows = [
        ("shown", f"{shown} ({figure.title})" if shown else ""),
        ("needed", was_now(figure.needed)),
        ("room", _room(figure)),
    ]
    return [row for label, text in rows for row in labelled(label, text, width)]


def _room(figure: Figure) -> str:
    return joined([was_now(figure.room), figure.change], ": ")


def _short(way: str) -> str:
    return way.removeprefix("room ")


def _more(label: str, names: Sequence[str], width: int) -> list[Line]:
    """Return what is left out by name, so that nobody takes a cut list for a whole one."""
    return labelled(label, f"{len(names)} more: {listed(names)}", width) if names else []
