"""Conditions by yes or no come to what they come to in full, for every rule and many specs."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given, settings

from checker.deriving.engine import Deriver
from checker.judging.conditions import Combined, Condition
from checker.judging.rulebook import Rule, load_rulebook
from checker.judging.skimmed import skimmed
from checker.reading.faults import Unreadable
from checker.reading.reader import load_spec, read_specs
from checker.reading.spec import Spec
from tests.attack.mutations import ROOT, plausible, written

BOOK = load_rulebook()
SPECS = sorted((ROOT / "specs").glob("*.yaml"))
NAMES = ("specs/good.yaml", "specs/bad.yaml", "specs/metric.yaml", "specs/standards/HF-FDN-02.yaml")


def conditions(rule: Rule) -> Iterator[Condition]:
    """Yield every condition of a rule, and every part of one."""
    for case in (*rule.cases, *rule.unless):
        yield from parts(case.require)
        yield from parts(case.where)
    yield from parts(rule.applies)


def parts(condition: Condition | None) -> Iterator[Condition]:
    if condition is not None:
        yield condition
    if isinstance(condition, Combined):
        for part in condition.parts:
            yield from parts(part)


def differences(spec: Spec) -> list[str]:
    deriver = Deriver(spec)
    found = []
    for rule in BOOK.rules:
        items = deriver.get(rule.each).value if rule.each else ("",)
        for item in items or ("",):
            for condition in conditions(rule):
                for asking in (True, False):
                    soon = skimmed(condition)(deriver, item, asking)
                    if soon is not condition.answer(deriver, item, asking=asking).outcome:
                        found.append(f"{rule.id} {item}: {condition} gives {soon}")
    return found


@pytest.mark.parametrize("file", SPECS, ids=lambda file: file.stem)
def test_yes_or_no_is_the_outcome_in_full(file: Path) -> None:
    for spec in load_spec(file):
        assert differences(spec) == []


@given(plausible(*NAMES))
@settings(max_examples=15, deadline=None)
def test_so_it_is_whatever_the_spec_shows(tree: object) -> None:
    try:
        specs = read_specs(written(tree), "example.yaml")
    except Unreadable:
        return
    for spec in specs:
        assert differences(spec) == []
