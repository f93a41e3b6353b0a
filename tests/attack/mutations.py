"""Specs that are wrong in one place: a sound one, with a leaf, a key or its structure changed."""

from __future__ import annotations

import copy
import functools
import re
from pathlib import Path
from typing import Any

import yaml
from hypothesis import strategies as st

from checker.reading.compose import TextLoader
from checker.reading.vocabulary import vocabulary

# What people and machines write where something else belongs.
ODD = (
    "", " ", "~", "null", "yes", "no", "none", "not shown", "by others", "unknown", "n/a", "VIF",
    "0", "-0", "-1", "1e308", "1e999", "-1e-308", "nan", "inf", "-inf ft", "0 in", "-4 in", "0 %",
    "1000 %", "1/0 in", "0/0", "4' 13\"", "1:0", "0:1", "1:50", "2 to 4 in", "4 to 2 in", "<4 in",
    "4 in min", "4 in max", "0 to 0 in", "1e300 to 1e301 ft", "99999999999999999999 ft", "1 gal",
    "4 in x 4 in", "0x10", "1_000 in", "٤ in", "４ in", "½ in", "4 µm", "1.5H:1V", "0H:1V", "90 deg",
    "-459.67 F", "1e400 F", "2031-02-30", "0000-00-00", "9999-12-31", "2031-04-11", "IRC", "a.b",
    "each", "all", "..", "$", "{item}", "{off_by}", "{0}", "%s", "<b>", "\x1b[2J", "\u202e",
    "\x85", "\u2028", "\ufffe", "\U0001f600", "x" * 3000, "9" * 80, "#57", "[", "{", "&a", "*a", "!",
)  # fmt: skip

Steps = tuple[str | int, ...]

ROOT = Path(__file__).parents[2]


def plain(text: str) -> Any:
    """Return a document with every scalar as text."""
    return yaml.load(text, TextLoader)


def places(tree: Any, path: Steps = ()) -> list[Steps]:
    """Return the path of everything in a tree, itself not among them."""
    if isinstance(tree, dict):
        keys: list[str | int] = list(tree)
    elif isinstance(tree, list):
        keys = list(range(len(tree)))
    else:
        return []
    found: list[Steps] = []
    for key in keys:
        found += [(*path, key), *places(tree[key], (*path, key))]
    return found


def at(tree: Any, path: Steps) -> Any:
    """Return what stands at a path."""
    for key in path:
        tree = tree[key]
    return tree


@functools.cache
def text_of(name: str) -> str:
    """Return the text of a file of this project."""
    return (ROOT / name).read_text(encoding="utf-8")


@functools.cache
def tree_of(name: str) -> Any:
    """Return such a file as plain values; of a rule book the first few rules."""
    tree = plain(text_of(name))
    return tree[:3] if isinstance(tree, list) else tree


_TEXTS = st.one_of(st.sampled_from(ODD), st.text(max_size=20))


def _stand_ins(tree: Any, everywhere: list[Steps]) -> st.SearchStrategy[Any]:
    """What may stand where something else belongs: a text, or any other part of the spec."""
    return st.one_of(
        _TEXTS,
        st.integers(0, len(everywhere) - 1).map(lambda n: copy.deepcopy(at(tree, everywhere[n]))),
        st.just([]),
        st.just({}),
        st.lists(_TEXTS, max_size=3),
        st.dictionaries(_TEXTS, _TEXTS, max_size=3),
        _TEXTS.map(lambda text: {"value": text, "how": "measured"}),
        _TEXTS.map(lambda text: {"as_written": text}),
        st.lists(_TEXTS, max_size=3).map(lambda texts: {"one of": texts}),
    )


@st.composite
def mutated(draw: st.DrawFn, *names: str) -> Any:
    """Return one of some files as plain values, with one to three places changed."""
    tree = copy.deepcopy(tree_of(draw(st.sampled_from(names))))
    for _ in range(draw(st.integers(1, 3))):
        everywhere = places(tree)
        if not everywhere:
            break
        path = everywhere[draw(st.integers(0, len(everywhere) - 1))]
        parent, key = at(tree, path[:-1]), path[-1]
        how = draw(st.sampled_from(["replace", "replace", "remove", "add", "rename"]))
        if how == "remove":
            del parent[key]
        elif how == "replace":
            parent[key] = draw(_stand_ins(tree, everywhere))
        elif isinstance(parent, list):
            parent.append(draw(_stand_ins(tree, everywhere)))
        elif how == "add":
            parent[draw(_TEXTS)] = draw(_stand_ins(tree, everywhere))
        else:
            other = everywhere[draw(st.integers(0, len(everywhere) - 1))][-1]
            parent[str(other)] = parent.pop(key)
    return tree


def _pattern(path: Steps) -> str:
    return ".".join("each" if isinstance(step, int) else step for step in path)


def _plausible(draw: st.DrawFn, path: Steps, text: str) -> str:
    """Return what may well stand at a key: an example, a word, other digits, or nothing known."""
    leaf = vocabulary().leaf(_pattern(path))
    known = [*leaf.examples, *leaf.words.values()] if leaf else []
    figure = draw(st.sampled_from(["0", "0.001", "1", "2.5", "7", "40", "999", "100000"]))
    options = ["not shown", "by others", "not applicable", *map(str, known)]
    options += [re.sub(r"\d+(?:\.\d+)?", figure, text, count=1), f"{text} to {text}"]
    return draw(st.sampled_from(options))


@st.composite
def plausible(draw: st.DrawFn, *names: str) -> Any:
    """Return one of some specs with a few of its values others that may well stand there."""
    tree = copy.deepcopy(tree_of(draw(st.sampled_from(names))))
    for _ in range(draw(st.integers(1, 8))):
        everywhere = [path for path in places(tree) if path[0] not in ("vocabulary", "starts_from")]
        path = everywhere[draw(st.integers(0, len(everywhere) - 1))]
        parent, key = at(tree, path[:-1]), path[-1]
        if not isinstance(parent[key], str):
            if draw(st.booleans()):
                del parent[key]
        elif key != "id":
            parent[key] = _plausible(draw, path, parent[key])
    return tree


def written(tree: Any) -> str:
    """Return a tree as YAML."""
    return yaml.safe_dump(tree, sort_keys=False, allow_unicode=True, width=1000)


@st.composite
def torn(draw: st.DrawFn, *names: str) -> str:
    """Return the text of one of some files with a few characters cut out, put in, or doubled."""
    text = text_of(draw(st.sampled_from(names)))
    for _ in range(draw(st.integers(1, 4))):
        start = draw(st.integers(0, len(text)))
        end = start + draw(st.integers(0, 30))
        middle = draw(st.one_of(_TEXTS, st.just(text[start:end] * 2)))
        text = text[:start] + middle + text[end:]
    return text
