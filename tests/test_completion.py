"""A shell that has read the script completes what is typed, and no file of its user is touched."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from checker import load_rulebook
from checker.command import shells
from checker.judging.places import place_files

ROOT = Path(__file__).parents[1]

# What is typed, with the cursor at its end, and what is offered.
TYPED = [
    ("belowgrade lett", ["letter"]),
    ("belowgrade why drain.ab", ["drain.above-slab", "drain.absent"]),
    ("belowgrade why drain.absent --pl", ["--place"]),
    ("belowgrade why drain.absent --place henr", ["henrico-va"]),
    ("belowgrade review specs/good.yaml --by f", ["final_grade", "footing_poured", "forms"]),
    ("belowgrade review --hold-at m", ["major", "minor"]),
    ("belowgrade section --by rain", []),
]


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """A user's folder, and beside it a folder of programs with `belowgrade` in it."""
    if os.name == "nt":
        pytest.skip("these shells are asked as Unix has them")
    program = tmp_path / "bin" / "belowgrade"
    program.parent.mkdir()
    program.write_text(f"#!{sys.executable}\nfrom checker.__main__ import main\nmain()\n")
    program.chmod(0o755)
    home = tmp_path / "home"
    home.mkdir()
    return home


def said(home: Path, *command: str, **environment: str) -> list[str]:
    path = f"{home.parent / 'bin'}{os.pathsep}{os.environ['PATH']}"
    done = subprocess.run(
        command,
        cwd=ROOT,
        env={**os.environ, "PATH": path, "HOME": str(home), "PYTHONPATH": str(ROOT), **environment},
        capture_output=True,
        text=True,
        stdin=subprocess.DEVNULL,
        timeout=60,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout.splitlines()


IN_BASH = """
source <(belowgrade completion bash)
complete -p belowgrade >/dev/null || exit 1
COMP_WORDS=("$@")
COMP_CWORD=$(($# - 1))
_belowgrade_completion belowgrade
[ ${#COMPREPLY[@]} -eq 0 ] || printf '%s\\n' "${COMPREPLY[@]}"
"""


@pytest.mark.skipif(not shutil.which("bash"), reason="no bash here")
@pytest.mark.parametrize(("typed", "offered"), TYPED)
def test_bash_completes(home: Path, typed: str, offered: list[str]) -> None:
    assert sorted(said(home, "bash", "-c", IN_BASH, "bash", *typed.split())) == offered
    assert list(home.iterdir()) == []


@pytest.mark.skipif(not shutil.which("fish"), reason="no fish here")
def test_fish_completes(home: Path) -> None:
    script = 'belowgrade completion fish | source; complete -C "belowgrade why drain.ab"'
    assert said(home, "fish", "--no-config", "-c", script) == ["drain.above-slab", "drain.absent"]


def test_zsh_is_told_what_to_offer(home: Path) -> None:
    script = said(home, "belowgrade", "completion", "zsh")
    assert "compdef _belowgrade_completion belowgrade" in script
    asked = {
        "_BELOWGRADE_COMPLETE": "complete_zsh",
        "_TYPER_COMPLETE_ARGS": "belowgrade why drain.ab",
    }
    told = " ".join(said(home, "belowgrade", **asked))
    assert told == """_arguments '*: :(("drain.above-slab" "drain.absent"))'"""


def test_every_rule_and_every_place_can_be_completed() -> None:
    assert shells.rules("") == [rule.id for rule in load_rulebook().rules]
    assert shells.places("") == sorted(place_files())
