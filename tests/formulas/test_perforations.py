"""Water through openings: more head, more openings and more pipe never let in less."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import perforations

areas = st.floats(0.0, 0.1)
heads = st.floats(-1.0, 5.0)
lengths = st.floats(0.0, 100.0)


def test_one_square_inch_a_foot_under_two_inches() -> None:
    # Derived: 1 sq in/ft = 0.0069444 ft2, sqrt(2 x 32.174 x 2/12) = 3.2748 ft/s;
    # x 0.5 x 0.61 = 0.006936 cfs = 3.11 gpm for each foot.
    gpm = 231 * 0.0254**3 / 60
    found = perforations.inflow(0.3048, 0.0254**2 / 0.3048, 2 * 0.0254)
    assert found == pytest.approx(3.11 * gpm, rel=2e-3)


def test_rows_of_holes() -> None:
    # Two rows of 3/8 in holes every 3 in: 0.11045 x 2 x 4 = 0.8836 sq in a foot.
    hole = perforations.round_hole(0.375 * 0.0254)
    found = perforations.open_area(hole, 2, 3 * 0.0254)
    assert found == pytest.approx(0.8836 * 0.0254**2 / 0.3048, rel=1e-3)


@given(area=areas, low=heads, high=heads)
def test_water_entering_never_falls_as_the_head_rises(area: float, low: float, high: float) -> None:
    low, high = sorted((low, high))
    assert perforations.orifice(area, low) <= perforations.orifice(area, high)


@given(
    length=lengths,
    area=areas,
    head=heads,
    clogged=st.floats(0.01, 1.0),
    longer=st.floats(1.0, 3.0),
    more=st.floats(1.0, 3.0),
)
def test_more_pipe_more_openings_and_cleaner_ones_let_in_no_less(
    length: float, area: float, head: float, clogged: float, longer: float, more: float
) -> None:
    least = perforations.inflow(length, area, head, clogged)
    assert perforations.inflow(length * longer, area, head, clogged) >= least
    assert perforations.inflow(length, area * more, head, clogged) >= least
    assert perforations.inflow(length, area, head, 1.0) >= least


@pytest.mark.parametrize("head", [0.0, -0.5])
def test_without_a_head_nothing_enters(head: float) -> None:
    assert perforations.orifice(0.01, head) == 0.0
    assert perforations.inflow(10, 0.002, head) == 0.0


@pytest.mark.parametrize("bad", [-1.0, math.nan])
def test_what_cannot_be_is_refused(bad: float) -> None:
    with pytest.raises(ValueError, match="area"):
        perforations.orifice(bad, 1.0)
    with pytest.raises(ValueError, match="length"):
        perforations.inflow(bad, 0.1, 1.0)
    for share in (bad, 0.0, 1.1):
        with pytest.raises(ValueError, match="coefficient"):
            perforations.orifice(0.1, 1.0, share)
        with pytest.raises(ValueError, match="stays free"):
            perforations.inflow(1.0, 0.1, 1.0, share)
    with pytest.raises(ValueError, match="diameter"):
        perforations.round_hole(bad)
    with pytest.raises(ValueError, match="spacing"):
        perforations.open_area(1e-5, 2, bad)
    with pytest.raises(ValueError, match="row"):
        perforations.open_area(1e-5, 0, 0.1)
