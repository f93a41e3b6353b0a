"""Many files at once: the same bytes from one process and from several, and nothing by halves."""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from typer.testing import CliRunner, Result

from checker.command import app
from tests.judging.houses import LOT
from tests.showing.test_sarif_report import SCHEMA, faults_in_log

ROOT = Path(__file__).parents[1]
SPECS = ROOT / "specs"
FORMS = ("text", "json", "jsonl", "sarif", "junit", "html")
UNREADABLE = "vocabulary: 1\nwal: {}\n"


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(app, ["review", *map(str, arguments)])


@pytest.fixture
def mixed(tmp_path: Path) -> Path:
    """A folder in which two of five files cannot be read, and one holds two assemblies."""
    folder = tmp_path / "mixed"
    folder.mkdir()
    for name, spec in (("1", "bad"), ("3", "prepour"), ("5", "good")):
        shutil.copy(SPECS / f"{spec}.yaml", folder / f"{name}.yaml")
    with (folder / "3.yaml").open("a", encoding="utf-8") as file:
        file.write("---\n" + (SPECS / "crawlspace.yaml").read_text(encoding="utf-8"))
    for name in ("2", "4"):
        (folder / f"{name}.yaml").write_text(UNREADABLE, encoding="utf-8")
    return folder


# -- the same from one process and from several ----------------------------------------------------


@pytest.mark.parametrize(
    "more", [*(["--as", form] for form in FORMS), ["--short"], ["--measured", "both"]], ids=" ".join
)
def test_files_that_cannot_be_read_change_nothing_of_the_others(
    mixed: Path, more: list[str]
) -> None:
    one = run(mixed, *more)
    two = run(mixed, *more, "--jobs", "2")
    assert (one.exit_code, one.stdout, one.stderr) == (two.exit_code, two.stdout, two.stderr)
    assert one.exit_code == 2
    assert [line.partition(":")[0] for line in one.stderr.splitlines()] == [
        str(mixed / "2.yaml"),
        str(mixed / "4.yaml"),
    ]
    sound = [mixed / name for name in ("1.yaml", "3.yaml", "5.yaml")]
    if more[-1] not in ("sarif", "junit"):
        # These two tell of faults themselves.
        assert one.stdout == run(*sound, *more).stdout


def test_text_of_several_files_is_that_of_each_and_the_sums(mixed: Path) -> None:
    files = [SPECS / name for name in ("bad.yaml", "prepour.yaml", "good.yaml")]
    alone = [run(file).stdout for file in files]
    together = run(*files).stdout
    rest = together
    for text in alone:
        assert rest.startswith(text + "\n")
        rest = rest.removeprefix(text + "\n")
    reviews = json.loads(run(*files, "--as", "json").stdout)["reviews"]
    met, not_met, not_shown = (
        sum(one["counts"][outcome] for one in reviews)
        for outcome in ("met", "not met", "not shown")
    )
    assert rest == (
        "3 assemblies in all:\n"
        f"{met} met, {not_met} not met, {not_shown} could not be judged. This is not a release.\n"
    )


# -- houses met on the way -------------------------------------------------------------------------


def house(folder: Path, name: str, rule: str, title: str) -> Path:
    """Write a house with a rule of its own, and a lot that does not meet it."""
    (folder / "rules").mkdir(parents=True)
    (folder / ".git").mkdir()
    lot = folder / "lot.yaml"
    lot.write_text(LOT, encoding="utf-8")
    head = f"house: {name}\nrules: [rules]\n"
    (folder / "belowgrade.yaml").write_text(head, encoding="utf-8")
    example = "{drain: {present: yes, slope: %s in/ft, run_long: 72 ft}}"
    (folder / "rules" / "own.yaml").write_text(
        f"""\
- id: {rule}
  title: {title}
  severity: major
  how_often: common
  stage: drain
  trade: drain
  protects: building
  applies: [{{value: drain.present, is: yes}}]
  require: {{value: drain.flattest_slope, at least: 1/8 in/ft}}
  sources: house standard
  rationale: Silt.
  remedy: Give it more fall.
  examples:
    met: [{{says: steep, spec: {example % "1/8"}}}]
    not met: [{{says: flat, spec: {example % "1/16"}}}]
""",
        encoding="utf-8",
    )
    return lot


@pytest.fixture
def houses(tmp_path: Path) -> list[Path]:
    """Specs of no house, of one, of no house again, and of two more of which one is like the first."""
    return [
        SPECS / "prepour.yaml",
        house(tmp_path / "a", "Harrow and Fenn", "drain.house-fall", "Flatter than Harrow allow"),
        SPECS / "bad.yaml",
        house(tmp_path / "b", "Marl and Sons", "drain.flat-in-silt", "Flatter than silt allows"),
        house(tmp_path / "c", "Oakum", "drain.house-fall", "Flatter than Oakum allow"),
        SPECS / "good.yaml",
    ]


