"""Walk the nodes of a document along the vocabulary: texts become values with places."""

from __future__ import annotations

import datetime
import math
import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from checker.reading.faults import Fault
from checker.reading.notations import NotationError, read_quantity
from checker.reading.spec import (
    BY_OTHERS,
    NOT_APPLICABLE,
    NOT_SHOWN,
    UNKNOWN,
    Place,
    Shown,
    Value,
)
from checker.reading.vocabulary import Items, Leaf, Node, Section, Vocabulary, nearest, plain_word
from checker.values import Choice, Range

STAND_INS = {
    "notshown": NOT_SHOWN,
    "byothers": BY_OTHERS,
    "unknown": UNKNOWN,
    "notapplicable": NOT_APPLICABLE,
    "na": NOT_APPLICABLE,
    "tbd": UNKNOWN,
    "vif": UNKNOWN,
    "nic": BY_OTHERS,
}
_PROVENANCE = ("value", "as_written", "one of", "from", "how", "by", "date")
_INNER = ("value", "as_written", "one of")
_HOW = {"onpaper": "on paper", "measured": "measured", "assumed": "assumed", "standard": "standard"}
_YES_NO = {"yes": True, "no": False, "true": True, "false": False, "y": True, "n": False}
# Each is asked of by several rules, and findings of thousands would be read by nobody.
ITEM_LIMIT = 1_000
_ID = 100
_NEAREST = 500
# As much of a line as shows that a comment swallowed a value.
_REST = 100
_DATE = re.compile(r"\d{4}-\d{2}-\d{2}\Z")


