"""Every notation people write, what is refused and with which words."""

import math
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.reading.kinds import KINDS
from checker.reading.notations import NotationError, Reading, read_quantity
from checker.values import Range

IN, FT = 0.0254, 0.3048
MIL = IN / 1000
UNHURRIED = settings(deadline=None)  # a busy machine is no fault of the code


def read(kind: str, text: str) -> Reading:
    return read_quantity(kind, text, "ft" if kind == "level" else None)


SINGLE = [
    # Lengths. 8'-2 1/2" is 98.5 in x 0.0254 = 2.5019 m.
    ("length", "4 in", 0.1016, "in"),
    ("length", '4"', 0.1016, "in"),
    ("length", "4 inches", 0.1016, "in"),
    ("length", "4 IN.", 0.1016, "in"),
    ("length", "4in", 0.1016, "in"),
    ("length", "4-inch", 0.1016, "in"),
    ("length", "  4   in ", 0.1016, "in"),
    ("length", "4\u00a0in", 0.1016, "in"),
    ("length", "4\u200b in", 0.1016, "in"),
    ("length", ".5 in", 0.0127, "in"),
    ("length", "5. in", 0.127, "in"),
    ("length", "+4 in", 0.1016, "in"),
    ("length", "-4 in", -0.1016, "in"),
    ("length", "−4 in", -0.1016, "in"),
    ("length", "2 1/2 in", 0.0635, "in"),
    ("length", "2-1/2 in", 0.0635, "in"),
    ("length", '1/2"', 0.0127, "in"),
    ("length", "½ in", 0.0127, "in"),
    ("length", "2½”", 0.0635, "in"),
    ("length", "- ½ in", -0.0127, "in"),
    ("length", "2'-6\"", 0.762, "ft-in"),
    ("length", "2' 6\"", 0.762, "ft-in"),
    ("length", "2'6\"", 0.762, "ft-in"),
    ("length", "2'-6", 0.762, "ft-in"),
    ("length", "2'-0\"", 0.6096, "ft-in"),
    ("length", "0'-6\"", 0.1524, "ft-in"),
    ("length", "-2'-6\"", -0.762, "ft-in"),
    ("length", "8'-2 1/2\"", 2.5019, "ft-in"),
    ("length", "8'-2-1/2\"", 2.5019, "ft-in"),
    ("length", "8' - 2 1/2\"", 2.5019, "ft-in"),
    ("length", "8'–2½\"", 2.5019, "ft-in"),
    ("length", "8’-2 ½”", 2.5019, "ft-in"),
    ("length", "8′ 2.5″", 2.5019, "ft-in"),
    ("length", "8'-2 1/2''", 2.5019, "ft-in"),
    ("length", "8 ft 2 1/2 in", 2.5019, "ft-in"),
    ("length", "8 ft. 2 1/2 in.", 2.5019, "ft-in"),
    ("length", "8 feet, 2 1/2 inches", 2.5019, "ft-in"),
    ("length", "8 ft and 2 1/2 in", 2.5019, "ft-in"),
    ("length", "95 ft", 28.956, "ft"),
    ("length", "95'", 28.956, "ft"),
    ("length", "1,428 ft", 435.2544, "ft"),
    ("length", "100 mm", 0.1, "mm"),
    ("length", "0.21 mm", 0.00021, "mm"),
    ("length", "1 x 10^-5 m", 1e-5, "m"),
    ("length", "1.5×10⁻⁵ m", 1.5e-5, "m"),
    ("length", "10⁻⁵ m", 1e-5, "m"),
    ("length", "1E-05 m", 1e-5, "m"),
    ("length", "212 µm", 0.000212, "um"),
    ("length", "40 mil", 40 * MIL, "mil"),
    ("length", "40-mil", 40 * MIL, "mil"),
    ("length", "No. 70", 0.000212, "mm"),
    ("length", "no 200 sieve", 0.000075, "mm"),
    ("length", "#4", 0.00475, "mm"),
    ("length", "U.S. Standard Sieve No. 70", 0.000212, "mm"),
    ("length", "No. 3-1/2", 0.0056, "mm"),
    ("length", "4 in typ.", 0.1016, "in"),
    ("length", "4 in (typ)", 0.1016, "in"),
    ("length", "nominal 4 in", 0.1016, "in"),
    ("length", "4 in (100 mm)", 0.1016, "in"),
    ("length", "0.21 mm (No. 70)", 0.00021, "mm"),
    # Levels: plain numbers stand on the datum's unit. 91.67 x 0.3048 = 27.941016.
    ("level", "91.67", 27.941016, "ft"),
    ("level", "-2.5", -0.762, "ft"),
    ("level", "+91.67", 27.941016, "ft"),
    ("level", "El. 91.67", 27.941016, "ft"),
    ("level", "1,091.67", 332.741016, "ft"),
    ("level", "91.67'", 27.941016, "ft"),
    ("level", "91'-8\"", 27.94, "ft-in"),
    ("level", "-0'-6\"", -0.1524, "ft-in"),
    ("level", "28.05 m", 28.05, "m"),
    # Slopes, rise over run. 1/8 in in 12 in is 1/96.
    ("slope", "2 %", 0.02, "%"),
    ("slope", "-2 %", -0.02, "%"),
    ("slope", "1/8 in/ft", 1 / 96, "in/ft"),
    ("slope", '1/8" per foot', 1 / 96, "in/ft"),
    ("slope", '1/8"/ft', 1 / 96, "in/ft"),
    ("slope", "1/8 inch per ft.", 1 / 96, "in/ft"),
    ("slope", "6 in in 10 ft", 0.05, "in/ft"),
    ("slope", "6\" in 10'", 0.05, "in/ft"),
    ("slope", "6 in per 10 ft", 0.05, "in/ft"),
    ("slope", "6 inches over 10 feet", 0.05, "in/ft"),
    ("slope", "6\"/10'", 0.05, "in/ft"),
    ("slope", "-6 in in 10 ft", -0.05, "in/ft"),
    ("slope", "0.5 ft/100 ft", 0.005, "ft/ft"),
    ("slope", "100 mm per 5'-0\"", 0.1 / 1.524, "%"),
    ("slope", "10 mm/m", 0.01, "mm/m"),
    ("slope", "1:50", 0.02, "1:n"),
    ("slope", "1 in 50", 0.02, "1:n"),
    ("slope", "1V:50H", 0.02, "1:n"),
    ("slope", "50H : 1V", 0.02, "1:n"),
    ("slope", "1:50 (2 %)", 0.02, "1:n"),
    ("slope", "0 deg", 0.0, "deg"),
    ("slope", "45 deg", 1.0, "deg"),
    ("slope", "-45°", -1.0, "deg"),
    # The side of a dig, run over rise.
    ("dig_slope", "1.5H:1V", 1.5, "H:V"),
    ("dig_slope", "1-1/2H:1V", 1.5, "H:V"),
    ("dig_slope", "1 1/2 H : 1 V", 1.5, "H:V"),
    ("dig_slope", "1V:1.5H", 1.5, "H:V"),
    ("dig_slope", "1.5 horizontal to 1 vertical", 1.5, "H:V"),
    ("dig_slope", "3/4H:1V", 0.75, "H:V"),
    ("dig_slope", "45 deg", 1.0, "deg"),
    ("dig_slope", "90°", 0.0, "deg"),
    # Shares and plain numbers.
    ("fraction", "62 %", 0.62, "%"),
    ("fraction", "62%", 0.62, "%"),
    ("fraction", "62 percent", 0.62, "%"),
    ("fraction", "0.62", 0.62, ""),
    ("fraction", "1/2", 0.5, ""),
    ("number", "41", 41.0, ""),
    ("number", "-0.5", -0.5, ""),
    ("count", "2", 2, ""),
    ("count", "0", 0, ""),
    # The rest, one or two of each.
    ("area", "1428 sq ft", 132.66554112, "sq ft"),  # 1428 x 0.09290304
    ("area", "1,428 ft²", 132.66554112, "sq ft"),
    ("volume", "60 gal", 0.22712470704, "gal"),  # 60 x 0.003785411784
    ("volume", "12.5 cy", 9.5569357248, "cu yd"),  # 12.5 x 0.764554857984
    ("volume", "12.5 cu yd", 9.5569357248, "cu yd"),
    ("volume", "12.5 yd3", 9.5569357248, "cu yd"),
    ("volume", "10 m³", 10.0, "m3"),
    ("permeability", "1e-5 cm/s", 1e-7, "cm/s"),
    ("permeability", "1 x 10^-5 cm/s", 1e-7, "cm/s"),
    ("permittivity", "1.3 1/s", 1.3, "1/s"),
    ("permittivity", "1 1/s", 1.0, "1/s"),
    ("permittivity", "1.3 s^-1", 1.3, "1/s"),
    ("permittivity", "1.3 s⁻¹", 1.3, "1/s"),
    ("permittivity", "1.3 per second", 1.3, "1/s"),
    ("area_per_length", "1.0 sq in/ft", 0.0254 / 12, "sq in/ft"),
    ("area_per_length", "20 cm2/m", 0.002, "cm2/m"),
    ("flow", "8 gpm", 8 * 0.003785411784 / 60, "gpm"),
    ("flow_per_area", "110 gpm/sq ft", 0.0747006944444444, "gpm/sq ft"),  # 1 is 6.7909722e-4 m/s
    ("pressure", "150 psf", 7182.03884705, "psf"),  # 150 x 47.8802589803
    ("pressure", "46 psi", 317158.835486, "psi"),  # 46 x 6894.75729317
    ("pressure", "20 kPa", 20000.0, "kPa"),
    ("temperature", "40 F", 277.5944444444, "F"),  # (40 + 459.67) / 1.8
    ("temperature", "40.5 F", 277.8722222222, "F"),
    ("temperature", "4 C", 277.15, "C"),
    ("temperature", "-3 °C", 270.15, "C"),
    ("duration", "24 h", 86400.0, "h"),
    ("duration", "14 days", 1209600.0, "days"),
    ("duration", "28-day", 2419200.0, "days"),
    ("duration", "10 min", 600.0, "min"),
    ("rain", "3.4 in/h", 3.4 * 0.0254 / 3600, "in/h"),
    ("rate", "3 lb/sq yd", 3 * 0.45359237 / 0.83612736, "lb/sq yd"),
    ("mass", "55 lb", 24.94758035, "lb"),
    ("freezing_index", "1500 F-days", 72_000_000.0, "F-days"),  # 1500 x 5/9 x 86400
    ("angle", "180 deg", math.pi, "deg"),
]


