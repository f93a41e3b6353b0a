"""A value that is known only between two ends."""

from typing import NamedTuple


class Range(NamedTuple):
    """From `low` to `high`, both included, in SI; an open end is infinite."""

    low: float
    high: float

    def holds(self, value: float) -> bool:
        """Whether `value` lies between the ends or on one of them."""
        return self.low <= value <= self.high


def ends(value: float | Range) -> Range:
    """Both ends of a value; a single figure is its own two ends."""
    return value if isinstance(value, Range) else Range(value, value)
