"""The section: the whole wall with the ground, and its foot enlarged, both to scale."""

from __future__ import annotations

from collections.abc import Collection

from checker.judging.review_data import Review
from checker.showing.drawing import sheet, strings
from checker.showing.drawing.callouts import HEX, Callout, Column, draw_callouts, keynote
from checker.showing.drawing.cut import cut_of
from checker.showing.drawing.dimensions import (
    break_line,
    cut_across,
    scale_bar,
    view_title,
    water_mark,
)
from checker.showing.drawing.figures import NOT_SHOWN, Figures
from checker.showing.drawing.keynotes import PAPER, at_places, keynotes_of
from checker.showing.drawing.labels import label_of
from checker.showing.drawing.labels_drain import highest_corner
from checker.showing.drawing.paint import paint_pipe, paint_shape
from checker.showing.drawing.svg import LEADING, Canvas, width_of, wrapped
from checker.showing.drawing.view import View
from checker.showing.drawing.windows import detail_view, whole_view

# Which places are noted where: inside the wall, right of the section, left and right of the detail.
_INSIDE = ("brace", "wall", "inside")
_RIGHT = (
    "roof", "well", "wall_top", "grade_at_wall", "coat_top", "sheet_top", "coat", "sheet", "ground",
    "cap", "zone", "fill", "bank", "bank_edge", "hole", "water", "insulation", "penetration",
    "upper_drain",
)  # fmt: skip
_FOOT_LEFT = (
    "slab", "retarder", "base", "slab_edge", "break_over", "joint", "footing", "footing_base",
    "sleeve", "bearing", "inside_drain",
)  # fmt: skip
_FOOT_RIGHT = (
    "sheet_bottom", "coat_bottom", "stone_top", "fabric_top", "stone", "crown", "pipe", "holes",
    "entry", "stone_side", "fabric", "bedding", "pipe_low", "invert", "trench", "outlet",
)  # fmt: skip
_OF_PIPE = frozenset(
    {"crown", "pipe", "holes", "entry", "pipe_low", "invert", "outlet", "bedding", "trench"}
)  # fmt: skip
# Noted only where a finding stands there.
_ONLY_WITH_NUMBERS = frozenset(
    {"roof", "well", "wall_top", "grade_at_wall", "brace", "bank_edge", "hole", "joint", "holes",
     "stone_side", "inside", "invert", "bedding", "coat_top"}
)  # fmt: skip
# Noted only where the spec shows it or a finding stands there.
_QUIET = frozenset(
    {"sheet_top", "sheet_bottom", "coat_bottom", "crown", "stone_top", "trench", "slab_edge",
     "fabric_top", "bearing", "pipe_low"}
)  # fmt: skip
# Left out first where room is short.
_SPARE = frozenset(
    {"penetration", "slab_edge", "bearing", "fabric_top", "trench", "fill", "sleeve", "stone_top",
     "bank", "base", "sheet"}
)  # fmt: skip
_MATERIALS = (
    "concrete", "block", "earth", "fill", "stone", "sand", "clay", "water", "insulation",
)  # fmt: skip
_UNSCALED = "not to scale: levels not shown"


def draw_section(sheets: sheet.Sheets, figures: Figures, review: Review) -> None:
    """Put the section and its detail on a new sheet."""
    _Section(sheets, figures, review).draw()


