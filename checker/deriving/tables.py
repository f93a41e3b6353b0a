"""Pipe sizes from the table of pipes, where a spec gives a nominal size and a material."""

from __future__ import annotations

import functools
from typing import NamedTuple

from checker.data import load_table
from checker.reading.notations import read_quantity

PLASTIC = frozenset({"rigid_pvc", "abs", "corrugated_coil", "dual_wall_pe"})

# A nominal size is a name: 6 in and 150 mm are one size, though 2.4 mm apart.
_SAME_SIZE = 3e-3


class PipeRow(NamedTuple):
    """One pipe of the table: nominal size, outside diameter and wall [m]."""

    material: str
    nominal: float
    outside_diameter: float
    wall: float


@functools.cache
def pipe_rows() -> tuple[PipeRow, ...]:
    """Return every pipe of the table. Raises ValueError when a size in it cannot be read."""
    return tuple(
        PipeRow(
            row["material"],
            _length(row["nominal"]),
            _length(row["outside_diameter"]),
            _length(row["wall"]),
        )
        for row in load_table("pipes")["rows"]
    )


def pipe_row(diameter_m: float, material: str) -> PipeRow | None:
    """Return the pipe of this nominal size and material, the widest where there are several.

    Returns None when the table has none: no size is guessed.
    """
    return _widest([row for row in pipe_rows() if row.material == material], diameter_m)


def widest_plastic_pipe(diameter_m: float) -> PipeRow | None:
    """Return the widest plastic pipe of this nominal size, or None.

    It stands for a pipe that is not chosen yet; clay and concrete are seldom laid today.
    """
    return _widest([row for row in pipe_rows() if row.material in PLASTIC], diameter_m)


def _widest(rows: list[PipeRow], diameter_m: float) -> PipeRow | None:
    fitting = [row for row in rows if abs(row.nominal - diameter_m) < _SAME_SIZE]
    return max(fitting, key=lambda row: row.outside_diameter, default=None)


def _length(text: str) -> float:
    value = read_quantity("length", text).value
    if not isinstance(value, float):
        raise ValueError(f"the table of pipes needs one length, not {text!r}")
    return value
