"""Load of the fill and of water on the wall, for the engineer: these rules size no wall."""

from __future__ import annotations

from checker.deriving.ground_tables import SoilLoad, soil_load
from checker.deriving.quantity import Assumed, NotShown, OutsideLimits, quantity
from checker.formulas import earth_pressure, hydrostatics, levels
from checker.formulas.earth_pressure import FOOT, POUND, Layer

TABLE = "IBC 2021 Table 1610.1"
FLUID = "UFC 3-220-20 section 4-3.3, equivalent fluid, walls to 20 ft"
USUAL_WEIGHT = 120 * POUND / FOOT**3

LOAD_NEEDS = (
    "soil.backfill.usc?",
    "soil.backfill.friction_angle?",
    "soil.backfill.unit_weight?",
)
LOAD_RISES = ("soil.backfill.unit_weight",)
LOAD_FALLS = ("soil.backfill.friction_angle",)


@quantity(
    "soil.backfill.weight",
    title="weight of the backfill to reckon with",
    kind="unit_weight",
    needs=("soil.backfill.unit_weight?",),
    rises_with=("soil.backfill.unit_weight",),
    formula="the weight shown, else 120 lb/ft3",
    source="common practice for the 120 lb/ft3",
)
def backfill_weight(shown: float | None) -> float | Assumed:
    """Return the unit weight of the backfill with its water [N/m3]."""
    if shown is not None:
        return shown
    return Assumed(USUAL_WEIGHT, "120 pcf, moist or full of water alike")


def _by_angle(coefficient: float, weight: float | None) -> float | Assumed:
    if weight is not None:
        return earth_pressure.fluid_weight(coefficient, weight)
    return Assumed(earth_pressure.fluid_weight(coefficient, USUAL_WEIGHT), "a backfill of 120 pcf")


def _table_load(symbol: str | None) -> SoilLoad:
    if symbol is None:
        raise NotShown("the class of the backfill, or its friction angle", "soil.backfill.usc")
    load = soil_load(symbol)
    if load is None:
        raise OutsideLimits(f"{TABLE} gives no load for this soil; the engineer decides")
    return load


def _from_table(load: SoilLoad, value: float) -> Assumed:
    read = "from memory" if load.from_memory else "as a state's code prints it"
    return Assumed(value, f"{TABLE}, {read}, for drained fill with nothing on it")


@quantity(
    "wall.rest_load",
    title="soil load at rest, growth with depth",
    kind="unit_weight",
    needs=LOAD_NEEDS,
    rises_with=LOAD_RISES,
    falls_with=LOAD_FALLS,
    formula="(1 - sin of the friction angle) x weight of the backfill, else Table 1610.1 at rest",
    source=f"UFC 3-220-20 Eq. 4-2 and 4-13; {TABLE}",
)
def rest_load(symbol: str | None, angle: float | None, weight: float | None) -> float | Assumed:
    """Return the equivalent fluid of the fill against a wall held at its top [N/m3]."""
    if angle is not None:
        return _by_angle(earth_pressure.rest_coefficient(angle), weight)
    load = _table_load(symbol)
    return _from_table(load, load.at_rest)


@quantity(
    "wall.active_load",
    title="active soil load, growth with depth",
    kind="unit_weight",
    needs=LOAD_NEEDS,
    rises_with=LOAD_RISES,
    falls_with=LOAD_FALLS,
    formula="tan2(45 deg - half the angle) x weight of the backfill, else Table 1610.1 active",
    source=f"Rankine; UFC 3-220-20 Eq. 4-13; {TABLE}",
)
def active_load(symbol: str | None, angle: float | None, weight: float | None) -> float | Assumed:
    """Return the equivalent fluid of the fill against a wall free to lean [N/m3]."""
    if angle is not None:
        return _by_angle(earth_pressure.active_coefficient(angle), weight)
    load = _table_load(symbol)
    return _from_table(load, load.active)


@quantity(
    "wall.rest_pressure",
    title="soil pressure at rest at the foot of the fill, drained",
    kind="pressure",
    needs=("wall.rest_load", "backfill.unbalanced_height"),
    rises_with=("wall.rest_load", "backfill.unbalanced_height"),
    formula="load at rest x height of fill",
    source=FLUID,
)
def rest_pressure(load: float, height: float) -> float:
    """Return the soil pressure at the foot of a drained fill [Pa]."""
    return earth_pressure.fluid_pressure(load, height)


@quantity(
    "wall.rest_thrust",
    title="thrust of the drained fill at rest",
    kind="force_per_length",
    needs=("wall.rest_load", "backfill.unbalanced_height"),
    rises_with=("wall.rest_load", "backfill.unbalanced_height"),
    formula="load at rest x height of fill squared / 2",
    source=FLUID,
)
def rest_thrust(load: float, height: float) -> float:
    """Return the force of a drained fill on each metre of a wall held at its top [N/m]."""
    return earth_pressure.fluid_thrust(load, height).force


@quantity(
    "wall.active_thrust",
    title="active thrust of the drained fill",
    kind="force_per_length",
    needs=("wall.active_load", "backfill.unbalanced_height"),
    rises_with=("wall.active_load", "backfill.unbalanced_height"),
    formula="active load x height of fill squared / 2",
    source=f"{FLUID}; a basement wall is held at its top and takes the load at rest",
)
def active_thrust(load: float, height: float) -> float:
    """Return the force of a drained fill on each metre of a wall free to lean [N/m]."""
    return earth_pressure.fluid_thrust(load, height).force


