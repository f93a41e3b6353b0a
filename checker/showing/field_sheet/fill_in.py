"""The block to type the readings into: the same numbers as on the sheet, every value left empty."""

from __future__ import annotations

import json

from checker.reading.vocabulary import vocabulary
from checker.reading.yaml_text import CannotSplice, as_scalar
from checker.showing.field_sheet.contents import Sheet
from checker.showing.field_sheet.rows import Row
from checker.showing.field_sheet.words import Words
from checker.showing.lines import clean

Tree = dict[str, "Tree | Row"]


def fill_in(sheet: Sheet, words: Words) -> list[str]:
    """Return the lines of a `measured:` section; what is left empty was not measured."""
    lines = ["measured:", "  by:", "  date:", "  instrument:"]
    return [*lines, *_branch(_tree(sheet), 2, words)]


def _tree(sheet: Sheet) -> Tree:
    tree: Tree = {}
    for row in sheet.rows:
        branch = tree
        *way, last = _steps(row)
        for step in way:
            below = branch.setdefault(step, {})
            assert isinstance(below, dict)
            branch = below
        branch[last] = row
    return tree


def _steps(row: Row) -> tuple[str, ...]:
    """Return the steps of a path; the id of an item, which may have dots in it, as `- id`."""
    if not row.item:
        return tuple(row.path.split("."))
    found = vocabulary().locate(row.path)
    before, _, after = found[0].path.partition(".each.") if found else ("", "", "")
    return (*before.split("."), f"- {row.item}", *after.split("."))


def _branch(tree: Tree, indent: int, words: Words) -> list[str]:
    lines = []
    for key, below in tree.items():
        pad = " " * indent
        if key.startswith("- "):
            lines.append(f"{pad}- id: {_id(key[2:])}")
            lines += _branch(below, indent + 2, words) if isinstance(below, dict) else []
        elif isinstance(below, dict):
            lines += [f"{pad}{key}:", *_branch(below, indent + 2, words)]
        else:
            lines.append(f"{pad}{key}:  # {below.number}{_comment(below, words)}")
    return lines


def _id(text: str) -> str:
    try:
        return as_scalar(text, "", in_flow=False)
    except CannotSplice:
        # What nobody can see is written as YAML and JSON both read it.
        return json.dumps(text)


def _comment(row: Row, words: Words) -> str:
    expected = " ".join(clean(row.expected).split())
    return f", {words('expected')} {expected}" if expected else ""