@dataclass(slots=True)
class Walk:
    """What one document gave: values, lists, places, faults, and a plain copy to be judged.

    `sound` turns False when the plain copy does not obey the schema; the faults of that kind
    are left to the schema validator, which says them better.
    """

    file: str
    text: str
    vocabulary: Vocabulary
    values: dict[str, Shown] = field(default_factory=dict)
    lists: dict[str, tuple[str, ...]] = field(default_factory=dict)
    places: dict[str, Place] = field(default_factory=dict)
    words: dict[str, str] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    sound: bool = True
    level_unit: str | None = None
    standard: bool = False
    nodes_left: int = 50_000
    items_left: int = ITEM_LIMIT

    def document(self, root: yaml.Node, level_unit: str = "") -> Any:
        """Walk a whole document and return its plain copy.

        `level_unit` is what levels are in where the document itself does not say.
        """
        own = scalar_text(root, "levels", "unit") or level_unit
        self.level_unit = own or scalar_text(root, "measured", "levels", "unit") or None
        paper = plain_word(scalar_text(root, "paper"))
        self.standard = self.vocabulary.leaf_words("paper").get(paper) == "standard"
        return self._section(root, self.vocabulary.root, "")

    def fault(self, node: yaml.Node, message: str, path: str) -> None:
        """Note a fault at a node."""
        mark = node.start_mark
        self.faults.append(Fault(self.file, mark.line + 1, mark.column + 1, message, path))

    # -- mappings and lists ------------------------------------------------------------------

    def _section(self, node: yaml.Node, section: Section, path: str) -> Any:
        if not isinstance(node, yaml.MappingNode):
            return self._instead(node, section, path)
        plain: dict[str, Any] = {}
        for key, key_node, value_node in self._pairs(node, path):
            if key.startswith("x-"):
                continue
            where = f"{path}.{key}" if path else key
            mark = key_node.start_mark
            self.places[where] = (mark.line + 1, mark.column + 1, self.file)
            child = section.children.get(key)
            if child is None:
                self._unknown_key(key, key_node, value_node, section, path, node)
                plain[key] = _raw(value_node)
                continue
            self._into(plain, key, value_node, child, where)
        return plain

    def _pairs(self, node: yaml.MappingNode, path: str) -> list[tuple[str, yaml.Node, yaml.Node]]:
        pairs: list[tuple[str, yaml.Node, yaml.Node]] = []
        first: dict[str, int] = {}
        self.nodes_left -= len(node.value)
        for key_node, value_node in node.value:
            if not isinstance(key_node, yaml.ScalarNode):
                self.fault(key_node, "a key must be a plain word", path)
                continue
            key = key_node.value
            if key in first:
                self.fault(key_node, f"'{key}' stands here twice; first in line {first[key]}", path)
                continue
            first[key] = key_node.start_mark.line + 1
            pairs.append((key, key_node, value_node))
        return pairs

    def _unknown_key(
        self,
        key: str,
        key_node: yaml.Node,
        value: yaml.Node,
        section: Section,
        path: str,
        parent: yaml.Node,
    ) -> None:
        if getattr(parent, "flow_style", False) and _empty(value):
            message = (
                f"the text after the comma became a key ('{key}'). Put quotes round the whole text."
            )
        else:
            where = f"in '{path}'" if path else "at the top of a spec"
            # Nobody reads so many, and finding the nearest word takes time.
            near = nearest(key, list(section.children)) if len(self.faults) < _NEAREST else ""
            message = f"there is no '{key}' {where}{near}; a key of your own begins with 'x-'"
        self.fault(key_node, message, path)

    def _instead(self, node: yaml.Node, section: Section, path: str) -> Any:
        """Something that is not a mapping stands where a section belongs."""
        if isinstance(node, yaml.ScalarNode):
            if _empty(node):
                return {}
            word = STAND_INS.get(plain_word(node.value))
            if word and path:
                self.words[path] = word
                return {}
        self.sound = False
        return _raw(node)

    def _into(
        self, plain: dict[str, Any], key: str, node: yaml.Node, child: Node, path: str
    ) -> None:
        if self.nodes_left < 0:
            if self.nodes_left > -1_000_000:
                self.nodes_left = -1_000_001
                self.fault(node, "the file holds more values than any spec needs", path)
            return
        if isinstance(child, Leaf):
            value = self._leaf(node, child, path)
            if value is not _NOTHING:
                plain[key] = value
        elif isinstance(child, Items):
            plain[key] = self._items(node, child, path)
        else:
            plain[key] = self._section(node, child, path)

    def _items(self, node: yaml.Node, items: Items, path: str) -> Any:
        if isinstance(node, yaml.ScalarNode):
            word = plain_word(node.value)
            if word == "none" and not node.style:
                self.lists[path] = ()
                return []
            if word in STAND_INS or _empty(node):
                self.words[path] = STAND_INS.get(word, NOT_SHOWN)
                return []
        if not isinstance(node, yaml.SequenceNode):
            self.sound = False
            return _raw(node)
        ids: list[str] = []
        plain: list[Any] = []
        self.nodes_left -= len(node.value)
        self.items_left -= len(node.value)
        if self.items_left < 0:
            message = f"a spec holds more than {ITEM_LIMIT} things in its lists, which none needs"
            self.fault(node, message, path)
            return plain
        for item_node in node.value:
            identity = self._identity(item_node, items, path, ids)
            where = f"{path}.{identity}"
            mark = item_node.start_mark
            self.places[where] = (mark.line + 1, mark.column + 1, self.file)
            plain.append(self._section(item_node, items.item, where))
        self.lists[path] = tuple(ids)
        return plain

    def _identity(self, node: yaml.Node, items: Items, path: str, ids: list[str]) -> str:
        identity = ""
        if isinstance(node, yaml.MappingNode):
            for key, value in node.value:
                if getattr(key, "value", None) == "id" and isinstance(value, yaml.ScalarNode):
                    identity = value.value.strip()
        if len(identity) > _ID:
            message = f"an id is a short word to call it by, not {len(identity)} characters"
            self.fault(node, message, path)
            identity = identity[:_ID]
        if not identity:
            self.fault(node, f"every {items.noun} in '{path}' needs an 'id' to be called by", path)
            identity = f"({len(ids) + 1})"
        elif identity in ids:
            self.fault(node, f"two of '{path}' have the id '{identity}'; each needs its own", path)
            identity = f"{identity} ({len(ids) + 1})"
        ids.append(identity)
        return identity

    # -- leaves --------------------------------------------------------------------------------

    def _leaf(self, node: yaml.Node, leaf: Leaf, path: str) -> Any:
        if isinstance(node, yaml.MappingNode) and (leaf.kind != "curve" or _has_source(node)):
            return self._with_provenance(node, leaf, path)
        return self._bare(node, leaf, path, {})

    def _with_provenance(self, node: yaml.MappingNode, leaf: Leaf, path: str) -> Any:
        given: dict[str, str] = {}
        inner: yaml.Node | None = None
        for key, key_node, value in self._pairs(node, path):
            key = "one of" if key == "one_of" else key
            if key not in _PROVENANCE:
                near = nearest(key, list(_PROVENANCE))
                self.fault(key_node, f"'{key}' is not one of {', '.join(_PROVENANCE)}{near}", path)
            elif key in _INNER:
                if inner is not None:
                    self.fault(key_node, f"'{key}' stands beside '{given['written']}'", path)
                inner = value
                given["written"] = key
            elif isinstance(value, yaml.ScalarNode):
                given[key] = value.value
            else:
                self.fault(value, f"{key}: one text belongs here", path)
        if "how" in given:
            how = _HOW.get(plain_word(given["how"]))
            if how is None:
                self.fault(
                    node, f"how: '{given['how']}' is not one of {', '.join(_HOW.values())}", path
                )
            given["how"] = how or ""
        if "date" in given and not _is_date(given["date"]):
            self.fault(node, f"date: '{given['date']}' is not a day as year-month-day", path)
            given["date"] = ""
        if inner is None:
            self.fault(node, "a value with its source needs 'value:' (or 'as_written:')", path)
            return _NOTHING
        return self._bare(inner, leaf, path, given)

    def _bare(self, node: yaml.Node, leaf: Leaf, path: str, given: dict[str, str]) -> Any:
        value: Value = None
        written, unit, word = _written(node), "", ""
        plain: Any = _NOTHING
        if given.get("written") == "as_written":
            word = NOT_SHOWN
        elif isinstance(node, yaml.ScalarNode) and not self._is_word(node, leaf):
            word = self._stand_in(node, path)
        if not word:
            try:
                several = given.get("written") == "one of" or _lists_words(node, leaf)
                read = self._choice if several else self._read
                value, unit, plain = read(node, leaf, path)
            except NotationError as error:
                self.fault(node, f"{leaf.title}: {error}", path)
                return _NOTHING
        mark = node.start_mark
        self.values[path] = Shown(
            path,
            leaf.path,
            value,
            written,
            unit,
            word,
            mark.line + 1,
            mark.column + 1,
            leaf.kind,
            given.get("from", ""),
            given.get("how", ""),
            given.get("by", ""),
            given.get("date", ""),
            "marked as assumed in the spec" if given.get("how") == "assumed" else "",
            self.file,
        )
        return plain

    def _is_word(self, node: yaml.ScalarNode, leaf: Leaf) -> bool:
        return bool(leaf.words) and plain_word(node.value) in leaf.words

    def _stand_in(self, node: yaml.ScalarNode, path: str) -> str:
        if not node.style and node.value == "":
            index = node.start_mark.index
            rest = self.text[index : index + _REST].partition("\n")[0].strip()
            # A comment proper has a space behind its mark; #57 was meant as the value.
            if rest.startswith("#") and rest[1:2].strip():
                message = "everything after '#' is a comment, so nothing is left."
                self.fault(node, f"{message} Write '{rest}' in quotes.", path)
            return NOT_SHOWN
        return STAND_INS.get(plain_word(node.value), "")

    def _read(self, node: yaml.Node, leaf: Leaf, path: str) -> tuple[Value, str, Any]:
        kind = leaf.kind
        if kind in ("words", "texts"):
            return self._several(node, leaf, path)
        if kind == "curve":
            return self._curve(node, leaf, path)
        if not isinstance(node, yaml.ScalarNode):
            self.sound = False
            return None, "", _raw(node)
        text = node.value.strip()
        if leaf.numeric:
            return self._number(text, leaf)
        if kind == "yes_no":
            answer = _YES_NO.get(text.lower())
            self.sound = self.sound and answer is not None
            return answer, "", text if answer is None else answer
        if kind == "word":
            word = self._word(text, leaf, path)
            return word, "", word
        if kind == "date" and not _is_date(text):
            raise NotationError(
                f"'{text}' is not a day written as year-month-day, such as 2031-04-20"
            )
        return text, "", text

    def _choice(self, node: yaml.Node, leaf: Leaf, path: str) -> tuple[Value, str, Any]:
        """Several words of which a standard leaves it open which; the first bad one is judged."""
        if leaf.kind not in _OPEN_KINDS or leaf.nature == "record":
            instead = (
                "a number is left open as a range, such as 2 to 4 in"
                if leaf.numeric
                else "this is left open by leaving the key out"
            )
            raise NotationError(f"'one of' is for one word that somebody chooses; {instead}")
        parts = node.value if isinstance(node, yaml.SequenceNode) else []
        self.nodes_left -= len(parts)
        said = [part.value.strip() for part in parts if isinstance(part, yaml.ScalarNode)]
        if not said or len(said) < len(parts):
            raise NotationError("'one of' holds a list of words, such as [rigid_pvc, abs]")
        if not self.standard:
            raise NotationError(
                f"only a standard leaves a choice ('{' or '.join(said)}'): write the one that is "
                "meant, or 'not shown'"
            )
        options = [self._word(text, leaf, path) for text in said] if leaf.words else said
        if len(set(options)) < len(options):
            raise NotationError("the same word stands here twice")
        unknown = (word for word in options if leaf.words and word not in leaf.words.values())
        plain = next(unknown, options[0])
        return options[0] if len(options) == 1 else Choice(tuple(options)), "", plain

    def _number(self, text: str, leaf: Leaf) -> tuple[Value, str, Any]:
        reading = read_quantity(leaf.kind, text, self.level_unit)
        probe, sound = _probe(reading.value, leaf)
        self.sound = self.sound and sound
        return reading.value, reading.unit, int(probe) if leaf.kind == "count" else probe

    def _word(self, text: str, leaf: Leaf, path: str) -> str:
        plain = plain_word(text)
        word = leaf.words.get(plain)
        if word is None:
            options = self.vocabulary.ambiguous.get(plain)
            if options:
                raise NotationError(
                    f"'{text}' has more than one meaning; which is meant: {' or '.join(options)}?"
                )
            self.sound = False
            return text
        if plain_word(word) != plain:
            self.notes.append(f"{path}: '{text}' read as {word}")
        return word

    def _several(self, node: yaml.Node, leaf: Leaf, path: str) -> tuple[Value, str, Any]:
        if isinstance(node, yaml.ScalarNode):
            if plain_word(node.value) == "none" and "none" not in leaf.words:
                return (), "", []
            parts: list[yaml.Node] = [node]
        elif isinstance(node, yaml.SequenceNode):
            parts = node.value
            self.nodes_left -= len(parts)
        else:
            self.sound = False
            return None, "", _raw(node)
        found = []
        for part in parts:
            if not isinstance(part, yaml.ScalarNode):
                self.sound = False
            elif leaf.kind == "words":
                found.append(self._word(part.value.strip(), leaf, path))
            else:
                found.append(part.value.strip())
        if leaf.kind == "words" and len(set(found)) < len(found):
            self.sound = False
        return tuple(found), "", found

    def _curve(self, node: yaml.Node, leaf: Leaf, path: str) -> tuple[Value, str, Any]:
        """A sieve curve: `{No. 200: 72 %, ...}` becomes pairs of opening and share, fine first."""
        if not isinstance(node, yaml.MappingNode):
            raise NotationError("a gradation is written as {No. 200: 72 %, No. 40: 95 %}")
        points: list[tuple[float, float]] = []
        for key, key_node, value_node in self._pairs(node, path):
            try:
                opening = read_quantity("length", key).value
                passing = read_quantity("fraction", str(getattr(value_node, "value", ""))).value
            except NotationError as error:
                self.fault(key_node, f"{leaf.title}: {error}", path)
                continue
            if isinstance(opening, Range) or isinstance(passing, Range):
                message = "a point of a gradation is one share at one sieve, not a range"
                self.fault(key_node, f"{leaf.title}: {message}", path)
                continue
            points.append((opening, passing))
        points.sort()
        value: Any = tuple(points)
        return value, "%", {str(opening): passing for opening, passing in points}


