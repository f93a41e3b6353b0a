"""Depth of the dig and how far back its sides must lean. The competent person decides on site."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, OutsideLimits, quantity
from checker.formulas import excavation, levels


@quantity(
    "excavation.depth_by_levels",
    title="depth of the dig by the levels",
    kind="length",
    needs=("grade.highest_at_wall", "footing.underside_level", "drain.trench_bottom_low?"),
    rises_with=("grade.highest_at_wall",),
    falls_with=("footing.underside_level", "drain.trench_bottom_low"),
    formula="highest finished grade - the lower of footing underside and drain trench bottom",
    source="geometry",
)
def depth_by_levels(grade: float, footing_base: float, trench: float | None) -> Assumed:
    """Return the depth of the dig where the ground at its edge is the finished ground [m]."""
    bottom = footing_base if trench is None else min(footing_base, trench)
    return Assumed(levels.height_above(grade, bottom), "the edge stands at finished grade")


@quantity(
    "excavation.deepest",
    title="depth of the dig to reckon with",
    kind="length",
    needs=("excavation.depth?", "excavation.depth_by_levels?"),
    rises_with=("excavation.depth", "excavation.depth_by_levels"),
    formula="the greater of the depth shown and the depth by the levels",
    source="common practice: every safeguard hangs on the depth",
)
def deepest(shown: float | None, by_levels: float | None) -> float:
    """Return the depth that the safeguards of the dig are judged by [m]."""
    depths = [depth for depth in (shown, by_levels) if depth is not None]
    if not depths:
        raise NotShown("the depth of the dig", "excavation.depth")
    return max(depths)


@quantity(
    "excavation.steepest_allowed",
    title="steepest slope allowed for the sides of the dig",
    kind="dig_slope",
    needs=("excavation.osha_type?", "excavation.deepest?"),
    rises_with=("excavation.deepest",),
    formula="run per rise by soil type: stable rock 0, A 3/4, B 1, C 1 1/2, not classed 1 1/2",
    source="29 CFR 1926 Subpart P, App. B Table B-1, to 20 ft; 1926.652(b)(1)(i)",
)
def steepest_allowed(soil_type: str | None, depth: float | None) -> float | Assumed:
    """Return the least run per rise [-]; an unclassed soil counts as the worst."""
    if depth is not None and depth > excavation.DEEPEST_BY_TABLE + 1e-9:
        raise OutsideLimits("over 20 ft a registered professional engineer designs the slope")
    if soil_type is None:
        return Assumed(excavation.UNCLASSIFIED, "the soil is not classed, so the worst type counts")
    return excavation.run_per_rise(soil_type)


@quantity(
    "excavation.bank_slope",
    title="slope of the bank, its benches counted in",
    kind="dig_slope",
    needs=("excavation.run_per_rise?", "excavation.bench_width?", "excavation.bench_height?"),
    rises_with=("excavation.run_per_rise", "excavation.bench_width"),
    falls_with=("excavation.bench_height",),
    formula="the slope shown; width / height of the benches; the steeper where both are shown",
    source="geometry; 29 CFR 1926 Subpart P, App. B judges benches by the line along their edges",
)
def bank_slope(shown: float | None, width: float | None, height: float | None) -> float:
    """Return how far the bank lies back on the whole, as run per rise [-]."""
    slopes = [] if shown is None else [shown]
    if width is not None and height is not None:
        slopes.append(excavation.bench_slope(width, height))
    if not slopes:
        raise NotShown(
            "the slope of the bank, or width and height of its benches", "excavation.run_per_rise"
        )
    return min(slopes)


@quantity(
    "excavation.run_out",
    title="distance the top of the slope lies back from its toe",
    kind="length",
    needs=("excavation.deepest", "excavation.steepest_allowed"),
    rises_with=("excavation.deepest", "excavation.steepest_allowed"),
    formula="depth x run per rise of the steepest slope allowed",
    source="geometry; 29 CFR 1926 Subpart P, App. B Table B-1, up to 20 ft",
)
def run_out(depth: float, per_rise: float) -> float:
    """Return how much room the sides need all round [m]."""
    return excavation.run_out(depth, per_rise)


@quantity(
    "excavation.room_needed",
    title="room from the wall to the top of the slope",
    kind="length",
    needs=("excavation.run_out", "excavation.bottom_clear_width?", "footing.toe?"),
    rises_with=("excavation.run_out", "excavation.bottom_clear_width", "footing.toe"),
    formula="run-out + clear width at the bottom + footing beyond the wall",
    source="geometry",
)
def room_needed(run: float, clear: float | None, toe: float | None) -> float | Assumed:
    """Return the room that the lot must have on the tightest side [m]."""
    room = excavation.room_needed(run, clear or 0.0, toe or 0.0)
    unknown = [
        what
        for what, length in (("clear width at the bottom", clear), ("footing beyond the wall", toe))
        if length is None
    ]
    if not unknown:
        return room
    return Assumed(room, f"nothing is added for the {' and the '.join(unknown)}")


@quantity(
    "excavation.bank_run",
    title="distance the bank lies back on its way up, as it is cut",
    kind="length",
    needs=("excavation.deepest", "excavation.bank_slope?"),
    rises_with=("excavation.deepest", "excavation.bank_slope"),
    formula="depth x slope of the bank, nothing where no slope is shown",
    source="geometry",
)
def bank_run(depth: float, per_rise: float | None) -> float | Assumed:
    """Return how far the top edge of the bank lies back from its toe [m]."""
    if per_rise is None:
        return Assumed(0.0, "the bank stands upright")
    return excavation.run_out(depth, per_rise)


@quantity(
    "excavation.setback_needed",
    title="set-back at which spoil and machines do not load the bank",
    kind="length",
    needs=("excavation.deepest", "excavation.bank_run"),
    falls_with=("excavation.bank_run",),
    formula="depth - distance the bank lies back, and 2 ft at least",
    source="common practice for a line at 1 to 1 from the toe; 29 CFR 1926.651(j)(2) for the 2 ft",
)
def setback_needed(depth: float, run: float) -> float:
    """Return how far from the edge a load must stand [m]."""
    return excavation.setback_needed(depth, run)


@quantity(
    "excavation.bottom_level",
    title="bottom of the dig",
    kind="level",
    needs=("grade.highest_at_wall?", "excavation.deepest?", "footing.underside_level?"),
    rises_with=("grade.highest_at_wall", "footing.underside_level"),
    falls_with=("excavation.deepest",),
    formula="highest finished grade - depth, else underside of the footing",
    source="geometry",
)
def bottom_level(
    grade: float | None, depth: float | None, footing_base: float | None
) -> float | Assumed:
    """Return the level that the hole is dug to [m]."""
    if grade is not None and depth is not None:
        return Assumed(grade - depth, "the edge stands at finished grade")
    if footing_base is None:
        raise NotShown("the level of the bottom of the dig", "levels.footing_underside")
    return footing_base


@quantity(
    "excavation.adjacent_distance_needed",
    title="distance at which the dig does not undercut the nearest structure",
    kind="length",
    needs=(
        "excavation.adjacent_base_level?",
        "excavation.bottom_level?",
        "excavation.deepest",
        "excavation.bank_run",
    ),
    rises_with=("excavation.adjacent_base_level",),
    falls_with=("excavation.bottom_level",),
    formula="base of the structure - bottom of the dig - run of the bank; else the depth",
    source="common practice for a line at 1 to 1 from the footing's base, geometry",
)
def adjacent_distance_needed(
    base: float | None, bottom: float | None, depth: float, run: float
) -> float | Assumed:
    """Return how far the edge of the dig must keep from the structure, at ground level [m]."""
    if base is None or bottom is None:
        return Assumed(depth, "the structure's base is not shown, so it counts from the ground")
    return excavation.distance_needed(base, bottom, run)
