"""Every rule carries examples on both sides; they are its tests."""

from __future__ import annotations

from typing import Any

import pytest

from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET
from checker.judging.rulebook import Rule
from tests.rules.asking import BOOK, Example, asked, at_its_stage, examples, outcome
from tests.support import spec_of


def _cases(side: str) -> list[Any]:
    return [
        pytest.param(rule, example, id=f"{rule.id}-{number}")
        for rule in BOOK.rules
        for number, example in enumerate(examples(rule.id), 1)
        if example.side == side
    ]


@pytest.mark.parametrize(("rule", "example"), _cases(MET))
def test_example_is_met(rule: Rule, example: Example) -> None:
    findings = asked(rule, example.spec)
    assert {outcome(one) for one in findings} == {MET}, findings
    if rule.at_best:
        assert {one.outcome for one in findings} == {DOES_NOT_APPLY}, "a person decides"


@pytest.mark.parametrize(("rule", "example"), _cases(NOT_MET))
def test_example_is_not_met(rule: Rule, example: Example) -> None:
    failed = [one for one in asked(rule, example.spec) if one.outcome == NOT_MET]
    assert failed
    for finding in failed:
        assert finding.compared, "a finding that cannot show its numbers is not finished"
        assert finding.remedy


@pytest.mark.parametrize(("rule", "example"), _cases(DOES_NOT_APPLY))
def test_example_is_not_asked_about(rule: Rule, example: Example) -> None:
    findings = asked(rule, example.spec)
    assert {outcome(one) for one in findings} == {DOES_NOT_APPLY}, findings


@pytest.mark.parametrize("rule", BOOK.rules, ids=lambda rule: rule.id)
def test_silence_is_never_met(rule: Rule) -> None:
    silent = spec_of(at_its_stage(rule, {}))
    assert all(one.outcome != MET for one in asked(rule, silent))