_NOTHING: Any = object()
# What a standard may leave open as a list; numbers have ranges.
_OPEN_KINDS = ("word", "text")


def _has_source(node: yaml.MappingNode) -> bool:
    return any(getattr(key, "value", None) in _INNER for key, _ in node.value)


def _lists_words(node: yaml.Node, leaf: Leaf) -> bool:
    return isinstance(node, yaml.SequenceNode) and leaf.kind == "word"


def _probe(value: float | Range, leaf: Leaf) -> tuple[float, bool]:
    """Return the end of a value that the validator should look at, and whether it obeys."""
    low, high = (value.low, value.high) if isinstance(value, Range) else (value, value)
    if leaf.constant is not None and value != leaf.constant:
        return low, False
    if leaf.maximum is not None and math.isfinite(high) and high > leaf.maximum:
        return high, False
    if leaf.minimum is not None and math.isfinite(low) and low < leaf.minimum:
        return low, False
    floor = leaf.exclusive_minimum
    if floor is not None and math.isfinite(low) and (low < floor or high <= floor):
        return low, False
    return (high if math.isfinite(high) else low), True


def _empty(node: yaml.Node) -> bool:
    return isinstance(node, yaml.ScalarNode) and node.value == "" and not node.style


def _is_date(text: str) -> bool:
    if not _DATE.match(text):
        return False
    try:
        datetime.date.fromisoformat(text)
    except ValueError:
        return False
    return True