@pytest.mark.parametrize(("kind", "text", "value", "unit"), SINGLE)
def test_one_figure(kind: str, text: str, value: float, unit: str) -> None:
    reading = read(kind, text)
    assert reading.unit == unit
    assert reading.value == pytest.approx(value, rel=1e-11, abs=0.0)


@pytest.mark.parametrize(
    ("kind", "text", "run"),
    # Cotangents from a printed table of four figures.
    [("dig_slope", "34 deg", 1.5), ("dig_slope", "53°", 0.75), ("slope", "2 deg", 0.03492)],
)
def test_an_angle_becomes_a_ratio(kind: str, text: str, run: float) -> None:
    assert read(kind, text).value == pytest.approx(run, abs=5e-5)


def test_a_count_is_a_whole_number() -> None:
    assert type(read("count", "2").value) is int


INF = math.inf
RANGES = [
    ("length", "2 to 4 in", 2 * IN, 4 * IN, "in"),
    ("length", "2-4 in", 2 * IN, 4 * IN, "in"),
    ("length", "2–4 in", 2 * IN, 4 * IN, "in"),
    ("length", '2"-4"', 2 * IN, 4 * IN, "in"),
    ("length", "2 in - 4 in", 2 * IN, 4 * IN, "in"),
    ("length", "from 2 to 4 in", 2 * IN, 4 * IN, "in"),
    ("length", "between 2 and 4 in", 2 * IN, 4 * IN, "in"),
    ("length", "2 in to 100 mm", 2 * IN, 0.1, "in"),
    ("length", "1/2-3/4 in", IN / 2, 0.75 * IN, "in"),
    ("length", "1-1/2-2 in", 1.5 * IN, 2 * IN, "in"),
    ("length", "3/4-1 1/2 in", 0.75 * IN, 1.5 * IN, "in"),
    ("length", "2'-6\"-3'-0\"", 0.762, 0.9144, "ft-in"),
    ("length", "2' - 3'", 2 * FT, 3 * FT, "ft"),
    ("length", "6-in. to 8-in.", 6 * IN, 8 * IN, "in"),
    ("length", "1,250 to 1,500 ft", 381.0, 457.2, "ft"),
    ("length", "No. 40 to No. 100", 0.00015, 0.000425, "mm"),
    ("length", "No. 100 to No. 40", 0.00015, 0.000425, "mm"),
    ("level", "90.5 to 91", 90.5 * FT, 91 * FT, "ft"),
    ("level", "-0.5 to 0.5", -0.5 * FT, 0.5 * FT, "ft"),
    ("level", "90'-6\" - 91'-0\"", 90.5 * FT, 91 * FT, "ft-in"),
    ("permeability", "1e-6 to 1e-4 cm/s", 1e-8, 1e-6, "cm/s"),
    ("permeability", "1e-6-1e-4 cm/s", 1e-8, 1e-6, "cm/s"),
    ("permeability", "10⁻⁶ – 10⁻⁴ cm/s", 1e-8, 1e-6, "cm/s"),
    ("slope", "1/8 to 1/4 in/ft", 1 / 96, 1 / 48, "in/ft"),
    ("slope", "1/8-1/4 in/ft", 1 / 96, 1 / 48, "in/ft"),
    ("slope", "1:100 to 1:50", 0.01, 0.02, "1:n"),
    ("fraction", "10-20 %", 0.1, 0.2, "%"),
    ("fraction", "0.1 to 0.2", 0.1, 0.2, ""),
    ("temperature", "-5 to 40 C", 268.15, 313.15, "C"),
    ("freezing_index", "1000-1500 F-days", 48e6, 72e6, "F-days"),
    ("number", "3-5", 3.0, 5.0, ""),
    ("dig_slope", "1H:1V to 1.5H:1V", 1.0, 1.5, "H:V"),
    ("dig_slope", "45 to 90 deg", 0.0, 1.0, "deg"),  # steeper runs out less
    # One side open: nothing is below nothing, except a level.
    ("length", "40 mil min", 40 * MIL, INF, "mil"),
    ("length", "40 mil (min.)", 40 * MIL, INF, "mil"),
    ("length", "40 mil (1.0 mm) min", 40 * MIL, INF, "mil"),
    ("length", "min 40 mil", 40 * MIL, INF, "mil"),
    ("length", "Min. 40 mil", 40 * MIL, INF, "mil"),
    ("length", "minimum of 40 mil", 40 * MIL, INF, "mil"),
    ("length", ">= 40 mil", 40 * MIL, INF, "mil"),
    ("length", "≥40 mil", 40 * MIL, INF, "mil"),
    ("length", "> 40 mil", 40 * MIL, INF, "mil"),
    ("length", "at least 40 mil", 40 * MIL, INF, "mil"),
    ("length", "not less than 40 mil", 40 * MIL, INF, "mil"),
    ("length", "40 mil or more", 40 * MIL, INF, "mil"),
    ("length", "0.21 mm max", 0.0, 0.00021, "mm"),
    ("length", "<= 2 in", 0.0, 2 * IN, "in"),
    ("length", "<2 in", 0.0, 2 * IN, "in"),
    ("length", "at most 2'-6\"", 0.0, 0.762, "ft-in"),
    ("length", "not to exceed 2 in", 0.0, 2 * IN, "in"),
    ("length", "max 0 in", 0.0, 0.0, "in"),
    ("length", "max -1 in", -INF, -IN, "in"),
    ("level", "91.67 max", -INF, 91.67 * FT, "ft"),
    ("level", "91.67 min", 91.67 * FT, INF, "ft"),
    ("duration", "10 min min", 600.0, INF, "min"),
    ("duration", "min 24 h", 86400.0, INF, "h"),
    ("permittivity", "0.5 1/s min", 0.5, INF, "1/s"),
    ("slope", "2 % min", 0.02, INF, "%"),
    ("count", "2 min", 2.0, INF, ""),
    ("fraction", "<5 %", 0.0, 0.05, "%"),
    ("dig_slope", "1.5H:1V min", 1.5, INF, "H:V"),
    ("dig_slope", "45 deg max", 1.0, INF, "deg"),  # no steeper: the run is at least the rise
    ("dig_slope", "45 deg min", 0.0, 1.0, "deg"),
    # A figure and how far it may be off.
    ("length", "1/4 in +/- 1/16 in", 0.1875 * IN, 0.3125 * IN, "in"),
    ("length", "1/4 +/- 1/16 in", 0.1875 * IN, 0.3125 * IN, "in"),
    ("length", "1/4 in ± 1/16", 0.1875 * IN, 0.3125 * IN, "in"),
    ("length", "8'-2\" +/- 1/4 in", 97.75 * IN, 98.25 * IN, "ft-in"),
    ("level", "91.67 +/- 0.02", 91.65 * FT, 91.69 * FT, "ft"),
    ("level", "100 +/- 3 in", 99.75 * FT, 100.25 * FT, "ft"),
    ("temperature", "40 F +/- 9 F", 272.5944444444, 282.5944444444, "F"),  # 9 F is 5 K
    ("fraction", "50 % +/- 5 %", 0.45, 0.55, "%"),
]


