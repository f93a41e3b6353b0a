"""The drain in the section: stone, filter, pipe with its holes, sleeves, other lines of pipe."""

from __future__ import annotations

from checker.showing.drawing.figures import USUAL
from checker.showing.drawing.geometry import Pipe, Point, box, hole_angles, ring, wrap
from checker.showing.drawing.parts import Parts

_APART = 0.005  # m; a lowest corner nearer than this to the highest is not drawn apart
_SOCK = 0.006  # m; a sock is drawn so far off its pipe


def add_stone(parts: Parts) -> None:
    """Add the drain stone."""
    setting, stone, pipe = parts.setting, parts.setting.stone, parts.setting.pipe
    if stone is None:
        return
    outline = wrap(setting.toe.value, stone.reach, setting.joint, stone.bottom, stone.top.value)
    shown = stone.top.shown and stone.reach_shown and pipe.invert.shown and pipe.bedding.shown
    parts.area("stone", outline, "stone", shown=shown)
    tall = stone.top.value - stone.bottom
    parts.places["stone_top"] = (stone.reach * 0.55, stone.top.value)
    parts.places["stone"] = (stone.reach - 0.05, stone.bottom + tall * 0.62)
    parts.places["stone_side"] = (stone.reach, pipe.middle[1])
    parts.places["bedding"] = (pipe.across + 0.02, stone.bottom + pipe.bedding.value / 2)
    parts.places["trench"] = (stone.reach - 0.08, stone.bottom)


def add_filter(parts: Parts) -> None:
    """Add filter fabrics where the spec says they lie; dashed round the stone where it does not."""
    figures, setting, stone = parts.figures, parts.setting, parts.setting.stone
    if stone is None:
        return
    tall = stone.top.value - stone.bottom
    parts.places["fabric"] = (stone.reach, stone.bottom + tall * 0.22)
    parts.places["fabric_top"] = (stone.reach * 0.7, stone.top.value)
    outline = wrap(setting.toe.value, stone.reach, setting.joint, stone.bottom, stone.top.value)
    listed = figures.deriver.items("fabrics")
    if listed is None:
        parts.line("fabric", (*outline, outline[0]), "film", shown=False)
    for item in listed or ():
        if figures.word("fabrics.each.kind", item) != "none":
            _fabric(parts, item, outline)


def _fabric(parts: Parts, item: str, outline: tuple[Point, ...]) -> None:
    where = parts.figures.word("fabrics.each.position", item) or "around_stone"
    name, pipe = f"fabric {item}", parts.setting.pipe
    if where in ("around_stone", "both"):
        parts.line(name, (*outline, outline[0]), "fabric")
        _closure(parts, item, outline[-1])
    if where == "over_stone":
        parts.line(name, (outline[0], outline[-1]), "fabric")
        parts.places["fabric"] = (outline[-1][0] * 0.8, outline[-1][1])
    if where == "against_bank":
        parts.line(name, outline[-2:], "fabric")
    if where in ("around_pipe", "both"):
        radius = pipe.outside.value / 2 + _SOCK
        parts.line(name, ring(pipe.middle, radius), "fabric")
        if where == "around_pipe":
            parts.places["fabric"] = (pipe.across, pipe.middle[1] + radius)


def _closure(parts: Parts, item: str, corner: Point) -> None:
    """Lay both ends of a wrap on each other over the stone, for the length of the lap."""
    lap = parts.figures.find("fabrics.each.top_lap", item)
    if lap is None or lap.value <= 0:
        return
    right, level = corner
    start = max(right * 0.5 - lap.value / 2, 0.0)
    ends = [(start, level), (min(start + lap.value, right), level)]
    parts.line(f"fabric {item} lap", ends, "fabric", off=3.0)
    parts.places["fabric_top"] = ends[-1]


