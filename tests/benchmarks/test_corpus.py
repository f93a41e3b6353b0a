"""The specs that speed is measured on: each another, the same for a seed, and as they should be."""

from __future__ import annotations

import functools
from pathlib import Path

import pytest

from checker import load_rulebook, load_spec, review
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, NOT_SHOWN
from checker.reading.faults import Unreadable
from tests.benchmarks.corpus import FAULTS, LONGEST, SHORTEST, Made, make, write

COUNT = 12
OTHER_SEED = 7


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("corpus")
    write(folder, COUNT)
    return folder


@functools.cache
def first_with(fault: str) -> Made:
    return next(made for made in map(make, range(2000)) if made.fault == fault)


def test_each_is_another(folder: Path) -> None:
    texts = {file.read_text(encoding="utf-8") for file in folder.rglob("*.yaml")}
    assert len(texts) == COUNT


def test_the_same_seed_gives_the_same_and_another_seed_others() -> None:
    assert [make(number) for number in range(COUNT)] == [make(number) for number in range(COUNT)]
    assert all(make(number).text != make(number, OTHER_SEED).text for number in range(COUNT))


def test_a_file_does_not_depend_on_how_many_there_are(folder: Path) -> None:
    last = make(COUNT - 1)
    assert (folder / last.path).read_text(encoding="utf-8") == last.text


def test_a_folder_holds_a_hundred() -> None:
    assert [Path(make(number).path).parent.name for number in (0, 99, 100)] == ["000", "000", "001"]


def test_they_are_as_long_as_a_spec_is() -> None:
    lengths = {make(number).text.count("\n") for number in range(COUNT)}
    assert min(lengths) >= SHORTEST == 150
    assert max(lengths) <= LONGEST == 260
    assert len(lengths) > COUNT / 2


def test_they_read_and_come_out_in_every_way(folder: Path) -> None:
    assert not any(make(number).fault for number in range(COUNT)), "choose another seed"
    book = load_rulebook()
    outcomes = [
        {finding.outcome for finding in review(spec, book).findings}
        for file in sorted(folder.rglob("*.yaml"))
        for spec in load_spec(file)
    ]
    assert len(outcomes) >= COUNT
    assert set.union(*outcomes) == {MET, NOT_MET, NOT_SHOWN, DOES_NOT_APPLY}


@pytest.mark.parametrize("fault", FAULTS)
def test_what_cannot_be_read_on_purpose_cannot(fault: str, tmp_path: Path) -> None:
    file = tmp_path / "lot.yaml"
    file.write_text(first_with(fault).text, encoding="utf-8")
    with pytest.raises(Unreadable):
        load_spec(file)
