"""Comparisons put into the words and units of whoever wrote the spec, rounded to the safe side."""

from __future__ import annotations

from collections.abc import Sequence
from math import isfinite
from typing import Any, overload

from checker.deriving.engine import Derived
from checker.deriving.quantity import REGISTRY
from checker.judging.conditions import Judged
from checker.judging.review_data import MET, NOT_MET, NOT_SHOWN, Compared
from checker.reading.kinds import default_unit
from checker.reading.write_back import NOISE, Toward, format_difference, format_quantity
from checker.values import Choice, Range

_BARE = {"count", "number", "ratio", "year"}
_FIGURES = 9
_WORDY = {"text", "texts", "word", "words", "date", "year", "yes_no", "curve"}


def put(judged: Judged) -> Compared:
    """Return a comparison in words."""
    left = judged.left
    outcome = {True: MET, False: NOT_MET, None: NOT_SHOWN}[judged.outcome]
    shown, needed = _sides(judged)
    unit = _difference_unit(left, judged)
    off = _difference(left.kind, judged.off, unit, "up") if outcome == NOT_MET else ""
    room = _difference(left.kind, judged.room, unit, "down") if outcome == MET else ""
    return Compared(
        left.path, left.title, outcome, shown, needed, off, room, left.pattern in REGISTRY,
        _margin(judged), left.kind, unit,
    )  # fmt: skip


class InWords(Sequence[Compared]):
    """Comparisons put into words when somebody reads them: most of a review nobody does."""

    __slots__ = ("_judged", "_words")

    def __init__(self, judged: tuple[Judged, ...]) -> None:
        self._judged = judged
        self._words: tuple[Compared, ...] | None = None

    def _all(self) -> tuple[Compared, ...]:
        if self._words is None:
            self._words = tuple(put(one) for one in self._judged)
        return self._words

    def __len__(self) -> int:
        return len(self._judged)

    @overload
    def __getitem__(self, index: int) -> Compared: ...
    @overload
    def __getitem__(self, index: slice) -> Sequence[Compared]: ...
    def __getitem__(self, index: int | slice) -> Compared | Sequence[Compared]:
        return self._all()[index]

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sequence) and self._all() == tuple(other)

    def __hash__(self) -> int:
        return hash(self._all())

    def __repr__(self) -> str:
        return repr(self._all())

    def __reduce__(self) -> tuple[Any, ...]:
        return tuple, (self._all(),)


def _margin(judged: Judged) -> float | None:
    """Return the room that a comparison leaves, negative where it fails by so much."""
    if judged.outcome is None:
        return None
    margin = judged.room if judged.outcome else judged.off and -judged.off
    if margin is None or not isfinite(margin):
        return None
    if judged.left.kind in ("length", "level") and abs(margin) < NOISE:
        return 0.0
    # The last digits of a float are those of the machine.
    return float(f"{margin:.{_FIGURES}g}")


def _difference(kind: str, value: float | None, unit: str, toward: Toward) -> str:
    # A strict limit that is met exactly is missed by nothing that could be measured.
    if value is None or not isfinite(value) or (value == 0.0 and toward == "up"):
        return ""
    return say_difference(kind, value, unit, toward)


def say_difference(kind: str, value: float, unit: str, toward: Toward) -> str:
    """Return how far two values of a kind lie apart, as text in a unit."""
    return say(kind, value, "") if kind in _BARE else format_difference(kind, value, unit, toward)


def _difference_unit(left: Derived, judged: Judged) -> str:
    """Levels in feet differ by inches, levels in metres by millimetres."""
    if left.kind != "level":
        return left.unit or default_unit(left.kind, "us")
    return "mm" if left.unit in ("m", "mm", "cm") else "in"


def _sides(judged: Judged) -> tuple[str, str]:
    left, right = judged.left, judged.right
    for places in (None, 3, 4, 5):
        shown = say(left.kind, left.value, left.unit, places)
        limit = _limit(judged, places)
        if judged.outcome is not False or shown != limit:
            break
    else:
        # Equal to the last digit that is ever shown: then the plainest way of writing it will do.
        shown, limit = say(left.kind, left.value, left.unit), _limit(judged, None)
    if not left.known:
        shown = left.because or "not shown"
    if right is not None:
        limit = (
            f"{right.title} {limit}"
            if right.known
            else f"{right.title} ({right.because or 'not shown'})"
        )
    if judged.operator == "shown":
        return shown, "to be shown" if judged.limit else "to be left out"
    return shown, limit if judged.operator == "is" else f"{judged.operator} {limit}"


def _limit(judged: Judged, places: int | None) -> str:
    limit, left = judged.limit, judged.left
    if judged.right is None:
        return _as_the_rule_writes(judged)
    if isinstance(limit, tuple) and not isinstance(limit, Range):
        return ", ".join(_plain(one) for one in limit)
    return say(left.kind, limit, judged.right.unit or left.unit, places)


def _as_the_rule_writes(judged: Judged) -> str:
    """Return a literal limit, with the one it is the twin of or what it is in the spec's unit."""
    left, limit, text = judged.left, judged.limit, _plain(judged.text)
    if judged.beside:
        return f"{text} ({judged.beside})"
    if left.kind in _WORDY or not isinstance(limit, float) or not left.unit or limit == 0.0:
        return text
    converted = say(left.kind, limit, left.unit)
    return text if converted == text else f"{text} ({converted})"


def say(kind: str, value: Any, unit: str, places: int | None = None) -> str:
    """Return a value as text: a number in its unit, a word, yes or no, a range by its ends."""
    if value is None:
        return "not shown"
    if isinstance(value, Range):
        low, high = (say(kind, end, unit, places) if isfinite(end) else "" for end in value)
        if not high:
            return f"{low} or more"
        if not low or value.low == 0.0:
            return f"{high} or less"
        return f"{low} to {high}"
    if kind in _WORDY or isinstance(value, bool | str):
        return _plain(value)
    if kind in _BARE:
        return f"{value:.{places or 2}f}".rstrip("0").rstrip(".")
    return format_quantity(kind, float(value), unit or default_unit(kind, "us"), places=places)


def _plain(value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Choice):
        return " or ".join(_plain(one) for one in value.options)
    if isinstance(value, tuple):
        return ", ".join(_plain(one) for one in value) or "none"
    return str(value).replace("_", " ")


def fill(text: str, compared: Sequence[Compared], item: str, room: str) -> str:
    """Put the numbers of the first comparison that fails into a remedy."""
    failed = next(
        (one for one in compared if one.outcome == NOT_MET), compared[0] if compared else None
    )
    values = {
        "off_by": failed.off_by if failed else "", "shown": failed.shown if failed else "",
        "needed": failed.needed if failed else "", "item": item, "room": room,
    }  # fmt: skip
    for name, value in values.items():
        text = text.replace(f"{{{name}}}", value)
    return text
