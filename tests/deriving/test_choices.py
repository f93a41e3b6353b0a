"""Quantities of what a standard leaves open: tried for every choice."""

from __future__ import annotations

import math
from typing import Any

import pytest

from checker.deriving.choices import for_every_choice
from checker.deriving.engine import Deriver
from checker.deriving.quantity import Assumed, NotApplicable, NotShown, OutsideLimits
from checker.values import Choice, Range
from tests.support import spec_of

# Outside diameters that the test gives two pipes [m].
OUTSIDE = {"abs": 0.1, "clay": 0.14}


def outside(arguments: list[Any]) -> float:
    return OUTSIDE[arguments[0]]


def test_numbers_become_the_range_they_span() -> None:
    assert for_every_choice(outside, [Choice(("clay", "abs"))]) == Range(0.1, 0.14)


def test_ranges_are_put_together_to_their_outer_ends() -> None:
    spread = {"a": Range(1.0, 3.0), "b": Range(2.0, math.inf)}
    assert for_every_choice(lambda way: spread[way[0]], [Choice(("a", "b"))]) == Range(
        1.0, math.inf
    )


def test_one_result_for_all_is_that_result() -> None:
    assert for_every_choice(lambda way: 2.5, [Choice(("clay", "abs"))]) == 2.5


def test_words_and_answers_become_a_choice() -> None:
    assert for_every_choice(lambda way: way[0] == "abs", [Choice(("abs", "clay"))]) == Choice(
        (True, False)
    )
    assert for_every_choice(lambda way: way[0].upper(), [Choice(("a", "b"))]) == Choice(("A", "B"))


def test_every_way_of_choosing_is_tried() -> None:
    ways: list[list[Any]] = []
    for_every_choice(ways.append, [Choice(("a", "b")), 1, Choice(("c", "d"))])
    assert ways == [["a", 1, "c"], ["a", 1, "d"], ["b", 1, "c"], ["b", 1, "d"]]


def test_items_of_a_list_are_chosen_one_by_one() -> None:
    kinds = (("main", Choice(("daylight", "storm"))), ("second", "sump"))
    seen: list[Any] = []
    for_every_choice(lambda way: seen.append(way[0]), [kinds])
    assert seen == [
        (("main", "daylight"), ("second", "sump")),
        (("main", "storm"), ("second", "sump")),
    ]


def test_what_is_assumed_for_one_is_assumed() -> None:
    def work_out(way: list[Any]) -> Any:
        return Assumed(0.1, "from the table of pipes") if way[0] == "abs" else 0.14

    assert for_every_choice(work_out, [Choice(("abs", "clay"))]) == Assumed(
        Range(0.1, 0.14), "from the table of pipes"
    )


def test_what_is_not_shown_for_one_is_not_shown() -> None:
    def work_out(way: list[Any]) -> float:
        if way[0] == "clay":
            raise NotShown("the wall thickness", "drain.wall_thickness")
        return 0.1

    with pytest.raises(NotShown):
        for_every_choice(work_out, [Choice(("abs", "clay"))])


def test_what_means_nothing_for_some_has_no_number_and_for_all_is_inapplicable() -> None:
    def work_out(way: list[Any]) -> float:
        if way[0] in ("none", "nothing"):
            raise NotApplicable("no coat")
        return 0.1

    with pytest.raises(OutsideLimits, match="no coat"):
        for_every_choice(work_out, [Choice(("none", "paint"))])
    with pytest.raises(NotApplicable):
        for_every_choice(work_out, [Choice(("none", "nothing"))])


def test_too_many_ways_are_not_tried() -> None:
    open_ = Choice(tuple(range(9)))
    with pytest.raises(OutsideLimits, match="too much"):
        for_every_choice(lambda way: 0.0, [open_, open_])
    with pytest.raises(OutsideLimits, match="too much"):
        for_every_choice(lambda way: 0.0, [(("a", open_), ("b", open_))])


def test_a_quantity_of_a_standard_that_leaves_the_pipe_open() -> None:
    # shared/tables/pipes.yaml, 4 in: ABS is 4.215 in outside, corrugated coil is wider
    spec = spec_of(
        {"drain": {"diameter": "4 in", "material": ["abs", "corrugated_coil"]}}, paper="standard"
    )
    found = Deriver(spec).get("drain.pipe_outside_diameter").value
    singles = [
        Deriver(spec_of({"drain": {"diameter": "4 in", "material": material}}))
        .get("drain.pipe_outside_diameter")
        .value
        for material in ("abs", "corrugated_coil")
    ]
    assert singles[0] < singles[1]
    assert found == Range(*singles)
