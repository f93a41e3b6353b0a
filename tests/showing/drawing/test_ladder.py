"""All levels on one axis, to scale. 3" = 1'-0" is 216 points to the foot."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.showing.drawing.conftest import Drawn

Sheet = Callable[..., Drawn]


def test_room_for_the_pipe_reaches_from_slab_to_bearing(sheet: Sheet) -> None:
    # 91.67 - 90.67 = 1.00 ft; the crown, 91.501, lies 0.169 ft under the slab.
    good = sheet("good", "levels")
    assert '3" = 1\'-0"' in good.texts()
    assert good.number("sheet-1-foot-window", "height") == pytest.approx(216, abs=0.5)
    top = good.number("sheet-1-foot-window", "y")
    assert good.number("sheet-1-foot-crown", "y1") - top == pytest.approx(0.16875 * 216, abs=0.5)
    assert good.number("sheet-1-foot-pipe-high", "y") == good.number("sheet-1-foot-crown", "y1")


def test_every_level_that_is_shown_stands_on_the_axis(sheet: Sheet) -> None:
    texts = " ".join(sheet("good", "levels").texts())
    for text in ("top of wall", "finished grade", "top of floor 92.00 ft", "crown of the pipe",
                 "invert, lowest 90.86 ft", "bottom of trench, lowest 90.68 ft",
                 "top of stone 92.50 ft", "88.50 ft"):  # fmt: skip
        assert text in texts


def test_without_levels_it_says_so(drawn: Sheet) -> None:
    assert "No level is shown." in drawn({"coat": {"class": "none"}}, "levels").texts()
