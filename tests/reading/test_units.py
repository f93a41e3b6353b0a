"""The table of units: its factors by hand, its words, and that nothing in it has two meanings."""

from fractions import Fraction

import pytest

from checker.reading import units
from checker.reading.kinds import KINDS, default_unit
from checker.reading.notations import format_quantity, read_quantity

# Exact by definition (NIST SP 811, B.8), or one line of arithmetic from those that are.
FACTORS = [
    ("length", "in", "0.0254"),
    ("length", "ft", "0.3048"),
    ("length", "yd", "0.9144"),
    ("length", "mil", "0.0000254"),
    ("length", "um", "0.000001"),
    ("area", "sq ft", "0.09290304"),  # 0.3048 squared
    ("area", "sq in", "0.00064516"),
    ("area", "sq yd", "0.83612736"),
    ("area", "cm2", "0.0001"),
    ("volume", "gal", "0.003785411784"),  # 231 x 0.0254 cubed
    ("volume", "imp gal", "0.00454609"),
    ("volume", "cu ft", "0.028316846592"),
    ("volume", "cu yd", "0.764554857984"),  # 27 cubic feet
    ("volume", "L", "0.001"),
    ("slope", "%", "0.01"),
    ("slope", "ft/ft", "1"),
    ("slope", "mm/m", "0.001"),
    ("permeability", "cm/s", "0.01"),
    ("flow", "cfs", "0.028316846592"),
    ("pressure", "kPa", "1000"),
    ("pressure", "MPa", "1000000"),
    ("duration", "h", "3600"),
    ("duration", "days", "86400"),
    ("duration", "weeks", "604800"),
    ("duration", "yr", "31557600"),  # 365.25 x 86400
    ("permittivity", "1/s", "1"),
    ("mass", "lb", "0.45359237"),
    ("mass", "oz", "0.028349523125"),  # a sixteenth
    ("mass", "short ton", "907.18474"),
    ("mass", "tonne", "1000"),
    ("unit_weight", "kN/m3", "1000"),
    ("unit_weight", "kg/m3", "9.80665"),  # times standard gravity
    ("force_per_length", "kN/m", "1000"),
    ("freezing_index", "F-days", "48000"),  # 5/9 x 86400
    ("freezing_index", "C-days", "86400"),
]


@pytest.mark.parametrize(("kind", "unit", "size"), FACTORS)
def test_a_unit_has_its_defined_size(kind: str, unit: str, size: str) -> None:
    row = units.BY_KIND[kind][unit]
    assert Fraction(row.times, row.over) == Fraction(size)


# Not whole decimals: by hand to the figures shown.
QUOTIENTS = [
    ("slope", "in/ft", Fraction(1, 12)),
    ("area_per_length", "sq in/ft", Fraction("0.0254") / 12),  # in2/ft = in x in / (12 in)
    ("rain", "in/h", Fraction("0.0254") / 3600),
    ("permeability", "ft/day", Fraction("0.3048") / 86400),
    ("flow", "gpm", Fraction("0.003785411784") / 60),
    ("flow_per_area", "gpm/sq ft", Fraction("0.003785411784") / 60 / Fraction("0.09290304")),
    ("pressure", "psi", Fraction("4.4482216152605") / Fraction("0.00064516")),
    ("pressure", "psf", Fraction("4.4482216152605") / Fraction("0.09290304")),
    ("rate", "lb/sq yd", Fraction("0.45359237") / Fraction("0.83612736")),
    ("unit_weight", "pcf", Fraction("4.4482216152605") / Fraction("0.028316846592")),
    ("force_per_length", "lb/ft", Fraction("4.4482216152605") / Fraction("0.3048")),
]


@pytest.mark.parametrize(("kind", "unit", "size"), QUOTIENTS)
def test_a_compound_unit_is_the_quotient_of_its_parts(kind: str, unit: str, size: Fraction) -> None:
    row = units.BY_KIND[kind][unit]
    assert Fraction(row.times, row.over) == size


