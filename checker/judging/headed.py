"""Files of keys that a house or a place writes: read, and judged by their own schema."""

from __future__ import annotations

import hashlib
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from checker.data import data_dir, load_json
from checker.reading.compose import compose, read_text
from checker.reading.faults import Fault, Unreadable
from checker.reading.kept import kept
from checker.reading.vocabulary import nearest

Step = str | int
Where = dict[tuple[Step, ...], tuple[int, int]]


class Headed(NamedTuple):
    """A file as plain values.

    `where` holds line and column by the steps of a path, `lines` the line of every mapping by
    its identity, as rules are read with it.
    """

    name: str
    content: dict[str, Any]
    where: Where
    lines: dict[int, int]
    digest: str

    def fault(self, message: str, *steps: Step) -> Fault:
        """Return a fault at a place, or at the nearest thing above it that has one."""
        while steps and steps not in self.where:
            steps = steps[:-1]
        line, column = self.where.get(steps, (1, 1))
        return Fault(self.name, line, column, message, ".".join(map(str, steps)))


def read_headed(path: Path, schema: str, noun: str, *, trusted: bool = False) -> Headed:
    """Read a file of keys; `noun` is what it is called. Raises Unreadable with every fault.

    What comes with belowgrade is `trusted`: its tests have judged it by the schema.
    """
    text, name = read_text(path), str(path)
    nodes = [node for node in compose(text, name) if getattr(node, "value", "") != ""]
    if len(nodes) != 1 or not isinstance(nodes[0], yaml.MappingNode):
        raise Unreadable([Fault(name, 1, 1, f"is no {noun}: it is one list of keys")])
    where: Where = {}
    lines: dict[int, int] = {}
    faults: list[Fault] = []
    content = _plain(nodes[0], (), where, lines, name, faults)
    digest = hashlib.sha256(text.encode()).hexdigest()[:12]
    read = Headed(name, content, where, lines, digest)
    if not trusted:
        faults += _judged(path, read, schema)
    if faults:
        raise Unreadable(sorted(faults, key=lambda one: (one.line, one.column)))
    return read


def _plain(
    node: yaml.Node,
    steps: tuple[Step, ...],
    where: Where,
    lines: dict[int, int],
    name: str,
    faults: list[Fault],
) -> Any:
    where.setdefault(steps, (node.start_mark.line + 1, node.start_mark.column + 1))
    if isinstance(node, yaml.MappingNode):
        mapping: dict[str, Any] = {}
        for key_node, value_node in node.value:
            key, mark = str(key_node.value), key_node.start_mark
            where[(*steps, key)] = (mark.line + 1, mark.column + 1)
            if key in mapping:
                again = Fault(name, mark.line + 1, mark.column + 1, f"'{key}' stands here twice")
                faults.append(again)
            mapping[key] = _plain(value_node, (*steps, key), where, lines, name, faults)
        lines[id(mapping)] = node.start_mark.line + 1
        return mapping
    if isinstance(node, yaml.SequenceNode):
        return [
            _plain(part, (*steps, number), where, lines, name, faults)
            for number, part in enumerate(node.value)
        ]
    return str(node.value)


def _judged(path: Path, read: Headed, schema: str) -> list[Fault]:
    # The validator takes longer to load than a review does: what it said of a file is kept.
    said = kept([path, data_dir("shared") / schema], lambda: _complaints(read, schema))
    return [Fault(*one) for one in said]


def _complaints(read: Headed, schema: str) -> list[Fault]:
    from jsonschema import Draft202012Validator

    validator = Draft202012Validator(load_json(schema))
    return [
        read.fault(message, *error.absolute_path, *more)
        for error in validator.iter_errors(read.content)
        for message, more in _said(error)
    ]


def _said(error: Any) -> list[tuple[str, tuple[Step, ...]]]:
    """Return what a schema's complaint means, with the steps to go on to its place."""
    key = str(error.absolute_path[-1]) if error.absolute_path else "the file"
    if error.validator == "additionalProperties":
        known = list(error.schema.get("properties", {}))
        strange = [each for each in error.instance if each not in known]
        return [
            (f"there is no '{each}' here{nearest(each, known)}; known: {', '.join(known)}", (each,))
            for each in strange
        ]
    if error.validator == "required":
        missing = [each for each in error.validator_value if each not in error.instance]
        return [(f"'{each}' is missing", ()) for each in missing]
    if error.validator == "enum":
        return [(f"'{error.instance}' is not one of {', '.join(error.validator_value)}", ())]
    if error.validator == "type":
        wanted = {"object": "a group of keys", "array": "a list", "string": "one text"}
        return [(f"{key}: {wanted.get(str(error.validator_value), 'another value')} is wanted", ())]
    if error.validator in ("minLength", "minItems", "minProperties"):
        return [(f"{key}: nothing stands here", ())]
    example = error.schema.get("examples", [""])[0]
    return [(f"{key}: '{error.instance}' will not do; write it as '{example}'", ())]
