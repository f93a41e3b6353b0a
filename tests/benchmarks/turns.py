"""Two or more sides that take turns, and what came out: medians, ratios and their middle half."""

from __future__ import annotations

import gc
import statistics
import time
from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

Task = Callable[[], object]


class Ratio(NamedTuple):
    """The median of some ratios and the middle half of them; one alone has no spread."""

    middle: float
    low: float | None = None
    high: float | None = None


class Row(NamedTuple):
    """One comparison, as it is printed and kept; only one that has an aim goes into the table."""

    what: str
    ours: str
    beside: str
    ratio: Ratio
    aim: str = ""


def seconds(task: Task) -> float:
    """Return how long a task takes, which pays for its own garbage and for no other's."""
    gc.collect()
    start = time.perf_counter()
    task()
    return time.perf_counter() - start


def in_turn(sides: Mapping[str, Task], turns: int) -> dict[str, list[float]]:
    """Return how long each side took in each turn.

    A machine that slows down slows all of them, and none is always the first.
    """
    taken: dict[str, list[float]] = {name: [] for name in sides}
    for turn in range(turns):
        for name in list(sides)[:: -1 if turn % 2 else 1]:
            taken[name].append(seconds(sides[name]))
    return taken


def ratio(ours: Sequence[float], beside: Sequence[float]) -> Ratio:
    """Return what the pairs' ratios come to."""
    ratios = [one / other for one, other in zip(ours, beside, strict=True)]
    if len(ratios) < 2:
        return Ratio(ratios[0])
    low, middle, high = statistics.quantiles(ratios, n=4, method="inclusive")
    return Ratio(middle, low, high)


def told(taken: Sequence[float]) -> str:
    """Return a median time as it is read: `3.21 ms`, `4.5 s`."""
    middle = statistics.median(taken)
    return f"{middle:.2f} s" if middle >= 1 else f"{1000 * middle:.3g} ms"
