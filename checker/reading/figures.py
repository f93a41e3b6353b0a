"""One figure with its unit, read exactly: `2 1/2 in`, `8'-2 1/2"`, `No. 70`, `1:50`, `34 deg`."""

import math
import re
from collections.abc import Callable
from fractions import Fraction
from typing import NamedTuple

from checker.reading import units
from checker.reading.explain import why_not
from checker.reading.kinds import KINDS
from checker.reading.numerals import NUMBER, SIGNED, UNIT, NotationError, number


class Figure(NamedTuple):
    """A figure in SI, exact, and the unit it was written in."""

    value: Fraction
    unit: str


SIEVE = "No."  # the unit of a figure written as a sieve

# `re` compiles these when first needed, which keeps the start quick.
_FEET_INCHES = (
    rf"(?P<sign>[+-]?)\s*(?P<feet>{NUMBER})\s*(?P<foot>'|ft\.?|feet|foot)"
    rf"(?P<joint>\s*-\s*|\s+and\s+|\s*)(?P<inches>{NUMBER})\s*(?P<inch>\"|in\.?|inch|inches)?"
)
_STANDARD = r"(?:u\.?s\.? )?(?:st(?:andar)?d\.? )?"
_SIEVE = (
    rf"{_STANDARD}(?:sieve )?(?:no\.?|number|#) ?(?P<size>[0-9]+(?:[ -]1/2)?)(?: {_STANDARD}sieve)?"
)
_WAY = r"(?:h|v|horizontal|vertical)"
_RATIO = (
    rf"(?P<sign>[+-]?)\s*(?P<a>{NUMBER})\s*(?P<a_way>{_WAY})?(?P<joint>\s*:\s*|\s+in\s+|\s+to\s+)"
    rf"(?P<b>{NUMBER})\s*(?P<b_way>{_WAY})?"
)
_INCHES_OR_RATIO = rf"(?P<rise>[+-]?\s*{NUMBER})\s+in\s+(?P<run>{NUMBER}\s*[a-z'\"].*)"


def single(kind: str, text: str, level_unit: str | None) -> Figure | None:
    """Read one figure from a tidy text; None when it has another form.

    Raises NotationError for a figure of the right form that cannot be meant.
    """
    for form in _FORMS.get(kind, ()):
        figure = form(kind, text)
        if figure is not None:
            return figure
    match = re.fullmatch(rf"{SIGNED}\s*{UNIT}", text)
    if match is None:
        return None
    value = number(match["number"])
    if match["sign"] == "-":
        value = -value
    return _in_unit(kind, value, match["unit"]) if match["unit"] else _bare(kind, value, level_unit)


def sure(kind: str, text: str, level_unit: str | None) -> Figure:
    """Read one figure from a tidy text or raise NotationError with the reason."""
    figure = single(kind, text, level_unit)
    if figure is None:
        raise NotationError(why_not(kind, text))
    return figure


# 29 CFR 1926 Subpart P, Table B-1, prints whole degrees beside ratios, rounded to suit: 34 deg is
# its 1.5H:1V and 53 deg its 0.75H:1V, though the tangents fall a little short.
_PRINTED_WITH = {34: Fraction(3, 2), 53: Fraction(3, 4)}


def _in_unit(kind: str, value: Fraction, written: str) -> Figure | None:
    unit = units.find(kind, written)
    if unit is not None:
        return Figure((value * unit.times + unit.zero) / unit.over, unit.name)
    angle = units.find("angle", written) if kind in ("slope", "dig_slope") else None
    if angle is not None:
        if kind == "dig_slope" and angle.name == "deg" and value in _PRINTED_WITH:
            return Figure(_PRINTED_WITH[value.numerator], "deg")
        turn = float(value * angle.times / angle.over)
        return Figure(_tangent(turn) if kind == "slope" else _cotangent(turn), "deg")
    return None


def _tangent(angle: float) -> Fraction:
    if not -math.pi / 2 < angle < math.pi / 2:
        raise NotationError("a slope stands less than 90 deg from level")
    # Of whole degrees only 45 has an exact ratio, and floats miss it by the last digit.
    return Fraction(round(angle / abs(angle)) if abs(angle) == math.pi / 4 else math.tan(angle))


def _cotangent(angle: float) -> Fraction:
    if not 0 < angle <= math.pi / 2:
        raise NotationError("the slope of a dug side lies above 0 deg and up to 90 deg")
    return Fraction(0) if angle == math.pi / 2 else 1 / _tangent(angle)


