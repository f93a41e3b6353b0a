"""Rule files as plain values: what stands in them and where, before any of it is understood."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any, TypedDict

import yaml

from checker.reading.compose import compose, read_text
from checker.reading.faults import Fault, Unreadable

# File, the rule's keys, its line, and the line of every mapping in it by identity.
Entry = tuple[str, dict[str, Any], int, dict[int, int] | None]


class Entries(TypedDict):
    """Every rule of some files, and a digest of their texts."""

    rules: list[Entry]
    digest: str


def entries(files: Sequence[Path], faults: list[Fault]) -> Entries:
    """Return the rules of files as plain values; what is no rule becomes a fault."""
    digest = hashlib.sha256()
    rules: list[Entry] = []
    for file in files:
        try:
            text = read_text(file)
            rules += _rules_of(text, str(file), faults)
            digest.update(text.encode())
        except Unreadable as error:
            faults += error.faults
    return {"rules": rules, "digest": digest.hexdigest()[:12]}


def without_lines(read: Entries) -> Entries:
    """Return the same rules without the lines inside them, which mean nothing once kept."""
    rules: list[Entry] = [(file, raw, line, None) for file, raw, line, _ in read["rules"]]
    return {"rules": rules, "digest": read["digest"]}


def _rules_of(text: str, name: str, faults: list[Fault]) -> Iterator[Entry]:
    for node in compose(text, name):
        line = node.start_mark.line + 1
        if not isinstance(node, yaml.SequenceNode):
            faults.append(Fault(name, line, 1, "a rule file is a list of rules ('- id: ...')"))
            continue
        for item in node.value:
            lines: dict[int, int] = {}
            raw = _plain(item, lines, name, faults)
            line = item.start_mark.line + 1
            if isinstance(raw, dict):
                yield name, raw, line, lines
            else:
                faults.append(Fault(name, line, 1, "a rule is a group of keys ('id: ...')"))


def _plain(node: yaml.Node, lines: dict[int, int], name: str, faults: list[Fault]) -> Any:
    """Return plain values; `lines` maps the identity of every mapping to its line."""
    if isinstance(node, yaml.MappingNode):
        mapping: dict[str, Any] = {}
        for key_node, value_node in node.value:
            key = str(key_node.value)
            if key in mapping:
                mark = key_node.start_mark
                message = f"'{key}' stands here twice"
                faults.append(Fault(name, mark.line + 1, mark.column + 1, message))
            mapping[key] = _plain(value_node, lines, name, faults)
        lines[id(mapping)] = node.start_mark.line + 1
        return mapping
    if isinstance(node, yaml.SequenceNode):
        return [_plain(part, lines, name, faults) for part in node.value]
    return str(node.value)
