"""Quantities written back in the unit of whoever wrote them, rounded to the side asked for."""

import math
from fractions import Fraction
from typing import Literal

from checker.reading import units
from checker.reading.kinds import KINDS

Toward = Literal["nearest", "down", "up"]

_LEVEL_PLACES = {"ft": 2, "m": 3, "in": 1, "cm": 1, "mm": 0}
_PLACES = {"1:n": 1, "H:V": 2, "deg": 1, "": 2}
_EIGHTHS = 8
_TAPE = 16  # parts of an inch on a tape
_TAPE_END = 120.0  # in; beyond it nobody reads sixteenths
NOISE = 1e-9  # m; what two levels that agree differ by as floats
_FIGURES = {"mm": 3}  # below 1: the openings of sieves and fabrics are told to three figures
_SMALL = 0.001  # below it a decimal is mostly noughts: 1e-5 reads better
_MOST_PLACES = 17
_ONE = {"days": "day", "weeks": "week"}
# Units that are a manner of writing and no row of the table, with the kinds written so.
_MANNERS = {
    "": ("fraction", "number", "ratio", "count", "year"),
    "1:n": ("slope",),
    "H:V": ("dig_slope",),
    "deg": ("slope", "dig_slope"),
    "ft-in": ("length", "level"),
}


def format_quantity(
    kind: str, si_value: float, unit: str, toward: Toward = "nearest", places: int | None = None
) -> str:
    """Write a value in a unit, as `read_quantity` would read it back.

    `toward` rounds the value itself to one side: "down" never reads as more than it is, whatever
    the unit. `places` fixes the decimals; the more there are, the smaller the difference that
    shows. Feet and inches go to 1/8 in, or to decimals of an inch when `places` is given. Raises
    ValueError for a value that is not finite and for a unit that is none of this kind.
    """
    if not math.isfinite(si_value):
        raise ValueError(f"{si_value} cannot be written as {KINDS[kind].noun}")
    if unit not in units.BY_KIND[kind] and kind not in _MANNERS.get(unit, ()):
        raise ValueError(f"{KINDS[kind].noun} is not written in {unit!r}")
    if kind in ("length", "level") and abs(si_value) < NOISE:
        si_value = 0.0
    if unit == "ft-in":
        return _feet_and_inches(si_value, toward, places)
    if unit == "1:n" and si_value <= 0:
        unit = "%"  # level ground and a fall the wrong way have no 1:n
    number = _in_unit(kind, si_value, unit)
    if unit == "1:n" or (kind == "dig_slope" and unit == "deg"):
        toward = _OPPOSITE[toward]
    if unit == "in" and kind == "length" and places is None and (tape := _sixteenths(number)):
        return _beside(tape, unit)
    if kind == "level":
        text = _fixed(number, _LEVEL_PLACES.get(unit, 2) if places is None else places, toward)
    else:
        text = _decimal(number, _usual_places(kind, unit, number), toward, places)
    if kind == "fraction" and unit == "" and text in ("1", "-1"):
        return f"{text}00 %"  # a bare 1 could be read as 1 %
    return _beside(text, unit)


_OPPOSITE: dict[Toward, Toward] = {"nearest": "nearest", "down": "up", "up": "down"}


def format_difference(
    kind: str, si_value: float, unit: str, toward: Toward = "nearest", places: int | None = None
) -> str:
    """Write how far two values of a kind lie apart, which is not always a value of that kind.

    Two levels differ by a length, two temperatures by degrees without a thermometer's zero, two
    slopes written 1:50 or in degrees by a percentage or a ratio.
    """
    if kind == "level":
        kind = "length"
    elif kind in ("slope", "dig_slope") and unit in ("1:n", "deg"):
        unit = "%" if kind == "slope" else "H:V"
    elif kind == "temperature":
        si_value += float(Fraction(units.BY_KIND[kind][unit].zero, units.BY_KIND[kind][unit].over))
    return format_quantity(kind, si_value, unit, toward, places)


def format_apart(kind: str, first: float, second: float, unit: str) -> tuple[str, str]:
    """Write two values of one kind with as many decimals as it takes to tell them apart."""
    texts = format_quantity(kind, first, unit), format_quantity(kind, second, unit)
    if math.isclose(first, second, rel_tol=1e-9):
        return texts
    for places in range(1, _MOST_PLACES):
        if texts[0] != texts[1]:
            break
        texts = (
            format_quantity(kind, first, unit, places=places),
            format_quantity(kind, second, unit, places=places),
        )
    return texts


