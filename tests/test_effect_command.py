"""`effect`: what it prints, and how it ends."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner

from checker.command import app
from tests.judging.effects import LOT, Collection

COAT = ("dry_thickness: at least 40 mil", "dry_thickness: 30 mil")


@pytest.fixture
def collection(tmp_path: Path) -> Collection:
    return Collection(tmp_path)


def run(collection: Collection, *arguments: object) -> tuple[int, str, str]:
    """Return the exit status, what was printed, and what was complained of."""
    given = ["effect", collection.before, collection.after, *arguments]
    result = CliRunner().invoke(app, [str(one) for one in given])
    return result.exit_code, result.stdout, result.stderr


def test_nothing_worse_ends_in_0(collection: Collection) -> None:
    status, printed, said = run(collection)
    assert (status, said) == (0, "")
    assert printed.startswith("What an edit does\n")
    collection.edit("retarder_thickness: 10 mil", "retarder_thickness: 15 mil")
    assert run(collection)[0] == 0


def test_something_worse_ends_in_1_from_the_severity_that_holds_on(collection: Collection) -> None:
    # A thin coat is major.
    collection.edit(*COAT)
    assert run(collection)[0] == 1
    assert run(collection, "--hold-at", "minor")[0] == 1
    assert run(collection, "--hold-at", "critical")[0] == 0


@pytest.mark.parametrize("side", ["before", "after"])
def test_what_cannot_be_read_ends_in_2_and_is_said_with_its_side(
    collection: Collection, side: str
) -> None:
    (getattr(collection, side) / LOT).write_text("vocabulary: 3\n", encoding="utf-8")
    status, printed, said = run(collection)
    assert status == 2
    assert said.startswith(f"{side}: ")
    assert LOT in said
    assert "1 file not read" in printed


def test_what_is_not_there_ends_in_2_and_prints_nothing(
    collection: Collection, tmp_path: Path
) -> None:
    (tmp_path / "empty").mkdir()
    for folder, complaint in (("empty", "before: no spec was found"), ("nowhere", "nowhere")):
        collection.before = tmp_path / folder
        status, printed, said = run(collection)
        assert (status, printed) == (2, "")
        assert complaint in said


@pytest.mark.parametrize(
    "option", [["--by", "someday"], ["--on", "someday"], ["--place", "nowhere"]]
)
def test_options_are_those_of_a_review(collection: Collection, option: list[str]) -> None:
    status, printed, said = run(collection, *option)
    assert (status, printed) == (2, "")
    assert option[1] in said


def test_only_what_must_be_right_by_a_stage_is_asked(collection: Collection) -> None:
    collection.edit(*COAT)
    status, printed, _ = run(collection, "--by", "forms", "--as", "json")
    assert (status, json.loads(printed)["counts"]["worse"]) == (0, 0)


@pytest.mark.parametrize("form", ["text", "markdown", "json", "html"])
def test_the_same_bytes_whatever_shares_the_work(collection: Collection, form: str) -> None:
    for number in range(16, 20):
        collection.lot(number)
    collection.edit(*COAT)
    (collection.after / "lot-16.yaml").rename(collection.after / "renamed.yaml")
    alone = run(collection, "--as", form)
    assert alone[0] == 1
    assert run(collection, "--as", form, "--jobs", "3") == alone
    file = collection.after.parent / "effect"
    assert run(collection, "--as", form, "--to", file) == (1, "", "")
    assert file.read_text(encoding="utf-8") == alone[1]


def test_a_plain_effect_loads_no_library_of_another_form(collection: Collection) -> None:
    code = (
        "import sys\nfrom checker.command import main\n"
        "try:\n    main()\nexcept SystemExit:\n    pass\n"
        "print([one for one in ('jinja2', 'rich', 'multiprocessing') if one in sys.modules], file=sys.stderr)"
    )
    sides = [str(collection.before), str(collection.after)]
    done = subprocess.run(
        [sys.executable, "-c", code, "effect", *sides],
        cwd=Path(__file__).parents[1], capture_output=True, text=True, timeout=120, check=True,
    )  # fmt: skip
    assert done.stderr.strip() == "[]"
