"""Each known cause of a wet basement, as a spec written from a list of causes and not from the rules.

A spec names its cause (`x-cause`) and the rules that ought to catch it (`x-expects`). The thirteen
causes are the working order of a review of field studies and of what builders and inspectors report:
1 grade, 2 roof water, 3 the drain's place and outlet, 4 wells and stairs, 5 the pump, 6 frost and
swelling clay, 7 silt, 8 early backfill, 9 holes in the wall, 10 the coat, 11 the water table,
12 wicking, 13 paper.
"""

from __future__ import annotations

import functools
from pathlib import Path
from typing import NamedTuple

import pytest
import yaml

from checker import load_rulebook, load_spec, review
from checker.judging.review_data import NOT_MET
from checker.judging.rulebook import Rulebook

FOLDER = Path(__file__).parent
FILES = sorted(FOLDER.glob("*.yaml"))

SILENT = {
    # What the rules do not say of a spec, and why. A rule that learns to say it fails the last test.
    "07-silted": {"fabrics.type"},  # a sock is a drain's fabric; `fabrics.sock-only` speaks instead
    "08-early-backfill": {
        "backfill.wall-design",  # nobody is named, so it is a question
    },
    "11-water-level-not-asked": {"levels.high-water-missing"},
    "13-nobodys-drain": {"outlets.absent"},  # "by others" is a question
}


class Cause(NamedTuple):
    """One spec: the number of its cause, what should catch it and what did."""

    number: int
    expected: frozenset[str]
    found: frozenset[str]


@functools.cache
def rulebook() -> Rulebook:
    """Return the rule book, read once."""
    return load_rulebook()


@functools.cache
def cause(path: Path) -> Cause:
    """Read and judge one spec of this folder."""
    plain = yaml.safe_load(path.read_text(encoding="utf-8"))
    found = {
        finding.rule for spec in load_spec(path) for finding in review(spec, rulebook()).of(NOT_MET)
    }
    return Cause(plain["x-cause"], frozenset(plain["x-expects"]), frozenset(found))


def test_every_cause_has_a_spec() -> None:
    assert {cause(path).number for path in FILES} == set(range(1, 14))


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.stem)
def test_expected_rules_exist(path: Path) -> None:
    known = {rule.id for rule in rulebook().rules}
    assert cause(path).expected - known == set()


@pytest.mark.parametrize("number", range(1, 14))
def test_the_rules_catch_the_cause(number: int) -> None:
    of_this = [cause(path) for path in FILES if cause(path).number == number]
    assert any(one.expected & one.found for one in of_this)


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.stem)
def test_what_is_not_caught_is_known(path: Path) -> None:
    one = cause(path)
    assert one.expected - one.found == SILENT.get(path.stem, set())
