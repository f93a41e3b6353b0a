"""The same bytes from every Python that pyproject.toml names, as far as they are found here.

`python -m tests.pythons` builds the package once, installs it for each of the others with the
libraries that are installed here, and compares what they print with what this Python prints; each
runs a sample of the tests besides. Exit status:
0 no difference, or no other Python was found, which is said; 1 a difference, or a test that fails.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from tests.libraries import ROOT, installed, needed, stated

SCRIPTS = "Scripts" if os.name == "nt" else "bin"
COMMANDS = (
    *(f"review specs --as {form}" for form in ("text", "json", "sarif", "html")),
    "letter specs/bad.yaml",
)
SAMPLE = (
    "tests/reading/test_reader.py",
    "tests/judging/test_judge.py",
)
_VERSION = "import sys; print(sys.version.split()[0])"


class Differs(Exception):
    """Something fails in another Python, or comes out otherwise."""


def main() -> int:
    """Compare, and return the exit status."""
    here = sys.version.split()[0]
    others = found()
    print("named and not found here:", *(sorted(stated() - others.keys() - {minor(here)}) or ["-"]))
    if not others:
        print("no other Python was found: nothing is compared")
        return 0
    with tempfile.TemporaryDirectory() as room, ThreadPoolExecutor() as threads:
        folder = Path(room)
        run(sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", room, ROOT)
        wanted = threads.submit(printed, sys.executable, "-m", "checker")
        asked = {
            version: threads.submit(installed_and_tested, python, folder / version)
            for version, python in others.items()
        }
        differ = 0
        for version, answer in asked.items():
            try:
                told, says = wanted.result(), answer.result()
                other = [command for command in COMMANDS if told[command] != says[command]]
                if other:
                    raise Differs(f"prints something else than {here}: {'; '.join(other)}")
                print(
                    f"{version}: {len(COMMANDS)} outputs are those of {here}, sample of tests passed"
                )
            except Differs as error:
                differ += 1
                print(f"{version}: {error}")
    return int(differ > 0)


def found() -> dict[str, str]:
    """Return the other Pythons of those versions that run here, on the path or in pyenv's folder."""
    pyenv = Path(os.environ.get("PYENV_ROOT") or "~/.pyenv").expanduser() / "versions"
    runs: dict[str, str] = {}
    for version in sorted(stated() - {minor(sys.version)}):
        held = sorted(pyenv.glob(f"{version}.*/{SCRIPTS}/python"))
        for python in filter(None, [shutil.which(f"python{version}"), *map(str, held)]):
            # A name on the path may be a stand-in for a Python that is not there.
            done = subprocess.run(
                [python, "-c", _VERSION], capture_output=True, text=True, check=False
            )
            if done.returncode == 0 and minor(done.stdout) == version:
                runs[version] = python
    return runs


def minor(version: str) -> str:
    """Return 3.12 of 3.12.1."""
    return ".".join(version.split(".")[:2])


def installed_and_tested(python: str, home: Path) -> dict[str, bytes]:
    """Install the package for a Python, run the sample there, and return what it prints."""
    run(python, "-m", "venv", "--without-pip", home)
    (wheel,) = home.parent.glob("*.whl")
    inside = home / SCRIPTS
    pip = (sys.executable, "-m", "pip", "--python", inside / "python", "install")
    same = [f"{name}=={version}" for name, version in installed(needed()).items()]
    run(*pip, "--quiet", "--no-compile", wheel, *same, "pytest")
    alone = ("--noconftest", "-p", "no:cacheprovider")
    run(inside / "python", "-m", "pytest", *alone, *SAMPLE)
    return printed(inside / "belowgrade")


def printed(*program: str | Path) -> dict[str, bytes]:
    """Return what each command prints; some find faults, which is their answer."""
    return {command: run(*program, *command.split(), good=(0, 1)) for command in COMMANDS}


def run(*command: str | Path, good: tuple[int, ...] = (0,)) -> bytes:
    """Run a command at the top of the checkout and return what it prints. Raises Differs."""
    done = subprocess.run(
        [str(part) for part in command],
        cwd=ROOT,
        env={name: value for name, value in os.environ.items() if name != "PYTHONPATH"},
        capture_output=True,
        stdin=subprocess.DEVNULL,
        timeout=300,
        check=False,
    )
    if done.returncode not in good:
        said = (done.stdout + done.stderr).decode("utf-8", "replace")
        raise Differs(f"{' '.join(map(str, command))} ended with {done.returncode}\n{said}")
    return done.stdout


if __name__ == "__main__":
    sys.exit(main())
