"""The words at each place of the section: what it is and what the spec shows of it."""

from __future__ import annotations

from checker.showing.drawing.cut import Cut
from checker.showing.drawing.figures import NOT_SHOWN, Figures, told
from checker.showing.drawing.labels_drain import DRAIN_LABELS, Label
from checker.showing.lines import joined


def label_of(place: str, figures: Figures, cut: Cut) -> str:
    """Return the words for a place, empty where only a keynote stands there."""
    kind, _, item = place.partition(" ")
    if item:
        seal = figures.said("wall.penetrations.each.seal", item)
        return f"pipe through the wall: {item}, {seal}"
    make = _LABELS.get(kind)
    return make(figures, cut) if make else _PLAIN.get(kind, "")


_PLAIN = {
    "bank_edge": "edge of the hole",
    "brace": "top of the wall: floor frame or braces",
    "roof": "roof water",
    "well": "wells and areaways",
    "bedding": "bedding",
    "holes": "holes",
    "stone_side": "side of the stone",
    "joint": "joint",
    "inside": "levels",
}


def _coat(figures: Figures, cut: Cut) -> str:
    kind = figures.word("coat.class")
    if kind == "none":
        return "no coat"
    parts = [figures.said("coat.base"), kind, figures.written("coat.dry_thickness", "{} dry")]
    return f"coat: {told(parts)}"


def _coat_bottom(figures: Figures, cut: Cut) -> str:
    lap = figures.written("coat.lap_onto_footing", "{} out over the footing")
    return joined([f"coat ends {figures.said('coat.bottom_level')}", lap], ", ")


def _sheet(figures: Figures, cut: Cut) -> str:
    kind = figures.word("sheet.kind")
    if kind == "none":
        return "no drainage sheet"
    return f"sheet: {told([kind, figures.word('sheet.face')])}"


def _sheet_bottom(figures: Figures, cut: Cut) -> str:
    gap = figures.find("sheet.gap_to_stone")
    over = f", {gap.text} over the stone" if gap and gap.value > 0 else ""
    return f"sheet ends {figures.said('sheet.bottom_level')}{over}"


def _coat_top(figures: Figures, cut: Cut) -> str:
    return f"coat from {figures.said('coat.top_level')}"


def _sheet_top(figures: Figures, cut: Cut) -> str:
    held = figures.word("sheet.top_termination")
    closed = {"": f"edge {NOT_SHOWN}", "none": "edge open"}.get(held, f"closed by {held}")
    return f"sheet from {figures.said('sheet.top_level')}, {closed}"


def _wall(figures: Figures, cut: Cut) -> str:
    kind = figures.word("wall.type").replace("_", " ")
    return f"wall: {told([figures.written('wall.thickness'), kind])}"


def _slab(figures: Figures, cut: Cut) -> str:
    if cut.setting.crawl:
        return "bare ground inside"
    return f"slab: {told([figures.written('slab.depth')])}"


def _base(figures: Figures, cut: Cut) -> str:
    material = figures.word("slab.base_material")
    if material == "none":
        return "no base under the slab"
    return f"base: {told([figures.written('slab.base_thickness'), material])}"


def _retarder(figures: Figures, cut: Cut) -> str:
    known = figures.yes("slab.retarder")
    if known is False:
        return "no vapor retarder"
    thickness = figures.written("slab.retarder_thickness")
    return f"vapor retarder: {thickness if known and thickness else NOT_SHOWN}"


def _edge(figures: Figures, cut: Cut) -> str:
    return f"slab edge: {figures.said('slab.edge')}"


def _break_over(figures: Figures, cut: Cut) -> str:
    known = figures.yes("joint.break_on_footing")
    state = {True: "", False: "none", None: NOT_SHOWN}[known]
    joint = figures.word("joint.connection")
    waterstop = figures.word("joint.waterstop")
    return joined(
        [
            f"break over the footing: {state}" if state else "break over the footing",
            joint if joint not in ("", "none") else "",
            waterstop.replace("_", " ") if waterstop not in ("", "none") else "",
        ],
        ", ",
    )


def _footing(figures: Figures, cut: Cut) -> str:
    width = figures.written("footing.width", "{} wide")
    return f"footing: {told([width, figures.written('footing.depth', '{} thick')])}"


def _footing_base(figures: Figures, cut: Cut) -> str:
    known = figures.yes("footing.break_under")
    state = {True: "", False: ": none", None: f": {NOT_SHOWN}"}[known]
    return f"break under the footing{state}"


def _bearing(figures: Figures, cut: Cut) -> str:
    return f"bears on {told([figures.word('soil.bearing.usc').upper()])}"


def _zone(figures: Figures, cut: Cut) -> str:
    width = figures.written("backfill.free_draining_width", "{} wide")
    return f"free-draining fill: {width or NOT_SHOWN}"


def _cap(figures: Figures, cut: Cut) -> str:
    parts = [figures.written("backfill.cap_thickness"), figures.word("backfill.cap_material")]
    return f"cap: {told(parts)}"


def _fill(figures: Figures, cut: Cut) -> str:
    symbol = figures.word("soil.backfill.usc").upper()
    return f"backfill: {told([symbol, figures.written('backfill.lift', 'lifts {}')])}"


def _ground(figures: Figures, cut: Cut) -> str:
    side = cut.setting.ground.side
    if not side:
        return f"fall of the ground: {NOT_SHOWN}"
    down = figures.find("grade.sides.each.fall", side)
    fall = ""
    if down is not None:
        fall = f"rises {down.text.removeprefix('-')}" if down.value < 0 else f"falls {down.text}"
    run = figures.written("grade.sides.each.in_distance", "in {}", side)
    slope = figures.written("grade.sides.each.slope", "({})", side)
    return f"ground {side}: {joined([fall, run, slope], ' ') or NOT_SHOWN}"


def _bank(figures: Figures, cut: Cut) -> str:
    lean = figures.find("excavation.run_per_rise")
    soil = figures.word("soil.bank.usc").upper()
    how = figures.word("excavation.protection")
    if lean is None and how != "none":
        allowed = figures.find("excavation.steepest_allowed")
        return f"bank: {NOT_SHOWN}, dashed at {allowed.text if allowed else '1.5H:1V'}"
    against = "no protection" if how == "none" else how
    return f"bank: {told([soil, lean.text if lean else '', against])}"


def _hole(figures: Figures, cut: Cut) -> str:
    clear = figures.written("excavation.bottom_clear_width")
    return f"clear width at the bottom: {clear or NOT_SHOWN}"


def _water(figures: Figures, cut: Cut) -> str:
    return f"seasonal high water {figures.written('levels.seasonal_high_water') or NOT_SHOWN}"


def _insulation(figures: Figures, cut: Cut) -> str:
    parts = [figures.written("insulation.thickness"), figures.word("insulation.kind").upper()]
    return f"insulation: {told(parts)}"


_LABELS: dict[str, Label] = {
    **DRAIN_LABELS,
    "bank": _bank,
    "base": _base,
    "bearing": _bearing,
    "break_over": _break_over,
    "cap": _cap,
    "coat": _coat,
    "coat_bottom": _coat_bottom,
    "coat_top": _coat_top,
    "fill": _fill,
    "footing": _footing,
    "footing_base": _footing_base,
    "ground": _ground,
    "hole": _hole,
    "insulation": _insulation,
    "retarder": _retarder,
    "sheet": _sheet,
    "sheet_bottom": _sheet_bottom,
    "sheet_top": _sheet_top,
    "slab": _slab,
    "slab_edge": _edge,
    "wall": _wall,
    "water": _water,
    "zone": _zone,
}
