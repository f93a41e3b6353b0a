"""What a shell may complete: ids of rules and places, stages; and the command that tells it how.

They are found without reading a rule book, which takes longer than anybody waits for a key.

typer asks for the words and answers the shell. Its own options for it are switched off, because
they write into the user's start-up files; what is imported of it here is what they call.
"""

from __future__ import annotations

import os
import re
from enum import StrEnum
from typing import Annotated

import typer

from checker.command.printing import put

# In it the shell says that it asks for words.
_ASKED = "_BELOWGRADE_COMPLETE"


class Shell(StrEnum):
    """Which shell is to complete what is typed."""

    bash = "bash"
    zsh = "zsh"
    fish = "fish"


def completion(
    shell: Annotated[Shell, typer.Argument(help="The shell that is to read it.")],
) -> None:
    """Print a script with which a shell completes commands, options, rules, stages and places.

    It changes no file. For the shell at hand: eval "$(belowgrade completion bash)", or with zsh;
    belowgrade completion fish | source.
    """
    from typer._completion_shared import get_completion_script

    text = get_completion_script(prog_name="belowgrade", complete_var=_ASKED, shell=shell.value)
    put(f"{text}\n", None)


def get_ready() -> None:
    """Let typer know the shells, if one of them asks."""
    if _ASKED in os.environ:
        from typer._completion_classes import completion_init

        completion_init()


def rules(incomplete: str) -> list[str]:
    """Return the ids of the built-in rules that begin so."""
    from checker.data import data_dir

    texts = (file.read_text(encoding="utf-8") for file in data_dir("rules").glob("*.yaml"))
    ids = [found for text in texts for found in re.findall(r"(?m)^- id: (\S+)$", text)]
    return _beginning(incomplete, sorted(ids))


def places(incomplete: str) -> list[str]:
    """Return the ids of the places that begin so."""
    from checker.data import data_dir

    files = (data_dir("rules") / "local").glob("*.yaml")
    return _beginning(incomplete, sorted(file.stem for file in files))


def stages(incomplete: str) -> list[str]:
    """Return the stages of the work that begin so, in their order."""
    from checker.judging.review_data import STAGES

    return _beginning(incomplete, STAGES)


def _beginning(incomplete: str, words: list[str] | tuple[str, ...]) -> list[str]:
    return [word for word in words if word.startswith(incomplete)]
