"""Values written back: in the writer's own unit, to the side asked for, never two for one."""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from checker.reading import units
from checker.reading.kinds import KINDS
from checker.reading.notations import (
    Toward,
    format_apart,
    format_difference,
    format_quantity,
    read_quantity,
)

IN, FT = 0.0254, 0.3048
UNHURRIED = settings(deadline=None)  # a busy machine is no fault of the code


@pytest.mark.parametrize(
    ("kind", "value", "unit", "text"),
    [
        ("length", 2 * IN, "in", "2 in"),
        ("length", 1.94 * IN, "in", "1.9 in"),
        ("length", 0.17 * IN, "in", "0.17 in"),
        ("length", 12 * IN, "in", "12 in"),
        ("length", 9.4 * FT, "ft", "9.4 ft"),
        ("length", 41.8e-3 * IN, "mil", "41.8 mil"),
        ("length", 40e-3 * IN, "mil", "40 mil"),
        ("length", 0.1, "mm", "100 mm"),
        ("length", 0.000212, "mm", "0.212 mm"),
        ("length", 0.00021234, "mm", "0.212 mm"),
        ("length", 0.00123, "mm", "1.2 mm"),
        ("length", 0.0, "in", "0 in"),
        ("length", 98.5 * IN, "ft-in", "8'-2 1/2\""),
        ("length", 24 * IN, "ft-in", "2'-0\""),
        ("length", 1.875 * IN, "ft-in", '1 7/8"'),
        ("length", 0.125 * IN, "ft-in", '1/8"'),
        ("length", 11.99 * IN, "ft-in", "1'-0\""),
        ("length", -30 * IN, "ft-in", "-2'-6\""),
        ("length", 0.0, "ft-in", '0"'),
        ("level", 91.67 * FT, "ft", "91.67 ft"),
        ("level", 92 * FT, "ft", "92.00 ft"),
        ("level", -0.001 * FT, "ft", "0.00 ft"),
        ("level", -0.5 * FT, "ft", "-0.50 ft"),
        ("level", 28.05, "m", "28.050 m"),
        ("level", 28.0504, "mm", "28050 mm"),
        ("level", 28.05, "cm", "2805.0 cm"),
        ("level", 91.5 * FT, "in", "1098.0 in"),
        ("level", 91.5 * FT, "yd", "30.50 yd"),
        ("level", 91.5 * FT, "ft-in", "91'-6\""),
        ("fraction", 0.62, "%", "62 %"),
        ("fraction", 0.125, "%", "12.5 %"),
        ("fraction", 0.62, "", "0.62"),
        ("slope", 0.3 / 72, "%", "0.42 %"),
        ("slope", 1 / 192, "in/ft", "0.0625 in/ft"),
        ("slope", 0.05 / 12, "in/ft", "0.05 in/ft"),
        ("slope", 0.02, "1:n", "1:50"),
        ("slope", 1 / 62.56, "1:n", "1:62.6"),
        ("slope", 0.0, "1:n", "0 %"),
        ("slope", -0.01, "1:n", "-1 %"),
        ("slope", 1.0, "deg", "45 deg"),
        ("dig_slope", 1.5, "H:V", "1.5H:1V"),
        ("dig_slope", 1.4826, "H:V", "1.48H:1V"),
        ("dig_slope", 1.4826, "deg", "34 deg"),
        ("permeability", 1e-7, "cm/s", "1e-5 cm/s"),
        ("permeability", 1.1e-5, "cm/s", "0.0011 cm/s"),
        ("permeability", 0.96e-5, "cm/s", "9.6e-4 cm/s"),
        ("permeability", 9.999e-8, "cm/s", "1e-5 cm/s"),
        ("permeability", 1.234e-7, "cm/s", "1.2e-5 cm/s"),
        ("temperature", 277.15, "C", "4 C"),
        ("temperature", 273.15, "F", "32 F"),
        ("duration", 86400.0, "days", "1 day"),
        ("duration", 1209600.0, "days", "14 days"),
        ("area", 132.66554112, "sq ft", "1428 sq ft"),
        ("freezing_index", 72e6, "F-days", "1500 F-days"),
        ("number", 0.87654, "", "0.88"),
        ("count", 4.0, "", "4"),
        ("year", 2018.0, "", "2018"),
    ],
)
def test_a_value_in_its_writers_unit(kind: str, value: float, unit: str, text: str) -> None:
    assert format_quantity(kind, value, unit) == text


@pytest.mark.parametrize(
    ("kind", "value", "unit", "down", "up"),
    [
        ("length", 1.94 * IN, "in", "1.9 in", "2 in"),
        ("length", 1.93 * IN, "ft-in", '1 7/8"', '2"'),
        ("length", -1.93 * IN, "ft-in", '-2"', '-1 7/8"'),
        ("level", 91.678 * FT, "ft", "91.67 ft", "91.68 ft"),
        ("level", -91.678 * FT, "ft", "-91.68 ft", "-91.67 ft"),
        ("slope", 1 / 240.04, "1:n", "1:240.1", "1:240"),  # the flatter one is the lower
        ("dig_slope", 1.4826, "deg", "34 deg", "33.9 deg"),  # the steeper one is the lower
        # What a float is off by is not rounded away: 0.1016 m is 4 in and no less.
        ("length", 4 * IN, "in", "4 in", "4 in"),
        ("length", 92 * FT - 91 * FT, "in", "12 in", "12 in"),
        ("length", 92 * FT - 91 * FT, "ft-in", "1'-0\"", "1'-0\""),
        # A hundred-thousandth of the last place is more than noise.
        ("length", 2.000001 * IN, "in", "2 in", "2.1 in"),
        ("length", 1.999999 * IN, "in", "1.9 in", "2 in"),
    ],
)
def test_rounding_to_a_side(kind: str, value: float, unit: str, down: str, up: str) -> None:
    assert format_quantity(kind, value, unit, "down") == down
    assert format_quantity(kind, value, unit, "up") == up


