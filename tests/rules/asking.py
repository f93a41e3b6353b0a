"""Rules asked of their own examples: what the tests of the rule book share."""

from __future__ import annotations

import functools
from collections.abc import Iterator
from typing import Any, NamedTuple

from checker.judging.conditions import Combined, Compare, Condition
from checker.judging.judge import review
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, Finding
from checker.judging.rulebook import Rule, Rulebook, load_rulebook
from checker.reading.spec import Spec
from tests.support import spec_of

BOOK = load_rulebook()
SIDES = (MET, NOT_MET, DOES_NOT_APPLY)


class Example(NamedTuple):
    """One example of a rule: the side it is listed under, what it shows, and its spec."""

    side: str
    says: str
    spec: Spec


@functools.cache
def examples(rule_id: str) -> tuple[Example, ...]:
    """Return the examples of a rule, each at the stage where its facts exist."""
    rule = BOOK.rule(rule_id)
    assert rule is not None
    return tuple(
        Example(side, one["says"], spec_of(at_its_stage(rule, one["spec"])))
        for side in SIDES
        for one in rule.raw["examples"].get(side, ())
    )


def at_its_stage(rule: Rule, mapping: dict[str, Any]) -> dict[str, Any]:
    """Return a piece of a spec at the stage a rule is due, unless it names one itself."""
    if not rule.due:
        return mapping
    return {**mapping, "job": {"stage": rule.due, **mapping.get("job", {})}}


def asked(rule: Rule, spec: Spec) -> list[Finding]:
    """Return what one rule says of a spec, once or for every item."""
    guards = tuple(other for other in BOOK.rules if other.id == rule.guard)
    findings = review(spec, Rulebook((rule, *guards), BOOK.digest)).findings
    return [one for one in findings if one.rule == rule.id]


def outcome(finding: Finding) -> str:
    """Return the outcome of a finding; a rule that is never met is met by having no objection."""
    return MET if finding.because.startswith("no objection from") else finding.outcome


def holds(rule: Rule, example: Example) -> bool:
    """Say whether a rule says of an example what the example is listed under."""
    outcomes = [outcome(one) for one in asked(rule, example.spec)]
    if example.side == NOT_MET:
        return NOT_MET in outcomes
    return set(outcomes) == {example.side}


def comparisons(condition: Condition | None) -> Iterator[Compare]:
    """Yield every comparison in a condition."""
    if isinstance(condition, Combined):
        for part in condition.parts:
            yield from comparisons(part)
    elif condition is not None:
        yield condition
