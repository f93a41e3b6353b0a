"""Every rule carries examples on both sides; they are its tests."""

from __future__ import annotations

from typing import Any

import pytest

from checker.judging.judge import review
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, Finding
from checker.judging.rulebook import Rule, Rulebook, load_rulebook
from tests.support import spec_of

BOOK = load_rulebook()


def _cases(side: str) -> list[Any]:
    return [
        pytest.param(rule, example, id=f"{rule.id}-{number}")
        for rule in BOOK.rules
        for number, example in enumerate(rule.raw["examples"][side], 1)
    ]


def judge(rule: Rule, mapping: dict[str, Any]) -> list[Finding]:
    """Judge a mapping by one rule, at the stage where its facts exist."""
    guards = tuple(other for other in BOOK.rules if other.id == rule.guard)
    book = Rulebook((rule, *guards), BOOK.digest)
    mapping = dict(mapping)
    if rule.due:
        mapping["job"] = {"stage": rule.due, **mapping.get("job", {})}
    return [f for f in review(spec_of(mapping), book).findings if f.rule == rule.id]


@pytest.mark.parametrize(("rule", "example"), _cases("met"))
def test_example_is_met(rule: Rule, example: dict[str, Any]) -> None:
    findings = judge(rule, example["spec"])
    if rule.at_best:
        assert all(f.outcome == DOES_NOT_APPLY for f in findings), findings
        assert any(f.because.startswith("no objection") for f in findings), findings
    else:
        assert {f.outcome for f in findings} == {MET}, findings


@pytest.mark.parametrize(("rule", "example"), _cases("not met"))
def test_example_is_not_met(rule: Rule, example: dict[str, Any]) -> None:
    findings = judge(rule, example["spec"])
    assert any(f.outcome == NOT_MET for f in findings), findings
    for finding in findings:
        if finding.outcome == NOT_MET:
            assert finding.compared, "a finding that cannot show its numbers is not finished"
            assert finding.remedy


@pytest.mark.parametrize("rule", BOOK.rules, ids=lambda rule: rule.id)
def test_silence_is_never_met(rule: Rule) -> None:
    assert all(finding.outcome != MET for finding in judge(rule, {}))
