"""The vocabulary itself: every key says what it is, and says it once."""

from __future__ import annotations

import datetime
import json
import re
from collections import Counter
from collections.abc import Iterator
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from checker.data import data_dir
from checker.reading.notations import read_quantity
from checker.reading.vocabulary import plain_word as plain

TEXT = (data_dir("shared") / "spec.schema.json").read_text(encoding="utf-8")
SCHEMA: dict[str, Any] = json.loads(TEXT)

NUMBER_KINDS = {
    *("length", "level", "area", "volume", "slope", "dig_slope", "fraction", "angle"),
    *("permeability", "permittivity", "area_per_length", "flow", "flow_per_area", "pressure"),
    *("temperature", "duration", "rain", "rate", "mass", "freezing_index", "number"),
    *("unit_weight", "conductivity"),
}
KINDS = NUMBER_KINDS | {"count", "text", "date", "yes_no", "word", "words", "texts", "curve"}
# A laboratory's permeability, a storm from an atlas and a winter's frost are not read off an
# instrument on site, so no reading tolerance can be given for them.
NOT_READ_ON_SITE = {"permeability", "permittivity", "rain", "duration", "freezing_index"}


def resolve(node: dict[str, Any]) -> dict[str, Any]:
    """Return a node with what its $ref names laid under it."""
    if "$ref" not in node:
        return node
    shape = resolve(SCHEMA["$defs"][node["$ref"].removeprefix("#/$defs/")])
    return shape | {key: value for key, value in node.items() if key != "$ref"}


