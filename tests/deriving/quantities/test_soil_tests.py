"""Sieve curves and limits through a spec: sizes, symbols, what they contradict, and bad input."""

from __future__ import annotations

from typing import Any

import pytest

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Derived, Deriver
from checker.values import Range
from tests.support import spec_of

MM = 1e-3
# Das, Principles of Geotechnical Engineering, example 2.1.
DAS = {
    "0.075 mm": "1.7 %",
    "0.150 mm": "9.3 %",
    "0.180 mm": "38.1 %",
    "0.250 mm": "54.9 %",
    "0.425 mm": "74.1 %",
    "0.850 mm": "86.3 %",
    "2.00 mm": "94.5 %",
    "4.75 mm": "100 %",
}
# 60 % passes No. 4, 36 % No. 40, 12 % No. 200.
GRAVELLY = {"No. 200": "12 %", "No. 40": "36 %", "No. 4": "60 %", "75 mm": "100 %"}
LEAN_CLAY = {"fines": "72 %", "liquid_limit": "41", "plastic_limit": "20"}


def bank(name: str, **facts: Any) -> Derived:
    return Deriver(spec_of({"soil": {"bank": facts}})).get(f"soil.bank.{name}")


def soil(name: str, **places: Any) -> Derived:
    return Deriver(spec_of({"soil": places})).get(f"soil.{name}")


@pytest.mark.parametrize(
    ("name", "mm"),
    [("d10", 0.1507), ("d15", 0.1555), ("d30", 0.1710), ("d60", 0.2878), ("d85", 0.7895)],
)
def test_sizes_from_a_curve(name: str, mm: float) -> None:
    found = bank(name, gradation=DAS)
    assert found.value / MM == pytest.approx(mm, abs=6e-5)
    assert found.unit == "mm"


def test_coefficients_from_a_curve() -> None:
    assert bank("uniformity", gradation=DAS).value == pytest.approx(1.910, abs=1e-3)
    assert bank("curvature", gradation=DAS).value == pytest.approx(0.674, abs=1e-3)


def test_the_order_of_the_sieves_does_not_matter() -> None:
    turned = dict(reversed(DAS.items()))
    assert bank("d85", gradation=turned).value == bank("d85", gradation=DAS).value


def test_a_gravelly_soil_is_regraded() -> None:
    # 12 / 60 = 20 %, category 3 where it would be 4; D85 of the part: 100 % at 4.75 mm, 60 % at
    # 0.425 mm, so 0.425 x 11.18^(25 / 40) = 1.921 mm.
    assert bank("regraded", gradation=GRAVELLY).value is True
    assert bank("base_fines", gradation=GRAVELLY).value == pytest.approx(0.20)
    assert bank("filter_category", gradation=GRAVELLY).value == 3
    assert bank("base_d85", gradation=GRAVELLY).value / MM == pytest.approx(1.921, abs=1e-3)
    # 20 / 25 x (4 x 1.921 - 0.7) + 0.7 = 6.287 mm
    assert bank("filter_max_d15", gradation=GRAVELLY).value / MM == pytest.approx(6.287, abs=5e-3)


def test_few_fines_and_few_sizes_are_not_regraded() -> None:
    # Cu = D60 / D10: 60 % passes 2.36 mm and 10 % 0.85 mm, 2.8, which is no broad grading; 5 % fines.
    uniform = {
        "No. 200": "2 %",
        "No. 20": "10 %",
        "No. 8": "60 %",
        "No. 4": "90 %",
        "19 mm": "100 %",
    }
    assert bank("regraded", gradation=uniform).value is False
    assert bank("base_fines", gradation=uniform).value == pytest.approx(0.02)


def test_permeability_is_asked_of_the_soil_before_regrading() -> None:
    # D15 of the whole, between 12 % at 0.075 and 36 % at 0.425 mm: 0.075 x 5.667^(3 / 24) = 0.0931;
    # times 5.
    found = bank("filter_min_d15", gradation=GRAVELLY)
    assert found.value / MM == pytest.approx(0.4657, abs=1e-3)


