"""Work that several processes share; answers come in the order of what was asked."""

from __future__ import annotations

import signal
import sys
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from functools import partial
from multiprocessing import get_context
from multiprocessing.context import BaseContext
from pathlib import Path
from typing import Any, TypeVar

from checker.judging.many import Asked, Judged, Made, judge_file
from checker.reading.faults import Fault

Thing = TypeVar("Thing")
Given = TypeVar("Given")

# One system or another allows no more.
MOST_JOBS = 60
ENDED = "was not judged: a process ended before its time. Try again without --jobs"

# Judging a file takes far longer than handing it over; a few at a time will do.
_AT_A_TIME = 4
# What is read ahead, for each process. No more is ever held, however many files there are.
_AHEAD = 3


def judge_in_processes(
    files: Sequence[Path | None], asked: Asked[Made], jobs: int
) -> Iterator[Judged[Made]]:
    """Yield what each file gives, in the order of the files."""
    yield from in_processes(files, partial(judge_file, asked=asked), jobs, _not_judged)


def _not_judged(file: Path | None) -> Judged[Any]:
    return Judged((), (Fault(str(file), 0, 0, ENDED),))


def in_processes(
    things: Sequence[Thing],
    work: Callable[[Thing], Given],
    jobs: int,
    lost: Callable[[Thing], Given],
) -> Iterator[Given]:
    """Yield what `work` gives for each of many things, in their order.

    `lost` gives what is told of a thing whose process has ended before its time.
    """
    pool = ProcessPoolExecutor(min(jobs, MOST_JOBS), _context(), _start, (work,))
    try:
        yield from _by_pool(things, work, pool, jobs, lost)
    finally:
        pool.shutdown(cancel_futures=True)


def _context() -> BaseContext:
    """Say how processes come about: as copies, where that is safe, which have the rule book."""
    return get_context("fork" if sys.platform == "linux" else None)


def _by_pool(
    things: Sequence[Thing],
    work: Callable[[Thing], Given],
    pool: ProcessPoolExecutor,
    jobs: int,
    lost: Callable[[Thing], Given],
) -> Iterator[Given]:
    # Batches in their order. None, which is standard input, has no process to wait for, because
    # only this one has it.
    waiting: deque[tuple[Sequence[Thing], Future[list[Given]] | None]] = deque()
    for batch in _batches(things, max(1, min(_AT_A_TIME, len(things) // jobs))):
        waiting.append((batch, None if None in batch else _hand_over(batch, pool)))
        if len(waiting) > _AHEAD * jobs:
            yield from _results(*waiting.popleft(), work, lost)
    while waiting:
        yield from _results(*waiting.popleft(), work, lost)


def _hand_over(batch: Sequence[Any], pool: ProcessPoolExecutor) -> Future[list[Any]]:
    try:
        return pool.submit(_do_batch, batch)
    except BrokenProcessPool as error:
        # One process ended, and so none takes anything more: that is told in its turn.
        refused: Future[list[Any]] = Future()
        refused.set_exception(error)
        return refused


def _batches(things: Sequence[Thing], size: int) -> Iterator[Sequence[Thing]]:
    for start in range(0, len(things), size):
        yield things[start : start + size]


def _results(
    batch: Sequence[Thing],
    future: Future[list[Given]] | None,
    work: Callable[[Thing], Given],
    lost: Callable[[Thing], Given],
) -> list[Given]:
    if future is None:
        return [work(thing) for thing in batch]
    try:
        return future.result()
    except BrokenProcessPool:
        return [lost(thing) for thing in batch]


_work: Callable[[Any], Any]


def _start(work: Callable[[Any], Any]) -> None:
    """Set up a process, once; whoever is at the keyboard interrupts the first one alone."""
    global _work
    _work = work
    signal.signal(signal.SIGINT, signal.SIG_IGN)


def _do_batch(batch: Sequence[Any]) -> list[Any]:
    return [_work(thing) for thing in batch]
