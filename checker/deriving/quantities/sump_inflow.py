"""Water that reaches the sump pit: measured, by rule of thumb, and by what is led there."""

from __future__ import annotations

from checker.deriving.quantities.drain_inflow import Words, led_in
from checker.deriving.quantities.drain_levels import Corners
from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import sump

# 14 and 8 gallons a minute for each 1,000 sq ft of house.
_GPM_PER_1000_SQ_FT = (231 * 0.0254**3 / 60) / (1_000 * 0.3048**2)
BY_RULE = {"sand": 14 * _GPM_PER_1000_SQ_FT, "clay": 8 * _GPM_PER_1000_SQ_FT}
EXTENSION = "University of Illinois Extension, Sizing up a sump pump"


@quantity(
    "sump.inflow_measured",
    title="inflow to the pit, by the water rising in it",
    kind="flow",
    needs=("sump.diameter", "sump.rise", "sump.rise_time"),
    rises_with=("sump.diameter", "sump.rise"),
    falls_with=("sump.rise_time",),
    formula="pi d2 / 4 x rise / time",
    source=EXTENSION,
)
def inflow_measured(diameter: float, rise: float, time: float) -> float:
    """Return the inflow by the water that was watched rising [m3/s]."""
    return sump.measured_inflow(diameter, rise, time)


@quantity(
    "sump.inflow_by_rule",
    title="inflow to the pit by a rule of thumb",
    kind="flow",
    needs=("slab.area", "soil.bearing.fine_grained?", "soil.bank.fine_grained?"),
    rises_with=("slab.area",),
    formula="14 gpm per 1,000 sq ft of floor on sand, 8 gpm on clay",
    source=EXTENSION,
)
def inflow_by_rule(area: float, bearing: bool | None, bank: bool | None) -> float | Assumed:
    """Return the inflow to plan with by floor area and soil [m3/s]."""
    fine = bearing if bearing is not None else bank
    found = sump.by_floor_area(area, BY_RULE["clay" if fine else "sand"])
    return found if fine is not None else Assumed(found, "the soil is not shown; taken as sand")


@quantity(
    "sump.inflow",
    title="water that reaches the pit",
    kind="flow",
    needs=(
        "sump.inflow_measured?",
        "rain.design?",
        "outlets.all.kind?",
        "drain.inflow?",
        "areaways.all.drain_to?",
        "areaways.all.storm_inflow?",
        "wells.all.drain_to?",
        "wells.all.storm_inflow?",
    ),
    rises_with=(
        "sump.inflow_measured",
        "rain.design",
        "drain.inflow",
        "areaways.all.storm_inflow",
        "wells.all.storm_inflow",
    ),
    formula="as measured in the pit, else the drain where it leads there + areaways and wells",
    source="definition",
)
def inflow(
    measured: float | None,
    rain: float | None,
    kinds: Words,
    drain: float | None,
    areaways: Words,
    areaway_flows: Corners,
    wells: Words,
    well_flows: Corners,
) -> float | Assumed:
    """Return what runs into the pit [m3/s]."""
    if measured is not None:
        return Assumed(measured, "as it rose in the pit; a wetter season brings more")
    led = any(kind == "sump" for _, kind in kinds or ())
    if led and drain is None:
        raise NotShown("how much water reaches the drain")
    total = (
        (drain or 0.0 if led else 0.0)
        + led_in("areaways", "drain_to", areaways, areaway_flows, "sump", rain)
        + led_in("wells", "drain_to", wells, well_flows, "sump", rain)
    )
    if not led and not total:
        raise NotShown("how much water runs into the pit", "sump.rise", "sump.rise_time")
    return total


@quantity(
    "sump.inflow_planned",
    title="inflow to the pit to plan with",
    kind="flow",
    needs=("sump.inflow?", "sump.inflow_by_rule?"),
    rises_with=("sump.inflow", "sump.inflow_by_rule"),
    formula="the greater of what reaches the pit and the rule of thumb",
    source="definition",
)
def inflow_planned(found: float | None, by_rule: float | None) -> float:
    """Return the inflow that the pump is judged on [m3/s]."""
    known = [one for one in (found, by_rule) if one is not None]
    if not known:
        raise NotShown("how much water runs into the pit, or the area of the floor", "slab.area")
    return max(known)
