"""Depth of the dig and how far back its sides must lean. The competent person decides on site."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import excavation, levels


@quantity(
    "excavation.depth_by_levels",
    title="depth of the dig by the levels",
    kind="length",
    needs=("grade.highest_at_wall", "footing.underside_level", "drain.trench_bottom_low?"),
    rises_with=("grade.highest_at_wall",),
    falls_with=("footing.underside_level", "drain.trench_bottom_low"),
    formula="highest finished grade - the lower of footing underside and drain trench bottom",
    source="geometry",
)
def depth_by_levels(grade: float, footing_base: float, trench: float | None) -> Assumed:
    """Return the depth of the dig where the ground at its edge is the finished ground [m]."""
    bottom = footing_base if trench is None else min(footing_base, trench)
    return Assumed(levels.height_above(grade, bottom), "the edge stands at finished grade")


@quantity(
    "excavation.steepest_allowed",
    title="steepest slope allowed for the sides of the dig",
    kind="dig_slope",
    needs=("excavation.osha_type?",),
    formula="run per rise by soil type: stable rock 0, A 3/4, B 1, C 1 1/2, not classed 1 1/2",
    source="29 CFR 1926 Subpart P, App. B Table B-1; 1926.652(b)(1)(i)",
)
def steepest_allowed(soil_type: str | None) -> float | Assumed:
    """Return the least run per rise [-]; an unclassed soil counts as the worst."""
    if soil_type is None:
        return Assumed(excavation.UNCLASSIFIED, "the soil is not classed, so the worst type counts")
    return excavation.run_per_rise(soil_type)


@quantity(
    "excavation.run_out",
    title="distance the top of the slope lies back from its toe",
    kind="length",
    needs=("excavation.depth?", "excavation.depth_by_levels?", "excavation.steepest_allowed"),
    rises_with=("excavation.depth", "excavation.depth_by_levels", "excavation.steepest_allowed"),
    formula="depth x run per rise; the greater of the depth shown and the depth by the levels",
    source="geometry; 29 CFR 1926 Subpart P, App. B Table B-1, up to 20 ft",
)
def run_out(shown: float | None, by_levels: float | None, per_rise: float) -> float:
    """Return how much room the sides need all round [m]."""
    depths = [depth for depth in (shown, by_levels) if depth is not None]
    if not depths:
        raise NotShown("the depth of the dig", "excavation.depth")
    return excavation.run_out(max(depths), per_rise)
