"""What is measured on whole processes: time beside other programs, sharing the work, and memory."""

from __future__ import annotations

import os
import platform
import shutil
import statistics
import subprocess
import sys
import tempfile
from collections.abc import Iterator, Sequence
from pathlib import Path

from tests.benchmarks import aims
from tests.benchmarks.inside import GOOD, ROOT, curve, without_the_first
from tests.benchmarks.turns import Row, Task, in_turn, ratio, told

# Of the two schemas of a spec this one describes what people write; spec.schema.json describes what
# that means once units are read, and refuses every length that has one. A file of two documents
# check-jsonschema does not take: four in a hundred cost it next to nothing.
SCHEMA = ROOT / "shared" / "spec.editor.schema.json"
FORMS = ("text", "jsonl", "sarif")

# This checkout is what is measured, whatever is installed; and like the other programs it keeps the
# bytecode of its modules, as it does wherever it is installed.
_ENVIRONMENT = {
    **{name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"},
    "PYTHONPATH": str(ROOT),
}


def program(name: str) -> str:
    """Return where a program is, first among those of this environment."""
    path = os.pathsep.join((str(Path(sys.executable).parent), os.environ.get("PATH", "")))
    found = shutil.which(name, path=path)
    if found is None:
        raise SystemExit(f"{name} is not here: pip install -e '.[bench]'")
    return found


def into_a_pipe(folder: Path, name: str, *arguments: str | Path) -> Task:
    """Return a task that runs a program and reads all that it says."""
    command = [program(name), *map(str, arguments)]

    def task() -> None:
        with tempfile.TemporaryFile() as complaints, subprocess.Popen(
            command, cwd=folder, env=_ENVIRONMENT, stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE, stderr=complaints,
        ) as started:  # fmt: skip
            said = 0
            while started.stdout and (chunk := started.stdout.read(1 << 20)):
                said += len(chunk)
            status = started.wait()
            # 1 means that something was found, and 2 that one of the files could not be read.
            if status not in (0, 1, 2) or (status == 2 and not said):
                complaints.seek(0)
                raise SystemExit(f"{name} failed: {complaints.read().decode()}")

    return task


def cold(turns: int) -> Iterator[Row]:
    """Compare a first review with yamllint, both from nothing."""
    ours = into_a_pipe(ROOT, "belowgrade", "review", GOOD)
    beside = into_a_pipe(ROOT, "yamllint", GOOD)
    in_turn({"ours": ours, "beside": beside}, 2)
    taken = in_turn({"ours": ours, "beside": beside}, turns)
    yield _row(
        "review specs/good.yaml, from nothing", taken, "ours", "beside", "yamllint", aims.COLD
    )


def many(folder: Path, count: int, turns: int) -> Iterator[Row]:
    """Compare a review of a whole folder with what others do to it."""
    files = [file.relative_to(folder) for file in sorted(folder.rglob("*.yaml"))]
    others = {
        "yamllint": into_a_pipe(folder, "yamllint", "."),
        "check-jsonschema": into_a_pipe(folder, "check-jsonschema", "--schemafile", SCHEMA, *files),
    }
    ways: dict[str, tuple[str, ...]] = {
        "--short": ("--short",),
        **{f"--as {form}": ("--as", form) for form in FORMS},
    }
    ours = {
        way: into_a_pipe(folder, "belowgrade", "review", ".", *given) for way, given in ways.items()
    }
    taken = in_turn({**ours, **others}, turns)
    for way in ways:
        for other in others:
            what = f"review {count:,} files {way}"
            yield _row(what, taken, way, other, other, aims.MANY[other])


def jobs(folder: Path, count: int, turns: int) -> Iterator[Row]:
    """Compare two processes that share the work with one that does it all."""
    for form in ("text", "jsonl"):
        sides = {
            number: into_a_pipe(folder, "belowgrade", "review", ".", "--as", form, "--jobs", number)
            for number in ("2", "1")
        }
        taken = in_turn(sides, turns)
        what = f"review {count:,} files as {form} with --jobs 2"
        yield _row(what, taken, "2", "1", "--jobs 1", aims.JOBS)


def growth_over_files(folder: Path, counts: Sequence[int], turns: int) -> Iterator[Row]:
    """Tell the time per file of whole processes, without what it takes to start one."""
    files = [file.relative_to(folder) for file in sorted(folder.rglob("*.yaml"))]

    def task(count: int) -> Task:
        return into_a_pipe(folder, "belowgrade", "review", *files[:count])

    taken = in_turn({str(count): task(count) for count in (1, *counts)}, turns)
    each = {count: without_the_first(taken[str(count)], taken["1"], count) for count in counts}
    yield curve("review more files, for each file", "files", each)


def _row(
    what: str, taken: dict[str, list[float]], ours: str, beside: str, name: str, aim: str
) -> Row:
    measured = f"{told(taken[beside])}, {name}"
    return Row(what, told(taken[ours]), measured, ratio(taken[ours], taken[beside]), aim)


# -- memory ----------------------------------------------------------------------------------------

# A small process in between: what a child has taken is told with the room of its parent in it.
_MOST_ROOM = """
import resource, subprocess, sys
status = subprocess.run(sys.argv[1:], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL).returncode
print(status, resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)
"""


def memory(few: tuple[Path, int], more: tuple[Path, int], turns: int) -> Iterator[Row]:
    """Compare the most memory that a review of ten times the files takes."""
    if platform.system() == "Windows":
        print("memory is not measured on Windows")
        return
    for form in FORMS:
        taken = [[_megabytes(folder, form) for folder, _ in (more, few)] for _ in range(turns)]
        ours, beside = ([turn[side] for turn in taken] for side in (0, 1))
        yield Row(
            f"memory for {more[1]:,} files as {form}",
            f"{statistics.median(ours):.0f} MB",
            f"{statistics.median(beside):.0f} MB for {few[1]:,} files",
            ratio(ours, beside),
            aims.MEMORY,
        )


def _megabytes(folder: Path, form: str) -> float:
    command = [sys.executable, "-c", _MOST_ROOM, program("belowgrade"), "review", ".", "--as", form]
    done = subprocess.run(
        command, cwd=folder, env=_ENVIRONMENT, capture_output=True, text=True, check=True
    )
    status, most = map(int, done.stdout.split())
    if status not in (0, 1, 2):
        raise SystemExit(f"a review as {form} ended with {status}")
    return most / (1_000_000 if platform.system() == "Darwin" else 1_000)
