"""Where output and complaints go."""

from __future__ import annotations

import contextlib
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import typer

if TYPE_CHECKING:
    from checker.showing.forms import Paper
    from checker.showing.lines import Line


def paper_of(to: Path | None) -> Paper:
    """Return what text is written on: a file, a pipe or a terminal."""
    from checker.showing.console import PIPE_WIDTH, in_colour, width_of
    from checker.showing.forms import Paper

    if to:
        return Paper(PIPE_WIDTH, coloured=False)
    return Paper(width_of(sys.stdout), coloured=in_colour(sys.stdout))


def put(content: str | list[Line], to: Path | None) -> None:
    """Write an output whole into a file, or print it."""
    put_pieces(iter((content,)), to, for_people=isinstance(content, list))


def put_pieces(pieces: Iterator[str | list[Line]], to: Path | None, *, for_people: bool) -> None:
    """Write an output piece by piece as it comes; a file stands there whole or not at all."""
    from checker.showing.console import write, write_pieces

    if to:
        try:
            write_pieces(to, pieces)
        except OSError as error:
            complain(f"{to}: cannot be written: {error.strerror or error}")
            raise typer.Exit(2) from None
        return
    for piece in pieces:
        if for_people:
            write(piece, sys.stdout)
        else:
            # The same bytes on every machine, whatever its locale.
            sys.stdout.buffer.write(str(piece).encode("utf-8"))
        sys.stdout.flush()


def complain(message: str) -> None:
    """Say what is wrong, on the stream for that."""
    from checker.showing.console import plain

    # Where not even this can be said, the exit status must do.
    with contextlib.suppress(OSError):
        sys.stderr.write(f"{plain(message)}\n")