def test_a_clay_whose_d15_no_sieve_holds_asks_for_a_range() -> None:
    # Its D15 is under 0.075 mm, so 5 times it is under 0.375 mm, and nothing asks for less than 0.1.
    found = bank("filter_min_d15", gradation={"No. 200": "72 %", "No. 4": "100 %"})
    assert tuple(found.value) == pytest.approx((0.1 * MM, 0.375 * MM))
    assert "finer than its finest sieve" in found.assumed[0]


@pytest.mark.parametrize(("dispersive", "mm"), [(None, 0.7), ("no", 0.7), ("yes", 0.5)])
def test_dispersion_counts_where_it_was_tested(dispersive: str | None, mm: float) -> None:
    facts = {"dispersive": dispersive} if dispersive else {}
    found = bank(
        "filter_max_d15", gradation={"No. 200": "72 %", "No. 40": "95 %", "No. 4": "100 %"}, **facts
    )
    assert found.value / MM == pytest.approx(mm)
    assert bool(found.assumed) is (dispersive is None)


# -- symbols --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("facts", "symbol"),
    [
        (LEAN_CLAY, "CL"),
        ({"fines": "72 %", "nonplastic": "yes"}, "ML"),
        # Cu 1.9: poorly graded, 1.7 % fines, all through No. 4.
        ({"gradation": DAS}, "SP"),
        # 12 % fines of two letters, and D10 is not on the curve: no symbol.
        ({"gradation": GRAVELLY, "nonplastic": "yes"}, None),
        ({"gradation": {**GRAVELLY, "0.01 mm": "2 %"}, "nonplastic": "yes"}, "SP-SM"),
        ({"fines": "72 %"}, None),
        ({"fines": "30 %", "liquid_limit": "41", "plastic_limit": "20"}, None),
    ],
)
def test_symbols_by_tests(facts: dict[str, Any], symbol: str | None) -> None:
    assert bank("symbol", **facts).value == symbol


def test_a_symbol_says_what_it_takes_for_granted() -> None:
    assert "inorganic" in bank("symbol", **LEAN_CLAY).assumed[0]
    assert bank("symbol", gradation=DAS).assumed == ()


def test_a_class_that_its_tests_contradict() -> None:
    found = soil("symbol_contradiction", bank={"usc": "SM", **LEAN_CLAY})
    assert found.value == "in the bank SM is shown, and the tests give CL"
    assert soil("symbol_contradiction", bank={"usc": "CL", **LEAN_CLAY}).value == "none"


def test_organic_clay_is_not_contradicted_by_sieve_and_limits() -> None:
    assert soil("symbol_contradiction", bank={"usc": "OL", **LEAN_CLAY}).value == "none"
    coarse = soil("symbol_contradiction", bank={"usc": "PT", "gradation": DAS})
    assert coarse.value == "in the bank PT is shown, and the tests give SP"


def test_every_place_is_looked_at() -> None:
    found = soil(
        "symbol_contradiction",
        bearing={"usc": "CL", **LEAN_CLAY},
        backfill={"usc": "CH", **LEAN_CLAY},
    )
    assert found.value == "in the backfill CH is shown, and the tests give CL"


def test_nothing_to_set_a_class_against_asks_for_the_tests() -> None:
    found = soil("symbol_contradiction", bank={"usc": "CL", "fines": "72 %"})
    assert not found.known
    assert set(found.missing) >= {"soil.bank.liquid_limit", "soil.bank.plastic_limit"}
    assert not any("bearing" in path for path in found.missing)


# -- permeability ---------------------------------------------------------------------------------


def test_a_permeability_shown_comes_first() -> None:
    found = bank("permeability_taken", usc="CL", permeability="1e-5 cm/s")
    assert found.value == pytest.approx(1e-7)
    assert found.assumed == ()


