"""Ground, hole, backfill, free-draining fill, cap and water of the section."""

from __future__ import annotations

from checker.showing.drawing.geometry import FAR, SNUG, Point, between, ground_at, wrap
from checker.showing.drawing.parts import Parts


def add_earth(parts: Parts) -> None:
    """Add the undisturbed ground under and beside everything."""
    setting, ground = parts.setting, parts.setting.ground
    under = setting.levels.slab_underside.value
    if not setting.crawl:
        under -= parts.figures.size("slab.base_thickness").value
    footing, toe, inner = (
        setting.levels.footing_underside.value,
        setting.toe.value,
        setting.inner_edge,
    )
    inside = [(-FAR, under), (inner, under)] if under > footing else [(-FAR, footing)]
    dig = [(inner, footing), (toe, footing), (toe, ground.hole_bottom)]
    foot = (ground.face, ground.hole_bottom)
    edge = ground.bank[-1] if ground.bank else foot
    beyond = [point for point in ground.line if point[0] > edge[0]]
    far = (FAR, beyond[-1][1] if beyond else min(edge[1], ground.line[-1][1]))
    deep = min(footing, ground.hole_bottom, under) - FAR
    outline = [*inside, *dig, foot, edge, *beyond, far, (FAR, deep), (-FAR, deep)]
    parts.area("earth", outline, "earth", pen="")
    parts.places["footing_base"] = (setting.inside * 0.7, footing)
    parts.places["bearing"] = (inner / 2, footing - 0.05)
    parts.places["hole"] = foot


def add_fill(parts: Parts) -> None:
    """Add the backfill between wall and bank, with what lies in it, and the ground's line."""
    setting, ground = parts.setting, parts.setting.ground
    joint, toe = setting.joint, setting.toe.value
    if ground.bank and ground.line[0][1] > joint:
        edge = ground.bank[-1]
        top = [point for point in ground.line if point[0] < edge[0]]
        outline = [(0.0, joint), (toe, joint), (toe, ground.hole_bottom), *ground.bank, *top[::-1]]
        parts.area("fill", outline, "fill", pen="")
        _zone(parts, edge)
        _cap(parts, top, edge)
        parts.line("bank", ground.bank, "dig", shown=ground.bank_shown)
        bottom = [(toe, ground.hole_bottom), ground.bank[0]]
        parts.line("hole", bottom, "dig", shown=ground.hole_shown)
        parts.places["fill"] = between((ground.face - 0.12, joint), (edge[0] - 0.12, edge[1]), 0.25)
        parts.places["bank"] = between(ground.bank[0], edge, 0.45)
        parts.places["bank_edge"] = edge
    parts.line("ground", ground.line, "cut", shown=ground.shown)
    x = min(2.2, ground.line[-1][0] * 0.7)
    parts.places["ground"] = (x, ground_at(ground.line, x))
    parts.places["grade_at_wall"] = ground.line[0]
    parts.places["well"] = (0.25, ground.line[0][1])


def _zone(parts: Parts, edge: Point) -> None:
    figures, setting = parts.figures, parts.setting
    width = figures.size("backfill.free_draining_width")
    high = figures.find("backfill.free_draining_top")
    cap = figures.size("backfill.cap_thickness").value
    upper = high.value if high else setting.ground.line[0][1] - cap
    stone = setting.stone.top.value if setting.stone else setting.joint
    lower = max(stone, setting.joint)
    if upper <= lower:
        return
    right = min(width.value, edge[0])
    outline = [(0.0, lower), (right, lower), (right, upper), (0.0, upper)]
    parts.area("zone", outline, "sand", shown=width.shown, pen="thin")
    parts.places["zone"] = (right * 0.6, lower + (upper - lower) * 0.4)


def _cap(parts: Parts, top: list[Point], edge: Point) -> None:
    thick = parts.figures.size("backfill.cap_thickness")
    if parts.figures.word("backfill.cap_material") == "none":
        return
    upper = [*top, edge]
    lower = [(x, y - thick.value) for x, y in reversed(upper)]
    parts.area("cap", [*upper, *lower], "clay", shown=thick.shown, pen="thin")
    x = min(0.75, edge[0] * 0.6)
    parts.places["cap"] = (x, ground_at(upper, x) - thick.value / 2)


def add_water(parts: Parts) -> None:
    """Add the water that stands before the drain takes any, and the place of the high water."""
    figures, setting, stone = parts.figures, parts.setting, parts.setting.stone
    entry = figures.find("drain.entry_level") if setting.pipe.present else None
    if entry is not None and stone is not None and entry.value > stone.bottom:
        joint, toe = setting.joint, setting.toe.value
        outline = wrap(toe, stone.reach, joint, stone.bottom, entry.value)
        parts.area("standing-water", outline, "water", pen="")
        start = 0.0 if entry.value > joint + SNUG else toe
        parts.line("entry", [(start, entry.value), (stone.reach, entry.value)], "water")
        parts.places["entry"] = (stone.reach - 0.03, entry.value)
    high = figures.find("levels.seasonal_high_water")
    if high is not None:
        parts.places["water"] = (setting.ground.face + 0.6, high.value)
