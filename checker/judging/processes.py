"""Files judged by several processes that share the work; answers come in the order of the files."""

from __future__ import annotations

import signal
import sys
from collections import deque
from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from multiprocessing import get_context
from multiprocessing.context import BaseContext
from pathlib import Path
from typing import Any

from checker.judging.many import Asked, Judged, Made, judge_file
from checker.reading.faults import Fault

# One system or another allows no more.
MOST_JOBS = 60

# Judging a file takes far longer than handing it over; a few at a time will do.
_AT_A_TIME = 4
# What is read ahead, for each process. No more is ever held, however many files there are.
_AHEAD = 3


def judge_in_processes(
    files: Sequence[Path | None], asked: Asked[Made], jobs: int
) -> Iterator[Judged[Made]]:
    """Yield what each file gives, in the order of the files."""
    pool = ProcessPoolExecutor(min(jobs, MOST_JOBS), _context(), _start, (asked,))
    try:
        yield from _by_pool(files, asked, pool, jobs)
    finally:
        pool.shutdown(cancel_futures=True)


def _context() -> BaseContext:
    """Say how processes come about: as copies, where that is safe, which have the rule book."""
    return get_context("fork" if sys.platform == "linux" else None)


# Batches in their order; standard input has no process to wait for, because only this one has it.
_Waiting = deque[tuple[Sequence[Path | None], "Future[list[Judged[Made]]] | None"]]


def _by_pool(
    files: Sequence[Path | None], asked: Asked[Made], pool: ProcessPoolExecutor, jobs: int
) -> Iterator[Judged[Made]]:
    waiting: _Waiting[Made] = deque()
    for batch in _batches(files, max(1, min(_AT_A_TIME, len(files) // jobs))):
        waiting.append((batch, None if None in batch else _hand_over(batch, pool)))
        if len(waiting) > _AHEAD * jobs:
            yield from _results(*waiting.popleft(), asked)
    while waiting:
        yield from _results(*waiting.popleft(), asked)


def _hand_over(
    batch: Sequence[Path | None], pool: ProcessPoolExecutor
) -> Future[list[Judged[Any]]]:
    try:
        return pool.submit(_judge_batch, batch)
    except BrokenProcessPool as error:
        # One process ended, and so none takes anything more: that is told in its turn.
        refused: Future[list[Judged[Any]]] = Future()
        refused.set_exception(error)
        return refused


def _batches(files: Sequence[Path | None], size: int) -> Iterator[Sequence[Path | None]]:
    for start in range(0, len(files), size):
        yield files[start : start + size]


def _results(
    batch: Sequence[Path | None], future: Future[list[Judged[Made]]] | None, asked: Asked[Made]
) -> list[Judged[Made]]:
    if future is None:
        return [judge_file(file, asked) for file in batch]
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
    return [judge_file(file, _asked) for file in batch]
