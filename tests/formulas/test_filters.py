"""Filters: the four categories at every edge, and what must hold whatever the soil."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import filters

MM = 1e-3


@pytest.mark.parametrize(
    ("fines", "category"),
    [
        (1.0, 1),
        (0.851, 1),
        (0.85, 2),
        (0.40, 2),
        (0.399, 3),
        (0.15, 3),
        (0.149, 4),
        (0.10, 4),  # research papers call this group 3
        (0.0, 4),
        (0.12 / 0.8, 3),  # 15 % after regrading, whatever binary makes of it
    ],
)
def test_categories(fines: float, category: int) -> None:
    assert filters.category(fines) == category


def test_the_formula_of_category_3_meets_both_its_neighbours() -> None:
    # At 15 % it is 4 d85, as in category 4; towards 40 % it comes to 0.7 mm, as in category 2.
    assert filters.max_d15(0.15, 0.9 * MM) == pytest.approx(filters.max_d15(0.149, 0.9 * MM))
    assert filters.max_d15(0.39999999, 0.9 * MM) == pytest.approx(0.7 * MM, rel=1e-6)


def test_category_3_has_no_floor_of_0_7() -> None:
    # A 30, d85 0.10: (40 - 30) / 25 x (0.4 - 0.7) + 0.7 = 0.58 mm. A floor would loosen it.
    assert filters.max_d15(0.30, 0.10 * MM) == pytest.approx(0.58 * MM)


def test_dispersive_clay_wants_a_finer_filter() -> None:
    assert filters.max_d15(0.90, 0.05 * MM, dispersive=True) == pytest.approx(0.325 * MM)
    assert filters.max_d15(0.60, 0.05 * MM, dispersive=True) == pytest.approx(0.5 * MM)
    # 6.5 x 0.02 = 0.13 mm, so the floor of 0.2 mm governs.
    assert filters.max_d15(0.90, 0.02 * MM, dispersive=True) == pytest.approx(0.2 * MM)
    for fines in (0.3, 0.1):
        plain = filters.max_d15(fines, 0.9 * MM)
        assert filters.max_d15(fines, 0.9 * MM, dispersive=True) == plain


@pytest.mark.parametrize(
    ("d10", "d90"),
    [(0.3, 20), (0.5, 25), (0.99, 25), (1, 30), (2, 40), (5, 50), (9.9, 50), (10, 60), (50, 60)],
)
def test_segregation_bands(d10: float, d90: float) -> None:
    # NEH 633 chapter 26, table 26-6 of 1994, from memory.
    assert filters.max_d90(d10 * MM) == pytest.approx(d90 * MM)


def test_pure_clay_may_lie_against_0_4_mm() -> None:
    # UFC 3-250-01, 20-2.5.2: 5 x 0.03 = 0.15 mm, but 0.4 mm for clay without sand or silt.
    assert filters.classic_max_d15(0.03 * MM) == pytest.approx(0.15 * MM)
    assert filters.classic_max_d15(0.03 * MM, pure_clay=True) == pytest.approx(0.4 * MM)
    assert filters.classic_max_d15(0.3 * MM, pure_clay=True) == pytest.approx(1.5 * MM)


@pytest.mark.parametrize("size", [0.0, -1e-3])
def test_sizes_of_nothing_are_refused(size: float) -> None:
    for formula in (
        filters.min_d15,
        filters.max_d90,
        filters.classic_max_d15,
        filters.classic_max_d50,
        filters.classic_min_d15,
        filters.highway_max_d50,
    ):
        with pytest.raises(ValueError, match="above nothing"):
            formula(size)
    with pytest.raises(ValueError, match="above nothing"):
        filters.max_d15(0.2, size)
    with pytest.raises(ValueError, match="above nothing"):
        filters.highway_max_d15(size, MM)


def test_what_lies_outside_the_limits_is_refused() -> None:
    for fines in (-0.1, 1.1):
        with pytest.raises(ValueError, match="share"):
            filters.category(fines)
    with pytest.raises(ValueError, match="3 to 5"):
        filters.min_d15(MM, times=6)
    with pytest.raises(ValueError, match="50 mm"):
        filters.max_d90(51 * MM)


# Below 4 d85 = 0.7 mm the published formula of category 3 rises towards category 2 by itself, so
# the next property speaks of coarser soils, and of fines up to where category 1 begins.
@given(
    fines=st.floats(0, 0.85), more=st.floats(0, 0.85), d85=st.floats(0.175 * MM, 20 * MM),
    finer=st.floats(0.5, 1),
)  # fmt: skip
def test_more_fines_never_allow_a_coarser_filter(
    fines: float, more: float, d85: float, finer: float
) -> None:
    few, many = sorted((fines, more))
    then = max(d85 * finer, 0.175 * MM)
    assert filters.max_d15(many, then) <= filters.max_d15(few, d85) * (1 + 1e-9)


@given(fines=st.floats(0.8501, 1), d85=st.floats(0.001 * MM, 0.075 * MM))
def test_soil_nearly_all_fines_is_held_by_less_than_category_2(fines: float, d85: float) -> None:
    # More than 85 % passes 0.075 mm, so d85 is below it, and 9 x 0.075 = 0.675 mm.
    assert filters.max_d15(fines, d85) <= filters.max_d15(0.85, d85)


@given(fines=st.floats(0, 1), d85=st.floats(0.01 * MM, 20 * MM), times=st.floats(1, 3))
def test_a_coarser_soil_never_asks_for_a_finer_filter(
    fines: float, d85: float, times: float
) -> None:
    assert filters.max_d15(fines, d85 * times) >= filters.max_d15(fines, d85) * (1 - 1e-9)


@given(fines=st.floats(0, 1), d85=st.floats(0.01 * MM, 20 * MM))
def test_dispersion_never_allows_a_coarser_filter(fines: float, d85: float) -> None:
    assert filters.max_d15(fines, d85, dispersive=True) <= filters.max_d15(fines, d85)
