"""Every value of a met example, left out: what a rule needs and is not shown is never met.

A value that the rule cannot do without makes it *not shown*. Another may be left out where the rule
or the quantity has another way: the rest of an `any`, an optional need, a default that is said to
be assumed. Even then silence does not turn what is met into *not met*, but for the rules named here.
"""

from __future__ import annotations

import dataclasses
import functools
from collections.abc import Iterator

import pytest

from checker.deriving.engine import Deriver
from checker.deriving.quantity import REGISTRY
from checker.judging.conditions import Combined, Condition
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, NOT_SHOWN
from checker.judging.rulebook import Case, Rule
from checker.reading.spec import Spec
from checker.reading.vocabulary import vocabulary
from tests.rules.asking import BOOK, asked, comparisons, examples, outcome

# Rules that a value left out makes fail, and why that is right.
FAILS_IN_SILENCE = {
    "coat.cure-before-cover": "without the maker's time the usual day holds, which is longer here",
    "coat.temperature": "without the maker's figure the usual 40 F holds, which is warmer",
    "documents.product-data": "a paper that does not say what it is covers nothing",
    "drain.absent": "the exception asks for the evidence",
    "excavation.spoil-surcharge": "without the slope of the bank it is taken as sheer",
    "excavation.steepness": "without the soil type the weakest soil is taken",
    "footing.frost-deeper": "without its cover the ground is taken as bare",
    "grade.settlement": "the exception is the plan to come back",
    "grade.slope": "the exception is for ground that ends short of 10 ft",
    "inside_drain.missing": "an inside drain left out reads as none",
    "record.photos": "a photograph that does not say where and what shows nothing",
    "sheet.side-lap": "without the maker's lap the usual one holds, which is longer here",
    "slab.base": "the exception asks for the evidence",
    "upper_drain.missing": "an upper drain left out reads as none",
    "wall.undrained": "the exception asks for the evidence",
    "wells.drain": "the exception asks for the evidence",
    "backfill.zone-width": "the exception asks for the evidence",
}


@functools.cache
def cannot_do_without(path: str) -> frozenset[str]:
    """Return the keys without which a key or a quantity has no value."""
    quantity = REGISTRY.get(path)
    if quantity is None:
        leaf = vocabulary().leaf(path.replace(".all.", ".each."))
        return frozenset((leaf.path,)) if leaf and leaf.if_absent is None else frozenset()
    needs = (cannot_do_without(need.path) for need in quantity.needs if not need.optional)
    return frozenset().union(*needs)


def needed(condition: Condition) -> frozenset[str]:
    """Return the keys without which a condition cannot be said to hold."""
    if isinstance(condition, Combined):
        if not condition.every and len(condition.parts) > 1:
            return frozenset()
        return frozenset().union(*map(needed, condition.parts))
    asks = (condition.value, condition.other) if condition.other else (condition.value,)
    return frozenset().union(*map(cannot_do_without, asks))


def chosen_by(rule: Rule) -> frozenset[str]:
    """Return the keys that choose the case: without them another case may govern."""
    return frozenset(one.value for case in rule.cases for one in comparisons(case.where))


def governing(rule: Rule, spec: Spec, item: str) -> Case | None:
    deriver = Deriver(spec)
    for case in rule.cases:
        if case.where is None or case.where.answer(deriver, item, asking=False).outcome:
            return case
    return None


def silenced(rule: Rule) -> Iterator[tuple[str, bool, set[str]]]:
    """Yield each value left out, whether the rule needs it, and what it says then."""
    for example in examples(rule.id):
        for finding in asked(rule, example.spec) if example.side == MET else ():
            case = governing(rule, example.spec, finding.item)
            keys = needed(case.require) if case and not rule.unless else frozenset()
            keys -= chosen_by(rule)
            for at in finding.places:
                values = {k: v for k, v in example.spec.values.items() if k != at.path}
                less = dataclasses.replace(example.spec, values=values)
                said = {outcome(f) for f in asked(rule, less) if f.item == finding.item}
                yield at.path, example.spec.values[at.path].pattern in keys, said


@pytest.mark.parametrize("rule", BOOK.rules, ids=lambda rule: rule.id)
def test_what_a_rule_needs_and_is_not_shown_is_not_met(rule: Rule) -> None:
    for path, is_needed, said in silenced(rule):
        if is_needed:
            assert said <= {NOT_SHOWN, DOES_NOT_APPLY}, path
        elif rule.id not in FAILS_IN_SILENCE:
            assert NOT_MET not in said, path


@pytest.mark.parametrize("rule_id", sorted(FAILS_IN_SILENCE))
def test_the_rules_that_fail_in_silence_do(rule_id: str) -> None:
    rule = BOOK.rule(rule_id)
    assert rule is not None
    assert any(NOT_MET in said for _, _, said in silenced(rule))
