"""The levels that the drain's highest invert may have, with everything at once."""

from __future__ import annotations

from typing import NamedTuple

from checker.deriving.quantities.drain_pipe import USUAL_PIPE
from checker.deriving.quantities.outlets import USUAL_LEG_SLOPE
from checker.deriving.quantity import Assumed, NotShown, OutsideLimits, quantity
from checker.deriving.tables import widest_plastic_pipe
from checker.formulas import levels, pipe_run

PerOutlet = tuple[tuple[str, float | None], ...] | None
Kinds = tuple[tuple[str, str | None], ...] | None

LEAST_COVER = 6 * 0.0254
BY_GRAVITY = (None, "daylight", "storm", "dry_well")


class Bound(NamedTuple):
    """A level that the highest invert must keep to, and what asks for it."""

    level: float
    by: str


@quantity(
    "drain.wall_planned",
    title="wall of the pipe to plan with",
    kind="length",
    needs=("drain.pipe_wall?", "drain.diameter?"),
    rises_with=("drain.pipe_wall",),
    formula="the wall, else that of the widest plastic pipe of the nominal size, else of 4 in",
    source="shared/tables/pipes.yaml; 4 in is common practice",
)
def wall_planned(known: float | None, diameter: float | None) -> float | Assumed:
    """Return the wall to reckon with before a pipe is chosen [m]."""
    if known is not None:
        return known
    row = widest_plastic_pipe(diameter if diameter is not None else USUAL_PIPE)
    if row is None:
        raise NotShown("the wall thickness of the pipe", "drain.wall_thickness")
    return Assumed(row.wall, "the pipe is not fully shown, so the widest plastic pipe was taken")


TOP_NEEDS = (
    "slab.underside_level",
    "drain.outside_diameter_planned",
    "drain.wall_planned",
    "stone.top_level?",
)
BOTTOM_NEEDS = (
    "footing.underside_level",
    "drain.bedding_planned",
    "drain.wall_planned",
    "drain.fall_total",
    "outlets.all.kind?",
    "outlets.all.invert?",
    "outlets.all.leg_length?",
    "outlets.all.leg_slope?",
    "sump.inlet_invert?",
)


def _top(slab_base: float, outside: float, wall: float, stone_top: float | None) -> Bound:
    """Return the highest level the highest invert may have."""
    over_invert = levels.crown(0.0, outside, wall)
    bounds = [Bound(slab_base - over_invert, "the crown reaches the underside of the slab")]
    if stone_top is not None:
        level = stone_top - LEAST_COVER - over_invert
        bounds.append(Bound(level, "6 in of stone are left over the crown"))
    return min(bounds)


def _bottom(
    footing_base: float,
    bedding: float,
    wall: float,
    fall: float,
    kinds: Kinds,
    inverts: PerOutlet,
    lengths: PerOutlet,
    slopes: PerOutlet,
    sump_inlet: float | None,
) -> Bound:
    """Return the lowest level the highest invert may have."""
    trench = levels.trench_bottom(0.0, wall, bedding)
    bounds = [Bound(footing_base - trench, "the trench reaches the underside of the footing")]
    bounds += _outlet_bounds(kinds, inverts, lengths, slopes)
    if sump_inlet is not None:
        bounds.append(Bound(sump_inlet, "the drain reaches the inlet of the sump"))
    highest = max(bounds)
    return Bound(highest.level + fall, highest.by)


def _outlet_bounds(
    kinds: Kinds, inverts: PerOutlet, lengths: PerOutlet, slopes: PerOutlet
) -> list[Bound]:
    """Return the lowest invert of the drain from which each gravity outlet can be reached."""
    kind_of, length_of, slope_of = dict(kinds or ()), dict(lengths or ()), dict(slopes or ())
    bounds = []
    for name, invert in inverts or ():
        length = length_of.get(name)
        if invert is None or length is None or kind_of.get(name) not in BY_GRAVITY:
            continue
        leg_slope = slope_of.get(name)
        fall = pipe_run.fall(USUAL_LEG_SLOPE if leg_slope is None else leg_slope, length)
        bounds.append(Bound(invert + fall, f"the leg to outlet {name} has its fall"))
    return bounds


@quantity(
    "drain.invert_window_top",
    title="highest level that the drain's highest invert may have",
    kind="level",
    needs=TOP_NEEDS,
    rises_with=("slab.underside_level", "drain.wall_planned", "stone.top_level"),
    falls_with=("drain.outside_diameter_planned",),
    formula="the lower of underside of the slab, and top of the stone - 6 in; - diameter + wall",
    source="geometry; IRC R405.1 for the 6 in",
)
def window_top(slab_base: float, outside: float, wall: float, stone_top: float | None) -> float:
    """Return the upper end of the interval [m]."""
    return _top(slab_base, outside, wall, stone_top).level


