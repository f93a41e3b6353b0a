"""The section on paper: parts stand where their levels and sizes say, to half a point.

One foot is 72 points at 1" = 1'-0" and 18 at 1/4" = 1'-0". Figures are by hand from specs/good.yaml
and specs/bad.yaml.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tests.showing.drawing.conftest import Drawn

Sheet = Callable[..., Drawn]

NEAR = 0.5


@pytest.mark.parametrize(("view", "foot"), [("detail", 72.0), ("section", 18.0)])
def test_crown_stands_where_the_levels_say(sheet: Sheet, view: str, foot: float) -> None:
    # Crown 91.16 + (4.215 - 0.12)/12 = 91.501 ft, which is 0.831 ft over the footing's underside.
    good = sheet("good")
    _, underside = good.heights(f"sheet-1-{view}-footing")
    pipe = f"sheet-1-{view}-pipe"
    crown = good.number(pipe, "cy") - good.number(pipe, "r")
    assert underside - crown == pytest.approx(0.83125 * foot, abs=NEAR)


def test_both_scales_are_the_ones_reckoned_with(sheet: Sheet) -> None:
    texts = sheet("good").texts()
    assert '1" = 1\'-0"' in texts
    assert '1/4" = 1\'-0"' in texts


def test_pipe_has_its_true_size_and_distance_from_the_footing(sheet: Sheet) -> None:
    # 4.215 in across at 6 points to the inch; 3 in off the side of the footing.
    good = sheet("good")
    radius = good.number("sheet-1-detail-pipe", "r")
    side = max(x for x, _ in good.points("sheet-1-detail-footing"))
    assert radius == pytest.approx(4.215 / 2 * 6, abs=NEAR)
    left = good.number("sheet-1-detail-pipe", "cx") - radius
    assert left - side == pytest.approx(18, abs=NEAR)


def test_slab_underside_lies_a_foot_over_bearing_and_slab_is_four_inches(sheet: Sheet) -> None:
    good = sheet("good")
    top, low = good.heights("sheet-1-detail-slab")
    _, underside = good.heights("sheet-1-detail-footing")
    assert underside - low == pytest.approx(72, abs=NEAR)
    assert low - top == pytest.approx(0.33 * 72, abs=NEAR)


def test_coat_goes_down_to_its_bottom_level(sheet: Sheet) -> None:
    # Its bottom, 90.67 ft, is the level of the footing's underside.
    good = sheet("good")
    _, bottom = good.heights("sheet-1-detail-coat")
    _, underside = good.heights("sheet-1-detail-footing")
    assert bottom == pytest.approx(underside, abs=NEAR)


def test_coat_that_stops_short_stops_short_on_paper(sheet: Sheet) -> None:
    # Bottom of the coat 92.00, top of the footing 91.67: 0.33 ft.
    bad = sheet("bad")
    _, bottom = bad.heights("sheet-1-detail-coat")
    joint, _ = bad.heights("sheet-1-detail-footing")
    assert joint - bottom == pytest.approx(0.33 * 72, abs=NEAR)


def test_sheet_hangs_over_the_stone(sheet: Sheet) -> None:
    # Bottom of the sheet 93.00, top of the stone 92.30: 0.70 ft of soil between.
    bad = sheet("bad")
    _, bottom = bad.heights("sheet-1-detail-sheet")
    stone, _ = bad.heights("sheet-1-detail-stone")
    assert stone - bottom == pytest.approx(0.70 * 72, abs=NEAR)


def test_water_stands_to_the_level_of_entry(sheet: Sheet) -> None:
    # Inside radius 1.9875 in; the lower edge of an upper hole lies 180 - 60 - asin(0.1875/1.9875)
    # = 114.59 deg from the bottom, 1.9875 (1 - cos 114.59) = 2.814 in up. 91.80 ft + 2.814 in is
    # 0.3645 ft over the joint (91.67).
    bad = sheet("bad")
    joint, _ = bad.heights("sheet-1-detail-footing")
    water, _ = bad.heights("sheet-1-detail-entry")
    assert joint - water == pytest.approx(0.3645 * 72, abs=NEAR)
    assert "4.4 in" in bad.texts()


def test_pipe_at_its_lowest_corner_is_drawn_beyond(sheet: Sheet) -> None:
    # SW lies 91.16 - 90.86 = 0.30 ft lower than NE.
    good = sheet("good")
    high = good.number("sheet-1-detail-pipe", "cy")
    low = good.number("sheet-1-detail-pipe-at-low-corner", "cy")
    assert low - high == pytest.approx(0.30 * 72, abs=NEAR)


def test_high_water_is_drawn_at_its_level(sheet: Sheet) -> None:
    # 90.67 - 88.50 = 2.17 ft under the footing.
    good = sheet("good")
    _, underside = good.heights("sheet-1-section-footing")
    water = good.number("sheet-1-section-high-water", "y1")
    assert water - underside == pytest.approx(2.17 * 18, abs=NEAR)


def test_metric_spec_is_drawn_at_a_metric_scale(sheet: Sheet) -> None:
    # 1:20 is 141.73 points to the metre; the footing is 300 mm thick and 500 mm wide.
    metric = sheet("metric")
    top, low = metric.heights("sheet-1-detail-footing")
    xs = [x for x, _ in metric.points("sheet-1-detail-footing")]
    assert "1:20" in metric.texts()
    assert low - top == pytest.approx(0.3 * 72 / 0.0254 / 20, abs=NEAR)
    assert max(xs) - min(xs) == pytest.approx(0.5 * 72 / 0.0254 / 20, abs=NEAR)


def test_what_is_shown_is_solid_and_what_is_not_is_dashed(sheet: Sheet, drawn: Sheet) -> None:
    bare = drawn({"levels": {"unit": "ft", "footing_top": "91", "footing_underside": "90"}})
    for part in ("footing", "slab", "coat", "stone", "retarder"):
        assert sheet("good").parts[f"sheet-1-detail-{part}"].get("stroke-dasharray") is None
        assert bare.parts[f"sheet-1-detail-{part}"].get("stroke-dasharray")
    assert "coat: not shown" in bare.texts()


def test_without_levels_it_says_that_it_is_not_to_scale(drawn: Sheet) -> None:
    bare = drawn({"coat": {"class": "none"}})
    assert "not to scale: levels not shown" in bare.texts()
    assert not any("1'-0\"" in text for text in bare.texts())
    dashed = bare.parts["sheet-1-section-footing"]
    assert dashed.get("stroke-dasharray")


def test_what_the_spec_says_is_absent_is_not_drawn(drawn: Sheet) -> None:
    bare = drawn(
        {
            "levels": {"unit": "ft", "footing_top": "91", "footing_underside": "90"},
            "drain": {"present": "no"},
            "coat": {"class": "none"},
            "sheet": {"kind": "none"},
            "slab": {"retarder": "no"},
        }
    )
    for part in ("pipe", "stone", "coat", "sheet", "retarder"):
        assert f"sheet-1-detail-{part}" not in bare.parts


def test_scale_grows_for_a_low_wall_and_shrinks_for_a_high_one(drawn: Sheet) -> None:
    def whole(top: str) -> Any:
        levels = {"unit": "ft", "top_of_wall": top, "footing_top": "91", "footing_underside": "90"}
        top_y, low_y = drawn({"levels": levels}).heights("sheet-1-section-footing")
        return low_y - top_y

    # A footing of 1 ft: 2 ft of wall, then 14 ft of wall.
    assert whole("93") > whole("105") > 5


def test_levels_that_contradict_are_drawn_and_said(drawn: Sheet) -> None:
    levels = {"unit": "ft", "footing_top": "90", "footing_underside": "93", "slab_underside": "80"}
    sheet = drawn({"levels": levels})
    joined = " ".join(sheet.texts())
    assert "contradict one another and are drawn as they are written" in joined
