"""Numbers as they are read on site: from a tape to 1/8 in, from a rod to 0.01 ft or 1 mm."""

from __future__ import annotations

import math
from collections.abc import Callable
from fractions import Fraction

from checker.reading.write_back import Toward, format_quantity

INCH = 0.0254
_EIGHTHS = 8
# Beyond it nobody counts inches.
_LONG_TAPE = 120
_METRIC = ("m", "mm", "cm", "um")
_THIN = ("mil", "um")
# What is whole but for the last digits of a float, in eighths of an inch.
_NOISE = 1e-4


def tape(value: float, unit: str, toward: Toward = "nearest") -> str:
    """Return a length as a tape reads it, rounded to 1/8 in or 1 mm toward one side.

    What was written in feet stays in feet.
    """
    if unit in (*_THIN, "ft", "ft-in"):
        return format_quantity("length", value, unit, toward)
    if unit in _METRIC:
        return format_quantity("length", value, "mm", toward, places=0)
    count = _whole(value / INCH * _EIGHTHS, toward)
    whole, part = divmod(abs(count), _EIGHTHS)
    if whole >= _LONG_TAPE:
        return format_quantity("length", value, "ft-in", toward)
    sign = "-" if count < 0 else ""
    inches = f"{whole} {Fraction(part, _EIGHTHS)}" if part and whole else str(whole)
    if part and not whole:
        inches = str(Fraction(part, _EIGHTHS))
    return f"{sign}{inches} in"


def level(value: float, unit: str, toward: Toward = "nearest") -> str:
    """Return a level in the unit of the spec, rounded toward one side."""
    return format_quantity("level", value, unit, toward)


Writer = Callable[[float, Toward], str]


def rods(unit: str) -> tuple[Writer, ...]:
    """Return how the rods at hand are read: in hundredths of a foot and in inches, or in metres."""
    if unit in _METRIC:
        return (lambda value, toward: format_quantity("level", value, "m", toward),)
    return (
        lambda value, toward: format_quantity("level", value, "ft", toward),
        lambda value, toward: format_quantity("length", value, "ft-in", toward),
    )


def site_figure(kind: str, value: float, unit: str, toward: Toward = "nearest") -> str:
    """Return a length or level as it is read on site."""
    return level(value, unit, toward) if kind == "level" else tape(value, unit, toward)


def _whole(number: float, toward: Toward) -> int:
    nearest = math.floor(number + 0.5)
    if toward == "nearest" or abs(number - nearest) < _NOISE:
        return nearest
    return math.floor(number) if toward == "down" else math.ceil(number)
