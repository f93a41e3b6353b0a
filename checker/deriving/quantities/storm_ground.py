"""Rain that arrives on the ground: along each side, in areaways and wells, and in the open fill."""

from __future__ import annotations

from checker.deriving.flow_tables import roughness, runoff_share
from checker.deriving.quantities.storm_roof import RATIONAL, SHARES
from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import perforations, pipe_flow, surface_water

ALL_OF_IT = 1.0
# Slope and roughness of the drain under an areaway, where nothing is shown of it.
USUAL_SLOPE = 1 / 96
USUAL_ROUGHNESS = 0.013

SIDE = "grade.sides.each"


@quantity(
    f"{SIDE}.runoff_share",
    title="share of the rain that runs off the ground on this side",
    kind="fraction",
    needs=(f"{SIDE}.surface?", f"{SIDE}.slope?", "soil.bank.fine_grained?"),
    formula="the table's figures for the surface, of a lawn for its soil and slope",
    source=SHARES,
)
def ground_share(surface: str | None, slope: float | None, fine: bool | None) -> Assumed:
    """Return the share of rain that runs off one side, least and most [-]."""
    notes = ["from the table"]
    if surface is None:
        if fine is None:
            raise NotShown("what covers the ground on this side", f"{SIDE}.surface")
        surface = "lawn_heavy" if fine else "lawn_sandy"
        notes.append(f"the surface is not shown; {surface.replace('_', ' ')} by the soil")
    if slope is None and surface.startswith("lawn"):
        slope = 1.0
        notes.append("the slope is not shown; taken as steep")
    return Assumed(runoff_share(surface, slope or 0.0), "; ".join(notes))


@quantity(
    f"{SIDE}.runoff",
    title="rain that runs off the ground on this side",
    kind="flow",
    needs=(f"{SIDE}.runoff_share", "rain.design", f"{SIDE}.area"),
    rises_with=(f"{SIDE}.runoff_share", "rain.design", f"{SIDE}.area"),
    formula="Q = C i A",
    source=RATIONAL,
)
def ground_runoff(share: float, rain: float, area: float) -> float:
    """Return the flow that the ground on one side sends off [m3/s]."""
    return surface_water.rational(share, rain, area)


@quantity(
    f"{SIDE}.swale_capacity",
    title="flow that the swale on this side carries, brim full",
    kind="flow",
    needs=(
        f"{SIDE}.swale_slope",
        f"{SIDE}.swale_depth",
        f"{SIDE}.swale_side",
        f"{SIDE}.swale_bottom?",
    ),
    rises_with=(
        f"{SIDE}.swale_slope",
        f"{SIDE}.swale_depth",
        f"{SIDE}.swale_side",
        f"{SIDE}.swale_bottom",
    ),
    formula="Q = A R^(2/3) S^(1/2) / n, A = B d + z d2, P = B + 2 d sqrt(z2 + 1), n = 0.033",
    source="Manning's equation, FHWA HEC-22 section 6.2.2; shared/tables/roughness.yaml",
)
def swale_capacity(slope: float, depth: float, side: float, bottom: float | None) -> Assumed:
    """Return what the swale on one side carries [m3/s]."""
    rough = roughness()["short_grass"].high
    found = pipe_flow.flow(pipe_flow.ditch(depth, side, bottom or 0.0), slope, rough)
    notes = [f"short grass, n {rough:g}"]
    if bottom is None:
        notes.append("no flat bottom is shown, so it comes to a point")
    return Assumed(found, ", ".join(notes))


@quantity(
    "areaways.each.storm_inflow",
    title="rain that gathers in the areaway",
    kind="flow",
    needs=("rain.design", "areaways.each.area"),
    rises_with=("rain.design", "areaways.each.area"),
    formula="Q = C i A, C = 1",
    source=RATIONAL,
)
def areaway_inflow(rain: float, area: float) -> Assumed:
    """Return the flow into an areaway [m3/s]."""
    found = surface_water.rational(ALL_OF_IT, rain, area)
    return Assumed(found, "walls round it catch all the rain")


@quantity(
    "areaways.each.drain_capacity",
    title="flow that the areaway's drain takes with water at the threshold",
    kind="flow",
    needs=("areaways.each.drain_size", "areaways.each.threshold_above_floor"),
    rises_with=("areaways.each.drain_size", "areaways.each.threshold_above_floor"),
    formula="least of mouth, B Cd A sqrt(2 g h) with B = 0.5, Cd = 0.61, h = threshold, and pipe "
    "full at 1/8 in/ft, n = 0.013",
    source="orifice equation, FHWA HEC-22 section 10.3.3.2; Manning's equation",
)
def areaway_drain(size: float, threshold: float) -> Assumed:
    """Return what the drain of an areaway takes [m3/s]."""
    hole = perforations.round_hole(size)
    mouth = perforations.MATURED * perforations.orifice(hole, threshold)
    pipe = pipe_flow.full_flow(size, USUAL_SLOPE, USUAL_ROUGHNESS)
    return Assumed(min(mouth, pipe), "half of the mouth is plugged by leaves, pipe at 1/8 in/ft")


@quantity(
    "wells.each.storm_inflow",
    title="rain that falls into the window well",
    kind="flow",
    needs=("rain.design", "wells.each.area", "wells.each.cover?"),
    rises_with=("rain.design", "wells.each.area"),
    formula="Q = C i A, C = 1; none under a cover",
    source=RATIONAL,
)
def well_inflow(rain: float, area: float, cover: bool | None) -> float | Assumed:
    """Return the flow into a window well [m3/s]."""
    if cover:
        return 0.0
    found = surface_water.rational(ALL_OF_IT, rain, area)
    return found if cover is False else Assumed(found, "no cover is shown, so it has none")


SEALING = frozenset({"silty_clay", "clay", "paving"})


@quantity(
    "backfill.soak_in",
    title="rain that soaks into the loose fill round the house",
    kind="flow",
    needs=(
        "backfill.cap_material",
        "backfill.free_draining_width?",
        "excavation.top_clear_width?",
        "wall.perimeter?",
        "rain.design?",
        "soil.backfill.permeability?",
    ),
    rises_with=(
        "backfill.free_draining_width",
        "excavation.top_clear_width",
        "wall.perimeter",
        "rain.design",
        "soil.backfill.permeability",
    ),
    formula="lesser of rain and permeability of the fill x w (perimeter + 4 w); none under a cap",
    source="Darcy at a gradient of one; geometry of a square-cornered strip",
)
def soak_in(
    cap: str,
    stone: float | None,
    hole: float | None,
    around: float | None,
    rain: float | None,
    k: float | None,
) -> float | Assumed:
    """Return what soaks into the fill that no cap covers [m3/s]."""
    if cap in SEALING:
        return Assumed(0.0, "the cap keeps rain out of the fill")
    width = stone if stone is not None else hole
    if width is None or around is None or rain is None:
        lacking = {
            "backfill.free_draining_width": width,
            "wall.perimeter": around,
            "rain.intensity": rain,
        }
        paths = [path for path, value in lacking.items() if value is None]
        raise NotShown("width and length of the open fill, and the rain", *paths)
    area = width * (around + 4 * width)
    if k is None:
        return Assumed(surface_water.soaking(rain, rain, area), "the fill takes all the rain")
    return surface_water.soaking(rain, k, area)
