"""The hooks for pre-commit run commands that exist, on the files that they are meant for."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
import yaml
from typer.testing import CliRunner

from checker.command import app

ROOT = Path(__file__).parents[1]
HOOKS: dict[str, dict[str, Any]] = {
    hook["id"]: hook
    for hook in yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text(encoding="utf-8"))
}


def run(hook: str, folder: Path, *files: str, monkeypatch: pytest.MonkeyPatch) -> tuple[int, str]:
    """Run what a hook runs, in a repository of its user."""
    monkeypatch.chdir(folder)
    program, *entry = HOOKS[hook]["entry"].split()
    assert program == "belowgrade"
    named = files if HOOKS[hook].get("pass_filenames", True) else ()
    ended = CliRunner().invoke(app, [*entry, *HOOKS[hook].get("args", ()), *named])
    return ended.exit_code, ended.output


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name in ("specs/bad.yaml", "specs/good.yaml", "rules/levels.yaml"):
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_bytes((ROOT / name).read_bytes())
    (tmp_path / "services.yaml").write_text("services: [a]\n", encoding="utf-8")
    return tmp_path


def test_specs_are_reviewed_and_other_yaml_is_not(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    files = ("rules/levels.yaml", "services.yaml", "specs/bad.yaml")
    status, said = run("belowgrade", folder, *files, monkeypatch=monkeypatch)
    assert status == 1
    assert said.startswith("Review of Quillwater Lane, lot 15")
    assert run("belowgrade", folder, *files[:2], monkeypatch=monkeypatch) == (0, "")


def test_a_rule_book_is_checked_as_a_whole(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert run("belowgrade-rules", folder, monkeypatch=monkeypatch)[0] == 0
    rules = folder / "rules" / "levels.yaml"
    text = rules.read_text(encoding="utf-8")
    rules.write_text(text.replace("severity: ", "severty: ", 1), encoding="utf-8")
    status, said = run("belowgrade-rules", folder, monkeypatch=monkeypatch)
    assert status == 2
    assert "'severty'" in said


@pytest.mark.parametrize(
    ("file", "checked"),
    [("rules/drain.yaml", True), ("rules/local/x.yaml", True), ("specs/rules/x.yaml", False)],
)
def test_which_files_set_off_the_check_of_rules(file: str, checked: bool) -> None:
    assert bool(re.search(HOOKS["belowgrade-rules"]["files"], file)) is checked
