"""How high water climbs: fine grains more than coarse, and the range of C about a clean tube."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import capillarity

SIZES = st.floats(1e-5, 0.05)
VOIDS = st.floats(0.2, 1.2)


@given(size=SIZES, voids=VOIDS)
def test_half_the_size_climbs_twice_as_high(size: float, voids: float) -> None:
    coarse = capillarity.rise_between_grains(size, voids)
    assert capillarity.rise_between_grains(size / 2, voids) == pytest.approx(2 * coarse)


@given(rise=st.floats(0.001, 5), voids=VOIDS)
def test_the_size_for_a_rise_gives_that_rise(rise: float, voids: float) -> None:
    size = capillarity.size_for_rise(rise, voids)
    assert capillarity.rise_between_grains(size, voids) == pytest.approx(rise)


@given(size=SIZES, voids=VOIDS)
def test_a_clean_tube_as_wide_as_the_pores_lies_within_the_range(size: float, voids: float) -> None:
    # 4 x 0.0742 / 9806.65 = 0.303 cm2, between 0.1 and 0.5.
    tube = capillarity.rise_in_tube(voids * size)
    least = capillarity.rise_between_grains(size, voids, capillarity.LEAST_C)
    assert least < tube < capillarity.rise_between_grains(size, voids, capillarity.MOST_C)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="above nothing"):
        capillarity.rise_between_grains(0.0, 0.4)
    with pytest.raises(ValueError, match="above nothing"):
        capillarity.rise_between_grains(0.001, 0.0)
    with pytest.raises(ValueError, match="above nothing"):
        capillarity.rise_in_tube(0.0)
