"""The pages that are made from the rules, the schema and the register, and never written by hand.

`python -m checker.showing.pages` writes them into a checkout; with `--check` it writes nothing and
exits with 1 when one of them is not what would be written.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Callable
from pathlib import Path

import yaml

from checker.data import PACKAGE, data_dir, load_json
from checker.judging.rulebook import Rule, load_rulebook
from checker.reading.compose import TextLoader
from checker.reading.editor_schema import editor_schema
from checker.showing import markdown
from checker.showing.console import write_file
from checker.showing.readme_page import readme_page
from checker.showing.register_page import register_page
from checker.showing.rule_page import by_section, examples, rule_rows
from checker.showing.vocabulary_page import vocabulary_page

INTRODUCTION = """\
# The rule book

Made from the rules in this folder by `python -m checker.showing.pages`; `belowgrade why ID` shows
the same page of one rule.

A title is the fault that a rule looks for. *Critical* means that someone can be hurt, or that water
gets in where it cannot be reached again; *major* a likely leak, early failure or dear rework;
*minor* durability, record, or something easily put right. The stage is the last at which the fault
is cheap. Common practice is what careful builders do though no code is cited for it.
"""


def rules_page() -> str:
    """Return the text of rules/README.md."""
    sections = by_section(load_rulebook().rules)
    lines = [INTRODUCTION]
    for section, rules in sections:
        lines += [f"## {section}", ""]
        lines += markdown.table(
            ("rule", "severity", "stage", "trade", "fault"), [_summary(rule) for rule in rules]
        )
        for rule in rules:
            lines += _rule(rule)
    return markdown.page([*lines, *_not_judged()])


def editor_schema_page() -> str:
    """Return the text of shared/spec.editor.schema.json."""
    schema = editor_schema(load_json("spec.schema.json"))
    return json.dumps(schema, indent=2, ensure_ascii=False) + "\n"


PAGES: dict[str, Callable[[], str]] = {
    "README.md": readme_page,
    "rules/README.md": rules_page,
    "shared/README.md": register_page,
    "shared/spec.editor.schema.json": editor_schema_page,
    "specs/README.md": vocabulary_page,
}


def stale(root: Path) -> list[str]:
    """Return the pages under `root` that are missing or are not what would be written."""
    return [
        name
        for name, page in PAGES.items()
        if not (root / name).is_file() or (root / name).read_text(encoding="utf-8") != page()
    ]


def write_pages(root: Path) -> None:
    """Write every page under `root`. Raises OSError when one cannot be written."""
    for name, page in PAGES.items():
        (root / name).parent.mkdir(exist_ok=True)
        write_file(root / name, page())


def main(arguments: list[str] | None = None) -> int:
    """Write or check the pages of the checkout; 0 good, 1 stale, 2 when this is no checkout."""
    parser = argparse.ArgumentParser(prog="python -m checker.showing.pages", description=__doc__)
    parser.add_argument("--check", action="store_true", help="write nothing, say what is stale")
    check: bool = parser.parse_args(arguments).check
    root = PACKAGE.parent
    if not (root / "pyproject.toml").is_file():
        sys.stderr.write(f"{root} is no checkout: there are no pages to write\n")
        return 2
    if not check:
        write_pages(root)
        return 0
    found = stale(root)
    for name in found:
        sys.stderr.write(f"{name} is stale: run python -m checker.showing.pages\n")
    return 1 if found else 0


def _not_judged() -> list[str]:
    text = (data_dir("shared") / "not_judged.yaml").read_text(encoding="utf-8")
    rows = [
        (markdown.text(one["what"]), markdown.text(one["why"].strip()))
        for one in yaml.load(text, TextLoader)
    ]
    return ["## Not judged", "", *markdown.table(("what", "why"), rows)]


def _summary(rule: Rule) -> tuple[str, ...]:
    return (
        f"[{rule.id}](#{_anchor(rule)})",
        rule.severity,
        rule.stage.replace("_", " "),
        rule.trade,
        markdown.text(rule.title),
    )


def _anchor(rule: Rule) -> str:
    return rule.id.replace(".", "")


def _rule(rule: Rule) -> list[str]:
    lines = [f"### {rule.id}", "", f"**{markdown.text(rule.title)}**", ""]
    for label, text in rule_rows(rule):
        lines.append(f"- {label}: {markdown.text(text)}")
    for title, texts in examples(rule):
        lines.append(f"- {title.lower()}: {markdown.text('; '.join(texts))}")
    return [*lines, ""]


if __name__ == "__main__":
    sys.exit(main())
