"""Values written as YAML text that reads back as the same, and YAML read back as plain values."""

from __future__ import annotations

from typing import Any

import yaml

from checker.reading.compose import compose
from checker.reading.faults import Unreadable

_QUOTES = {"": ("", "'", '"'), "'": ("'", '"'), '"': ('"', "'")}


class CannotSplice(ValueError):
    """An edit that wants a person's eyes; the message says why."""


def as_scalar(text: str, style: str, *, in_flow: bool) -> str:
    """Return a text as YAML writes it: plain or in quotes, whatever reads back as the same.

    `style` is the quote that is liked best, "" for none; `in_flow` says whether the text stands
    inside braces or brackets. Raises CannotSplice for what is not one line that can be seen.
    """
    if not text.strip() or not text.isprintable():
        raise CannotSplice("a value is one line of text, all of it to be seen")
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    doubled = text.replace("'", "''")
    written = {"": text, "'": f"'{doubled}'", '"': f'"{escaped}"'}
    # A mark that would have to be escaped reads better in the other quotes.
    quotes = sorted(_QUOTES[style], key=lambda quote: quote == '"' and escaped != text)
    for quote in quotes:
        if _reads_as(written[quote], text, in_flow=in_flow):
            return written[quote]
    raise CannotSplice(f"'{text}' cannot be written as one value")


def _reads_as(written: str, text: str, *, in_flow: bool) -> bool:
    around = f"{{a: {written}, b: c}}" if in_flow else f"a: {written}\nb: c\n"
    try:
        (node,) = compose(around, "the value")
    except (Unreadable, ValueError):
        return False
    return bool(plain(node) == ("{", (("a", text), ("b", "c"))))


def as_flow(data: Any) -> str:
    """Return texts, lists and mappings as they stand inside braces. Raises CannotSplice."""
    if isinstance(data, str):
        return as_scalar(data, "", in_flow=True)
    if isinstance(data, list):
        return f"[{', '.join(map(as_flow, data))}]"
    return f"{{{', '.join(f'{key}: {as_flow(part)}' for key, part in data.items())}}}"


def plain(node: yaml.Node) -> Any:
    """Return a node as texts, pairs and items, without its places."""
    if isinstance(node, yaml.MappingNode):
        return "{", tuple((plain(key), plain(value)) for key, value in node.value)
    if isinstance(node, yaml.SequenceNode):
        return "[", tuple(map(plain, node.value))
    return node.value