@quantity(
    "wall.thrust_height",
    title="height over the foot of the fill at which its thrust acts",
    kind="length",
    needs=("backfill.unbalanced_height",),
    rises_with=("backfill.unbalanced_height",),
    formula="height of fill / 3, drained and undrained alike",
    source="centroid of a triangle",
)
def thrust_height(height: float) -> float:
    """Return how far over the foot of the fill its thrust acts [m]."""
    return earth_pressure.fluid_thrust(1.0, height).height


@quantity(
    "wall.undrained_load",
    title="load at rest of fill full of water, growth with depth",
    kind="unit_weight",
    needs=("wall.rest_load", "soil.backfill.weight"),
    rises_with=("wall.rest_load", "soil.backfill.weight"),
    formula="load at rest x (weight - 62.4 lb/ft3) / weight + 62.4 lb/ft3",
    source="UFC 3-220-20 section 4-4.1; IBC 2021 section 1610.1 asks it of undrained backfill",
)
def undrained_load(load: float, weight: float) -> float:
    """Return the equivalent fluid of a fill with water up to the ground [N/m3]."""
    return earth_pressure.fluid_weight_in_water(load / weight, weight)


@quantity(
    "wall.undrained_pressure",
    title="pressure at the foot of fill full of water",
    kind="pressure",
    needs=("wall.undrained_load", "backfill.unbalanced_height"),
    rises_with=("wall.undrained_load", "backfill.unbalanced_height"),
    formula="load of fill full of water x height of fill",
    source=FLUID,
)
def undrained_pressure(load: float, height: float) -> float:
    """Return the pressure of soil and water at the foot of an undrained fill [Pa]."""
    return earth_pressure.fluid_pressure(load, height)


@quantity(
    "wall.undrained_thrust",
    title="thrust of the fill full of water",
    kind="force_per_length",
    needs=("wall.undrained_load", "backfill.unbalanced_height"),
    rises_with=("wall.undrained_load", "backfill.unbalanced_height"),
    formula="load of fill full of water x height of fill squared / 2",
    source=FLUID,
)
def undrained_thrust(load: float, height: float) -> float:
    """Return the force on each metre of wall when the drain has failed and water stands [N/m]."""
    return earth_pressure.fluid_thrust(load, height).force


@quantity(
    "wall.water_head",
    title="seasonal high water over the foot of the wall",
    kind="length",
    needs=("levels.seasonal_high_water", "footing.top_level"),
    rises_with=("levels.seasonal_high_water",),
    falls_with=("footing.top_level",),
    formula="seasonal high water - top of the footing",
    source="geometry",
)
def water_head(water: float, footing_top: float) -> float:
    """Return the head of water against the wall, negative below its foot [m]."""
    return levels.height_above(water, footing_top)


@quantity(
    "wall.water_thrust",
    title="thrust of seasonal high water on the wall",
    kind="force_per_length",
    needs=("wall.water_head",),
    rises_with=("wall.water_head",),
    formula="62.4 lb/ft3 x head squared / 2, none below the foot of the wall; acts at head / 3",
    source="hydrostatics",
)
def water_thrust(head: float) -> float:
    """Return the force of standing water alone on each metre of wall [N/m]."""
    return hydrostatics.thrust(head)


def _layers(load: float, weight: float, height: float, head: float) -> list[Layer]:
    """Return the fill as a dry layer over a wet one; either may be missing."""
    if height > earth_pressure.HIGHEST_BY_FLUID:
        raise OutsideLimits("an equivalent fluid is for walls to 20 ft; the engineer goes further")
    share = load / weight
    wet = min(max(head, 0.0), height)
    both = (Layer(height - wet, share, weight), Layer(wet, share, weight, in_water=True))
    return [layer for layer in both if layer.thickness > 0]


AT_HIGH_WATER = (
    "wall.rest_load",
    "soil.backfill.weight",
    "backfill.unbalanced_height_slab_out",
    "wall.water_head",
)


@quantity(
    "wall.thrust_at_high_water",
    title="thrust of soil and water at seasonal high water",
    kind="force_per_length",
    needs=AT_HIGH_WATER,
    rises_with=AT_HIGH_WATER,
    formula="drained load over the water; under it the buoyant load and the head of water",
    source="UFC 3-220-20 section 4-4.1",
)
def thrust_at_high_water(load: float, weight: float, height: float, head: float) -> float:
    """Return the force on each metre of wall down to the footing at seasonal high water [N/m]."""
    return earth_pressure.thrust(_layers(load, weight, height, head)).force


@quantity(
    "wall.thrust_at_high_water_height",
    title="height over the footing at which that thrust acts",
    kind="length",
    needs=AT_HIGH_WATER,
    formula="centroid of all pressures",
    source="UFC 3-220-20 section 4-4.1",
)
def thrust_at_high_water_height(load: float, weight: float, height: float, head: float) -> float:
    """Return how far over the footing the force at seasonal high water acts [m]."""
    return earth_pressure.thrust(_layers(load, weight, height, head)).height
