"""How fast water moves through each soil: as shown, else as usual for its group symbol."""

from __future__ import annotations

import functools
from functools import partial

from checker.data import load_table
from checker.deriving.quantities.soil import PLACES
from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.reading.notations import read_quantity
from checker.values import Range


@functools.cache
def usual_permeabilities() -> dict[str, float | Range]:
    """Return the usual permeability by group symbol, in small letters [m/s]."""
    return {
        row["row"].lower(): read_quantity("permeability", row["permeability"]).value
        for row in load_table("k_by_uscs")["rows"]
    }


def permeability(
    place: str, shown: float | None, stated: str | None, worked_out: str | None
) -> float | Assumed:
    """Return how fast water moves through a soil [m/s]; a range where only the symbol is known."""
    if shown is not None:
        return shown
    name = stated or worked_out
    usual = usual_permeabilities().get(name.lower()) if name else None
    if usual is None:
        raise NotShown("the permeability of the soil", f"soil.{place}.permeability")
    told = str(name).upper().replace("_", "-")
    return Assumed(usual, f"usual for compacted {told}, from the table by symbol; not tested")


for _place, _where in PLACES.items():
    quantity(
        f"soil.{_place}.permeability_taken",
        title=f"permeability of the soil {_where}",
        kind="permeability",
        needs=(
            f"soil.{_place}.permeability?",
            f"soil.{_place}.usc?",
            f"soil.{_place}.symbol?",
        ),
        rises_with=(f"soil.{_place}.permeability",),
        formula="the permeability shown, else what is usual for the group symbol",
        source="NRCS NEH 631 chapter 3, figure 3-10, when compacted",
    )(partial(permeability, _place))
