"""Every comparison of every rule, turned round: the rule's own examples must notice.

`at least` becomes `below`, `is` becomes `is not`, `shown: yes` becomes `shown: no`. What several
cases of a rule ask alike is turned in all of them at once, because they differ only in who asks it.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from typing import Any

import pytest

from checker.judging.conditions import Combined, Compare, Condition
from checker.judging.rulebook import Case, Rule
from tests.rules.asking import BOOK, comparisons, examples, holds

TURNED = {
    "at least": "below", "below": "at least", "at most": "above", "above": "at most",
    "is": "is not", "is not": "is", "one of": "none of", "none of": "one of",
    "before": "not before", "not before": "before",
}  # fmt: skip


def turned(one: Compare) -> Compare:
    """Return a comparison that holds where this one does not; of `between` one of its ends."""
    if one.operator == "shown":
        return one._replace(literal=not one.literal)
    if one.operator == "between":
        return one._replace(operator="above", literal=one.literal[1] if one.literal else None)
    return one._replace(operator=TURNED[one.operator])


def metric(one: Compare) -> Any:
    return one.twin.value if one.twin else one.literal


def alike(one: Compare, other: Compare) -> bool:
    """Say whether two comparisons ask the same, in one system of units or the other."""
    same = (one.value, one.operator, one.other) == (other.value, other.operator, other.other)
    limits = one.literal == other.literal or metric(one) == metric(other)
    return same and limits and one.lookup == other.lookup


def ask_alike(one: Condition, other: Condition) -> bool:
    """Say whether two conditions are built alike of comparisons that ask the same."""
    if isinstance(one, Combined) and isinstance(other, Combined):
        paired = len(one.parts) == len(other.parts) and one.every == other.every
        return paired and all(map(ask_alike, one.parts, other.parts))
    return isinstance(one, Compare) and isinstance(other, Compare) and alike(one, other)


def with_turned(condition: Any, target: Compare) -> Any:
    """Return a condition in which every comparison that asks the same as one is turned round."""
    if isinstance(condition, Combined):
        parts = tuple(with_turned(part, target) for part in condition.parts)
        return condition._replace(parts=parts)
    return turned(condition) if condition is not None and alike(condition, target) else condition


def distinct(found: Iterator[Compare]) -> list[Compare]:
    kept: list[Compare] = []
    for one in found:
        if not any(alike(one, other) for other in kept):
            kept.append(one)
    return kept


def mutants(rule: Rule) -> Iterator[tuple[str, Rule]]:
    """Yield a rule once for each comparison that can be turned, with what was turned."""
    for one in distinct(comparisons(rule.applies)):
        applies = with_turned(rule.applies, one)
        yield f"applies {_said(one)}", dataclasses.replace(rule, applies=applies)
    required = (one for case in rule.cases + rule.unless for one in comparisons(case.require))
    for one in distinct(required):
        cases = tuple(_requiring(case, one) for case in rule.cases)
        unless = tuple(_requiring(case, one) for case in rule.unless)
        yield f"require {_said(one)}", dataclasses.replace(rule, cases=cases, unless=unless)
    yield from _where(rule, "cases", rule.cases)
    yield from _where(rule, "unless", rule.unless)


def _requiring(case: Case, one: Compare) -> Case:
    return dataclasses.replace(case, require=with_turned(case.require, one))


def _where(rule: Rule, key: str, cases: tuple[Case, ...]) -> Iterator[tuple[str, Rule]]:
    """Turn what chooses a case, unless another case asks the same and only the source changes."""
    for number, case in enumerate(cases):
        others = cases[:number] + cases[number + 1 :]
        if key == "cases" and any(ask_alike(case.require, other.require) for other in others):
            continue
        for one in distinct(comparisons(case.where)):
            changed = dataclasses.replace(case, where=with_turned(case.where, one))
            mixed = (*cases[:number], changed, *cases[number + 1 :])
            yield (
                f"{key} {number} where {_said(one)}",
                dataclasses.replace(rule, cases=mixed)
                if key == "cases"
                else dataclasses.replace(rule, unless=mixed),
            )


def _said(one: Compare) -> str:
    return f"{one.value} {one.operator} {one.text or one.other or one.literal}"


@pytest.mark.parametrize("rule", BOOK.rules, ids=lambda rule: rule.id)
def test_a_comparison_turned_round_is_noticed(rule: Rule) -> None:
    unnoticed = [
        said
        for said, mutant in mutants(rule)
        if all(holds(mutant, example) for example in examples(rule.id))
    ]
    assert unnoticed == []
