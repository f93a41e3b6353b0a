"""The little Markdown that the generated pages need; whatever goes in comes out as text."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from checker.showing.lines import clean

# What would otherwise become a table's column, a tag, an emphasis, a link or code.
_SPECIAL = re.compile(r"([\\`*\[\]<>|]|(?<!\w)_|_(?!\w))")


def text(words: str) -> str:
    """Return words as Markdown that reads as exactly these words, on one line."""
    return _SPECIAL.sub(r"\\\1", " ".join(clean(words).split()))


def code(words: str) -> str:
    """Return words as code, also in a table. Words with a backtick in them come out as text."""
    words = " ".join(clean(words).split())
    if not words or "`" in words:
        return text(words)
    return f"`{words}`".replace("|", r"\|")


def table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> list[str]:
    """Return the lines of a table; the cells are Markdown already."""
    lines = [_row(heads), _row(["---"] * len(heads))]
    return [*lines, *(_row(row) for row in rows), ""]


def _row(cells: Sequence[str]) -> str:
    return f"| {' | '.join(cells)} |"


def page(lines: Iterable[str]) -> str:
    """Return lines as the text of a file, with no two blank lines in a row."""
    return re.sub(r"\n{3,}", "\n\n", "\n".join(lines)).rstrip() + "\n"
