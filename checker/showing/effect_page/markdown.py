"""The effect of an edit in Markdown, as a comment under the pull request that makes it.

What comes from a spec is text there: it names nobody, links to nothing and makes no heading.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from checker.showing import markdown
from checker.showing.effect_page.contents import Alike, Contents, Section
from checker.showing.effect_page.edited import Edited
from checker.showing.effect_page.names import listed
from checker.showing.effect_page.rows import ROW_WAYS, Row, RuleRow, cells_of, label_of
from checker.showing.markdown import code, page, table

# A comment on a code host holds 65,536 characters.
MOST = 60_000
# How many lots are told in full, fewer and fewer until the page is short enough.
_IN_FULL = (20, 10, 5, 2, 1)
_EDITS, _ROWS = 40, 12
# What a code host would make a mention, a link or a reference of.
_CATCHES = re.compile(r"(?<=@)|(?<=:)(?=//)|(?<=www)(?=\.)|(?<=#)(?=\d)|(?<=GH)(?=-\d)")
# What would begin a heading, a list or a rule where a line begins with it.
_BEGINS = re.compile(r"^(\d*)([#+=~.)-])")


def as_markdown(contents: Contents) -> str:
    """Return the page, with as many lots in full as a comment has room for."""
    for most in _IN_FULL:
        text = page(_page(contents, most))
        if len(text) <= MOST:
            return text
    return page([*_head(contents), "", "This page is too long for a comment.", "", _last(contents)])


def text(words: str) -> str:
    """Return words that read as exactly these words, and call nobody."""
    return _CATCHES.sub("<!-- -->", markdown.text(words))


def _page(contents: Contents, most: int) -> list[str]:
    return [
        *_head(contents),
        *(line for edited in contents.edited[:most] for line in _edited(edited)),
        *_more("Edited too", [one.file for one in contents.edited[most:]]),
        *(line for section in contents.sections for line in _section(section, most)),
        *(line for title, told in contents.alone for line in _bullets(title, told)),
        text(contents.same),
        "",
        _last(contents),
    ]


def _head(contents: Contents) -> list[str]:
    sides = "; ".join(f"{label} {text(words)}" for label, words in contents.sides)
    return ["## What this edit does", "", f"**{text(contents.summary)}**", "", sides, ""]


def _last(contents: Contents) -> str:
    return f"**{contents.closing}**"


def _edited(edited: Edited) -> list[str]:
    reaches = f", {edited.reaches}" if edited.reaches else ""
    rows = [
        [
            row.line, f"{text(row.title)} ({code(row.path)})", text(row.was), text(row.now),
            text(row.reaches or "all of them" if reaches else ""),
        ]
        for row in edited.rows[:_EDITS]
    ]  # fmt: skip
    heads = ["where", "value", "before", "after", "reaches"]
    width = 5 if reaches else 4
    return [
        f"### Edited: {code(edited.file)}{text(reaches)}",
        "",
        *(table(heads[:width], [row[:width] for row in rows]) if rows else []),
        *_more("More values", [one.path for one in edited.rows[_EDITS:]]),
        *(line for rule in edited.rules for line in _rule(rule)),
        "",
    ]


def _rule(rule: RuleRow) -> list[str]:
    return [
        f"- rule {code(rule.rule)}, {text(rule.title)}: {rule.how}",
        *(f"  - {one.label}, {text(side)}" for one in rule.texts for side in one.sides),
    ]


def _section(section: Section, most: int) -> list[str]:
    return [
        f"### {section.title}: {section.lots}",
        "",
        *(line for alike in section.alike[:most] for line in _alike(alike)),
        *_more("More", section.rest(most)),
    ]


def _alike(alike: Alike) -> list[str]:
    rows = []
    for way in ROW_WAYS:
        found = [row for row in alike.rows if row.way == way]
        rows += [_row(row) for row in found[:_ROWS]]
        left = [row.rule for row in found[_ROWS:]]
        rows += [[f"**{way}**: {len(left)} more: {text(listed(left))}", "", ""]] if left else []
        rows += [
            [f"**{way}** as in {one.number}: {text(one.rules)}", "", ""]
            for one in alike.again
            if one.way == way
        ]
    others = f"{len(alike.others)} more alike: {text(listed(alike.others))}"
    return [
        f"**{alike.number}. {text(alike.name)}** {text(alike.by)}".rstrip(),
        "",
        *(table(["finding", "before", "after"], rows) if rows else []),
        *([others, ""] if alike.others else []),
    ]


def _row(row: Row) -> list[str]:
    cells = cells_of(row)
    head = f"**{label_of(row)}** {text(row.title)} ({code(row.rule)})"
    notes = [row.because, row.safety and f"Safety: {row.safety}"]
    was, now = row.outcome
    return [
        "<br>".join([head, *map(text, filter(None, (*cells.asked, *notes)))]),
        "<br>".join(filter(None, [text(was), *map(text, cells.was)])),
        "<br>".join(filter(None, [now and f"**{text(now)}**", *map(text, cells.now)])),
    ]


def _bullets(title: str, told: Sequence[str]) -> list[str]:
    lines = (_BEGINS.sub(r"\1\\\2", text(one)) for one in told)
    return [f"### {title}: {len(told)}", "", *(f"- {one}" for one in lines), ""]


def _more(label: str, names: Sequence[str]) -> list[str]:
    return [f"{label}: {len(names)}: {text(listed(names))}", ""] if names else []
