"""Room for the footing drain: under the floor, over the bearing, and for its fall in between."""

from __future__ import annotations

from checker.deriving.quantity import NotShown, quantity
from checker.formulas import levels


@quantity(
    "drain.floor_cover",
    title="underside of the slab over the crown of the pipe",
    kind="length",
    needs=("slab.underside_level", "drain.crown_high"),
    rises_with=("slab.underside_level",),
    falls_with=("drain.crown_high",),
    formula="underside of the slab - crown at the highest corner",
    source="geometry",
)
def floor_cover(slab_base: float, crown: float) -> float:
    """Return how far the pipe stays under the slab at its highest corner [m]."""
    return levels.height_above(slab_base, crown)


@quantity(
    "drain.bearing_cover",
    title="bottom of the drain trench over the underside of the footing",
    kind="length",
    needs=("drain.trench_bottom_low", "footing.underside_level"),
    rises_with=("drain.trench_bottom_low",),
    falls_with=("footing.underside_level",),
    formula="bottom of the trench at the lowest corner - underside of the footing",
    source="geometry",
)
def bearing_cover(trench: float, footing_base: float) -> float:
    """Return how far the trench stays above the footing's bearing [m]."""
    return levels.height_above(trench, footing_base)


@quantity(
    "drain.window",
    title="room for fall between floor and bearing",
    kind="length",
    needs=(
        "slab.underside_level?",
        "footing.underside_level?",
        "footing.thickness?",
        "slab.above_footing?",
        "drain.bedding_planned",
        "drain.outside_diameter_planned",
    ),
    rises_with=("slab.underside_level", "footing.thickness", "slab.above_footing"),
    falls_with=(
        "footing.underside_level",
        "drain.bedding_planned",
        "drain.outside_diameter_planned",
    ),
    formula="underside of the slab - underside of the footing, else thickness of the footing +"
    " height of the slab over it; less bedding and outside diameter",
    source="geometry; common practice",
)
def window(
    slab_base: float | None,
    footing_base: float | None,
    thickness: float | None,
    over_footing: float | None,
    bedding: float,
    outside: float,
) -> float:
    """Return the room for fall once bedding and pipe are in [m]; it needs no inverts.

    Without levels, as in a standard, two heights do.
    """
    if slab_base is not None and footing_base is not None:
        return levels.window(slab_base, footing_base, bedding, outside)
    if thickness is not None and over_footing is not None:
        return levels.window(over_footing, -thickness, bedding, outside)
    needed = ("levels.slab_underside", slab_base), ("levels.footing_underside", footing_base)
    raise NotShown(
        "the levels of slab and footing", *(path for path, level in needed if level is None)
    )


@quantity(
    "drain.window_spare",
    title="room left over once the drain has its fall",
    kind="length",
    needs=("drain.window", "drain.fall_total"),
    rises_with=("drain.window",),
    falls_with=("drain.fall_total",),
    formula="room for fall - fall",
    source="geometry; common practice",
)
def window_spare(room: float, fall: float) -> float:
    """Return the room that is left, negative when the drain does not fit [m]."""
    return room - fall
