"""The footing drain in plan, where its corners say how it lies, over its profile."""

from __future__ import annotations

import math

from checker.judging.review_data import Review
from checker.reading.write_back import format_difference
from checker.showing.drawing import sheet
from checker.showing.drawing.callouts import Callout, Column, draw_callouts
from checker.showing.drawing.dimensions import flow_arrow, north_arrow, scale_bar, view_title
from checker.showing.drawing.figures import NOT_SHOWN, Figures
from checker.showing.drawing.keynotes import PAPER, Places, at_places, keynotes_of
from checker.showing.drawing.loop import centroid, closing_error, course_of, outline, outward
from checker.showing.drawing.profile import draw_profile
from checker.showing.drawing.svg import LEADING, Point
from checker.showing.drawing.view import View, fitting

_SPLIT = sheet.TOP + 262
_MARGIN = 46.0  # round the drain, for lengths and the outlet leg
_LEG = 34.0  # the outlet leg is drawn so long, whatever its length
_GAP = 0.05  # m; a loop whose ends lie nearer than this closes
_CORNER = 2.5
_WIDE, _TALL = 58.0, 28.0  # a run shorter than this has no room for words beside it

PLAN_PLACES: Places = {
    "drain.ponding": ("pond", "course"),
    "drain.ponding-full": ("pond", "course"),
    "drain.flat": ("course",),
    "drain.too-far": ("course",),
    "drain.gap": ("course",),
    "drain.cleanout": ("course",),
    "drain.contradiction": ("course",),
    "drain.under-building": ("course",),
    "drain.above-slab": ("high",),
    "drain.below-bearing": ("low",),
    "drain.vertical-budget": ("high",),
    "outlets": ("outlet",),
    "sump": ("outlet",),
}


def draw_plan(sheets: sheet.Sheets, figures: Figures, review: Review) -> None:
    """Put plan and profile of the footing drain on a new sheet."""
    _Plan(sheets, figures, review).draw()


