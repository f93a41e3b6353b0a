"""Slab, footing, wall, insulation and what lies on them: coat, sheet, breaks, retarder."""

from __future__ import annotations

from checker.showing.drawing.geometry import FAR, box, down_the_wall, over_insulation
from checker.showing.drawing.parts import Parts

_COVE = 0.05  # m; a fillet is drawn so large
_SLEEVE = 0.05  # m; a pipe through the wall is drawn so thick
_BASES = {"soil": "earth", "sand": "sand", "sand_with_mat": "sand"}
_WALLS = {"block": "block", "stone": "block", "wood": "insulation"}


def add_slab(parts: Parts) -> None:
    """Add slab and base, or the bare ground of a crawl space."""
    figures, setting = parts.figures, parts.setting
    levels, inside = setting.levels, setting.inside
    low, high = levels.slab_underside.value, levels.floor_top.value
    parts.places["inside"] = (inside - 0.5, high)
    if setting.crawl:
        shown = levels.slab_underside.shown
        parts.line("floor", [(-FAR, low), (inside, low)], "cut", shown=shown)
        parts.places["slab"] = (inside - 0.3, low)
        return
    base = figures.size("slab.base_thickness")
    material = figures.word("slab.base_material")
    if material != "none":
        outline = box(-FAR, inside, low - base.value, low)
        hatch = _BASES.get(material, "stone")
        parts.area("base", outline, hatch, shown=base.shown, pen="thin")
    shown = levels.slab_underside.shown and levels.floor_top.shown
    parts.area("slab", box(-FAR, inside, low, high), "concrete", shown=shown, pen="cut")
    parts.places["slab"] = (inside - 0.28, (low + high) / 2)
    parts.places["base"] = (setting.inner_edge - 0.12, low - base.value * 0.55)
    parts.places["slab_edge"] = (inside, high)


def add_footing(parts: Parts) -> None:
    """Add the footing."""
    setting, levels = parts.setting, parts.setting.levels
    low, high = levels.footing_underside.value, levels.footing_top.value
    shown = levels.footing_top.shown and levels.footing_underside.shown and setting.toe.shown
    outline = box(setting.inner_edge, setting.toe.value, low, high)
    parts.area("footing", outline, "concrete", shown=shown, pen="cut")
    parts.places["footing"] = (setting.inner_edge * 0.7, (low + high) / 2)
    parts.places["joint"] = (0.0, high)


def add_wall(parts: Parts) -> None:
    """Add the wall and the pipes through it."""
    figures, setting, levels = parts.figures, parts.setting, parts.setting.levels
    inside, low, high = setting.inside, setting.joint, levels.top_of_wall.value
    hatch = _WALLS.get(figures.word("wall.type"), "concrete")
    shown = levels.top_of_wall.shown and levels.footing_top.shown and setting.wall.shown
    parts.area("wall", box(inside, 0.0, low, high), hatch, shown=shown, pen="cut")
    parts.places["wall"] = (inside / 2, low + (high - low) * 0.55)
    parts.places["wall_top"] = (inside / 2, high)
    parts.places["brace"] = (inside, high - 0.06 * (high - low))
    parts.places["roof"] = (0.1, max(high, levels.grade.value) + 0.1)
    for item in figures.items("wall.penetrations"):
        level = figures.find("wall.penetrations.each.level", item)
        if level is not None:
            half = _SLEEVE / 2
            outline = box(inside - 0.1, 0.15, level.value - half, level.value + half)
            parts.area(f"penetration {item}", outline, "plain", pen="thin")
            parts.places[f"penetration {item}"] = (0.0, level.value)


