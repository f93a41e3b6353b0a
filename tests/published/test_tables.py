"""The shared tables against figures typed here from what was published, source beside each."""

from __future__ import annotations

import math
from typing import Any

import pytest

from checker.data import data_dir, load_json, load_table
from checker.formulas import excavation, soils
from checker.reading.notations import read_quantity

TABLES = sorted(path.stem for path in (data_dir("shared") / "tables").glob("*.yaml"))
INCH = 25.4  # mm
# A band says where it begins and where it ends, each with its own figure in or out.
BAND = ("at least", "above", "at most", "below")


def _rows(name: str) -> dict[str, dict[str, Any]]:
    return {row["row"]: row for row in load_table(name)["rows"]}


def _number(text: str, unit: str) -> float:
    assert text.endswith(f" {unit}"), f"{text!r} is not written in {unit}"
    return float(text.removesuffix(f" {unit}"))


def _share(text: str) -> tuple[float, float]:
    """Return least and most of "25 to 60 %"; of "100 %" the same figure twice."""
    low, _, high = text.removesuffix(" %").partition(" to ")
    return float(low), float(high or low)


def _holds(row: dict[str, Any], value: float) -> bool:
    edges = {edge: _number(row[edge], "%") for edge in BAND if edge in row}
    return (
        value >= edges.get("at least", value)
        and value <= edges.get("at most", value)
        and not value <= edges.get("above", -math.inf)
        and not value >= edges.get("below", math.inf)
    )


@pytest.mark.parametrize("name", TABLES)
def test_every_cell_stands_in_a_named_column(name: str) -> None:
    table = load_table(name)
    known = {*table["columns"], "row", "source", "printed", *BAND}
    for row in table["rows"]:
        assert set(row) <= known
    assert all({"kind", "title"} <= set(column) for column in table["columns"].values())


@pytest.mark.parametrize("name", TABLES)
def test_every_figure_is_one_that_belowgrade_reads(name: str) -> None:
    table = load_table(name)
    kinds = {column: said["kind"] for column, said in table["columns"].items()}
    kinds |= {edge: table.get("row", {}).get("kind") for edge in BAND}
    for row in table["rows"]:
        for key, text in row.items():
            if kinds.get(key) not in (None, "word", "text", "yes_no"):
                read_quantity(kinds[key], str(text))


@pytest.mark.parametrize("name", TABLES)
def test_no_row_is_picked_twice(name: str) -> None:
    rows = [row["row"] for row in load_table(name)["rows"] if "row" in row]
    assert len(rows) == len(set(rows))


def _words(section: str, key: str) -> set[str]:
    return set(load_json("spec.schema.json")["$defs"][section]["properties"][key]["enum"])


def test_rows_are_picked_by_words_of_the_spec() -> None:
    materials = {row["material"] for row in load_table("pipes")["rows"]}
    assert materials <= _words("drain", "material")
    assert {soil.casefold() for soil in _rows("osha_slopes")} == _words("excavation", "osha_type")


# 29 CFR 1926 Subpart P, Appendix B, Table B-1 prints each slope as a ratio and as degrees from the
# horizontal, rounded to a whole degree: "3/4:1 (53 deg)", "1:1 (45 deg)", "1 1/2:1 (34 deg)".
@pytest.mark.parametrize(
    ("soil", "degrees"), [("stable_rock", 90), ("A", 53), ("B", 45), ("C", 34)]
)
def test_slopes_are_the_angles_that_osha_prints(soil: str, degrees: int) -> None:
    run = float(_rows("osha_slopes")[soil]["run"].removesuffix("H:1V"))
    assert round(math.degrees(math.atan2(1, run))) == degrees


def test_slopes_name_every_class_of_soil_once_and_agree_with_the_formula() -> None:
    runs = {
        soil.casefold(): float(row["run"].removesuffix("H:1V"))
        for soil, row in _rows("osha_slopes").items()
    }
    assert runs == excavation.RUN_PER_RISE


