"""Files are judged in their order, by however many processes, and none stops the others."""

from __future__ import annotations

import gc
import io
import multiprocessing
import os
from collections.abc import Generator
from pathlib import Path

import pytest

from checker.judging.judge import review as judge
from checker.judging.many import Asked, judge_file, judge_files
from checker.judging.review_data import Review
from checker.judging.rulebook import Rulebook, load_rulebook
from checker.reading.reader import load_spec
from checker.reading.spec import Spec

SPECS = Path(__file__).parents[2] / "specs"
FILES = [SPECS / "good.yaml", SPECS / "bad.yaml", SPECS / "metric.yaml"]


def whole(spec: Spec, review: Review) -> tuple[str, Review]:
    return spec.name, review


def nothing(spec: Spec, review: Review) -> None:
    pass


def end_at_once(spec: Spec, review: Review) -> str:
    os._exit(1)


@pytest.fixture(scope="module")
def rulebook() -> Rulebook:
    return load_rulebook()


def test_what_each_file_gives_in_order(rulebook: Rulebook) -> None:
    expected = [judge(spec, rulebook).findings for file in FILES for spec in load_spec(file)]
    alone = list(judge_files(list(FILES), Asked(rulebook, whole)))
    assert [review.findings for one in alone for _, review in one.made] == expected
    assert list(judge_files(list(FILES), Asked(rulebook, whole), 2)) == alone


def test_a_file_that_cannot_be_read_keeps_its_place(rulebook: Rulebook, tmp_path: Path) -> None:
    broken = tmp_path / "broken.yaml"
    broken.write_text("vocabulary: 1\nwal: {}\n", encoding="utf-8")
    for jobs in (1, 2):
        first, second, third = judge_files(
            [FILES[0], broken, FILES[1]], Asked(rulebook, whole), jobs
        )
        assert len(first.made) == len(third.made) == 1
        assert (second.made, [fault.line for fault in second.faults]) == ((), [2])


def test_what_is_asked_reaches_every_process(rulebook: Rulebook) -> None:
    asked = Asked(rulebook, whole, "forms", "both", "2031-07-02")
    for jobs in (1, 2):
        found = judge_files([SPECS / "house.yaml"] * 2, asked, jobs)
        reviews = [review for one in found for _, review in one.made]
        assert {(one.by, one.day) for one in reviews} == {("forms", "2031-07-02")}
        assert [one.basis for one in reviews] == ["design", "measured"] * 2


def test_standard_input_is_read_by_this_process(
    rulebook: Rulebook, monkeypatch: pytest.MonkeyPatch
) -> None:
    data = FILES[0].read_bytes()
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(data), encoding="utf-8"))
    found = list(judge_files([FILES[1], None, FILES[2]], Asked(rulebook, whole), 2))
    assert [len(one.made) for one in found] == [1, 1, 1]
    assert found[1].made[0][1].file == "standard input"


def test_more_files_than_are_ever_read_ahead(rulebook: Rulebook) -> None:
    files = [FILES[number % 3] for number in range(40)]
    asked = Asked(rulebook, whole)
    names = [name for one in judge_files(list(files), asked, 2) for name, _ in one.made]
    assert names == [load_spec(file)[0].name for file in FILES] * 13 + [load_spec(FILES[0])[0].name]


@pytest.mark.parametrize("times", [1, 20])
def test_a_process_that_ends_is_told_of_each_file_it_had(rulebook: Rulebook, times: int) -> None:
    files = FILES * times
    found = list(judge_files(list(files), Asked(rulebook, end_at_once), 2))
    assert [one.faults[0].file for one in found] == [str(file) for file in files]
    assert all("--jobs" in one.faults[0].message for one in found)


def test_processes_that_are_no_copies_of_this_one_say_the_same(
    rulebook: Rulebook, monkeypatch: pytest.MonkeyPatch
) -> None:
    # As on systems where a process cannot safely be copied.
    spawning = multiprocessing.get_context("spawn")
    monkeypatch.setattr("checker.judging.processes._context", lambda: spawning)
    alone = list(judge_files(list(FILES), Asked(rulebook, whole)))
    assert list(judge_files(list(FILES), Asked(rulebook, whole), 2)) == alone


def test_whoever_stops_early_leaves_no_process_behind(rulebook: Rulebook) -> None:
    judged = judge_files(list(FILES) * 4, Asked(rulebook, whole), 2)
    next(judged)
    assert len(multiprocessing.active_children()) == 2
    assert isinstance(judged, Generator)
    judged.close()
    assert multiprocessing.active_children() == []


def test_a_review_is_gone_when_nobody_holds_it(rulebook: Rulebook) -> None:
    """Else thousands would have to be searched for what refers to itself in a circle."""
    asked = Asked(rulebook, nothing)
    files = sorted(SPECS.rglob("*.yaml"))
    gc.collect()
    gc.disable()
    try:
        left = {}
        for file in files:
            judge_file(file, asked)
            # What is made once for all files may leave something behind.
            gc.collect()
            judge_file(file, asked)
            left[file.name] = gc.collect()
    finally:
        gc.enable()
    assert set(left.values()) == {0}, left
