"""The group symbol of each soil by its own curve and limits, and whether its figures agree."""

from __future__ import annotations

from functools import partial
from typing import Any, NamedTuple

from checker.deriving.quantities.grain_sizes import curvature, uniformity
from checker.deriving.quantities.soil import PLACES
from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import gradation, soils, uscs
from checker.formulas.gradation import Curve

D2487 = "ASTM D2487 as restated in UFC 3-220-10, section 1-3.3; the A-line from memory"
INORGANIC = "taken as inorganic, for neither sieve nor limits show otherwise; A-line from memory"
ORGANIC = frozenset({"ol", "oh", "pt"})
NOT_PLASTIC = "ML"

# Two figures for one share, of one soil; each is good to about a percent.
_SHARES_AGREE = 0.02


class Facts(NamedTuple):
    """What a spec shows of one soil."""

    fines: float | None
    curve: Curve | None
    liquid_limit: float | None
    plastic_limit: float | None
    nonplastic: bool | None


_KEYS = ("fines", "gradation", "liquid_limit", "plastic_limit", "nonplastic")


def symbol(
    place: str,
    fines: float,
    curve: Curve | None,
    liquid: float | None,
    plastic: float | None,
    nonplastic: bool | None,
) -> str | Assumed:
    """Return the group symbol of a soil by its sieve curve and limits, such as SW-SM."""
    of_fines = symbol_of_fines(liquid, plastic, nonplastic)
    with_limits = uscs.needs_limits(fines)
    if with_limits and of_fines is None:
        keys = (f"soil.{place}.liquid_limit", f"soil.{place}.plastic_limit")
        raise NotShown("the Atterberg limits of the soil", *keys)
    if fines >= uscs.FINE:
        found = uscs.group_symbol(fines, of_fines=of_fines)
    else:
        if curve is None:
            raise NotShown("the sieve curve of the soil", f"soil.{place}.gradation")
        shape = uscs.needs_shape(fines)
        cu, cc = (uniformity(curve), curvature(curve)) if shape else (None, None)
        passing = gradation.share_at(curve, gradation.NO_4)
        found = uscs.group_symbol(fines, passing, cu, cc, of_fines)
    return Assumed(found, INORGANIC) if with_limits else found


def symbol_of_fines(
    liquid: float | None, plastic: float | None, nonplastic: bool | None
) -> str | None:
    """Return the symbol of the fines alone, or None when their limits are not shown."""
    if nonplastic:
        return NOT_PLASTIC
    if liquid is None or plastic is None:
        return None
    return uscs.symbol_of_fines(liquid, uscs.plasticity_index(liquid, plastic))


def plasticity_index(liquid: float | None, plastic: float | None, nonplastic: bool | None) -> float:
    """Return the plasticity index; of a soil that is not plastic it is nothing."""
    if nonplastic:
        return 0.0
    if liquid is None or plastic is None:
        raise NotShown("the Atterberg limits of the soil")
    return uscs.plasticity_index(liquid, plastic)


def _register(place: str, where: str) -> None:
    limits = tuple(f"soil.{place}.{key}?" for key in _KEYS[2:])
    quantity(
        f"soil.{place}.plasticity_index",
        title=f"plasticity index of the soil {where}",
        kind="number",
        needs=limits,
        rises_with=(f"soil.{place}.liquid_limit",),
        falls_with=(f"soil.{place}.plastic_limit",),
        formula="PI = liquid limit - plastic limit; nothing for a soil that is not plastic",
        source="definition",
    )(plasticity_index)
    quantity(
        f"soil.{place}.symbol",
        title=f"group symbol by sieve and limits of the soil {where}",
        kind="text",
        needs=(f"soil.{place}.fines_share", f"soil.{place}.gradation?", *limits),
        formula="fines, then gravel or sand, then Cu and Cc, then the plasticity chart",
        source=D2487,
    )(partial(symbol, place))


for _place, _where in PLACES.items():
    _register(_place, _where)


@quantity(
    "soil.symbol_contradiction",
    title="soil class against the soil's own sieve curve and limits",
    kind="text",
    needs=tuple(f"soil.{place}.{key}?" for place in PLACES for key in ("usc", "symbol")),
    formula="where both are known, the class shown and the symbol by sieve and limits",
    source=D2487,
)
def symbol_contradiction(*found: str | None) -> str:
    """Return each place where the class shown is not what the curve and limits give, or "none"."""
    apart, compared = [], False
    pairs = zip(PLACES.items(), found[::2], found[1::2], strict=True)
    for (_, where), stated, worked_out in pairs:
        if stated is None or worked_out is None:
            continue
        compared = True
        if not same_symbol(stated, worked_out):
            shown = stated.upper().replace("_", "-")
            apart.append(f"{where} {shown} is shown, and the tests give {worked_out}")
    if not compared:
        places = [p for p, stated in zip(PLACES, found[::2], strict=True) if stated is not None]
        keys = [f"soil.{p}.{key}" for p in places for key in ("gradation", *_KEYS[2:4])]
        raise NotShown("a sieve curve and limits to set against the soil class", *keys)
    return "; ".join(apart) or "none"


def same_symbol(stated: str, worked_out: str) -> bool:
    """Say whether a class shown and one worked out agree.

    What was worked out takes the soil as inorganic, so it cannot speak against OL, OH or peat
    unless the soil is coarse.
    """
    plain = worked_out.lower().replace("-", "_")
    return stated == plain or (stated in ORGANIC and soils.is_fine_grained(plain))


@quantity(
    "soil.data_contradiction",
    title="figures of a soil against one another",
    kind="text",
    needs=tuple(f"soil.{place}.{key}?" for place in PLACES for key in _KEYS),
    formula="the curve rises, its No. 200 agrees with the fines, and the limits are in order",
    source="definitions",
)
def data_contradiction(*found: Any) -> str:
    """Return what cannot be right in the figures shown of each soil, or "none"."""
    faults, width = [], len(_KEYS)
    for number, where in enumerate(PLACES.values()):
        facts = Facts(*found[number * width : (number + 1) * width])
        faults += [f"{where} {fault}" for fault in faults_of(facts)]
    if all(fact is None for fact in found):
        raise NotShown("a sieve curve or the limits of a soil", "soil.bank.gradation")
    return "; ".join(faults) or "none"


def faults_of(facts: Facts) -> list[str]:
    """Return what cannot be right in the figures of one soil."""
    faults = []
    if facts.curve is not None:
        fault = gradation.fault_in(facts.curve)
        faults += [fault] if fault else _fines_apart(facts.fines, facts.curve)
    if facts.liquid_limit is not None and facts.plastic_limit is not None:
        try:
            uscs.plasticity_index(facts.liquid_limit, facts.plastic_limit)
        except ValueError as error:
            faults.append(str(error))
    if facts.nonplastic and facts.plastic_limit is not None:
        faults.append("a plastic limit is given of a soil that is said not to be plastic")
    return faults


def _fines_apart(fines: float | None, curve: Curve) -> list[str]:
    try:
        by_curve = gradation.share_at(curve, gradation.NO_200)
    except ValueError:
        return []
    if fines is None or abs(fines - by_curve) <= _SHARES_AGREE:
        return []
    return [f"fines of {fines * 100:.3g} % are shown, and {by_curve * 100:.3g} % by the curve"]
