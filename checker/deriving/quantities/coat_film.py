"""What a coat takes to be as thick as it should, and what the wet-film gauge says it is."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import coating

NO_LOSS = "nothing is lost to rough wall or drips"
SOLIDS = "definition of solids by volume"
COAT = ("gal", "L")  # the units coat is sold in


@quantity(
    "coat.wet_needed",
    title="wet thickness to apply for the dry one",
    kind="length",
    needs=("coat.dry_thickness", "coat.solids"),
    rises_with=("coat.dry_thickness",),
    falls_with=("coat.solids",),
    formula="dry thickness / solids by volume",
    source=SOLIDS,
)
def wet_needed(dry: float, solids: float) -> float:
    """Return what the wet-film gauge must read [m]."""
    return coating.wet_needed(dry, solids)


@quantity(
    "coat.quantity_needed",
    title="coat needed for the thickness",
    kind="volume",
    needs=("coat.dry_thickness", "coat.area", "coat.solids", "coat.loss?"),
    rises_with=("coat.dry_thickness", "coat.area", "coat.loss"),
    falls_with=("coat.solids",),
    formula="dry thickness x area / (solids x (1 - loss)); gal = mil x sq ft / (1604 x solids)",
    source=SOLIDS,
    told_in=COAT,
)
def quantity_needed(dry: float, area: float, solids: float, loss: float | None) -> float | Assumed:
    """Return the volume of coat that makes the thickness [m3]."""
    volume = coating.volume_needed(dry, area, solids, loss or 0.0)
    return volume if loss is not None else Assumed(volume, NO_LOSS)


@quantity(
    "coat.area_covered",
    title="area that the coat delivered covers at the thickness",
    kind="area",
    needs=("coat.quantity", "coat.dry_thickness", "coat.solids", "coat.loss?"),
    rises_with=("coat.quantity", "coat.solids"),
    falls_with=("coat.dry_thickness", "coat.loss"),
    formula="quantity x solids x (1 - loss) / dry thickness; sq ft/gal = 1604 x solids / mil",
    source=SOLIDS,
)
def area_covered(volume: float, dry: float, solids: float, loss: float | None) -> float | Assumed:
    """Return the area that the coat covers [m2]."""
    area = volume * coating.coverage(dry, solids, loss or 0.0)
    return area if loss is not None else Assumed(area, NO_LOSS)


@quantity(
    "coat.least_reading",
    title="least reading of the wet-film gauge",
    kind="length",
    needs=("coat.readings.all.wet",),
    rises_with=("coat.readings.all.wet",),
    formula="the least of the readings",
    source="definition",
)
def least_reading(readings: tuple[tuple[str, float], ...]) -> float:
    """Return the least reading of the gauge [m]."""
    if not readings:
        raise NotShown("a reading of the wet-film gauge", "coat.readings")
    return min(wet for _, wet in readings)


@quantity(
    "coat.dry_film_by_gauge",
    title="dry thickness where the gauge read least",
    kind="length",
    needs=("coat.least_reading", "coat.solids"),
    rises_with=("coat.least_reading", "coat.solids"),
    formula="least reading x solids by volume",
    source=SOLIDS,
)
def dry_film_by_gauge(wet: float, solids: float) -> float:
    """Return the thickness of the dried coat at its thinnest reading [m]."""
    return coating.dry_film(wet, solids)
