"""The register of sources: complete, honest about what was read, and free of second entries."""

from __future__ import annotations

import copy
from collections.abc import Callable, Iterator
from typing import Any

import jsonschema
import pytest
import yaml

from checker.data import data_dir, load_json, load_table

# Text stays text: the register's "1804.4" is a section, not a number.
TEXT = yaml.BaseLoader
REGISTER: dict[str, Any] = yaml.load(
    (data_dir("shared") / "sources.yaml").read_text(encoding="utf-8"), TEXT
)
PLACES = {(ref, at) for ref, entry in REGISTER.items() for at in entry["places"]}
TABLES = sorted(path.stem for path in (data_dir("shared") / "tables").glob("*.yaml"))
ENTRY: dict[str, Any] = {
    "title": "A code",
    "publisher": "A council",
    "edition": "2031",
    "kind": "model code",
    "family": "code",
    "country": "us",
    "places": {"R1": {"says": "Dig.", "seen": "own text", "whole": "yes", "read": "page 1"}},
}


def _faults(register: Any) -> list[str]:
    validator = jsonschema.Draft202012Validator(load_json("source.schema.json"))
    return [f"{error.json_path}: {error.message}" for error in validator.iter_errors(register)]


def _changed(ref: str = "a-code", /, **changes: Any) -> dict[str, Any]:
    """Return a register of one good entry, changed; a value of None takes the key out."""
    entry = copy.deepcopy(ENTRY)
    for key, value in changes.items():
        holder = entry["places"]["R1"] if key in ("says", "seen", "whole", "read") else entry
        holder[key] = value
        if value is None:
            del holder[key]
    return {ref: entry}


def _second_keys(node: yaml.Node | None) -> Iterator[str]:
    if isinstance(node, yaml.MappingNode):
        keys = [key.value for key, _ in node.value]
        yield from (str(key) for key in set(keys) if keys.count(key) > 1)
        for _, value in node.value:
            yield from _second_keys(value)


def _cited(value: Any) -> Iterator[tuple[str, str]]:
    if isinstance(value, dict):
        if "ref" in value:
            yield value["ref"], value["at"]
        for part in value.values():
            yield from _cited(part)
    elif isinstance(value, list):
        for part in value:
            yield from _cited(part)


def test_the_register_fits_its_schema() -> None:
    assert _faults(REGISTER) == []


def test_a_good_entry_fits_the_schema() -> None:
    assert _faults(_changed()) == []


@pytest.mark.parametrize("key", ["title", "publisher", "edition", "kind", "country", "places"])
def test_an_entry_needs(key: str) -> None:
    assert _faults(_changed(**{key: None}))


@pytest.mark.parametrize("key", ["says", "seen", "whole", "read"])
def test_no_place_without(key: str) -> None:
    assert _faults(_changed(**{key: None}))
    assert _faults(_changed(**{key: ""}))


@pytest.mark.parametrize(
    "changes",
    [
        {"seen": "read"},
        {"kind": "blog"},
        {"family": None},
        {"kind": "law", "family": None},
        {"place": "marrowfield"},
        {"country": "fr"},
        {"url": "https://example.org"},
        {"says": "word " * 80},
        {"places": {}},
    ],
    ids=str,
)
def test_the_schema_refuses(changes: dict[str, Any]) -> None:
    assert _faults(_changed(**changes))


def test_the_schema_refuses_a_key_with_capitals() -> None:
    assert _faults(_changed("A Code"))


def test_no_key_stands_twice() -> None:
    text = (data_dir("shared") / "sources.yaml").read_text(encoding="utf-8")
    assert list(_second_keys(yaml.compose("{a: {b: 1, b: 2}}"))) == ["b"]
    assert list(_second_keys(yaml.compose(text))) == []


def _places_where(wrong: Callable[[dict[str, Any], dict[str, Any]], bool]) -> list[str]:
    return [
        f"{ref} at {at}"
        for ref, entry in REGISTER.items()
        for at, place in entry["places"].items()
        if wrong(entry, place)
    ]


def test_what_was_not_read_is_not_called_whole() -> None:
    unread = _places_where(
        lambda _, place: place["seen"] in ("memory", "summary") and place["whole"] != "no"
    )
    assert unread == []


def test_editions_name_the_entry_s_own() -> None:
    left_out = _places_where(
        lambda entry, place: entry["edition"] not in place.get("editions", [entry["edition"]])
    )
    assert left_out == []


@pytest.mark.parametrize("name", TABLES)
def test_a_table_cites_places_of_the_register(name: str) -> None:
    table = load_table(name)
    cited = set(_cited(table))
    assert set(_cited(table["sources"])) == cited, "each source stands at the top of its table"
    assert cited <= PLACES


def test_there_are_tables() -> None:
    assert {"osha_slopes", "m288_drainage", "soil_groups", "pipes"} <= set(TABLES)
