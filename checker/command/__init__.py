"""The command line: thin, and the only place that prints or ends the process."""

from __future__ import annotations

import contextlib
import os
import sys

import typer

from checker.command.papers import calc, fieldsheet, letter, owner, section, takeoff
from checker.command.printing import complain
from checker.command.reviewing import review
from checker.command.rule_book import rules, why
from checker.command.shells import completion, get_ready
from checker.command.two_sides import compare, effect

__all__ = ["app", "main"]

app = typer.Typer(
    name="belowgrade",
    help="Judge below-grade assemblies against written rules, before they are buried.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
)

# As the help lists them.
for command in (
    review, rules, why, calc, takeoff, section, letter, fieldsheet, owner, compare, effect,
    completion,
):  # fmt: skip
    app.command()(command)


def main() -> None:
    """Run the command; exit status 0, 1, 2, or 130 when interrupted."""
    _open_streams()
    try:
        status = _run()
        sys.stdout.flush()
    except KeyboardInterrupt:
        status = 130
    except BrokenPipeError:
        # The reader of the pipe went away; nothing more can be said to it.
        status = 1
    except OSError as error:
        complain(f"cannot go on: {error.strerror or error}")
        status = 2
    if status == 130:
        complain("interrupted")
    # What could not be written now cannot be written on the way out either.
    with contextlib.suppress(OSError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    sys.exit(status)


def _run() -> int:
    get_ready()
    try:
        app()
    except SystemExit as ended:
        return ended.code if isinstance(ended.code, int) else 0
    return 0


def _open_streams() -> None:
    """Put something in place of a stream that whoever started this has closed."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            setattr(sys, name, open(os.devnull, mode, encoding="utf-8"))  # noqa: SIM115
