"""How far a long run has come, on a terminal alone: nothing of it stands in a pipe or a file."""

from __future__ import annotations

import os
import time
from collections.abc import Callable
from typing import TextIO

# Whoever waits less than this, in seconds, need not be told why.
PATIENCE = 1.0
_BETWEEN = 0.1


class Progress:
    """Counts the files that are done, on one line of a terminal that is written over again."""

    def __init__(
        self, stream: TextIO | None, total: int, clock: Callable[[], float] = time.monotonic
    ) -> None:
        on_terminal = stream is not None and stream.isatty() and os.environ.get("TERM") != "dumb"
        self._stream = stream if on_terminal else None
        self._total = total
        self._done = 0
        self._clock = clock
        self._next = clock() + PATIENCE
        self._shown = False

    def step(self) -> None:
        """Count one more file, and say so now and then."""
        self._done += 1
        if self._stream is None or self._clock() < self._next:
            return
        self._next = self._clock() + _BETWEEN
        self._shown = True
        self._stream.write(f"\r{self._done} of {self._total} files")
        self._stream.flush()

    def clear(self) -> None:
        """Take the line away, before anything else is written."""
        if self._stream is not None and self._shown:
            self._shown = False
            self._stream.write("\r\x1b[K")
            self._stream.flush()
