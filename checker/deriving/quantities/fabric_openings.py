"""How open each fabric may be and must be, by the soil it touches, and how it passes water."""

from __future__ import annotations

from typing import NamedTuple

from checker.deriving.quantities.grain_sizes import GRAINS
from checker.deriving.quantity import Assumed, NotApplicable, NotShown, quantity
from checker.formulas import geotextiles

FHWA = "FHWA NHI-07-092, chapter 2, from memory"
UFC = "UFC 3-220-10, chapter 6"
NO_FABRIC = frozenset({"none", "graded_sand"})
OPENING_NEEDS = (
    "fabrics.each.kind?",
    "soil.bank.fines_share?",
    "soil.bank.scalped_d85?",
    "soil.bank.scalped_uniformity?",
    "soil.bank.plasticity_index?",
    "soil.bank.dispersive?",
)
LEAST_NEEDS = ("fabrics.each.kind?", "soil.bank.scalped_d15?", "soil.bank.scalped_uniformity?")


class Limit(NamedTuple):
    """One criterion: its name, what it comes to [m], and what was taken for granted."""

    name: str
    opening: float
    assumed: str


RETENTION, NONWOVEN, COHESIVE = "retention", "half fines", "cohesive soil"
CLOGGING, FINEST = "clogging", "finest sieve"
HELD_BY_HALF_FINES = "the limit of a nonwoven in soil of more than half fines governs"
HELD_BY_NO_70 = (
    "the No. 70 sieve governs, for the soil holds together",
    "the No. 70 sieve governs, for the soil holds together; it is taken as not dispersive",
)


def upper_limits(
    kind: str | None,
    fines: float | None,
    d85: float | None,
    cu: float | None,
    index: float | None,
    dispersive: bool | None,
) -> list[Limit]:
    """Return every limit on a fabric's largest opening that the spec shows enough for."""
    if kind in NO_FABRIC:
        raise NotApplicable("it is no fabric")
    if fines is None:
        raise NotShown("the share that passes the No. 200 sieve")
    found = retention_limits(fines, d85, cu, nonwoven=kind == "nonwoven") if d85 else []
    if index is not None and not dispersive and geotextiles.is_cohesive(fines, index):
        found.append(Limit(COHESIVE, geotextiles.NO_70, HELD_BY_NO_70[dispersive is None]))
    if not found:
        what = "the sieve curve of the soil, or its Atterberg limits"
        keys = ("gradation", "liquid_limit", "plastic_limit")
        raise NotShown(what, *(f"soil.bank.{key}" for key in keys))
    return found


def retention_limits(fines: float, d85: float, cu: float | None, *, nonwoven: bool) -> list[Limit]:
    """Return the limits that follow from the larger grains of the soil."""
    factor = geotextiles.retention_factor(fines, cu, nonwoven=nonwoven)
    note = f"{factor:.3g} x D85 of the soil governs; the factor is from memory"
    if cu is None and fines <= geotextiles.HALF_FINES:
        note += " and its least, for Cu is not known"
    found = [Limit(RETENTION, geotextiles.max_opening(d85, factor), note)]
    if nonwoven and fines > geotextiles.HALF_FINES:
        found.append(Limit(NONWOVEN, geotextiles.MOST_NONWOVEN, HELD_BY_HALF_FINES))
    return found


@quantity(
    "fabrics.each.largest_opening",
    title="largest opening that the soil allows",
    kind="length",
    needs=OPENING_NEEDS,
    formula="the least of B x D85, 0.3 mm (nonwoven, over half fines) and No. 70 (cohesive soil)",
    source=f"{FHWA}; {UFC} for the No. 70 sieve",
    told_in=GRAINS,
)
def largest_opening(
    kind: str | None,
    fines: float | None,
    d85: float | None,
    cu: float | None,
    index: float | None,
    dispersive: bool | None,
) -> Assumed:
    """Return the largest opening of a fabric against the soil [m], and what governs."""
    governs = least_of(upper_limits(kind, fines, d85, cu, index, dispersive))
    return Assumed(governs.opening, governs.assumed)


@quantity(
    "fabrics.each.largest_governs",
    title="what limits the opening of the fabric upward",
    kind="text",
    needs=OPENING_NEEDS,
    formula="the criterion that allows least",
    source=f"{FHWA}; {UFC}",
)
def largest_governs(
    kind: str | None,
    fines: float | None,
    d85: float | None,
    cu: float | None,
    index: float | None,
    dispersive: bool | None,
) -> str:
    """Return the criterion that governs the largest opening."""
    return least_of(upper_limits(kind, fines, d85, cu, index, dispersive)).name