def test_places_fix_the_decimals() -> None:
    assert format_quantity("length", 2 * IN, "in", places=3) == "2.000 in"
    assert format_quantity("length", 98.5 * IN, "ft-in", places=2) == "8'-2.50\""
    assert format_quantity("length", 98.4 * IN, "ft-in", places=0) == "8'-2\""
    assert format_quantity("level", 91.67 * FT, "ft", places=0) == "92 ft"
    assert format_quantity("permeability", 1.234e-7, "cm/s", places=2) == "1.23e-5 cm/s"


def test_two_values_get_the_decimals_that_tell_them_apart() -> None:
    assert format_apart("length", 1.96 * IN, 2 * IN, "in") == ("1.96 in", "2.00 in")
    assert format_apart("level", 91.67 * FT, 91.6703 * FT, "ft") == ("91.6700 ft", "91.6703 ft")
    assert format_apart("length", 1 * IN, 2 * IN, "in") == ("1 in", "2 in")


def test_values_that_differ_by_a_floats_last_digits_are_told_as_one() -> None:
    assert format_apart("length", 92 * FT - 91 * FT, 12 * IN, "in") == ("12 in", "12 in")


@pytest.mark.parametrize(
    ("kind", "value", "unit", "text"),
    [
        ("temperature", 5.0, "F", "9 F"),
        ("temperature", 5.0, "C", "5 C"),
        ("level", 2 * IN, "in", "2 in"),
        ("level", 0.02 * FT, "ft", "0.02 ft"),
        ("slope", 0.005, "1:n", "0.5 %"),
        ("slope", 0.005, "deg", "0.5 %"),
        ("slope", 0.005, "%", "0.5 %"),
        ("dig_slope", 0.25, "deg", "0.25H:1V"),
        ("length", 2 * IN, "in", "2 in"),
    ],
)
def test_a_difference_is_not_always_a_value(kind: str, value: float, unit: str, text: str) -> None:
    assert format_difference(kind, value, unit) == text


@pytest.mark.parametrize(
    ("kind", "unit"), [("length", "%"), ("length", ""), ("dig_slope", "1:n"), ("area", "ft-in")]
)
def test_a_unit_of_another_kind_is_refused(kind: str, unit: str) -> None:
    with pytest.raises(ValueError, match="is not written in"):
        format_quantity(kind, 1.0, unit)


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf")])
def test_what_is_not_finite_cannot_be_written(value: float) -> None:
    with pytest.raises(ValueError, match="cannot be written"):
        format_quantity("length", value, "in")


MANNERS = [("slope", "1:n"), ("slope", "deg"), ("dig_slope", "H:V"), ("dig_slope", "deg")]
MANNERS += [("length", "ft-in"), ("level", "ft-in"), ("fraction", ""), ("number", "")]
WAYS = MANNERS + [(kind, name) for kind in KINDS for name in sorted(units.BY_KIND[kind])
                  if units.BY_KIND[kind][name].name == name]  # fmt: skip


@UNHURRIED
@given(st.sampled_from(WAYS), st.floats(1e-4, 0.99), st.booleans())
def test_what_is_written_reads_back(way: tuple[str, str], value: float, below: bool) -> None:
    kind, unit = way
    if below and kind not in ("temperature", "dig_slope", "angle") and unit != "1:n":
        value = -value
    text = format_quantity(kind, value, unit, places=13)
    reading = read_quantity(kind, text)
    assert reading.value == pytest.approx(value, rel=1e-6, abs=1e-12)
    # Less than a foot has no feet to write.
    assert reading.unit == ("in" if unit == "ft-in" and abs(value) < FT else unit)


@UNHURRIED
@given(st.sampled_from(WAYS), st.floats(0.01, 0.99), st.sampled_from([None, 0, 1, 4]))
def test_down_reads_as_no_more_and_up_as_no_less(
    way: tuple[str, str], value: float, places: int | None
) -> None:
    kind, unit = way

    def back(toward: Toward) -> float:
        text = format_quantity(kind, value, unit, toward, places)
        assume(not text.startswith("1:0") or float(text[2:]) > 0)
        assume(not (unit == "deg" and kind == "dig_slope" and text in ("0 deg", "90 deg")))
        read = read_quantity(kind, text).value
        assert isinstance(read, float)
        return read

    slack = 1e-5 * value  # a millionth of the last place counts as whole
    assert back("down") <= value + slack
    assert back("up") >= value - slack


@UNHURRIED
@given(st.sampled_from(WAYS), st.floats(0.01, 0.99), st.floats(0.01, 0.99))
def test_two_different_values_are_never_told_as_the_same(
    way: tuple[str, str], first: float, second: float
) -> None:
    assume(abs(first - second) > 1e-8 * first)
    texts = format_apart(way[0], first, second, way[1])
    assert texts[0] != texts[1]
