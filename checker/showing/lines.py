"""Lines of styled spans: what every text output is made of before it reaches a pipe or a screen.

Text that came from a spec is text and nothing else: whatever could move a cursor, colour a screen
or turn the reading direction is taken out here, before anything is measured or wrapped.
"""

from __future__ import annotations

import functools
import re
import textwrap
import unicodedata
from collections.abc import Sequence
from typing import NamedTuple

PIPE_WIDTH = 80
WIDEST = 100


class Span(NamedTuple):
    """A piece of one line. `style` is a word of meaning such as "heading", never a colour."""

    text: str
    style: str = ""


Line = tuple[Span, ...]

BLANK: Line = ()

# Whole escape sequences: CSI with its parameters, then the kinds that carry a text to a terminator.
_ESCAPES = re.compile(
    r"(?:\x1b\[|\x9b)[0-?]*[ -/]*[@-~]"
    r"|(?:\x1b[\]PX^_]|[\x90\x98\x9d-\x9f])[^\x07\x1b\x90\x98-\x9f]*(?:\x07|\x1b\\|\x9c)"
)
_SPACES = frozenset({"Zs", "Zl", "Zp"})
# Control, format (among them the marks that turn the reading direction) and lone surrogates.
_SILENT = frozenset({"Cc", "Cf", "Cs"})


def clean(text: str) -> str:
    """Return a text without escape sequences, control and direction marks; breaks become spaces."""
    if text.isprintable():
        return text
    return "".join(_harmless(character) for character in _ESCAPES.sub("", text))


def _harmless(character: str) -> str:
    if character in "\t\n\r\v\f\x85":
        return " "
    category = unicodedata.category(character)
    if category in _SPACES:
        return " "
    return "" if category in _SILENT else character


def line(text: str, style: str = "") -> Line:
    """Return one line that is not wrapped."""
    return (Span(clean(text), style),)


def paragraph(
    text: str,
    width: int,
    *,
    label: str = "",
    indent: int = 0,
    hang: int = 0,
    style: str = "",
    label_style: str = "",
) -> list[Line]:
    """Wrap a text to `width` columns behind a label.

    The label stands `indent` columns in and the text `hang` columns after it on every line. An
    empty text gives no line, so a label never stands alone. A word longer than a line is broken.
    """
    if not text:
        return []
    wrap = _wrapped if len(text) < _LONG else _wrap
    return list(wrap(text, width, label, indent, hang, style, label_style))


def _wrap(
    text: str, width: int, label: str, indent: int, hang: int, style: str, label_style: str
) -> tuple[Line, ...]:
    room = max(width - indent - hang, 20)
    lines: list[Line] = []
    for words in textwrap.wrap(" ".join(clean(text).split()), room, break_on_hyphens=False):
        shown = "" if lines else clean(label)
        # A label longer than its column pushes its own line, never the others.
        padding = " " * max(hang - len(shown), 1 if shown else 0)
        head = (Span(" " * indent), Span(shown, label_style)) if shown else (Span(" " * indent),)
        lines.append((*head, Span(padding), Span(words, style)))
    return tuple(lines)


# What a rule says is the same in the review of every assembly, and no rule says so much at once.
_wrapped = functools.lru_cache(maxsize=4096)(_wrap)
_LONG = 2000


def heading(text: str, width: int) -> list[Line]:
    """Return a blank line and a heading."""
    return [BLANK, *paragraph(text, width, style="heading")]


def joined(parts: Sequence[str], separator: str = "; ") -> str:
    """Join the parts that say something."""
    return separator.join(part for part in parts if part)


def sentence(text: str) -> str:
    """Return a text that ends as a sentence does."""
    text = text.strip()
    return text if not text or text.endswith((".", "?", "!", ":")) else f"{text}."


def counted(number: int, noun: str, plural: str = "") -> str:
    """Return "1 rule" or "2 rules"."""
    return f"{number} {noun if number == 1 else plural or f'{noun}s'}"
