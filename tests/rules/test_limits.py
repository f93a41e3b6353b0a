"""Every numeric limit walked to: up to it the rule is met, just past it no more.

A value of a met example is moved, all else as the example shows it, until the rule no longer holds.
That must happen where the judged number equals the limit, by halving to a millionth. What is moved
is the judged key itself, else the rule's `walk`, else any number that the judged one rests on. Where
a rule writes its limit in both systems, the same is done with the example told in metric.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterable, Iterator
from typing import Any, NamedTuple

import pytest

from checker.deriving.engine import Deriver
from checker.deriving.quantity import REGISTRY
from checker.judging.conditions import Compare, Judged, kind_of
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET
from checker.judging.rulebook import Rule
from checker.reading.kinds import KINDS, default_unit
from checker.reading.spec import Shown, Spec
from checker.reading.units import system_of
from checker.reading.vocabulary import vocabulary
from checker.values import Range
from tests.rules.asking import BOOK, asked, comparisons, examples, outcome

ORDERED = ("at most", "at least", "below", "above", "between")
# A code of each family, in the editions that differ, and one that no rule knows.
CODES = (("IRC", "2018"), ("IRC", "2021"), ("IRC", "2006"), ("IBC", "2021"), ("NBC", "2020"))
WHOLE = ("count", "year")
NEAR = 1e-6
# Numbers equal to this in SI are equal to a rule; a film may be thinner by that much.
EQUAL = 2e-9

# Limits that no number of an example can be moved to, and why.
OUT_OF_REACH = {
    ("backfill.too-soon", "backfill.wall_age"): "whole days; its examples stand on both sides",
    ("drain.below-bearing", "drain.outside_bottom_low"): "decides only where no bed is shown",
    ("fabrics.sand-grading", "fabrics.each.sand_uniformity"): "a ratio of two sizes of one curve",
    ("slab.uplift", "levels.water_over_slab"): "a little water lifts no slab: the factor decides",
    ("stone.size-number", "stone.no4_by_size"): "a word picks it from a table",
}


class Walk(NamedTuple):
    """One rule asked of one item of one spec, while one value of the spec is moved."""

    rule: Rule
    spec: Spec
    item: str
    path: str

    def at(self, value: float) -> Spec:
        """Return the spec with the value moved; a curve has its sizes multiplied."""
        shown = self.spec.values[self.path]
        moved: Any = value
        if shown.kind == "curve":
            curve: Any = shown.value
            moved = tuple((size * value, share) for size, share in curve)
        values = self.spec.values | {self.path: shown._replace(value=moved)}
        return dataclasses.replace(self.spec, values=values)

    def passes(self, value: float) -> bool:
        """Say whether the rule is met at a value."""
        return self.said(value) == MET

    def said(self, value: float) -> str:
        """Return the outcome at a value."""
        found = [one for one in asked(self.rule, self.at(value)) if one.item == self.item]
        return outcome(found[0]) if found else DOES_NOT_APPLY

    def ends(self) -> Iterator[tuple[float, float]]:
        """Yield on each side the last value that passes and the next, which does not."""
        start = self._start()
        for side in (-1.0, 1.0) if self.passes(start) else ():
            good, step = start, max(abs(start), 1e-3) / 1_000
            for _ in range(60):
                bad = self._inside(good + side * step, good)
                if not self.passes(bad):
                    yield _halved(good, bad, self.passes)
                    break
                good, step = bad, step * 2

    def _start(self) -> float:
        """Return where to start: at the value shown, or beside it where that just fails."""
        shown = self.spec.values[self.path].value
        value = shown.high if isinstance(shown, Range) else shown
        first = value if isinstance(value, float) else 1.0
        near = (first, first * 0.95, first * 1.05)
        return next((one for one in near if self.passes(one)), first)

    def _inside(self, value: float, good: float) -> float:
        """Keep to values that the key may have: half the way to its end, and never past it."""
        leaf = vocabulary().leaf(self.spec.values[self.path].pattern)
        assert leaf is not None
        low = max(
            (x for x in (leaf.minimum, leaf.exclusive_minimum) if x is not None), default=None
        )
        if leaf.kind == "curve":
            low = 0.0
        if low is not None and value <= low:
            return low + (good - low) / 2
        return min(value, leaf.maximum) if leaf.maximum is not None else value


def _halved(good: float, bad: float, passes: Callable[[float], bool]) -> tuple[float, float]:
    while abs(bad - good) > 1e-9 * max(abs(good), 1e-6):
        middle = (good + bad) / 2
        if middle in (good, bad):
            break
        if passes(middle):
            good = middle
        else:
            bad = middle
    return good, bad


def movable(spec: Spec, path: str) -> bool:
    shown = spec.values.get(path)
    if shown is None or shown.kind in WHOLE:
        return False
    if isinstance(shown.value, Range):
        return shown.value.high < float("inf")
    return isinstance(shown.value, float) or shown.kind == "curve"


def limits(rule: Rule) -> list[Compare]:
    """Return the comparisons of a rule's cases with a number that can be walked to."""
    found = (one for case in rule.cases + rule.unless for one in comparisons(case.require))
    return [
        one
        for one in found
        if one.operator in ORDERED
        and kind_of(one.value) in KINDS
        and kind_of(one.value) not in WHOLE
    ]


