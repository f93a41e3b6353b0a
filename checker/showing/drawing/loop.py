"""The course of the drain: its corners on plan where they are shown, and unrolled as a profile."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from checker.showing.drawing.figures import Figures, Measure
from checker.showing.drawing.svg import Point


class Corner(NamedTuple):
    """One corner: its invert and the run to the next one, where shown."""

    name: str
    invert: Measure | None
    run: Measure | None
    turn: str
    at: Point | None


class Course(NamedTuple):
    """The corners in order, whether the last one leads back to the first, and the outlet's."""

    corners: tuple[Corner, ...]
    closed: bool
    closed_shown: bool
    outlet: int | None
    pond: str
    pond_depth: Measure | None


class Station(NamedTuple):
    """A place along the unrolled drain: how far along, and the corner there."""

    along: float
    corner: Corner


def course_of(figures: Figures) -> Course:
    """Return the course of the footing drain as the spec shows it."""
    names = figures.items("drain.corners")
    if not names:
        return _two_ends(figures)
    corners = tuple(_corner(figures, name) for name in names)
    shape = figures.word("drain.shape")
    outlet = figures.word("drain.outlet_corner")
    depth = figures.find("drain.ponding_depth")
    ponding = figures.word("drain.ponding_at") if depth and depth.value > 0 else ""
    return Course(
        corners, shape != "line", bool(shape), names.index(outlet) if outlet in names else None,
        ponding if ponding in names else "", depth,
    )  # fmt: skip


def _two_ends(figures: Figures) -> Course:
    """Return a line from the high to the low end, where those are all that is shown."""
    high, low = figures.find("drain.highest_invert"), figures.find("drain.lowest_invert")
    run = figures.find("drain.longest_run")
    ends: tuple[Corner, ...] = ()
    if high and low:
        ends = (Corner("high end", high, run, "", None), Corner("low end", low, None, "", None))
    return Course(ends, False, True, None, "", None)


def _corner(figures: Figures, name: str) -> Corner:
    def find(key: str) -> Measure | None:
        return figures.find(f"drain.corners.each.{key}", name)

    x, y = find("x"), find("y")
    at = (x.value, y.value) if x and y else None
    turn = figures.word("drain.corners.each.turn", name)
    return Corner(name, find("invert"), find("run_to_next"), turn, at)


def outline(course: Course) -> list[Point]:
    """Return where the corners lie on plan [m], x to the east and y to the north.

    Taken from the places of the corners, else walked along the runs, turning square as shown. A
    loop that was walked has one point more: where its last run ends. None shown, none returned.
    """
    corners = course.corners
    if len(corners) < 2:
        return []
    places = [corner.at for corner in corners]
    if all(places):
        return [place for place in places if place is not None]
    return _walked(corners, closed=course.closed)


def _walked(corners: Sequence[Corner], *, closed: bool) -> list[Point]:
    runs = corners if closed else corners[:-1]
    inner = corners[1:] if closed else corners[1:-1]
    if not inner or not all(corner.run for corner in runs):
        return []
    if not all(corner.turn for corner in inner):
        return []
    points, heading = [(0.0, 0.0)], 0.0
    for number, corner in enumerate(runs):
        length = corner.run.value if corner.run else 0.0
        x, y = points[-1]
        points.append((x + length * math.cos(heading), y + length * math.sin(heading)))
        turn = corners[(number + 1) % len(corners)].turn
        heading += {"left": math.pi / 2, "right": -math.pi / 2}.get(turn, 0.0)
    return points


def closing_error(points: Sequence[Point], corners: int) -> float:
    """Return how far a walked loop ends from where it began [m]; 0 when it was not walked."""
    if len(points) <= corners:
        return 0.0
    (x0, y0), (x1, y1) = points[0], points[-1]
    return math.hypot(x1 - x0, y1 - y0)


def stations(course: Course) -> tuple[list[Station], bool]:
    """Return the corners along the unrolled drain [m] and whether their distances are shown.

    A loop begins and ends at its outlet corner. Without all runs the corners stand evenly.
    """
    corners = list(course.corners)
    if course.closed and corners:
        first = course.outlet or 0
        corners = corners[first:] + corners[:first]
        corners.append(corners[0])
    runs = [corner.run for corner in corners[:-1]]
    shown = all(runs)
    along, found = 0.0, []
    for number, corner in enumerate(corners):
        found.append(Station(along, corner))
        run = runs[number] if number < len(runs) else None
        along += run.value if shown and run else 10.0
    return found, shown


def centroid(ring: Sequence[Point]) -> Point:
    """Return the middle of the area inside a ring, or of its points where it has no area."""
    twice, x_sum, y_sum = 0.0, 0.0, 0.0
    for (x0, y0), (x1, y1) in pairwise([*ring, ring[0]]):
        cross = x0 * y1 - x1 * y0
        twice, x_sum, y_sum = twice + cross, x_sum + (x0 + x1) * cross, y_sum + (y0 + y1) * cross
    if abs(twice) < 1e-6:
        return math.fsum(x for x, _ in ring) / len(ring), math.fsum(y for _, y in ring) / len(ring)
    return x_sum / (3 * twice), y_sum / (3 * twice)


def outward(ring: Sequence[Point], closed: bool, along: Point) -> Point:
    """Return the direction on paper, where down counts as more, that leads away from the house.

    `along` is the direction of a run; the house lies on the inside of a closed ring.
    """
    area = math.fsum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairwise([*ring, ring[0]]))
    ux, uy = along
    return (uy, -ux) if area >= 0 or not closed else (-uy, ux)


def pond(line: Sequence[Point], at: int, level: float) -> list[Point]:
    """Return the outline of water that stands to a level over a low point of a line.

    `line` is (along, invert); the water ends where the line rises to the level on either side.
    """
    bed = [line[at]]
    for step in (-1, 1):
        here = at
        while 0 <= here + step < len(line):
            (x0, y0), (x1, y1) = line[here], line[here + step]
            if y1 >= level:
                share = (level - y0) / (y1 - y0) if y1 > y0 else 0.0
                edge = (x0 + (x1 - x0) * share, level)
                bed = [edge, *bed] if step < 0 else [*bed, edge]
                break
            bed = [line[here + step], *bed] if step < 0 else [*bed, line[here + step]]
            here += step
    return [*bed, (bed[-1][0], level), (bed[0][0], level)]
