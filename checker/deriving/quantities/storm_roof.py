"""Rain to reckon with, and what of it arrives from the roof."""

from __future__ import annotations

from checker.deriving.flow_tables import runoff_share
from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import surface_water

RATIONAL = "rational method, FHWA HEC-22 section 4.2.2"
SHARES = "shared/tables/runoff.yaml"
# Two ways to say one intensity of rain may differ by the rounding of a table.
AGREE = 0.1


@quantity(
    "rain.design",
    title="rain to reckon with",
    kind="rain",
    needs=("rain.intensity?", "rain.depth?", "rain.duration?"),
    rises_with=("rain.intensity", "rain.depth"),
    falls_with=("rain.duration",),
    formula="the intensity shown, else depth / duration",
    source="definition; NOAA Atlas 14 gives depths",
)
def design_rain(shown: float | None, depth: float | None, duration: float | None) -> float:
    """Return the intensity of the design storm [m/s]."""
    by_depth = None
    if depth is not None and duration is not None:
        by_depth = surface_water.intensity(depth, duration)
    if shown is None and by_depth is None:
        raise NotShown("the intensity of the design rain", "rain.intensity")
    if shown is None or by_depth is None:
        return shown if shown is not None else by_depth or 0.0
    if abs(shown - by_depth) > AGREE * max(shown, by_depth):
        raise NotShown("one intensity; the depth over the duration says another", "rain.intensity")
    return shown


@quantity(
    "roof.runoff_share",
    title="share of the rain that runs off the roof",
    kind="fraction",
    needs=(),
    formula="the table's figures for roofs",
    source=SHARES,
)
def roof_share() -> Assumed:
    """Return the share of rain that runs off a roof, least and most [-]."""
    return Assumed(runoff_share("roof", 0.0), "the figures for roofs, from the table")


@quantity(
    "roof.runoff",
    title="rain that runs off the roof",
    kind="flow",
    needs=("roof.runoff_share", "rain.design", "roof.area"),
    rises_with=("roof.runoff_share", "rain.design", "roof.area"),
    formula="Q = C i A",
    source=RATIONAL,
)
def roof_runoff(share: float, rain: float, area: float) -> float:
    """Return the flow off the whole roof [m3/s]."""
    return surface_water.rational(share, rain, area)


@quantity(
    "roof.leaders.each.runoff",
    title="rain that the leader brings",
    kind="flow",
    needs=("roof.runoff_share", "rain.design", "roof.leaders.each.area"),
    rises_with=("roof.runoff_share", "rain.design", "roof.leaders.each.area"),
    formula="Q = C i A",
    source=RATIONAL,
)
def leader_runoff(share: float, rain: float, area: float) -> float:
    """Return the flow that one leader brings [m3/s]."""
    return surface_water.rational(share, rain, area)


@quantity(
    "roof.leaders.each.capacity",
    title="flow that the leader carries",
    kind="flow",
    needs=("roof.leaders.each.size",),
    rises_with=("roof.leaders.each.size",),
    formula="q = 27.8 (7/24)^(5/3) d^(8/3) (gpm, in)",
    source="NSPC 2006 Table 13.6.1; the form from memory",
)
def leader_capacity(size: float) -> float:
    """Return what one leader carries [m3/s]."""
    return surface_water.leader(size)
