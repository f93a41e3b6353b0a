"""The level at which water can enter the pipe, and its path to it."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import entry, levels, stone

OPEN_LOW = frozenset({"both", "all_around", "slotted"})


@quantity(
    "drain.hole_height",
    title="lowest hole over the inside bottom of the pipe",
    kind="length",
    needs=(
        "drain.holes",
        "drain.hole_rows_apart?",
        "drain.hole_size?",
        "drain.pipe_outside_diameter?",
        "drain.pipe_wall?",
    ),
    formula="R (1 - cos(half the angle between the rows - asin(r / R))); up: from the top; else 0",
    source="geometry of a circle",
)
def hole_height(
    holes: tuple[str, ...],
    rows_apart: float | None,
    hole_size: float | None,
    outside: float | None,
    wall: float | None,
) -> float | Assumed:
    """Return how far water rises beside the pipe before it meets a hole [m]."""
    if OPEN_LOW.intersection(holes):
        return Assumed(0.0, "holes or slots all round reach the bottom of the pipe")
    if not holes:
        raise NotShown("where the holes of the pipe point", "drain.holes")
    if rows_apart is None:
        raise NotShown("the angle between the rows of holes", "drain.hole_rows_apart")
    if outside is None:
        raise NotShown("the outside diameter of the pipe", "drain.outside_diameter")
    if wall is None:
        raise NotShown("the wall thickness of the pipe", "drain.wall_thickness")
    edge = entry.hole_edge_below if "down" in holes else entry.hole_edge_above
    height = edge(outside / 2 - wall, (hole_size or 0.0) / 2, rows_apart)
    if hole_size is None:
        return Assumed(height, "the size of the holes is not shown; taken at their middle")
    return height


@quantity(
    "drain.entry_level",
    title="level at which water enters the pipe at its highest corner",
    kind="level",
    needs=("drain.highest_invert", "drain.hole_height"),
    rises_with=("drain.highest_invert", "drain.hole_height"),
    formula="invert + height of the lowest hole",
    source="geometry",
)
def entry_level(invert: float, height: float) -> float:
    """Return the level to which water rises outside before the pipe takes any [m]."""
    return invert + height


@quantity(
    "drain.entry_over_joint",
    title="level of entry over the joint of footing and wall",
    kind="length",
    needs=("drain.entry_level", "footing.top_level"),
    rises_with=("drain.entry_level",),
    falls_with=("footing.top_level",),
    formula="level of entry - top of the footing",
    source="geometry",
)
def entry_over_joint(level: float, footing_top: float) -> float:
    """Return how high water stands over the joint before it can enter [m]."""
    return levels.height_above(level, footing_top)


@quantity(
    "drain.entry_over_slab_underside",
    title="level of entry over the underside of the slab",
    kind="length",
    needs=("drain.entry_level", "slab.underside_level"),
    rises_with=("drain.entry_level",),
    falls_with=("slab.underside_level",),
    formula="level of entry - underside of the slab",
    source="geometry",
)
def entry_over_slab_underside(level: float, slab_base: float) -> float:
    """Return how high water stands against the slab before it can enter [m]."""
    return levels.height_above(level, slab_base)


@quantity(
    "drain.entry_over_footing_base",
    title="level of entry over the underside of the footing",
    kind="length",
    needs=("drain.entry_level", "footing.underside_level"),
    rises_with=("drain.entry_level",),
    falls_with=("footing.underside_level",),
    formula="level of entry - underside of the footing",
    source="geometry",
)
def entry_over_footing_base(level: float, footing_base: float) -> float:
    """Return how deep water stands beside the footing before it can enter [m]."""
    return levels.height_above(level, footing_base)


@quantity(
    "drain.path_to_pipe",
    title="soil between the top of the stone and the crown of the pipe",
    kind="length",
    needs=("drain.crown_high?", "stone.top_level?", "stone.cover?"),
    rises_with=("drain.crown_high",),
    falls_with=("stone.top_level", "stone.cover"),
    formula="crown of the pipe - top of the stone, else - cover of stone",
    source="geometry",
)
def path_to_pipe(crown: float | None, top: float | None, cover: float | None) -> float:
    """Return how far the stone stops short of the crown, negative when it covers [m]."""
    if crown is not None and top is not None:
        return stone.soil_between(crown, top)
    if cover is None:
        raise NotShown("the top of the stone and the crown", "stone.top_level", "stone.cover")
    return -cover