class _Plan:
    def __init__(self, sheets: sheet.Sheets, figures: Figures, review: Review) -> None:
        self.sheets, self.figures, self.review = sheets, figures, review
        self.canvas = sheets.new()
        self.course = course_of(figures)
        self.points = outline(self.course)
        self.keynotes = keynotes_of(review)
        drawn = {"course", "outlet", "high", "low"} | ({"pond"} if self.course.pond else set())
        self.numbers = at_places(self.keynotes, drawn, PLAN_PLACES)
        self.short_runs: dict[str, str] = {}

    def draw(self) -> None:
        """Draw the plan over the profile, or the profile alone, and the sheet round them."""
        scale, title = "levels exaggerated", "profile of the footing drain"
        outlet = Callout("outlet", (0, 0), self._outlet_text(), self.numbers.get("outlet", ()))
        if self.points:
            title = "plan and profile of the footing drain"
            scale = f"plan {self._plan(outlet)}"
            self.canvas.line((sheet.LEFT, _SPLIT), (sheet.RIGHT, _SPLIT))
        in_plan = bool(self.points) and self.course.outlet is not None
        top = _SPLIT if self.points else sheet.TOP
        draw_profile(self.canvas, self.figures, self.course, self.numbers,
                     None if in_plan else outlet, top, 2 if self.points else 1)  # fmt: skip
        here = {n for place, some in self.numbers.items() if place != PAPER for n in some}
        page = sheet.Page(
            title, scale, [note for note in self.keynotes if note.number in here],
            ("window", "water"), self._notes(), lines=False,
        )  # fmt: skip
        self.sheets.finish(self.canvas, page, sheet.job_of(self.figures, self.review))

    def _plan(self, outlet: Callout) -> str:
        view = self._view()
        paper = [view.at(point) for point in self.points]
        walked = len(paper) > len(self.course.corners)
        ring = paper if walked or not self.course.closed else [*paper, paper[0]]
        self.canvas.path(ring, "membrane", name="plan-drain")
        for number in range(len(ring) - 1):
            self._run(ring, number)
        for x, y in paper[: len(self.course.corners)]:
            size = (2 * _CORNER, 2 * _CORNER)
            self.canvas.rect((x - _CORNER, y - _CORNER), size, "edge", fill="#fff")
        middle = centroid(paper)
        if self.course.closed:
            self.canvas.text(middle, "house", size=9, to="middle")
        notes = [
            Callout(corner.name, at, self._corner_text(number))
            for number, (corner, at) in enumerate(zip(self.course.corners, paper, strict=False))
        ]
        if self.course.outlet is not None:
            notes.append(outlet._replace(at=self._leg(paper[self.course.outlet], middle)))
        self._note_columns(notes, view)
        y = _SPLIT - 9
        title = "Plan of the footing drain"
        view_title(self.canvas, (sheet.LEFT + 16, y), 1, title, view.scale.name)
        scale_bar(self.canvas, (sheet.RIGHT - 14, y), view, self.figures.spec.system)
        if all(corner.at for corner in self.course.corners):
            north_arrow(self.canvas, (sheet.RIGHT - 24, _SPLIT - 56))
        return view.scale.name

    def _view(self) -> View:
        xs, ys = [x for x, _ in self.points], [y for _, y in self.points]
        left = sheet.LEFT + sheet.NOTES_RIGHT
        width, height = sheet.RIGHT - sheet.NOTES_RIGHT - left, _SPLIT - sheet.TOP - 32
        wide, tall = max(xs) - min(xs), max(ys) - min(ys)
        room = (width - 2 * _MARGIN, height - 2 * _MARGIN)
        scale = fitting(max(wide, 0.1), max(tall, 0.1), room, self.figures.spec.system)
        x0 = min(xs) - (width / scale.per_metre - wide) / 2
        y0 = max(ys) + (height / scale.per_metre - tall) / 2
        return View(left, sheet.TOP + 4, width, height, x0, y0, scale)

    def _run(self, ring: list[Point], number: int) -> None:
        """Write length and fall along a run, with an arrow the way the water goes."""
        (x0, y0), (x1, y1) = ring[number], ring[number + 1]
        length = math.hypot(x1 - x0, y1 - y0)
        if length < 1:
            return
        way = ((x1 - x0) / length, (y1 - y0) / length)
        corners = self.course.corners
        here, there = corners[number], corners[(number + 1) % len(corners)]
        texts = [here.run.text] if here.run else []
        middle = ((x0 + x1) / 2, (y0 + y1) / 2)
        if here.invert and there.invert:
            drop = here.invert.value - there.invert.value
            flow_arrow(self.canvas, middle, way if drop >= 0 else (-way[0], -way[1]))
            texts.append(f"falls {difference(self.figures, abs(drop))}")
        out = outward(ring, self.course.closed, way)
        to = "start" if out[0] > 0.5 else "end" if out[0] < -0.5 else "middle"
        lift = -LEADING if out[1] < -0.5 else 4 if out[1] > 0.5 else -2
        at = (middle[0] + out[0] * 10, middle[1] + out[1] * 12 + lift)
        if self._has_room(length, way):
            self.canvas.lines(at, texts, to=to)
        else:
            self.short_runs[here.name] = f"{', '.join(texts)} to {there.name}"

    def _has_room(self, length: float, way: Point) -> bool:
        """Say whether length and fall can stand beside a run; else they go to its corner."""
        return length >= (_WIDE if abs(way[0]) > abs(way[1]) else _TALL)

    def _leg(self, start: Point, middle: Point) -> Point:
        """Draw the leg to the outlet, cut short, away from the house; return its end."""
        dx, dy = start[0] - middle[0], start[1] - middle[1]
        length = math.hypot(dx, dy) or 1.0
        way = (dx / length, dy / length)
        end = (start[0] + way[0] * _LEG, start[1] + way[1] * _LEG)
        self.canvas.line(start, end, "edge", name="plan-outlet-leg")
        flow_arrow(self.canvas, end, way)
        return end

    def _note_columns(self, notes: list[Callout], view: View) -> None:
        middle, width = view.left + view.width / 2, sheet.NOTES_RIGHT - 12
        left = Column(sheet.LEFT + 6, view.top, width, view.bottom, False)
        right = Column(sheet.RIGHT - sheet.NOTES_RIGHT + 6, view.top, width, view.bottom, True)
        draw_callouts(self.canvas, [one for one in notes if one.at[0] < middle], left)
        draw_callouts(self.canvas, [one for one in notes if one.at[0] >= middle], right)

    def _corner_text(self, number: int) -> str:
        corner = self.course.corners[number]
        cleanouts = {one.casefold() for one in self.figures.words("drain.cleanouts_at")}
        extra = ", cleanout" if corner.name.casefold() in cleanouts else ""
        invert = corner.invert.text if corner.invert else NOT_SHOWN
        run = self.short_runs.get(corner.name, "")
        return f"{corner.name}, invert {invert}{extra}" + (f"; {run}" if run else "")

    def _outlet_text(self) -> str:
        said, texts = self.figures.said, []
        for item in self.figures.items("outlets"):
            spare = self.figures.find("outlets.each.fall_left", item)
            left = f", {difference(self.figures, spare.value)} of fall left" if spare else ""
            texts.append(
                f"{item}: {said('outlets.each.kind', item)}, "
                f"leg {said('outlets.each.leg_length', item)}, "
                f"invert {said('outlets.each.invert', item)}{left}"
            )
        return "to outlet " + "; ".join(texts) if texts else f"outlet {NOT_SHOWN}"

    def _notes(self) -> list[str]:
        course, notes = self.course, []
        if self.points:
            gap = closing_error(self.points, len(course.corners))
            if course.closed and gap > _GAP:
                apart = self.figures.long(gap)
                notes.append(f"Runs and turns do not close: their ends lie {apart} apart.")
            if not all(corner.at for corner in course.corners):
                notes.append("Which way is north is not shown.")
            notes.append("The outlet leg is cut short. Arrows: the way the water goes.")
        elif self.figures.items("drain.corners"):
            notes.append("No plan: neither turns nor places of the corners are shown.")
        if not self.figures.items("drain.corners"):
            how = "; the drain is drawn from its high to its low end" if course.corners else ""
            notes.append(f"Corners are not shown{how}.")
        elif not course.closed_shown:
            notes.append("Loop or line is not shown; drawn as a loop.")
        if course.corners:
            notes.append("In the profile the pipe is drawn from its outside bottom to its crown.")
        return notes


def difference(figures: Figures, metres: float) -> str:
    """Return how far two levels lie apart, in inches or millimetres."""
    unit = "mm" if figures.spec.system == "si" else "in"
    return format_difference("length", metres, unit)
