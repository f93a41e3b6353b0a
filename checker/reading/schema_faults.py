"""The schema validator's complaints, said to a builder and put in their place."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.reading.faults import Fault
from checker.reading.kinds import default_unit
from checker.reading.vocabulary import Leaf, Section, nearest
from checker.reading.walk import Walk
from checker.reading.write_back import format_quantity


def schema_faults(plain: Any, walk: Walk) -> list[Fault]:
    """Judge a plain document by the JSON Schema and return what it says, each with its place.

    Faults that the walk has said already, with more to go on (a key that is unknown, an item
    without an id), are left to it.
    """
    from jsonschema import Draft202012Validator

    validator = Draft202012Validator(walk.vocabulary.schema)
    faults = []
    for error in validator.iter_errors(plain):
        if error.validator == "additionalProperties":
            continue
        if error.validator == "required" and list(error.absolute_path):
            continue
        path = ".".join(_steps(error.absolute_path, plain))
        line, column = _place(path, walk)
        faults.append(Fault(walk.file, line, column, _say(error, path, walk), path))
    return faults


def _steps(parts: Any, plain: Any) -> Iterator[str]:
    here = plain
    for part in parts:
        here = here[part]
        if isinstance(part, int):
            identity = here.get("id") if isinstance(here, dict) else None
            if identity is not None:
                yield str(identity)
        else:
            yield str(part)


def _place(path: str, walk: Walk) -> tuple[int, int]:
    shown = walk.values.get(path)
    if shown:
        return shown.line, shown.column
    return walk.places.get(path, (1, 1, ""))[:2]


def _say(error: Any, path: str, walk: Walk) -> str:
    pattern = walk.values[path].pattern if path in walk.values else path
    node = walk.vocabulary.nodes.get(pattern)
    title = node.title if node is not None and node.title else path
    if error.validator == "enum" and isinstance(node, Leaf):
        known = list(error.validator_value)
        shown = ", ".join(known) if len(known) <= 12 else f"{', '.join(known[:12])}, ..."
        near = nearest(str(error.instance), known)
        return f"{title}: '{error.instance}' is not a known word{near}; known: {shown}"
    if error.validator in ("minimum", "exclusiveMinimum", "maximum") and isinstance(node, Leaf):
        return f"{title}: {_limit(error, node, walk.values.get(path))}"
    if error.validator == "type":
        return f"{title}: {_wrong_type(error, node)}"
    if error.validator == "const":
        return f"{title}: only {error.validator_value} is known here"
    if error.validator == "required":
        missing = ", ".join(key for key in error.validator_value if key not in error.instance)
        return f"'{missing}' is missing at the top; a spec begins with 'vocabulary: 1'"
    if error.validator == "uniqueItems":
        return f"{title}: the same word stands here twice"
    return f"{title}: {error.message}"


def _limit(error: Any, leaf: Leaf, shown: Any) -> str:
    unit = shown.unit if shown else default_unit(leaf.kind, "us")
    limit = format_quantity(leaf.kind, float(error.validator_value), unit)
    written = shown.written if shown else str(error.instance)
    relation = {"minimum": "less than", "exclusiveMinimum": "not more than", "maximum": "more than"}
    return f"'{written}' is {relation[error.validator]} {limit}, which cannot be"


def _wrong_type(error: Any, node: Any) -> str:
    written = error.instance
    if not isinstance(written, str | int | float | bool):
        written = "a list" if isinstance(written, list) else "a group of keys"
    wanted = error.validator_value
    if wanted == "boolean":
        return f"'{written}' is neither yes nor no"
    if wanted == "object":
        keys = ", ".join(list(node.children)[:6]) if isinstance(node, Section) else ""
        return f"a group of keys belongs here ({keys}, ...), not '{written}'"
    if wanted == "array":
        return "a list belongs here: each item on its own line after '- '"
    return f"one value belongs here, not {written}"
