"""Openings of the pipe against the stone."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import openings


@given(opening=st.floats(1e-4, 0.05))
def test_slots_ask_for_more_than_holes_and_strict_for_more_than_common(opening: float) -> None:
    hole, slot = (openings.least_d85(opening, slot=slot) for slot in (False, True))
    assert opening == hole < slot
    assert openings.least_d85(opening, slot=False, strict=True) > hole
    assert openings.least_d85(opening, slot=True, strict=True) > slot


@given(low=st.floats(0.01, 5), high=st.floats(0.01, 5))
def test_a_wider_joint_never_loses_less(low: float, high: float) -> None:
    narrow, wide = sorted((low, high))
    first = openings.continuing_erosion(narrow, 1.0)
    assert 0 <= first <= openings.continuing_erosion(wide, 1.0) <= 0.9


def test_between_0_4_and_the_first_figure_the_first_figure_counts() -> None:
    assert openings.continuing_erosion(0.399, 1.0) == 0.0
    assert openings.continuing_erosion(0.4, 1.0) == 1e-4
    assert openings.continuing_erosion(7.0, 1.0) == 0.9


@pytest.mark.parametrize(("opening", "d95"), [(0.0, 1.0), (1.0, 0.0), (-1.0, 1.0)])
def test_nothing_is_refused(opening: float, d95: float) -> None:
    with pytest.raises(ValueError, match="nothing"):
        openings.continuing_erosion(opening, d95)


def test_a_hole_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="opening"):
        openings.least_d85(0.0, slot=False)


@pytest.mark.parametrize("sizes", [(0.0, 1.0, 2.0), (1.0, 0.0, 2.0), (1.0, 2.0, 1.0)])
def test_a_band_wants_sizes_in_order(sizes: tuple[float, float, float]) -> None:
    with pytest.raises(ValueError, match="finest first"):
        openings.share_of_band_finer(*sizes)


def test_a_band_of_one_size_is_finer_or_not() -> None:
    assert openings.share_of_band_finer(1.0, 1.0, 1.0) == 0
    assert openings.share_of_band_finer(1.1, 1.0, 1.0) == 1
