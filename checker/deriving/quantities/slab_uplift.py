"""The water that lifts a slab, for the engineer, who knows what else holds it down."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, quantity
from checker.formulas import hydrostatics


@quantity(
    "slab.floats_at",
    title="head of water over the underside of the slab that lifts it",
    kind="length",
    needs=("slab.depth",),
    rises_with=("slab.depth",),
    formula="150 lb/ft3 x thickness / 62.4 lb/ft3",
    source="balance of forces; EM 1110-2-2100 (2005) Eq. 3-2",
)
def floats_at(thickness: float) -> Assumed:
    """Return the head at which weight and uplift are equal [m]."""
    head = hydrostatics.balanced_head(thickness)
    return Assumed(head, "normal concrete of 150 lb/ft3, no help from walls or footings")


@quantity(
    "slab.floats_at_level",
    title="level of water that lifts the slab",
    kind="level",
    needs=("slab.underside_level", "slab.floats_at"),
    rises_with=("slab.underside_level", "slab.floats_at"),
    formula="underside of the slab + head that lifts it",
    source="geometry",
)
def floats_at_level(slab_base: float, head: float) -> float:
    """Return the level that water under the slab must not reach [m]."""
    return slab_base + head
