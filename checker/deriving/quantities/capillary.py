"""How high water climbs in the base under the slab, against how thick the base is."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import capillarity

C_RANGE = "Terzaghi and Peck (1948), C from 0.1 to 0.5 cm2, as a soil mechanics textbook quotes it"
USUAL_VOID_RATIO = 0.4


@quantity(
    "slab.base_effective_size",
    title="effective size D10 of the base",
    kind="length",
    needs=("slab.base_d10?", "slab.base_min_size?"),
    rises_with=("slab.base_d10", "slab.base_min_size"),
    formula="the D10 shown, else the smallest stone",
    source="definition: nothing is finer than the smallest stone",
)
def effective_size(shown: float | None, smallest: float | None) -> float | Assumed:
    """Return the size that a tenth of the base is finer than, or a bound below it [m]."""
    if shown is not None:
        return shown
    if smallest is None:
        raise NotShown("the D10 of the base, or its smallest stone", "slab.base_d10")
    return Assumed(smallest, "no stone is smaller than the smallest, so D10 is at least that")


@quantity(
    "slab.base_voids",
    title="void ratio of the base to reckon with",
    kind="ratio",
    needs=("slab.base_void_ratio?",),
    rises_with=("slab.base_void_ratio",),
    formula="the void ratio shown, else 0.4",
    source="common practice for the 0.4, a dense bed",
)
def base_voids(shown: float | None) -> float | Assumed:
    """Return the void ratio of the base [-]."""
    return shown if shown is not None else Assumed(USUAL_VOID_RATIO, "0.4, a dense bed")


@quantity(
    "slab.capillary_rise",
    title="greatest height that water climbs in the base",
    kind="length",
    needs=("slab.base_voids", "slab.base_effective_size"),
    falls_with=("slab.base_voids", "slab.base_effective_size"),
    formula="0.5 cm2 / (void ratio x D10)",
    source=C_RANGE,
)
def rise(voids: float, size: float) -> Assumed:
    """Return the capillary rise with the highest constant of the range [m]."""
    height = capillarity.rise_between_grains(size, voids, capillarity.MOST_C)
    return Assumed(height, "C of 0.5 cm2, the top of its range; clean round stone has 0.1")


@quantity(
    "slab.capillary_rise_least",
    title="least height that water climbs in the base",
    kind="length",
    needs=("slab.base_voids", "slab.base_effective_size"),
    falls_with=("slab.base_voids", "slab.base_effective_size"),
    formula="0.1 cm2 / (void ratio x D10)",
    source=C_RANGE,
)
def least_rise(voids: float, size: float) -> float:
    """Return the capillary rise with the lowest constant of the range [m]."""
    return capillarity.rise_between_grains(size, voids, capillarity.LEAST_C)


@quantity(
    "slab.capillary_rise_in_tube",
    title="height that water climbs in a clean tube as wide as the pores",
    kind="length",
    needs=("slab.base_voids", "slab.base_effective_size"),
    falls_with=("slab.base_voids", "slab.base_effective_size"),
    formula="4 x surface tension / (weight of water x width), width = void ratio x D10",
    source="Fair, Geyer and Okun, example 9.1; a check on the range of C",
)
def rise_in_tube(voids: float, size: float) -> float:
    """Return the rise in a tube of the pores' width, which lies within the range of C [m]."""
    return capillarity.rise_in_tube(voids * size)


@quantity(
    "slab.base_size_needed",
    title="least D10 at which the base breaks the climb of water",
    kind="length",
    needs=("slab.base_thickness", "slab.base_voids"),
    falls_with=("slab.base_thickness", "slab.base_voids"),
    formula="0.5 cm2 / (void ratio x thickness of the base)",
    source=C_RANGE,
)
def size_needed(thickness: float, voids: float) -> float:
    """Return the effective size that this thickness of base asks for [m]."""
    return capillarity.size_for_rise(thickness, voids, capillarity.MOST_C)
