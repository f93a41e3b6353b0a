"""Between which values one reading still passes, as long as everything else is as the spec shows.

The rules themselves are asked, at one value after another; no limit is worked out here by itself.
"""

from __future__ import annotations

import dataclasses
import functools
import math
from collections.abc import Callable, Iterator
from typing import NamedTuple

from checker.deriving.quantity import REGISTRY
from checker.judging.conditions import Combined, Compare, Condition
from checker.judging.judge import review
from checker.judging.review_data import NOT_MET, Finding
from checker.judging.rulebook import Rule, Rulebook
from checker.reading.spec import Shown, Spec
from checker.reading.vocabulary import Leaf, vocabulary
from checker.values import Range, ends

# How far from its design a reading is followed [m], and how near to its limit [m].
REACH = 0.75
NEAR = 5e-6
# What a tape or a rod can show [m]: a limit beside one of these is that one, if it passes.
_NEAT = (0.0254 / 16, 0.00254, 0.003048, 0.001, 0.00000254)
_FIRST_STEP = 0.006
# Rules that say only that two values of one spec agree; a reading alone cannot be held to them.
_AGREEMENT = "contradiction"


class Passing(NamedTuple):
    """The lowest and highest value that still passes [m], and the rule that ends it there.

    None where no rule ends it within reach. `as_shown` says whether the value shown passes.
    """

    low: float | None
    high: float | None
    low_by: str
    high_by: str
    as_shown: bool


class Passes:
    """Finds how far the lengths and levels of one spec may be off."""

    def __init__(
        self, spec: Spec, rulebook: Rulebook, varied: frozenset[str] = frozenset()
    ) -> None:
        """Begin; `varied` are rules that a variance allows the design to fail."""
        self._spec = spec
        self._book = rulebook
        self._varied = varied
        self._found: dict[str, Passing | None] = {}
        self._allowed = self._failing(spec, rulebook, only_grave=False)

    def of(self, path: str) -> Passing | None:
        """Return between which values a length or level passes.

        None where it is not shown, is no length or level, or no value within reach would pass.
        """
        if path not in self._found:
            self._found[path] = self._of(path)
        return self._found[path]

    def _of(self, path: str) -> Passing | None:
        shown = self._spec.values.get(path)
        leaf = vocabulary().leaf(shown.pattern) if shown else None
        if shown is None or shown.value is None or leaf is None:
            return None
        if leaf.kind not in ("length", "level") or not isinstance(shown.value, float | Range):
            return None
        rules = tuple(rule for rule in self._book.rules if leaf.path in rests_on(rule))
        book = Rulebook(rules, self._book.digest)

        @functools.cache
        def fails(value: float) -> frozenset[str]:
            return self._failing(_with(self._spec, shown, value), book, only_grave=True)

        closed = [end for end in ends(shown.value) if math.isfinite(end)]
        if not closed:
            return None
        # What is open at one end is followed from the other.
        low, high = closed[0], closed[-1]
        if not fails(low) and not fails(high):
            return _interval(low, high, leaf, fails, as_shown=True)
        nearest = next((one for one in _around(low, high, leaf) if not fails(one)), None)
        if nearest is None:
            return None
        return _interval(nearest, nearest, leaf, fails, as_shown=False)

    def _failing(self, spec: Spec, book: Rulebook, *, only_grave: bool) -> frozenset[str]:
        """Return the rules that a spec fails; of minor and varied ones no more than the design."""
        found = [one for one in review(spec, book).findings if one.outcome == NOT_MET]
        return frozenset(_name(one) for one in found if not only_grave or self._counts(one))

    def _counts(self, finding: Finding) -> bool:
        forgiven = finding.severity == "minor" or finding.rule in self._varied
        return not forgiven or _name(finding) not in self._allowed


def rests_on(rule: Rule) -> frozenset[str]:
    """Return the keys that a rule's answer can depend on, those of list items by `each`."""
    found: set[str] = set()
    for condition in _conditions(rule):
        for path in _paths(condition):
            found |= _keys(path)
    return frozenset(found)


def required(rule: Rule) -> frozenset[str]:
    """Return the paths that a rule asks something of, not those that say where it applies."""
    return frozenset(path for case in rule.cases for path in _paths(case.require))


def _conditions(rule: Rule) -> Iterator[Condition]:
    if rule.applies:
        yield rule.applies
    for case in (*rule.cases, *rule.unless):
        yield case.require
        if case.where:
            yield case.where


def _paths(condition: Condition) -> Iterator[str]:
    if isinstance(condition, Combined):
        for part in condition.parts:
            yield from _paths(part)
    elif isinstance(condition, Compare):
        yield condition.value
        if condition.other:
            yield condition.other
        if condition.lookup is not None:
            yield condition.lookup.path


@functools.cache
def _keys(path: str) -> frozenset[str]:
    """Return the keys under a path: itself, or all that a quantity is worked out from."""
    if _AGREEMENT in path:
        return frozenset()
    quantity = REGISTRY.get(path)
    if quantity is None:
        return frozenset((path.replace(".all.", ".each."),))
    return frozenset().union(*(_keys(need.path) for need in quantity.needs))


def _name(finding: Finding) -> str:
    return f"{finding.rule} {finding.item}".rstrip()


def _with(spec: Spec, shown: Shown, value: float) -> Spec:
    changed = shown._replace(value=value)
    return dataclasses.replace(spec, values=spec.values | {shown.path: changed})


Fails = Callable[[float], frozenset[str]]


def _around(low: float, high: float, leaf: Leaf) -> Iterator[float]:
    """Yield values farther and farther from those shown, below and above in turn."""
    step = _step(leaf)
    while step <= REACH:
        yield _kept_possible(low - step, leaf)
        yield high + step
        step += max(_step(leaf), step / 4)


def _interval(low: float, high: float, leaf: Leaf, fails: Fails, *, as_shown: bool) -> Passing:
    lowest, low_by = _limit(low, -1, leaf, fails)
    highest, high_by = _limit(high, 1, leaf, fails)
    return Passing(lowest, highest, low_by, high_by, as_shown)


def _limit(start: float, side: int, leaf: Leaf, fails: Fails) -> tuple[float | None, str]:
    """Return the last value that passes on one side of one that does, and what ends it."""
    good, step = start, _step(leaf)
    while abs(good - start) < REACH:
        value = _kept_possible(good + side * step, leaf)
        if value == good:
            return None, ""
        if fails(value):
            return _halved(good, value, min(NEAR, _step(leaf) / 1000), fails)
        good, step = value, step * 2
    return None, ""


def _step(leaf: Leaf) -> float:
    """Return a first step that is no coarser than the value can be read."""
    return min(leaf.tolerance or _FIRST_STEP, _FIRST_STEP)


def _kept_possible(value: float, leaf: Leaf) -> float:
    return value if leaf.kind == "level" else max(value, leaf.minimum or 0.0)


def _halved(good: float, bad: float, near: float, fails: Fails) -> tuple[float, str]:
    while abs(bad - good) > near:
        middle = (good + bad) / 2
        if fails(middle):
            bad = middle
        else:
            good = middle
    neat = (round(good / step) * step for step in _NEAT)
    snapped = next((one for one in neat if abs(one - good) < 2 * near and not fails(one)), good)
    return snapped, ", ".join(sorted(fails(bad)))