def least_of(limits: list[Limit]) -> Limit:
    """Return the limit that allows least."""
    return min(limits, key=lambda limit: limit.opening)


@quantity(
    "fabrics.each.army_largest_opening",
    title="largest opening that the soil allows, Army's older form",
    kind="length",
    needs=("fabrics.each.kind?", "soil.bank.fines_share", "soil.bank.d85?"),
    formula="D85 up to half fines, the No. 70 sieve above",
    source="USACE coastal guidance on filters; UFC 3-270-04, p. 83",
    told_in=GRAINS,
)
def army_largest_opening(kind: str | None, fines: float, d85: float | None) -> float:
    """Return the largest opening by the Army's older form [m]."""
    if kind in NO_FABRIC:
        raise NotApplicable("it is no fabric")
    if fines <= geotextiles.HALF_FINES and d85 is None:
        raise NotShown("the sieve curve of the soil", "soil.bank.gradation")
    return geotextiles.army_max_opening(fines, d85)


def lower_limit(kind: str | None, d15: float | None, cu: float | None) -> Limit:
    """Return the limit on a fabric's least opening that asks for most."""
    if kind in NO_FABRIC:
        raise NotApplicable("it is no fabric")
    floor = Limit(FINEST, geotextiles.NO_100, "")
    if d15 is None or cu is None:
        return floor._replace(assumed="3 x D15 was not asked, for the soil's curve stops above it")
    against_clogging = geotextiles.clogging_opening(d15, cu)
    if against_clogging <= floor.opening:
        return floor
    return Limit(CLOGGING, against_clogging, "3 x D15 of the soil governs; it is from memory")


@quantity(
    "fabrics.each.smallest_opening",
    title="smallest opening that does not clog",
    kind="length",
    needs=LEAST_NEEDS,
    formula="the No. 100 sieve, or 3 x D15 of the soil where Cu > 3, if that is more",
    source=f"UFC 3-270-04, p. 83; {FHWA} for 3 x D15",
    told_in=GRAINS,
)
def smallest_opening(kind: str | None, d15: float | None, cu: float | None) -> float | Assumed:
    """Return the smallest opening of a fabric against the soil [m]."""
    limit = lower_limit(kind, d15, cu)
    return Assumed(limit.opening, limit.assumed) if limit.assumed else limit.opening


@quantity(
    "fabrics.each.smallest_governs",
    title="what limits the opening of the fabric downward",
    kind="text",
    needs=LEAST_NEEDS,
    formula="the criterion that asks for most",
    source=f"UFC 3-270-04, p. 83; {FHWA}",
)
def smallest_governs(kind: str | None, d15: float | None, cu: float | None) -> str:
    """Return the criterion that governs the smallest opening."""
    return lower_limit(kind, d15, cu).name


@quantity(
    "fabrics.each.flow_across",
    title="permeability of the fabric across its plane",
    kind="permeability",
    needs=(
        "fabrics.each.permeability?",
        "fabrics.each.permittivity?",
        "fabrics.each.thickness?",
    ),
    rises_with=(
        "fabrics.each.permeability",
        "fabrics.each.permittivity",
        "fabrics.each.thickness",
    ),
    formula="the permeability shown, else permittivity x thickness",
    source="UFC 3-220-10, equation 6-16",
)
def flow_across(shown: float | None, permittivity: float | None, thickness: float | None) -> float:
    """Return how fast water moves through the fabric [m/s]."""
    if shown is not None:
        return shown
    if permittivity is None or thickness is None:
        raise NotShown(
            "the fabric's permeability, or its permittivity and thickness",
            "fabrics.each.permeability",
            "fabrics.each.permittivity",
            "fabrics.each.thickness",
        )
    return geotextiles.permeability(permittivity, thickness)


@quantity(
    "fabrics.each.flow_factor",
    title="permeability of the fabric over that of the soil",
    kind="ratio",
    needs=("fabrics.each.flow_across", "soil.bank.permeability_taken"),
    rises_with=("fabrics.each.flow_across",),
    falls_with=("soil.bank.permeability_taken",),
    formula="permeability of the fabric / permeability of the soil",
    source="UFC 3-220-10, equation 6-16",
)
def flow_factor(fabric: float, soil: float) -> float:
    """Return how many times better than the soil the fabric passes water [-]."""
    return geotextiles.permeability_factor(fabric, soil)
