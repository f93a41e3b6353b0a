"""The vocabulary: the judging schema, compiled into what the reader walks along."""

from __future__ import annotations

import difflib
import functools
from dataclasses import dataclass, field
from typing import Any

from checker.data import load_json
from checker.reading.kinds import KINDS
from checker.reading.notations import read_quantity
from checker.values import ends


@dataclass(frozen=True, slots=True)
class Leaf:
    """A key with a value. `path` uses `each` for the items of a list."""

    path: str
    kind: str
    title: str
    description: str
    examples: tuple[str, ...]
    nature: str
    tolerance: float
    tolerance_text: str
    minimum: float | None
    exclusive_minimum: float | None
    maximum: float | None
    words: dict[str, str]
    if_absent: tuple[Any, str] | None
    constant: Any
    numeric: bool


@dataclass(frozen=True, slots=True)
class Section:
    """A mapping of keys."""

    path: str
    title: str
    description: str
    children: dict[str, Leaf | Section | Items] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Items:
    """A list of things that are each asked the same questions.

    `if_absent` says how leaving it out reads, where that has a plain meaning: as an empty list.
    """

    path: str
    title: str
    noun: str
    none_is_an_answer: bool
    if_absent: str
    item: Section


Node = Leaf | Section | Items


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """The whole vocabulary: the tree, and every path of it by name."""

    root: Section
    nodes: dict[str, Node]
    ambiguous: dict[str, tuple[str, ...]]
    schema: dict[str, Any]

    def leaf(self, path: str) -> Leaf | None:
        """Return the leaf at a path written with `each`, or None."""
        node = self.nodes.get(path)
        return node if isinstance(node, Leaf) else None

    def locate(self, path: str) -> tuple[Node, str] | None:
        """Return the node at a concrete path, and the id of the item it belongs to, or nothing."""
        node = self.nodes.get(path)
        if node is not None:
            return node, ""
        parts = path.split(".")
        for start in range(1, len(parts)):
            # An id may have dots in it, so it can be more than one part.
            for end in range(start + 1, len(parts)):
                node = self.nodes.get(".".join([*parts[:start], "each", *parts[end:]]))
                if node is not None:
                    return node, ".".join(parts[start:end])
        return None

    def leaf_words(self, path: str) -> dict[str, str]:
        """Return the words that a leaf knows, each by its plain form."""
        leaf = self.leaf(path)
        return leaf.words if leaf else {}


def plain_word(text: str) -> str:
    """Return a word by its letters and digits alone, without regard to case, spaces and marks."""
    return _plain_word(text) if len(text) <= _SHORT else _letters(text)


def _letters(text: str) -> str:
    return "".join(filter(str.isalnum, text.lower()))


# The same few words stand in every spec; texts that are longer than words do not.
_SHORT = 60
_plain_word = functools.lru_cache(maxsize=8192)(_letters)


def nearest(word: str, known: list[str]) -> str:
    """Return ` (nearest known: ...)`, or nothing when none is near."""
    close = difflib.get_close_matches(word.lower(), known, n=1, cutoff=0.6)
    return f" (nearest known: {close[0]})" if close else ""


@functools.cache
def vocabulary() -> Vocabulary:
    """Load and compile the spec schema once."""
    schema = load_json("spec.schema.json")
    nodes: dict[str, Node] = {}
    root = _section(schema, schema["$defs"], "", nodes)
    ambiguous = {plain_word(word): tuple(v) for word, v in schema.get("x-ambiguous", {}).items()}
    return Vocabulary(root, nodes, ambiguous, schema)


def _resolve(node: dict[str, Any], shapes: dict[str, Any]) -> dict[str, Any]:
    if "$ref" not in node:
        return node
    shape = shapes[node["$ref"].removeprefix("#/$defs/")]
    return _resolve(shape, shapes) | {key: value for key, value in node.items() if key != "$ref"}


def _compile(
    raw: dict[str, Any], shapes: dict[str, Any], path: str, nodes: dict[str, Node]
) -> Node:
    schema = _resolve(raw, shapes)
    if "x-kind" in schema:
        node: Node = _leaf(schema, path)
    elif schema.get("type") == "array":
        item = _section(_resolve(schema["items"], shapes), shapes, f"{path}.each", nodes)
        noun = schema.get("x-key", "item")
        absent = schema.get("x-if-absent", {}).get("reads", "")
        none = bool(schema.get("x-none"))
        node = Items(path, schema.get("title", path), noun, none, absent, item)
    else:
        return _section(schema, shapes, path, nodes)
    nodes[path] = node
    return node


def _section(
    schema: dict[str, Any], shapes: dict[str, Any], path: str, nodes: dict[str, Node]
) -> Section:
    section = Section(path, schema.get("title", path), schema.get("description", ""))
    nodes[path] = section
    for key, child in schema.get("properties", {}).items():
        where = f"{path}.{key}" if path else key
        section.children[key] = _compile(child, shapes, where, nodes)
    return section


def _tolerance(kind: str, text: str) -> float:
    """Return how far a reading can be trusted, in SI; 0.0 where the schema does not say."""
    if not text or kind not in KINDS:
        return 0.0
    value, unit = read_quantity("length" if kind == "level" else kind, text)
    if kind == "temperature":
        # Two degrees more or less are not the temperature of two degrees.
        nought = read_quantity(kind, f"0 {unit}").value
        return ends(value).low - ends(nought).low
    return ends(value).low


def _leaf(schema: dict[str, Any], path: str) -> Leaf:
    enum = schema.get("enum") or schema.get("items", {}).get("enum") or ()
    words = {plain_word(str(word)): str(word) for word in enum}
    for said, word in schema.get("x-synonyms", {}).items():
        words.setdefault(plain_word(said), word)
    absent = schema.get("x-if-absent")
    kind = schema["x-kind"]
    return Leaf(
        path=path,
        kind=kind,
        title=schema.get("title", path),
        description=schema.get("description", ""),
        examples=tuple(str(example) for example in schema.get("examples", ())),
        nature=schema.get("x-nature", "choice"),
        tolerance=_tolerance(kind, schema.get("x-tolerance", "")),
        tolerance_text=schema.get("x-tolerance", ""),
        minimum=schema.get("minimum"),
        exclusive_minimum=schema.get("exclusiveMinimum"),
        maximum=schema.get("maximum"),
        words=words,
        if_absent=(absent["value"], absent["reads"]) if absent else None,
        constant=schema.get("const"),
        numeric=kind in KINDS,
    )
