"""Levels of floor, footing and ground water, and whether they can all be true."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import hydrostatics, levels

# Two levels that are each good to 0.02 ft may differ by twice that and still be right.
TOLERANCE = 0.04 * 0.3048

FOOTING_BASE = "the underside of the footing"
FOOTING_TOP = "the top of the footing"
SLAB_BASE = "the underside of the slab"
FLOOR = "the top of the floor"
WALL_TOP = "the top of the wall"

# What must lie above what, in any house. Ground below the floor is a walk-out and legal; a slab
# may lie above, at or below the top of the footing. So there is no single order, but two.
RISING = ((FOOTING_BASE, FOOTING_TOP, WALL_TOP), (FOOTING_BASE, SLAB_BASE, FLOOR, WALL_TOP))


@quantity(
    "slab.underside_level",
    title="underside of the slab",
    kind="level",
    needs=(
        "levels.slab_underside?",
        "levels.floor_top?",
        "slab.thickness?",
        "footing.top_level?",
        "slab.above_footing?",
    ),
    rises_with=(
        "levels.slab_underside",
        "levels.floor_top",
        "footing.top_level",
        "slab.above_footing",
    ),
    falls_with=("slab.thickness",),
    formula="the level shown, else top of the floor - thickness, else top of the footing + the"
    " height over it",
    source="geometry",
)
def slab_underside(
    shown: float | None,
    floor: float | None,
    thickness: float | None,
    footing_top: float | None,
    over_footing: float | None,
) -> float:
    """Return the level of the underside of the slab [m]."""
    if shown is not None:
        return shown
    if floor is not None and thickness is not None:
        return floor - thickness
    if footing_top is not None and over_footing is not None:
        return footing_top + over_footing
    raise NotShown("the level of the underside of the slab", "levels.slab_underside")


@quantity(
    "slab.top_level",
    title="top of the floor",
    kind="level",
    needs=("levels.floor_top?", "levels.slab_underside?", "slab.thickness?"),
    rises_with=("levels.floor_top", "levels.slab_underside", "slab.thickness"),
    formula="the level shown, else underside of the slab + thickness of the slab",
    source="geometry",
)
def slab_top(shown: float | None, underside: float | None, thickness: float | None) -> float:
    """Return the level of the top of the floor [m]."""
    if shown is not None:
        return shown
    if underside is None or thickness is None:
        raise NotShown("the level of the top of the floor", "levels.floor_top")
    return underside + thickness


@quantity(
    "slab.depth",
    title="thickness of the slab",
    kind="length",
    needs=("slab.thickness?", "levels.floor_top?", "levels.slab_underside?"),
    rises_with=("slab.thickness", "levels.floor_top"),
    falls_with=("levels.slab_underside",),
    formula="the thickness shown, else top of the floor - underside of the slab",
    source="geometry",
)
def slab_depth(shown: float | None, floor: float | None, underside: float | None) -> float:
    """Return the thickness of the slab [m]."""
    if shown is not None:
        return shown
    if floor is None or underside is None:
        raise NotShown("the thickness of the slab", "slab.thickness")
    return levels.height_above(floor, underside)


@quantity(
    "levels.contradiction",
    title="levels that cannot all be true",
    kind="text",
    needs=(
        "levels.footing_underside?",
        "levels.footing_top?",
        "levels.slab_underside?",
        "levels.floor_top?",
        "levels.top_of_wall?",
        "footing.thickness?",
        "slab.thickness?",
        "wall.height?",
        "slab.above_footing?",
    ),
    formula="each level compared with the next above it, each height with its two ends",
    source="geometry; two levels are good to 0.04 ft",
)
def contradiction(
    footing_base: float | None,
    footing_top: float | None,
    slab_base: float | None,
    floor: float | None,
    wall_top: float | None,
    footing_thickness: float | None,
    slab_thickness: float | None,
    wall_height: float | None,
    over_footing: float | None,
) -> str:
    """Return "none", or a sentence that names each pair of levels that contradict."""
    named = {
        FOOTING_BASE: footing_base,
        FOOTING_TOP: footing_top,
        SLAB_BASE: slab_base,
        FLOOR: floor,
        WALL_TOP: wall_top,
    }
    known = {name: level for name, level in named.items() if level is not None}
    if not any(len(known.keys() & set(chain)) > 1 for chain in RISING):
        raise NotShown("two levels to compare", "levels.footing_top", "levels.slab_underside")
    pairs = dict.fromkeys(pair for chain in RISING for pair in levels.out_of_order(chain, known))
    found = [f"{upper} is not above {lower}" for lower, upper in pairs]
    found += _off("the thickness of the footing", footing_top, footing_base, footing_thickness)
    found += _off("the thickness of the slab", floor, slab_base, slab_thickness)
    found += _off("the height of the wall", wall_top, footing_top, wall_height)
    found += _off("the height of the slab over the footing", slab_base, footing_top, over_footing)
    return "; ".join(found) or "none"


def _off(what: str, upper: float | None, lower: float | None, stated: float | None) -> list[str]:
    if upper is None or lower is None or stated is None:
        return []
    if levels.disagreement(upper, lower, stated) <= TOLERANCE:
        return []
    return [f"{what} is not the difference between the levels of its top and its bottom"]


@quantity(
    "levels.water_over_slab",
    title="seasonal high water over the underside of the slab",
    kind="length",
    needs=("levels.seasonal_high_water", "slab.underside_level"),
    rises_with=("levels.seasonal_high_water",),
    falls_with=("slab.underside_level",),
    formula="seasonal high water - underside of the slab",
    source="geometry",
)
def water_over_slab(water: float, slab_base: float) -> float:
    """Return the head over the underside of the slab, negative below it [m]."""
    return levels.height_above(water, slab_base)


@quantity(
    "levels.water_under_footing",
    title="underside of the footing over seasonal high water",
    kind="length",
    needs=("footing.underside_level", "levels.seasonal_high_water"),
    rises_with=("footing.underside_level",),
    falls_with=("levels.seasonal_high_water",),
    formula="underside of the footing - seasonal high water",
    source="geometry",
)
def water_under_footing(footing_base: float, water: float) -> float:
    """Return how far the footing clears the water, negative in it [m]."""
    return levels.height_above(footing_base, water)


@quantity(
    "levels.water_pressure_at_slab",
    title="water pressure under the slab",
    kind="pressure",
    needs=("levels.water_over_slab",),
    rises_with=("levels.water_over_slab",),
    formula="62.4 lb/ft3 x head over the underside of the slab, none below it",
    source="hydrostatics; ASCE 7-10 section 3.2.2",
)
def water_pressure_at_slab(head: float) -> float:
    """Return the upward pressure of water on the slab [Pa]."""
    return hydrostatics.pressure(head)


@quantity(
    "slab.uplift_factor",
    title="weight of the slab over the uplift of water",
    kind="ratio",
    needs=("slab.depth", "levels.water_over_slab"),
    rises_with=("slab.depth",),
    falls_with=("levels.water_over_slab",),
    formula="150 lb/ft3 x thickness / (62.4 lb/ft3 x head)",
    source="balance of forces; EM 1110-2-2100 (2005) Eq. 3-2",
)
def uplift_factor(thickness: float, head: float) -> Assumed:
    """Return weight over uplift [-]; there is none while water stays under the slab."""
    factor = hydrostatics.uplift_factor(thickness, head)
    return Assumed(factor, "normal concrete of 150 lb/ft3, no help from walls or footings")
