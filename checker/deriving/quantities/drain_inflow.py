"""Water that reaches the footing drain: from the ground, and with each storm."""

from __future__ import annotations

from checker.deriving.quantities.drain_levels import Corners
from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import groundwater

Words = tuple[tuple[str, str | bool | None], ...] | None

LEVELS = ("levels.seasonal_high_water", "drain.lowest_invert", "levels.tight_layer?")
BASE_NOTE = "the tight layer is not shown; flow from below the drain is not counted"


def _heads(high_water: float, invert: float, base: float | None) -> tuple[float, float]:
    """Return the heads of the groundwater and of the drain over the tight layer [m]."""
    floor = invert if base is None else min(base, invert)
    return max(high_water - floor, 0.0), invert - floor


def _with_note(found: float, base: float | None, *more: str) -> float | Assumed:
    notes = [*more, *([BASE_NOTE] if base is None else [])]
    return Assumed(found, "; ".join(notes)) if notes else found


@quantity(
    "drain.reach_least",
    title="how far out the drain lowers the groundwater, shorter estimate",
    kind="length",
    needs=("soil.bank.permeability_taken", "levels.seasonal_high_water", "drain.lowest_invert"),
    rises_with=("soil.bank.permeability_taken", "levels.seasonal_high_water"),
    falls_with=("drain.lowest_invert",),
    formula="R = 1500 s sqrt(k), s = seasonal high water - lowest invert (m, m/s)",
    source="Sichardt for flow to a line, 1500 to 2000 from memory",
    told_in=("ft", "m"),
)
def reach_least(k: float, high_water: float, invert: float) -> float:
    """Return the shorter estimate of the reach of the drawdown [m]."""
    return groundwater.reach(max(high_water - invert, 0.0), k, groundwater.SICHARDT_LINE)


@quantity(
    "drain.reach_most",
    title="how far out the drain lowers the groundwater, longer estimate",
    kind="length",
    needs=("soil.bank.permeability_taken", "levels.seasonal_high_water", "drain.lowest_invert"),
    rises_with=("soil.bank.permeability_taken", "levels.seasonal_high_water"),
    falls_with=("drain.lowest_invert",),
    formula="R = 3000 s sqrt(k), s = seasonal high water - lowest invert (m, m/s)",
    source="Sichardt, BYU CE 544; rules from rain or time give many times as much",
    told_in=("ft", "m"),
)
def reach_most(k: float, high_water: float, invert: float) -> float:
    """Return the longer estimate of the reach of the drawdown [m]."""
    return groundwater.reach(max(high_water - invert, 0.0), k, groundwater.SICHARDT_WELL)


@quantity(
    "drain.line_inflow",
    title="groundwater that flows to the drain from a source at the end of its reach",
    kind="flow",
    needs=("drain.gathering_length", "soil.bank.permeability_taken", *LEVELS),
    rises_with=(
        "drain.gathering_length",
        "soil.bank.permeability_taken",
        "levels.seasonal_high_water",
    ),
    falls_with=("levels.tight_layer",),
    formula="length x k (H2 - h2) / 2R with R = 1500 (H - h) sqrt(k), which is sqrt(k) (H + h) / "
    "3000; H, h: high water, drain over the tight layer (m, m/s)",
    source="Dupuit, one-sided line flow, TM 5-818-5 Table 4-1; Sichardt",
)
def line_inflow(
    length: float, k: float, high_water: float, invert: float, base: float | None
) -> float | Assumed:
    """Return the groundwater that comes from one side along the whole drain [m3/s]."""
    far, near = _heads(high_water, invert, base)
    per_length = groundwater.line_flow_within_reach(k, far, near, groundwater.SICHARDT_LINE)
    return _with_note(length * per_length, base)


@quantity(
    "drain.recharge_inflow",
    title="groundwater that flows to the drain where rain keeps it up",
    kind="flow",
    needs=("drain.gathering_length", "soil.bank.permeability_taken", *LEVELS),
    rises_with=(
        "drain.gathering_length",
        "soil.bank.permeability_taken",
        "levels.seasonal_high_water",
    ),
    falls_with=("levels.tight_layer",),
    formula="length x R x q with q = 4 k (H2 - h2) / (2R)2 and R = 1500 (H - h) sqrt(k), which is "
    "sqrt(k) (H + h) / 1500 (m, m/s)",
    source="steady recharge, ellipse equation; Sichardt",
)
def recharge_inflow(
    length: float, k: float, high_water: float, invert: float, base: float | None
) -> float | Assumed:
    """Return the groundwater that steady rain within reach sends to the drain [m3/s]."""
    far, near = _heads(high_water, invert, base)
    per_length = groundwater.rain_fed_flow_within_reach(k, far, near, groundwater.SICHARDT_LINE)
    return _with_note(length * per_length, base)


