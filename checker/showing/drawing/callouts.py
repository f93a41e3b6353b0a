"""Notes beside a view: a few words, the numbers of keynotes, and a leader to the place meant.

Notes stand in columns at the sides of a view, in the order of their places from top to bottom, so
that leaders do not cross, and are pushed apart until none covers another.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from checker.showing.drawing.svg import LEADING, Canvas, Point, wrapped

HEX = 7.0  # half the width of a keynote's frame
_STEP = 2 * HEX + 1.2
_GAP = 3.0
_BESIDE = 3  # so many keynotes stand on one line with their words
_NARROWEST = 56.0  # room that words need there
_ROW = 2 * HEX + 1.0


class Callout(NamedTuple):
    """A note before it is set: the place it means on paper, its words, its keynotes."""

    place: str
    at: Point
    text: str
    numbers: tuple[int, ...] = ()
    spare: bool = False  # may be left out where room is short


class Column(NamedTuple):
    """Where notes may stand on paper; `leaders_left` when the view lies to their left."""

    left: float
    top: float
    width: float
    bottom: float
    leaders_left: bool


class _Set(NamedTuple):
    callout: Callout
    lines: list[str]
    rows: int
    beside: bool  # a few keynotes stand on one line with the words

    @property
    def height(self) -> float:
        """Return the height of words and keynotes together."""
        tall = len(self.lines) * LEADING
        return max(tall, self.rows * _ROW) if self.beside else tall + self.rows * _ROW


def draw_callouts(canvas: Canvas, callouts: Sequence[Callout], column: Column) -> None:
    """Draw notes in a column, each with its leader."""
    ordered = sorted(callouts, key=lambda one: (one.at[1], -one.at[0], one.place))
    chosen = _fit(ordered, column)
    wishes = [one.callout.at[1] - one.height / 2 for one in chosen]
    tops = spread(wishes, [one.height for one in chosen], column.top, column.bottom, _GAP)
    for one, top in zip(chosen, tops, strict=True):
        _leader(canvas, one, top, column)
    for one, top in zip(chosen, tops, strict=True):
        _note(canvas, one, top, column)


def spread(
    wishes: Sequence[float], heights: Sequence[float], top: float, bottom: float, gap: float
) -> list[float]:
    """Return tops near those wished for, in the same order, that leave a gap between neighbours.

    When all together are higher than the room they close up and run over its lower end.
    """
    room = bottom - top
    needed = math.fsum(heights) + gap * max(len(heights) - 1, 0)
    if needed > room:
        gap = max(0.0, (room - math.fsum(heights)) / max(len(heights) - 1, 1))
    tops: list[float] = []
    free = top
    for wish, height in zip(wishes, heights, strict=True):
        tops.append(max(wish, free))
        free = tops[-1] + height + gap
    limit = max(bottom, top + math.fsum(heights) + gap * max(len(heights) - 1, 0))
    for index in range(len(tops) - 1, -1, -1):
        tops[index] = min(tops[index], limit - heights[index])
        limit = tops[index] - gap
    return tops


def keynote(canvas: Canvas, middle: Point, number: int, name: str = "") -> None:
    """Draw the number of a keynote in its six-sided frame."""
    x, y = middle
    h = HEX * 0.84
    outline = [(x - HEX, y), (x - HEX / 2, y - h), (x + HEX / 2, y - h), (x + HEX, y),
               (x + HEX / 2, y + h), (x - HEX / 2, y + h)]  # fmt: skip
    canvas.path(outline, "edge", closed=True, fill="#fff", name=name)
    canvas.text((x, y + 2.5), str(number), bold=True, to="middle")


def _fit(ordered: Sequence[Callout], column: Column) -> list[_Set]:
    """Set notes with as many lines as there is room for; those without a keynote give way first."""
    room = column.bottom - column.top
    weighty = [one for one in ordered if one.numbers or not one.spare]
    noted = [one for one in ordered if one.numbers]
    chosen: list[_Set] = []
    for most, notes in (
        (4, ordered), (3, ordered), (2, ordered), (3, weighty), (2, weighty), (1, weighty),
        (1, noted), (0, noted),
    ):  # fmt: skip
        chosen = [_set(one, column.width, most) for one in notes]
        gap = _GAP if most > 1 else 0.4
        if math.fsum(one.height + gap for one in chosen) <= room:
            break
    return chosen


def _set(callout: Callout, width: float, most: int) -> _Set:
    across = max(int(width // _STEP), 1)
    rows = -(-len(callout.numbers) // across)
    beside = 0 < len(callout.numbers) <= _BESIDE
    beside = beside and width - len(callout.numbers) * _STEP >= _NARROWEST
    taken = len(callout.numbers) * _STEP + 2 if beside else 0
    lines = wrapped(callout.text, width - taken, most) if most else []
    return _Set(callout, lines, rows, beside)


def _note(canvas: Canvas, one: _Set, top: float, column: Column) -> None:
    to = "start" if column.leaders_left else "end"
    x = column.left if column.leaders_left else column.left + column.width
    aside = len(one.callout.numbers) * _STEP + 2 if one.beside else 0
    text = x + aside if column.leaders_left else x - aside
    lower = max((_ROW - len(one.lines) * LEADING) / 2, 0) if one.beside else 0
    canvas.lines((text, top + 6.6 + lower), one.lines, to=to)
    y = top + (0 if one.beside else len(one.lines) * LEADING) + HEX
    across = max(int(column.width // _STEP), 1)
    for index, number in enumerate(one.callout.numbers):
        row, place = divmod(index, across)
        step = HEX + place * _STEP
        middle = (x + step if column.leaders_left else x - step, y + row * _ROW)
        keynote(canvas, middle, number, name=f"keynote-{number}")


def _leader(canvas: Canvas, one: _Set, top: float, column: Column) -> None:
    """Draw the leader: level for a little, then straight to its place, ending in a dot."""
    y = top + (HEX if one.beside or not one.lines else LEADING / 2)
    away = -1 if column.leaders_left else 1
    edge = column.left if column.leaders_left else column.left + column.width
    end = one.callout.at
    level = min(9.0, max(abs(end[0] - edge) * 0.6, 3.0))
    start, elbow = (edge + away * 2, y), (edge + away * level, y)
    canvas.path([start, elbow, end], "thin")
    canvas.circle(end, 1.1, "", fill="#000")
