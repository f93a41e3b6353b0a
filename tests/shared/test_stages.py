"""The stages file: every stage once and in order, and never more lines than anybody reads."""

from __future__ import annotations

from typing import Any

import pytest
import yaml

from checker.data import data_dir
from checker.judging.conditions import compile_all
from checker.judging.review_data import STAGES
from checker.judging.rulebook import load_rulebook
from checker.reading.compose import TextLoader

FILE: dict[str, Any] = yaml.load(
    (data_dir("shared") / "stages.yaml").read_text(encoding="utf-8"), TextLoader
)


def test_every_stage_in_the_trades_order() -> None:
    assert tuple(stage["id"] for stage in FILE["stages"]) == STAGES
    assert set(FILE) == {"stages", "moves"}


@pytest.mark.parametrize("stage", FILE["stages"], ids=lambda stage: stage["id"])
def test_one_to_three_plain_lines(stage: dict[str, Any]) -> None:
    assert set(stage) == {"id", "buries"}
    assert 1 <= len(stage["buries"]) <= 3
    for line in stage["buries"]:
        assert line[0].isupper()
        assert line.endswith(".")
        assert len(line) <= 100


@pytest.mark.parametrize("move", FILE["moves"], ids=lambda move: move["section"])
def test_a_move_names_rules_conditions_and_an_earlier_stage(move: dict[str, Any]) -> None:
    assert set(move) == {"section", "where", "to", "because"}
    moved = [rule for rule in load_rulebook().rules if rule.id.startswith(f"{move['section']}.")]
    assert any(STAGES.index(rule.stage) > STAGES.index(move["to"]) for rule in moved)
    assert compile_all(move["where"]).parts