@pytest.mark.parametrize(
    ("facts", "low", "high"),
    [
        ({"usc": "SM"}, 1e-8, 1e-5),  # 1e-6 to 1e-3 cm/s
        ({"usc": "GW"}, 1e-4, float("inf")),
        (LEAN_CLAY, 1e-10, 1e-8),  # by the symbol that the tests give
    ],
)
def test_a_usual_permeability_is_a_range(facts: dict[str, Any], low: float, high: float) -> None:
    found = bank("permeability_taken", **facts)
    assert tuple(found.value) == pytest.approx((low, high))
    assert "not tested" in found.assumed[-1]


@pytest.mark.parametrize("symbol", ["GC", "CH", "SW-SM"])
def test_a_symbol_without_a_figure_gives_none(symbol: str) -> None:
    found = bank("permeability_taken", usc=symbol)
    assert not found.known
    assert found.missing == ("soil.bank.permeability",)


# -- bad input ------------------------------------------------------------------------------------

FALLING = {"No. 200": "30 %", "No. 40": "80 %", "No. 10": "70 %", "No. 4": "100 %"}


@pytest.mark.parametrize(
    ("facts", "reason"),
    [
        ({"gradation": FALLING}, "falls"),
        ({"gradation": {"No. 200": "72 %", "No. 40": "80 %"}}, "does not reach 85 %"),
        ({"gradation": {"No. 4": "60 %", "4.75 mm": "70 %"}}, "two points"),
        ({"gradation": {"No. 4": "60 %"}}, "two sieves"),
    ],
)
def test_a_bad_curve_gives_no_size(facts: dict[str, Any], reason: str) -> None:
    found = bank("d85", **facts)
    assert not found.known
    assert reason in found.because


@pytest.mark.parametrize("name", ["filter_min_d15", "base_d85", "symbol", "uniformity"])
def test_a_falling_curve_gives_no_number_anywhere(name: str) -> None:
    found = bank(name, gradation=FALLING, liquid_limit="30", plastic_limit="20")
    assert not found.known


def test_a_plastic_limit_above_the_liquid_limit() -> None:
    facts = {"fines": "72 %", "liquid_limit": "20", "plastic_limit": "41"}
    for name in ("plasticity_index", "symbol"):
        found = bank(name, **facts)
        assert not found.known
        assert "plastic limit of 41 lies above the liquid limit of 20" in found.because
    assert "plastic limit of 41" in soil("data_contradiction", bank=facts).value


@pytest.mark.parametrize(
    ("facts", "says"),
    [
        ({"gradation": FALLING}, "in the bank the sieve curve falls"),
        ({"fines": "72 %", "gradation": {"No. 200": "30 %", "No. 4": "100 %"}}, "72 % are shown"),
        ({"nonplastic": "yes", "plastic_limit": "20"}, "not to be plastic"),
        ({"fines": "31 %", "gradation": {"No. 200": "30 %", "No. 4": "100 %"}}, "none"),
        ({"gradation": {"No. 40": "30 %", "No. 4": "100 %"}}, "none"),
    ],
)
def test_figures_that_cannot_all_be_right(facts: dict[str, Any], says: str) -> None:
    assert says in soil("data_contradiction", bank=facts).value


def test_without_any_figure_nothing_is_said() -> None:
    assert not soil("data_contradiction").known


def test_a_range_of_a_limit_gives_a_range_that_holds_what_lies_inside() -> None:
    found = bank("plasticity_index", liquid_limit="38 to 44", plastic_limit="18 to 22").value
    # 38 - 22 and 44 - 18
    assert found == Range(16, 26)
    for liquid, plastic in ((38, 18), (40, 20), (44, 22)):
        inside = bank("plasticity_index", liquid_limit=str(liquid), plastic_limit=str(plastic))
        assert found.holds(inside.value)


def test_a_range_of_fines_gives_no_category() -> None:
    # A category is a step: at the two ends of the range it may be two things.
    found = bank("filter_category", fines="30 to 50 %", gradation=GRAVELLY)
    assert not found.known
    assert "range" in found.because
