"""The table of units beside pint's, which was made by other people from the same definitions."""

from typing import Any

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.reading import units
from checker.reading.notations import read_quantity

# What each unit is called by pint, and the SI unit to convert to.
BY_PINT: dict[str, tuple[str, dict[str, str]]] = {
    "length": (
        "m",
        {"in": "inch", "ft": "foot", "yd": "yard", "mil": "thou", "mm": "mm", "cm": "cm",
         "m": "m", "um": "um"},
    ),
    "area": (
        "m**2",
        {"sq ft": "foot**2", "sq in": "inch**2", "sq yd": "yard**2", "m2": "m**2",
         "cm2": "cm**2", "mm2": "mm**2"},
    ),
    "volume": (
        "m**3",
        {"gal": "gallon", "imp gal": "imperial_gallon", "cu ft": "foot**3", "cu yd": "yard**3",
         "cu in": "inch**3", "m3": "m**3", "L": "liter", "mL": "milliliter"},
    ),
    "a share": ("dimensionless", {"%": "percent"}),
    "slope": (
        "dimensionless",
        {"in/ft": "inch/foot", "ft/ft": "foot/foot", "in/in": "inch/inch", "%": "percent",
         "mm/m": "mm/m", "cm/m": "cm/m", "m/m": "m/m"},
    ),
    "an angle": ("radian", {"deg": "degree", "rad": "radian"}),
    "speed": (
        "m/s",
        {"ft/day": "foot/day", "in/h": "inch/hour", "ft/s": "foot/second", "cm/s": "cm/s",
         "m/s": "m/s", "mm/s": "mm/s", "um/s": "um/s", "m/day": "m/day", "cm/day": "cm/day",
         "mm/h": "mm/hour", "cm/h": "cm/hour"},
    ),
    "permittivity": ("1/s", {"1/s": "1/s"}),
    "area per length": (
        "m",
        {"sq in/ft": "inch**2/foot", "cm2/m": "cm**2/m", "mm2/m": "mm**2/m"},
    ),
    "flow": (
        "m**3/s",
        {"gpm": "gallon/minute", "gph": "gallon/hour", "cfs": "foot**3/second",
         "L/s": "liter/second", "L/min": "liter/minute", "m3/s": "m**3/s", "m3/h": "m**3/hour"},
    ),
    "flow per area": (
        "m/s",
        {"gpm/sq ft": "gallon/minute/foot**2", "L/s/m2": "liter/second/m**2",
         "L/min/m2": "liter/minute/m**2"},
    ),
    "pressure": (
        "Pa",
        {"psf": "force_pound/foot**2", "lb/sq ft": "force_pound/foot**2",
         "ksf": "kip/foot**2", "psi": "psi", "lb/sq in": "psi", "ksi": "ksi",
         "kPa": "kPa", "Pa": "Pa", "MPa": "MPa", "kN/m2": "kN/m**2", "N/mm2": "N/mm**2"},
    ),
    "weight per volume": (
        "N/m**3",
        {"pcf": "force_pound/foot**3", "lb/cu ft": "force_pound/foot**3",
         "lb/cu yd": "force_pound/yard**3", "kN/m3": "kN/m**3", "N/m3": "N/m**3",
         "kg/m3": "kg/m**3*standard_gravity"},
    ),
    "force per length": (
        "N/m",
        {"lb/ft": "force_pound/foot", "kip/ft": "kip/foot", "kN/m": "kN/m", "N/m": "N/m"},
    ),
    "conductivity of heat": (
        "W/m/kelvin",
        {"Btu/h/ft/F": "Btu_it/hour/foot/delta_degF", "W/m/K": "W/m/kelvin"},
    ),
    "temperature": ("kelvin", {"F": "degF", "C": "degC", "K": "kelvin"}),
    "time": (
        "s",
        {"s": "s", "min": "minute", "h": "hour", "days": "day", "weeks": "week", "yr": "year"},
    ),
    "mass per area": (
        "kg/m**2",
        {"lb/sq yd": "pound/yard**2", "lb/sq ft": "pound/foot**2", "oz/sq yd": "ounce/yard**2",
         "kg/m2": "kg/m**2", "g/m2": "g/m**2"},
    ),
    "mass": (
        "kg",
        {"lb": "pound", "oz": "ounce", "short ton": "short_ton", "kg": "kg", "g": "g",
         "tonne": "metric_ton"},
    ),
    "freezing index": (
        "kelvin*s",
        {"F-days": "delta_degF*day", "C-days": "delta_degC*day"},
    ),
}  # fmt: skip
EVERY = [
    (dimension, unit, theirs, si)
    for dimension, (si, named) in BY_PINT.items()
    for unit, theirs in named.items()
]


REGISTRY: Any = pint.UnitRegistry()
UNHURRIED = settings(deadline=None)  # a busy machine is no fault of the code


def test_every_unit_of_the_table_is_compared() -> None:
    assert {name: set(table) for name, table in units.DIMENSIONS.items()} == {
        name: set(named) for name, (_, named) in BY_PINT.items()
    }


@pytest.mark.parametrize(("dimension", "unit", "theirs", "si"), EVERY)
@pytest.mark.parametrize("figure", [1.0, 37.5])
def test_a_unit_has_the_size_that_pint_gives_it(
    dimension: str, unit: str, theirs: str, si: str, figure: float
) -> None:
    row = units.DIMENSIONS[dimension][unit]
    ours = (figure * row.times + row.zero) / row.over
    expected = REGISTRY.Quantity(figure, theirs).to(si).magnitude
    assert ours == pytest.approx(expected, rel=1e-12)


# pint misreads these as text (it takes 2 1/2 in for 1 in), so it is given figures and units apart.
@UNHURRIED
@given(st.integers(0, 200), st.integers(0, 11), st.integers(1, 15))
def test_feet_inches_and_sixteenths(feet: int, inches: int, part: int) -> None:
    expected = (
        REGISTRY.Quantity(feet, "foot")
        + REGISTRY.Quantity(inches, "inch")
        + REGISTRY.Quantity(part / 16, "inch")
    )
    ours = read_quantity("length", f"{feet}'-{inches} {part}/16\"").value
    assert ours == pytest.approx(expected.to("m").magnitude, rel=1e-12)


@UNHURRIED
@given(st.floats(-60, 200).map(lambda figure: round(figure, 2)))
def test_a_thermometer(figure: float) -> None:
    expected = REGISTRY.Quantity(figure, "degF").to("kelvin").magnitude
    assert read_quantity("temperature", f"{figure:.2f} F").value == pytest.approx(expected)