@pytest.mark.parametrize(("kind", "text", "low", "high", "unit"), RANGES)
def test_a_range(kind: str, text: str, low: float, high: float, unit: str) -> None:
    reading = read(kind, text)
    assert isinstance(reading.value, Range)
    assert reading.unit == unit
    assert reading.value.low == pytest.approx(low, rel=1e-11, abs=0.0)
    assert reading.value.high == pytest.approx(high, rel=1e-11, abs=0.0)


REFUSED = [
    ("length", "", "nothing is written"),
    ("length", " \n", "nothing is written"),
    ("length", "4", "4 has no unit; a length wants in, ft, mm"),
    ("length", "2-4", "4 has no unit"),
    ("length", "8' - 6", 'after 8 \' - stands "6"'),
    ("length", "4 gal", "gal measures volume; a length wants in, ft, mm"),
    ("length", "4 %", "% measures a share"),
    ("length", '1/4"/ft', "in/ft measures slope"),
    ("length", "4 inchs", "did you mean inches?"),
    ("length", "2-4 inchs", "did you mean inches?"),
    ("length", "4 furlongs", '"furlongs" after 4 is not a known unit'),
    ("length", "4 x 6 in", '"x 6 in" after 4'),
    ("length", "6 in thick", 'after 6 in stands "thick"'),
    ("length", "4' 13\"", "12 inches or more after the feet"),
    ("length", "4' 12\"", "12 inches or more after the feet"),
    ("length", "4.5' 6\"", "a part of a foot before the inches"),
    ("length", "3/0 in", "nothing can be split into 0 parts"),
    ("length", "3 3/2 in", "3/2 is not less than 1"),
    ("length", "3 2/2 in", "2/2 is not less than 1"),
    ("length", "2 4 in", '"4 in" after 2'),
    ("length", "1.2.3 in", "not a known unit"),
    ("length", "٤ in", "does not begin with a number"),
    ("length", "nan in", "does not begin with a number"),
    ("length", "inf", "does not begin with a number"),
    ("length", "1e999 in", "beyond anything"),
    ("length", "1e-999 in", "beyond anything"),
    ("length", "4 " + "in " * 70, "212 characters long"),
    ("length", "about 4 in", "write two ends"),
    ("length", "~4 in", "write two ends"),
    ("length", "1,5 m", "write the decimal with a point"),
    ("length", "0,125 in", "write the decimal with a point"),
    ("length", "1,428 mm", "can mean thousands or a decimal"),
    ("length", "4 to 2 in", "runs backwards"),
    ("length", "4-2 in", "runs backwards"),
    ("length", "-3-4 in", "is not a known unit"),
    ("length", "+/- 1/4 in", "a figure on each side of +/-"),
    ("length", "4 in +/- -1 in", "a tolerance below nothing"),
    ("length", "8'-2\" +/- 1/4", "1/4 has no unit"),
    ("length", "4 in (200 mm)", "differ"),
    ("length", "4 in (2 places)", '"places" after 2'),
    ("length", "No. 57", "no standard sieve is No. 57"),
    ("length", "No. 70 max", "the number or the opening of the sieve"),
    ("length", "min 4 in max", 'after 4 in stands "max"'),
    ("level", "90-6", "a range or feet and inches"),
    ("level", "91'-8\" +/- 1/4", "1/4 has no unit"),
    ("level", "91.67 ft above sea", 'stands "above sea"'),
    ("slope", "0.02", "0.02 has no unit"),
    ("slope", "1/50", "or 1:50 (rise to run)"),
    ("slope", "6 in 10 ft", "write 6 in per 10 ft"),
    ("slope", "6 in 10", "write 6 in per 10 ft"),
    ("slope", "1:0", "its run is 0"),
    ("slope", "6 in per 0 ft", "its run is 0"),
    ("slope", "1:50 to 1:100", "runs backwards"),
    ("slope", "90 deg", "less than 90 deg"),
    ("slope", "1:50 +/- 1:200", "write its two ends"),
    ("slope", "1H:2H", "the same direction twice"),
    ("dig_slope", "1.5:1", "can be read both ways: write 1.5H:1V when 1.5 is across"),
    ("dig_slope", "3/4:1", "write 3/4H:1V"),
    ("dig_slope", "1:1", "can be read both ways"),
    ("dig_slope", "1.5", "wants 1.5H:1V"),
    ("dig_slope", "1.5H:0V", "its rise is 0"),
    ("dig_slope", "100 %", "wants 1.5H:1V"),
    ("dig_slope", "120 deg", "up to 90 deg"),
    ("dig_slope", "0 deg", "above 0 deg"),
    ("fraction", "62", "write 62 %, or 0.62"),
    ("fraction", "1.5", "write 1.5 %, or 0.015"),
    ("fraction", "- 62", "write - 62 %, or -0.62"),
    ("number", "41 %", "a plain number wants no unit"),
    ("number", "1,500", "can mean thousands or a decimal"),
    ("count", "2.5", "a whole number"),
    ("count", "two", "does not begin with a number"),
    ("volume", "12 yards", "yd measures length; a volume wants gal"),
    ("volume", "18 tons", "write short ton, or tonne"),
    ("duration", "2 months", "write days or weeks"),
    ("duration", "10 m", "m measures length; a time wants min"),
    ("temperature", "40", "wants F or C"),
    ("permeability", "1 x 10-5 cm/s", '"x 10-5 cm/s" after 1'),  # its superscript was lost
]