@pytest.mark.parametrize("jobs", ["1", "2"])
def test_sarif_holds_the_rules_of_houses_met_on_the_way(houses: list[Path], jobs: str) -> None:
    ended = run(*houses, "--as", "sarif", "--jobs", jobs)
    log: Any = json.loads(ended.stdout)
    assert faults_in_log(log) == []
    (found,) = log["runs"]
    rules = found["tool"]["driver"]["rules"]
    ids = [rule["id"] for rule in rules]
    assert len(set(ids)) == len(ids)
    own = {rule["id"]: rule["shortDescription"]["text"] for rule in rules}
    assert own["drain.flat-in-silt"] == "Flatter than silt allows."
    # Two houses gave one name to two rules: the log has room for the first.
    assert own["drain.house-fall"] == "Flatter than Harrow allow."
    of_houses = [
        (one["locations"][0]["physicalLocation"]["artifactLocation"]["uri"], one["ruleId"])
        for one in found["results"]
        if one["ruleId"] in ("drain.house-fall", "drain.flat-in-silt")
    ]
    assert of_houses == [
        (houses[1].as_uri(), "drain.house-fall"),
        (houses[3].as_uri(), "drain.flat-in-silt"),
        (houses[4].as_uri(), "drain.house-fall"),
    ]


def test_sarif_with_houses_and_faults_obeys_the_schema(houses: list[Path], mixed: Path) -> None:
    if not SCHEMA.is_file():
        pytest.skip("the schema of SARIF is not installed here; .ci/run installs it with npm")
    schema = json.loads(SCHEMA.read_text(encoding="utf-8"))
    ended = run(*houses[:3], mixed, *houses[3:], "--as", "sarif")
    assert ended.exit_code == 2
    log = json.loads(ended.stdout)
    jsonschema.Draft4Validator(schema).validate(log)
    assert faults_in_log(log) == []
    (call,) = log["runs"][0]["invocations"]
    assert [len(call["toolExecutionNotifications"]), call["exitCode"]] == [2, 2]


def test_results_are_lines(houses: list[Path]) -> None:
    """So that a log of thousands can be searched and compared line by line."""
    text = run(*houses, "--as", "sarif").stdout
    lines = [line.rstrip(",") for line in text.splitlines() if line.startswith('{"ruleId"')]
    (found,) = json.loads(text)["runs"]
    assert [json.loads(line) for line in lines] == found["results"]


# -- nothing by halves -----------------------------------------------------------------------------


@pytest.mark.parametrize("form", ["text", "json", "sarif", "junit", "html"])
def test_where_nothing_was_judged_nothing_is_written(tmp_path: Path, form: str) -> None:
    (tmp_path / "services.yaml").write_text("services: [a]\n", encoding="utf-8")
    out = tmp_path / "out"
    out.write_text("as it was", encoding="utf-8")
    ended = run(tmp_path / "services.yaml", "--specs-only", "--as", form, "--to", out)
    assert (ended.exit_code, ended.output, out.read_text(encoding="utf-8")) == (0, "", "as it was")


def test_no_folder_to_write_into_is_said_before_all_is_judged(mixed: Path) -> None:
    ended = run(mixed, "--to", mixed / "gone" / "out")
    assert ended.exit_code == 2
    assert "cannot be written" in ended.stderr
    # The first file was judged; those that cannot be read come after it.
    assert "2.yaml" not in ended.stderr


@pytest.mark.parametrize("jobs", ["1", "2"])
def test_a_terminal_gets_its_styles(jobs: str) -> None:
    pty = pytest.importorskip("pty", reason="terminals are asked for as Unix has them")
    files = [SPECS / "prepour.yaml", SPECS / "crawlspace.yaml"]
    ours, theirs = pty.openpty()
    process = subprocess.Popen(
        [sys.executable, "-m", "checker", "review", *map(str, files), "--jobs", jobs],
        env={**os.environ, "PYTHONPATH": str(ROOT), "TERM": "xterm-256color", "COLUMNS": "80"},
        stdin=subprocess.DEVNULL,
        stdout=theirs,
        stderr=subprocess.PIPE,
    )
    os.close(theirs)
    shown = b""
    with process, open(ours, "rb", buffering=0) as terminal:
        try:
            while some := terminal.read(65536):
                shown += some
        except OSError:
            # That is how a terminal says that nobody writes to it any more.
            pass
        assert process.stderr is not None
        assert process.stderr.read() == b""
    assert shown.count(b"This is not a release.\x1b[0m") == 3
    plain = re.sub(rb"\x1b\[[0-9;]*m", b"", shown).replace(b"\r\n", b"\n").decode()
    assert plain == run(*files).stdout
