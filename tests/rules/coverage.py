"""How often each rule said what, of its own examples and of the specs of the project.

`python -m tests.rules.coverage` prints it as a table.
"""

from __future__ import annotations

import functools
import sys
from collections import Counter
from pathlib import Path

from checker import load_spec, review
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, NOT_SHOWN
from tests.rules.asking import BOOK, asked, examples, outcome

ROOT = Path(__file__).parents[2]
OUTCOMES = (MET, NOT_MET, NOT_SHOWN, DOES_NOT_APPLY)
# Folders whose files are specs; what lies below them may be something else.
FOLDERS = ("specs", "specs/standards", "tests/causes")


def spec_files() -> list[Path]:
    """Return the files that hold the specs of the project."""
    found = [file for folder in FOLDERS for file in (ROOT / folder).glob("*.yaml")]
    return sorted(file for file in found if file.name != "belowgrade.yaml")


@functools.cache
def of_examples() -> dict[str, Counter[str]]:
    """Return how often each rule came to which outcome over its own examples."""
    return {
        rule.id: Counter(
            outcome(one) for each in examples(rule.id) for one in asked(rule, each.spec)
        )
        for rule in BOOK.rules
    }


@functools.cache
def of_specs() -> dict[str, Counter[str]]:
    """Return how often each rule came to which outcome over the specs of the project."""
    found: dict[str, Counter[str]] = {rule.id: Counter() for rule in BOOK.rules}
    for file in spec_files():
        for spec in load_spec(file):
            for one in review(spec, BOOK).findings:
                found[one.rule][outcome(one)] += 1
    return found


def table() -> list[str]:
    """Return the lines of the table: examples and specs, by outcome."""
    head = " ".join(f"{name:>14}" for name in OUTCOMES)
    lines = [f"{'':32} {head}   (of its examples / of {len(spec_files())} files)"]
    for rule in BOOK.rules:
        pairs = ((of_examples()[rule.id][o], of_specs()[rule.id][o]) for o in OUTCOMES)
        cells = " ".join(f"{own:>8} /{other:>4}" for own, other in pairs)
        lines.append(f"{rule.id:32} {cells}")
    return lines


if __name__ == "__main__":
    sys.stdout.write("\n".join([*table(), ""]))
