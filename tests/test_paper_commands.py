"""`letter`, `fieldsheet`, `owner` and `review --short`: what they write and how they end."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner

from checker.command import app

ROOT = Path(__file__).parents[1]
BAD, SUBMITTAL = ROOT / "specs" / "bad.yaml", ROOT / "specs" / "submittal.yaml"


def run(*arguments: object) -> tuple[int, str, str]:
    """Return the exit status, what was printed, and what was complained of."""
    result = CliRunner().invoke(app, [str(one) for one in arguments])
    return result.exit_code, result.stdout, result.stderr


def test_a_letter_is_printed_whole_and_ends_in_0() -> None:
    status, printed, said = run("letter", BAD, "--trade", "Drain")
    assert (status, said) == (0, "")
    assert printed.startswith("# Comments on a submittal: Quillwater Lane, lot 15")
    assert "for trade drain" in printed


def test_a_letter_for_a_word_processor_goes_into_a_file(tmp_path: Path) -> None:
    file = tmp_path / "letter.docx"
    assert run("letter", BAD, "--as", "docx", "--to", file)[0] == 0
    assert file.read_bytes().startswith(b"PK")
    status, printed, said = run("letter", BAD, "--as", "docx")
    assert (status, printed) == (2, "")
    assert "--to" in said


def test_the_next_letter_keeps_the_numbers(tmp_path: Path) -> None:
    file = tmp_path / "letter.json"
    assert run("letter", BAD, "--as", "json", "--to", file)[0] == 0
    status, printed, _ = run("letter", BAD, "--as", "json", "--earlier", file)
    first, second = json.loads(file.read_text(encoding="utf-8")), json.loads(printed)
    assert status == 0
    assert first["letters"][0]["numbers"] == second["letters"][0]["numbers"]
    assert {one["revision"] for one in second["letters"][0]["items"]} == {"still open"}


def test_the_review_as_json_will_do_for_the_letter_before(tmp_path: Path) -> None:
    file = tmp_path / "review.json"
    assert run("review", BAD, "--as", "json", "--to", file)[0] == 1
    status, printed, said = run("letter", BAD, "--earlier", file)
    assert (status, said) == (0, "")
    assert "still open" in printed


def test_an_earlier_letter_about_others_is_said(tmp_path: Path) -> None:
    file = tmp_path / "letter.json"
    run("letter", BAD, "--as", "json", "--to", file)
    status, _, said = run("letter", BAD, SUBMITTAL, "--earlier", file)
    assert status == 0
    assert "says nothing of Quillwater Lane, lot 17" in said


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["letter", BAD, "--trade", "plumer"], "there is no trade 'plumer'"),
        (["letter", BAD, "--earlier", BAD], "this is not JSON"),
        (["letter", BAD, "--earlier", "nowhere.json"], "nowhere.json: cannot be read"),
        (["letter", "nowhere.yaml"], "nowhere.yaml"),
        (["fieldsheet", BAD, "--by", "someday"], "there is no stage 'someday'"),
        (["fieldsheet", BAD, "--by", "drain", "--language", "fr"], "one of en, es"),
        (["fieldsheet", BAD, "--by", "drain", "--instrument", "high"], "level of the instrument"),
        (["owner", "nowhere.yaml"], "nowhere.yaml"),
        (["review", BAD, "--short", "--as", "json"], "--short is text"),
    ],
)
def test_what_cannot_be_done_ends_in_2_and_prints_nothing(
    arguments: list[object], said: str
) -> None:
    status, printed, complained = run(*arguments)
    assert (status, printed) == (2, "")
    assert said in complained


HOUSE = """
house: Harrow and Fenn Homes
approvers: [K. Fenn]
variances:
  - id: V-07
    rule: drain.flat
    scope: {lot: "14"}
    reason: no room for more fall
    condition: laser levels at each corner
    approved_by: K. Fenn
    issued: 2031-04-15
    expires: 2031-07-15
dispositions:
  not shown: {minor: no comment from these rules}
"""


def test_a_house_says_what_is_suggested_and_what_it_allows(tmp_path: Path) -> None:
    (tmp_path / "belowgrade.yaml").write_text(HOUSE, encoding="utf-8")
    (tmp_path / "lots").mkdir()
    text = (ROOT / "specs" / "good.yaml").read_text(encoding="utf-8")
    spec = tmp_path / "lots" / "lot14.yaml"
    spec.write_text(text, encoding="utf-8")
    status, printed, said = run("letter", spec, "--as", "json")
    assert (status, said) == (0, "")
    (letter,) = json.loads(printed)["letters"]
    suggested = {(one["outcome"], one["severity"]): one["suggestion"] for one in letter["items"]}
    assert suggested["not shown", "minor"] == "no comment from these rules"
    assert suggested["not met", "minor"] == "no comment from these rules"
    assert letter["suggestion"] == "no comment from these rules"
    (flat,) = [one for one in letter["items"] if one["rules"] == ["drain.flat"]]
    assert flat["varied"] == (
        "V-07, approved by K. Fenn until 2031-07-15; on condition of laser levels at each corner; "
        "no room for more fall"
    )
    assert [name for name, _ in letter["books"]] == ["belowgrade", "Harrow and Fenn Homes"]
    _, sheet, _ = run("fieldsheet", spec, "--by", "drain")
    assert "does not pass" not in sheet
    _, short, _ = run("review", spec, "--short")
    assert "Drain flatter" not in short


def test_a_field_sheet_in_each_form(tmp_path: Path) -> None:
    file = tmp_path / "sheet.html"
    assert run("fieldsheet", SUBMITTAL, "--by", "forms", "--as", "html", "--to", file)[0] == 0
    assert file.read_text(encoding="ascii").startswith("<!DOCTYPE html>")
    status, printed, _ = run("fieldsheet", SUBMITTAL, "--by", "forms", "--language", "es")
    assert status == 0
    assert printed.startswith("Hoja de campo, etapa cimbra")


def test_the_owner_is_told_of_what_was_measured() -> None:
    status, printed, _ = run("owner", ROOT / "specs" / "house.yaml")
    assert status == 0
    assert printed.startswith("# Keeping the basement dry: ")


def test_the_short_review_ends_as_the_long_one_does() -> None:
    status, printed, _ = run("review", BAD, "--short")
    long_status, whole, _ = run("review", BAD)
    assert status == long_status == 1
    assert len(printed.splitlines()) == 5
    assert whole.splitlines()[-1] in printed.splitlines()[-1]


@pytest.mark.parametrize("command", [["owner"], ["fieldsheet", "--by", "desk"], ["letter"]])
def test_a_plain_page_loads_neither_jinja_nor_docx(command: list[str]) -> None:
    code = (
        "import sys\nfrom checker.command import main\nsys.argv[1:] = sys.argv[1:]\n"
        "try:\n    main()\nexcept SystemExit:\n    pass\n"
        "print([one for one in ('jinja2', 'docx', 'rich') if one in sys.modules], file=sys.stderr)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, command[0], str(SUBMITTAL), *command[1:]],
        cwd=ROOT, capture_output=True, text=True, timeout=120, check=True,
    )  # fmt: skip
    assert done.stderr.strip() == "[]"
    assert done.stdout