class _Section:
    def __init__(self, sheets: sheet.Sheets, figures: Figures, review: Review) -> None:
        self.sheets, self.figures, self.review = sheets, figures, review
        self.canvas = sheets.new()
        self.cut = cut_of(figures)
        self.keynotes = keynotes_of(review)
        self.numbers = at_places(self.keynotes, self.cut.places)

    def draw(self) -> None:
        """Draw both views, their notes, and the sheet round them."""
        whole, detail = whole_view(self.figures, self.cut), detail_view(self.figures, self.cut)
        for view, name in ((whole, "section"), (detail, "detail")):
            self._paint(self.sheets.window(self.canvas, name, view), view, name)
        self._whole(whole, detail)
        self._detail(detail)
        scales = f"{whole.scale.name} and {detail.scale.name}"
        page = sheet.Page(
            f"section at the footing drain{_at_corner(self.figures)}",
            scales if self.cut.setting.levels.to_scale else _UNSCALED,
            self.keynotes, self._materials(), self._notes(), self.numbers.get(PAPER, ()),
        )  # fmt: skip
        self.sheets.finish(self.canvas, page, sheet.job_of(self.figures, self.review))

    def _paint(self, canvas: Canvas, view: View, name: str) -> None:
        for shape in self.cut.shapes:
            paint_shape(canvas, view, shape, f"{name}-{shape.name}")
        for pipe in self.cut.pipes:
            paint_pipe(canvas, view, pipe, f"{name}-{pipe.name}")
        high = self.figures.find("levels.seasonal_high_water")
        if high is not None:
            y = view.y(high.value)
            canvas.line((view.left, y), (view.right, y), "water", name=f"{name}-high-water")
            water_mark(canvas, (min(view.x(self.cut.places["water"][0]), view.right - 10), y))

    # -- the whole section ------------------------------------------------------------------------

    def _whole(self, view: View, detail: View) -> None:
        canvas = self.canvas
        self._frame_of_detail(view, detail)
        break_line(canvas, view.right, view.y(self.cut.places["ground"][1]) - 14, view.bottom)
        column = Column(view.right + 7, view.top, sheet.NOTES_RIGHT - 10, view.bottom + 2, True)
        draw_callouts(canvas, self._callouts(_RIGHT, view), column)
        strings.level_marks(canvas, view, self.figures, self.cut, sheet.LEFT + 4)
        strings.earth_height(canvas, view, self.figures, self.cut)
        self._notes_inside(view)
        self._title(view, 1, f"Section{_at_corner(self.figures)}")

    def _frame_of_detail(self, view: View, detail: View) -> None:
        """Draw on the section what the detail shows."""
        left, top = max(view.x(detail.x0), view.left), max(view.y(detail.y0), view.top)
        width = min(view.x(detail.x1), view.right) - left
        height = min(view.y(detail.y1), view.bottom) - top
        self.canvas.rect((left, top), (width, height), "beyond")
        under = top + height + 8
        at = (left + 3, under if under < view.bottom else view.bottom - 3)
        size = (width_of("detail 2", bold=True) + 2, LEADING)
        self.canvas.rect((at[0] - 1, at[1] - 6.5), size, "", fill="#fff")
        self.canvas.text(at, "detail 2", bold=True)

    def _notes_inside(self, view: View) -> None:
        """Write notes in the empty room inside the wall, above and below the earth's dimension."""
        notes = sorted(self._callouts(_INSIDE, view), key=lambda one: one.at[1])
        levels = self.cut.setting.levels
        middle = (view.y(levels.grade.value) + view.y(levels.footing_top.value)) / 2
        x, y = view.left + 24, view.top + 52
        room = max(view.x(self.cut.setting.inside) - 34 - x, 40)
        for note in notes:
            lines = wrapped(note.text, room, 4)
            start = (x + width_of(lines[0]) + 2 if lines else x, y - 2)
            self.canvas.path([start, (start[0] + 6, start[1]), note.at])
            self.canvas.circle(note.at, 1.1, "", fill="#000")
            self.canvas.lines((x, y), lines)
            under = y + len(lines) * LEADING + 1
            for step, number in enumerate(note.numbers):
                at = (x + HEX + step * (2 * HEX + 1), under)
                keynote(self.canvas, at, number, f"keynote-{number}")
            y = max(middle + 22, under + 2 * HEX + 6)

    # -- the foot of the wall ---------------------------------------------------------------------

    def _detail(self, view: View) -> None:
        canvas, figures, cut = self.canvas, self.figures, self.cut
        floor = view.y(cut.setting.levels.floor_top.value)
        break_line(canvas, view.left, floor - 6, view.bottom - 28)
        if view.y(cut.setting.levels.top_of_wall.value) < view.top:
            cut_across(canvas, view.top + 4, view.x(cut.setting.inside) - 8, view.x(0) + 8)
        right = Column(view.right + 5, view.top, sheet.NOTES_RIGHT - 10, view.bottom, True)
        left = Column(sheet.LEFT + 4, view.top, sheet.NOTES_LEFT - 6, view.bottom - 12, False)
        # A drain inside the footing is noted on its own side.
        moved = _OF_PIPE if cut.setting.pipe.position == "inside" else frozenset()
        rights = [kind for kind in _FOOT_RIGHT if kind not in moved]
        draw_callouts(canvas, self._callouts(rights, view), right)
        draw_callouts(canvas, self._callouts([*_FOOT_LEFT, *moved], view), left)
        strings.string_across(canvas, view, figures, cut, view.bottom - 26)
        strings.building_string(canvas, view, figures, cut)
        strings.stone_strings(canvas, view, figures, cut)
        strings.water_stands(canvas, view, figures, cut)
        canvas.line((sheet.LEFT, sheet.SPLIT), (sheet.RIGHT, sheet.SPLIT), "thin")
        self._title(view, 2, "Foot of the wall")

    # -- words ------------------------------------------------------------------------------------

    def _callouts(self, kinds: Collection[str], view: View) -> list[Callout]:
        notes = []
        for place, point in self.cut.places.items():
            kind = place.partition(" ")[0]
            numbers = self.numbers.get(place, ())
            if kind not in kinds or (kind in _ONLY_WITH_NUMBERS and not numbers):
                continue
            text = label_of(place, self.figures, self.cut)
            if not numbers and (not text or (kind in _QUIET and text.endswith(NOT_SHOWN))):
                continue
            x, y = view.at(point)
            if kind == "water" and y > view.bottom:
                text += ", below this drawing"
            at = (min(max(x, view.left), view.right), min(max(y, view.top), view.bottom))
            notes.append(Callout(place, at, text, numbers, kind in _SPARE))
        return notes

    def _title(self, view: View, number: int, text: str) -> None:
        y = view.bottom + 17
        to_scale = self.cut.setting.levels.to_scale
        scale = view.scale.name if to_scale else _UNSCALED
        title = f"{text}, seen with the earth at the right"
        view_title(self.canvas, (sheet.LEFT + 16, y), number, title, scale)
        if to_scale:
            scale_bar(self.canvas, (sheet.RIGHT - 14, y), view, self.figures.spec.system)

    def _materials(self) -> list[str]:
        used = {shape.hatch for shape in self.cut.shapes}
        return [name for name in _MATERIALS if name in used]

    def _notes(self) -> list[str]:
        notes = [f"{one.signal}: {one.text}" for one in self.review.cautions[:2]]
        if not self.cut.setting.levels.to_scale:
            notes.append("Not to scale: levels not shown. Sizes that are not shown are usual ones.")
        if self.figures.word("levels.contradiction") not in ("", "none"):
            notes.append("The levels contradict one another and are drawn as they are written.")
        notes.append("Coat, sheet and filter are drawn thicker than they are.")
        notes.append("Dashed: not shown in the spec, drawn where it usually is.")
        return notes


def _at_corner(figures: Figures) -> str:
    corner = highest_corner(figures)
    return f" at {corner}" if corner else ""
