"""Quantities as people write them: `2'-6"`, `1/8 in/ft`, `40 mil min`, `2 to 4 in`, `1.5H:1V`.

Everything is exact until the one division that makes a float. What can be read in two ways is
refused with a sentence that says how to write it, never guessed.
"""

import math
import re
from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from checker.reading import units
from checker.reading.explain import why_not
from checker.reading.figures import SIEVE, Figure, single, sure
from checker.reading.kinds import KINDS, default_unit
from checker.reading.numerals import NUMBER, SIGNED, UNIT, NotationError
from checker.reading.tidy import tidy
from checker.reading.write_back import Toward, format_apart, format_difference, format_quantity
from checker.values import Range, ends

__all__ = [
    "NotationError",
    "Reading",
    "Toward",
    "default_unit",
    "format_apart",
    "format_difference",
    "format_quantity",
    "read_quantity",
]

LONGEST = 200  # characters; a quantity is a few words
_AGREE = 0.1  # two figures for one thing, as in `4 in (100 mm)`, are each rounded for use


class Reading(NamedTuple):
    """A quantity in SI, and the unit in which its writer will want to see it again."""

    value: float | Range
    unit: str


# Most texts are a number and a unit straight from the table; the rest is tried only after this.
_PLAIN = re.compile(
    r"(?:([0-9]{1,9})[ -])?([0-9]{1,9})(?:/([0-9]{1,9})|\.([0-9]{1,9}))?\s*([^0-9\s.,].*)?"
)

_AT_LEAST = (
    r">=|=>|>|at least\b|(?:no|not) (?:less|thinner|smaller|fewer) than\b|more than\b|over\b"
    r"|min(?:imum)?\b\.?(?: of\b)?"
)
_AT_MOST = (
    r"<=|=<|<|at most\b|(?:no|not) (?:more|thicker|larger|greater) than\b|less than\b|under\b"
    r"|up to\b|not to exceed\b|max(?:imum)?\b\.?(?: of\b)?"
)
_LIMIT_FIRST = rf"(?:(?P<least>{_AT_LEAST})|(?P<most>{_AT_MOST}))\s*(?P<rest>.+)"
_LIMIT_LAST = (
    r"(?P<rest>.+?),?\s*\(?\b(?:(?P<least>min(?:imum)?|or (?:more|greater|larger|thicker))"
    r"|(?P<most>max(?:imum)?|or (?:less|smaller|fewer)))\b\.?\)?"
)
_HYPHEN = rf"({NUMBER})\s*-\s*({NUMBER}\s*{UNIT})"


def read_quantity(kind: str, text: str, level_unit: str | None = None) -> Reading:
    """Read a text as a quantity of this kind, in SI, with the unit it was written in.

    `level_unit` is the unit of levels written as bare numbers. Two ends (`2 to 4 in`), a limit
    (`40 mil min`) and a tolerance (`1/4 in +/- 1/16 in`) give a Range. Raises NotationError.
    """
    return _read_once(kind, text, level_unit)


@lru_cache(maxsize=16_384)
def _read_once(kind: str, text: str, level_unit: str | None) -> Reading:
    return _read_plain(kind, text, level_unit) or _read_any(kind, text, level_unit)


def _read_plain(kind: str, text: str, level_unit: str | None) -> Reading | None:
    match = _PLAIN.fullmatch(text)
    if match is None:
        return None
    whole, digits, under, decimals, written = match.groups()
    unit = units.BY_KIND[kind].get(written or (level_unit if kind == "level" else None) or "")
    if unit is None:
        return None
    top, bottom = int(digits), 1
    if decimals:
        bottom = 10 ** len(decimals)
        top = top * bottom + int(decimals)
    elif under:
        bottom = int(under)
    if whole or bottom == 0:
        if not under or top >= bottom:
            return None
        top += int(whole or 0) * bottom
    return Reading((top * unit.times + unit.zero * bottom) / (unit.over * bottom), unit.name)


def _read_any(kind: str, text: str, level_unit: str | None) -> Reading:
    if len(text) > LONGEST:
        raise NotationError(f"this is {len(text)} characters long; a quantity is a few words")
    plain = tidy(kind, text)
    if not plain:
        raise NotationError(f"nothing is written here; {KINDS[kind].noun} is wanted")
    without = re.sub(r"(?<![0-9.,])[1-9][0-9]{0,2}(?:,[0-9]{3})+(?![0-9,])", _uncomma, plain)
    if re.search(r"[0-9],[0-9]", without):
        raise NotationError(f"{text.strip()} has a comma: write the decimal with a point")
    reading = _read_tidy(kind, without, level_unit)
    if without != plain and not _commas_are_thousands(kind, reading.unit):
        raise NotationError(
            f"the comma in {text.strip()} can mean thousands or a decimal: write {without},"
            " or a decimal with a point"
        )
    return reading


def _uncomma(match: re.Match[str]) -> str:
    return match[0].replace(",", "")


def _commas_are_thousands(kind: str, name: str) -> bool:
    unit = units.BY_KIND[kind].get(name)
    return name == "ft-in" or (unit is not None and unit.commas)


def _read_tidy(kind: str, text: str, level_unit: str | None) -> Reading:
    figure = single(kind, text, level_unit)
    if figure is not None:
        value = int(figure.value) if kind in ("count", "year") else float(figure.value)
        return Reading(value, _shown_unit(figure))
    for form in (_told_twice, _limit, _tolerance, _two_ends):
        reading = form(kind, text, level_unit)
        if reading is not None:
            return reading
    raise NotationError(why_not(kind, text))