@pytest.mark.parametrize(("kind", "text", "because"), REFUSED)
def test_what_is_refused_and_why(kind: str, text: str, because: str) -> None:
    with pytest.raises(NotationError) as refused:
        read(kind, text)
    assert because in str(refused.value)


def test_a_text_may_be_as_long_as_a_few_words_and_no_longer() -> None:
    assert read("length", "2 to 4 in".ljust(200)).value == Range(2 * IN, 4 * IN)
    with pytest.raises(NotationError, match="201 characters long"):
        read("length", "2 to 4 in".ljust(201))


def test_a_bare_level_needs_the_unit_of_levels() -> None:
    assert read_quantity("level", "28.05", "m").value == 28.05
    assert read_quantity("level", "28.05 +/- 5 mm", "m").value == Range(28.045, 28.055)
    with pytest.raises(NotationError, match="28.05 has no unit; a level wants ft, m"):
        read_quantity("level", "28.05", None)


def test_the_unit_of_levels_is_no_unit_for_anything_else() -> None:
    with pytest.raises(NotationError, match="has no unit"):
        read_quantity("length", "4", "ft")


DIGITS = st.text("0123456789", min_size=1, max_size=15)


@UNHURRIED
@given(DIGITS, DIGITS, st.sampled_from([("in", "0.0254"), ("ft", "0.3048"), ("mm", "0.001")]))
def test_a_decimal_is_the_nearest_float_to_the_exact_product(
    whole: str, decimals: str, unit: tuple[str, str]
) -> None:
    name, size = unit
    exact = Fraction(f"{whole}.{decimals}") * Fraction(size)
    assert read("length", f"{whole}.{decimals} {name}").value == float(exact)


