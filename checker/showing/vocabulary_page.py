"""The vocabulary as a page: every key of a spec, from the schema that judges it."""

from __future__ import annotations

from collections.abc import Iterator

from checker.reading.kinds import KINDS
from checker.reading.vocabulary import Items, Leaf, Section, vocabulary
from checker.showing import markdown

INTRODUCTION = """\
# The vocabulary of a spec

Made from `shared/spec.schema.json` by `python -m checker.showing.pages`.

A spec is a YAML file that says what is meant to be built, or was built, below grade. It begins with
`vocabulary: 1`. Every key it may hold stands below; a key that you need for yourself begins with
`x-` and is left alone.

- A quantity carries its unit: `4 in`, `2'-6"`, `100 mm`, `1/8 in/ft`, `2 %`. Levels are plain
  numbers, because `levels.unit` states their unit once.
- A range is a value: `2 to 4 in`, `40 mil min`.
- Four words may stand in place of any value: `not shown`, `by others`, `unknown`,
  `not applicable`. The first three become questions where a rule needs the value; so does a key
  that is left out.
- Where a value came from goes with it:
  `{value: 4 in, from: SUB-03 p2, how: measured, by: R. Halloway, date: 2031-04-20}`. `how` is one
  of `on paper`, `measured`, `assumed` and `standard`.
- A standard may leave a word open: `material: {one of: [rigid_pvc, abs]}`.
- What a paper says and nobody can read for certain is kept as it stands: `{as_written: "4"}`.
- Things that are each asked the same questions are lists, and each has an `id`:
  `corners: [{id: NE, invert: 91.16}, {id: NW, invert: 90.98}]`. A rule then names
  `drain.corners.NE.invert`. `none` is an answer; a list that is left out is not shown.
- Words are read without regard to capitals, spaces, hyphens and underscores.

What somebody decides is a *choice*, what is so whether or not anybody decides it is a *fact*, and
what was written down about it is a *record*. A fact that protects people counts once somebody has
measured it, with a name and a date.
"""

_WORDY = {
    "text": "text",
    "date": "day, as 2031-04-11",
    "yes_no": "yes or no",
    "texts": "texts",
    "curve": "sieves and what passes them",
}
_WITHOUT_UNIT = {"number", "ratio", "count", "year"}
_HEADS = ("key", "how it is read", "nature", "what it means", "example")


def vocabulary_page() -> str:
    """Return the text of specs/README.md."""
    root = vocabulary().root
    lines = [INTRODUCTION, *_notations(), "## Head of a spec", ""]
    lines += markdown.table(_HEADS, _rows(root, ""))
    for key, node in root.children.items():
        if not isinstance(node, Leaf):
            lines += [f"## {key}", ""]
            lines += _node(node)
    return markdown.page(lines)


def _notations() -> list[str]:
    rows = [
        (kind.noun.removeprefix("an ").removeprefix("a "), markdown.text(kind.would_do))
        for name, kind in KINDS.items()
        if name not in _WITHOUT_UNIT
    ]
    return ["## Units", "", *markdown.table(("what", "written in"), rows)]


def _node(node: Section | Items) -> list[str]:
    """Return the table of a section or list, then those of the lists inside it."""
    if isinstance(node, Items):
        none = ", `none` when there is none" if node.none_is_an_answer else ""
        about = f"A list, one entry for each {markdown.text(node.noun)}{none}."
        section = node.item
    else:
        about = markdown.text(node.description)
        section = node
    lines = [about, "", *markdown.table(_HEADS, _rows(section, ""))]
    for items in _lists(section):
        lines += [f"### {items.path.replace('.each', '')}", "", *_node(items)]
    return lines


def _rows(section: Section, prefix: str) -> Iterator[tuple[str, ...]]:
    """Yield a row for each key; at the top of a spec only for what is no section or list."""
    for key, child in section.children.items():
        name = f"{prefix}{key}"
        if isinstance(child, Leaf):
            yield _row(name, child)
        elif isinstance(child, Section) and (prefix or section.path):
            yield from _rows(child, f"{name}.")
        elif isinstance(child, Items) and (prefix or section.path):
            yield (markdown.code(name), "list", "", f"{markdown.text(child.title)}: see below", "")


def _lists(section: Section) -> Iterator[Items]:
    for child in section.children.values():
        if isinstance(child, Items):
            yield child
        elif isinstance(child, Section):
            yield from _lists(child)


def _row(name: str, leaf: Leaf) -> tuple[str, ...]:
    meaning = markdown.text(leaf.description or leaf.title)
    if leaf.if_absent is not None:
        meaning += f" Left out, it reads as: {markdown.text(leaf.if_absent[1])}."
    shown = ", ".join(markdown.code(example) for example in leaf.examples)
    return (markdown.code(name), _read(leaf), leaf.nature, meaning, shown)


def _read(leaf: Leaf) -> str:
    words = ", ".join(dict.fromkeys(markdown.code(word) for word in leaf.words.values()))
    if leaf.kind == "word":
        return f"one of {words}"
    if leaf.kind == "words":
        return f"any of {words}"
    noun = KINDS[leaf.kind].noun if leaf.kind in KINDS else _WORDY.get(leaf.kind, leaf.kind)
    tolerance = f", to {markdown.text(leaf.tolerance_text)}" if leaf.tolerance_text else ""
    return noun.removeprefix("an ").removeprefix("a ") + tolerance
