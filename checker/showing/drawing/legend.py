"""The legend beside a drawing: keynotes with their figures, hatches, lines and general notes."""

from __future__ import annotations

from collections.abc import Sequence

from checker.showing.drawing.callouts import HEX, keynote
from checker.showing.drawing.hatches import NAMES, fill_of
from checker.showing.drawing.keynotes import Keynote
from checker.showing.drawing.svg import LEADING, Canvas, shortened, wrapped

_INDENT = 2 * HEX + 5
_FIGURES = 5  # lines of figures of one keynote; the review as text has them all
_ROW = 13.0
_LINES = (("cut", "cut, as shown"), ("unshown", "not shown"), ("beyond", "beyond"))


def legend_head(
    canvas: Canvas, left: float, top: float, width: float, notes: Sequence[Keynote],
    loose: Sequence[int],
) -> float:  # fmt: skip
    """Write the heading, and the numbers that stand at no place; return where keynotes begin."""
    canvas.text((left, top + 14), "Keynotes: what is not met", size=9, bold=True)
    if not notes:
        canvas.text((left, top + 28), "None at what this picture shows.")
        return top + 36
    if not loose:
        return top + 24
    canvas.text((left, top + 27), "At no place in this picture:")
    x, y = left + HEX, top + 38
    for number in loose:
        if x + HEX > left + width:
            x, y = left + HEX, y + 2 * HEX
        keynote(canvas, (x, y), number, f"keynote-{number}")
        x += 2 * HEX + 1
    return y + HEX + 6


def legend_column(
    canvas: Canvas, notes: Sequence[Keynote], left: float, top: float, width: float, bottom: float
) -> Sequence[Keynote]:
    """Write keynotes down a column and return those that found no room."""
    y = top
    for index, note in enumerate(notes):
        room = width - _INDENT
        title = wrapped(note.title, room, 3, bold=True)
        figures = [row for text in note.figures for row in wrapped(text, room, 4)][:_FIGURES]
        height = (len(title) + len(figures)) * LEADING + 3
        if y + height > bottom and y > top:
            return notes[index:]
        keynote(canvas, (left + HEX, y + HEX - 1), note.number, f"legend-{note.number}")
        canvas.lines((left + _INDENT, y + 7), title, bold=True)
        canvas.lines((left + _INDENT, y + 7 + len(title) * LEADING), figures)
        y += height
    return ()


def legend_foot(
    canvas: Canvas, left: float, bottom: float, width: float, materials: Sequence[str],
    notes: Sequence[str], lines: bool,
) -> float:  # fmt: skip
    """Draw the key of hatches and lines and the notes, at the foot; return where they begin."""
    texts = [line for note in notes for line in wrapped(note, width)]
    pens = _LINES if lines else ()
    rows = -(-(len(materials) + len(pens)) // 2)
    top = bottom - 6 - len(texts) * LEADING - rows * _ROW - 16
    canvas.line((left - 6, top - 4), (left + width + 6, top - 4))
    canvas.text((left, top + 8), "Key", size=9, bold=True)
    for index in range(len(materials) + len(pens)):
        column, row = divmod(index, rows)
        x, y = left + column * width / 2, top + 14 + row * _ROW
        if index < len(materials):
            name = materials[index]
            # In a group of its own the hatch begins at the corner, so that its figure is seen.
            sample = canvas.group()
            sample.parent.set("transform", f"translate({x:g} {y:g})")
            sample.rect((0, 0), (26, 11), "edge", fill=fill_of(name))
            label = NAMES[name]
        else:
            pen, label = pens[index - len(materials)]
            canvas.line((x, y + 5), (x + 26, y + 5), pen)
        canvas.text((x + 29, y + 7.6), shortened(label, width / 2 - 30))
    canvas.lines((left, top + 14 + rows * _ROW + 8), texts)
    return top - 8
