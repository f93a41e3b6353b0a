"""The closed table of units: what each measures and its exact factor to SI.

Factors are fractions, so that nothing is lost before the one division that makes a float.
Sources: NIST Special Publication 811 (2008), appendix B.8, whose bold factors are exact: the inch,
the pound, the US gallon of 231 cubic inches, and standard gravity for the pound-force.
"""

import math
import re
from fractions import Fraction
from typing import NamedTuple

from checker.reading.kinds import KINDS

_IN = Fraction(254, 10_000)  # m
_FT = 12 * _IN
_YD = 3 * _FT
_MM = Fraction(1, 1_000)
_LB = Fraction(45_359_237, 100_000_000)  # kg
_LBF = _LB * Fraction(980_665, 100_000)  # N
_GAL = 231 * _IN**3  # m3
_LITRE = Fraction(1, 1_000)
_FOOT_SQUARED, _YARD_SQUARED = _FT**2, _YD**2
_MIN, _HOUR, _DAY = 60, 3_600, 86_400  # s
_DEG_F = Fraction(5, 9)  # K, as a difference
_BTU = Fraction(105_505_585_262, 100_000_000)  # J, of the International Table
_G = Fraction(980_665, 100_000)  # m/s2, standard gravity

# Unit: (size in SI, decimal places worth writing). Commas between thousands are read only here,
# because beside a metric unit the same comma may be a decimal point.
_US: dict[str, dict[str, tuple[Fraction, int]]] = {
    "length": {"in": (_IN, 1), "ft": (_FT, 2), "yd": (_YD, 2), "mil": (_IN / 1_000, 1)},
    "area": {"sq ft": (_FOOT_SQUARED, 0), "sq in": (_IN**2, 1), "sq yd": (_YARD_SQUARED, 1)},
    "volume": {
        "gal": (_GAL, 1),
        "cu ft": (_FT**3, 1),
        "cu yd": (_YD**3, 1),
        "cu in": (_IN**3, 1),
        "imp gal": (Fraction(454_609, 100_000_000), 1),
    },
    "slope": {"in/ft": (_IN / _FT, 4), "ft/ft": (Fraction(1), 4), "in/in": (Fraction(1), 4)},
    "speed": {"ft/day": (_FT / _DAY, 1), "in/h": (_IN / _HOUR, 2), "ft/s": (_FT, 2)},
    "area per length": {"sq in/ft": (_IN**2 / _FT, 2)},
    "flow": {"gpm": (_GAL / _MIN, 1), "gph": (_GAL / _HOUR, 0), "cfs": (_FT**3, 3)},
    "flow per area": {
        "gpm/sq ft": (_GAL / _MIN / _FOOT_SQUARED, 1),
    },
    "pressure": {
        "psf": (_LBF / _FOOT_SQUARED, 0),
        "lb/sq ft": (_LBF / _FOOT_SQUARED, 0),
        "ksf": (1_000 * _LBF / _FOOT_SQUARED, 2),
        "psi": (_LBF / _IN**2, 1),
        "lb/sq in": (_LBF / _IN**2, 1),
        "ksi": (1_000 * _LBF / _IN**2, 2),
    },
    "weight per volume": {
        "pcf": (_LBF / _FT**3, 1),
        "lb/cu ft": (_LBF / _FT**3, 1),
        "lb/cu yd": (_LBF / _YD**3, 0),
    },
    "force per length": {"lb/ft": (_LBF / _FT, 0), "kip/ft": (1_000 * _LBF / _FT, 2)},
    "conductivity of heat": {"Btu/h/ft/F": (_BTU / _HOUR / _FT / _DEG_F, 2)},
    "temperature": {"F": (_DEG_F, 0)},
    "mass per area": {
        "lb/sq yd": (_LB / _YARD_SQUARED, 2),
        "lb/sq ft": (_LB / _FOOT_SQUARED, 2),
        "oz/sq yd": (_LB / 16 / _YARD_SQUARED, 1),
    },
    "mass": {"lb": (_LB, 1), "oz": (_LB / 16, 1), "short ton": (2_000 * _LB, 1)},
    "freezing index": {"F-days": (_DEG_F * _DAY, 0)},
}
_SI: dict[str, dict[str, tuple[Fraction, int]]] = {
    "length": {
        "mm": (_MM, 0),
        "cm": (10 * _MM, 1),
        "m": (Fraction(1), 3),
        "um": (_MM / 1_000, 0),
    },
    "area": {"m2": (Fraction(1), 1), "cm2": (Fraction(1, 10_000), 1), "mm2": (_MM**2, 0)},
    "volume": {"m3": (Fraction(1), 2), "L": (_LITRE, 1), "mL": (_LITRE / 1_000, 0)},
    "a share": {"%": (Fraction(1, 100), 1)},
    "slope": {
        "%": (Fraction(1, 100), 1),
        "mm/m": (_MM, 1),
        "cm/m": (10 * _MM, 2),
        "m/m": (Fraction(1), 4),
    },
    # Pi is no fraction: the nearest double stands in for it, the one factor that is not exact.
    "an angle": {"deg": (Fraction(math.pi) / 180, 1), "rad": (Fraction(1), 3)},
    "speed": {
        "cm/s": (10 * _MM, 3),
        "m/s": (Fraction(1), 3),
        "mm/s": (_MM, 2),
        "um/s": (_MM / 1_000, 2),
        "m/day": (Fraction(1, _DAY), 2),
        "cm/day": (10 * _MM / _DAY, 1),
        "mm/h": (_MM / _HOUR, 1),
        "cm/h": (10 * _MM / _HOUR, 2),
    },
    "permittivity": {"1/s": (Fraction(1), 2)},
    "area per length": {"cm2/m": (Fraction(1, 10_000), 1), "mm2/m": (_MM**2, 0)},
    "flow": {
        "L/s": (_LITRE, 2),
        "L/min": (_LITRE / _MIN, 1),
        "m3/s": (Fraction(1), 4),
        "m3/h": (Fraction(1, _HOUR), 2),
    },
    "flow per area": {"L/s/m2": (_LITRE, 1), "L/min/m2": (_LITRE / _MIN, 1)},
    "pressure": {
        "kPa": (Fraction(1_000), 1),
        "Pa": (Fraction(1), 0),
        "MPa": (Fraction(10**6), 2),
        "kN/m2": (Fraction(1_000), 1),
        "N/mm2": (Fraction(10**6), 2),
    },
    # A mass per volume stands for its weight under standard gravity, as pcf does.
    "weight per volume": {
        "kN/m3": (Fraction(1_000), 1),
        "N/m3": (Fraction(1), 0),
        "kg/m3": (_G, 0),
    },
    "force per length": {"kN/m": (Fraction(1_000), 1), "N/m": (Fraction(1), 0)},
    "conductivity of heat": {"W/m/K": (Fraction(1), 2)},
    "temperature": {"C": (Fraction(1), 1), "K": (Fraction(1), 1)},
    "time": {
        "s": (Fraction(1), 0),
        "min": (Fraction(_MIN), 1),
        "h": (Fraction(_HOUR), 1),
        "days": (Fraction(_DAY), 1),
        "weeks": (Fraction(7 * _DAY), 1),
        "yr": (Fraction(_DAY) * Fraction(1461, 4), 1),  # the Julian year of 365.25 days
    },
    "mass per area": {"kg/m2": (Fraction(1), 2), "g/m2": (Fraction(1, 1_000), 0)},
    "mass": {"kg": (Fraction(1), 1), "g": (Fraction(1, 1_000), 1), "tonne": (Fraction(1_000), 2)},
    "freezing index": {"C-days": (Fraction(_DAY), 0)},
}
# Where a thermometer's zero lies above absolute zero, in K.
_ZERO = {"F": Fraction(45_967, 180), "C": Fraction(27_315, 100)}

