"""Unbalanced height of fill."""

from __future__ import annotations

from checker.formulas import backfill


def test_nothing_is_held_back_where_the_inside_is_higher() -> None:
    assert backfill.unbalanced_height(90.0, 92.0) == 0.0


def test_the_lower_of_footing_and_inside_ground_counts() -> None:
    assert backfill.counted_from(91.67) == 91.67
    assert backfill.counted_from(91.67, 92.5) == 91.67
    assert backfill.counted_from(91.67, 91.0) == 91.0
