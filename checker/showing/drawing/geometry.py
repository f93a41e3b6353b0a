"""Shapes and pipes of a cut, and the plain geometry behind them.

Distances are metres: across, out from the outside face of the wall, earth side positive; up, levels
on the datum of the spec. Nothing here knows of paper.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

Point = tuple[float, float]

FAR = 30.0  # m; farther than any window looks
SNUG = 0.003  # m; faces that are nearer than this touch
_STEEPEST_SEARCH = 60.0  # m; no bank rises higher
_HALVINGS = 60


class Shape(NamedTuple):
    """An area (with a hatch) or a line (without) of the cut; dashed when it is not shown.

    `off` is how far on paper [points] a line stands off the face it lies on.
    """

    name: str
    points: tuple[Point, ...]
    hatch: str = ""
    pen: str = "edge"
    shown: bool = True
    off: float = 0.0


class Pipe(NamedTuple):
    """A pipe in the cut: middle, radii, and the angles of its holes from straight up [rad].

    `beyond` is a pipe that lies behind the cut.
    """

    name: str
    middle: Point
    outside: float
    inside: float
    holes: tuple[float, ...] = ()
    hole_size: float = 0.0
    shown: bool = True
    beyond: bool = False


def box(left: float, right: float, low: float, high: float) -> tuple[Point, ...]:
    """Return the corners of a rectangle, whichever of its two levels is the higher."""
    low, high = min(low, high), max(low, high)
    return (left, low), (right, low), (right, high), (left, high)


def between(start: Point, end: Point, share: float) -> Point:
    """Return the point at a share of the way from one point to another."""
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share


def ground_at(ground: Sequence[Point], x: float) -> float:
    """Return the level of a line of ground at a distance; it goes on level beyond its ends."""
    for (x0, y0), (x1, y1) in pairwise(ground):
        if x0 <= x <= x1 and x1 > x0:
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
    return ground[0][1] if x < ground[0][0] else ground[-1][1]


def bank_top(ground: Sequence[Point], foot: Point, per_rise: float) -> Point:
    """Return where a bank that leans back so much per rise comes out of the ground."""
    low, high = 0.0, _STEEPEST_SEARCH
    for _ in range(_HALVINGS):
        rise = (low + high) / 2
        if foot[1] + rise < ground_at(ground, foot[0] + rise * per_rise):
            low = rise
        else:
            high = rise
    return foot[0] + low * per_rise, foot[1] + low


def down_the_wall(
    top: float, bottom: float, joint: float, toe: float, lap: float | None
) -> tuple[Point, ...]:
    """Return the line of a coat or sheet: down the wall, and over the footing where it goes on.

    It turns out over the footing by `lap`, and goes down the footing's side when its bottom lies
    lower than the joint and nothing says that the lap ends before the edge.
    """
    start = (0.0, top)
    if bottom > joint + SNUG or (not lap and bottom >= joint - SNUG):
        return start, (0.0, bottom)
    if bottom < joint - SNUG and (lap is None or lap >= toe - SNUG):
        return start, (0.0, joint), (toe, joint), (toe, bottom)
    if lap:
        return start, (0.0, joint), (min(lap, toe), joint)
    return start, (0.0, max(bottom, joint))


def over_insulation(line: Sequence[Point], thick: float, low: float) -> tuple[Point, ...]:
    """Return a line down the wall as it runs over insulation on the wall, down to a level."""
    (x0, top), (x1, bottom) = line[0], line[1]
    if top <= low:
        return tuple(line)
    if low <= bottom + SNUG:
        return (x0 + thick, top), (x1 + thick, bottom), *line[1 if len(line) > 2 else 2 :]
    return (x0 + thick, top), (x0 + thick, low), (x1, low), *line[1:]


def hole_angles(holes: Sequence[str], rows_apart: float) -> tuple[float, ...]:
    """Return where the holes of a pipe are, as angles from straight up, clockwise [rad]."""
    if "all_around" in holes or "slotted" in holes:
        return tuple(math.tau * (step + 0.5) / 8 for step in range(8))
    half = rows_apart / 2
    up = (-half, half) if "up" in holes or "both" in holes else ()
    down = (math.pi - half, math.pi + half) if "down" in holes or "both" in holes else ()
    return (*up, *down)


def wrap(toe: float, reach: float, joint: float, bottom: float, top: float) -> tuple[Point, ...]:
    """Return the outline of the drain stone, from the wall over the footing and back.

    Stone that lies no higher than the footing stays beside it.
    """
    if top <= joint + SNUG:
        return (toe, top), (toe, bottom), (reach, bottom), (reach, top)
    shelf = max(joint, bottom)
    return (0.0, top), (0.0, shelf), (toe, shelf), (toe, bottom), (reach, bottom), (reach, top)


def ring(middle: Point, radius: float) -> tuple[Point, ...]:
    """Return a circle as a closed line of short strokes."""
    steps = [math.tau * step / 40 for step in range(41)]
    return tuple(
        (middle[0] + radius * math.sin(a), middle[1] + radius * math.cos(a)) for a in steps
    )
