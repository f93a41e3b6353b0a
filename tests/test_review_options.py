"""Options of `belowgrade review` for other programs: what is new, specs alone, lines, many jobs."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner, Result

from checker.command import app

SPECS = Path(__file__).parents[1] / "specs"


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(app, ["review", *map(str, arguments)])


@pytest.fixture
def lot(tmp_path: Path) -> Path:
    """A spec with faults, in a folder of its own."""
    return Path(shutil.copy(SPECS / "bad.yaml", tmp_path / "lot.yaml"))


@pytest.fixture
def before(lot: Path, tmp_path: Path) -> Path:
    """The review of that spec, as JSON."""
    file = tmp_path / "before.json"
    assert run(lot, "--as", "json", "--to", file).exit_code == 1
    return file


def replace(file: Path, old: str, new: str) -> None:
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), encoding="utf-8")


# -- against an earlier review ---------------------------------------------------------------------


def test_nothing_new_ends_well(lot: Path, before: Path) -> None:
    ended = run(lot, "--against", before)
    assert ended.exit_code == 0
    assert "New: 0" in ended.stdout
    assert ended.stdout.endswith("This is not a release.\n")


def test_moved_lines_and_another_name_are_nothing_new(lot: Path, before: Path) -> None:
    replace(lot, "\nwall:", "\n# a remark\n\n# and another\nwall:")
    moved = lot.rename(lot.with_name("renamed.yaml"))
    ended = run(moved, "--against", before)
    assert (ended.exit_code, "New: 0" in ended.stdout) == (0, True)


def test_a_value_that_gets_worse_is_new(lot: Path, before: Path) -> None:
    replace(lot, "{id: NW, invert: 91.80", "{id: NW, invert: 91.95")
    ended = run(lot, "--against", before)
    assert ended.exit_code == 1
    assert "before     not met" in ended.stdout


def test_a_value_that_is_mended_is_fixed(lot: Path, before: Path) -> None:
    replace(lot, 'fall: 2"', "fall: 8 in")
    ended = run(lot, "--against", before)
    fixed = ended.stdout.partition("Fixed: ")[2]
    assert "(grade.slope): was not met" in " ".join(fixed.split())


def test_json_says_what_is_new(lot: Path, before: Path) -> None:
    replace(lot, "{id: NW, invert: 91.80", "{id: NW, invert: 91.95")
    report: Any = json.loads(run(lot, "--against", before, "--as", "json").stdout)
    carried = report["carried_over"]
    assert carried["against"] == str(before)
    assert carried["unchanged"] > 40
    assert {one["before"]["outcome"] for one in carried["new"]} <= {"not met", "not shown", "met"}
    assert any(one["rule"] == "drain.above-slab" for one in carried["new"])


def test_only_what_is_new_counts_at_its_severity(lot: Path, before: Path) -> None:
    replace(lot, "{id: NW, invert: 91.80", "{id: NW, invert: 91.95")
    report: Any = json.loads(run(lot, "--against", before, "--as", "json").stdout)
    grave = {one["severity"] for one in report["carried_over"]["new"]}
    assert "critical" in grave
    assert run(lot, "--against", before, "--hold-at", "critical").exit_code == 1


def test_nothing_that_could_be_judged_does_not_end_well(tmp_path: Path) -> None:
    lot, before = tmp_path / "lot.yaml", tmp_path / "before.json"
    lot.write_text("vocabulary: 1\n", encoding="utf-8")
    run(lot, "--as", "json", "--to", before)
    assert run(lot, "--against", before).exit_code == 1


@pytest.mark.parametrize("form", ["jsonl", "junit", "html"])
def test_forms_that_cannot_say_what_is_new(lot: Path, before: Path, form: str) -> None:
    ended = run(lot, "--against", before, "--as", form)
    assert ended.exit_code == 2
    assert "--against goes with --as text, json, sarif" in ended.stderr
    assert ended.stdout == ""


def test_what_is_no_review(lot: Path, tmp_path: Path) -> None:
    for name, says in (("gone.json", "cannot be opened"), ("lot.yaml", "is not a review")):
        ended = run(lot, "--against", tmp_path / name)
        assert (ended.exit_code, ended.stdout) == (2, "")
        assert says in ended.stderr


# -- specs alone -----------------------------------------------------------------------------------


@pytest.fixture
def no_specs(tmp_path: Path) -> list[Path]:
    texts = {"services.yaml": "services: [a]\n", "rules.yaml": "- id: a.b\n", "belowgrade.yaml": ""}
    for name, text in texts.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
    return [tmp_path / name for name in texts]


def test_other_yaml_is_left_alone_without_a_word(no_specs: list[Path]) -> None:
    ended = run("--specs-only", *no_specs)
    assert (ended.exit_code, ended.output) == (0, "")


def test_without_the_option_it_is_said_what_is_wrong(no_specs: list[Path]) -> None:
    ended = run(*no_specs)
    assert ended.exit_code == 2
    assert "services.yaml" in ended.stderr


def test_specs_among_other_yaml_are_reviewed(lot: Path, no_specs: list[Path]) -> None:
    ended = run("--specs-only", *no_specs, lot, "--as", "jsonl")
    assert ended.exit_code == 1
    (line,) = ended.stdout.splitlines()
    assert json.loads(line)["file"] == str(lot)


def test_a_file_that_is_not_there_is_no_other_yaml(tmp_path: Path) -> None:
    assert run("--specs-only", tmp_path / "gone.yaml").exit_code == 2


@pytest.mark.parametrize(
    "head",
    ["vocabulary: 1\n", "\ufeffvocabulary: 1\n", "# a remark\rvocabulary: 1\r", "---\n'vocabulary' : 1\n"],
)  # fmt: skip
def test_what_claims_to_be_a_spec_is_none_of_the_others(tmp_path: Path, head: str) -> None:
    lot = tmp_path / "lot.yaml"
    lot.write_bytes(head.encode())
    ended = run("--specs-only", lot, "--as", "jsonl")
    assert [json.loads(line)["file"] for line in ended.stdout.splitlines()] == [str(lot)]


# -- lines and jobs --------------------------------------------------------------------------------


def test_lines_are_the_reviews(lot: Path) -> None:
    arguments = [lot, SPECS / "good.yaml"]
    lines = [json.loads(line) for line in run(*arguments, "--as", "jsonl").stdout.splitlines()]
    report = json.loads(run(*arguments, "--as", "json").stdout)
    assert [line.pop("review_format") for line in lines] == [report["review_format"]] * 2
    assert lines == report["reviews"]


# What getrusage tells begins with the room of the process that started this one, which in a long
# run of tests is more than all that is measured here. VmHWM is of this program alone.
_MOST_ROOM = """
import re, sys
from checker.command import app
app([*sys.argv[1:]], standalone_mode=False)
status = open("/proc/self/status", encoding="ascii").read()
print(re.search(r"VmHWM:\\s+(\\d+) kB", status)[1], file=sys.stderr)
"""


def most_room(form: str, files: list[Path]) -> int:
    """Return the most kilobytes that a review of some files takes."""
    done = subprocess.run(
        [sys.executable, "-c", _MOST_ROOM, "review", *map(str, files), "--as", form],
        cwd=SPECS.parent,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        timeout=120,
        check=True,
    )
    return int(done.stderr)


# A review takes half a megabyte and more: thirty kept would be seen, as they are on a page.
FEW, MANY = [SPECS / "good.yaml"] * 3, [SPECS / "good.yaml"] * 33

on_linux = pytest.mark.skipif(
    sys.platform != "linux", reason="other systems count memory in other units"
)


@on_linux
@pytest.mark.parametrize("form", ["text", "json", "jsonl", "sarif", "junit"])
def test_no_more_room_for_more_files(form: str) -> None:
    assert most_room(form, MANY) - most_room(form, FEW) < 5_000


@on_linux
def test_room_for_more_files_would_be_seen() -> None:
    assert most_room("html", MANY) - most_room("html", FEW) > 15_000


@pytest.mark.parametrize("form", ["text", "json", "jsonl", "sarif", "junit"])
def test_several_jobs_say_the_same(form: str) -> None:
    one = run(SPECS, "--as", form)
    two = run(SPECS, "--as", form, "--jobs", "2")
    assert (one.exit_code, one.stdout, one.stderr) == (two.exit_code, two.stdout, two.stderr)


def test_no_jobs_are_no_number_of_jobs(lot: Path) -> None:
    assert run(lot, "--jobs", "0").exit_code == 2


def test_sarif_tells_of_a_file_that_cannot_be_read(tmp_path: Path) -> None:
    broken = tmp_path / "broken.yaml"
    broken.write_text("vocabulary: 1\nwal: {}\n", encoding="utf-8")
    ended = run(broken, "--as", "sarif")
    assert ended.exit_code == 2
    (log,) = json.loads(ended.stdout)["runs"]
    assert log["invocations"][0]["exitCode"] == 2
    assert log["results"] == []