# How people write each single unit, without dots and spaces, in lower case.
_WRITTEN = {
    "in": 'inch inches ins "',
    "ft": "foot feet ' lf",
    "yd": "yds yard yards",
    "mil": "mils",
    "mm": "millimeter millimeters millimetre millimetres",
    "cm": "centimeter centimeters centimetre centimetres",
    "m": "meter meters metre metres",
    "um": "µm μm micron microns micrometer micrometers micrometre micrometres",
    "sq ft": "sqft sf ft2 sqfoot sqfeet squarefoot squarefeet",
    "sq in": "sqin in2 sqinch sqinches squareinch squareinches",
    "sq yd": "sqyd sy yd2 sqyds sqyard sqyards squareyard squareyards",
    "m2": "sqm sqmeter sqmetre squaremeter squaremeters squaremetre squaremetres",
    "cm2": "sqcm squarecentimeters squarecentimetres",
    "mm2": "sqmm squaremillimeters squaremillimetres",
    "gal": "gals gallon gallons usgal usgallon usgallons",
    "imp gal": "impgal imperialgallon imperialgallons",
    "cu ft": "cuft cf ft3 cufeet cubicfoot cubicfeet",
    "cu yd": "cuyd cy yd3 cuyds cuyard cuyards cubicyard cubicyards",
    "cu in": "cuin in3 cuinch cuinches cubicinch cubicinches",
    "L": "liter liters litre litres",
    "mL": "milliliter milliliters millilitre millilitres",
    "m3": "cum cubicmeter cubicmeters cubicmetre cubicmetres",
    "%": "percent pct",
    "deg": "degree degrees",
    "rad": "radian radians",
    "F": "degf degreef degreesf fahrenheit",
    "C": "degc degreec degreesc celsius centigrade",
    "K": "kelvin kelvins",
    "s": "sec secs second seconds",
    "min": "mins minute minutes",
    "h": "hr hrs hour hours",
    "days": "day d",
    "weeks": "week wk wks",
    "yr": "yrs year years",
    "lb": "lbs pound pounds lbm",
    "oz": "ounce ounces",
    "short ton": "shortton shorttons",
    "kg": "kgs kilogram kilograms kilo kilos",
    "g": "gram grams",
    "tonne": "tonnes t metricton metrictons",
    "F-days": "fdays fday fd degfdays degfday degreedaysf degreefdays fdegreedays",
    "C-days": "cdays cday cd degcdays degcday degreedaysc degreecdays cdegreedays",
}
# The same unit put together in another way.
_SAME = {
    "gal/min": "gpm", "gal/h": "gph", "cu ft/s": "cfs", "gal/min/sq ft": "gpm/sq ft",
    "lbf/sq in": "psi", "lbf/sq ft": "psf", "s-1": "1/s", "sec-1": "1/s",
    "lbf/cu ft": "pcf", "plf": "lb/ft", "lbf/ft": "lb/ft", "klf": "kip/ft",
    "Btu/hftf": "Btu/h/ft/F", "Btu/(hftf)": "Btu/h/ft/F", "Btu/hrftf": "Btu/h/ft/F",
    "Btu/hftdegf": "Btu/h/ft/F",
    "W/mk": "W/m/K", "W/(mk)": "W/m/K",
    "ft/days": "ft/day", "m/days": "m/day", "cm/days": "cm/day",
}  # fmt: skip
_UNIT_OF = {
    "".join(name.lower().split()): name
    for rows in (_US, _SI)
    for units in rows.values()
    for whole in units
    for name in whole.split("/")
}
_UNIT_OF.update({word: name for name, words in _WRITTEN.items() for word in words.split()})
_PER = re.compile(r"\s*\bper\b\s*")
_LOOSE = re.compile(r"[\s.^_*·]|-(?![0-9])")