# AASHTO M 288 as UFGS-02373 prints it: under 15 % passing No. 200, 15 to 50, and more than 50.
# From 85 % on UFC 3-270-04, p. 83, takes no geotextile alone.
@pytest.mark.parametrize(
    ("fines", "opening", "permittivity"),
    [
        (0, 0.43, 0.5),
        (14.9, 0.43, 0.5),
        (15, 0.25, 0.2),
        (50, 0.25, 0.2),
        (50.1, 0.22, 0.1),
        (84.9, 0.22, 0.1),
    ],
)
def test_geotextile_by_the_soil(fines: float, opening: float, permittivity: float) -> None:
    (row,) = [row for row in load_table("m288_drainage")["rows"] if _holds(row, fines)]
    assert _number(row["max_opening"], "mm") == opening
    assert _number(row["min_permittivity"], "1/s") == permittivity


@pytest.mark.parametrize("fines", [85, 85.1, 100])
def test_no_geotextile_alone_from_85_percent(fines: float) -> None:
    assert not [row for row in load_table("m288_drainage")["rows"] if _holds(row, fines)]


# The sheet names a sieve beside each opening: No. 40, No. 60 and No. 70.
@pytest.mark.parametrize(("number", "sieve"), [(0, "No. 40"), (1, "No. 60"), (2, "No. 70")])
def test_geotextile_openings_are_sieves(number: int, sieve: str) -> None:
    opening = _number(load_table("m288_drainage")["rows"][number]["max_opening"], "mm")
    assert opening == pytest.approx(_number(_rows("sieves")[sieve]["opening"], "mm"), abs=0.01)


# No. 57 as a municipal specification quotes ASTM C33; No. 67 as the Iowa transport department
# prints it; No. 8 as the Colorado transport department prints AASHTO M 43.
@pytest.mark.parametrize(
    ("size", "passing"),
    [
        ("57", {"1 1/2 in": (100, 100), "1 in": (95, 100), "1/2 in": (25, 60), "No. 4": (0, 10)}),
        ("67", {"1 in": (100, 100), "3/4 in": (90, 100), "3/8 in": (20, 55), "No. 4": (0, 10)}),
        ("8", {"1/2 in": (100, 100), "3/8 in": (85, 100), "No. 4": (10, 30), "No. 16": (0, 5)}),
    ],
)
def test_sizes_of_stone(size: str, passing: dict[str, tuple[float, float]]) -> None:
    row = _rows("aggregates")[size]
    assert {sieve: _share(row[sieve]) for sieve in passing} == passing


@pytest.mark.parametrize("size", sorted(_rows("aggregates")))
def test_finer_sieves_pass_no_more(size: str) -> None:
    row, table = _rows("aggregates")[size], load_table("aggregates")
    shares = [_share(row[sieve]) for sieve in table["columns"] if sieve in row]
    assert shares[0] == (100, 100), "everything passes the first sieve that a size names"
    assert shares == sorted(shares, reverse=True)
    assert all(0 <= low <= high <= 100 for low, high in shares)


def test_sizes_that_cannot_have_too_many_fines() -> None:
    # IBC: no more than 10 % through the No. 4. A size that does not name that sieve passes as much
    # as through the finest that it names. No. 7 may reach 15 %, No. 8 begins at 10 %.
    most = {}
    for size, row in _rows("aggregates").items():
        named = [sieve for sieve in ("3/8 in", "No. 4") if sieve in row]
        most[size] = _share(row[named[-1]])[1]
    assert {size for size, share in most.items() if share > 10} == {"7", "8"}


# ASTM E11 openings as the Colorado table and a textbook's sieve test (2.00, 0.850, 0.425, 0.250,
# 0.180, 0.150 and 0.075 mm) print them; No. 70 as 0.212 mm in UFC 3-250-01, section 20-2.7.2.
@pytest.mark.parametrize(
    ("sieve", "opening"),
    [
        ("1 1/2 in", 37.5),
        ("3/4 in", 19.0),
        ("No. 4", 4.75),
        ("No. 8", 2.36),
        ("No. 10", 2.00),
        ("No. 16", 1.18),
        ("No. 20", 0.850),
        ("No. 40", 0.425),
        ("No. 60", 0.250),
        ("No. 70", 0.212),
        ("No. 80", 0.180),
        ("No. 100", 0.150),
        ("No. 200", 0.075),
    ],
)
def test_openings_of_sieves(sieve: str, opening: float) -> None:
    assert _number(_rows("sieves")[sieve]["opening"], "mm") == opening


