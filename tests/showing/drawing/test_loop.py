"""The course of the drain on plan and unrolled, against figures worked out by hand."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from checker.showing.drawing.figures import Figures
from checker.showing.drawing.loop import (
    centroid,
    closing_error,
    course_of,
    outline,
    outward,
    pond,
    stations,
)
from tests.showing.drawing.conftest import Drawn
from tests.support import spec_of


def drain(**more: Any) -> Figures:
    corners = [
        {"id": name, "invert": invert, "run_to_next": run, **turn}
        for name, invert, run, turn in more.pop("corners")
    ]
    keys = {"present": "yes", "shape": "loop", "corners": corners, **more}
    return Figures(spec_of({"levels": {"unit": "ft"}, "drain": keys}))


def square(turn: dict[str, str], last: str = "3 m") -> Figures:
    names = (("A", "9", "4 m"), ("B", "8.5", "3 m"), ("C", "8", "4 m"), ("D", "8.5", last))
    return drain(corners=[(*name, turn) for name in names], outlet_at="C")


def test_turns_to_the_left_walk_round_and_close() -> None:
    points = outline(course_of(square({"turn": "left"})))
    expected = [(0, 0), (4, 0), (4, 3), (0, 3), (0, 0)]
    assert points == [pytest.approx(point, abs=1e-9) for point in expected]
    assert closing_error(points, 4) == pytest.approx(0, abs=1e-9)


def test_a_run_too_short_leaves_its_gap() -> None:
    points = outline(course_of(square({"turn": "right"}, last="2.4 m")))
    assert closing_error(points, 4) == pytest.approx(0.6)


def test_without_turns_no_outline_is_made_up() -> None:
    assert outline(course_of(square({}))) == []


def test_places_of_the_corners_come_before_turns() -> None:
    corners = [
        ("A", "9", "4 m", {"x": "1 m", "y": "2 m", "turn": "left"}),
        ("B", "8", "4 m", {"x": "5 m", "y": "2 m", "turn": "left"}),
    ]
    points = outline(course_of(drain(corners=corners)))
    assert points == [pytest.approx((1, 2)), pytest.approx((5, 2))]


def test_a_loop_is_unrolled_from_its_outlet_back_to_it() -> None:
    found, shown = stations(course_of(square({})))
    assert [one.corner.name for one in found] == ["C", "D", "A", "B", "C"]
    assert [one.along for one in found] == pytest.approx([0, 4, 7, 11, 14])
    assert shown


def test_without_all_runs_the_corners_stand_evenly() -> None:
    figures = Figures(
        spec_of(
            {
                "levels": {"unit": "m"},
                "drain": {"shape": "line", "corners": [{"id": "a"}, {"id": "b"}, {"id": "c"}]},
            }
        )
    )
    found, shown = stations(course_of(figures))
    along = [one.along for one in found]
    assert along[1] - along[0] == along[2] - along[1] > 0
    assert not shown


def test_water_stands_level_over_a_low_point() -> None:
    # Bed from 1.0 down to 0.4 in 3 m and up to 1.0 in 6 m; a level of 0.6 is met 1 m before the
    # low point (0.2 of 0.6 over 3 m) and 2 m after it.
    shape = pond([(0.0, 1.0), (3.0, 0.4), (9.0, 1.0)], 1, 0.6)
    assert shape == [
        pytest.approx(point) for point in [(2, 0.6), (3, 0.4), (5, 0.6), (5, 0.6), (2, 0.6)]
    ]


def test_middle_of_an_l_lies_where_its_area_balances() -> None:
    # 2 x 1 with its middle at (1, 0.5) and 1 x 1 with its middle at (0.5, 1.5).
    shape = [(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (1.0, 1.0), (1.0, 2.0), (0.0, 2.0)]
    assert centroid(shape) == pytest.approx(((2 * 1 + 0.5) / 3, (2 * 0.5 + 1.5) / 3))


def test_lengths_are_written_outside_the_house() -> None:
    # On paper, where down counts as more: a square walked to the right along its upper side.
    ring = [(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)]
    assert outward(ring, True, (1.0, 0.0)) == (0.0, -1.0)
    assert outward(ring[::-1], True, (1.0, 0.0)) == (0.0, 1.0)


def test_plan_shows_what_each_corner_and_run_says(drawn: Callable[..., Drawn]) -> None:
    keys = {
        "levels": {"unit": "m"},
        "drain": {
            "present": "yes", "shape": "loop", "outlet_at": "C",
            "corners": [
                {"id": "A", "invert": "9.00", "run_to_next": "4 m", "turn": "left"},
                {"id": "B", "invert": "8.95", "run_to_next": "3 m", "turn": "left"},
                {"id": "C", "invert": "8.97", "run_to_next": "4 m", "turn": "left"},
                {"id": "D", "invert": "8.98", "run_to_next": "3 m", "turn": "left"},
            ],
        },
    }  # fmt: skip
    plan = drawn(keys, "plan")
    texts = " ".join(plan.texts())
    assert "B, invert 8.950 m" in texts
    # From A to B 9.00 - 8.95 = 50 mm; at B, 20 mm lower than the outlet, water stays.
    assert "falls 50 mm" in texts
    assert "20 mm of water stays at B" in texts
    assert "sheet-1-profile-pond" in plan.parts


def test_profile_alone_where_nothing_says_how_the_drain_lies(sheet: Callable[..., Drawn]) -> None:
    good = sheet("good", "plan")
    assert "sheet-1-plan-drain" not in good.parts
    # Unrolled from SW (90.86) over NE (91.16) back to it: lengths 44, 32, 44, 32 ft.
    points = good.points("sheet-1-profile-invert")
    assert len(points) == 5
    (x0, y0), (x1, _), (_, y2) = points[0], points[1], points[2]
    width = points[-1][0] - x0
    assert (x1 - x0) / width == pytest.approx(44 / 152, abs=0.001)
    assert y0 == points[-1][1] > y2
