"""The command run as somebody else would run it, with a bound on its time and its memory."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple

import pytest

resource = pytest.importorskip("resource", reason="limits of memory are asked for as Unix has them")

ROOT = Path(__file__).parents[2]
MEMORY = 1_500_000_000
SECONDS = 60


class Ended(NamedTuple):
    """How the command ended and what it said."""

    status: int
    out: str
    err: str

    @property
    def assemblies(self) -> list[str]:
        """Names of the assemblies that were reviewed, from the JSON that was printed."""
        return [json.loads(line)["assembly"] for line in self.out.splitlines()]


def _limit(size: int | None) -> None:
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    if size is not None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))


def belowgrade(
    *arguments: str | Path,
    folder: Path,
    file_size: int | None = None,
    environment: dict[str, str] | None = None,
    **more: Any,
) -> Ended:
    """Run the command in a folder; every run ends in time, says no traceback, and by a known status."""
    streams = {"stdin": subprocess.DEVNULL, "stdout": subprocess.PIPE, "stderr": subprocess.PIPE}
    done: Any = subprocess.run(
        [sys.executable, "-m", "checker", *map(str, arguments)],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT), **(environment or {})},
        timeout=SECONDS,
        preexec_fn=lambda: _limit(file_size),
        check=False,
        **streams | more,
    )
    out, err = ((text or b"").decode("utf-8") for text in (done.stdout, done.stderr))
    assert "Traceback" not in err, err
    assert done.returncode in (0, 1, 2, 130), (done.returncode, err)
    return Ended(done.returncode, out, err)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with one sound spec, `good.yaml`, that must be reviewed whatever lies beside it."""
    shutil.copy(ROOT / "specs" / "good.yaml", tmp_path / "good.yaml")
    return tmp_path


@pytest.fixture
def beside(folder: Path) -> Callable[..., Ended]:
    """Review a folder as lines of JSON and see that the sound spec came through."""

    def run(*options: str) -> Ended:
        ended = belowgrade("review", ".", "--as", "jsonl", *options, folder=folder)
        assert "Quillwater Lane, lot 14" in ended.assemblies, ended.err
        return ended

    return run
