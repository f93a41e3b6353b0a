"""Stone round the drain: over the pipe, over the footing, and beside the pipe."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import levels, stone


@quantity(
    "stone.surface_level",
    title="top of the stone",
    kind="level",
    needs=("stone.top_level?", "stone.cover?", "drain.crown_high?"),
    rises_with=("stone.top_level", "stone.cover", "drain.crown_high"),
    formula="the level shown, else crown at the highest corner + cover",
    source="geometry",
)
def surface_level(shown: float | None, cover: float | None, crown: float | None) -> float | Assumed:
    """Return the level of the top of the stone [m]."""
    if shown is not None:
        return shown
    if cover is None or crown is None:
        raise NotShown("the level of the top of the stone", "stone.top_level")
    return Assumed(crown + cover, "the cover over the pipe's highest corner, carried level")


@quantity(
    "stone.over_crown",
    title="stone over the crown of the pipe",
    kind="length",
    needs=("stone.top_level?", "drain.crown_high?", "stone.cover?"),
    rises_with=("stone.top_level", "stone.cover"),
    falls_with=("drain.crown_high",),
    formula="top of the stone - crown at the highest corner, else the cover shown",
    source="geometry",
)
def over_crown(top: float | None, crown: float | None, cover: float | None) -> float:
    """Return the least stone over the pipe [m]."""
    if top is not None and crown is not None:
        return levels.height_above(top, crown)
    if cover is None:
        raise NotShown("the stone over the pipe", "stone.cover", "stone.top_level")
    return cover


@quantity(
    "stone.over_footing",
    title="stone over the top of the footing",
    kind="length",
    needs=("stone.surface_level", "footing.top_level"),
    rises_with=("stone.surface_level",),
    falls_with=("footing.top_level",),
    formula="top of the stone - top of the footing",
    source="geometry",
)
def over_footing(top: float, footing_top: float) -> float:
    """Return how far the stone reaches over the footing [m]."""
    return levels.height_above(top, footing_top)


@quantity(
    "stone.side_left",
    title="stone beyond the pipe, away from the footing",
    kind="length",
    needs=("stone.beyond_footing", "drain.offset", "drain.pipe_outside_diameter"),
    rises_with=("stone.beyond_footing",),
    falls_with=("drain.offset", "drain.pipe_outside_diameter"),
    formula="stone beyond the footing - offset - outside diameter",
    source="geometry",
)
def side_left(beyond: float, offset: float, outside: float) -> float:
    """Return the stone left outside the pipe, negative when the pipe sticks out [m]."""
    return stone.side_left(beyond, offset, outside)
