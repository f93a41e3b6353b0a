"""Numbers and words for a drawing: what the spec shows or what follows from it, else a usual size.

A usual size is only something to draw a dashed line at. It is never written beside the line.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from math import fsum, isfinite
from typing import Any, NamedTuple

from checker.deriving.engine import Derived, Deriver
from checker.deriving.quantity import REGISTRY
from checker.judging.wording import say
from checker.reading.kinds import default_unit
from checker.reading.spec import Spec
from checker.reading.write_back import format_quantity
from checker.showing.drawing.view import INCH
from checker.values import Range

NOT_SHOWN = "not shown"

# Sizes [m] at which what is not shown is drawn, dashed.
USUAL = {
    "wall.thickness": 8 * INCH,
    "footing.depth": 10 * INCH,
    "footing.toe": 5 * INCH,
    "slab.depth": 4 * INCH,
    "slab.base_thickness": 4 * INCH,
    "drain.outside_diameter": 4.2 * INCH,
    "drain.pipe_wall": 0.12 * INCH,
    "drain.offset": 3 * INCH,
    "stone.bedding": 2 * INCH,
    "stone.beyond_footing": 14 * INCH,
    "stone.cover": 6 * INCH,
    "backfill.free_draining_width": 12 * INCH,
    "backfill.cap_thickness": 6 * INCH,
    "excavation.bottom_clear_width": 36 * INCH,
    "excavation.run_per_rise": 1.5,
    "height over floor": 84 * INCH,
    "wall over ground": 8 * INCH,
    "insulation.thickness": 2 * INCH,
    "drain.hole_rows_apart": 2.0944,
    "inside_drain.place": 3 * INCH,
    "upper_drain.place": 3 * INCH,
}


_AS_WRITTEN = frozenset({"length", "slope", "dig_slope"})
_BRIEF = 14
_SPEC_SAYS = re.compile(r'the spec says "(.+)"')


class Measure(NamedTuple):
    """A number [SI] to draw with, as its writer would write it, and whether it is shown."""

    value: float
    text: str = NOT_SHOWN
    shown: bool = True


class Figures:
    """Asks a spec for its numbers and words, one path at a time."""

    def __init__(self, spec: Spec) -> None:
        self.spec = spec
        self.deriver = Deriver(spec)

    def find(self, path: str, item: str = "") -> Measure | None:
        """Return a number that is shown or follows from what is; None when there is none.

        A range is drawn at its middle, or at the end that it has, and written with both ends.
        """
        derived = self.deriver.get(path, item)
        value = _one(derived.value)
        if value is None or not isfinite(value):
            return None
        return Measure(value, self.write(derived))

    def size(self, path: str, usual: str = "", item: str = "") -> Measure:
        """Return a number, or the usual size of such a thing, which then counts as not shown."""
        found = self.find(path, item)
        return found or Measure(USUAL[usual or path], NOT_SHOWN, False)

    def write(self, derived: Derived) -> str:
        """Return a value in its unit, or what the spec says in its place."""
        shown = self.spec.values.get(derived.path)
        if shown and derived.kind in _AS_WRITTEN and 0 < len(shown.written) <= _BRIEF:
            # Eleven and a quarter inches stay so, rather than become 11.3.
            return shown.written
        if not derived.known:
            says = _SPEC_SAYS.fullmatch(derived.because)
            return says[1] if says else NOT_SHOWN
        unit = derived.unit
        if derived.kind == "level" and derived.pattern in REGISTRY:
            unit = self.spec.text("levels.unit") or unit
        return say(derived.kind, derived.value, unit)

    def said(self, path: str, item: str = "") -> str:
        """Return the value at a path as text, or that it is not shown."""
        return self.write(self.deriver.get(path, item))

    def written(self, path: str, form: str = "{}", item: str = "") -> str:
        """Return a number within a few words, or nothing when it is not shown."""
        found = self.find(path, item)
        return form.format(found.text) if found else ""

    def known(self, path: str, item: str = "") -> bool:
        """Say whether there is a value at a path."""
        return self.deriver.get(path, item).known

    def long(self, metres: float) -> str:
        """Return a length that was worked out in the unit of the levels."""
        unit = self.spec.text("levels.unit") or default_unit("length", self.spec.system, 10.0)
        return format_quantity("length", metres, unit)

    def word(self, path: str, item: str = "") -> str:
        """Return a word of the vocabulary, or nothing."""
        value = self.deriver.get(path, item).value
        return value if isinstance(value, str) else ""

    def words(self, path: str, item: str = "") -> tuple[str, ...]:
        """Return words of the vocabulary, or none."""
        value = self.deriver.get(path, item).value
        return value if isinstance(value, tuple) else ()

    def yes(self, path: str, item: str = "") -> bool | None:
        """Return yes or no; None when it is not shown."""
        value = self.deriver.get(path, item).value
        return value if isinstance(value, bool) else None

    def items(self, path: str) -> tuple[str, ...]:
        """Return the ids of a list, none when it is not shown."""
        return self.deriver.items(path) or ()


def _one(value: Any) -> float | None:
    if isinstance(value, Range):
        ends = [end for end in value if isfinite(end)]
        return fsum(ends) / len(ends) if ends else None
    if isinstance(value, int | float) and not isinstance(value, bool):
        return float(value)
    return None


def told(parts: Sequence[str]) -> str:
    """Join what is shown; where nothing is, say so."""
    said = [part.replace("_", " ") for part in parts if part and part != NOT_SHOWN]
    return ", ".join(said) or NOT_SHOWN