@pytest.mark.parametrize(
    ("text", "kelvin"),
    [
        ("32 F", 273.15),  # water freezes
        ("212 F", 373.15),  # and boils
        ("-40 F", 233.15),  # where both scales meet
        ("-40 C", 233.15),
        ("0 K", 0.0),
    ],
)
def test_fixed_points_of_the_thermometers(text: str, kelvin: float) -> None:
    assert read_quantity("temperature", text).value == kelvin


# NIST SP 811, B.8, to the seven figures printed there.
PRINTED = [
    ("pressure", "psi", 6.894757e3),
    ("pressure", "psf", 4.788026e1),
    ("flow", "gpm", 6.309020e-5),
    ("rain", "in/h", 7.055556e-6),
    ("permeability", "ft/day", 3.527778e-6),
    ("rate", "oz/sq yd", 3.390575e-2),
    ("rate", "lb/sq ft", 4.882428),
    ("conductivity", "Btu/h/ft/F", 1.730735),
]


@pytest.mark.parametrize(("kind", "unit", "printed"), PRINTED)
def test_a_factor_agrees_with_the_printed_table(kind: str, unit: str, printed: float) -> None:
    row = units.BY_KIND[kind][unit]
    assert row.times / row.over == pytest.approx(printed, rel=2e-7)


WRITTEN = [
    ("length", "Inches", "in"),
    ("length", "IN.", "in"),
    ("length", "feet", "ft"),
    ("length", "mils", "mil"),
    ("length", "µm", "um"),
    ("area", "Sq. Ft.", "sq ft"),
    ("area", "square feet", "sq ft"),
    ("area", "ft^2", "sq ft"),
    ("volume", "C.Y.", "cu yd"),
    ("volume", "cubic yards", "cu yd"),
    ("volume", "US gal", "gal"),
    ("slope", "inches per foot", "in/ft"),
    ("slope", '"/ft', "in/ft"),
    ("fraction", "per cent", "%"),
    ("permeability", "cm per sec", "cm/s"),
    ("permeability", "feet per day", "ft/day"),
    ("rain", "inches per hour", "in/h"),
    ("permittivity", "/s", "1/s"),
    ("permittivity", "per second", "1/s"),
    ("permittivity", "s^-1", "1/s"),
    ("flow", "gallons per minute", "gpm"),
    ("flow", "l/min", "L/min"),
    ("flow_per_area", "gal/min/ft2", "gpm/sq ft"),
    ("pressure", "lbs per square foot", "lb/sq ft"),
    ("pressure", "KPA", "kPa"),
    ("temperature", "°F", "F"),
    ("temperature", "degrees C", "C"),
    ("rate", "lbs/sq. yd.", "lb/sq yd"),
    ("unit_weight", "lbs per cubic foot", "lb/cu ft"),
    ("unit_weight", "PCF", "pcf"),
    ("unit_weight", "kg/m^3", "kg/m3"),
    ("force_per_length", "plf", "lb/ft"),
    ("conductivity", "Btu/(h ft F)", "Btu/h/ft/F"),
    ("conductivity", "BTU/hr-ft-F", "Btu/h/ft/F"),
    ("conductivity", "W/(m K)", "W/m/K"),
    ("conductivity", "W/mK", "W/m/K"),
    ("freezing_index", "°F-days", "F-days"),
    ("freezing_index", "degree-days F", "F-days"),
]


@pytest.mark.parametrize(("kind", "written", "name"), WRITTEN)
def test_a_unit_is_known_by_the_ways_people_write_it(kind: str, written: str, name: str) -> None:
    found = units.find(kind, written)
    assert found is not None
    assert found.name == name


@pytest.mark.parametrize(
    ("kind", "written"),
    [("length", "gal"), ("volume", "ft"), ("level", "psi"), ("number", "%"), ("dig_slope", "%")],
)
def test_a_unit_of_another_kind_is_not_found(kind: str, written: str) -> None:
    assert units.find(kind, written) is None