def add_pipe(parts: Parts) -> None:
    """Add the pipe at its highest corner and, beyond, at its lowest."""
    figures, pipe = parts.figures, parts.setting.pipe
    radius, (x, y) = pipe.outside.value / 2, pipe.middle
    parts.places["pipe"] = (x + radius * 0.71, y + radius * 0.71)
    if not pipe.present:
        return
    parts.places["crown"] = (x, pipe.crown)
    parts.places["holes"] = (x - radius * 0.5, y - radius * 0.87)
    parts.places["invert"] = (x, pipe.invert.value)
    if figures.word("drain.kind") == "stone_only":
        return
    _pipe_at_low(parts)
    angles = hole_angles(
        figures.words("drain.holes"), figures.size("drain.hole_rows_apart").value
    )  # fmt: skip
    size = figures.find("drain.hole_size")
    shown = pipe.invert.shown and pipe.outside.shown and figures.known("drain.present")
    inside = max(radius - pipe.wall.value, radius * 0.3)
    hole = size.value if size else 0.0
    parts.pipes.append(Pipe("pipe", pipe.middle, radius, inside, angles, hole, shown))


def _pipe_at_low(parts: Parts) -> None:
    setting, pipe = parts.setting, parts.setting.pipe
    low = parts.figures.find("drain.outside_bottom_low")
    if low is None or abs(low.value - pipe.bottom) < _APART:
        return
    radius = pipe.outside.value / 2
    at = (pipe.across, low.value + radius)
    parts.pipes.append(Pipe("pipe-at-low-corner", at, radius, 0.0, beyond=True))
    parts.places["pipe_low"] = (at[0] + radius * 0.8, at[1] - radius * 0.6)
    trench, stone = parts.figures.find("drain.trench_bottom_low"), setting.stone
    if trench is not None and stone is not None:
        ends = [(setting.toe.value, trench.value), (stone.reach, trench.value)]
        parts.line("trench-at-low-corner", ends, "beyond")
        parts.places["trench"] = (stone.reach - 0.06, trench.value)


def add_sleeves(parts: Parts) -> None:
    """Add pipes through the footing, which lie beyond the cut."""
    figures, setting = parts.figures, parts.setting
    for item in figures.items("footing.sleeves"):
        invert = figures.find("footing.sleeves.each.invert", item)
        size = figures.find("footing.sleeves.each.size", item)
        level = invert.value if invert else setting.levels.footing_underside.value
        parts.places.setdefault("sleeve", (setting.inner_edge + 0.06, level))
        if invert and size:
            outline = box(setting.inner_edge, setting.toe.value, level, level + size.value)
            parts.line(f"sleeve {item}", (*outline, outline[0]), "beyond")


def add_other_drains(parts: Parts) -> None:
    """Add a drain inside the footing and one higher up, each at a usual place across."""
    figures, setting = parts.figures, parts.setting
    ways = {
        "inside_drain": (setting.inner_edge - USUAL["inside_drain.place"], -1),
        "upper_drain": (USUAL["upper_drain.place"], 1),
    }
    for section, (across, way) in ways.items():
        if not figures.yes(f"{section}.present"):
            continue
        invert = figures.find(f"{section}.invert_high")
        size = figures.find(f"{section}.outside_diameter") or figures.find(f"{section}.diameter")
        radius = (size or setting.pipe.outside).value / 2
        level = invert.value if invert else setting.levels.footing_underside.value
        middle = (across + way * radius, level + radius)
        shown = invert is not None
        parts.pipes.append(Pipe(section, middle, radius, radius * 0.94, shown=shown))
        parts.places[section] = (middle[0], middle[1] + radius)


def add_outlet(parts: Parts) -> None:
    """Add the place at which the outlet leg is noted: the pipe at its lowest."""
    if parts.setting.pipe.present or parts.figures.known("outlets"):
        low = parts.places.get("pipe_low") or parts.places["pipe"]
        parts.places["outlet"] = (low[0] + 0.01, low[1] - 0.04)