@UNHURRIED
@given(st.integers(0, 500), st.integers(0, 11), st.integers(0, 63))
def test_feet_inches_and_sixtyfourths_are_exact(feet: int, inches: int, part: int) -> None:
    exact = Fraction(feet * 12 + inches) + Fraction(part, 64)
    meant = float(exact * Fraction("0.0254"))
    fraction = f"{inches} {part}/64" if part else f"{inches}"
    assert read("length", f"{feet}'-{fraction}\"").value == meant
    assert read("length", f"{feet} ft {fraction} in").value == meant


PIECES = st.sampled_from(
    [
        "4",
        "2",
        "10",
        "0",
        "1/2",
        "3/0",
        "1e",
        "e9",
        "1e30",
        "-",
        "+",
        ".",
        ",",
        "'",
        '"',
        "ft",
        "in",
        "mm",
        "mil",
        "%",
        "min",
        "max",
        "to",
        "and",
        "(",
        ")",
        ":",
        "h",
        "V",
        ">=",
        "+/-",
        "±",
        "No.",
        "70",
        "/",
        "per",
        "deg",
        "°",
        "F",
        "C",
        "s",
        "1/s",
        "²",
        "⁻¹",
        "½",
        "10^",
        "gal",
        "typ",
        "nan",
        "EL",
        "between",
        "#",
        "–",
        "’",
        "٣",
        "99999999999999999999",
    ]
    + [" ", "\n", "\x00"]
)


@UNHURRIED
@given(
    st.sampled_from(sorted(KINDS)),
    st.one_of(st.text(max_size=40), st.lists(PIECES, max_size=9).map("".join)),
    st.sampled_from([None, "ft", "m"]),
)
def test_any_text_is_read_or_refused_in_one_sentence(
    kind: str, text: str, level_unit: str | None
) -> None:
    reading: Reading | None = None
    message = ""
    try:
        reading = read_quantity(kind, text, level_unit)
    except NotationError as refused:
        message = str(refused)
    if reading is None:
        assert message.strip()
        return
    value = reading.value
    low, high = value if isinstance(value, Range) else (value, value)
    assert low <= high
    assert math.isfinite(low) or math.isfinite(high)
