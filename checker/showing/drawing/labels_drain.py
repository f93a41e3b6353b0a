"""The words at the places of the drain: pipe, stone, filter, outlet."""

from __future__ import annotations

from collections.abc import Callable

from checker.showing.drawing.cut import Cut
from checker.showing.drawing.figures import NOT_SHOWN, Figures, told

Label = Callable[[Figures, Cut], str]


def _sleeve(figures: Figures, cut: Cut) -> str:
    items = figures.items("footing.sleeves")
    if not items:
        return ""
    size = figures.written("footing.sleeves.each.size", "{} ", items[0])
    return f"{size}sleeve {items[0]}, beyond"


def _pipe(figures: Figures, cut: Cut) -> str:
    if figures.yes("drain.present") is False:
        return "no footing drain"
    if not figures.known("drain.present"):
        return f"footing drain: {NOT_SHOWN}"
    parts = [figures.written("drain.diameter"), figures.word("drain.material")]
    holes = ", ".join(figures.words("drain.holes")).replace("_", " ")
    return f"pipe: {told([*parts, f'holes {holes}' if holes else 'holes not shown'])}"


def _crown(figures: Figures, cut: Cut) -> str:
    crown = figures.find("drain.crown_high")
    corner = highest_corner(figures)
    return f"crown {crown.text if crown else NOT_SHOWN}" + (f" at {corner}" if corner else "")


def _pipe_low(figures: Figures, cut: Cut) -> str:
    invert = figures.find("drain.lowest_invert")
    corner = lowest_corner(figures)
    where = f" at {corner}" if corner else ""
    return f"beyond: at its lowest{where}, invert {invert.text if invert else NOT_SHOWN}"


def _entry(figures: Figures, cut: Cut) -> str:
    if cut.entry is None:
        return ""
    over = figures.find("drain.entry_over_joint")
    where = ""
    if over is not None:
        side = "over" if over.value > 0 else "below"
        where = f", {over.text.removeprefix('-')} {side} the joint,"
    return f"water stands to {cut.entry.text}{where} before the drain takes any"


def _trench(figures: Figures, cut: Cut) -> str:
    low = figures.find("drain.trench_bottom_low")
    return f"trench bottom, lowest {low.text if low else NOT_SHOWN}"


def _stone(figures: Figures, cut: Cut) -> str:
    washed = {True: "washed", False: "not washed", None: ""}[figures.yes("stone.washed")]
    number = figures.spec.text("stone.size_number")
    parts = [figures.word("stone.kind"), f"no. {number}" if number else "", washed]
    return f"stone: {told(parts)}"


def _stone_top(figures: Figures, cut: Cut) -> str:
    return f"top of stone {figures.written('stone.surface_level') or NOT_SHOWN}"


def _fabric(figures: Figures, cut: Cut) -> str:
    listed = figures.deriver.items("fabrics")
    if listed is None:
        return f"filter: {NOT_SHOWN}"
    if not listed:
        return "no filter"
    kind = figures.word("fabrics.each.kind", listed[0])
    where = figures.word("fabrics.each.position", listed[0])
    return f"filter: {told([kind, where])}"


def _fabric_top(figures: Figures, cut: Cut) -> str:
    for item in figures.items("fabrics"):
        lap = figures.find("fabrics.each.top_lap", item)
        if lap:
            return f"filter closed, lap {lap.text}"
    return ""


def _outlet(figures: Figures, cut: Cut) -> str:
    texts = []
    for item in figures.items("outlets"):
        kind = figures.word("outlets.each.kind", item)
        to = f"to {kind} {item}" if kind else f"{item} {figures.said('outlets.each.kind', item)}"
        leg = figures.written("outlets.each.leg_length", "leg {}", item)
        invert = figures.written("outlets.each.invert", "invert {}", item)
        texts.append(told([to, leg, invert]))
    corner = figures.find("drain.lowest_invert") and figures.word("drain.outlet_corner")
    start = f"outlet leg from {corner}: " if corner else "outlet leg: "
    if not texts:
        return f"outlet: {NOT_SHOWN if figures.deriver.items('outlets') is None else 'none'}"
    return start + "; ".join(texts)


def _more_drain(figures: Figures, section: str) -> str:
    invert = figures.written(f"{section}.invert_high", "invert {}")
    return f"{section.replace('_', ' ')}: {told([invert])}; place across not shown"


def highest_corner(figures: Figures) -> str:
    """Return the id of the corner with the highest invert, if corners are shown."""
    return _corner(figures, highest=True)


def lowest_corner(figures: Figures) -> str:
    """Return the id of the corner with the lowest invert, if corners are shown."""
    return _corner(figures, highest=False)


def _corner(figures: Figures, *, highest: bool) -> str:
    found = [
        (level.value, item)
        for item in figures.items("drain.corners")
        if (level := figures.find("drain.corners.each.invert", item))
    ]
    if not found:
        return ""
    end = max(level for level, _ in found) if highest else min(level for level, _ in found)
    return next(item for level, item in found if level == end)


DRAIN_LABELS: dict[str, Label] = {
    "crown": _crown,
    "entry": _entry,
    "fabric": _fabric,
    "fabric_top": _fabric_top,
    "outlet": _outlet,
    "pipe": _pipe,
    "pipe_low": _pipe_low,
    "sleeve": _sleeve,
    "stone": _stone,
    "stone_top": _stone_top,
    "trench": _trench,
    "inside_drain": lambda figures, cut: _more_drain(figures, "inside_drain"),
    "upper_drain": lambda figures, cut: _more_drain(figures, "upper_drain"),
}
