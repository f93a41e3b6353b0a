"""The footing: its two levels, its thickness, and the thickness that the drain asks for."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import levels


@quantity(
    "footing.top_level",
    title="top of the footing",
    kind="level",
    needs=("levels.footing_top?", "levels.footing_underside?", "footing.thickness?"),
    rises_with=("levels.footing_top", "levels.footing_underside", "footing.thickness"),
    formula="the level shown, else underside of the footing + thickness",
    source="geometry",
)
def top_level(shown: float | None, underside: float | None, thickness: float | None) -> float:
    """Return the level of the top of the footing [m]."""
    if shown is not None:
        return shown
    if underside is None or thickness is None:
        raise NotShown("the level of the top of the footing", "levels.footing_top")
    return underside + thickness


@quantity(
    "footing.underside_level",
    title="underside of the footing",
    kind="level",
    needs=("levels.footing_underside?", "levels.footing_top?", "footing.thickness?"),
    rises_with=("levels.footing_underside", "levels.footing_top"),
    falls_with=("footing.thickness",),
    formula="the level shown, else top of the footing - thickness",
    source="geometry",
)
def underside_level(shown: float | None, top: float | None, thickness: float | None) -> float:
    """Return the level of the underside of the footing [m]."""
    if shown is not None:
        return shown
    if top is None or thickness is None:
        raise NotShown("the level of the underside of the footing", "levels.footing_underside")
    return top - thickness


@quantity(
    "footing.depth",
    title="thickness of the footing",
    kind="length",
    needs=("footing.thickness?", "levels.footing_top?", "levels.footing_underside?"),
    rises_with=("footing.thickness", "levels.footing_top"),
    falls_with=("levels.footing_underside",),
    formula="the thickness shown, else top - underside of the footing",
    source="geometry",
)
def depth(shown: float | None, top: float | None, underside: float | None) -> float:
    """Return the thickness of the footing [m]."""
    if shown is not None:
        return shown
    if top is None or underside is None:
        raise NotShown("the thickness of the footing", "footing.thickness")
    return levels.height_above(top, underside)


@quantity(
    "footing.level_difference",
    title="thickness of the footing against its two levels",
    kind="length",
    needs=("footing.thickness", "levels.footing_top", "levels.footing_underside"),
    formula="thickness - (top - underside), without its sign",
    source="geometry",
)
def level_difference(thickness: float, top: float, underside: float) -> float:
    """Return how far the thickness is from what the levels say [m]."""
    return levels.disagreement(top, underside, thickness)


@quantity(
    "footing.thickness_needed",
    title="thinnest footing beside which the drain fits",
    kind="length",
    needs=(
        "drain.bedding_planned",
        "drain.outside_diameter_planned",
        "drain.fall_total",
        "footing.top_level",
        "slab.underside_level",
    ),
    rises_with=(
        "drain.bedding_planned",
        "drain.outside_diameter_planned",
        "drain.fall_total",
        "footing.top_level",
    ),
    falls_with=("slab.underside_level",),
    formula="bedding + outside diameter + fall + (top of the footing - underside of the slab)",
    source="geometry; common practice",
)
def thickness_needed(
    bedding: float, outside: float, fall: float, top: float, slab_base: float
) -> float:
    """Return the least thickness that leaves room for bedding, pipe and fall [m]."""
    return levels.thickness_needed(bedding, outside, fall, top, slab_base)


@quantity(
    "footing.toe",
    title="footing beyond the outside face of the wall",
    kind="length",
    needs=("footing.projection?", "footing.width?", "wall.thickness?"),
    rises_with=("footing.projection", "footing.width"),
    falls_with=("wall.thickness",),
    formula="the projection shown, else (width of the footing - thickness of the wall) / 2",
    source="geometry",
)
def toe(shown: float | None, width: float | None, wall: float | None) -> float | Assumed:
    """Return how far the footing reaches past the wall, outside [m]."""
    if shown is not None:
        return shown
    if width is None or wall is None:
        raise NotShown("how far the footing reaches past the wall", "footing.projection")
    if width < wall:
        raise ValueError("the footing is narrower than the wall on it")
    return Assumed((width - wall) / 2, "the wall stands in the middle of the footing")
