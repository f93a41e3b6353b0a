"""Many files read and judged, one after another or by several processes, always in their order."""

from __future__ import annotations

import signal
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path
from typing import Any, Generic, NamedTuple, TypeVar

from checker.judging.review_data import Review
from checker.judging.rulebook import Rulebook
from checker.judging.settle import settle
from checker.reading.faults import Fault, Unreadable
from checker.reading.measured import on_basis
from checker.reading.reader import load_spec
from checker.reading.spec import DESIGN, Spec

Made = TypeVar("Made")

# One system or another allows no more.
MOST_JOBS = 60

# A file takes as long to judge as a few thousand bytes take to hand over; a few at a time will do.
_AT_A_TIME = 4
# What is read ahead, for each process. No more is ever held, however many files there are.
_AHEAD = 3


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
        yield from (_judge_file(file, asked) for file in files)
        return
    pool = ProcessPoolExecutor(min(jobs, MOST_JOBS), initializer=_start, initargs=(asked,))
    try:
        yield from _by_pool(files, asked, pool, jobs)
    finally:
        pool.shutdown(cancel_futures=True)


def _judge_file(file: Path | None, asked: Asked[Made]) -> Judged[Made]:
    try:
        settled = [
            settle(each, asked.rulebook, asked.place, asked.day)
            for spec in load_spec(file)
            for each in on_basis(spec, asked.basis)
        ]
    except Unreadable as error:
        return Judged((), tuple(error.faults))
    return Judged(tuple(asked.make(one.spec, one.review(asked.by)) for one in settled), ())


# -- several processes -----------------------------------------------------------------------------

# Batches in their order; standard input has no process to wait for, because only this one has it.
_Waiting = deque[tuple[Sequence[Path | None], "Future[list[Judged[Made]]] | None"]]


def _by_pool(
    files: Sequence[Path | None], asked: Asked[Made], pool: ProcessPoolExecutor, jobs: int
) -> Iterator[Judged[Made]]:
    waiting: _Waiting[Made] = deque()
    for batch in _batches(files, max(1, min(_AT_A_TIME, len(files) // jobs))):
        waiting.append((batch, None if None in batch else pool.submit(_judge_batch, batch)))
        if len(waiting) > _AHEAD * jobs:
            yield from _results(*waiting.popleft(), asked)
    while waiting:
        yield from _results(*waiting.popleft(), asked)


def _batches(files: Sequence[Path | None], size: int) -> Iterator[Sequence[Path | None]]:
    for start in range(0, len(files), size):
        yield files[start : start + size]


def _results(
    batch: Sequence[Path | None], future: Future[list[Judged[Made]]] | None, asked: Asked[Made]
) -> list[Judged[Made]]:
    if future is None:
        return [_judge_file(file, asked) for file in batch]
    try:
        return future.result()
    except BrokenProcessPool:
        message = "was not judged: a process ended before its time. Try again without --jobs"
        return [Judged((), (Fault(str(file), 0, 0, message),)) for file in batch]


_asked: Asked[Any]


def _start(asked: Asked[Any]) -> None:
    """Set up a process, once; whoever is at the keyboard interrupts the first one alone."""
    global _asked
    _asked = asked
    signal.signal(signal.SIGINT, signal.SIG_IGN)


def _judge_batch(batch: Sequence[Path | None]) -> list[Judged[Any]]:
    return [_judge_file(file, _asked) for file in batch]
