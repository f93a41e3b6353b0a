"""The strings of dimensions and the level marks of the section."""

from __future__ import annotations

from checker.showing.drawing.callouts import spread
from checker.showing.drawing.cut import Cut
from checker.showing.drawing.dimensions import Stretch, across, level_mark, upright, water_mark
from checker.showing.drawing.figures import NOT_SHOWN, Figures, Measure
from checker.showing.drawing.svg import LEADING, Canvas
from checker.showing.drawing.view import View

_REACH = 3.0  # how far an extension line runs past its string


def _inside(view: View, *ys: float) -> bool:
    """Say whether heights on paper lie in a view; what runs out of it is not dimensioned."""
    return all(view.top - 1 <= y <= view.bottom + 1 for y in ys)


def level_marks(canvas: Canvas, view: View, figures: Figures, cut: Cut, left: float) -> None:
    """Write the levels between `left` and the view, each with a line to its height."""
    rows = [row for row in _named_levels(cut) if view.top <= view.y(row[0].value) <= view.bottom]
    rows.sort(key=lambda row: -row[0].value)
    wishes = [view.y(level.value) - LEADING * 0.9 for level, _ in rows]
    tops = spread(wishes, [LEADING * 2.05] * len(rows), view.top, view.bottom - 2, 0.5)
    right, wall = view.left - 8, view.x(cut.setting.inside)
    marked: list[float] = []
    for (level, text), top in zip(rows, tops, strict=True):
        y, row = view.y(level.value), top + LEADING
        ends = [(left, row + 0.8), (right, row + 0.8), (right + 12, y), (wall, y)]
        canvas.path(ends, "thin" if level.shown else "unshown")
        canvas.text((left, row - 0.6), text)
        value = level.text if level.shown else NOT_SHOWN
        canvas.text((right, row + LEADING - 0.6), value, bold=True, to="end")
        # Marks of levels that all but coincide stand side by side.
        aside = 8 * sum(abs(y - other) < 6 for other in marked)
        marked.append(y)
        level_mark(canvas, (right + 15 + aside, y), filled=level.shown)


def _named_levels(cut: Cut) -> list[tuple[Measure, str]]:
    levels, crawl = cut.setting.levels, cut.setting.crawl
    return [
        (levels.top_of_wall, "top of wall"),
        (levels.grade, "finished grade"),
        *([] if crawl else [(levels.floor_top, "floor")]),
        (levels.slab_underside, "ground inside" if crawl else "underside of slab"),
        (levels.footing_top, "top of footing"),
        (levels.footing_underside, "under footing"),
    ]


def earth_height(canvas: Canvas, view: View, figures: Figures, cut: Cut) -> None:
    """Dimension the height of earth against the wall."""
    height = figures.find("backfill.unbalanced_height")
    grade = cut.setting.levels.grade
    if height is None or not grade.shown or height.value <= 0:
        return
    top = view.y(grade.value)
    bottom = top + height.value * view.scale.per_metre
    if not _inside(view, top, bottom):
        return
    text = f"{figures.long(height.value)} of earth"
    upright(canvas, view.x(cut.setting.inside) - 14, [Stretch(top, bottom, text)], left=True)


def water_stands(canvas: Canvas, view: View, figures: Figures, cut: Cut) -> None:
    """Draw the sign of water at the level of entry, and its depth where it is over the joint."""
    stone, over = cut.setting.stone, figures.find("drain.entry_over_joint")
    if cut.entry is None or "entry" not in cut.places or stone is None:
        return
    y = view.y(cut.entry.value)
    if not _inside(view, y):
        return
    water_mark(canvas, (view.x(stone.reach) - 14, y))
    if over is None or over.value <= 0:
        return
    joint, x = view.y(cut.setting.joint), view.x(0) - 16
    for end in (y, joint):
        canvas.line((x - _REACH, end), (view.x(0), end))
    upright(canvas, x, [Stretch(y, joint, over.text)], left=True)


