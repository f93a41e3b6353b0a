"""Dimension strings, level marks and scale bars, as a drafter writes them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from checker.showing.drawing.callouts import spread
from checker.showing.drawing.svg import LEADING, SMALL, Canvas, Point, width_of
from checker.showing.drawing.view import FOOT, INCH, View

_TICK = 2.2
_LONGEST_BAR = 80.0  # points
_LEAST = 0.6  # points; a shorter stretch is not dimensioned


class Stretch(NamedTuple):
    """A length between two places on paper along one line, and what is written at it."""

    start: float
    end: float
    text: str


def _tick(canvas: Canvas, at: Point) -> None:
    canvas.line((at[0] - _TICK, at[1] + _TICK), (at[0] + _TICK, at[1] - _TICK), "edge")


def upright(canvas: Canvas, x: float, stretches: Sequence[Stretch], *, left: bool = False) -> None:
    """Draw stretches up and down at `x`, their texts beside the line and clear of each other."""
    drawn = [one for one in stretches if abs(one.end - one.start) >= _LEAST]
    drawn.sort(key=lambda one: one.start + one.end)
    wishes = [(one.start + one.end) / 2 - LEADING / 2 for one in drawn]
    tops = spread(wishes, [LEADING] * len(drawn), -1e6, 1e6, 0.0)
    for one, top in zip(drawn, tops, strict=True):
        canvas.line((x, one.start), (x, one.end))
        for y in (one.start, one.end):
            _tick(canvas, (x, y))
        side = -1 if left else 1
        at = (x + side * 4.5, top + LEADING * 0.78)
        room = width_of(one.text) + 1.5
        canvas.rect((at[0] - (room if left else 0.8), top + 0.5), (room + 0.8, LEADING - 0.5), "",
                    fill="#fff")  # fmt: skip
        canvas.text(at, one.text, to="end" if left else "start")


def across(canvas: Canvas, y: float, stretches: Sequence[Stretch]) -> None:
    """Draw stretches along a level line at `y`, texts under it, in two rows where they are wide."""
    free = [-1e6, -1e6, -1e6]
    for one in stretches:
        if abs(one.end - one.start) < _LEAST:
            continue
        canvas.line((one.start, y), (one.end, y))
        for x in (one.start, one.end):
            _tick(canvas, (x, y))
        middle, wide = (one.start + one.end) / 2, width_of(one.text)
        row = next((r for r, end in enumerate(free) if middle - wide / 2 > end), len(free) - 1)
        free[row] = middle + wide / 2 + 2
        if row:
            canvas.line((middle, y), (middle, y + row * LEADING + 1))
        at = (middle, y + LEADING + row * LEADING)
        canvas.rect((middle - wide / 2, at[1] - 6.4), (wide, LEADING - 0.4), "", fill="#fff")
        canvas.text(at, one.text, to="middle")


def level_mark(canvas: Canvas, at: Point, *, filled: bool = False) -> None:
    """Draw the triangle of a level mark, standing on its point."""
    x, y = at
    outline = [(x, y), (x - 3, y - 4.6), (x + 3, y - 4.6)]
    canvas.path(outline, "edge", closed=True, fill="#000" if filled else "#fff")


def water_mark(canvas: Canvas, at: Point) -> None:
    """Draw the sign of a water level: a triangle on the line and shorter lines under it."""
    x, y = at
    outline = [(x, y), (x - 3.4, y - 5.2), (x + 3.4, y - 5.2)]
    canvas.path(outline, "water", closed=True, fill="#fff")
    for step, half in ((2.0, 4.2), (4.0, 2.4)):
        canvas.line((x - half, y + step), (x + half, y + step), "water")


def scale_bar(canvas: Canvas, at: Point, view: View, system: str) -> None:
    """Draw a bar of round length, half of it black, that ends at a point."""
    unit, per_unit = ("m", 1.0) if system == "si" else ("ft", FOOT)
    if system != "si" and per_unit * view.scale.per_metre > _LONGEST_BAR:
        unit, per_unit = "in", INCH
    each = per_unit * view.scale.per_metre
    power = 10.0 ** math.floor(math.log10(_LONGEST_BAR / each))
    length = next(n * power for n in (5, 2, 1) if n * power * each <= _LONGEST_BAR)
    half = length * each / 2
    x, y = at[0] - 2 * half, at[1]
    canvas.rect((x, y - 3), (half, 3), "thin", fill="#000")
    canvas.rect((x + half, y - 3), (half, 3), "thin", fill="#fff")
    canvas.text((x, y - 5), "0", to="middle")
    canvas.text((x + 2 * half, y - 5), f"{length:g} {unit}", to="middle", size=SMALL)


def cut_across(canvas: Canvas, y: float, left: float, right: float) -> None:
    """Draw a break line across a wall that goes on above."""
    middle = (left + right) / 2
    kink = [(left, y), (middle - 5, y), (middle - 1.5, y - 4), (middle + 1.5, y + 4),
            (middle + 5, y), (right, y)]  # fmt: skip
    above = [*kink, (right, y - 5), (left, y - 5)]
    canvas.path(above, "", closed=True, fill="#fff")
    canvas.path(kink, "thin")


def flow_arrow(canvas: Canvas, at: Point, way: Point) -> None:
    """Draw a small black arrow that points along a direction of length 1."""
    (x, y), (ux, uy) = at, way
    outline = [(x + ux * 5, y + uy * 5), (x - ux * 5 - uy * 3, y - uy * 5 + ux * 3),
               (x - ux * 5 + uy * 3, y - uy * 5 - ux * 3)]  # fmt: skip
    canvas.path(outline, "thin", closed=True, fill="#000")


def north_arrow(canvas: Canvas, at: Point) -> None:
    """Draw an arrow to the north, which is up."""
    x, y = at
    canvas.line((x, y + 16), (x, y - 16), "edge")
    canvas.path([(x, y - 18), (x - 4, y - 6), (x, y - 9)], "thin", closed=True, fill="#000")
    canvas.path([(x, y - 18), (x + 4, y - 6), (x, y - 9)], "thin", closed=True, fill="#fff")
    canvas.text((x, y - 21), "N", size=9, bold=True, to="middle")


def view_title(canvas: Canvas, at: Point, number: int, text: str, scale: str) -> None:
    """Write the number of a view in its bubble, its title and its scale."""
    x, y = at
    canvas.circle((x, y - 3), 7.5, "edge", fill="#fff")
    canvas.text((x, y - 0.2), str(number), size=8, bold=True, to="middle")
    canvas.text((x + 12, y), text, size=9, bold=True)
    canvas.text((x + 22 + width_of(text, 9, bold=True), y), scale, size=8)


def break_line(canvas: Canvas, x: float, top: float, bottom: float) -> None:
    """Draw the line with a kink at which a drawing is cut off and the thing itself is not."""
    middle = (top + bottom) / 2
    kink = [(x, top - 3), (x, middle - 5), (x - 4, middle - 1.5), (x + 4, middle + 1.5),
            (x, middle + 5), (x, bottom + 3)]  # fmt: skip
    canvas.path(kink, "halo")
    canvas.path(kink, "thin")