# Nominal openings of the numbered sieves, mm: ASTM E11, table 1 (AASHTO M 92 has the same).
_OPENINGS = {
    "3-1/2": "5.6", "4": "4.75", "5": "4", "6": "3.35", "7": "2.8", "8": "2.36", "10": "2",
    "12": "1.7", "14": "1.4", "16": "1.18", "18": "1", "20": "0.85", "25": "0.71", "30": "0.6",
    "35": "0.5", "40": "0.425", "45": "0.355", "50": "0.3", "60": "0.25", "70": "0.212",
    "80": "0.18", "100": "0.15", "120": "0.125", "140": "0.106", "170": "0.09", "200": "0.075",
    "230": "0.063", "270": "0.053", "325": "0.045", "400": "0.038", "450": "0.032",
    "500": "0.025", "635": "0.02",
}  # fmt: skip


class Unit(NamedTuple):
    """One unit. SI value = (written x times + zero) / over, in whole numbers."""

    name: str
    times: int
    over: int
    zero: int
    places: int
    commas: bool


def _unit(name: str, size: Fraction, places: int, commas: bool) -> Unit:
    zero = _ZERO.get(name, Fraction(0))
    over = math.lcm(size.denominator, zero.denominator)
    return Unit(name, int(size * over), over, int(zero * over), places, commas)


def _by_dimension() -> dict[str, dict[str, Unit]]:
    found: dict[str, dict[str, Unit]] = {}
    for rows, commas in ((_SI, False), (_US, True)):
        for dimension, units in rows.items():
            table = found.setdefault(dimension, {})
            table.update({name: _unit(name, *row, commas) for name, row in units.items()})
    return found


DIMENSIONS = _by_dimension()
# Unit by name and by every single-unit spelling, for each kind: what most texts need is one look.
BY_KIND: dict[str, dict[str, Unit]] = {}
for _kind, _described in KINDS.items():
    _table = BY_KIND[_kind] = {}
    for _dimension in _described.dimensions:
        _table.update(DIMENSIONS[_dimension])
    _table.update({_word: _table[_name] for _word, _name in _UNIT_OF.items() if _name in _table})


# A unit says who wrote the value only where both systems have one of their own for the same thing.
_METRIC = {name for dimension in _SI.keys() & _US for name in _SI[dimension]} - {"%"}
_AMERICAN = {name for units in _US.values() for name in units} | {"ft-in"}


def system_of(name: str) -> str:
    """Return `us` or `si`; "" for a unit that both use, such as %, h or deg, and for none."""
    return "us" if name in _AMERICAN else "si" if name in _METRIC else ""


def find(kind: str, text: str) -> Unit | None:
    """Return the unit that `text` names for this kind of quantity, or None."""
    table = BY_KIND[kind]
    return table.get(text) or table.get(canonical(text))


def canonical(text: str) -> str:
    """Return the name the table has for a unit as written: `Inches per foot` is `in/ft`."""
    text = text.lower().replace("°", "deg").replace("per cent", "percent")
    text = _LOOSE.sub("", _PER.sub("/", text))
    if text.startswith("/"):
        text = f"1{text}"
    name = "/".join(_UNIT_OF.get(part, part) for part in text.split("/"))
    return _SAME.get(name, name)


def sieve_opening(number: str) -> Fraction | None:
    """Return the nominal opening of a numbered sieve in m, or None when no such sieve is made."""
    opening = _OPENINGS.get(number)
    return Fraction(opening) * _MM if opening else None
