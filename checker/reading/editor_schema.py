"""The schema for people's editors: what may be written; the other one judges what was read."""

from __future__ import annotations

from typing import Any

from checker.reading.spec import BY_OTHERS, NOT_APPLICABLE, NOT_SHOWN, UNKNOWN

Node = dict[str, Any]

STAND_INS = (NOT_SHOWN, BY_OTHERS, UNKNOWN, NOT_APPLICABLE)
SHORT_STAND_INS = ("n/a", "TBD", "VIF", "NIC")
HOW = ("on paper", "measured", "assumed", "standard")

# YAML hands these over as numbers when they are written without a unit, and they need none.
_BARE_NUMBERS = {"level", "fraction", "number", "count"}
_ANY_TEXT: Node = {"type": ["string", "number", "boolean"]}
_SEVERAL: Node = {"type": "array", "items": _ANY_TEXT, "minItems": 1}
_KEPT = ("title", "description", "examples")
_OWN_KEYS: Node = {"patternProperties": {"^x-": True}, "additionalProperties": False}


def editor_schema(schema: Node) -> Node:
    """Return the schema of a spec as people write it, made from the schema that judges.

    `schema` is shared/spec.schema.json, read; it is left as it is. Every leaf takes a text (or
    the bare number or yes/no that YAML makes of it), a word that stands in place of a value, or a
    mapping that says where the value came from. Titles, descriptions and examples are kept: an
    editor shows them as help. Words of a list are offered with the trade's synonyms, spelt with
    underscores and with spaces. The reader is more patient than this about capitals and hyphens.
    """
    shapes = {
        name: _widened(node, schema) for name, node in schema["$defs"].items() if not _is_leaf(node)
    }
    root = _section(schema, schema)
    return {
        "$schema": schema["$schema"],
        "title": f"{schema['title']}, as written",
        "description": "Generated from spec.schema.json; change that one.",
        **root,
        "required": schema["required"],
        "$defs": {**_shared_shapes(schema), **shapes},
    }


def _is_leaf(node: Node) -> bool:
    return "x-kind" in node


def _shared_shapes(schema: Node) -> Node:
    words = [*STAND_INS, *(word.replace(" ", "_") for word in STAND_INS), *SHORT_STAND_INS]
    kinds = {
        name: _instead_of(_as_written(node))
        for name, node in schema["$defs"].items()
        if _is_leaf(node) and node["x-kind"] not in ("word", "words")
    }
    return {
        "stand_in": {"enum": list(dict.fromkeys(words))},
        "as_written": _mapping("as_written", _ANY_TEXT),
        "several": _SEVERAL,
        "one_of": _mapping("one of", _SEVERAL),
        **kinds,
    }


def _as_written(shape: Node) -> Node:
    """Return what YAML makes of a value of this kind."""
    kind = shape["x-kind"]
    if kind == "yes_no":
        return {"enum": ["yes", "no", True, False]}
    if kind == "text":
        return {"anyOf": [_ANY_TEXT, {"$ref": "#/$defs/one_of"}]}
    if kind == "texts":
        return {"anyOf": [_ANY_TEXT, {"type": "array", "items": _ANY_TEXT}]}
    if kind == "curve":
        return {"type": "object", "additionalProperties": {"type": ["string", "number"]}}
    return {"type": ["string", "number"] if kind in _BARE_NUMBERS else "string"}


def _instead_of(written: Node, *others: Node) -> Node:
    """Return a value as written, or anything that may stand in its place."""
    return {
        "anyOf": [
            written,
            {"$ref": "#/$defs/stand_in"},
            _mapping("value", written),
            {"$ref": "#/$defs/as_written"},
            *others,
        ]
    }


def _open(node: Node) -> list[Node]:
    """Return the two ways in which a standard leaves open which word it is."""
    if node["x-nature"] == "record":
        return []
    return [{"$ref": "#/$defs/several"}, {"$ref": "#/$defs/one_of"}]


def _mapping(key: str, value: Node) -> Node:
    return {
        "type": "object",
        "required": [key],
        "properties": {
            key: value,
            "from": _ANY_TEXT,
            "how": {"enum": list(dict.fromkeys([*HOW, *(how.replace(" ", "_") for how in HOW)]))},
            "by": _ANY_TEXT,
            "date": {"type": "string"},
        },
        "additionalProperties": False,
    }


def _widened(node: Node, schema: Node) -> Node:
    shape = schema["$defs"][node["$ref"].removeprefix("#/$defs/")] if "$ref" in node else node
    if _is_leaf(shape):
        return _leaf(node, shape)
    if "$ref" in node:
        return dict(node)
    help_text = {key: node[key] for key in _KEPT if key in node}
    if node["type"] == "array":
        # A word such as "none" or "by others" may stand in place of the whole list or section.
        items = {**_section(node["items"], schema), "required": node["items"]["required"]}
        return {**help_text, "type": ["array", "string"], "items": items}
    return {**help_text, **_section(node, schema), "type": ["object", "string"]}


def _section(node: Node, schema: Node) -> Node:
    properties = {key: _widened(child, schema) for key, child in node["properties"].items()}
    return {"type": "object", "properties": properties, **_OWN_KEYS}


def _leaf(node: Node, shape: Node) -> Node:
    help_text = {key: node[key] for key in _KEPT}
    if "x-if-absent" in node:
        help_text["description"] += f" Left out, it reads: {node['x-if-absent']['reads']}."
    if "const" in node:
        return {**help_text, "enum": [node["const"], str(node["const"])]}
    if shape["x-kind"] == "word":
        word: Node = {"enum": _spellings(node, node["enum"])}
        # A standard may leave open which; which words those are is left to the reader.
        return {**help_text, **_instead_of(word, *_open(node))}
    if shape["x-kind"] == "words":
        one: Node = {"enum": [*_spellings(node, node["items"]["enum"]), "none"]}
        return {**help_text, **_instead_of({"anyOf": [one, {"type": "array", "items": one}]})}
    return {**help_text, "$ref": node["$ref"]}


def _spellings(node: Node, words: list[str]) -> list[str]:
    """Return the words and their synonyms, in the spellings that people use for them."""
    spelt: list[str] = []
    for word in [*words, *node.get("x-synonyms", {})]:
        parts = word.split("_")
        spelt += [word, " ".join(parts), word.lower()]
        # Symbols, such as those of soil groups, are written in capitals and with a hyphen.
        if all(len(part) <= 2 for part in parts):
            spelt += ["-".join(parts).upper()]
    return list(dict.fromkeys(spelt))
