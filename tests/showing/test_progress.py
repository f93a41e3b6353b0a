"""How far a run has come is said on a terminal, after a while, and nowhere else."""

from __future__ import annotations

import io

import pytest

from checker.showing.progress import PATIENCE, Progress


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


class Clock:
    def __init__(self) -> None:
        self.now = 0.0

    def __call__(self) -> float:
        return self.now


@pytest.fixture(autouse=True)
def _terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm")


def written(stream: io.StringIO, seconds: float, steps: int = 3) -> str:
    clock = Clock()
    progress = Progress(stream, 9, clock)
    clock.now = seconds
    for _ in range(steps):
        progress.step()
    progress.clear()
    return stream.getvalue()


def test_a_long_run_says_how_far_it_is_and_takes_it_back() -> None:
    assert written(Terminal(), PATIENCE) == "\r1 of 9 files\r\x1b[K"


def test_a_short_run_says_nothing() -> None:
    assert written(Terminal(), PATIENCE / 2) == ""


def test_a_pipe_stays_empty() -> None:
    assert written(io.StringIO(), 60) == ""


def test_a_terminal_that_cannot_write_over_stays_empty(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "dumb")
    assert written(Terminal(), 60) == ""


def test_no_stream_at_all() -> None:
    progress = Progress(None, 9, Clock())
    progress.step()
    progress.clear()
