"""Full disks, closed pipes and an impatient user: a plain word, a known status, nothing by halves."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tests.attack.conftest import ROOT, belowgrade

FORMS = ("text", "json", "jsonl", "sarif", "junit", "html")
FULL = Path("/dev/full")

needs_full = pytest.mark.skipif(not FULL.exists(), reason="this system has no /dev/full")


@pytest.fixture
def many(folder: Path) -> Path:
    for number in range(300):
        shutil.copy(folder / "good.yaml", folder / f"lot{number:03}.yaml")
    # Read first, so that its complaint says that the work has begun.
    (folder / "a.yaml").write_text("vocabulary: 1\nwal: {}\n", encoding="utf-8")
    return folder


def left(folder: Path) -> set[str]:
    return {one.name for one in folder.iterdir()}


# -- no room ---------------------------------------------------------------------------------------


@needs_full
@pytest.mark.parametrize("form", FORMS)
def test_no_room_where_it_is_printed(folder: Path, form: str) -> None:
    with FULL.open("wb") as full:
        ended = belowgrade("review", "good.yaml", "--as", form, folder=folder, stdout=full)
    assert ended.status == 2
    assert "No space left on device" in ended.err


@needs_full
@pytest.mark.parametrize("command", [["rules"], ["why", "drain.above-slab"], ["calc", "good.yaml"]])
def test_no_room_for_other_commands(folder: Path, command: list[str]) -> None:
    with FULL.open("wb") as full:
        ended = belowgrade(*command, folder=folder, stdout=full)
    assert ended.status == 2
    assert "No space left on device" in ended.err


@needs_full
def test_no_room_in_a_device(folder: Path) -> None:
    ended = belowgrade("review", "good.yaml", "--to", FULL, folder=folder)
    assert ended.status == 2
    assert "/dev/full: cannot be written: No space left on device" in ended.err


@pytest.mark.parametrize("form", FORMS)
def test_no_room_for_a_file_leaves_the_old_one(folder: Path, form: str) -> None:
    out = folder / "out"
    out.write_text("as it was", encoding="utf-8")
    before = left(folder)
    ended = belowgrade(
        "review", "good.yaml", "--as", form, "--to", "out", folder=folder, file_size=2_000
    )
    assert ended.status == 2
    assert "out: cannot be written" in ended.err
    assert out.read_text(encoding="utf-8") == "as it was"
    assert left(folder) == before


@pytest.mark.parametrize("form", ["text", "sarif"])
def test_no_room_for_all_of_many_leaves_the_old_one(many: Path, form: str) -> None:
    out = many / "out"
    out.write_text("as it was", encoding="utf-8")
    before = left(many)
    ended = belowgrade(
        "review", ".", "--as", form, "--to", "out", "--jobs", "2", folder=many, file_size=200_000
    )
    assert ended.status == 2
    complaints = ended.err.splitlines()
    assert complaints[0].startswith("a.yaml:2:1: there is no 'wal'")
    assert complaints[1:] == ["out: cannot be written: File too large"]
    assert out.read_text(encoding="utf-8") == "as it was"
    assert left(many) == before


@pytest.mark.parametrize("to", [".", "gone/out", "good.yaml/out", "a" * 300])
def test_where_nothing_can_be_written(folder: Path, to: str) -> None:
    before = left(folder)
    ended = belowgrade("review", "good.yaml", "--to", to, folder=folder)
    assert ended.status == 2
    assert "cannot be written" in ended.err
    assert left(folder) == before


def test_a_link_laid_where_a_part_would_be_written_is_not_followed(folder: Path) -> None:
    from checker.showing.console import write_file

    victim = folder / "victim"
    victim.write_text("as it was", encoding="utf-8")
    (folder / f".out.{os.getpid()}.part").symlink_to(victim)
    with pytest.raises(FileExistsError):
        write_file(folder / "out", "new")
    assert victim.read_text(encoding="utf-8") == "as it was"


# -- streams that are closed -----------------------------------------------------------------------


@pytest.mark.parametrize("closed", [0, 1, 2])
@pytest.mark.parametrize("arguments", [["good.yaml"], ["-"], ["gone.yaml"]], ids=" ".join)
def test_a_stream_that_is_closed(folder: Path, closed: int, arguments: list[str]) -> None:
    script = f'exec {closed}>&-; exec "$@"'
    done = subprocess.run(
        ["sh", "-c", script, "sh", sys.executable, "-m", "checker", "review", *arguments],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        timeout=60,
        check=False,
    )
    assert b"Traceback" not in done.stderr
    assert done.returncode in (0, 1, 2)
    if arguments != ["good.yaml"]:
        assert done.returncode == 2


@pytest.mark.parametrize(("form", "jobs"), [("jsonl", "1"), ("text", "1"), ("sarif", "2")])
def test_a_reader_that_goes_away(many: Path, form: str, jobs: str) -> None:
    (many / "a.yaml").unlink()
    process = subprocess.Popen(
        [sys.executable, "-m", "checker", "review", ".", "--as", form, "--jobs", jobs],
        cwd=many,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    assert process.stdout is not None
    assert process.stderr is not None
    with process:
        process.stdout.read(100)
        process.stdout.close()
        assert process.stderr.read() == b""
        assert process.wait(60) == 1


# -- an impatient user -----------------------------------------------------------------------------


@pytest.mark.parametrize(("form", "jobs"), [("jsonl", "1"), ("jsonl", "2"), ("text", "2")])
def test_interrupted_from_the_keyboard(many: Path, form: str, jobs: str) -> None:
    (many / "out").write_text("as it was", encoding="utf-8")
    before = left(many)
    process = subprocess.Popen(
        [
            sys.executable,
            "-m",
            "checker",
            "review",
            ".",
            "--as",
            form,
            "--to",
            "out",
            "--jobs",
            jobs,
        ],
        cwd=many,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        stderr=subprocess.PIPE,
        text=True,
        process_group=0,
    )
    with process:
        assert process.stderr is not None
        assert "there is no 'wal'" in process.stderr.readline()
        # As a terminal does: to every process of the group.
        os.killpg(process.pid, signal.SIGINT)
        started = time.monotonic()
        rest = process.stderr.read()
        assert process.wait(60) == 130
    assert rest == "interrupted\n"
    assert time.monotonic() - started < 20
    assert left(many) == before
    assert (many / "out").read_text(encoding="utf-8") == "as it was"
    with pytest.raises(ProcessLookupError):
        os.killpg(process.pid, 0)


# Says when Python itself is up and the program begins to load its first part.
_STARTED = """
import os, sys
from checker.__main__ import main
def at(event, about):
    if event == 'import' and about[0] == 'checker.command':
        os.write(1, b'up\\n')