def test_sieves_stand_widest_first_and_inch_sieves_are_about_their_name() -> None:
    openings = {name: _number(row["opening"], "mm") for name, row in _rows("sieves").items()}
    assert list(openings.values()) == sorted(openings.values(), reverse=True)
    for name, opening in openings.items():
        if name.endswith(" in"):
            whole = sum(
                float(top) / float(bottom or 1)
                for top, _, bottom in (part.partition("/") for part in name[:-3].split())
            )
            assert opening == pytest.approx(whole * INCH, rel=0.025)


# IBC 2021, Table 1610.1, as far as it was read: psf per foot of depth, active and at rest.
@pytest.mark.parametrize(
    ("symbol", "active", "at_rest"),
    [
        ("GW", 30, 60),
        ("GP", 30, 60),
        ("GM", 40, 60),
        ("GC", 45, 60),
        ("SW", 30, 60),
        ("SP", 30, 60),
    ],
)
def test_soil_loads(symbol: str, active: float, at_rest: float) -> None:
    row = _rows("lateral_loads")[symbol]
    assert (_number(row["active"], "psf"), _number(row["at_rest"], "psf")) == (active, at_rest)
    assert "source" not in row, "these rows rest on the table as it was read"


def test_soil_loads_that_were_not_read_say_so_and_soil_at_rest_presses_harder() -> None:
    for symbol, row in _rows("lateral_loads").items():
        assert row["suitable"] == ("active" in row)
        if "active" in row:
            assert _number(row["active"], "psf") < _number(row["at_rest"], "psf")
        if symbol not in ("GW", "GP", "GM", "GC", "SW", "SP"):
            assert row["source"]["at"] == "Table 1610.1, rows SM to CL"


# 24 CFR 3285.202: class 2 and class 3 by USCS symbol.
@pytest.mark.parametrize(
    ("group", "symbols"),
    [("I", {"GW", "GP", "SW", "SP", "GM", "SM"}), ("II", {"GC", "SC", "ML", "CL"})],
)
def test_soil_groups_are_the_federal_classes(group: str, symbols: set[str]) -> None:
    found = {symbol for symbol, row in _rows("soil_groups").items() if row["group"] == group}
    assert found == symbols


def test_soil_groups_agree_with_the_formula_and_name_every_symbol() -> None:
    groups = {symbol.casefold(): row["group"] for symbol, row in _rows("soil_groups").items()}
    assert {symbol for symbol, group in groups.items() if group == "I"} == soils.GROUP_I
    assert set(groups) == soils.COARSE | soils.FINE


# US Army Engineer School, course EN5341A, p. 107: items e to i.
@pytest.mark.parametrize(
    ("symbol", "drainage", "permeability", "frost"),
    [
        ("SW", "excellent", "pervious", "none to very slight"),
        ("SP", "excellent", "pervious", "none to very slight"),
        ("SM", "-", "semipervious to impervious", "slight to high"),
        ("SC", "-", "impervious", "slight to high"),
        ("ML", "-", "semipervious to impervious", "moderate to very high"),
    ],
)
def test_soils_as_the_army_teaches(
    symbol: str, drainage: str, permeability: str, frost: str
) -> None:
    row = _rows("soil_groups")[symbol]
    assert row["army_drainage"] == drainage
    assert row["army_permeability"] == permeability
    assert row["army_frost"] == frost


def _pipe(row: dict[str, Any]) -> tuple[float, float, float]:
    keys = ("nominal", "outside_diameter", "wall")
    nominal, outside, wall = (_number(row[key], "in") for key in keys)
    return nominal, outside, wall


# SDR 35 as an article on its specification prints it: 4 in is 4.215 in outside with a wall of
# 0.12 in, 6 in is 6.275 in outside. The number is the outside diameter over the wall.
@pytest.mark.parametrize(("size", "outside"), [(4, 4.215), (6, 6.275)])
def test_sdr_35_pipe(size: float, outside: float) -> None:
    rows = [row for row in load_table("pipes")["rows"] if row.get("printed") == "SDR 35, D3034"]
    ((_, found, wall),) = [_pipe(row) for row in rows if _pipe(row)[0] == size]
    assert found == outside
    assert wall == pytest.approx(outside / 35, abs=0.001)


def test_pipe_is_about_its_nominal_size_inside() -> None:
    # AASHTO M 252, 7.2.1: the nominal size is the inside diameter. Smooth pipe strays by 4 %.
    for row in load_table("pipes")["rows"]:
        nominal, outside, wall = _pipe(row)
        assert outside - 2 * wall == pytest.approx(nominal, rel=0.04), row
