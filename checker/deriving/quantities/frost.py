"""How deep the ground freezes by its own figures, and how deep footing and pipe lie in it."""

from __future__ import annotations

from checker.deriving.ground_tables import surface_factors
from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import frost, levels

BERGGREN = "modified Berggren formula, UFC 3-130-04 (TM 5-852-4) beside Fig. 4-63"
INDEX = "climate.surface_freezing_index"
WATER = "soil.bank.water_content"


@quantity(
    "climate.surface_factor",
    title="surface over air-freezing index, n",
    kind="ratio",
    needs=("climate.ground_cover?",),
    formula="table by the cover of the ground; the greatest, 1.0, where none is shown",
    source="UFC 3-130-04 (TM 5-852-4) Table 4-1",
)
def surface_factor(cover: str | None) -> float | Assumed:
    """Return n for the cover of the ground in winter [-]."""
    factors = surface_factors()
    if cover is None:
        return Assumed(max(factors.values()), "no cover of the ground is shown, so the coldest")
    if cover not in factors:
        raise NotShown("a cover of the ground that the table knows", "climate.ground_cover")
    return factors[cover]


@quantity(
    INDEX,
    title="freezing index at the surface of the ground",
    kind="freezing_index",
    needs=("climate.surface_factor", "climate.air_freezing_index"),
    rises_with=("climate.surface_factor", "climate.air_freezing_index"),
    formula="n x air-freezing index",
    source="UFC 3-130-04 (TM 5-852-4) Table 4-1",
)
def surface_index(n: float, air: float) -> float:
    """Return the degree-days below freezing at the surface [K s]."""
    return frost.surface_index(n, air)


@quantity(
    "climate.frost_stefan",
    title="depth of frost by Stefan, without the warmth of the ground",
    kind="length",
    needs=("soil.bank.conductivity", INDEX, "soil.bank.dry_weight", WATER),
    rises_with=("soil.bank.conductivity", INDEX),
    falls_with=("soil.bank.dry_weight", WATER),
    formula="sqrt(48 x k x surface index / L) in ft, with L = 144 x dry weight x water content",
    source=f"{BERGGREN}, with lambda = 1",
)
def stefan(conductivity: float, index: float, dry: float, water: float) -> float:
    """Return the depth of frost that Stefan's sum gives [m]."""
    return frost.stefan_depth(conductivity, index, dry, water)


@quantity(
    "climate.frost_alpha",
    title="warmth of the ground over cold of its surface, alpha",
    kind="ratio",
    needs=("climate.mean_temperature", INDEX, "climate.freezing_season"),
    rises_with=("climate.mean_temperature", "climate.freezing_season"),
    falls_with=(INDEX,),
    formula="(mean annual temperature - 32 F) / (surface index / freezing season)",
    source=BERGGREN,
)
def alpha(mean: float, index: float, season: float) -> float:
    """Return the thermal ratio [-]."""
    return frost.thermal_ratio(mean, index, season)


@quantity(
    "climate.frost_mu",
    title="heat of cooling over heat of freezing, mu",
    kind="ratio",
    needs=(INDEX, "climate.freezing_season", WATER),
    rises_with=(INDEX,),
    falls_with=("climate.freezing_season", WATER),
    formula="(0.17 + 0.75 x water content) x (surface index / season) / (144 x water content)",
    source="a university notebook following UFC 3-130-06",
)
def mu(index: float, season: float, water: float) -> float:
    """Return the fusion ratio [-]."""
    return frost.fusion_ratio(index, season, water)


@quantity(
    "climate.frost_lambda",
    title="correction for the warmth of the ground, lambda",
    kind="ratio",
    needs=("climate.frost_alpha", "climate.frost_mu"),
    falls_with=("climate.frost_alpha", "climate.frost_mu"),
    formula="1 / sqrt(1 + mu x (alpha + 0.5))",
    source="Aldrich and Paynter (1953) Eq. 2-33, as a university notebook gives it",
)
def correction(warmth: float, cooling: float) -> Assumed:
    """Return lambda by the formula that stands in for the chart [-]."""
    why = "by a formula in place of the chart; it runs high where winters are mild"
    return Assumed(frost.correction(warmth, cooling), why)


@quantity(
    "climate.frost_berggren",
    title="depth of frost by the modified Berggren formula",
    kind="length",
    needs=("climate.frost_lambda", "climate.frost_stefan"),
    rises_with=("climate.frost_lambda", "climate.frost_stefan"),
    formula="lambda x depth of frost by Stefan",
    source=BERGGREN,
)
def berggren(factor: float, depth: float) -> float:
    """Return the depth of frost [m]."""
    return factor * depth


@quantity(
    "footing.frost_cover",
    title="ground over the underside of the footing where it is least",
    kind="length",
    needs=("grade.lowest_at_wall", "footing.underside_level"),
    rises_with=("grade.lowest_at_wall",),
    falls_with=("footing.underside_level",),
    formula="lowest finished grade at the wall - underside of the footing",
    source="geometry",
)
def frost_cover(grade: float, footing_base: float) -> float:
    """Return how deep the footing stands in the ground on its shallowest side [m]."""
    return levels.height_above(grade, footing_base)
