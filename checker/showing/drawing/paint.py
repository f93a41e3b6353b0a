"""Shapes and pipes of the cut onto paper."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from checker.showing.drawing.geometry import Pipe, Shape
from checker.showing.drawing.hatches import fill_of
from checker.showing.drawing.svg import PENS, Canvas, Point
from checker.showing.drawing.view import View

_STITCH = 6.0  # points between the cross strokes that mark a filter fabric


def paint_shape(canvas: Canvas, view: View, shape: Shape, name: str) -> None:
    """Draw an area or a line; what is not shown is dashed."""
    points = _held(view, [view.at(point) for point in shape.points])
    if shape.hatch:
        pen = shape.pen if shape.shown or not shape.pen else "unshown"
        canvas.path(points, pen, closed=True, fill=fill_of(shape.hatch), name=name)
        return
    points = standing_off(points, shape.off)
    pen = shape.pen if shape.shown else "unshown"
    if pen == "fabric":
        canvas.path(points, "edge", name=name)
        for start, end in stitches(points):
            canvas.line(start, end, "edge")
        return
    if pen == "sheet":
        for start, end in stitches(points, 4.0, slant=0.0):
            canvas.line(start, end, "thin")
    if pen in ("membrane", "film"):
        canvas.path(points, "halo")
    canvas.path(points, pen, name=name)


def standing_off(points: Sequence[Point], off: float) -> list[Point]:
    """Move a line off the face it lies on, outward and up, but keep the level of its ends."""
    if not off:
        return list(points)
    moved = [(x + off, y - off) for x, y in points]
    for end, beside in ((0, 1), (-1, -2)):
        upright = abs(points[end][0] - points[beside][0]) < 1e-6
        x, y = points[end]
        moved[end] = (x + off, y) if upright else (x, y - off)
    return moved


def stitches(
    points: Sequence[Point], every: float = _STITCH, slant: float = 1.0
) -> list[tuple[Point, Point]]:
    """Return short strokes across a line, evenly along it."""
    found = []
    rest = every / 2
    for (x0, y0), (x1, y1) in pairwise(points):
        length = math.hypot(x1 - x0, y1 - y0)
        if length == 0 or length > 5000:
            continue
        ux, uy = (x1 - x0) / length, (y1 - y0) / length
        along = rest
        while along < length:
            x, y = x0 + ux * along, y0 + uy * along
            dx, dy = (ux * slant - uy) * 1.5, (uy * slant + ux) * 1.5
            found.append(((x - dx, y - dy), (x + dx, y + dy)))
            along += every
        rest = along - length
    return found


def paint_pipe(canvas: Canvas, view: View, pipe: Pipe, name: str) -> None:
    """Draw a pipe in its true size: the wall as a ring, the holes as gaps in it."""
    middle = view.at(pipe.middle)
    outside, inside = (r * view.scale.per_metre for r in (pipe.outside, pipe.inside))
    if pipe.beyond:
        canvas.circle(middle, outside, "beyond", name=name)
        return
    pen = "edge" if pipe.shown else "unshown"
    canvas.circle(middle, outside, pen, fill="#fff", name=name)
    if pipe.shown and outside - inside > PENS["edge"].weight:
        canvas.circle(middle, inside, "thin")
    if outside < 6:
        return
    _holes(canvas, pipe, middle, outside, inside, view.scale.per_metre)
    canvas.line((middle[0] - 3, middle[1]), (middle[0] + 3, middle[1]))
    canvas.line((middle[0], middle[1] - 3), (middle[0], middle[1] + 3))


def _holes(
    canvas: Canvas, pipe: Pipe, middle: Point, outside: float, inside: float, per_metre: float
) -> None:
    half = max(pipe.hole_size * per_metre / 2, 1.0) / outside
    for angle in pipe.holes:
        ring = [_on(middle, r, angle + side * half)
                for r, side in ((outside + 0.8, -1), (outside + 0.8, 1),
                                (inside - 0.8, 1), (inside - 0.8, -1))]  # fmt: skip
        canvas.path(ring, "", closed=True, fill="#fff")
        for side in (-1, 1):
            ends = [_on(middle, r, angle + side * half) for r in (inside - 2.4, outside + 0.4)]
            canvas.path(ends, "edge")


def _on(middle: Point, radius: float, angle: float) -> Point:
    """Return a point on a circle at an angle from straight up, clockwise."""
    return middle[0] + radius * math.sin(angle), middle[1] - radius * math.cos(angle)


def _held(view: View, points: list[Point]) -> list[Point]:
    """Keep far points near the window, so that no coordinate grows without bound."""
    far = 4000.0
    return [
        (min(max(x, view.left - far), view.right + far),
         min(max(y, view.top - far), view.bottom + far))
        for x, y in points
    ]  # fmt: skip
