"""The kinds of quantity: what each is called, what it is written in, what it is shown in."""

from typing import NamedTuple


class Kind(NamedTuple):
    """One kind of quantity; `us` and `si` are the units of values nobody wrote."""

    noun: str
    dimensions: tuple[str, ...]
    would_do: str
    us: str
    si: str


KINDS: dict[str, Kind] = {
    "length": Kind("a length", ("length",), "in, ft, mm, m, mil, or 2'-6\"", "in", "mm"),
    "level": Kind("a level", ("length",), "ft, m, mm, or 92'-6\"", "ft", "m"),
    "area": Kind("an area", ("area",), "sq ft, sq in, m2 or cm2", "sq ft", "m2"),
    "volume": Kind("a volume", ("volume",), "gal, cu ft, cu yd, L or m3", "cu yd", "m3"),
    "slope": Kind("a slope", ("slope",), "%, in/ft, mm/m, or 1:50 (rise to run)", "%", "%"),
    "dig_slope": Kind("the slope of a dug side", (), "1.5H:1V, or deg", "H:V", "H:V"),
    "fraction": Kind("a share", ("a share",), "%, or a number from 0 to 1", "%", "%"),
    "angle": Kind("an angle", ("an angle",), "deg", "deg", "deg"),
    "permeability": Kind(
        "a permeability", ("speed",), "cm/s, m/s, ft/day or in/h", "cm/s", "m/s"
    ),
    "velocity": Kind("a velocity", ("speed",), "ft/s or m/s", "ft/s", "m/s"),
    "permittivity": Kind("a permittivity", ("permittivity",), "1/s", "1/s", "1/s"),
    "area_per_length": Kind(
        "an area per length", ("area per length",), "sq in/ft or cm2/m", "sq in/ft", "cm2/m"
    ),
    "flow": Kind("a flow", ("flow",), "gpm, cfs, L/s or m3/h", "gpm", "L/s"),
    "flow_per_area": Kind(
        "a flow per area", ("flow per area", "speed"), "gpm/sq ft, L/s/m2 or mm/s",
        "gpm/sq ft", "L/s/m2",
    ),
    "pressure": Kind("a pressure", ("pressure",), "psf, psi or kPa", "psf", "kPa"),
    "unit_weight": Kind(
        "a weight per volume", ("weight per volume",), "pcf, kN/m3 or kg/m3", "pcf", "kN/m3"
    ),
    "force_per_length": Kind(
        "a force per length", ("force per length",), "lb/ft or kN/m", "lb/ft", "kN/m"
    ),
    "conductivity": Kind(
        "a conductivity of heat", ("conductivity of heat",), "Btu/h/ft/F or W/m/K",
        "Btu/h/ft/F", "W/m/K",
    ),
    "temperature": Kind("a temperature", ("temperature",), "F or C", "F", "C"),
    "duration": Kind("a time", ("time",), "min, h or days", "h", "h"),
    "rain": Kind("an intensity of rain", ("speed",), "in/h or mm/h", "in/h", "mm/h"),
    "rate": Kind(
        "a mass per area", ("mass per area",), "lb/sq yd, lb/sq ft or kg/m2", "lb/sq yd", "kg/m2"
    ),
    "mass": Kind("a mass", ("mass",), "lb, oz, kg or g", "lb", "kg"),
    "freezing_index": Kind(
        "a freezing index", ("freezing index",), "F-days or C-days", "F-days", "C-days"
    ),
    "number": Kind("a plain number", (), "no unit", "", ""),
    "ratio": Kind("a plain number", (), "no unit", "", ""),
    "count": Kind("a count", (), "a whole number and no unit", "", ""),
    "year": Kind("a year", (), "a whole number and no unit", "", ""),
}  # fmt: skip

_LONG = 3.0  # m; beyond it a length is told in feet or metres
_THIN = 0.003  # m; below it a length is the thickness of a film
_SHORT = 3_600.0  # s; less is told in minutes


def default_unit(kind: str, system: str, si_value: float = 0.0) -> str:
    """Return the unit for a quantity that was worked out, not written; "" for kinds without one.

    `system` is "us" or "si". A long `si_value` turns inches into feet and millimetres into metres,
    and less than an hour is told in minutes.
    """
    if system not in ("us", "si"):
        raise ValueError(f"there is no system of units {system!r}; there is 'us' and 'si'")
    if kind == "length" and abs(si_value) >= _LONG:
        return "ft" if system == "us" else "m"
    if kind == "length" and 0.0 < abs(si_value) < _THIN and system == "us":
        return "mil"
    if kind == "duration" and 0.0 < abs(si_value) < _SHORT:
        return "min"
    described = KINDS.get(kind)
    return getattr(described, system) if described else ""
