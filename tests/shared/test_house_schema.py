"""The schemas of a house file and of a place hold what is written by them, and refuse the rest."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator

from checker.data import load_json
from checker.judging.amendments import _KEYS
from checker.reading.compose import TextLoader

HOUSE = Path(__file__).parents[2] / "specs" / "standards" / "belowgrade.yaml"
VARIANCE = {
    "id": "V-07", "rule": "drain.flat", "scope": {"lot": "14"}, "reason": "no room",
    "approved_by": "K. Fenn", "issued": "2031-04-15", "expires": "2031-07-15",
}  # fmt: skip


def errors(schema: str, content: Any) -> list[str]:
    return [one.message for one in Draft202012Validator(load_json(schema)).iter_errors(content)]


@pytest.mark.parametrize("schema", ["house.schema.json", "place.schema.json"])
def test_the_schema_is_one_and_describes_every_key(schema: str) -> None:
    content = load_json(schema)
    Draft202012Validator.check_schema(content)
    for shape in (content, *content["$defs"].values()):
        assert all(one.get("description") or "$ref" in one for one in shape["properties"].values())


def test_the_example_house_obeys() -> None:
    content = yaml.load(HOUSE.read_text(encoding="utf-8"), TextLoader)
    assert errors("house.schema.json", content) == []
    assert {"rules", "approvers", "variances", "off", "dispositions"} <= set(content)


@pytest.mark.parametrize("key", VARIANCE)
def test_a_variance_lacks_nothing(key: str) -> None:
    def house(variance: dict[str, Any]) -> dict[str, Any]:
        return {"house": "Harrow and Fenn Homes", "variances": [variance]}

    assert errors("house.schema.json", house(VARIANCE)) == []
    assert errors("house.schema.json", house({k: v for k, v in VARIANCE.items() if k != key}))


def test_the_schema_and_the_program_know_the_same_keys_of_an_amendment() -> None:
    assert set(load_json("place.schema.json")["$defs"]["amendment"]["properties"]) == set(_KEYS)