@quantity(
    "drain.ground_inflow",
    title="groundwater that reaches the drain",
    kind="flow",
    needs=("site.seepage?", "drain.line_inflow?", "drain.recharge_inflow?"),
    rises_with=("site.seepage", "drain.line_inflow", "drain.recharge_inflow"),
    formula="seepage into the open hole where it was measured, else the greater of the two sums",
    source="definition",
)
def ground_inflow(
    measured: float | None, line: float | None, recharge: float | None
) -> float | Assumed:
    """Return the groundwater to reckon with [m3/s]."""
    if measured is not None:
        return Assumed(measured, "as it ran into the open hole; a wetter season brings more")
    known = [found for found in (line, recharge) if found is not None]
    if not known:
        raise NotShown("seepage, or high water and permeability", "levels.seasonal_high_water")
    return max(known)


def led_in(
    items: str, key: str, places: Words, flows: Corners, goal: object, rain: float | None
) -> float:
    """Return the flow of all items of a list that lead to a goal [m3/s].

    `items` is the path of the list, and `key` says where an item leads. Raises NotShown for an
    item that does not show where it leads, or not how much it brings: its area, or the rain.
    """
    known = dict(flows or ())
    total = 0.0
    for item, place in places or ():
        if place is None:
            raise NotShown("where each of them leads its water", f"{items}.{item}.{key}")
        if place != goal:
            continue
        flow = known.get(item)
        if flow is None:
            lacking = "rain.intensity" if rain is None else f"{items}.{item}.area"
            raise NotShown("how much water each of them brings", lacking)
        total += flow
    return total


STORM_FLOWS = (
    "roof.leaders.all.runoff",
    "areaways.all.storm_inflow",
    "wells.all.storm_inflow",
)


@quantity(
    "drain.storm_inflow",
    title="rain that reaches the drain while it falls",
    kind="flow",
    needs=(
        "rain.design?",
        "backfill.soak_in",
        "roof.leaders.all.into_drain?",
        f"{STORM_FLOWS[0]}?",
        "areaways.all.drain_to?",
        f"{STORM_FLOWS[1]}?",
        "wells.all.drain_to?",
        f"{STORM_FLOWS[2]}?",
    ),
    rises_with=("rain.design", "backfill.soak_in", *STORM_FLOWS),
    formula="what soaks into the fill + leaders, areaways and window wells led into the drain",
    source="definition",
)
def storm_inflow(
    rain: float | None,
    soaked: float,
    tied: Words,
    leaders: Corners,
    areaways: Words,
    areaway_flows: Corners,
    wells: Words,
    well_flows: Corners,
) -> float | Assumed:
    """Return the rain that reaches the drain [m3/s]."""
    drain = "footing_drain"
    total = (
        soaked
        + led_in("roof.leaders", "into_drain", tied, leaders, True, rain)
        + led_in("areaways", "drain_to", areaways, areaway_flows, drain, rain)
        + led_in("wells", "drain_to", wells, well_flows, drain, rain)
    )
    lists = {"leader": tied, "areaway": areaways, "window well": wells}
    bare = [name for name, places in lists.items() if places is None]
    if not bare:
        return total
    return Assumed(total, f"no {' and no '.join(bare)} is shown, so none is counted")


@quantity(
    "drain.inflow",
    title="water that reaches the drain",
    kind="flow",
    needs=("drain.ground_inflow", "drain.storm_inflow"),
    rises_with=("drain.ground_inflow", "drain.storm_inflow"),
    formula="groundwater + rain",
    source="definition",
)
def inflow(ground: float, storm: float) -> float:
    """Return all the water that reaches the drain [m3/s]."""
    return ground + storm


@quantity(
    "slab.rain_carried",
    title="steady seepage that the loop keeps off the middle of the floor",
    kind="permeability",
    needs=(
        "soil.bearing.permeability_taken",
        "slab.underside_level",
        "drain.highest_invert",
        "levels.tight_layer",
        "slab.width",
        "drain.pipe_outside_diameter",
    ),
    rises_with=("soil.bearing.permeability_taken", "slab.underside_level"),
    formula="q = (8 k d h + 4 k h2) / L2, d = (pi L / 8) / (ln(L / pi r) + F(2 pi D / L)), h = "
    "slab - drain, D = drain - tight layer, L = width of the floor",
    source="Hooghoudt, with the closed form of the equivalent depth",
)
def rain_carried(
    k: float, slab: float, invert: float, base: float, width: float, outside: float
) -> float:
    """Return the seepage per area that both sides of the loop carry off [m/s]."""
    depth, rise = max(invert - base, 0.0), max(slab - invert, 0.0)
    equivalent = groundwater.equivalent_depth(depth, width, outside / 2)
    return groundwater.recharge_carried(k, equivalent, rise, width)
