"""Stone by its size number: the band of sieve curves that the number allows."""

from __future__ import annotations

import functools
import re
from typing import NamedTuple

from checker.data import load_table
from checker.formulas.gradation import Curve
from checker.reading.notations import read_quantity
from checker.values import Range, ends

# "57", "No. 57", "#57 stone", "ASTM C33 No. 57", "AASHTO M 43 #57".
_NUMBER = re.compile(r"\D*?(?:\b(?:m\s*43|c\s*33|d\s*448)\D+)?(\d{1,3})\D*", re.IGNORECASE)


class Band(NamedTuple):
    """The finest and the coarsest sieve curve that a size number allows, the finest sieve first."""

    fine: Curve
    coarse: Curve


def size_numbers() -> tuple[str, ...]:
    """Return every size number of the table."""
    return tuple(_rows())


def band(size_number: str) -> Band | None:
    """Return the band of a size number as people write it; None where the table has none."""
    found = _NUMBER.fullmatch(size_number.strip())
    return _band(found[1]) if found and found[1] in _rows() else None


@functools.cache
def _rows() -> dict[str, dict[str, str]]:
    return {row["row"]: row for row in load_table("aggregates")["rows"]}


@functools.cache
def _band(number: str) -> Band:
    openings = {row["row"]: row["opening"] for row in load_table("sieves")["rows"]}
    row = _rows()[number]
    points = sorted(
        (_length(openings[sieve]), ends(read_quantity("fraction", row[sieve]).value))
        for sieve in load_table("aggregates")["columns"]
        if sieve in row
    )
    return Band(
        tuple((opening, share.high) for opening, share in points),
        tuple((opening, share.low) for opening, share in points),
    )


def _length(text: str) -> float:
    value = read_quantity("length", text).value
    if isinstance(value, Range):
        raise ValueError(f"a sieve has one opening, not {text!r}")
    return value
