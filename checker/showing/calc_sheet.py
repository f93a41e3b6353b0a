"""The calculation behind the numbers, step by step, to be followed with a pocket calculator."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Any, NamedTuple

import checker.deriving.quantities  # noqa: F401  (registers every quantity)
from checker.deriving.engine import Derived, Deriver
from checker.deriving.quantity import REGISTRY, Need, Quantity
from checker.judging.wording import say
from checker.reading.spec import Spec
from checker.showing.finding_text import INDENT, labelled, relabelled
from checker.showing.lines import BLANK, PIPE_WIDTH, WIDEST, Line, heading, joined, paragraph
from checker.values import Range

# What a number of each kind is inside, where that is not simply what the user wrote.
SI_UNITS = {
    "length": "m",
    "level": "m",
    "area": "m2",
    "volume": "m3",
    "slope": "m/m",
    "dig_slope": "m/m",
    "fraction": "of 1",
    "angle": "rad",
    "permeability": "m/s",
    "velocity": "m/s",
    "permittivity": "1/s",
    "area_per_length": "m2/m",
    "flow": "m3/s",
    "flow_per_area": "m/s",
    "pressure": "Pa",
    "temperature": "K",
    "duration": "s",
    "rain": "m/s",
    "rate": "kg/m2",
    "mass": "kg",
    "freezing_index": "K s",
    "unit_weight": "N/m3",
    "force_per_length": "N/m",
    "conductivity": "W/(m K)",
}


_PLACES = 3
# The noughts at the end of decimals, with the point when nothing is left before them.
_NOUGHTS = re.compile(r"(\.\d*[1-9])0+(?!\d)|\.0+(?!\d)")


class Step(NamedTuple):
    """One calculation under its number, as texts that each stand behind a label or the one above.

    A text without a label belongs to the label before it.
    """

    number: int
    title: str
    path: str
    rows: tuple[tuple[str, str], ...]


def steps_to(spec: Spec, wanted: Iterable[tuple[str, str]]) -> list[Step]:
    """Return the steps that lead to some quantities, each named with the item it is for, or "".

    A step comes after the steps it uses. Raises KeyError when there is no such quantity.
    """
    sheet = _Sheet(spec)
    for name, item in wanted:
        sheet.step(REGISTRY[name], item)
    return sheet.steps


def calc_sheet(spec: Spec, quantity: str = "", *, width: int = PIPE_WIDTH) -> list[Line]:
    """Return the steps that lead to one quantity, or to every quantity that has a value.

    A step comes after the steps it uses. With no quantity named, those without a value follow,
    each with what is missing. Raises KeyError when there is no such quantity.
    """
    sheet = _Sheet(spec)
    width = min(width, WIDEST)
    asked = [REGISTRY[quantity]] if quantity else list(REGISTRY.values())
    without: list[Derived] = []
    for one in asked:
        for item in sheet.items(one):
            derived = sheet.deriver.get(one.name, item)
            if derived.known or quantity:
                sheet.step(one, item)
            else:
                without.append(derived)
    lines = paragraph(f"Calculation for {spec.name}", width, style="heading")
    lines += paragraph(spec.file, width)
    for step in sheet.steps:
        lines += _lines(step, width)
    return lines + _without(without, width)


class _Sheet:
    """The steps so far, each numbered once."""

    def __init__(self, spec: Spec) -> None:
        self.spec = spec
        self.deriver = Deriver(spec)
        self.numbers: dict[str, int] = {}
        self.steps: list[Step] = []

    def items(self, quantity: Quantity) -> tuple[str, ...]:
        """Return the items of the list that a quantity is worked out for, or the one without."""
        listed, _, each = quantity.name.partition(".each")
        return (self.deriver.items(listed) or ("",)) if each else ("",)

    def step(self, quantity: Quantity, item: str) -> None:
        """Write a quantity down, after those that its value or its lack of one rests on."""
        derived = self.deriver.get(quantity.name, item)
        if derived.path in self.numbers:
            return
        for need in quantity.needs:
            for used, its_item in self._used(need, item):
                # What could have been used and is not known explains nothing but a lack.
                explains = not derived.known or self.deriver.get(used, its_item).known
                if used in REGISTRY and explains:
                    self.step(REGISTRY[used], its_item)
        number = self.numbers[derived.path] = len(self.numbers) + 1
        rows = tuple(row for row in self._rows(quantity, derived, item) if row[1])
        self.steps.append(Step(number, derived.title, derived.path, rows))

    def _rows(self, quantity: Quantity, derived: Derived, item: str) -> Iterator[tuple[str, str]]:
        yield "formula", quantity.formula
        known, absent = self._inputs(quantity, item)
        yield from relabelled("from", [f"{_equation(one)} [{self._place(one)}]" for one in known])
        yield from relabelled("not shown", [_absence(one) for one in absent if one.because])
        yield "not shown", ", ".join(one.path for one in absent if not one.because)
        yield from relabelled("assumed", derived.assumed)
        yield "gives", _figure(derived) if derived.known else f"no value: {_lacking(derived)}"
        yield "source", quantity.source

    def _inputs(self, quantity: Quantity, item: str) -> tuple[list[Derived], list[Derived]]:
        """Return what a quantity needs: the known and the absent."""
        found = [
            self.deriver.get(used, its_item)
            for need in quantity.needs
            for used, its_item in self._used(need, item)
        ]
        return [one for one in found if one.known], [one for one in found if not one.known]

    def _used(self, need: Need, item: str) -> Iterator[tuple[str, str]]:
        """Yield a need as paths and items: all items of a list one by one."""
        listed, _, key = need.path.partition(".all.")
        ids = self.deriver.items(listed) if key else None
        if ids:
            yield from ((f"{listed}.each.{key}", one) for one in ids)
        elif key:
            yield listed, ""
        else:
            yield need.path, item if ".each" in need.path else ""

    def _place(self, found: Derived) -> str:
        number = self.numbers.get(found.path)
        if number:
            return f"step {number}"
        shown = self.spec.values.get(found.path)
        place = (shown.line, shown.column, shown.file) if shown else None
        line, _, file = place or self.spec.places.get(found.path, (0, 0, ""))
        where = f"{file}:{line}" if line else "left out"
        return joined([found.path, where, shown.source if shown else ""], ", ")


def _lines(step: Step, width: int) -> list[Line]:
    title = f"{step.title} ({step.path})"
    lines = [BLANK, *paragraph(title, width, label=f"{step.number}.", hang=INDENT, style="title")]
    return lines + [row for label, text in step.rows for row in labelled(label, text, width)]


def _figure(found: Derived) -> str:
    """Return a value in the unit it was written in, and in SI where that is another."""
    if isinstance(found.value, bool) or not isinstance(found.value, int | float | Range):
        return say(found.kind, found.value, found.unit)
    written = _exact(found)
    si = SI_UNITS.get(found.kind, "")
    return f"{written} ({_number(found.value)} {si})" if si and found.unit != si else written


def _exact(found: Derived) -> str:
    """Return a number as reviews write it, with more decimals where that would round it off."""
    usual = say(found.kind, found.value, found.unit)
    fine = _NOUGHTS.sub(r"\1", say(found.kind, found.value, found.unit, _PLACES))
    return usual if _NOUGHTS.sub(r"\1", usual) == fine else fine


def _equation(found: Derived) -> str:
    return f"{found.title} = {_figure(found)}"


def _absence(found: Derived) -> str:
    return f"{found.path} ({found.because})"


def _number(value: Any) -> str:
    if isinstance(value, Range):
        return f"{value.low:.6g} to {value.high:.6g}"
    return f"{value:.6g}"


def _lacking(derived: Derived) -> str:
    missing = f"not shown: {', '.join(derived.missing)}" if derived.missing else ""
    return joined([derived.because, missing]) or "not shown"


def _without(left: list[Derived], width: int) -> list[Line]:
    if not left:
        return []
    lines = heading(f"Without a value: {len(left)}", width)
    for derived in left:
        text = f"{derived.title} ({derived.path}): {_lacking(derived)}"
        lines += paragraph(text, width, label="-", indent=2, hang=2)
    return lines