def metric(spec: Spec) -> Spec:
    """Return the same spec as somebody would have written it in metres and millimetres."""
    values = {
        path: shown._replace(unit=default_unit(shown.kind, "si"))
        if system_of(shown.unit) == "us"
        else shown
        for path, shown in spec.values.items()
    }
    values["levels.unit"] = _text("levels.unit", "levels.unit", "m")
    return dataclasses.replace(spec, values=values)


def under(spec: Spec, code: str, edition: str) -> Spec:
    """Return the same spec where one code is adopted, and no other."""
    values = {path: shown for path, shown in spec.values.items() if "job.codes" not in path}
    for key, text in (("id", code), ("edition", edition)):
        path, pattern = f"job.codes.{code}.{key}", f"job.codes.each.{key}"
        values[path] = _text(path, pattern, text)
    lists = spec.lists | {"job.codes": (code,)}
    return dataclasses.replace(spec, values=values, lists=lists)


def _text(path: str, pattern: str, text: str) -> Shown:
    return Shown(path, pattern, text, text, "", "", 1, 1, "text")


def answered(one: Compare, deriver: Deriver, item: str) -> Judged:
    return one.answer(deriver, item, asking=True).judged[0]


def at_limit(judged: Judged) -> bool:
    """Say whether an end of the judged number is an end of its limit."""
    return any(
        abs(left - limit) <= max(NEAR * (max(abs(left), abs(limit)) if limit else 0.1), EQUAL)
        for left in _ends(judged.left.value)
        for limit in _ends(judged.limit)
    )


def _ends(value: Any) -> tuple[float, ...]:
    if isinstance(value, tuple):
        return tuple(x for x in value if isinstance(x, float | int))
    return (value,) if isinstance(value, float | int) and not isinstance(value, bool) else ()


def paths(rule: Rule, spec: Spec, item: str) -> Iterator[str]:
    """Yield what can be moved: the judged keys, the rule's `walk`, then all that they rest on."""
    keys = [one.value for one in limits(rule) if one.value not in REGISTRY]
    for pattern in dict.fromkeys((*keys, rule.walk)):
        yield from (path for path in spec.values if spec.values[path].pattern == pattern)
    deriver = Deriver(spec)
    for one in limits(rule):
        judged = answered(one, deriver, item)
        for side in (judged.left, judged.right):
            yield from side.rests_on if side else ()


def walks(rule: Rule, spec: Spec) -> Iterator[Walk]:
    for finding in asked(rule, spec):
        for path in dict.fromkeys(paths(rule, spec, finding.item)):
            if movable(spec, path):
                yield Walk(rule, spec, finding.item, path)


def reached(
    rule: Rule, wanted: list[Compare], specs: Iterable[Spec], *, by_twin: bool = False
) -> set[int]:
    """Return which of the limits were walked to; past each end the rule holds no more.

    `by_twin` counts a limit only where its metric twin was the one compared with.
    """
    found: set[int] = set()
    every = [
        one
        for case in rule.cases + rule.unless
        for part in (case.require, case.where)
        for one in comparisons(part)
    ] + list(comparisons(rule.applies))
    for spec in specs:
        for walk in walks(rule, spec):
            for good, bad in walk.ends():
                deriver = Deriver(walk.at(good))
                near = [(one, answered(one, deriver, walk.item)) for one in every]
                hit = [one for one, judged in near if at_limit(judged)]
                twins = [one for one, judged in near if judged.beside]
                if walk.said(bad) == NOT_MET:
                    assert hit, f"{rule.id} fails at {walk.path} = {bad}, where nothing is limited"
                counted = [one for one in hit if one in twins or not by_twin]
                found.update(n for n, one in enumerate(wanted) if one in counted)
            if len(found) == len(wanted):
                return found
    return found


@pytest.mark.parametrize(
    "rule", [rule for rule in BOOK.rules if limits(rule)], ids=lambda rule: rule.id
)
def test_a_rule_holds_up_to_its_limit_and_not_past_it(rule: Rule) -> None:
    wanted = [one for one in limits(rule) if (rule.id, one.value) not in OUT_OF_REACH]
    found = reached(rule, wanted, (one.spec for one in examples(rule.id)))
    assert [f"{one.value} {one.text}" for n, one in enumerate(wanted) if n not in found] == []


@pytest.mark.parametrize(
    "rule",
    [rule for rule in BOOK.rules if any(one.twin for one in limits(rule))],
    ids=lambda rule: rule.id,
)
def test_in_a_metric_spec_the_limit_is_the_metric_twin(rule: Rule) -> None:
    wanted = [one for one in limits(rule) if one.twin]
    told = (metric(one.spec) for one in examples(rule.id))
    anywhere = (under(spec, *code) for spec in told for code in CODES)
    found = reached(rule, wanted, anywhere, by_twin=True)
    assert [f"{one.value} {one.text}" for n, one in enumerate(wanted) if n not in found] == []


def test_what_is_out_of_reach_is_a_limit_of_a_rule() -> None:
    known = {(rule.id, one.value) for rule in BOOK.rules for one in limits(rule)}
    assert set(OUT_OF_REACH) <= known
