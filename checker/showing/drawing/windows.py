"""What the two views of the section take in, and at which scale."""

from __future__ import annotations

from checker.showing.drawing import sheet
from checker.showing.drawing.cut import Cut
from checker.showing.drawing.figures import Figures
from checker.showing.drawing.view import View, fitting

_TITLE = 24.0  # height of the line with title and scale under a view
_BELOW, _ABOVE = 34.0, 16.0  # room in the detail for a string of dimensions, and a margin
_STRINGS = 60.0  # room in the detail for two strings right of the stone
_NEAR = 1.6  # m; the detail looks no farther up and down from the joint
_ENDS_NEAR = 0.7  # m; ends of coat and sheet as near as this to the joint are in the detail
_WATER_NEAR = 1.5  # m; high water as near as this under the footing is in the section


def whole_view(figures: Figures, cut: Cut) -> View:
    """Return the window on the whole wall, from its top to bearing and the water under it."""
    setting, levels = cut.setting, cut.setting.levels
    base = levels.footing_underside.value
    if setting.stone:
        base = min(base, setting.stone.bottom)
    tops = [levels.top_of_wall.value, levels.grade.value, levels.floor_top.value]
    low, high = base - 0.3, max(tops) + 0.12
    water = figures.find("levels.seasonal_high_water")
    if water is not None and base - _WATER_NEAR < water.value < max(tops):
        low = min(low, water.value - 0.15)
    left, width = _between_notes()
    top, height = sheet.TOP + 4, sheet.SPLIT - _TITLE - sheet.TOP - 6
    needed = setting.wall.value + setting.ground.face + 1.2
    scale = fitting(needed, high - low, (width, height), figures.spec.system)
    spare = height / scale.per_metre - (high - low)
    inside = min(1.9, width / scale.per_metre * 0.24)
    return View(left, top, width, height, setting.inside - inside, high + spare / 2, scale)


def detail_view(figures: Figures, cut: Cut) -> View:
    """Return the window on the foot of the wall, with all of footing, pipe and stone."""
    setting = cut.setting
    low, high = _heights(figures, cut)
    left, width = _between_notes()
    top, height = sheet.SPLIT + 6, sheet.BOTTOM - _TITLE - sheet.SPLIT - 8
    start = setting.inner_edge - 0.08
    end = max(setting.stone.reach if setting.stone else 0.0, setting.toe.value) + 0.05
    room = (width - _STRINGS - 20, height - _BELOW - _ABOVE)
    scale = fitting(end - start, high - low, room, figures.spec.system)
    used = (high - low) * scale.per_metre
    y0 = high + (_ABOVE + (room[1] - used) / 2) / scale.per_metre
    x0 = end + (_STRINGS - width) / scale.per_metre
    return View(left, top, width, height, x0, y0, scale)


def _heights(figures: Figures, cut: Cut) -> tuple[float, float]:
    setting, levels = cut.setting, cut.setting.levels
    joint = setting.joint
    wanted = [levels.footing_underside.value, joint, levels.floor_top.value]
    if setting.stone:
        wanted += [setting.stone.bottom, setting.stone.top.value]
    trench = figures.find("drain.trench_bottom_low")
    wanted += [one.value for one in (trench, cut.entry) if one is not None]
    ends = [cut.places[place][1] for place in ("coat_bottom", "sheet_bottom")]
    wanted += [level for level in ends if abs(level - joint) < _ENDS_NEAR]
    low, high = max(min(wanted), joint - _NEAR), min(max(wanted), joint + _NEAR)
    return low, max(high, low + 0.3)


def _between_notes() -> tuple[float, float]:
    left = sheet.LEFT + sheet.NOTES_LEFT + 5
    return left, sheet.RIGHT - sheet.NOTES_RIGHT - 5 - left
