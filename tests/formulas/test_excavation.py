"""Run-out of the sides of a dig: order of the soil types and the limits of the table."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import excavation

FOOT = 0.3048


def test_an_unclassed_soil_counts_as_the_worst_type() -> None:
    worst = max(excavation.run_per_rise(soil) for soil in ("stable_rock", "a", "b", "c"))
    assert worst == excavation.UNCLASSIFIED


def test_weaker_soil_leans_back_farther() -> None:
    outs = [excavation.run_out(3.0, excavation.run_per_rise(soil)) for soil in ("a", "b", "c")]
    assert outs == sorted(outs)
    assert len(set(outs)) == 3


def test_the_table_ends_at_twenty_feet() -> None:
    # 20 ft at one to one: 20 ft. Any deeper there is no answer.
    assert excavation.run_out(20 * FOOT, 1.0) == pytest.approx(20 * FOOT)
    with pytest.raises(ValueError, match="engineer"):
        excavation.run_out(20.01 * FOOT, 1.0)


@given(depth=st.floats(0.1, 6.0), slope=st.floats(0, 3), deeper=st.floats(0, 0.09))
def test_a_deeper_dig_never_needs_less_room(depth: float, slope: float, deeper: float) -> None:
    assert excavation.run_out(depth + deeper, slope) >= excavation.run_out(depth, slope)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="depth"):
        excavation.run_out(0.0, 1.0)
    with pytest.raises(ValueError, match="slope"):
        excavation.run_out(1.0, -1.0)
    with pytest.raises(ValueError, match="soil type"):
        excavation.run_per_rise("d")
