"""The register of sources and the published tables as a page."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import groupby
from typing import Any

import yaml

from checker.data import data_dir, load_table
from checker.reading.compose import TextLoader
from checker.showing import markdown

INTRODUCTION = """\
# What rules, program and other tools share

Made from the register and the tables by `python -m checker.showing.pages`.

- `spec.schema.json` is the vocabulary of a spec, from which [the page in specs](../specs/README.md)
  is made; `spec.editor.schema.json` is the same for an editor, which sees a spec as it is written.
- `rule.schema.json` and `source.schema.json` describe a rule and an entry of the register below,
  `review.schema.json` and `effect.schema.json` what `belowgrade review --as json` and
  `belowgrade effect --as json` write.
- `cautions.yaml` holds the safety notes that stand on top of every review.
- `sources.yaml` is the register of published sources: whatever a rule or a table may cite.
- `not_judged.yaml` lists what no rule judges, and why.
- `tables/` holds published tables, each with its source.

How far a source was read is part of the register. *Own text* means that the text itself was read,
*quoted in law* that an adopted law prints it; on either a critical rule may rest. *Quoted
elsewhere* is a copy in some other page, *summary* somebody's account, *memory* no page at all.
"""

_KINDS = (
    "law", "model code", "federal regulation", "federal guidance", "standard", "handbook",
    "bulletin", "article",
)  # fmt: skip
_ABOUT = ("publisher", "edition", "place", "country")
_UNKNOWN = "not shown"
_COMPARATORS = ("at least", "above", "at most", "below")


def register_page() -> str:
    """Return the text of shared/README.md."""
    lines = [INTRODUCTION, "## Sources", ""]
    sources = sorted(_sources().items(), key=lambda pair: (_KINDS.index(pair[1]["kind"]), pair[0]))
    for kind, group in groupby(sources, lambda pair: str(pair[1]["kind"])):
        lines += [f"### {kind.capitalize()}", ""]
        for ref, source in group:
            lines += _source(ref, source)
    lines += ["## Tables", ""]
    for path in sorted((data_dir("shared") / "tables").glob("*.yaml")):
        lines += _table(path.stem, load_table(path.stem))
    return markdown.page(lines)


def _sources() -> dict[str, Any]:
    text = (data_dir("shared") / "sources.yaml").read_text(encoding="utf-8")
    loaded: dict[str, Any] = yaml.load(text, TextLoader)
    return loaded


def _source(ref: str, source: Mapping[str, Any]) -> list[str]:
    about = ", ".join(str(source[key]) for key in _ABOUT if source.get(key, _UNKNOWN) != _UNKNOWN)
    rows = [
        (markdown.text(at), markdown.text(place["says"]), markdown.text(_read(place)))
        for at, place in source["places"].items()
    ]
    head = f"**{markdown.code(ref)}** {markdown.text(source['title'])} ({markdown.text(about)})"
    return [head, "", *markdown.table(("place", "what it says", "how far it was read"), rows)]


def _read(place: Mapping[str, Any]) -> str:
    whole = "" if place.get("whole") == "yes" else ", in part"
    where = f": {place['read']}" if place.get("read") else ""
    return f"{place['seen']}{whole}{where}"


def _table(name: str, table: Mapping[str, Any]) -> list[str]:
    columns: Mapping[str, Any] = table["columns"]
    row_heads = [table["row"]["title"]] if "row" in table else []
    heads = [*row_heads, *(column["title"] for column in columns.values()), "source"]
    rows = [
        [
            *([_picked_by(row)] if row_heads else []),
            *(_cell(row.get(column)) for column in columns),
            _cited([row["source"]] if "source" in row else []),
        ]
        for row in table["rows"]
    ]
    return [
        f"### {markdown.text(table['title'])}",
        "",
        f"{markdown.code(f'tables/{name}.yaml')}, from {_cited(table.get('sources', []))}.",
        "",
        markdown.text(str(table.get("note", ""))),
        "",
        *markdown.table([markdown.text(head) for head in heads], rows),
    ]


def _picked_by(row: Mapping[str, Any]) -> str:
    if "row" in row:
        return markdown.text(str(row["row"]))
    return ", ".join(f"{word} {markdown.text(row[word])}" for word in _COMPARATORS if word in row)


def _cell(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "" if value is None else markdown.text(str(value))


def _cited(sources: Sequence[Mapping[str, str]]) -> str:
    return "; ".join(f"{markdown.code(one['ref'])} {markdown.text(one['at'])}" for one in sources)
