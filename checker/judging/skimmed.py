"""Conditions answered yes, no or not known, and nothing more: what most rules need of most specs.

A condition says with `answer` what it compared, which takes far longer than comparing. Here each
condition becomes one function that gives the same outcome, and leaves to `answer` what is rare:
ranges, open choices, limits from tables.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from checker.deriving.engine import Deriver
from checker.judging.conditions import PLAIN, Combined, Compare, Condition, is_nothing
from checker.values import Choice

# Takes a spec, an item, and whether a missing value becomes a question.
Test = Callable[[Deriver, str, bool], bool | None]


class Read(NamedTuple):
    """A path that a condition looks at: whether of the item at hand, and what it does without one.

    `worst` says that the worst row of a table is taken where the value is not shown.
    """

    path: str
    each: bool
    worst: bool


Reads = tuple[Read, ...]

_NUMBERS = (float, int)


def reads(condition: Condition | None) -> Reads:
    """Return every path that a condition looks at, in its own words and in those of its tables."""
    if condition is None:
        return ()
    if isinstance(condition, Compare):
        paths = filter(None, (condition.value, condition.other))
        found = tuple(Read(path, ".each" in path, False) for path in paths)
        if condition.lookup is None:
            return found
        row = condition.lookup.path
        return (*found, Read(row, ".each" in row, condition.lookup.worst is not None))
    return tuple(dict.fromkeys(one for part in condition.parts for one in reads(part)))


def skimmed(condition: Condition | None) -> Test:
    """Return a function that gives the outcome of a condition; what has none always holds."""
    if condition is None:
        return _holds
    if isinstance(condition, Compare):
        return _comparison(condition)
    if len(condition.parts) == 1:
        return skimmed(condition.parts[0])
    return _every(condition) if condition.every else _at_least_one(condition)


def _holds(deriver: Deriver, item: str, asking: bool) -> bool:
    return True


def _in_full(condition: Condition) -> Test:
    def test(deriver: Deriver, item: str, asking: bool) -> bool | None:
        return condition.answer(deriver, item, asking=asking).outcome

    return test


def _every(condition: Combined) -> Test:
    tests = tuple(skimmed(part) for part in condition.parts)

    def test(deriver: Deriver, item: str, asking: bool) -> bool | None:
        outcome: bool | None = True
        for each in tests:
            one = each(deriver, item, asking)
            if one is False:
                return False
            if one is None:
                outcome = None
        return outcome

    return test


def _at_least_one(condition: Combined) -> Test:
    tests = tuple(skimmed(part) for part in condition.parts)
    in_full = _in_full(condition)

    def test(deriver: Deriver, item: str, asking: bool) -> bool | None:
        outcome: bool | None = False
        for each in tests:
            one = each(deriver, item, asking)
            if one:
                return True
            if one is None:
                outcome = None
        # Which ways of meeting it are no ways here, because the thing is not there, takes more.
        return in_full(deriver, item, asking) if outcome is None and asking else outcome

    return test


def _comparison(compare: Compare) -> Test:
    if compare.operator == "shown":
        return _shown(compare)
    if compare.lookup is not None or compare.operator == "between":
        return _in_full(compare)
    if compare.other:
        return _with_another(compare)
    return _plain(compare) if compare.operator in PLAIN else _ordered(compare)


def _shown(compare: Compare) -> Test:
    path, each, wanted = compare.value, ".each" in compare.value, bool(compare.literal)
    in_full = _in_full(compare)

    def test(deriver: Deriver, item: str, asking: bool) -> bool | None:
        value = deriver.get(path, item if each else "").value
        if value is None:
            return None if wanted and asking else not wanted
        if type(value) is Choice:
            return in_full(deriver, item, asking)
        return is_nothing(value) != wanted

    return test


def _plain(compare: Compare) -> Test:
    path, each, limit = compare.value, ".each" in compare.value, compare.literal
    operator, same = compare.operator, PLAIN[compare.operator]
    in_full = _in_full(compare)

    def test(deriver: Deriver, item: str, asking: bool) -> bool | None:
        left = deriver.get(path, item if each else "")
        value = left.value
        if value is None:
            return False if left.inapplicable and not asking else None
        if type(value) is Choice:
            return in_full(deriver, item, asking)
        return same(operator, value, limit)

    return test


def _ordered(compare: Compare) -> Test:
    path, each = compare.value, ".each" in compare.value
    american, twin = compare.literal, compare.twin
    upward = compare.operator in ("at least", "above")
    in_full = _in_full(compare)

    def test(deriver: Deriver, item: str, asking: bool) -> bool | None:
        left = deriver.get(path, item if each else "")
        value = left.value
        if value is None:
            return False if left.inapplicable and not asking else None
        limit = twin.value if twin and compare.in_metric(left, deriver) else american
        if type(value) in _NUMBERS and type(limit) in _NUMBERS and _apart(value, limit):
            return (value > limit) is upward
        return in_full(deriver, item, asking)

    return test


def _with_another(compare: Compare) -> Test:
    path, each = compare.value, ".each" in compare.value
    other, its = compare.other, ".each" in compare.other
    upward = compare.operator in ("at least", "above")
    ordered = compare.operator not in PLAIN
    in_full = _in_full(compare)

    def test(deriver: Deriver, item: str, asking: bool) -> bool | None:
        left = deriver.get(path, item if each else "")
        right = deriver.get(other, item if its else "")
        value, limit = left.value, right.value
        if value is None or limit is None:
            lacking = left if value is None else right
            return False if lacking.inapplicable and not asking else None
        if ordered and type(value) in _NUMBERS and type(limit) in _NUMBERS and _apart(value, limit):
            return (value > limit) is upward
        return in_full(deriver, item, asking)

    return test


def _apart(a: float, b: float) -> bool:
    """Say whether two numbers differ by more than what still counts as equal."""
    return abs(a - b) > 1e-8 * (1.0 + abs(a) + abs(b))
