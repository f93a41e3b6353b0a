"""What was measured on site, laid over the design, and how far the two are apart."""

from __future__ import annotations

import dataclasses
import math
from typing import Any, NamedTuple

from checker.reading.faults import Fault
from checker.reading.spec import DESIGN, MEASURED, NOT_APPLICABLE, Shown, Spec, Value
from checker.reading.vocabulary import Leaf, plain_word, vocabulary
from checker.reading.write_back import format_difference
from checker.values import Choice, ends

SECTION = "measured."
# What `measured` says about the measuring, beside what it measured.
_ABOUT = ("by", "date", "instrument", "levels.unit", "levels.datum")
# Kinds of which two can be told apart; a text may say the same in other words.
_TOLD_APART = ("word", "words", "yes_no")
# Levels in feet are not exact in metres.
_SLACK = 1e-9


class Difference(NamedTuple):
    """A measured value that is further from its design than its reading can be trusted.

    `by` says how far, in the unit that was measured in; it is empty where that is no number.
    """

    path: str
    designed: Shown
    measured: Shown
    by: str

    def __str__(self) -> str:
        by = f", {self.by}" if self.by else ""
        return f"{self.path} {self.designed.written}, measured {self.measured.written}{by}"


def on_basis(spec: Spec, basis: str) -> list[Spec]:
    """Return what is to be judged: the design, what was measured, or `both`, one after the other.

    Where nothing was measured that is the design.
    """
    if basis == DESIGN:
        return [spec]
    if not has_measurements(spec):
        note = "nothing was measured, so the design was judged"
        return [dataclasses.replace(spec, notes=(*spec.notes, note))]
    return [as_measured(spec)] if basis == MEASURED else [spec, as_measured(spec)]


def as_measured(spec: Spec) -> Spec:
    """Return a spec in which what was measured stands in place of what was designed.

    A value keeps its own name and day, and takes those of the section where it has none. Items of
    a list are told by their ids; what was not measured stays as designed.
    """
    measured = {
        shown.path.removeprefix(SECTION): _seen(shown, spec) for shown in _measured(spec).values()
    }
    lists = {
        own: tuple(dict.fromkeys((*spec.lists.get(own, ()), *ids)))
        for path, ids in spec.lists.items()
        if path.startswith(SECTION) and (own := path.removeprefix(SECTION))
    }
    return dataclasses.replace(
        spec,
        values=spec.values | measured,
        lists=spec.lists | lists,
        words={path: word for path, word in spec.words.items() if not _inside(path, measured)},
        basis=MEASURED,
        drawn={path: spec.values[path] for path in measured if path in spec.values},
    )


def differences(spec: Spec) -> tuple[Difference, ...]:
    """Return every measured value that differs from its design, in the order of the file."""
    found = []
    for path, measured in _measured(spec).items():
        own = path.removeprefix(SECTION)
        designed = spec.drawn.get(own) or spec.values.get(own)
        if designed is None or designed.value is None:
            continue
        leaf = vocabulary().leaf(designed.pattern)
        if leaf is None:
            continue
        if leaf.numeric:
            by = _outside(designed.value, measured.value, leaf.tolerance)
            if by:
                found.append(Difference(own, designed, measured, _say(by, measured, leaf)))
        elif leaf.kind in _TOLD_APART and measured.value not in _options(designed.value):
            found.append(Difference(own, designed, measured, ""))
    return tuple(found)


def has_measurements(spec: Spec) -> bool:
    """Say whether a spec holds anything that was measured."""
    return bool(_measured(spec))


def contradictions(spec: Spec) -> list[Fault]:
    """Return a fault for measured levels in another unit or on another datum than the design's."""
    faults = []
    for key, what in (("unit", "in the unit"), ("datum", "on the datum")):
        own, measured = f"levels.{key}", spec.values.get(f"{SECTION}levels.{key}")
        designed = spec.text(own)
        if measured and designed and plain_word(designed) != plain_word(measured.written):
            message = (
                f"levels are measured {what} of the design, '{designed}', not '{measured.written}'"
            )
            at = measured.file, measured.line, measured.column
            faults.append(Fault(*at, message, measured.path))
    return faults


def _measured(spec: Spec) -> dict[str, Shown]:
    """Return what was measured, by its path in the section; a word such as unknown is nothing."""
    return {
        path: shown
        for path, shown in spec.values.items()
        if path.startswith(SECTION)
        and path.removeprefix(SECTION) not in _ABOUT
        and not path.endswith(".id")
        and (not shown.word or shown.word == NOT_APPLICABLE)
    }


def _seen(shown: Shown, spec: Spec) -> Shown:
    return shown._replace(
        path=shown.path.removeprefix(SECTION),
        pattern=shown.pattern.removeprefix(SECTION),
        how=shown.how or MEASURED,
        by=shown.by or spec.text(f"{SECTION}by"),
        date=shown.date or spec.text(f"{SECTION}date"),
    )


def _inside(path: str, measured: dict[str, Shown]) -> bool:
    return any(one.startswith(f"{path}.") for one in measured)


def _options(value: Value) -> tuple[Value, ...]:
    return value.options if isinstance(value, Choice) else (value,)


def _outside(designed: Any, measured: Any, tolerance: float) -> float:
    """Return how far a number lies over the design (under it: negative), 0.0 if near enough."""
    low, high = ends(designed)
    least, most = ends(measured)
    over = most - high if most != high else 0.0
    under = low - least if low != least else 0.0
    if max(over, under) <= tolerance + _SLACK:
        return 0.0
    return over if over >= under else -under


def _say(by: float, measured: Shown, leaf: Leaf) -> str:
    if not math.isfinite(by):
        return ""
    unit = measured.unit
    if leaf.kind == "level":
        # Levels in feet differ by inches, levels in metres by millimetres.
        unit = "mm" if unit in ("m", "mm", "cm") else "in"
    more, less = ("higher", "lower") if leaf.kind == "level" else ("more", "less")
    return f"{format_difference(leaf.kind, abs(by), unit)} {more if by > 0 else less}"
