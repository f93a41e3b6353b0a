"""Which suggestion an item gets, by its outcome and severity; read from a file, never computed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from checker.data import data_dir
from checker.judging.review_data import NOT_MET, NOT_SHOWN, SEVERITIES
from checker.reading.compose import TextLoader

SEND_BACK = "send back"
ASK_FIRST = "ask first"
NO_COMMENT = "no comment from these rules"
# The worst first: it governs the whole.
SUGGESTIONS = (SEND_BACK, ASK_FIRST, NO_COMMENT)


@dataclass(frozen=True, slots=True)
class Dispositions:
    """The suggestion for every outcome and severity, and the words of the stamp."""

    suggestions: dict[tuple[str, str], str]
    stamp: tuple[str, ...]

    def of(self, outcome: str, severity: str) -> str:
        """Return what is suggested for an item that is not met or not shown."""
        return self.suggestions[outcome, severity]

    def changed(self, by: Mapping[str, Mapping[str, str]]) -> Dispositions:
        """Return these with what a house wants otherwise, outcome by outcome."""
        own = {
            (outcome, severity): word
            for outcome, row in by.items()
            for severity, word in row.items()
        }
        return Dispositions(self.suggestions | own, self.stamp)


def worst(suggestions: Iterable[str]) -> str:
    """Return the suggestion that governs several; without any, that there is no comment."""
    return min(suggestions, key=SUGGESTIONS.index, default=NO_COMMENT)


def load_dispositions(path: Path | None = None) -> Dispositions:
    """Read the setting of a house, or the usual one.

    Raises OSError when the file cannot be read, ValueError when it does not say what it must.
    """
    import yaml

    file = path or data_dir("shared") / "dispositions.yaml"
    try:
        raw = yaml.load(file.read_text(encoding="utf-8-sig"), TextLoader)
    except yaml.YAMLError as error:
        raise ValueError(f"{file}: {' '.join(str(error).split())}") from None
    return _checked(raw, str(file))


def _checked(raw: Any, file: str) -> Dispositions:
    given = raw.get("suggestions") if isinstance(raw, dict) else None
    stamp = raw.get("stamp") if isinstance(raw, dict) else None
    if not isinstance(given, dict) or not isinstance(stamp, list) or not stamp:
        raise ValueError(f"{file}: 'suggestions' and 'stamp' are wanted")
    found = {}
    for outcome in (NOT_MET, NOT_SHOWN):
        for severity in SEVERITIES:
            row = given.get(outcome)
            word = row.get(severity) if isinstance(row, dict) else None
            if word not in SUGGESTIONS:
                known = ", ".join(SUGGESTIONS)
                raise ValueError(f"{file}: {outcome}, {severity}: '{word}' is not one of {known}")
            found[outcome, severity] = str(word)
    return Dispositions(found, tuple(str(word) for word in stamp))
