"""Soil loads by group symbol and frost by ground cover, from the shared tables."""

from __future__ import annotations

import functools
from typing import NamedTuple

from checker.data import load_table
from checker.reading.notations import read_quantity

FOOT = 0.3048


class SoilLoad(NamedTuple):
    """How the load of a soil grows with depth, active and at rest, as a fluid's weight [N/m3].

    `from_memory` says that nobody has read the row.
    """

    active: float
    at_rest: float
    from_memory: bool


@functools.cache
def soil_loads() -> dict[frozenset[str], SoilLoad]:
    """Return the loads of every suitable soil, by the parts of its symbol in lower case.

    Raises ValueError when a load in the table cannot be read.
    """
    return {
        _parts(row["row"]): SoilLoad(
            _per_depth(row["active"]), _per_depth(row["at_rest"]), "source" in row
        )
        for row in load_table("lateral_loads")["rows"]
        if row["suitable"]
    }


def soil_load(symbol: str) -> SoilLoad | None:
    """Return the load of a soil by its group symbol; None where the table calls it unsuitable.

    A pair that has no row of its own takes the greater of its two. Peat is in no row.
    """
    loads = soil_loads()
    parts = _parts(symbol)
    if parts in loads:
        return loads[parts]
    found = [loads[frozenset({part})] for part in sorted(parts) if frozenset({part}) in loads]
    if len(found) < len(parts):
        return None
    return SoilLoad(
        max(load.active for load in found),
        max(load.at_rest for load in found),
        any(load.from_memory for load in found),
    )


@functools.cache
def surface_factors() -> dict[str, float]:
    """Return n, surface over air-freezing index, by the word for the cover of the ground."""
    rows = load_table("freezing_surface")["rows"]
    return {row["row"]: float(row["n"]) for row in rows}


def _parts(symbol: str) -> frozenset[str]:
    return frozenset(symbol.lower().replace("-", "_").split("_"))


def _per_depth(text: str) -> float:
    """Return a load at 1 ft of depth as its growth with depth [N/m3]."""
    value = read_quantity("pressure", text).value
    if not isinstance(value, float):
        raise ValueError(f"the table of soil loads needs one pressure, not {text!r}")
    return value / FOOT
