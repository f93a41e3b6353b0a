"""How rough pipes and swales are, and how much rain runs off, from the shared tables."""

from __future__ import annotations

import functools
import math
from typing import NamedTuple

from checker.data import load_table
from checker.reading.notations import read_quantity
from checker.values import Range


class Surface(NamedTuple):
    """One row of the run-off table: ground steeper than `above`, up to `at_most`."""

    surface: str
    above: float
    at_most: float
    share: Range


@functools.cache
def roughness() -> dict[str, Range]:
    """Return Manning's n by material, smooth end and rough end.

    Raises ValueError when a figure in the table cannot be read.
    """
    return {
        row["material"]: Range(_one("number", row["smooth"]), _one("number", row["rough"]))
        for row in load_table("roughness")["rows"]
    }


@functools.cache
def surfaces() -> tuple[Surface, ...]:
    """Return every row of the run-off table. Raises ValueError when a figure cannot be read."""
    return tuple(
        Surface(
            row["surface"],
            _one("slope", row["above"]) if "above" in row else -math.inf,
            _one("slope", row["at most"]) if "at most" in row else math.inf,
            Range(_one("fraction", row["least"]), _one("fraction", row["most"])),
        )
        for row in load_table("runoff")["rows"]
    )


def runoff_share(surface: str, slope: float) -> Range:
    """Return the share of rain that runs off a surface, least and most.

    Parameters: surface, a word of the table; slope of the ground [-], whichever way it falls.
    Raises KeyError for a surface that the table does not have.
    """
    for row in surfaces():
        if row.surface == surface and row.above < abs(slope) <= row.at_most:
            return row.share
    raise KeyError(surface)


def _one(kind: str, text: object) -> float:
    value = read_quantity(kind, str(text)).value
    if not isinstance(value, float):
        raise ValueError(f"the table needs one figure, not {text!r}")
    return value