def _in_unit(kind: str, si_value: float, unit: str) -> float:
    row = units.BY_KIND[kind].get(unit)
    if row is not None:
        return (si_value * row.over - row.zero) / row.times
    if unit == "1:n":
        return 1 / si_value
    if unit == "deg":
        rise, run = (si_value, 1.0) if kind == "slope" else (1.0, si_value)
        return math.degrees(math.atan2(rise, run))
    return si_value


def _usual_places(kind: str, unit: str, number: float) -> int:
    """Places worth writing: the unit's own, and at least as many as give two figures."""
    row = units.BY_KIND[kind].get(unit)
    own = row.places if row else _PLACES[unit]
    if number == 0:
        return 0
    power = _power(number)
    figures = _FIGURES.get(unit, 2) if power < 0 else 2
    return max(own, figures - 1 - power)


def _power(number: float) -> int:
    return math.floor(math.log10(abs(number)))


def _beside(text: str, unit: str) -> str:
    if unit == "":
        return text
    if unit == "1:n":
        return f"1:{text}"
    if unit == "H:V":
        return f"{text}H:1V"
    return f"{text} {_ONE.get(unit, unit) if text == '1' else unit}"


def _whole(number: float, toward: Toward) -> int:
    """Round to a whole number; what is whole but for the last digits of a float counts as whole."""
    nearest = math.floor(number + 0.5)
    noise = max(1e-6, abs(number) / 2**46)
    if toward == "nearest" or abs(number - nearest) <= noise:
        return nearest
    return math.floor(number) if toward == "down" else math.ceil(number)


def _fixed(number: float, places: int, toward: Toward) -> str:
    count = _whole(number * 10**places, toward)
    digits = str(abs(count)).rjust(places + 1, "0")
    point = len(digits) - places
    sign = "-" if count < 0 else ""
    return f"{sign}{digits[:point]}.{digits[point:]}" if places else f"{sign}{digits}"


def _decimal(number: float, usual: int, toward: Toward, places: int | None) -> str:
    """Write without noughts at the end, unless the places are fixed."""
    if number and abs(number) < _SMALL:
        return _scientific(number, 1 if places is None else places, toward)
    if places is not None:
        return _fixed(number, places, toward)
    text = _fixed(number, usual, toward)
    return text.rstrip("0").rstrip(".") if "." in text else text


def _scientific(number: float, places: int, toward: Toward) -> str:
    power = _power(number)
    mantissa = _fixed(number / 10.0**power, places, toward)
    if mantissa.lstrip("-").startswith("10"):
        power += 1
        mantissa = _fixed(number / 10.0**power, places, toward)
    return f"{mantissa.rstrip('0').rstrip('.') if '.' in mantissa else mantissa}e{power}"


def _sixteenths(number: float) -> str:
    """Return inches as a tape reads them, `2 1/2`, or nothing where a tape would not."""
    count = round(number * _TAPE)
    if count % _TAPE == 0 or abs(number * _TAPE - count) > 1e-6 or abs(number) > _TAPE_END:
        return ""
    whole, part = divmod(abs(count), _TAPE)
    sign = "-" if count < 0 else ""
    return f"{sign}{whole} {Fraction(part, _TAPE)}" if whole else f"{sign}{Fraction(part, _TAPE)}"


def _feet_and_inches(value: float, toward: Toward, places: int | None) -> str:
    row = units.BY_KIND["length"]["in"]
    parts = _EIGHTHS if places is None else 10**places
    count = _whole(value * row.over / row.times * parts, toward)
    feet, rest = divmod(abs(count), 12 * parts)
    whole, part = divmod(rest, parts)
    if places is not None:
        inches = f"{whole}.{part:0{places}d}" if places else str(whole)
    elif part:
        fraction = Fraction(part, parts)
        inches = f"{whole} {fraction}" if whole or feet else str(fraction)
    else:
        inches = str(whole)
    sign = "-" if count < 0 else ""
    return f"{sign}{feet}'-{inches}\"" if feet else f'{sign}{inches}"'
