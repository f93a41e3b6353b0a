"""`belowgrade review`: what is judged, by which stage, and how it ends."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner

from checker.command import app
from tests.test_imports import LATER, modules_loaded

HOUSE = Path(__file__).parents[1] / "specs" / "house.yaml"


def run(*arguments: str) -> tuple[int, str, str]:
    """Return the exit status, what was printed, and what was complained of."""
    result = CliRunner().invoke(app, ["review", *arguments])
    return result.exit_code, result.stdout, result.stderr


@pytest.mark.parametrize(
    ("basis", "bases"),
    [
        ([], ["design"]),
        (["--measured", "design"], ["design"]),
        (["--measured", "measured"], ["measured"]),
        (["--measured", "both"], ["design", "measured"]),
    ],
)
def test_what_is_judged(basis: list[str], bases: list[str]) -> None:
    _, printed, _ = run(str(HOUSE), "--as", "json", *basis)
    assert [one["basis"] for one in json.loads(printed)["reviews"]] == bases


def test_places_in_json_name_their_file() -> None:
    _, printed, _ = run(str(HOUSE), "--as", "json")
    (review,) = json.loads(printed)["reviews"]
    files = {at["file"] for finding in review["findings"] for at in finding["places"]}
    assert files == {str(HOUSE), str(HOUSE.parent / "standards" / "HF-FDN-02.yaml")}
    assert len(review["buried"]) == 2


def test_an_unknown_basis_is_refused() -> None:
    status, _, said = run(str(HOUSE), "--measured", "maybe")
    assert status == 2
    assert "maybe" in said


def test_a_file_that_cannot_be_started_from_ends_in_2_at_its_line(tmp_path: Path) -> None:
    spec = tmp_path / "lot.yaml"
    spec.write_text("vocabulary: 1\nstarts_from: ../../etc/passwd\n", encoding="utf-8")
    status, printed, said = run(str(spec))
    assert (status, printed) == (2, "")
    assert said.startswith(f"{spec}:2:14: '../../etc/passwd' leads out")


def test_a_spec_that_starts_from_another_loads_no_more_than_a_sound_one() -> None:
    loaded = modules_loaded("-m", "checker", "review", str(HOUSE), exits={0, 1})
    assert loaded & LATER.keys() == set()
