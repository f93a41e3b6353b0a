"""Stone, sand and fabric against the soil, and against the pipe, through a spec."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.aggregates import band, size_numbers
from checker.deriving.engine import Derived, Deriver
from checker.values import Range
from tests.support import spec_of

MM = 1e-3
INCH = 0.0254
CONCRETE_SAND = {
    "No. 100": "5 %",
    "No. 50": "20 %",
    "No. 30": "45 %",
    "No. 16": "70 %",
    "No. 8": "90 %",
    "No. 4": "98 %",
    "9.5 mm": "100 %",
}
SILTY_SAND = {"0.01 mm": "8 %", "No. 200": "30 %", "No. 40": "85 %", "No. 4": "100 %"}


def find(name: str, item: str = "", **sections: Any) -> Derived:
    return Deriver(spec_of(sections)).get(name, item)


def sand(name: str, gradation: dict[str, str] = CONCRETE_SAND, **sections: Any) -> Derived:
    fabrics = [{"id": "sand", "kind": "graded_sand", "gradation": gradation}]
    return find(f"fabrics.each.{name}", "sand", fabrics=fabrics, **sections)


def fabric(name: str, bank: dict[str, Any], **facts: Any) -> Derived:
    fabrics = [{"id": "wrap", "kind": "nonwoven", **facts}]
    return find(f"fabrics.each.{name}", "wrap", fabrics=fabrics, soil={"bank": bank})


# -- stone ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "mm"),
    [
        # No. 57, ASTM C33: 95-100 % at 25, 25-60 % at 12.5, 0-10 % at 4.75, 0-5 % at 2.36 mm.
        ("d85_fine", 19.28),  # 12.5 x 2^(25 / 40)
        ("d50_fine", 10.30),  # 4.75 x 2.632^(40 / 50)
        ("d15_fine", 5.233),  # 4.75 x 2.632^(5 / 50)
        ("d5_fine", 2.36),
        ("d15_coarse", 8.489),  # 4.75 x 2.632^(15 / 25)
        ("d50_coarse", 16.01),  # 12.5 x 2^(25 / 70)
        ("d100_coarse", 37.5),
    ],
)
def test_no_57_at_the_edge_that_does_worse(name: str, mm: float) -> None:
    found = find(f"stone.{name}", stone={"size_number": "57"})
    assert found.value / MM == pytest.approx(mm, rel=1e-3)
    assert "No. 57 allows" in found.assumed[0]


def test_a_curve_shown_is_its_own_two_edges() -> None:
    curve = {"4.75 mm": "5 %", "12.5 mm": "45 %", "25 mm": "98 %", "37.5 mm": "100 %"}
    both = [
        find(f"stone.d15_{edge}", stone={"gradation": curve, "size_number": "57"})
        for edge in ("fine", "coarse")
    ]
    # 4.75 x 2.632^(10 / 40)
    assert [one.value / MM for one in both] == pytest.approx([6.050, 6.050], abs=2e-3)
    assert [one.assumed for one in both] == [(), ()]


@pytest.mark.parametrize(
    "written", ["57", "#57", "No. 57", "57 stone", "ASTM C33 No. 57", "AASHTO M 43 #57", " No 57 "]
)
def test_size_numbers_as_people_write_them(written: str) -> None:
    found = band(written)
    assert found is not None
    assert found == band("57")


@pytest.mark.parametrize("written", ["", "58", "pea gravel", "3/4 in No. 67", "5 or 57", "1057"])
def test_what_is_no_size_number_is_not_guessed(written: str) -> None:
    assert band(written) is None


def test_an_unknown_size_number_asks_for_the_curve() -> None:
    found = find("stone.d15_coarse", stone={"size_number": "58"})
    assert not found.known
    assert found.missing == ("stone.gradation",)
    assert "4, 5, 6, 7, 8, 56, 57, 67, 467" in found.because


@pytest.mark.parametrize("size_number", sorted(size_numbers()))
def test_a_band_has_a_fine_and_a_coarse_edge(size_number: str) -> None:
    sizes = {
        name: find(f"stone.{name}", stone={"size_number": size_number}).value
        for name in ("d5_fine", "d15_fine", "d50_fine", "d85_fine", "d15_coarse", "d50_coarse")
    }
    assert sizes["d5_fine"] <= sizes["d15_fine"] < sizes["d50_fine"] < sizes["d85_fine"]
    assert sizes["d15_fine"] < sizes["d15_coarse"]
    assert sizes["d50_fine"] < sizes["d50_coarse"]
    # NEH 633 chapter 26 allows a filter's D15 to vary five-fold; a size number varies less.
    assert 1 < find("stone.band_width", stone={"size_number": size_number}).value < 5


@pytest.mark.parametrize(
    ("stone", "share"),
    [
        ({"size_number": "57"}, 0.10),
        ({"size_number": "8"}, 0.30),
        ({"size_number": "4"}, 0.05),  # its finest sieve is 3/8 in
        ({"gradation": {"2.36 mm": "1 %", "4.75 mm": "4 %", "25 mm": "100 %"}}, 0.04),
    ],
)
def test_what_may_pass_the_no_4_sieve(stone: dict[str, Any], share: float) -> None:
    assert find("stone.no4_by_size", stone=stone).value == pytest.approx(share)


@pytest.mark.parametrize(
    ("half_inch", "says"),
    [("45 %", "none"), ("60.5 %", "none"), ("75 %", "75 % passes 12.5 mm, not 25 to 60 %")],
)
def test_stone_that_is_not_of_its_number(half_inch: str, says: str) -> None:
    curve = {"2.36 mm": "2 %", "4.75 mm": "5 %", "12.5 mm": half_inch, "25 mm": "98 %"}
    found = find("stone.off_size", stone={"size_number": "57", "gradation": curve})
    assert found.value == says


# -- pipe -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("holes", "needed", "wanted"),
    [
        # 3/8 in is 9.525 mm: as a hole x 1.0 and x 1.2, as a slot x 1.2 and x 1.4.
        ("down", 9.525, 11.43),
        ("slotted", 11.43, 13.335),
        (None, 11.43, 13.335),
    ],
)
def test_stone_for_the_openings_of_the_pipe(
    holes: str | None, needed: float, wanted: float
) -> None:
    drain = {"hole_size": "3/8 in"} | ({"holes": holes} if holes else {})
    found = find("drain.stone_d85_needed", drain=drain)
    assert found.value / MM == pytest.approx(needed)
    assert bool(found.assumed) is (holes is None)
    assert find("drain.stone_d85_wanted", drain=drain).value / MM == pytest.approx(wanted)


def test_a_range_of_holes_gives_a_range() -> None:
    drain = {"hole_size": "1/4 to 3/8 in", "holes": "down"}
    found = find("drain.stone_d85_needed", drain=drain).value
    assert tuple(found) == pytest.approx((0.25 * INCH, 0.375 * INCH))


def test_open_joints_against_the_stone() -> None:
    # No. 57 at its fine edge: D95 = 12.5 x 2^(35 / 40) = 22.93 mm; 3 mm is 0.13 of it.
    stone = {"size_number": "57"}
    assert find("stone.d95_fine", stone=stone).value / MM == pytest.approx(22.93, abs=0.01)
    found = find("drain.joint_loss_chance", stone=stone, drain={"joint_gap": "3 mm"})
    assert found.value == 0.0
    # At its coarsest D95 is 25 mm; 24 mm is log(24 / 22.93) / log(25 / 22.93) = 53 % of the way.
    wide = find("drain.joint_band_share", stone=stone, drain={"joint_gap": "24 mm"})
    assert wide.value == pytest.approx(0.53, abs=0.01)


# -- sand -----------------------------------------------------------------------------------------


def test_sizes_of_a_concrete_sand() -> None:
    # D15: 0.15 x 2^(10 / 15) = 0.2381; D85: 1.18 x 2^(15 / 20) = 1.985; D10 0.189, D60 0.900.
    assert sand("sand_d15").value / MM == pytest.approx(0.2381, abs=1e-4)
    assert sand("sand_d85").value / MM == pytest.approx(1.985, abs=2e-3)
    assert sand("sand_uniformity").value == pytest.approx(4.76, abs=0.01)
    assert sand("sand_max_d90").value / MM == pytest.approx(20)


def test_a_curve_that_ends_at_no_100_bounds_the_fines() -> None:
    assert sand("sand_fines").value == pytest.approx(0.05)


def test_stone_against_that_sand() -> None:
    # 2 % is gravel, but with 5 % fines and Cu 4.8 the sand is not regraded: 4 x 1.985 = 7.94 mm, and
    # 5 x 0.2381 = 1.19 mm.
    assert sand("stone_max_d15").value / MM == pytest.approx(7.94, abs=0.01)
    assert sand("stone_min_d15").value / MM == pytest.approx(1.19, abs=1e-2)


def test_a_sand_whose_curve_stops_too_high_has_no_d15() -> None:
    found = sand("sand_d15", {"No. 50": "20 %", "No. 4": "100 %"})
    assert not found.known
    assert "does not reach 15 %" in found.because


def test_both_sets_of_criteria_for_a_silty_sand() -> None:
    soil = {"bank": {"gradation": SILTY_SAND}}
    # D85 0.425, D50 = 0.075 x 5.667^(20 / 55) = 0.1409, D15 = 0.01 x 7.5^(7 / 22) = 0.01898 mm.
    # Category 3: (40 - 30) / 25 x (1.7 - 0.7) + 0.7 = 1.1 mm.
    expected = {
        "filter_max_d15": 1.1,
        "filter_min_d15": 0.1,  # 5 x 0.019 = 0.095, under the floor
        "classic_max_d15": 2.125,
        "classic_max_d50": 3.523,
        "classic_min_d15": 0.0949,
        "highway_max_d15": 0.759,  # 40 x 0.01898
        "highway_max_d50": 5.637,
    }
    for name, mm in expected.items():
        assert find(f"soil.bank.{name}", soil=soil).value / MM == pytest.approx(mm, rel=2e-3), name


# -- fabric ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("bank", "kind", "mm", "governs"),
    [
        # Lean clay: the No. 70 sieve.
        ({"fines": "72 %", "liquid_limit": "41", "plastic_limit": "20"}, "nonwoven", 0.212, "cohesive soil"),
        # Silt that does not hold together: 1.8 x 0.25 = 0.45, so 0.3 mm; a woven 1 x 0.25.
        ({"nonplastic": "yes", "gradation": {"No. 200": "60 %", "No. 60": "85 %", "No. 4": "100 %"}}, "nonwoven", 0.30, "half fines"),
        ({"nonplastic": "yes", "gradation": {"No. 200": "60 %", "No. 60": "85 %", "No. 4": "100 %"}}, "woven", 0.25, "retention"),
        # 1.8 x 0.1 = 0.18 mm: D85 of the same silt, finer.
        ({"nonplastic": "yes", "gradation": {"No. 200": "60 %", "0.1 mm": "85 %", "No. 4": "100 %"}}, "nonwoven", 0.18, "retention"),
        # Cu is over 8: B is 1, D85 0.425 mm.
        ({"gradation": SILTY_SAND}, "woven", 0.425, "retention"),
        # Dispersive: the No. 70 sieve is not for it.
        ({"gradation": SILTY_SAND, "liquid_limit": "41", "plastic_limit": "20", "dispersive": "yes"}, "woven", 0.425, "retention"),
    ],
)  # fmt: skip
def test_the_largest_opening_and_what_governs_it(
    bank: dict[str, Any], kind: str, mm: float, governs: str
) -> None:
    found = fabric("largest_opening", bank, kind=kind)
    assert found.value / MM == pytest.approx(mm)
    assert fabric("largest_governs", bank, kind=kind).value == governs
    assert "governs" in found.assumed[-1]


def test_a_factor_from_memory_says_so() -> None:
    note = fabric("largest_opening", {"gradation": SILTY_SAND}, kind="woven").assumed[-1]
    assert "from memory" in note


def test_an_unknown_uniformity_takes_the_least_factor() -> None:
    no_d10 = {"No. 200": "30 %", "No. 40": "85 %", "No. 4": "100 %"}
    found = fabric("largest_opening", {"gradation": no_d10})
    assert found.value / MM == pytest.approx(0.425)
    assert "Cu is not known" in found.assumed[-1]


def test_a_sand_filter_has_no_opening() -> None:
    found = sand("largest_opening", soil={"bank": {"gradation": SILTY_SAND}})
    assert found.inapplicable


def test_without_curve_or_limits_both_are_asked_for() -> None:
    found = fabric("largest_opening", {"fines": "72 %"})
    assert found.missing == (
        "soil.bank.gradation",
        "soil.bank.liquid_limit",
        "soil.bank.plastic_limit",
    )


@pytest.mark.parametrize(
    ("bank", "mm", "governs"),
    [
        ({"fines": "72 %"}, 0.150, "finest sieve"),
        # D15 0.01898: 3 times is under the No. 100 sieve.
        ({"gradation": SILTY_SAND}, 0.150, "finest sieve"),
        # D15 0.075, Cu over 3: 0.225 mm.
        ({"gradation": {"0.03 mm": "5 %", "No. 200": "15 %", "No. 40": "60 %", "No. 4": "100 %"}}, 0.225, "clogging"),
    ],
)  # fmt: skip
def test_the_smallest_opening_and_what_governs_it(
    bank: dict[str, Any], mm: float, governs: str
) -> None:
    assert fabric("smallest_opening", bank).value / MM == pytest.approx(mm)
    assert fabric("smallest_governs", bank).value == governs


@pytest.mark.parametrize(("fines", "mm"), [("30 %", 0.425), ("72 %", 0.212)])
def test_the_army_s_older_form(fines: str, mm: float) -> None:
    bank = {"fines": fines, "gradation": {"No. 200": fines, "No. 40": "85 %", "No. 4": "100 %"}}
    assert fabric("army_largest_opening", bank).value / MM == pytest.approx(mm)


def test_flow_across_the_fabric() -> None:
    # 0.5 1/s x 1.5 mm = 0.75 mm/s; over 1e-5 m/s 75 times.
    facts = {"permittivity": "0.5 1/s", "thickness": "1.5 mm"}
    assert fabric("flow_across", {}, **facts).value == pytest.approx(7.5e-4)
    assert fabric("flow_factor", {"permeability": "1e-3 cm/s"}, **facts).value == pytest.approx(75)


def test_flow_against_a_soil_known_by_its_symbol_is_a_range() -> None:
    # Lean clay, 1e-8 to 1e-6 cm/s: 7.5e-4 / 1e-8 = 75,000 to 7.5e-4 / 1e-10.
    facts = {"permittivity": "0.5 1/s", "thickness": "1.5 mm"}
    found = fabric("flow_factor", {"usc": "CL"}, **facts).value
    assert tuple(found) == pytest.approx((75_000, 7_500_000))
    # Clean sand has no upper end, so the factor has no lower.
    assert fabric("flow_factor", {"usc": "SW"}, **facts).value.low == 0


@settings(max_examples=25, deadline=None)
@given(low=st.floats(0.1, 1), width=st.floats(0, 1), inside=st.floats(0, 1))
def test_a_range_of_permittivity_holds_what_lies_inside(
    low: float, width: float, inside: float
) -> None:
    def factor(permittivity: str) -> Any:
        facts = {"permittivity": permittivity, "thickness": "1.5 mm"}
        return fabric("flow_factor", {"permeability": "1e-3 cm/s"}, **facts).value

    high = low + width
    ranged = factor(f"{low:.6f} to {high:.6f} 1/s")
    one = factor(f"{low + inside * width:.6f} 1/s")
    lower, upper = ranged if isinstance(ranged, Range) else (ranged, ranged)
    assert lower * (1 - 1e-5) <= one <= upper * (1 + 1e-5)