def _bare(kind: str, value: Fraction, level_unit: str | None) -> Figure | None:
    if kind in ("number", "ratio"):
        return Figure(value, "")
    if kind in ("count", "year"):
        if value.denominator != 1:
            raise NotationError(f"{KINDS[kind].noun} is a whole number")
        return Figure(value, "")
    if kind == "fraction" and abs(value) < 1:
        return Figure(value, "")
    if kind == "fraction" and value == 1:
        raise NotationError("a bare 1 can mean 1 % or all of it: write 1 % or 100 %")
    if kind == "level" and level_unit:
        return _in_unit(kind, value, level_unit)
    return None


def _feet_and_inches(kind: str, text: str) -> Figure | None:
    match = re.fullmatch(_FEET_INCHES, text)
    if match is None:
        return None
    # The last mark may be left off in 8'-6 and 8' 6; 8' - 6 could be a range.
    if not match["inch"] and (match["foot"] != "'" or match["joint"] not in ("-", " ")):
        return None
    feet, inches = number(match["feet"]), number(match["inches"])
    if feet.denominator != 1:
        raise NotationError(
            f"{text} has a part of a foot before the inches: write one or the other"
        )
    if inches >= 12:
        raise NotationError(f"{text} has 12 inches or more after the feet: carry them to the feet")
    foot, inch = units.BY_KIND["length"]["ft"], units.BY_KIND["length"]["in"]
    value = feet * foot.times / foot.over + inches * inch.times / inch.over
    return Figure(-value if match["sign"] == "-" else value, "ft-in")


def _sieve(kind: str, text: str) -> Figure | None:
    match = re.fullmatch(_SIEVE, text)
    if match is None:
        return None
    opening = units.sieve_opening(match["size"].replace(" ", "-"))
    if opening is None:
        raise NotationError(f"no standard sieve is No. {match['size']}: write its opening in mm")
    return Figure(opening, SIEVE)


def _ratio(kind: str, text: str) -> Figure | None:
    match = re.fullmatch(_RATIO, text)
    if match is None:
        return None
    a, b = number(match["a"]), number(match["b"])
    first, second = (match["a_way"] or "")[:1], (match["b_way"] or "")[:1]
    if not first and not second and (match["joint"].strip() == "to" or kind == "dig_slope"):
        if match["joint"].strip() != ":":
            return None
        raise NotationError(
            f"{text} can be read both ways: write {match['a']}H:{match['b']}V when {match['a']} is"
            f" across, or {match['a']}V:{match['b']}H when {match['a']} is up"
        )
    if first and first == second:
        raise NotationError(f"{text} gives the same direction twice: one is H and one is V")
    rise, run = (b, a) if first == "h" or second == "v" else (a, b)
    if match["joint"].strip() == "in" and rise != 1:
        raise NotationError(_inches_or_ratio(text, match["a"], f"{match['b']} ft"))
    over, under = (rise, run) if kind == "slope" else (run, rise)
    if under == 0:
        raise NotationError(
            f"{text} divides by nothing: its {'run' if over is rise else 'rise'} is 0"
        )
    value = over / under
    return Figure(-value if match["sign"] == "-" else value, "1:n" if kind == "slope" else "H:V")


def _rise_over_run(kind: str, text: str) -> Figure | None:
    for joint in re.finditer(r"\s+(?:in|per|over)(?=\s)|\s*[/:]", text):
        rise = _length(text[: joint.start()])
        run = _length(text[joint.end() :]) if rise else None
        if rise is None or run is None:
            continue
        if run.value == 0:
            raise NotationError(f"{text} divides by nothing: its run is 0")
        unit = f"{rise.unit}/{run.unit}"
        return Figure(rise.value / run.value, unit if unit in units.BY_KIND["slope"] else "%")
    match = re.fullmatch(_INCHES_OR_RATIO, text)
    if match:
        raise NotationError(_inches_or_ratio(text, match["rise"], match["run"]))
    return None


def _inches_or_ratio(text: str, rise: str, run: str) -> str:
    return (
        f"{text} can mean {rise} inches or a ratio: write {rise} in per {run}, or 1:50 for 1 in 50"
    )


def _length(text: str) -> Figure | None:
    try:
        figure = single("length", text.strip(), None)
    except NotationError:
        return None
    return figure if figure is not None and figure.unit != SIEVE else None


_FORMS: dict[str, tuple[Callable[[str, str], Figure | None], ...]] = {
    "length": (_feet_and_inches, _sieve),
    "level": (_feet_and_inches,),
    "slope": (_ratio, _rise_over_run),
    "dig_slope": (_ratio,),
}
