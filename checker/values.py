"""Values that are known only between two ends, or only as one of several."""

from dataclasses import dataclass
from typing import Any, NamedTuple


class Range(NamedTuple):
    """From `low` to `high`, both included, in SI; an open end is infinite."""

    low: float
    high: float

    def holds(self, value: float) -> bool:
        """Whether `value` lies between the ends or on one of them."""
        return self.low <= value <= self.high


@dataclass(frozen=True, slots=True)
class Choice:
    """One of several, where a standard leaves it open which; every one of them must do."""

    options: tuple[Any, ...]


def ends(value: float | Range) -> Range:
    """Both ends of a value; a single figure is its own two ends."""
    return value if isinstance(value, Range) else Range(value, value)
