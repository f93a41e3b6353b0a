"""A comparison in words carries its margin as a number too, in SI, with the kind and the unit."""

from __future__ import annotations

from typing import Any

import pytest

from checker.deriving.engine import Deriver
from checker.judging.conditions import Compare, compile_condition
from checker.judging.review_data import MET, NOT_MET, NOT_SHOWN, Compared
from checker.judging.wording import put, say_difference
from tests.support import spec_of


def compared(condition: dict[str, Any], mapping: dict[str, Any]) -> Compared:
    """Return one comparison of a spec, in words."""
    part = compile_condition(condition)
    assert isinstance(part, Compare)
    (judged,) = part.answer(Deriver(spec_of(mapping)), "", asking=True).judged
    return put(judged)


LEVELS = {"unit": "ft", "footing_top": 91.67, "slab_underside": 91.67}
BELOW = {"value": "levels.footing_top", "below": "levels.slab_underside"}

# The condition, the spec, and outcome, margin [SI], room and off by as they are told.
MARGINS = [
    # 4 in where at least 3 are asked: 1 in = 0.0254 m left; 2 in: so much is wanting.
    ({"value": "stone.bedding", "at least": "3 in"}, {"stone": {"bedding": "4 in"}}, MET, 0.0254, "1 in", ""),
    ({"value": "stone.bedding", "at least": "3 in"}, {"stone": {"bedding": "2 in"}}, NOT_MET, -0.0254, "", "1 in"),
    # A range is judged at its worst end: 8 in at most, and 6 in to 12 in reaches 12.
    ({"value": "backfill.lift", "at most": "14 in"}, {"backfill": {"lift": "6 in to 12 in"}}, MET, 0.0508, "2 in", ""),
    # A strict limit met exactly is missed by nothing.
    (BELOW, {"levels": LEVELS}, NOT_MET, 0.0, "", ""),
    # 91.67 - 91.42 = 0.25 ft = 3 in = 0.0762 m; levels in feet differ by inches.
    (BELOW, {"levels": {**LEVELS, "footing_top": 91.42}}, MET, 0.0762, "3 in", ""),
    # Words have no margin; neither has what is open at one end, nor what is not shown.
    ({"value": "drain.material", "is": "abs"}, {"drain": {"material": "abs"}}, MET, None, "", ""),
    ({"value": "stone.bedding", "at least": "3 in"}, {"stone": {"bedding": "2 in to 4 in"}}, NOT_SHOWN, None, "", ""),
    ({"value": "stone.bedding", "at least": "3 in"}, {"stone": {}}, NOT_SHOWN, None, "", ""),
]  # fmt: skip


@pytest.mark.parametrize(("condition", "spec", "outcome", "margin", "room", "off"), MARGINS)
def test_the_margin_is_the_room_or_less_than_none(
    condition: dict[str, Any], spec: dict[str, Any], outcome: str, margin: Any, room: str, off: str
) -> None:
    found = compared(condition, spec)
    assert (found.outcome, found.room, found.off_by) == (outcome, room, off)
    assert found.margin == (margin if margin is None else pytest.approx(margin, abs=1e-9))
    assert found.kind == {"levels.footing_top": "level", "drain.material": "word"}.get(
        condition["value"], "length"
    )


def test_the_margin_in_its_unit_is_what_is_told() -> None:
    found = compared(BELOW, {"levels": {"unit": "m", "footing_top": 27.9, "slab_underside": 27.95}})
    assert found.unit == "mm"
    assert found.margin is not None
    assert say_difference(found.kind, found.margin, found.unit, "down") == found.room == "50 mm"
