"""The footing drain unrolled: inverts over lengths, falls, standing water, and its two limits."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from checker.reading.write_back import format_difference
from checker.showing.drawing import sheet
from checker.showing.drawing.callouts import Callout, Column, draw_callouts
from checker.showing.drawing.dimensions import flow_arrow, view_title, water_mark
from checker.showing.drawing.figures import NOT_SHOWN, Figures
from checker.showing.drawing.hatches import fill_of
from checker.showing.drawing.loop import Course, Station, pond, stations
from checker.showing.drawing.svg import LEADING, Canvas, Point, shortened, width_of

_TALLEST = 230.0  # points; a profile higher than this says no more
_HEAD, _FOOT = 36.0, 68.0  # for falls over it, for corners and the title under it

Numbers = Mapping[str, tuple[int, ...]]


class _Frame(NamedTuple):
    """Where lengths and levels come to lie on paper; each has a scale of its own."""

    left: float
    top: float
    width: float
    height: float
    along: float
    high: float
    low: float

    def x(self, along: float) -> float:
        """Return where a length along the drain lies."""
        return self.left + along / self.along * self.width

    def y(self, level: float) -> float:
        """Return where a level lies."""
        return self.top + (self.high - level) * self.tall

    @property
    def tall(self) -> float:
        """Return the points that a metre of height takes."""
        return self.height / (self.high - self.low)

    @property
    def times(self) -> float:
        """Return how many times larger heights are drawn than lengths."""
        return self.tall / (self.width / self.along)


def draw_profile(
    canvas: Canvas, figures: Figures, course: Course, numbers: Numbers, outlet: Callout | None,
    top: float, number: int,
) -> None:  # fmt: skip
    """Draw the profile between `top` and the foot of the sheet, with the notes beside it."""
    _Profile(canvas, figures, course, numbers).draw(outlet, top, number)


class _Profile:
    def __init__(self, canvas: Canvas, figures: Figures, course: Course, numbers: Numbers) -> None:
        self.canvas, self.figures, self.course, self.numbers = canvas, figures, course, numbers
        self.stations, self.to_scale = stations(course)
        self.known = [one for one in self.stations if one.corner.invert]

    def draw(self, outlet: Callout | None, top: float, number: int) -> None:
        """Draw all of it."""
        title = (sheet.LEFT + 16, sheet.BOTTOM - 9)
        if len(self.stations) < 2 or not self.known:
            self._bare(outlet, top)
            view_title(
                self.canvas, title, number, "The drain as far as it is shown", "not to scale"
            )
            return
        frame = self._frame(top)
        self._limits(frame)
        self._pipe(frame)
        self._corners(frame)
        self._notes(frame, outlet)
        scale = f"levels {frame.times:.0f} times the lengths"
        text = "Profile along the drain" + (", from outlet to outlet" if self.course.closed else "")
        view_title(self.canvas, title, number, text,
                   scale if self.to_scale else "runs not shown: lengths not to scale")  # fmt: skip

    def _frame(self, top: float) -> _Frame:
        inverts = [one.corner.invert.value for one in self.known if one.corner.invert]
        levels = list(inverts)
        for path in ("slab.underside_level", "footing.underside_level", "drain.crown_high",
                     "drain.trench_bottom_low"):  # fmt: skip
            level = self.figures.find(path)
            near = max((max(inverts) - min(inverts)) * 4, 0.6)
            if level and min(inverts) - near < level.value < max(inverts) + near:
                levels.append(level.value)
        high, low = max(levels), min(levels)
        spare = max((high - low) * 0.06, 0.02)
        left = sheet.LEFT + sheet.NOTES_RIGHT + 20
        width = sheet.RIGHT - sheet.NOTES_RIGHT - 20 - left
        room = sheet.BOTTOM - top - _HEAD - _FOOT
        height = min(room, _TALLEST)
        along = max(self.stations[-1].along, 0.1)
        upper = top + _HEAD + (room - height) / 2
        return _Frame(left, upper, width, height, along, high + spare, low - spare)

    def _limits(self, frame: _Frame) -> None:
        """Draw underside of slab and of footing, and shade the room between them."""
        slab = self.figures.find("slab.underside_level")
        base = self.figures.find("footing.underside_level")
        heights = [frame.y(one.value) for one in (slab, base) if one is not None]
        heights = [y for y in heights if frame.top <= y <= frame.top + frame.height]
        if len(heights) == 2 and heights[0] < heights[1]:
            size = (frame.width, heights[1] - heights[0])
            self.canvas.rect((frame.left, heights[0]), size, "", fill=fill_of("window"))
        for y in heights:
            self.canvas.line((frame.left - 8, y), (frame.left + frame.width + 8, y), "cut")

    def _pipe(self, frame: _Frame) -> None:
        line = [(one.along, one.corner.invert.value) for one in self.known if one.corner.invert]
        paper = [(frame.x(x), frame.y(y)) for x, y in line]
        od = self.figures.find("drain.pipe_outside_diameter")
        wall = self.figures.find("drain.pipe_wall")
        if od and wall:
            above = [(x, y - (od.value - wall.value) * frame.tall) for x, y in paper]
            below = [(x, y + wall.value * frame.tall) for x, y in paper]
            outline = [*above, *below[::-1]]
            self.canvas.path(outline, "edge", closed=True, fill="#fff", name="profile-pipe")
        self._ponding(frame, line)
        self.canvas.path(paper, "cut", name="profile-invert")

    def _ponding(self, frame: _Frame, line: Sequence[Point]) -> None:
        depth, names = self.course.pond_depth, [one.corner.name for one in self.known]
        if depth is None or self.course.pond not in names:
            return
        at = names.index(self.course.pond)
        level = line[at][1] + depth.value
        shape = [(frame.x(x), frame.y(y)) for x, y in pond(line, at, level)]
        self.canvas.path(shape, "", closed=True, fill=fill_of("water"), name="profile-pond")
        left, right, y = min(x for x, _ in shape), max(x for x, _ in shape), frame.y(level)
        self.canvas.line((left, y), (right, y), "water")
        water_mark(self.canvas, ((left + right) / 2, y))

    def _corners(self, frame: _Frame) -> None:
        foot = frame.top + frame.height
        free = [-1e6, -1e6]
        for one in self.stations:
            x = frame.x(one.along)
            self.canvas.line((x, frame.top - 4), (x, foot + 4))
            invert = one.corner.invert.text if one.corner.invert else NOT_SHOWN
            name = shortened(one.corner.name, 70, bold=True)
            half = max(width_of(name, bold=True), width_of(invert)) / 2
            row = 0 if x - half > free[0] else 1
            free[row] = x + half + 2
            y = foot + 13 + row * 2 * LEADING
            self.canvas.text((x, y), name, bold=True, to="middle")
            self.canvas.text((x, y + LEADING), invert, to="middle")
        for one, other in pairwise(self.stations):
            self._fall(frame, one, other)

    def _fall(self, frame: _Frame, one: Station, other: Station) -> None:
        """Write length and fall of a run over it, with an arrow the way the water goes."""
        left, right = frame.x(one.along), frame.x(other.along)
        texts = [self._length(one, other)]
        first, second = one.corner.invert, other.corner.invert
        middle, y = (left + right) / 2, frame.top - 22
        if first and second:
            drop = first.value - second.value
            flow_arrow(self.canvas, (middle, frame.top - 7), (1.0 if drop >= 0 else -1.0, 0.0))
            unit = "mm" if self.figures.spec.system == "si" else "in"
            fall = format_difference("length", abs(drop), unit)
            texts.append(f"falls {fall}" if width_of(f"falls {fall}") < right - left - 4 else fall)
        if max(width_of(text) for text in texts) < right - left - 2:
            self.canvas.lines((middle, y), texts, to="middle")

    def _length(self, one: Station, other: Station) -> str:
        run = one.corner.run
        return run.text if run else f"run {NOT_SHOWN}"

    # -- notes ------------------------------------------------------------------------------------

    def _notes(self, frame: _Frame, outlet: Callout | None) -> None:
        foot = frame.top + frame.height
        left = [*self._limit_notes(frame), *self._flattest(frame)]
        right: list[Callout] = []
        heights = [one.corner.invert.value for one in self.known if one.corner.invert]
        high = self.known[heights.index(max(heights))]
        low = self.known[len(heights) - 1 - heights[::-1].index(min(heights))]
        if outlet is not None:
            leaves = self._outlet_station() or low
            beside = left if leaves.along < frame.along / 2 else right
            beside.append(outlet._replace(at=(frame.x(leaves.along), foot + 4)))
        right += [
            self._note("high", frame, high, "highest"),
            self._note("low", frame, low, "lowest"),
        ]
        depth = self.course.pond_depth
        for one in self.known:
            if depth and one.corner.name == self.course.pond:
                text = f"{depth.text} of water stays at {one.corner.name}"
                right.append(self._note("pond", frame, one, text))
                break
        self._columns(left, right, frame.top - 8, foot + 26)

    def _outlet_station(self) -> Station | None:
        course = self.course
        name = course.corners[course.outlet].name if course.outlet is not None else ""
        return next((one for one in self.stations if one.corner.name == name), None)

    def _columns(
        self, left: list[Callout], right: list[Callout], top: float, bottom: float
    ) -> None:
        width = sheet.NOTES_RIGHT - 12
        draw_callouts(self.canvas, left, Column(sheet.LEFT + 6, top, width, bottom, False))
        edge = sheet.RIGHT - sheet.NOTES_RIGHT + 6
        draw_callouts(self.canvas, right, Column(edge, top, width, bottom, True))

    def _note(self, place: str, frame: _Frame, one: Station, text: str) -> Callout:
        level = one.corner.invert.value if one.corner.invert else frame.low
        at = (frame.x(one.along), frame.y(level))
        return Callout(place, at, text, self.numbers.get(place, ()))

    def _limit_notes(self, frame: _Frame) -> list[Callout]:
        notes = []
        for path, text in (("slab.underside_level", "underside of slab"),
                           ("footing.underside_level", "underside of footing")):  # fmt: skip
            level = self.figures.find(path)
            if level and frame.low < level.value < frame.high:
                at = (frame.left - 6, frame.y(level.value))
                notes.append(Callout(path, at, f"{text} {level.text}"))
        return notes

    def _flattest(self, frame: _Frame) -> list[Callout]:
        flat = self.figures.find("drain.flattest_slope")
        numbers = self.numbers.get("course", ())
        if flat is None and not numbers:
            return []
        one, other = self._run_of_slope(flat.value if flat else 0.0)
        levels = [s.corner.invert.value for s in (one, other) if s.corner.invert]
        level = math.fsum(levels) / len(levels) if levels else frame.low
        at = (frame.x((one.along + other.along) / 2), frame.y(level))
        text = f"flattest run {flat.text}" if flat else "the drain"
        return [Callout("course", at, text, numbers)]

    def _run_of_slope(self, slope: float) -> tuple[Station, Station]:
        """Return the run whose fall over its length is nearest to a slope."""

        def off(pair: tuple[Station, Station]) -> float:
            one, other = pair
            if not (one.corner.invert and other.corner.invert and one.corner.run):
                return 1e9
            drop = abs(one.corner.invert.value - other.corner.invert.value)
            return abs(drop / max(one.corner.run.value, 1e-6) - abs(slope))

        return min(pairwise(self.stations), key=off)

    def _bare(self, outlet: Callout | None, top: float) -> None:
        """Draw a bare dashed line where neither corners nor inverts are shown."""
        y = (top + sheet.BOTTOM) / 2 - 20
        left = sheet.LEFT + sheet.NOTES_RIGHT + 30
        right = sheet.RIGHT - sheet.NOTES_RIGHT - 30
        self.canvas.line((left, y), (right, y), "unshown")
        ends = {}
        for place, path, x in (("high", "drain.highest_invert", left),
                               ("low", "drain.lowest_invert", right)):  # fmt: skip
            text = f"{place}est invert {self.figures.said(path)}"
            ends[place] = Callout(place, (x, y), text, self.numbers.get(place, ()))
        notes = [ends["low"]]
        if self.numbers.get("course"):
            middle = ((left + right) / 2, y)
            notes.append(Callout("course", middle, "the drain", self.numbers["course"]))
        if outlet is not None:
            notes.append(outlet._replace(at=(right, y)))
        self._columns([ends["high"]], notes, y - 100, y + 120)
        run = self.figures.said("drain.longest_run")
        self.canvas.text(((left + right) / 2, y - 8), f"longest run {run}", to="middle")