def nodes(raw: dict[str, Any] = SCHEMA, path: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield every section, list and leaf with its path; `each` stands for the items of a list."""
    node = resolve(raw)
    yield path, node
    if "x-kind" in node:
        return
    if node["type"] == "array":
        yield from nodes(node["items"], f"{path}.each")
    for key, child in node.get("properties", {}).items():
        yield from nodes(child, f"{path}.{key}" if path else key)


NODES = list(nodes())
LEAVES = {path: node for path, node in NODES if "x-kind" in node}
WORDY = {path: leaf for path, leaf in LEAVES.items() if leaf["x-kind"] in ("word", "words")}
AMBIGUOUS: dict[str, list[str]] = SCHEMA["x-ambiguous"]


def enum(leaf: dict[str, Any]) -> list[str]:
    """Return the words a leaf accepts."""
    words: list[str] = leaf.get("enum") or leaf.get("items", {}).get("enum") or []
    return words


def inner(node: Any) -> Iterator[dict[str, Any]]:
    """Yield every mapping inside a JSON value."""
    if isinstance(node, dict):
        yield node
        for value in node.values():
            yield from inner(value)
    elif isinstance(node, list):
        for value in node:
            yield from inner(value)


def test_is_a_schema_of_2020_12() -> None:
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    Draft202012Validator.check_schema(SCHEMA)


def test_is_written_in_one_way() -> None:
    assert json.dumps(SCHEMA, indent=2, ensure_ascii=False) + "\n" == TEXT


def test_every_fault_can_sit_on_its_own_leaf() -> None:
    mixed = [node for node in inner(SCHEMA) if {"oneOf", "anyOf", "allOf", "not", "if"} & set(node)]
    assert mixed == []


def test_every_section_is_closed_but_for_keys_of_the_users_own() -> None:
    sections = [(path, node) for path, node in NODES if node.get("type") == "object"]
    for path, node in sections:
        if "x-kind" in node:
            continue
        assert node["additionalProperties"] is False, path
        assert node["patternProperties"] == {"^x-": True}, path


@pytest.mark.parametrize(
    ("document", "place"),
    [
        ({"vocabulary": 1, "drain": {"invert": 1.0}}, ["drain"]),
        ({"vocabulary": 1, "levles": {}}, []),
        ({"vocabulary": 1, "drain": {"corners": [{"invert": 1.0}]}}, ["drain", "corners", 0]),
        ({"vocabulary": 1, "footing": {"width": 0.0}}, ["footing", "width"]),
        ({"vocabulary": 1, "coat": {"solids": 62}}, ["coat", "solids"]),
        ({"vocabulary": 1, "wall": {"type": "straw"}}, ["wall", "type"]),
        ({"vocabulary": 1, "drain": {"holes": ["sideways"]}}, ["drain", "holes", 0]),
        ({"vocabulary": 2}, ["vocabulary"]),
        ({}, []),
    ],
)
def test_a_fault_is_found_at_its_leaf(document: dict[str, Any], place: list[Any]) -> None:
    (error,) = Draft202012Validator(SCHEMA).iter_errors(document)
    assert list(error.absolute_path) == place


def test_a_plain_document_is_accepted() -> None:
    document = {
        "vocabulary": 1,
        "paper": "submittal",
        "levels": {"unit": "ft", "floor_top": 28.04, "slab_underside": -2.74},
        "soil": {"bank": {"gradation": {"No. 200": 0.72}}},
        "drain": {"present": True, "holes": ["down"], "corners": [{"id": "NE", "invert": 27.79}]},
        "fabrics": [],
        "grade": {"sides": [{"id": "north", "fall": -0.05, "in_distance": 3.048}]},
        "measured": {"by": "R. Halloway", "levels": {"footing_top": 27.9}},
        "x-ours": {"anything": [1]},
    }
    assert list(Draft202012Validator(SCHEMA).iter_errors(document)) == []


def test_every_leaf_says_what_it_is() -> None:
    for path, leaf in LEAVES.items():
        assert leaf["title"], path
        assert leaf["description"].endswith("."), path
        assert leaf["examples"], path
        assert leaf["x-kind"] in KINDS, path
        assert leaf["x-nature"] in ("choice", "fact", "record"), path


def test_every_section_and_list_has_a_title_and_a_description() -> None:
    for path, node in NODES:
        if path.endswith(".each"):
            continue
        assert node["title"], path
        assert node["description"], path


def test_every_list_names_its_items() -> None:
    for path, node in NODES:
        if node["type"] == "array" and "x-kind" not in node:
            assert node["x-key"], path
            assert resolve(node["items"])["required"] == ["id"], path


def test_every_number_that_is_measured_has_a_tolerance() -> None:
    for path, leaf in LEAVES.items():
        if leaf["x-nature"] == "fact" and leaf["x-kind"] in NUMBER_KINDS - NOT_READ_ON_SITE:
            assert leaf.get("x-tolerance"), path


def test_every_tolerance_reads_as_a_number_of_its_kind() -> None:
    for leaf in LEAVES.values():
        if "x-tolerance" in leaf:
            value = read_quantity(leaf["x-kind"], leaf["x-tolerance"]).value
            assert isinstance(value, float)
            assert value > 0


def test_only_numbers_have_a_tolerance() -> None:
    assert [
        p
        for p, leaf in LEAVES.items()
        if "x-tolerance" in leaf and leaf["x-kind"] not in NUMBER_KINDS
    ] == []


def test_what_may_be_changed_on_paper_is_never_a_name_or_a_signature() -> None:
    for path, leaf in LEAVES.items():
        if re.search(r"(^|_)(by|signed|approved|approval|date|person|id)$", path.split(".")[-1]):
            assert leaf["x-nature"] != "choice", path


# A promise about any of these would let somebody be hurt.
LIFE = {
    "excavation": (
        "protection",
        "run_per_rise",
        "no_sign_of_cave_in",
        "osha_type",
        "designed_by",
        "system_data",
        "utilities_located",
        "edge_protection",
        "spoil_setback",
        "egress_spacing",
        "ladder_above_edge",
        "water",
        "water_watched_by",
        "competent_person",
        "daily_inspection",
        "adjacent_structure_distance",
        "adjacent_base_level",
    ),
    "backfill": (
        "deck_on",
        "deck_fixed",
        "braced_by",
        "slab_placed",
        "base_key",
        "people_clear",
        "machine_distance",
    ),
    "wall": ("poured",),
    "coat": (
        "ventilated",
        "flames_kept_out",
        "air_tested",
    ),
    "footing": ("heater_vented",),
    "sump": ("ground_fault",),
}


def test_what_protects_people_is_a_fact() -> None:
    for section, keys in LIFE.items():
        for key in keys:
            assert LEAVES[f"{section}.{key}"]["x-nature"] == "fact", key


def test_titles_are_unique_inside_a_section() -> None:
    titles = Counter(
        (path.split(".")[0] if "." in path else "", leaf["title"])
        for path, leaf in LEAVES.items()
        # What was measured goes by the names of what was asked for.
        if not path.startswith("measured.")
    )
    assert [title for title, times in titles.items() if times > 1] == []


def test_every_word_is_lower_snake_case() -> None:
    for path, leaf in WORDY.items():
        assert enum(leaf), path
        assert len(set(enum(leaf))) == len(enum(leaf)), path
        for one in enum(leaf):
            assert re.fullmatch(r"[a-z][a-z0-9]*(_[a-z0-9]+)*", one), f"{path}: {one}"


def test_a_list_of_words_says_none_by_being_empty() -> None:
    assert [
        path for path, leaf in WORDY.items() if leaf["x-kind"] == "words" and "none" in enum(leaf)
    ] == []


def test_every_synonym_means_a_word_of_its_leaf_and_only_one() -> None:
    for path, leaf in LEAVES.items():
        synonyms = leaf.get("x-synonyms", {})
        said = [plain(word) for word in synonyms]
        assert len(set(said)) == len(said), path
        assert not set(said) & {plain(word) for word in enum(leaf)}, path
        assert set(synonyms.values()) <= set(enum(leaf)), path


def test_a_word_with_two_meanings_is_nobodys_synonym() -> None:
    two = {plain(word) for word in AMBIGUOUS}
    for path, leaf in LEAVES.items():
        assert not two & {plain(word) for word in leaf.get("x-synonyms", {})}, path
        assert not two & {plain(word) for word in enum(leaf)}, path


def test_both_meanings_of_a_word_are_of_the_vocabulary() -> None:
    known = {word for leaf in WORDY.values() for word in enum(leaf)}
    known |= {step for path in LEAVES for step in path.split(".")}
    for word, meanings in AMBIGUOUS.items():
        assert len(meanings) > 1, word
        assert set(meanings) <= known, word


@pytest.mark.parametrize(
    "word",
    ["tar", "backflow", "cant", "clear stone", "fat clay", "areaway", "washed stone", "benchmark"],
)
def test_words_that_mislead_on_site_are_asked_about(word: str) -> None:
    assert word in AMBIGUOUS


def test_a_key_left_out_is_read_only_as_its_kind_allows() -> None:
    for path, leaf in LEAVES.items():
        if "x-if-absent" in leaf:
            assert set(leaf["x-if-absent"]) == {"value", "reads"}, path
            value = leaf["x-if-absent"]["value"]
            assert value == "not applicable" or (value is False and leaf["x-kind"] == "yes_no"), (
                path
            )


def test_examples_are_of_their_kind() -> None:
    for path, leaf in LEAVES.items():
        for example in leaf["examples"]:
            if leaf["x-kind"] == "curve":
                for sieve, share in example.items():
                    read_quantity("length", sieve)
                    read_quantity("fraction", share)
                continue
            assert isinstance(example, str), path
            if leaf["x-kind"] in NUMBER_KINDS:
                read_quantity(leaf["x-kind"], example, "ft")
            if leaf["x-kind"] == "date":
                datetime.date.fromisoformat(example)
            if leaf["x-kind"] == "yes_no":
                assert example in ("yes", "no"), path
            if leaf["x-kind"] in ("word", "words"):
                known = {plain(word) for word in [*enum(leaf), *leaf.get("x-synonyms", {})]}
                assert plain(example) in known | {"none"}, f"{path}: {example}"
