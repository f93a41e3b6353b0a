"""What a rule writes out as its limit: a figure with its unit, a word, yes or no.

A figure may stand in both systems of units, `2 in | 50 mm`, as codes print it: what counts is the
figure in the system of whoever wrote the value.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.reading.kinds import KINDS
from checker.reading.notations import NotationError, read_quantity
from checker.reading.units import system_of
from checker.reading.vocabulary import plain_word, vocabulary

_YES_NO = {"yes": True, "no": False}
# How far two figures printed side by side may lie apart: 3/8 in and 10 mm are one limit.
_APART = 0.06


class RuleError(Exception):
    """A rule that cannot be understood; the message says why, `line` where when it is known."""

    def __init__(self, message: str, line: int = 0) -> None:
        super().__init__(message)
        self.line = line


class Twin(NamedTuple):
    """The metric figure that a rule writes beside the American one."""

    value: float
    text: str


def read_literal(kind: str, text: str, value: str) -> Any:
    """Return what a text means as a limit for the value at a path. Raises RuleError."""
    if kind == "yes_no":
        if text not in _YES_NO:
            raise RuleError(f"'{value}' is yes or no, not '{text}'")
        return _YES_NO[text]
    if text == "none" and kind in ("words", "texts") and "none" not in _words_of(value):
        return ()
    if kind in ("word", "words"):
        return _known_word(value, text)
    if kind in ("text", "texts", "date"):
        return text
    if kind in ("year", "count"):
        if not text.isdigit():
            raise RuleError(f"'{value}' is a whole number, not '{text}'")
        return int(text)
    return _figure(kind, text, value)[0]


def read_limit(kind: str, text: str, value: str) -> tuple[Any, str, Twin | None]:
    """Return a limit, its text and its metric twin, where the text holds two figures.

    Raises RuleError where the two are not American and metric, or are not about the same.
    """
    if "|" not in text or kind not in KINDS:
        return read_literal(kind, text, value), text, None
    parts = [part.strip() for part in text.split("|")]
    read = [_figure(kind, part, value) for part in parts]
    if [system_of(unit) for _, unit in read] not in (["us", "si"], ["us", ""]):
        raise RuleError(f"'{value}': '{text}' is not one American figure and then one metric one")
    (american, _), (metric, _) = read
    if not (isinstance(american, float) and isinstance(metric, float)):
        raise RuleError(f"'{value}': '{text}' holds a range, and a limit is one figure")
    if abs(american - metric) > _APART * abs(american):
        raise RuleError(f"'{value}': '{parts[0]}' and '{parts[1]}' are not the same limit")
    return american, parts[0], Twin(metric, parts[1])


def _figure(kind: str, text: str, value: str) -> tuple[Any, str]:
    level_unit = "ft" if kind == "level" else None
    try:
        return read_quantity("number" if kind == "ratio" else kind, text, level_unit)
    except NotationError as error:
        raise RuleError(f"'{value}': {error}") from None


def _words_of(value: str) -> dict[str, str]:
    leaf = vocabulary().leaf(value)
    return leaf.words if leaf else {}


def _known_word(value: str, text: str) -> str:
    words = _words_of(value)
    if not words:
        return plain_word(text)
    word = words.get(plain_word(text))
    if word is None:
        raise RuleError(
            f"'{value}' has no word '{text}'; known: {', '.join(sorted(set(words.values())))}"
        )
    return word
