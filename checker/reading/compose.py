"""YAML text to nodes that know their place. Nothing here decides what a text means."""

from __future__ import annotations

import re
import stat
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO

import yaml

from checker.reading.faults import Fault, Unreadable

SIZE_LIMIT = 2_000_000
DEPTH_LIMIT = 40
DOCUMENT_LIMIT = 200
ALIAS_LIMIT = 1_000
NODE_LIMIT = 100_000

_PIECE = 1_000_000
_LINE = 400

_BaseLoader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


class TextLoader(_BaseLoader):  # type: ignore[misc,valid-type]
    """A loader that guesses nothing: every scalar stays the text that was written."""

    # Called for every node, and there is nothing to resolve.
    def resolve(self, kind: type[yaml.Node], value: str | None, implicit: object) -> str:
        """Return the one tag of a kind of node."""
        return _TAGS[kind]

    def descend_resolver(self, parent: object, index: object) -> None:
        """Do nothing on the way down."""

    def ascend_resolver(self) -> None:
        """Do nothing on the way up."""


_TAGS = {
    yaml.ScalarNode: "tag:yaml.org,2002:str",
    yaml.SequenceNode: "tag:yaml.org,2002:seq",
    yaml.MappingNode: "tag:yaml.org,2002:map",
}


def read_text(path: Path | None, name: str = "", limit: int = SIZE_LIMIT) -> str:
    """Return the text of a file, or of standard input for None; `name` is what faults call it.

    No more than `limit` bytes are read. Raises Unreadable.
    """
    name = name or (str(path) if path else "standard input")
    try:
        data = _read_stdin(limit + 1) if path is None else _read_bytes(path, limit + 1)
    except OSError as error:
        raise Unreadable(
            [Fault(name, 0, 0, f"cannot be opened: {error.strerror or error}")]
        ) from None
    if len(data) > limit:
        raise Unreadable([Fault(name, 0, 0, f"is larger than {limit // 1_000_000} MB")])
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        column = error.start - (data.rfind(b"\n", 0, error.start) + 1) + 1
        message = "is not UTF-8 text here: save the file as UTF-8 and try again"
        raise Unreadable([Fault(name, line, column, message)]) from None


def _read_bytes(path: Path, most: int) -> bytes:
    # A FIFO or a device would block or never end: only a regular file is opened.
    if not stat.S_ISREG(path.stat().st_mode):
        raise OSError("it is not a regular file")
    with path.open("rb") as stream:
        return _read_stream(stream, most)


def _read_stdin(most: int) -> bytes:
    if sys.stdin is None:
        raise OSError("it is closed")
    return _read_stream(sys.stdin.buffer, most)


def _read_stream(stream: BinaryIO, most: int) -> bytes:
    """Read in pieces, because room for all that is asked for would be made at once."""
    pieces = []
    while most > 0 and (piece := stream.read(min(most, _PIECE))):
        pieces.append(piece)
        most -= len(piece)
    return b"".join(pieces)


def compose(text: str, name: str) -> list[yaml.Node]:
    """Return one node per YAML document. Raises Unreadable with a place and a plain sentence."""
    try:
        return list(_documents(text, name))
    except yaml.YAMLError as error:
        raise Unreadable([_explain(error, text, name)]) from None
    except RecursionError:
        raise Unreadable([Fault(name, 0, 0, "is nested too deep to be a spec")]) from None


def _documents(text: str, name: str) -> Iterator[yaml.Node]:
    _refuse_hostile(text, name)
    aliased = "&" in text and "*" in text
    loader = TextLoader(text)
    try:
        count = 0
        while loader.check_node():
            count += 1
            if count > DOCUMENT_LIMIT:
                message = f"holds more than {DOCUMENT_LIMIT} documents: make several files of it"
                raise Unreadable([Fault(name, 0, 0, message)])
            node = loader.get_node()
            if aliased:
                _refuse_growth(node, name)
            yield node
    finally:
        loader.dispose()


_TOO_DEEP = re.compile(r"^(?: {200}|[ \t]*(?:[-?][ \t]+){40})", re.MULTILINE)


