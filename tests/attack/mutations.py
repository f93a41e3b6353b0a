"""Specs that are wrong in one place: a sound one, with a leaf, a key or its structure changed."""

from __future__ import annotations

import copy
from typing import Any

import yaml
from hypothesis import strategies as st

from checker.reading.compose import TextLoader

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

Path = tuple[str | int, ...]


def plain(text: str) -> Any:
    """Return a document with every scalar as text."""
    return yaml.load(text, TextLoader)


def places(tree: Any, path: Path = ()) -> list[Path]:
    """Return the path of everything in a tree, itself not among them."""
    if isinstance(tree, dict):
        keys: list[str | int] = list(tree)
    elif isinstance(tree, list):
        keys = list(range(len(tree)))
    else:
        return []
    found: list[Path] = []
    for key in keys:
        found += [(*path, key), *places(tree[key], (*path, key))]
    return found


def at(tree: Any, path: Path) -> Any:
    """Return what stands at a path."""
    for key in path:
        tree = tree[key]
    return tree


_TEXTS = st.one_of(st.sampled_from(ODD), st.text(max_size=20))


def _stand_ins(tree: Any, everywhere: list[Path]) -> st.SearchStrategy[Any]:
    """What may stand where something else belongs: a text, or any other part of the spec."""
    return st.one_of(
        _TEXTS,
        st.sampled_from(everywhere).map(lambda path: copy.deepcopy(at(tree, path))),
        st.just([]),
        st.just({}),
        st.lists(_TEXTS, max_size=3),
        st.dictionaries(_TEXTS, _TEXTS, max_size=3),
        _TEXTS.map(lambda text: {"value": text, "how": "measured"}),
        _TEXTS.map(lambda text: {"as_written": text}),
        st.lists(_TEXTS, max_size=3).map(lambda texts: {"one of": texts}),
    )


@st.composite
def mutated(draw: st.DrawFn, tree: Any) -> Any:
    """Return a copy of a tree with one to three places changed."""
    tree = copy.deepcopy(tree)
    for _ in range(draw(st.integers(1, 3))):
        everywhere = places(tree)
        if not everywhere:
            break
        path = draw(st.sampled_from(everywhere))
        parent, key = at(tree, path[:-1]), path[-1]
        how = draw(st.sampled_from(["replace", "replace", "remove", "add", "rename"]))
        if how == "remove":
            del parent[key]
        elif how == "replace":
            parent[key] = draw(_stand_ins(tree, everywhere))
        elif isinstance(parent, list):
            parent.append(draw(_stand_ins(tree, everywhere)))
        else:
            name = (
                draw(_TEXTS) if how == "add" else draw(st.sampled_from([p[-1] for p in everywhere]))
            )
            parent[str(name)] = (
                draw(_stand_ins(tree, everywhere)) if how == "add" else parent.pop(key)
            )
    return tree


def written(tree: Any) -> str:
    """Return a tree as YAML."""
    return yaml.safe_dump(tree, sort_keys=False, allow_unicode=True, width=1000)


@st.composite
def torn(draw: st.DrawFn, text: str) -> str:
    """Return a text in which a few characters are cut out, put in, or doubled."""
    for _ in range(draw(st.integers(1, 4))):
        start = draw(st.integers(0, len(text)))
        end = start + draw(st.integers(0, 30))
        middle = draw(st.one_of(_TEXTS, st.just(text[start:end] * 2)))
        text = text[:start] + middle + text[end:]
    return text