def test_every_unit_is_found_by_its_own_name_written_in_any_case() -> None:
    for kind, table in units.BY_KIND.items():
        for unit in set(table.values()):
            for written in (unit.name, unit.name.upper(), unit.name.lower()):
                assert units.find(kind, written) == unit, (kind, written)


def test_every_dimension_serves_a_kind_and_every_kind_a_unit() -> None:
    used = {dimension for kind in KINDS.values() for dimension in kind.dimensions}
    assert used == set(units.DIMENSIONS)


def test_no_unit_is_in_two_dimensions_but_the_share_that_is_also_a_slope() -> None:
    seen: dict[str, str] = {}
    twice: set[str] = set()
    for dimension, table in units.DIMENSIONS.items():
        twice.update(name for name in table if seen.setdefault(name, dimension) != dimension)
    # lb/sq ft is a pressure on soil and a mass on a sheet: the kind of the key decides.
    assert twice == {"%", "lb/sq ft"}


# ASTM E11-01, table 1, alternative designation against standard designation.
E11 = {
    "3-1/2": "5.6", "4": "4.75", "8": "2.36", "10": "2.00", "16": "1.18", "20": "0.850",
    "30": "0.600", "40": "0.425", "50": "0.300", "60": "0.250", "70": "0.212", "100": "0.150",
    "140": "0.106", "200": "0.075", "325": "0.045",
}  # fmt: skip


@pytest.mark.parametrize(("number", "opening"), E11.items())
def test_a_sieve_has_the_opening_of_the_standard(number: str, opening: str) -> None:
    assert units.sieve_opening(number) == Fraction(opening) / 1000


def test_a_finer_sieve_has_the_higher_number() -> None:
    made = [
        (number, opening)
        for number in range(1, 700)
        if (opening := units.sieve_opening(str(number))) is not None
    ]
    assert len(made) == 32  # the 33 numbered sieves of the standard, less No. 3-1/2
    openings = [opening for _, opening in made]
    assert openings == sorted(openings, reverse=True)
    assert len(set(openings)) == len(openings)


def test_a_number_that_is_no_sieve_has_no_opening() -> None:
    assert units.sieve_opening("57") is None


@pytest.mark.parametrize("kind", sorted(KINDS))
@pytest.mark.parametrize("system", ["us", "si"])
def test_the_unit_of_a_computed_value_reads_back(kind: str, system: str) -> None:
    text = format_quantity(kind, 2.0, default_unit(kind, system), places=9)
    value = read_quantity(kind, text).value
    assert value == pytest.approx(2.0, rel=1e-6)


def test_long_lengths_are_told_in_feet_or_metres() -> None:
    assert default_unit("length", "us") == "in"
    assert default_unit("length", "us", 0.3) == "in"
    assert default_unit("length", "us", 46.0) == "ft"
    assert default_unit("length", "si", -46.0) == "m"
    assert default_unit("level", "us", 46.0) == "ft"


def test_a_kind_that_is_no_quantity_has_no_unit() -> None:
    assert default_unit("yes_no", "us") == ""


def test_only_two_systems_of_units_are_known() -> None:
    with pytest.raises(ValueError, match="metric"):
        default_unit("length", "metric")


@pytest.mark.parametrize(
    ("unit", "system"),
    [
        ("in", "us"), ("ft-in", "us"), ("mil", "us"), ("gpm", "us"), ("psf", "us"), ("F", "us"),
        ("lb/sq yd", "us"), ("mm", "si"), ("m", "si"), ("kPa", "si"), ("L/s", "si"), ("C", "si"),
        ("kg/m2", "si"), ("mm/m", "si"),
        # Both systems write these, so they say nothing of who wrote them.
        ("%", ""), ("1:n", ""), ("deg", ""), ("h", ""), ("days", ""), ("1/s", ""), ("", ""),
    ],
)  # fmt: skip
def test_a_unit_says_who_wrote_it_where_only_one_system_has_it(unit: str, system: str) -> None:
    assert units.system_of(unit) == system