def add_insulation(parts: Parts) -> None:
    """Add insulation where the spec shows some on a face of the wall."""
    figures, setting = parts.figures, parts.setting
    face = figures.word("insulation.face")
    if figures.word("insulation.kind") in ("", "none") or face in ("core", ""):
        return
    thick = figures.size("insulation.thickness")
    low, top = insulation_foot(parts), setting.levels.top_of_wall.value
    # The insulation of forms that stay in place is part of the thickness of the wall.
    within = thick.value if figures.word("wall.type") == "icf" else 0.0
    sides = {"outside": -within, "inside": setting.inside + within - thick.value}
    for side, left in sides.items():
        if face not in (side, "both"):
            continue
        bottom = low if side == "outside" else setting.joint
        outline = box(left, left + thick.value, bottom, top)
        parts.area(f"insulation-{side}", outline, "insulation", shown=thick.shown)
        at = (left + thick.value / 2, bottom + (top - bottom) * 0.8)
        parts.places.setdefault("insulation", at)


def insulation_foot(parts: Parts) -> float:
    """Return the level down to which the insulation on the outside reaches."""
    depth = parts.figures.find("insulation.depth_below_grade")
    if depth is None:
        return parts.setting.joint
    return max(parts.setting.ground.line[0][1] - depth.value, parts.setting.joint)


def add_coat_and_sheet(parts: Parts) -> None:
    """Add coat and drainage sheet, as far up and down as their levels say."""
    figures = parts.figures
    _down(parts, "coat", "membrane", 0.9, "coat.lap_onto_footing")
    outside = figures.word("insulation.face") in ("outside", "both")
    apart = figures.word("wall.type") != "icf" and figures.word("insulation.kind") not in (
        "",
        "none",
    )
    over = outside and apart and figures.word("sheet.position") != "inside_insulation"
    thick = figures.size("insulation.thickness").value if over else 0.0
    _down(parts, "sheet", "sheet", 3.4, "", thick)


def _down(
    parts: Parts, what: str, pen: str, off: float, lap_path: str, over: float = 0.0
) -> None:  # fmt: skip
    figures, setting = parts.figures, parts.setting
    top, bottom = (figures.find(f"{what}.{end}_level") for end in ("top", "bottom"))
    low = bottom.value if bottom else setting.joint
    high = top.value if top else setting.ground.line[0][1]
    parts.places[f"{what}_top"], parts.places[f"{what}_bottom"] = (over, high), (0.0, low)
    share = 0.72 if what == "coat" else 0.55
    parts.places[what] = (over, low + (high - low) * share)
    absent = {"coat": "class", "sheet": "kind"}[what]
    if figures.word(f"{what}.{absent}") == "none" or high <= low:
        return
    lap = figures.find(lap_path) if lap_path else None
    reaching = lap.value if lap else None if bottom else 0.0
    points = down_the_wall(high, low, setting.joint, setting.toe.value, reaching)
    if over:
        points = over_insulation(points, over, insulation_foot(parts))
    parts.places[f"{what}_bottom"] = points[-1]
    shown = top is not None and bottom is not None
    parts.line(what, points, pen, shown=shown, off=off)


def add_breaks(parts: Parts) -> None:
    """Add the breaks over and under the footing, the vapor retarder and the fillet."""
    figures, setting = parts.figures, parts.setting
    inside, joint = setting.inside, setting.joint
    base = setting.levels.footing_underside.value
    if figures.yes("joint.break_on_footing"):
        parts.line("break-over", [(inside, joint), (0.0, joint)], "membrane")
    if figures.yes("footing.break_under"):
        ends = [(setting.inner_edge, base), (setting.toe.value, base)]
        parts.line("break-under", ends, "membrane")
    parts.places["break_over"] = (inside * 0.45, joint)
    level = setting.levels.slab_underside.value
    if figures.yes("slab.retarder_directly_under") is False:
        level -= figures.size("slab.base_thickness").value
    retarder = figures.yes("slab.retarder")
    if retarder is not False:
        ends = [(-FAR, level), (inside, level)]
        parts.line("retarder", ends, "film", shown=retarder is True)
    parts.places["retarder"] = (inside - 0.42, level)
    if figures.yes("joint.cove"):
        outline = [(0.0, joint), (_COVE, joint), (0.0, joint + _COVE)]
        parts.area("cove", outline, "concrete")