sys.addaudithook(at)
main()
"""
_INTERRUPTED_AT = """
import os, signal, sys
from checker.__main__ import main
module = sys.argv.pop(1)
def at(event, about):
    if event == "import" and about[0] == module:
        os.kill(os.getpid(), signal.SIGINT)
sys.addaudithook(at)
main()
"""


@pytest.mark.parametrize("later", [0, 20, 50, 100, 150, 300, 600])
def test_interrupted_early(folder: Path, later: int) -> None:
    process = subprocess.Popen(
        [sys.executable, "-c", _STARTED, "review", "good.yaml"],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    with process:
        assert process.stdout is not None
        assert process.stderr is not None
        assert process.stdout.readline() == "up\n"
        time.sleep(later / 1000)
        process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=60)
    assert (process.returncode, err) in [(130, "interrupted\n"), (0, "")]
    assert process.returncode == 130 or out.endswith("This is not a release.\n")


@pytest.mark.parametrize(
    "module",
    ["checker.command", "typer", "checker.judging.rulebook", "yaml", "checker.showing.text"],
)
def test_interrupted_while_it_is_loaded(folder: Path, module: str) -> None:
    ended = subprocess.run(
        [sys.executable, "-c", _INTERRUPTED_AT, module, "review", "good.yaml"],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert (ended.returncode, ended.stdout, ended.stderr) == (130, "", "interrupted\n")


def test_not_interrupted_where_it_was_started_so(folder: Path) -> None:
    script = 'trap "" INT; exec "$@"'
    process = subprocess.Popen(
        ["sh", "-c", script, "sh", sys.executable, "-c", _STARTED, "review", "good.yaml"],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        text=True,
    )
    with process:
        assert process.stdout is not None
        assert process.stdout.readline() == "up\n"
        process.send_signal(signal.SIGINT)
        assert process.stdout.read().endswith("This is not a release.\n")
    assert process.returncode == 0
