"""Many files read and judged, one after another or by several processes, always in their order."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Generic, NamedTuple, TypeVar

from checker.judging.review_data import Review
from checker.judging.rulebook import Rulebook
from checker.judging.settle import settle
from checker.reading.faults import Fault, Unreadable
from checker.reading.measured import on_basis
from checker.reading.reader import load_spec
from checker.reading.spec import DESIGN, Spec

Made = TypeVar("Made")


class Asked(NamedTuple, Generic[Made]):
    """What is asked of every file: by which rules, by which stage, of which values, where and when.

    `make` gives what is wanted of each assembly. It runs in the process that judged it, so it is a
    function that can be named from there.
    """

    rulebook: Rulebook
    make: Callable[[Spec, Review], Made]
    by: str = ""
    basis: str = DESIGN
    day: str = ""
    place: str = ""


class Judged(NamedTuple, Generic[Made]):
    """What one file gave: what was made of each of its assemblies, or what is wrong with it."""

    made: tuple[Made, ...]
    faults: tuple[Fault, ...]


def judge_files(
    files: Sequence[Path | None], asked: Asked[Made], jobs: int = 1
) -> Iterator[Judged[Made]]:
    """Yield what each file gives, in the order of the files; None is standard input.

    With more than one of `jobs` as many processes share the work, and the answer is the same.
    """
    if jobs < 2 or len(files) < 2:
        yield from (judge_file(file, asked) for file in files)
        return
    # What it takes to start processes takes time to load.
    from checker.judging.processes import judge_in_processes

    yield from judge_in_processes(files, asked, jobs)


def judge_file(file: Path | None, asked: Asked[Made]) -> Judged[Made]:
    """Return what one file gives."""
    try:
        settled = [
            settle(each, asked.rulebook, asked.place, asked.day)
            for spec in load_spec(file)
            for each in on_basis(spec, asked.basis)
        ]
    except Unreadable as error:
        return Judged((), tuple(error.faults))
    return Judged(tuple(asked.make(one.spec, one.review(asked.by)) for one in settled), ())
