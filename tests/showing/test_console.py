"""The same lines to a pipe, a file and a terminal."""

from __future__ import annotations

import io
import os
import subprocess
import sys
from pathlib import Path

import pytest

from checker.showing.console import STYLES, as_text, plain, width_of, write, write_file
from checker.showing.lines import BLANK, Line, Span

ROOT = Path(__file__).parents[2]
EVIL = "\x1b[2J\x1b]0;owned\x07lot\u202e 14\n"
LINES: list[Line] = [
    (Span("Review of "), Span(EVIL, "heading")),
    BLANK,
    (Span("DANGER", "DANGER"), Span("   cave-in")),
]


class Terminal(io.StringIO):
    """A stream that says it is a terminal."""

    def isatty(self) -> bool:
        return True


@pytest.fixture(autouse=True)
def colour_terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm-256color")


def test_lines_as_text() -> None:
    assert as_text(LINES) == "Review of lot 14\n\nDANGER   cave-in\n"
    assert as_text([]) == ""


def test_no_space_stands_at_the_end_of_a_line() -> None:
    assert as_text([(Span("text   "), Span("   "))]) == "text\n"


def test_message_is_one_line_of_text() -> None:
    assert plain("bad.yaml:3\n\x1b[31mred") == "bad.yaml:3 red"


def test_pipe_gets_plain_text() -> None:
    pipe = io.StringIO()
    write(LINES, pipe)
    assert pipe.getvalue() == as_text(LINES)


def test_terminal_gets_colour_and_nothing_of_the_specs_own_escapes() -> None:
    terminal = Terminal()
    write(LINES, terminal)
    shown = terminal.getvalue()
    assert "\x1b[" in shown
    assert "\x1b[2J" not in shown
    assert "owned" not in shown
    assert "\u202e" not in shown


def test_terminal_text_is_the_plain_text_once_colour_is_taken_off() -> None:
    terminal = Terminal()
    # Square brackets and :names: mean something to the library that colours; here they are text.
    lines: list[Line] = [
        *LINES,
        (Span("[bold]x[/] :warning: 3/8 in", "title"),),
        (Span("w " * 90),),
    ]
    write(lines, terminal)
    shown = [plain(one).rstrip() for one in terminal.getvalue().split("\n")]
    assert shown == as_text(lines).split("\n")


@pytest.mark.parametrize(("name", "value"), [("NO_COLOR", "1"), ("TERM", "dumb")])
def test_terminal_that_asks_for_none_gets_no_colour(
    monkeypatch: pytest.MonkeyPatch, name: str, value: str
) -> None:
    monkeypatch.setenv(name, value)
    terminal = Terminal()
    write(LINES, terminal)
    assert terminal.getvalue() == as_text(LINES)


def test_signal_words_have_the_colours_of_ansi_z535() -> None:
    # ANSI Z535.4: danger red, warning orange, caution yellow, notice blue.
    grounds = {word: STYLES[word].split(" on ")[1] for word in STYLES if word.isupper()}
    assert grounds == {
        "DANGER": "red", "WARNING": "dark_orange", "CAUTION": "yellow", "NOTICE": "blue",
    }  # fmt: skip


def test_stream_that_cannot_write_a_character_still_gets_the_line() -> None:
    raw = io.BytesIO()
    stream = io.TextIOWrapper(raw, encoding="ascii")
    write([(Span("1/2 in is \u00bd in"),)], stream)
    stream.flush()
    assert raw.getvalue() == b"1/2 in is ? in\n"


def test_pipe_is_80_wide_and_a_terminal_at_most_100(monkeypatch: pytest.MonkeyPatch) -> None:
    assert width_of(io.StringIO()) == 80
    monkeypatch.setenv("COLUMNS", "200")
    assert width_of(Terminal()) == 100
    monkeypatch.setenv("COLUMNS", "64")
    assert width_of(Terminal()) == 64


def test_file_is_written_whole_over_an_older_one(tmp_path: Path) -> None:
    target = tmp_path / "review.txt"
    target.write_text("older and longer " * 100, encoding="utf-8")
    write_file(target, LINES)
    assert target.read_text(encoding="utf-8") == as_text(LINES)
    write_file(target, "[]\n")
    assert target.read_bytes() == b"[]\n"
    assert [path.name for path in tmp_path.iterdir()] == ["review.txt"]


def test_file_that_cannot_be_written_leaves_the_older_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "review.txt"
    target.write_text("older", encoding="utf-8")

    def refuse(*_: object) -> None:
        raise OSError("disk full")

    monkeypatch.setattr(Path, "replace", refuse)
    with pytest.raises(OSError, match="disk full"):
        write_file(target, "newer")
    assert target.read_text(encoding="utf-8") == "older"
    assert [path.name for path in tmp_path.iterdir()] == ["review.txt"]


@pytest.mark.skipif(os.name == "nt", reason="making a link needs a right of its own there")
def test_link_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to(tmp_path / "target")
    write_file(tmp_path / "link", "text")
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "target").read_text(encoding="utf-8") == "text"


def test_folder_is_refused(tmp_path: Path) -> None:
    with pytest.raises(OSError):  # noqa: PT011  (its kind differs from system to system)
        write_file(tmp_path, "text")


def test_plain_path_loads_no_library_for_colour_templates_or_schemas() -> None:
    program = (
        "import sys, io\n"
        "from checker.judging.review_data import Review\n"
        "from checker.showing.text import render\n"
        "from checker.showing.console import write\n"
        "from checker.showing.json_report import as_json\n"
        "empty = Review('f', 'a', '', 'desk', True, '', 'b', 'd', (), (), (), ())\n"
        "write(render([empty]), sys.stdout)\n"
        "as_json([empty])\n"
        "print(sorted({'rich', 'typer', 'jinja2', 'jsonschema', 'yaml'} & set(sys.modules)))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program],
        cwd=ROOT, capture_output=True, text=True, check=True, timeout=60,
    )  # fmt: skip
    shown = done.stdout.splitlines()
    assert shown[-2:] == ["Nothing could be judged. This is not a release.", "[]"]
