"""What is said of two sides that took turns is what it comes to by hand."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.reading.reader import read_specs
from tests.benchmarks import aims, inside
from tests.benchmarks.corpus import FAULTS, make
from tests.benchmarks.inside import ITEMS, with_items, without_the_first
from tests.benchmarks.table import shown
from tests.benchmarks.turns import Ratio, in_turn, ratio


def test_the_ratio_is_that_of_the_pairs_and_not_of_the_medians() -> None:
    # A machine that was three times as slow in the last turn: 2/1, 4/2, 18/6, 30/6 are 2, 2, 3, 5.
    assert ratio([2, 4, 18, 30], [1, 2, 6, 6]) == Ratio(2.5, 2.0, 3.5)


def test_one_pair_has_no_spread() -> None:
    assert shown(ratio([3], [2])) == "1.50"
    assert shown(ratio([3, 5], [2, 2])) == "2.00 (1.75 to 2.25)"


def test_no_side_is_always_the_first() -> None:
    order: list[str] = []
    sides = {"ours": lambda: order.append("ours"), "theirs": lambda: order.append("theirs")}
    in_turn(sides, 3)
    assert order == ["ours", "theirs", "theirs", "ours", "ours", "theirs"]


def test_what_it_takes_to_start_is_charged_to_nobody() -> None:
    # Half a second to start, and a tenth for each: 0.6 s for one, 1.5 s for ten.
    assert [round(each, 9) for each in without_the_first([1.5], [0.6], 10)] == [0.1]


def test_a_file_that_cannot_be_read_is_left_out_on_both_sides(tmp_path: Path) -> None:
    broken = next(made for made in map(make, range(2000)) if made.fault in FAULTS)
    files = []
    for number, text in enumerate((make(1).text, broken.text, make(2).text)):
        files.append(tmp_path / f"{number}.yaml")
        files[-1].write_text(text, encoding="utf-8")
    rows = list(inside.warm(files, [], turns=2))
    assert rows[0].what.endswith("2 specs, each read once")
    assert [row.aim for row in rows].count(aims.WARM) == 2


@pytest.mark.parametrize("section", ITEMS)
def test_the_good_example_with_many_things_has_so_many(section: str) -> None:
    (spec,) = read_specs(with_items(section, 7), "many.yaml")
    assert len(spec.lists[section]) == 7
