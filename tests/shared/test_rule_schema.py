"""The schema of rules, which editors use: it takes the rule book and refuses common slips."""

from __future__ import annotations

import copy
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

from checker.data import data_dir, load_json

FILES = sorted(data_dir("rules").glob("*.yaml"))
RULE: dict[str, Any] = {
    "id": "drain.above-slab",
    "title": "Drain too high to protect the floor",
    "severity": "critical",
    "how_often": "known",
    "stage": "drain",
    "trade": "drain",
    "protects": "building",
    "require": {"value": "drain.crown_high", "below": "levels.slab_underside"},
    "sources": [{"ref": "o-reg-332-12", "at": "9.14.3.3(1)"}],
    "rationale": "Water stands at the floor before the pipe takes any.",
    "remedy": "Lower the loop by {off_by}.",
    "examples": {
        "met": [{"says": "below", "spec": {"drain": {"present": "yes"}}}],
        "not met": [{"says": "above", "spec": {"drain": {"present": "yes"}}}],
    },
}
CASE = {"require": RULE["require"], "sources": "common practice"}


def _faults(rules: Any) -> list[str]:
    validator = jsonschema.Draft202012Validator(load_json("rule.schema.json"))
    return [f"{error.json_path}: {error.message}" for error in validator.iter_errors(rules)]


def _changed(**changes: Any) -> list[dict[str, Any]]:
    rule = copy.deepcopy(RULE) | changes
    return [{key: value for key, value in rule.items() if value is not None}]


# An editor may read yes as a word or as a truth: the schema takes both.
@pytest.mark.parametrize("loader", [yaml.BaseLoader, yaml.SafeLoader])
@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_every_rule_file_fits(path: Path, loader: Any) -> None:
    assert _faults(yaml.load(path.read_text(encoding="utf-8"), loader)) == []


@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"sources": "common practice"},
        {"stage": "pre backfill", "due": "pre_backfill"},
        {"require": None, "sources": None, "cases": [CASE]},
        {"require": {"any": [RULE["require"], {"value": "drain.present", "is": "no"}]}},
        {"require": {"value": "stone.passing_no4", "between": ["0 %", "10 %"]}},
        {"require": {"value": "drain.run_long", "between": "fits.run_long"}},
        {"require": {"value": "holds.each.stage", "one of": "job.done"}},
        {
            "require": {
                "value": "excavation.run_per_rise",
                "at least": {
                    "table": "osha_slopes",
                    "row": "excavation.osha_type",
                    "column": "run",
                    "if_missing": "worst",
                },
            }
        },
    ],
    ids=str,
)
def test_the_schema_takes(changes: dict[str, Any]) -> None:
    assert _faults(_changed(**changes)) == []


@pytest.mark.parametrize(
    "changes",
    [
        {"id": "AboveSlab"},
        {"id": None},
        {"severity": "fatal"},
        {"stage": "lunch"},
        {"trade": "roofing"},
        {"why": "because"},
        {"rationale": None},
        {"sources": None},
        {"sources": "habit"},
        {"sources": []},
        {"sources": [{"ref": "o-reg-332-12"}]},
        {"cases": [CASE]},
        {"require": None, "sources": None, "cases": []},
        {"require": None, "sources": None, "cases": [CASE | {"when": []}]},
        {"require": {"value": "drain.crown_high"}},
        {"require": {"value": "drain.crown_high", "below": "1 ft", "above": "0 ft"}},
        {"require": {"value": "drain.crown_high", "under": "1 ft"}},
        {"require": {"below": "1 ft"}},
        {"require": {"any": [RULE["require"]], "all": [RULE["require"]]}},
        {"require": {"any": []}},
        {"require": {"value": "grade.sides[].slope", "at least": "5 %"}},
        {"require": {"value": "stone.passing_no4", "between": ["0 %"]}},
        {"require": {"value": "excavation.run_per_rise", "at least": {"table": "osha_slopes"}}},
        {"applies": []},
        {"examples": {"met": RULE["examples"]["met"]}},
        {"examples": {"met": [], "not met": RULE["examples"]["not met"]}},
    ],
    ids=str,
)
def test_the_schema_refuses(changes: dict[str, Any]) -> None:
    assert _faults(_changed(**changes))