def _written(node: yaml.Node, depth: int = 3) -> str:
    """What stands in a file, near enough to know it again."""
    if isinstance(node, yaml.ScalarNode):
        return str(node.value)
    parts = node.value[:50] if depth else []
    if isinstance(node, yaml.SequenceNode):
        return ", ".join(_written(part, depth - 1) for part in parts)
    if isinstance(node, yaml.MappingNode):
        pairs = ((_written(key, depth - 1), _written(value, depth - 1)) for key, value in parts)
        return ", ".join(f"{key}: {value}" for key, value in pairs)
    return ""


def _raw(node: yaml.Node, depth: int = 6) -> Any:
    """A plain copy of what stands where something else belongs, for the validator to name."""
    if isinstance(node, yaml.MappingNode):
        if depth == 0:
            return {}
        return {_written(key): _raw(value, depth - 1) for key, value in node.value}
    if isinstance(node, yaml.SequenceNode):
        return [_raw(part, depth - 1) for part in node.value] if depth else []
    return _written(node)


def scalar_at(root: yaml.Node, *keys: str) -> yaml.ScalarNode | None:
    """Return the one value at the keys, or what `value:` holds there; None for anything else."""
    node: yaml.Node | None = root
    for key in keys:
        node = _child(node, key)
    if isinstance(node, yaml.MappingNode):
        node = _child(node, "value")
    return node if isinstance(node, yaml.ScalarNode) else None


def scalar_text(root: yaml.Node, *keys: str) -> str:
    """Return the text of the one value at the keys, or nothing."""
    node = scalar_at(root, *keys)
    return node.value.strip() if node else ""


def _child(node: yaml.Node | None, key: str) -> yaml.Node | None:
    pairs = node.value if isinstance(node, yaml.MappingNode) else ()
    return next((value for name, value in pairs if getattr(name, "value", None) == key), None)
