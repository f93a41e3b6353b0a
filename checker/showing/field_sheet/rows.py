"""The numbered rows of a field sheet: what to measure or to look at, and what still passes."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from checker.judging.passing import Passes, Passing, required
from checker.judging.review_data import DOES_NOT_APPLY, NOT_MET, SEVERITIES, Compared, Review
from checker.judging.rulebook import Rulebook
from checker.reading.spec import Spec
from checker.reading.vocabulary import Leaf
from checker.reading.write_back import Toward
from checker.showing.field_sheet.figures import rods, site_figure, tape
from checker.showing.field_sheet.scope import leaf_at, on_site
from checker.values import Range, ends

# Kinds that are looked at or asked, not measured.
_WORDS = ("yes_no", "word", "words")
# Between what one rule needs of a value and what another does.
JOIN = "; "
_NO_OBJECTION = "no objection"
_METRIC = ("m", "mm", "cm")


class Rod(NamedTuple):
    """What a rod reads at the value shown, and the least and the most that still passes."""

    expected: str
    least: str
    most: str


class Row(NamedTuple):
    """One value to measure or to look at.

    `expected` is as the spec writes it, empty where it is not shown. `low` and `high` are the ends
    of what still passes, rounded to the safe side, empty where no rule ends it; where the rules
    cannot be asked so, `needed` says what they want in words. `as_shown` says whether the value
    shown passes; `ratio` is its margin in tolerances; `rods` are the readings of one
    rod in tenths and of one in inches. `title` and `item` are apart so that the
    title can be told in another language.
    """

    number: int
    path: str
    title: str
    item: str
    kind: str
    unit: str
    expected: str
    tolerance: str
    low: str
    high: str
    needed: str
    as_shown: bool
    spare: str
    ratio: float | None
    critical: bool
    rods: tuple[Rod, ...]

    @property
    def numeric(self) -> bool:
        """Say whether a figure goes into the blank."""
        return self.kind not in _WORDS

    @property
    def missing(self) -> bool:
        """Say whether the spec does not show the value."""
        return not self.expected


class Asked(NamedTuple):
    """What the findings say of one value.

    `needed` is what a rule asks of the value itself, `failed` whether it fails that, `open`
    whether something that is not met rests on it, be it alone or with others.
    """

    severity: str
    needed: str
    failed: bool
    open: bool


def rows_of(
    spec: Spec,
    review: Review,
    rulebook: Rulebook,
    stage: str,
    passes: Passes,
    height: float | None,
) -> tuple[Row, ...]:
    """Return the rows of a stage: first the figures, then what is looked at.

    `height` is the level of the instrument [m].
    """
    asked = _asked(review, {rule.id: required(rule) for rule in rulebook.rules})
    order = {path: at for at, path in enumerate(spec.values)}
    rows = []
    for path in sorted(asked, key=lambda one: (order.get(one, len(order)), one)):
        found = leaf_at(path)
        if found is None or not on_site(found[0], stage):
            continue
        row = _row(spec, path, *found, asked[path], passes, height)
        if row is not None:
            rows.append(row)
    rows.sort(key=lambda row: not row.numeric)
    return tuple(row._replace(number=at) for at, row in enumerate(rows, start=1))


def _asked(review: Review, wanted: Mapping[str, frozenset[str]]) -> dict[str, Asked]:
    """Return every value that a finding rests on or waits for."""
    found: dict[str, Asked] = {}
    for one in review.findings:
        if one.outcome == DOES_NOT_APPLY and not one.because.startswith(_NO_OBJECTION):
            continue
        compared = {each.path: each for each in one.compared if _asks(each, wanted[one.rule])}
        for path in (*(place.path for place in one.places), *one.missing):
            known = found.get(path, Asked(one.severity, "", failed=False, open=False))
            each = compared.get(path)
            found[path] = Asked(
                min(known.severity, one.severity, key=SEVERITIES.index),
                _both(known.needed, each.needed if each else ""),
                known.failed or (each is not None and each.outcome == NOT_MET),
                known.open or (one.outcome == NOT_MET and one.severity != SEVERITIES[-1]),
            )
    return found


def _both(known: str, needed: str) -> str:
    """Return what several rules need of one value, each told once."""
    return JOIN.join(dict.fromkeys(one for one in (*known.split(JOIN), needed) if one))


def _asks(compared: Compared, wanted: frozenset[str]) -> bool:
    """Say whether a comparison is what the rule asks, not what it says where it applies."""
    found = leaf_at(compared.path)
    return found is not None and found[0].path in wanted


def _row(
    spec: Spec,
    path: str,
    leaf: Leaf,
    item: str,
    asked: Asked,
    passes: Passes,
    height: float | None,
) -> Row | None:
    shown = spec.values.get(path)
    known = shown is not None and shown.value is not None
    unit = shown.unit if shown and shown.unit else _usual_unit(leaf, spec)
    found = passes.of(path) if known else None
    if known and found is None and not asked.needed and not (asked.open and leaf.kind == "level"):
        return None
    if found is not None and found.low is None and found.high is None and found.as_shown:
        return None
    # A level of which no value passes as long as the others stay as they are.
    alone = known and asked.open and leaf.kind == "level" and found is None
    blank = Row(
        number=0, path=path, title=leaf.title, item=item, kind=leaf.kind, unit=unit,
        expected=_expected(spec, path, leaf, unit), tolerance=_tolerance(leaf, unit), low="",
        high="", needed=asked.needed if found is None else "", as_shown=not (asked.failed or alone),
        spare="", ratio=None, critical=asked.severity == SEVERITIES[0], rods=(),
    )  # fmt: skip
    if found is None or shown is None or not isinstance(shown.value, float | Range):
        return blank
    return _limited(blank, found, shown.value, leaf, height)


def _limited(
    row: Row, found: Passing, value: float | Range, leaf: Leaf, height: float | None
) -> Row:
    low, high = ends(value)
    margins = [
        margin
        for margin in (
            None if found.low is None else low - found.low,
            None if found.high is None else found.high - high,
        )
        if margin is not None
    ]
    margin = min(margins) if found.as_shown else -1.0
    ratio = margin / leaf.tolerance if leaf.tolerance else None
    return row._replace(
        low=_end(row, found.low, "up"), high=_end(row, found.high, "down"),
        as_shown=found.as_shown, ratio=ratio,
        spare=tape(margin, _length_unit(row), "down") if found.as_shown else "",
        rods=_rods(row, found, low, height) if row.kind == "level" and height is not None else (),
    )  # fmt: skip


def _end(row: Row, value: float | None, toward: Toward) -> str:
    return "" if value is None else site_figure(row.kind, value, row.unit, toward)


def _rods(row: Row, found: Passing, value: float, height: float) -> tuple[Rod, ...]:
    """A high point reads low on the rod, so the ends change places."""
    return tuple(
        Rod(
            write(height - value, "nearest"),
            "" if found.high is None else write(height - found.high, "up"),
            "" if found.low is None else write(height - found.low, "down"),
        )
        for write in rods(row.unit)
    )


def _expected(spec: Spec, path: str, leaf: Leaf, unit: str) -> str:
    shown = spec.values.get(path)
    if shown is None or shown.word or shown.value is None:
        return ""
    return (
        f"{shown.written} {unit}"
        if leaf.kind == "level" and _bare(shown.written)
        else shown.written
    )


def _bare(text: str) -> bool:
    return all(character.isdigit() or character in " .+-" for character in text)


def _tolerance(leaf: Leaf, unit: str) -> str:
    """Return how far a reading can be trusted, metric where the spec is."""
    if leaf.kind in ("length", "level") and unit in _METRIC and leaf.tolerance:
        return tape(leaf.tolerance, "mm")
    return leaf.tolerance_text


def _usual_unit(leaf: Leaf, spec: Spec) -> str:
    if leaf.kind == "level":
        return spec.text("levels.unit")
    if leaf.kind == "length":
        return "mm" if spec.system == "si" else "in"
    return ""


def _length_unit(row: Row) -> str:
    if row.kind == "level":
        return "mm" if row.unit in _METRIC else "in"
    return row.unit
