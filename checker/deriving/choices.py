"""A quantity whose needs are left open: worked out for every choice, then put together."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable
from typing import Any

from checker.deriving.quantity import Assumed, NotApplicable, OutsideLimits
from checker.values import Choice, Range

# Choices that are tried together; a standard that leaves more open says nothing certain anyway.
_MOST = 64


def for_every_choice(work_out: Callable[[list[Any]], Any], arguments: list[Any]) -> Any:
    """Return what comes out for every way of choosing: one value, a Range, or a Choice.

    Raises what `work_out` raises, and OutsideLimits where the ways are too many, or where the
    quantity means something for some of them only.
    """
    ways = [_options(argument) for argument in arguments]
    if math.prod(len(options) for options in ways) > _MOST:
        raise OutsideLimits("too much is left open to try every choice")
    results: list[Any] = []
    # Words, because an exception that is kept keeps the whole review until it is searched for.
    apart: list[str] = []
    for way in itertools.product(*ways):
        try:
            results.append(work_out(list(way)))
        except NotApplicable as reason:
            apart.append(str(reason))
    if not results:
        raise NotApplicable(apart[0])
    if apart:
        raise OutsideLimits(f"for some of the choices left open: {apart[0]}")
    return _together(results)


def _options(argument: Any) -> list[Any]:
    """Return every value that an argument may have; of a list, every way of choosing its items."""
    if isinstance(argument, Choice):
        return list(argument.options)
    if isinstance(argument, tuple) and any(_is_open(pair) for pair in argument):
        items = [
            [(pair[0], one) for one in pair[1].options] if _is_open(pair) else [pair]
            for pair in argument
        ]
        if math.prod(len(options) for options in items) > _MOST:
            raise OutsideLimits("too much is left open to try every choice")
        return [tuple(way) for way in itertools.product(*items)]
    return [argument]


def _is_open(pair: Any) -> bool:
    return isinstance(pair, tuple) and len(pair) == 2 and isinstance(pair[1], Choice)


def _together(results: list[Any]) -> Any:
    why = next((one.why for one in results if isinstance(one, Assumed)), "")
    values = [one.value if isinstance(one, Assumed) else one for one in results]
    value = values[0] if all(one == values[0] for one in values) else _spread(values)
    return Assumed(value, why) if why else value


def _spread(values: list[Any]) -> Any:
    """Return numbers as the range they span and anything else as a choice."""
    if all(isinstance(one, int | float | Range) and not isinstance(one, bool) for one in values):
        ends = [one if isinstance(one, Range) else Range(one, one) for one in values]
        return Range(float(min(end.low for end in ends)), float(max(end.high for end in ends)))
    return Choice(tuple(dict.fromkeys(values)))
