"""The outputs that README.md shows: put in anew from what the program prints today."""

from __future__ import annotations

import re
import subprocess
import sys

from checker.data import PACKAGE

# Between the two comments stands what `belowgrade COMMAND` prints, whole or its first lines.
_SHOWN = re.compile(
    r"(?ms)^(<!-- output of: belowgrade "
    r"(?P<command>[^,\n]+?)(?:, first (?P<first>\d+) lines)? -->\n```text\n)"
    r".*?(^```\n<!-- end of output -->$)"
)


def readme_page() -> str:
    """Return the text of README.md with every output in it as it is now."""
    text = (PACKAGE.parent / "README.md").read_text(encoding="utf-8")
    return _SHOWN.sub(_as_it_is_now, text)


def _as_it_is_now(found: re.Match[str]) -> str:
    printed = _printed(found["command"].split())
    if found["first"]:
        lines = printed.splitlines(keepends=True)
        printed = "".join([*lines[: int(found["first"])], "...\n", lines[-1]])
    return found[1] + printed + found[4]


def _printed(arguments: list[str]) -> str:
    return subprocess.run(
        [sys.executable, "-m", "checker", *arguments],
        cwd=PACKAGE.parent,
        capture_output=True,
        encoding="utf-8",
        check=False,
    ).stdout
