"""Letters as JSON: for the letter about the next revision, and for other programs."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from checker.showing.letter.contents import Letter
from checker.showing.letter.earlier import FORMAT


def as_json(letters: Sequence[Letter]) -> str:
    """Return letters as JSON text in plain ASCII, keys in the same order every time."""
    report = {"letter_format": FORMAT, "letters": [_plain(one) for one in letters]}
    return json.dumps(report, indent=2) + "\n"


def _plain(value: Any) -> Any:
    if hasattr(value, "_fields"):
        return {name: _plain(getattr(value, name)) for name in value._fields}
    if isinstance(value, dict):
        return {key: _plain(one) for key, one in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(one) for one in value]
    return value
