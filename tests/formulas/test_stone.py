"""Stone beside the pipe and soil between two parts."""

from __future__ import annotations

import pytest

from checker.formulas import stone


def test_side_left_is_what_offset_and_pipe_leave() -> None:
    # 14 - 3 - 4.2 = 6.8; and a pipe 13 out in 14 of stone sticks out by 3.2.
    assert stone.side_left(14, 3, 4.2) == pytest.approx(6.8)
    assert stone.side_left(14, 13, 4.2) == pytest.approx(-3.2)


def test_soil_between_is_positive_where_the_upper_part_stops_short() -> None:
    assert stone.soil_between(3.0, 2.5) == pytest.approx(0.5)
    assert stone.soil_between(2.0, 2.5) == pytest.approx(-0.5)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="outward"):
        stone.side_left(-0.1, 0.0, 0.1)
    with pytest.raises(ValueError, match="outward"):
        stone.side_left(0.3, -0.1, 0.1)
    with pytest.raises(ValueError, match="diameter"):
        stone.side_left(0.3, 0.1, 0.0)
