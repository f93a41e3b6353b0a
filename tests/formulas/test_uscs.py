"""Group symbols: every boundary of the chart, from both sides."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import soils, uscs


@pytest.mark.parametrize(
    ("liquid", "index", "symbol"),
    [
        # A-line at 41: 0.73 x 21 = 15.33
        (41, 15.4, "CL"),
        (41, 15.2, "ML"),
        (49.9, 25, "CL"),
        (50, 25, "CH"),  # 0.73 x 30 = 21.9
        (50, 21.8, "MH"),
        # The box, over the A-line: at 25 the line is at 3.65.
        (25, 3.9, "ML"),
        (25, 4, "CL-ML"),
        (25, 7, "CL-ML"),
        (25, 7.1, "CL"),
        (28, 5, "ML"),  # in the band of 4 to 7, but the line is at 5.84
        (22, 2, "ML"),  # over the line at 1.46, and below 4
        (30, 0, "ML"),
    ],
)
def test_fines_by_the_plasticity_chart(liquid: float, index: float, symbol: str) -> None:
    assert uscs.symbol_of_fines(liquid, index) == symbol


@pytest.mark.parametrize(
    ("fines", "passing_no4", "cu", "cc", "of_fines", "symbol"),
    [
        (0.50, 0.9, None, None, "CL", "CL"),
        (0.49, 0.9, None, None, "CL", "SC"),
        # Gravel from the larger half of the coarse: 95 % coarse, half of it is 47.5 %.
        (0.049, 0.52, 4.0, 1.0, None, "GW"),
        (0.05, 0.50, 4.0, 3.0, "ML", "GW-GM"),
        (0.05, 0.55, 6.0, 1.0, "ML", "SW-SM"),
        # No. 4 passes 1 - 0.5 x 0.95 = 52.5 %: exactly half is held, so it is sand.
        (0.05, 0.525, 6.0, 1.0, "CL", "SW-SC"),
        (0.02, 0.4, 3.9, 2.0, None, "GP"),
        (0.02, 0.9, 5.9, 2.0, None, "SP"),
        (0.02, 0.9, 6.0, 2.0, None, "SW"),
        (0.02, 0.9, 0.6 / 0.1, 2.0, None, "SW"),  # 5.999... in binary
        (0.02, 0.9, 8.0, 0.99, None, "SP"),
        (0.02, 0.9, 8.0, 3.01, None, "SP"),
        (0.12, 0.9, 8.0, 2.0, "CL-ML", "SW-SC"),
        (0.121, 0.9, None, None, "CL-ML", "SC-SM"),
        (0.13, 0.4, None, None, "CL-ML", "GC-GM"),
        (0.13, 0.4, None, None, "CH", "GC"),
        (0.13, 0.4, None, None, "MH", "GM"),
    ],
)
def test_group_symbols(
    fines: float,
    passing_no4: float,
    cu: float | None,
    cc: float | None,
    of_fines: str | None,
    symbol: str,
) -> None:
    assert uscs.group_symbol(fines, passing_no4, cu, cc, of_fines) == symbol


def test_what_a_symbol_needs() -> None:
    assert not uscs.needs_limits(0.049)
    assert uscs.needs_limits(0.05)
    assert uscs.needs_shape(0.12)
    assert not uscs.needs_shape(0.121)


@pytest.mark.parametrize(
    ("arguments", "what"),
    [
        ((0.6,), "Atterberg"),
        ((0.2, 0.9), "Atterberg"),
        ((0.2, None, None, None, "CL"), "No. 4"),
        ((0.02, 0.9, None, 2.0), "uniformity"),
        ((0.02, 0.9, 8.0, None), "curvature"),
        ((1.2,), "share"),
        ((0.4, 0.3, None, None, "CL"), "No. 200"),
    ],
)
def test_a_symbol_is_not_guessed(arguments: tuple[float, ...], what: str) -> None:
    with pytest.raises(ValueError, match=what):
        uscs.group_symbol(*arguments)  # type: ignore[arg-type]


def test_index_is_the_difference_of_the_limits() -> None:
    assert uscs.plasticity_index(41, 20) == 21
    assert uscs.plasticity_index(20, 20) == 0


@pytest.mark.parametrize(("liquid", "plastic"), [(20, 41), (20, 20.1), (20, -1)])
def test_limits_out_of_order_are_refused(liquid: float, plastic: float) -> None:
    with pytest.raises(ValueError, match="limit"):
        uscs.plasticity_index(liquid, plastic)


@pytest.mark.parametrize(("liquid", "index"), [(20, 21), (20, -1)])
def test_an_index_that_cannot_be_is_refused(liquid: float, index: float) -> None:
    with pytest.raises(ValueError, match="index"):
        uscs.symbol_of_fines(liquid, index)


@given(
    fines=st.floats(0, 1), of_coarse=st.floats(0, 1), cu=st.floats(1, 50), cc=st.floats(0.1, 10),
    liquid=st.floats(1, 120), of_limit=st.floats(0, 1),
)  # fmt: skip
def test_every_soil_has_one_symbol_that_the_book_of_symbols_knows(
    fines: float, of_coarse: float, cu: float, cc: float, liquid: float, of_limit: float
) -> None:
    of_fines = uscs.symbol_of_fines(liquid, of_limit * liquid)
    passing_no4 = min(fines + of_coarse * (1 - fines), 1.0)
    symbol = uscs.group_symbol(fines, passing_no4, cu, cc, of_fines)
    # soils.py sorts symbols into fine and coarse on its own; more than half fines is fine.
    assert soils.is_fine_grained(symbol) is (fines >= 0.5)
