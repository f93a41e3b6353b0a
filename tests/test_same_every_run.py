"""The same files give the same bytes on every machine, at any time, in any folder."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
COMMANDS = [
    *(["review", "specs", "--as", form] for form in ("text", "json", "jsonl", "sarif", "junit", "html")),
    ["review", "specs", "--as", "jsonl", "--jobs", "2"],
    ["section", "specs/good.yaml"],
    ["takeoff", "specs/good.yaml"],
    ["letter", "specs/bad.yaml"],
    ["calc", "specs/good.yaml"],
    *(["effect", "specs/good.yaml", "specs/bad.yaml", "--as", form] for form in ("text", "json", "html")),
    ["rules"],
]  # fmt: skip
ELSEWHERE = {
    "PYTHONHASHSEED": "4242",
    "TZ": "Pacific/Kiritimati",
    "LC_ALL": "tr_TR.UTF-8",
    "LANG": "tr_TR.UTF-8",
    "COLUMNS": "40",
    "HOME": "/nowhere",
    "XDG_CACHE_HOME": "",
    "USER": "somebody",
}


def printed(folder: Path, command: list[str], **environment: str) -> bytes:
    kept = {name: value for name, value in os.environ.items() if name not in ELSEWHERE}
    done = subprocess.run(
        [sys.executable, "-m", "checker", *command],
        cwd=folder,
        env={**kept, "PYTHONPATH": str(ROOT), **environment},
        capture_output=True,
        stdin=subprocess.DEVNULL,
        timeout=120,
        check=False,
    )
    assert done.returncode in (0, 1), done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def elsewhere(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Another folder with the same specs, written at another time and listed in another order."""
    folder = tmp_path_factory.mktemp("elsewhere") / "specs"
    folder.mkdir()
    for file in sorted((ROOT / "specs").rglob("*.yaml"), reverse=True):
        copied = folder / file.relative_to(ROOT / "specs")
        copied.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(file, copied)
        os.utime(copied, (1, 1))
    return folder.parent


@pytest.mark.parametrize("command", COMMANDS, ids=" ".join)
def test_same_bytes(command: list[str], elsewhere: Path) -> None:
    here = printed(ROOT, command, PYTHONHASHSEED="1", TZ="UTC", LC_ALL="C.UTF-8", LANG="C.UTF-8")
    there = printed(elsewhere, command, **ELSEWHERE)
    assert here
    assert here == there


def test_the_two_runs_do_differ_where_python_lets_them() -> None:
    """Else the test above would prove nothing."""
    script = ["-c", "import time; print(hash('a'), time.tzname, time.strftime('%Z'))"]
    runs = {
        subprocess.run(
            [sys.executable, *script],
            env={**os.environ, **environment},
            capture_output=True,
            check=True,
        ).stdout
        for environment in ({**ELSEWHERE}, {"PYTHONHASHSEED": "1", "TZ": "UTC"})
    }
    assert len(runs) == 2