def _shown_unit(figure: Figure) -> str:
    return "mm" if figure.unit == SIEVE else figure.unit


def _told_twice(kind: str, text: str, level_unit: str | None) -> Reading | None:
    """`4 in (100 mm) min`: the first figure counts, the second must be near it."""
    match = re.fullmatch(r"([^()]+?)\s*\(((?:[0-9.#]|no\b)[^()]*)\)([^()]*)", text)
    # A tenth of a level or of an absolute temperature says nothing.
    if match is None or kind in ("level", "temperature"):
        return None
    first = _read_tidy(kind, match[1] + match[3], level_unit)
    second = _read_tidy(kind, match[2], level_unit)
    if not math.isclose(_telling_end(first), _telling_end(second), rel_tol=_AGREE):
        raise NotationError(f"{match[1]} and {match[2]} differ; one of the two is wrong")
    return first


def _telling_end(reading: Reading) -> float:
    low, high = ends(reading.value)
    return high if math.isfinite(high) else low


def _limit(kind: str, text: str, level_unit: str | None) -> Reading | None:
    match = re.fullmatch(_LIMIT_FIRST, text) or re.fullmatch(_LIMIT_LAST, text)
    if match is None:
        return None
    figure = sure(kind, match["rest"], level_unit)
    if figure.unit == SIEVE:
        raise NotationError(
            f"{text} can mean the number or the opening of the sieve: write the limit in mm"
        )
    value = float(figure.value)
    if bool(match["least"]) != _falls(kind, figure):
        return Reading(Range(value, math.inf), _shown_unit(figure))
    open_below = kind == "level" or value < 0
    return Reading(Range(-math.inf if open_below else 0.0, value), _shown_unit(figure))


def _falls(kind: str, figure: Figure) -> bool:
    """Whether a larger figure as written is a smaller value: a steeper angle runs out less."""
    return figure.unit == SIEVE or (kind == "dig_slope" and figure.unit == "deg")


def _tolerance(kind: str, text: str, level_unit: str | None) -> Reading | None:
    parts = re.split(r"\s*(?:\+/-|\+-|\bplus or minus\b)\s*", text)
    if len(parts) != 2:
        return None
    middle_text, spread_text = parts
    if not middle_text or not spread_text:
        raise NotationError(f"{text} wants a figure on each side of +/-")
    both_bare = all(re.fullmatch(SIGNED, part) for part in parts)
    if kind != "level":
        middle_text = _with_unit_of(kind, middle_text, spread_text)
    if not both_bare:
        spread_text = _with_unit_of(kind, spread_text, middle_text)
        if kind == "level" and re.fullmatch(SIGNED, spread_text):
            raise NotationError(why_not(kind, spread_text))
    spread, middle = sure(kind, spread_text, level_unit), sure(kind, middle_text, level_unit)
    if {middle.unit, spread.unit} & {"deg", "1:n", SIEVE} and kind != "angle":
        raise NotationError(f"{text} is not plain: write its two ends")
    unit = units.BY_KIND[kind].get(spread.unit)
    width = spread.value - (Fraction(unit.zero, unit.over) if unit else 0)
    if width < 0:
        raise NotationError(f"{text} has a tolerance below nothing")
    low, high = float(middle.value - width), float(middle.value + width)
    return Reading(Range(low, high), _shown_unit(middle))


def _with_unit_of(kind: str, text: str, other: str) -> str:
    """Give a bare number the unit of the figure beside it: `2` of `2 to 4 in` is `2 in`."""
    if not re.fullmatch(SIGNED, text):
        return text
    match = re.fullmatch(rf"{SIGNED}\s*{UNIT}", other)
    known = match and (units.find(kind, match["unit"]) or units.find("angle", match["unit"]))
    return f"{text} {match['unit']}" if match and known else text


def _two_ends(kind: str, text: str, level_unit: str | None) -> Reading | None:
    parts = _split(kind, text, level_unit)
    if parts is None:
        return None
    # The end that carries the unit is read first, so that its unit is what gets explained.
    second = sure(kind, parts[1], level_unit)
    first = sure(kind, _with_unit_of(kind, *parts), level_unit)
    low, high = float(first.value), float(second.value)
    if _falls(kind, first) and _falls(kind, second):
        low, high = min(low, high), max(low, high)
    if low > high:
        raise NotationError(f"{text} runs backwards: write the smaller end first")
    return Reading(Range(low, high), _shown_unit(first))


def _split(kind: str, text: str, level_unit: str | None) -> tuple[str, str] | None:
    match = re.fullmatch(r"between (.+?) and (.+)", text)
    match = match or re.fullmatch(r"(?:from )?(.+?)\s*\bto\b\s*(.+)", text)
    if match:
        return match[1], match[2]
    # A hyphen may also stand in 1-1/2, 2'-6", 1e-5 and F-days: the two ends are where both read.
    for hyphen in re.finditer(r"(?<!^)\s*-\s*", "" if text.startswith("-") else text):
        low, high = text[: hyphen.start()], text[hyphen.end() :]
        both = (_with_unit_of(kind, low, high), high)
        if not all(_reads(kind, part, level_unit) for part in both):
            continue
        if kind == "level" and re.fullmatch(SIGNED, high):
            raise NotationError(
                f"{text} can be a range or feet and inches: write {low} to {high},"
                f" or {low}'-{high}\""
            )
        return low, high
    match = re.fullmatch(_HYPHEN, text)
    return (match[1], match[2]) if match else None


def _reads(kind: str, text: str, level_unit: str | None) -> bool:
    try:
        return single(kind, text, level_unit) is not None
    except NotationError:
        return False
