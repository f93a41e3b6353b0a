"""The sheet: letter paper, lying, with border, title block, room for drawings, and a legend."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Sequence
from typing import NamedTuple

from checker.judging.review_data import Review
from checker.showing.drawing import hatches
from checker.showing.drawing.figures import NOT_SHOWN, Figures
from checker.showing.drawing.keynotes import Keynote
from checker.showing.drawing.legend import legend_column, legend_foot, legend_head
from checker.showing.drawing.svg import Canvas, Point, root, shortened, wrapped
from checker.showing.drawing.view import View
from checker.showing.finding_text import stage_words
from checker.showing.text import closing

WIDTH, HEIGHT = 792.0, 612.0
MARGIN = 18.0
STRIP = 48.0  # height of the title block
LEGEND = 188.0  # width of the column at the right
LEFT, TOP = MARGIN, MARGIN
RIGHT, BOTTOM = WIDTH - MARGIN - LEGEND, HEIGHT - MARGIN - STRIP
SPLIT = 292.0  # where the lower of two views begins
NOTES_LEFT, NOTES_RIGHT = 94.0, 118.0  # columns of notes beside a view

_PAD = 6.0
_COLUMNS = 4


class Job(NamedTuple):
    """What the title block says of the assembly."""

    job: str
    lot: str
    assembly: str
    paper: str
    datum: str
    date: str
    made_from: str
    status: str


class Page(NamedTuple):
    """What stands round one picture: title, scale, keynotes, key, notes, keynotes of no place."""

    title: str
    scale: str
    keynotes: Sequence[Keynote]
    materials: Sequence[str]
    notes: Sequence[str]
    loose: Sequence[int] = ()
    lines: bool = True


def job_of(figures: Figures, review: Review) -> Job:
    """Return what the title block says; what the spec does not show is said so."""
    text = figures.spec.text
    stage = stage_words(review.stage) + (" (assumed)" if review.stage_assumed else "")
    paper = (review.paper or NOT_SHOWN).replace("_", " ")
    return Job(
        text("job.name") or NOT_SHOWN, text("job.lot") or NOT_SHOWN, review.assembly,
        f"{paper}, {stage}", text("levels.datum") or NOT_SHOWN,
        text("job.as_of") or text("measured.date"), review.file, closing([review]),
    )  # fmt: skip


class Sheets:
    """Sheets one under the other in one drawing."""

    def __init__(self, title: str) -> None:
        self.drawing = root(WIDTH, HEIGHT, title)
        self.definitions = ET.SubElement(self.drawing, "defs")
        hatches.define(self.definitions)
        self.count = 0

    def new(self) -> Canvas:
        """Return the canvas of the next sheet; its upper left corner is the origin."""
        self.count += 1
        canvas = Canvas(self.drawing, f"sheet-{self.count}-").group("all")
        if self.count > 1:
            canvas.parent.set("transform", f"translate(0 {(self.count - 1) * HEIGHT:g})")
        height = self.count * HEIGHT
        self.drawing.set("height", f"{height / 72:g}in")
        self.drawing.set("viewBox", f"0 0 {WIDTH:g} {height:g}")
        self.drawing[1].set("height", f"{height:g}")
        return canvas

    def window(self, canvas: Canvas, name: str, view: View) -> Canvas:
        """Return a canvas that shows nothing outside the window of a view."""
        clip = f"sheet-{self.count}-{name}-window"
        path = ET.SubElement(self.definitions, "clipPath", {"id": clip})
        Canvas(path).rect((view.left, view.top), (view.width, view.height), "")
        return canvas.group(f"{name}-view", clip)

    def finish(self, canvas: Canvas, page: Page, job: Job) -> None:
        """Draw border, title block and legend round a picture; add sheets for a long legend."""
        _frame(canvas, page.title, page.scale, job)
        canvas.line((RIGHT, TOP), (RIGHT, BOTTOM), "edge")
        left, width = RIGHT + _PAD, LEGEND - 2 * _PAD
        foot = legend_foot(canvas, left, BOTTOM, width, page.materials, page.notes, page.lines)
        head = legend_head(canvas, left, TOP, width, page.keynotes, page.loose)
        rest = legend_column(canvas, page.keynotes, left, head, width, foot)
        while rest:
            rest = self._continued(rest, page, job)

    def _continued(self, rest: Sequence[Keynote], page: Page, job: Job) -> Sequence[Keynote]:
        canvas = self.new()
        _frame(canvas, f"{page.title}, keynotes continued", "", job)
        canvas.text((LEFT + _PAD, TOP + 14), "Keynotes, continued", size=9, bold=True)
        each = (WIDTH - 2 * MARGIN) / _COLUMNS
        for index in range(_COLUMNS):
            left = LEFT + index * each
            if index:
                canvas.line((left, TOP + 22), (left, BOTTOM))
            rest = legend_column(canvas, rest, left + _PAD, TOP + 30, each - 2 * _PAD, BOTTOM - 4)
        return rest


def _frame(canvas: Canvas, title: str, scale: str, job: Job) -> None:
    canvas.rect((LEFT, TOP), (WIDTH - 2 * MARGIN, HEIGHT - 2 * MARGIN), "border")
    canvas.line((LEFT, BOTTOM), (WIDTH - MARGIN, BOTTOM), "cut")
    cells = (
        (118.0, "job", job.job, "lot", job.lot),
        (142.0, "assembly", job.assembly, "paper, stage", job.paper),
        (130.0, "levels on the datum", job.datum, "date" if job.date else "", job.date),
        (178.0, "drawing", title, "scale on letter paper" if scale else "", scale),
    )
    x = LEFT
    for width, upper, upper_text, lower, lower_text in cells:
        _cell(canvas, (x, BOTTOM), width, upper, upper_text)
        _cell(canvas, (x, BOTTOM + STRIP / 2), width, lower, lower_text)
        x += width
        canvas.line((x, BOTTOM), (x, HEIGHT - MARGIN), "edge")
    room = WIDTH - MARGIN - x
    middle = (x + room / 2, BOTTOM + 14)
    canvas.text(middle, "NOT FOR CONSTRUCTION", size=11, bold=True, to="middle")
    canvas.lines((x + 5, BOTTOM + 25), wrapped(job.status, room - 10, 2))
    canvas.text((x + 5, BOTTOM + 43), shortened(f"drawn from {job.made_from}", room - 10))


def _cell(canvas: Canvas, corner: Point, width: float, label: str, text: str) -> None:
    x, y = corner
    canvas.text((x + 4, y + 8), label)
    canvas.text((x + 4, y + STRIP / 2 - 5), shortened(text, width - 8, 8, bold=True), size=8,
                bold=True)  # fmt: skip
