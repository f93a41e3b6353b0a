"""Styled lines to wherever they go: plain text for a pipe or a file, colour on a terminal."""

from __future__ import annotations

import os
import shutil
import stat
from collections.abc import Iterable
from pathlib import Path
from typing import TextIO

from checker.showing.lines import PIPE_WIDTH, WIDEST, Line, clean

__all__ = [
    "PIPE_WIDTH",
    "STYLES",
    "as_text",
    "in_colour",
    "in_sight",
    "plain",
    "width_of",
    "write",
    "write_bytes",
    "write_file",
    "write_pieces",
]

# Words on safety notes have the colours that ANSI Z535 gives them. Everything else is weight
# alone: a severity is a word, not a colour.
STYLES = {
    "heading": "bold",
    "title": "bold",
    "label": "dim",
    "strong": "bold",
    "faint": "dim",
    "stop": "bold reverse",
    "closing": "bold",
    "DANGER": "bold white on red",
    "WARNING": "bold black on dark_orange",
    "CAUTION": "bold black on yellow",
    "NOTICE": "bold white on blue",
}


def plain(text: str) -> str:
    """Return one line of text without anything that a terminal would obey."""
    return clean(text)


def as_text(lines: Iterable[Line]) -> str:
    """Return lines as plain text that ends in a line break; no lines give an empty text."""
    texts = ["".join(clean(span.text) for span in line).rstrip() for line in lines]
    return "\n".join(texts) + "\n" if texts else ""


def write(content: str | Iterable[Line], stream: TextIO) -> None:
    """Write lines, or what `as_text` made of them, to a stream.

    Colour is used on a terminal alone, and not where NO_COLOR or TERM=dumb asks for none.
    Characters that the stream cannot write become question marks. Raises OSError when the stream
    cannot be written.
    """
    if not isinstance(content, str):
        if in_colour(stream):
            _write_in_colour(content, stream)
            return
        content = as_text(content)
    encoding = getattr(stream, "encoding", None) or "utf-8"
    stream.write(content.encode(encoding, "replace").decode(encoding))


def write_file(path: Path, content: str | Iterable[Line]) -> None:
    """Write a file whole or not at all, in UTF-8: lines as plain text, a text as it is.

    Raises OSError when it cannot be written; what stood there before then still stands.
    """
    write_pieces(path, [content])


def write_pieces(path: Path, pieces: Iterable[str | Iterable[Line]]) -> None:
    """Write a file whole or not at all, piece after piece as they come; otherwise as `write_file`.

    What goes wrong while the pieces are made leaves what stood there before, too.
    """
    texts = (piece if isinstance(piece, str) else as_text(piece) for piece in pieces)
    if path.exists() and not path.is_file():
        # A pipe or a device cannot be replaced, only written to; a folder refuses by itself.
        with path.open("w", encoding="utf-8", newline="\n") as stream:
            stream.writelines(texts)
        return
    # A link stays a link: what it leads to is replaced.
    target = path.resolve()
    part = target.with_name(f".{target.name}.{os.getpid()}.part")
    # Never through something that another laid there under that name.
    opened = part.open("x", encoding="utf-8", newline="\n")
    try:
        with opened as stream:
            stream.writelines(texts)
        part.replace(target)
    finally:
        part.unlink(missing_ok=True)


def write_bytes(path: Path, content: bytes) -> None:
    """Write a file that is no text, whole or not at all. Raises OSError as `write_file` does."""
    if path.exists() and not path.is_file():
        path.write_bytes(content)
        return
    target = path.resolve()
    part = target.with_name(f".{target.name}.{os.getpid()}.part")
    opened = part.open("xb")
    try:
        with opened as stream:
            stream.write(content)
        part.replace(target)
    finally:
        part.unlink(missing_ok=True)


def in_colour(stream: TextIO) -> bool:
    """Say whether a stream is a terminal whose user has not asked for plain text."""
    if os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb":
        return False
    return stream.isatty()


def in_sight(stream: TextIO) -> bool:
    """Say whether what is written may be read as it comes: it goes to no file, where it waits."""
    try:
        return not stat.S_ISREG(os.fstat(stream.fileno()).st_mode)
    except OSError:
        # A stream of some other kind.
        return True


def width_of(stream: TextIO) -> int:
    """Return the columns to write to a stream: 80 in a pipe, on a terminal its own up to 100."""
    if not stream.isatty():
        return PIPE_WIDTH
    return min(shutil.get_terminal_size((PIPE_WIDTH, 24)).columns, WIDEST)


def _write_in_colour(lines: Iterable[Line], stream: TextIO) -> None:
    from rich.console import Console
    from rich.text import Text

    # Only texts with their styles are printed: nothing in them is read as markup.
    console = Console(file=stream)
    for line in lines:
        text = Text()
        for span in line:
            text.append(clean(span.text), STYLES.get(span.style, ""))
        # The lines are wrapped already; a window that has shrunk since may break them as it likes.
        console.print(text, soft_wrap=True)
