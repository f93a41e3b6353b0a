"""Notes are pushed apart, and text is broken to its column."""

from __future__ import annotations

import pytest

from checker.showing.drawing.callouts import spread
from checker.showing.drawing.svg import shortened, width_of, wrapped
from checker.showing.drawing.view import fitting, scales


def test_notes_stay_where_they_wish_when_there_is_room() -> None:
    assert spread([10, 50], [8, 8], 0, 100, 2) == [10, 50]


def test_notes_at_one_height_stand_one_under_the_other() -> None:
    assert spread([10, 10, 10], [8, 8, 8], 0, 100, 2) == [10, 20, 30]


def test_notes_at_the_foot_are_pushed_up_into_the_column() -> None:
    assert spread([90, 95], [8, 8], 0, 100, 2) == [82, 92]


def test_notes_that_fill_the_column_close_up_without_covering_each_other() -> None:
    tops = spread([0, 0, 0], [30, 30, 30], 0, 90, 10)
    assert tops == [0, 30, 60]


def test_wrapped_lines_fit_and_lose_no_word() -> None:
    text = "water stands to 91.52 ft before the drain takes any"
    lines = wrapped(text, 80)
    assert " ".join(lines) == text
    assert all(width_of(line) <= 80 for line in lines)


def test_a_word_wider_than_its_column_is_broken() -> None:
    lines = wrapped("x" * 300, 100)
    assert "".join(lines) == "x" * 300
    assert all(width_of(line) <= 100 for line in lines)


def test_what_is_cut_off_says_so() -> None:
    lines = wrapped("one two three four five six seven eight nine ten", 60, 2)
    assert len(lines) == 2
    assert lines[-1].endswith("...")
    assert width_of(shortened("W" * 2000, 50)) <= 50


def test_widths_add_up_the_same_in_every_python() -> None:
    # Narrow letters are 0.36 wide; ten of them, added one after the other, 3.599999999999999.
    assert width_of("i" * 10, 1) == 10 * 0.36


@pytest.mark.parametrize("system", ["us", "si"])
def test_a_view_takes_the_largest_usual_scale_that_fits(system: str) -> None:
    scale = fitting(3.0, 4.0, (330, 240), system)
    larger = [one for one in scales(system) if one.per_metre > scale.per_metre]
    assert 4.0 * scale.per_metre <= 240
    assert all(4.0 * one.per_metre > 240 or 3.0 * one.per_metre > 330 for one in larger)


def test_what_fits_at_no_usual_scale_gets_one_of_its_own() -> None:
    scale = fitting(1.0, 30_000.0, (330, 240), "us")
    assert 30_000.0 * scale.per_metre == pytest.approx(240)
    assert scale.name.startswith("1:")
