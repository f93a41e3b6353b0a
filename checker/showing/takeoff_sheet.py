"""What to order, part by part: each amount with its formula and with what was ordered.

It works nothing out: every amount is a quantity, and `belowgrade calc` shows how it came about.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import checker.deriving.quantities  # noqa: F401  (registers every quantity)
from checker.deriving.engine import Derived, Deriver
from checker.deriving.quantity import REGISTRY
from checker.judging.wording import say
from checker.reading.spec import Spec
from checker.showing.lines import (
    BLANK,
    PIPE_WIDTH,
    WIDEST,
    Line,
    heading,
    joined,
    paragraph,
    sentence,
)

_AMOUNT = 16
_NOTE = (
    "Amounts follow the spec and not the ground: a trench dug wider takes more. Where no waste is "
    "named, none is in them. Measure before you order."
)


class Entry(NamedTuple):
    """One thing to order: its quantity, and the key that says how much of it was ordered."""

    quantity: str
    ordered: str = ""


PARTS: tuple[tuple[str, tuple[Entry, ...]], ...] = (
    (
        "Pipe and fittings",
        (
            Entry("drain.length_to_order", "drain.quantity"),
            Entry("drain.solid_length"),
            Entry("drain.elbows"),
            Entry("drain.tees"),
        ),
    ),
    (
        "Stone and fabric round the drain",
        (
            Entry("stone.volume", "stone.quantity"),
            Entry("stone.mass"),
            Entry("fabrics.each.width_needed", "fabrics.each.roll_width"),
            Entry("fabrics.each.area_needed", "fabrics.each.quantity"),
        ),
    ),
    (
        "Coat and drainage sheet",
        (
            Entry("coat.area_by_levels", "coat.area"),
            Entry("coat.volume_needed", "coat.quantity"),
            Entry("sheet.area_needed", "sheet.quantity"),
        ),
    ),
    (
        "Fill and cap",
        (Entry("backfill.zone_volume"), Entry("backfill.cap_volume")),
    ),
    (
        "Base under the slab",
        (Entry("slab.base_volume"), Entry("slab.base_mass")),
    ),
)


def takeoff_sheet(spec: Spec, *, width: int = PIPE_WIDTH) -> list[Line]:
    """Return the amounts to order for an assembly, and what is missing to work out the others."""
    width = min(width, WIDEST)
    deriver = Deriver(spec)
    lines = paragraph(f"Takeoff for {spec.name}", width, style="heading")
    lines += paragraph(spec.file, width)
    without: list[str] = []
    assumed: dict[str, None] = {}
    for title, entries in PARTS:
        rows: list[Line] = []
        for entry, item in _asked(entries, deriver):
            found = deriver.get(entry.quantity, item)
            if found.known:
                rows += _entry(entry, item, found, deriver, width)
                assumed.update(dict.fromkeys(found.assumed))
            elif not found.inapplicable:
                without.append(_lacking(found, item))
        lines += [*heading(title, width), *rows] if rows else []
    lines += _list("Assumed, because the spec does not show it", list(assumed), width)
    lines += _list(f"Without an amount: {len(without)}", without, width)
    return [*lines, BLANK, *paragraph(_NOTE, width)]


def _asked(entries: tuple[Entry, ...], deriver: Deriver) -> Iterator[tuple[Entry, str]]:
    """Yield each entry once, or once for each item of its list."""
    for entry in entries:
        listed, _, each = entry.quantity.partition(".each")
        items = (deriver.items(listed) or ()) if each else ("",)
        yield from ((entry, item) for item in items)


def _entry(entry: Entry, item: str, found: Derived, deriver: Deriver, width: int) -> Iterator[Line]:
    amount = _amount(found)
    name = f"{found.title}, {item}" if item else found.title
    yield BLANK
    # An amount longer than its column stands on a line of its own, or it would run into the text.
    if len(amount) < _AMOUNT:
        yield from paragraph(
            f"{name} ({found.path})", width, label=amount, hang=_AMOUNT, label_style="strong"
        )
    else:
        yield from paragraph(amount, width, style="strong")
        yield from paragraph(f"{name} ({found.path})", width, indent=_AMOUNT)
    yield from _row("formula", REGISTRY[entry.quantity].formula, width)
    ordered = deriver.get(entry.ordered, item) if entry.ordered else None
    if ordered is not None and ordered.known:
        yield from _row("shown", f"{ordered.title} {_amount(ordered)}", width)


def _row(label: str, text: str, width: int) -> list[Line]:
    return paragraph(text, width, label=label, indent=_AMOUNT, hang=9, label_style="label")


def _amount(found: Derived) -> str:
    return say(found.kind, found.value, found.unit)


def _lacking(found: Derived, item: str) -> str:
    name = f"{found.title}, {item}" if item else found.title
    missing = f"not shown: {', '.join(found.missing)}" if found.missing else ""
    return sentence(f"{name}: {joined([found.because, missing]) or 'not shown'}")


def _list(title: str, texts: list[str], width: int) -> list[Line]:
    rows = [row for text in texts for row in paragraph(text, width, label="-", indent=2, hang=2)]
    return [*heading(title, width), *rows] if rows else []