def building_string(canvas: Canvas, view: View, figures: Figures, cut: Cut) -> None:
    """Dimension slab and footing up and down, inside the wall."""
    levels, x = cut.setting.levels, view.left + 42
    slab, footing = figures.find("slab.depth"), figures.find("footing.depth")
    stretches = []
    if slab and levels.floor_top.shown and not cut.setting.crawl:
        high, low = view.y(levels.floor_top.value), view.y(levels.slab_underside.value)
        stretches.append(Stretch(high, low, slab.text))
    if footing and levels.footing_top.shown:
        high, low = view.y(levels.footing_top.value), view.y(levels.footing_underside.value)
        stretches.append(Stretch(high, low, footing.text))
    stretches = [one for one in stretches if _inside(view, one.start, one.end)]
    inner = view.x(cut.setting.inner_edge)
    for one in stretches:
        for end in (one.start, one.end):
            canvas.line((x - _REACH, end), (inner, end))
    upright(canvas, x, stretches, left=True)


def string_across(canvas: Canvas, view: View, figures: Figures, cut: Cut, y: float) -> None:
    """Dimension wall, footing, pipe and stone across, from left to right."""
    stretches = [
        Stretch(view.x(start), view.x(start + size.value), size.text)
        for start, size in _across(figures, cut)
    ]
    for x in sorted({round(x, 2) for one in stretches for x in (one.start, one.end)}):
        canvas.line((x, y + _REACH), (x, y - 10))
    across(canvas, y, stretches)


def _across(figures: Figures, cut: Cut) -> list[tuple[float, Measure]]:
    """Return where each dimension begins and how long it is, as far as they follow on."""
    setting = cut.setting
    found = [(setting.inside, setting.wall)] if setting.wall.shown else []
    if not setting.toe.shown:
        return found
    found.append((0.0, setting.toe))
    if setting.stone is None:
        return found
    start = setting.toe.value
    if setting.pipe.position == "on_footing" or not figures.known("drain.offset"):
        beyond = figures.find("stone.beyond_footing")
        return [*found, (start, beyond)] if beyond else found
    for path in ("drain.offset", "drain.pipe_outside_diameter", "stone.side_left"):
        size = figures.find(path)
        if size is None or size.value < 0:
            break
        found.append((start, size))
        start += size.value
    return found


def stone_strings(canvas: Canvas, view: View, figures: Figures, cut: Cut) -> None:
    """Dimension the stone over and under the pipe, and the pipe against slab and bearing."""
    stone, find = cut.setting.stone, figures.find
    if stone is None:
        return
    crown, slab = find("drain.crown_high"), find("slab.underside_level")
    trench, base = find("drain.trench_bottom_low"), find("footing.underside_level")
    top = stone.top if stone.top.shown else None
    bed, bottom = figures.find("stone.bedding"), Measure(stone.bottom)
    over_bed = Measure(stone.bottom + bed.value) if bed and crown else None
    near = [(top, crown, find("stone.over_crown")), (over_bed, bottom, bed)]
    far = [(slab, crown, find("drain.floor_cover")), (trench, base, find("drain.bearing_cover"))]
    right = view.x(stone.reach)
    if slab is not None and crown is not None:
        canvas.line((view.x(0), view.y(slab.value)), (right + 39, view.y(slab.value)), "beyond")
    for x, pairs in ((right + 9, near), (right + 36, far)):
        stretches = []
        for high, low, size in pairs:
            if high is None or low is None or size is None:
                continue
            if not _inside(view, view.y(high.value), view.y(low.value)):
                continue
            for level in (high, low):
                start = view.x(cut.setting.pipe.across) if level is crown else right
                canvas.line((start, view.y(level.value)), (x + _REACH, view.y(level.value)))
            stretches.append(Stretch(view.y(high.value), view.y(low.value), _unsigned(size)))
        upright(canvas, x, stretches)


def _unsigned(size: Measure) -> str:
    """Return a length without its sign: a dimension is written between two places."""
    return size.text.replace("-", "", 1) if size.value < 0 else size.text
