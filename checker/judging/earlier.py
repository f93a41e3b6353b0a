"""What an earlier review said, read back from the JSON that it was written as."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from checker.judging.carried import Earlier, Stood
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, NOT_SHOWN, SEVERITIES
from checker.reading.compose import read_text
from checker.reading.faults import Fault, Unreadable

# A review takes half a megabyte; five hundred of them are a large development.
SIZE_LIMIT = 300_000_000

_OUTCOMES = (MET, NOT_MET, NOT_SHOWN, DOES_NOT_APPLY)
_NOT_ONE = "is not a review written with '--as json'"


def load_earlier(path: Path) -> tuple[Earlier, ...]:
    """Read the reviews in a file that `--as json` or `--as jsonl` wrote. Raises Unreadable."""
    name = str(path)
    text = read_text(path, name, SIZE_LIMIT)
    try:
        return tuple(_review(each) for each in _reviews(text))
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        raise Unreadable([Fault(name, 0, 0, _NOT_ONE)]) from None


def _reviews(text: str) -> list[Any]:
    try:
        report = json.loads(text)
    except ValueError:
        if "\n" not in text:
            raise
        # One review to a line.
        return [json.loads(line) for line in text.splitlines() if line.strip()]
    return list(report.get("reviews", [report]))


def _review(raw: Any) -> Earlier:
    return Earlier(
        _text(raw, "file"),
        _text(raw, "assembly"),
        _text(raw, "basis"),
        _text(raw, "by"),
        _text(raw, "digest"),
        tuple(_finding(each) for each in raw["findings"]),
    )


def _finding(raw: Any) -> Stood:
    outcome, severity = raw["outcome"], raw["severity"]
    if outcome not in _OUTCOMES or severity not in SEVERITIES or not isinstance(raw["open"], bool):
        raise ValueError
    compared = (each for each in raw["compared"] if each["outcome"] == outcome)
    texts = dict.fromkeys(_text(each, "shown") for each in compared if outcome != NOT_SHOWN)
    shown = ", ".join(filter(None, texts))
    told = {key: _text(raw, key) for key in ("rule", "item", "title", "fingerprint")}
    return Stood(severity=severity, outcome=outcome, open=raw["open"], shown=shown, **told)


def _text(raw: Any, key: str) -> str:
    text = raw[key]
    if not isinstance(text, str):
        raise TypeError
    return text