def _refuse_hostile(text: str, name: str) -> None:
    """Refuse nesting that would exhaust the stack of the C parser before it reports anything."""
    depth = 0
    for character in re.findall(r"[\[\]{}]", text):
        depth += 1 if character in "[{" else -1
        if depth > 10 * DEPTH_LIMIT:
            raise Unreadable([Fault(name, 0, 0, "is nested too deep to be a spec")])
    if match := _TOO_DEEP.search(text):
        line = text.count("\n", 0, match.start()) + 1
        raise Unreadable([Fault(name, line, 1, "is nested too deep to be a spec")])
    if text.count("*") > ALIAS_LIMIT and len(re.findall(r"(?:^|[\s\[{,])\*\w", text)) > ALIAS_LIMIT:
        raise Unreadable([Fault(name, 0, 0, "holds too many aliases: write the values out")])


def _refuse_growth(root: yaml.Node, name: str) -> None:
    """Refuse aliases that lead round in a ring, nest too deep, or stand for more than they say."""
    size: dict[int, int] = {}
    depth: dict[int, int] = {}
    entered: set[int] = set()
    # Each node twice: on the way down, and again once all that it holds is known.
    left = [(root, False)]
    while left:
        node, done = left.pop()
        key, parts = id(node), _parts(node)
        if done:
            size[key] = 1 + sum(size[id(part)] for part in parts)
            depth[key] = 1 + max((depth[id(part)] for part in parts), default=0)
            if size[key] > NODE_LIMIT or depth[key] > DEPTH_LIMIT:
                raise Unreadable([_at(node, name, "holds too many aliases: write the values out")])
        elif key not in size:
            if key in entered:
                raise Unreadable([_at(node, name, "an alias leads back to where it stands")])
            entered.add(key)
            left.append((node, True))
            left += [(part, False) for part in parts]


def _parts(node: yaml.Node) -> list[yaml.Node]:
    if isinstance(node, yaml.MappingNode):
        return [part for pair in node.value for part in pair]
    return node.value if isinstance(node, yaml.SequenceNode) else []


def _at(node: yaml.Node, name: str, message: str) -> Fault:
    return Fault(name, node.start_mark.line + 1, node.start_mark.column + 1, message)


def _explain(error: yaml.YAMLError, text: str, name: str) -> Fault:
    mark = getattr(error, "problem_mark", None)
    if "quoted scalar" in str(getattr(error, "context", "")):
        mark = getattr(error, "context_mark", mark)
    if mark is None:
        position = getattr(error, "position", None)
        line = text.count("\n", 0, position) + 1 if isinstance(position, int) else 0
        return Fault(
            name, line, 1 if line else 0, f"is not YAML: {getattr(error, 'reason', error)}"
        )
    lines = text.split("\n")
    # Nobody needs more of a line to see what is wrong in it.
    written = lines[mark.line][:_LINE] if mark.line < len(lines) else ""
    message = _yaml_trap(written, str(getattr(error, "problem", "") or ""))
    return Fault(name, mark.line + 1, mark.column + 1, message)


_QUOTES = "Put quotes round the whole value, as in '{}'."


def _yaml_trap(line: str, problem: str) -> str:
    """Say what a YAML scanner's complaint means for somebody who wrote a spec."""
    value = re.sub(r"^\s*(?:- )?[^:#]*:\s*", "", line).strip().rstrip("}").strip()
    if value.startswith(">"):
        return f"a text that starts with '>' is read as a block mark. {_QUOTES.format(value)}"
    if value[:1] in {"@", "`", "%"}:
        return f"a text may not start with '{value[0]}' in YAML. {_QUOTES.format(value)}"
    if value[:1] in {"*", "&", "!"}:
        what = f"a text that starts with '{value[0]}' has a meaning of its own in YAML."
        return f"{what} {_QUOTES.format(value)}"
    if value.startswith('"'):
        return (
            "the quotes do not pair up. An inch mark inside double quotes ends them: "
            "put single quotes round the value, as in '4\"'."
        )
    if "mapping values are not allowed" in problem:
        return f"a second ':' stands in this value. {_QUOTES.format(value)}"
    if "\t" in line:
        return "a tab stands here: YAML wants spaces for indenting."
    if "expected ',' or" in problem or "did not find expected" in problem:
        what = f"is not YAML here ({problem})"
        return f"{what}: look for a missing comma, brace, quote or indent just before."
    return f"is not YAML here: {problem or 'the text cannot be understood'}."