@quantity(
    "drain.invert_window_top_by",
    title="what holds the drain's highest invert down",
    kind="text",
    needs=TOP_NEEDS,
    formula="the constraint that binds at the upper end",
    source="geometry; IRC R405.1 for the 6 in",
)
def window_top_by(slab_base: float, outside: float, wall: float, stone_top: float | None) -> str:
    """Return the constraint that binds at the upper end of the interval."""
    return _top(slab_base, outside, wall, stone_top).by


@quantity(
    "drain.invert_window_bottom",
    title="lowest level that the drain's highest invert may have",
    kind="level",
    needs=BOTTOM_NEEDS,
    rises_with=(
        "footing.underside_level",
        "drain.bedding_planned",
        "drain.wall_planned",
        "drain.fall_total",
        "outlets.all.invert",
        "outlets.all.leg_length",
        "outlets.all.leg_slope",
        "sump.inlet_invert",
    ),
    formula="fall + the highest of: footing + bedding + wall; outlet + fall of its leg; sump inlet",
    source="geometry; common practice for a leg at 1/8 in/ft where no slope is shown",
)
def window_bottom(
    footing_base: float,
    bedding: float,
    wall: float,
    fall: float,
    kinds: Kinds,
    inverts: PerOutlet,
    lengths: PerOutlet,
    slopes: PerOutlet,
    sump_inlet: float | None,
) -> float:
    """Return the lower end of the interval [m]."""
    return _bottom(
        footing_base, bedding, wall, fall, kinds, inverts, lengths, slopes, sump_inlet
    ).level


@quantity(
    "drain.invert_window_bottom_by",
    title="what holds the drain's highest invert up",
    kind="text",
    needs=BOTTOM_NEEDS,
    formula="the constraint that binds at the lower end",
    source="geometry",
)
def window_bottom_by(
    footing_base: float,
    bedding: float,
    wall: float,
    fall: float,
    kinds: Kinds,
    inverts: PerOutlet,
    lengths: PerOutlet,
    slopes: PerOutlet,
    sump_inlet: float | None,
) -> str:
    """Return the constraint that binds at the lower end of the interval."""
    return _bottom(
        footing_base, bedding, wall, fall, kinds, inverts, lengths, slopes, sump_inlet
    ).by


@quantity(
    "drain.invert_window",
    title="play of the drain's highest invert with everything at once",
    kind="length",
    needs=("drain.invert_window_top", "drain.invert_window_bottom"),
    rises_with=("drain.invert_window_top",),
    falls_with=("drain.invert_window_bottom",),
    formula="highest - lowest level that the highest invert may have",
    source="geometry",
)
def invert_window(top: float, bottom: float) -> float:
    """Return the height of the interval, negative when no level fits [m]."""
    return levels.height_above(top, bottom)


@quantity(
    "footing.thickness_that_fits",
    title="thinnest footing beside which some level of the drain fits everything",
    kind="length",
    needs=(
        "footing.top_level",
        "drain.invert_window_top",
        "drain.bedding_planned",
        "drain.wall_planned",
        "drain.fall_total",
        "outlets.all.kind?",
        "outlets.all.invert?",
        "outlets.all.leg_length?",
        "outlets.all.leg_slope?",
    ),
    rises_with=(
        "footing.top_level",
        "drain.bedding_planned",
        "drain.wall_planned",
        "drain.fall_total",
    ),
    falls_with=("drain.invert_window_top",),
    formula="top of the footing - (highest invert allowed - fall - wall - bedding)",
    source="geometry; common practice",
)
def thickness_that_fits(
    footing_top: float,
    window_top: float,
    bedding: float,
    wall: float,
    fall: float,
    kinds: Kinds,
    inverts: PerOutlet,
    lengths: PerOutlet,
    slopes: PerOutlet,
) -> float:
    """Return the least thickness, its top staying where it is [m].

    Raises OutsideLimits where an outlet lies too high for any footing.
    """
    lowest = window_top - fall
    high = [one.by for one in _outlet_bounds(kinds, inverts, lengths, slopes) if one.level > lowest]
    if high:
        raise OutsideLimits(f"no footing helps: under the floor, it cannot be that {high[0]}")
    return levels.height_above(footing_top, levels.trench_bottom(lowest, wall, bedding))
