"""Edits of a spec's text by path: one value changes, every comment and all layout stays.

Each edit is read back before it is handed out, and refused where anything else would change.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

import yaml

from checker.reading.compose import compose
from checker.reading.faults import Unreadable
from checker.reading.vocabulary import Leaf, vocabulary
from checker.reading.yaml_text import CannotSplice, as_flow, as_scalar, plain

Written = str | Mapping[str, str]

_BYTE_ORDER_MARK = "\ufeff"


class Step(NamedTuple):
    """One step of a path: a key, or the id of an item."""

    text: str
    is_item: bool


class Found(NamedTuple):
    """How far a path leads: to `node`, with `left` still to go.

    `numbers` are the pairs and items on the way, `column` is where the keys beside it begin, and
    `in_flow` says whether it stands inside braces or brackets.
    """

    node: yaml.Node
    numbers: tuple[int, ...]
    left: tuple[str, ...]
    column: int
    in_flow: bool


def splice(text: str, path: str, new_text: str, document: int = 0) -> str:
    """Return the text with one value replaced; `path` goes by ids, as `drain.corners.NE.invert`.

    The value keeps its quotes or gets some where it needs them, and keeps the note of where it
    came from. `document` counts the documents that are not blank. Raises CannotSplice where there
    is no such value or where more than it would change, Unreadable for what is not YAML.
    """
    mark, text = _without_mark(text)
    documents = _documents(text, document)
    found = _value(_find(documents[document], path), path)
    node: Any = found.node
    start, end = node.start_mark.index, node.end_mark.index
    if node.style in ("|", ">") or text[start:end].startswith(("&", "!")):
        raise CannotSplice(f"'{path}' is written as a block or with a tag: change it by hand")
    written = as_scalar(new_text, node.style or "", in_flow=found.in_flow)
    # Nothing stands there yet: the place is right behind the colon.
    gap = " " if start == end and text[start - 1 : start] == ":" else ""
    edited = text[:start] + gap + written + text[end:]
    return mark + _proven(edited, documents, document, found.numbers, lambda _: new_text)


def insert(text: str, section_path: str, key: str, value: Written, document: int = 0) -> str:
    """Return the text with `key` added at the end of a section, indented as the section is.

    Sections and items on the way that are not there yet are added too. `value` is a text, or a
    mapping that says where the value came from. Raises CannotSplice where the key is there
    already, where the vocabulary has no such key or where more would change, Unreadable for what
    is not YAML.
    """
    mark, text = _without_mark(text)
    documents = _documents(text, document)
    path = f"{section_path}.{key}" if section_path else key
    found = _find(documents[document], path)
    if not found.left:
        raise CannotSplice(f"'{path}' is there already")
    steps = _steps(path)[-len(found.left) :]
    edited = _with(text, found, steps, value)
    grown = _plain_of(_grown(steps, value))
    return mark + _proven(
        edited, documents, document, found.numbers, lambda old: _joined(old, grown)
    )


# -- finding ---------------------------------------------------------------------------------------


def _without_mark(text: str) -> tuple[str, str]:
    bare = text.removeprefix(_BYTE_ORDER_MARK)
    return text[: len(text) - len(bare)], bare


def _documents(text: str, wanted: int) -> list[yaml.Node]:
    nodes = [node for node in compose(text, "the text") if plain(node) != ""]
    if not 0 <= wanted < len(nodes):
        raise CannotSplice(f"there is no document number {wanted + 1}")
    met: set[int] = set()
    waiting = [*nodes]
    while waiting:
        node = waiting.pop()
        if id(node) in met:
            raise CannotSplice("the file says things twice with '*': change it by hand")
        met.add(id(node))
        if isinstance(node, yaml.MappingNode):
            waiting += [part for pair in node.value for part in pair]
        elif isinstance(node, yaml.SequenceNode):
            waiting += node.value
    return nodes


def _find(root: yaml.Node, path: str) -> Found:
    found = Found(root, (), tuple(path.split(".")), root.start_mark.column, False)
    while found.left and (step := _next(found.node, found.left)):
        number, child, used = step
        inside = bool(getattr(found.node, "flow_style", False))
        found = Found(
            child,
            (*found.numbers, number),
            found.left[used:],
            found.node.start_mark.column,
            found.in_flow or inside,
        )
    return found


def _next(node: yaml.Node, left: tuple[str, ...]) -> tuple[int, yaml.Node, int] | None:
    """Return the number of the pair or item that a path goes through, it, and the steps used."""
    if isinstance(node, yaml.MappingNode):
        for number, (key, child) in enumerate(node.value):
            if key.value == left[0]:
                return number, child, 1
    elif isinstance(node, yaml.SequenceNode):
        # An id may have dots in it, so it can be more than one step.
        for used in range(len(left), 0, -1):
            for number, item in enumerate(node.value):
                if _identity(item) == ".".join(left[:used]):
                    return number, item, used
    return None


def _identity(item: yaml.Node) -> str | None:
    found = _next(item, ("id",))
    return found[1].value.strip() if found and isinstance(found[1], yaml.ScalarNode) else None


def _value(found: Found, path: str) -> Found:
    """Go on to the text itself where the value stands beside where it came from."""
    if found.left:
        raise CannotSplice(f"there is no '{path}'")
    if isinstance(found.node, yaml.MappingNode) and (step := _next(found.node, ("value",))):
        in_flow = found.in_flow or bool(found.node.flow_style)
        found = found._replace(node=step[1], numbers=(*found.numbers, step[0]), in_flow=in_flow)
    if not isinstance(found.node, yaml.ScalarNode):
        raise CannotSplice(f"'{path}' is not one value: change it by hand")
    return found


def _steps(path: str) -> tuple[Step, ...]:
    """Return the steps of a path that leads to a value, ids told from keys."""
    located = vocabulary().locate(path)
    if located is None or not isinstance(located[0], Leaf):
        raise CannotSplice(f"'{path}' is no value of a spec")
    before, each, after = located[0].path.partition(".each.")
    steps = [Step(key, False) for key in before.split(".")]
    if each:
        item = path[len(before) + 1 : len(path) - len(after) - 1]
        steps += [Step(item, True), *(Step(key, False) for key in after.split("."))]
    return tuple(steps)


# -- writing ---------------------------------------------------------------------------------------


def _grown(steps: tuple[Step, ...], value: Written) -> Any:
    """Return what is added: a mapping of one key, or a list of one item."""
    if not steps:
        return value
    inner = _grown(steps[1:], value)
    return [{"id": steps[0].text, **inner}] if steps[0].is_item else {steps[0].text: inner}


def _block(steps: tuple[Step, ...], value: Written, indent: int) -> list[str]:
    pad, head, rest = " " * indent, steps[0], steps[1:]
    if head.is_item:
        return [f"{pad}- {as_flow(_grown(steps, value)[0])}"]
    if rest:
        return [f"{pad}{head.text}:", *_block(rest, value, indent + 2)]
    written = as_scalar(value, "", in_flow=False) if isinstance(value, str) else as_flow(value)
    return [f"{pad}{head.text}: {written}"]


def _with(text: str, found: Found, steps: tuple[Step, ...], value: Written) -> str:
    """Return the text with the steps added to what was found."""
    node = found.node
    if isinstance(node, yaml.CollectionNode) and node.flow_style:
        at = _end(node.value[-1]) if node.value else node.start_mark.index + 1
        inside = as_flow(_grown(steps, value))[1:-1]
        return text[:at] + (", " if node.value else "") + inside + text[at:]
    indent = node.start_mark.column
    if isinstance(node, yaml.ScalarNode):
        if node.value or node.style or found.in_flow:
            raise CannotSplice(f"'{node.value}' stands in place of '{steps[0].text}'")
        indent = found.column + 2
    lines = _block(steps, value, indent)
    newline = "\r\n" if "\r\n" in text else "\n"
    if not found.numbers and len(lines) > 1 and newline * 2 in text:
        lines.insert(0, "")
    return _after_line(text, _end(node), newline, newline.join(lines))


def _after_line(text: str, at: int, newline: str, lines: str) -> str:
    # Behind a block of text the end is the beginning of the next line already.
    end = at if text[at - 1 : at] == "\n" else text.find("\n", at) + 1
    if end == 0:
        return text + newline + lines
    return text[:end] + lines + newline + text[end:]


def _end(node: Any) -> int:
    """Return where a node's own text ends; a block's own end mark stands at whatever follows."""
    if isinstance(node, tuple):
        return _end(node[1])
    if isinstance(node, yaml.CollectionNode) and not node.flow_style and node.value:
        return _end(node.value[-1])
    return int(node.end_mark.index)


# -- proving ---------------------------------------------------------------------------------------


def _plain_of(data: Any) -> Any:
    if isinstance(data, str):
        return data
    if isinstance(data, list):
        return "[", tuple(map(_plain_of, data))
    return "{", tuple((key, _plain_of(part)) for key, part in data.items())


def _joined(old: Any, grown: Any) -> Any:
    return grown if isinstance(old, str) else (old[0], old[1] + grown[1])


def _changed(plain: Any, numbers: tuple[int, ...], change: Callable[[Any], Any]) -> Any:
    if not numbers:
        return change(plain)
    kind, parts = plain
    part = parts[numbers[0]]
    if kind == "{":
        part = (part[0], _changed(part[1], numbers[1:], change))
    else:
        part = _changed(part, numbers[1:], change)
    return kind, (*parts[: numbers[0]], part, *parts[numbers[0] + 1 :])


def _proven(
    edited: str,
    before: list[yaml.Node],
    document: int,
    numbers: tuple[int, ...],
    change: Callable[[Any], Any],
) -> str:
    """Return the edited text once it reads back as nothing but what was to change."""
    wanted = [plain(node) for node in before]
    wanted[document] = _changed(wanted[document], numbers, change)
    try:
        after = [plain(node) for node in _documents(edited, document)]
    except (Unreadable, CannotSplice):
        after = []
    if after != wanted:
        raise CannotSplice("more than this value would change: change it by hand")
    return edited
