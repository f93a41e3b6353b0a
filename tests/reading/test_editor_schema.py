"""What a person's editor underlines, and what it leaves alone."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator

from checker.data import load_json
from checker.reading.editor_schema import editor_schema

JUDGING = load_json("spec.schema.json")
EDITOR = editor_schema(JUDGING)


class EditorLoader(yaml.SafeLoader):
    """YAML 1.2 as editors read it: `yes` is a text, `1:50` is a text, 2031-04-11 is a text."""


EditorLoader.yaml_implicit_resolvers = {
    first: [
        (tag, pattern)
        for tag, pattern in resolvers
        if tag.endswith((":int", ":float")) and first not in ("n", "N", "y", "Y")
    ]
    for first, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}

AS_WRITTEN = """
vocabulary: 1
paper: submittal
based_on: HF-FDN-02 rev C
job:
  name: Quillwater Lane
  lot: 14
  stage: wall stripped
  done: [excavation, forms]
  codes:
    - {id: IRC, edition: 2018, local_amendment: none on file}
levels:
  unit: ft
  datum: nail in east kerb = 100.00
  floor_top: 92.00
  footing_top: 91'-8"
  slab_underside: {value: 91.67, from: S-2, how: on paper}
  seasonal_high_water: not shown
  water_seen: not_applicable
soil:
  bearing: {usc: CL, fines: 72 %}
  bank:
    usc: SP-SM
    gradation: {No. 200: 72 %, 0.002 mm: 0.18}
excavation:
  protection: trench box
  competent_person: {value: R. Halloway, how: measured, by: R. Halloway, date: 2031-04-20}
footing:
  steps: none
drain:
  present: yes
  material: SDR 35
  diameter: {as_written: 4, from: SUB-03 p2}
  holes: down
  slope: "1:200"
  corners:
    - {id: NE, invert: 91.16, run_to_next: 42 ft, x-note: by the porch}
upper_drain: not applicable
fabrics: []
sump: {backup: [battery, second pump], depth: TBD}
outlets: by others
grade:
  sides:
    - {id: east, fall: 5 in, in_distance: 7 ft}
measured:
  by: R. Halloway
  levels: {footing_top: 91.66}
x-ours: anything at all
"""


def faults(document: Any) -> list[list[Any]]:
    """Return the place of each fault."""
    return [
        list(error.absolute_path) for error in Draft202012Validator(EDITOR).iter_errors(document)
    ]


def written(text: str) -> Any:
    return yaml.load("vocabulary: 1\n" + text, EditorLoader)


def leaves(
    node: dict[str, Any], schema: dict[str, Any], path: str = ""
) -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield every key that has a value of its own, with its path."""
    shape = node
    if "$ref" in node:
        target = schema["$defs"][node["$ref"].removeprefix("#/$defs/")]
        # A $ref to a shape of a single value is a leaf; one to a section or list is gone into.
        shape = target if "properties" in target.get("items", target) else node
    if "properties" in shape.get("items", {}):
        shape = shape["items"]
    if "properties" not in shape:
        yield path, node
    for key, child in shape.get("properties", {}).items():
        yield from leaves(child, schema, f"{path}.{key}")


def test_is_a_schema_of_2020_12() -> None:
    Draft202012Validator.check_schema(EDITOR)


def test_leaves_the_judging_schema_alone() -> None:
    before = copy.deepcopy(JUDGING)
    editor_schema(JUDGING)
    assert before == JUDGING


def test_a_document_as_people_write_it_is_not_underlined() -> None:
    assert faults(yaml.load(AS_WRITTEN, EditorLoader)) == []


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("levles: {}", []),
        ("drain: {invert: 91.16}", ["drain"]),
        ("drain: {corners: [{id: NE, level: 91.16}]}", ["drain", "corners", 0]),
        ("drain: {corners: [{invert: 91.16}]}", ["drain", "corners", 0]),
        ("measured: {levels: {pipe: 91.16}}", ["measured", "levels"]),
        ("stone: {bedding: 2}", ["stone", "bedding"]),
        ("drain: {material: straw}", ["drain", "material"]),
        ("drain: {present: perhaps}", ["drain", "present"]),
        ("stone: {bedding: {value: 2 in, page: 3}}", ["stone", "bedding"]),
        ("stone: {bedding: {from: SUB-03}}", ["stone", "bedding"]),
        ("stone: {bedding: {value: 2 in, how: guessed}}", ["stone", "bedding"]),
    ],
)
def test_what_cannot_be_read_is_underlined_where_it_stands(text: str, place: list[Any]) -> None:
    assert faults(written(text)) == [place]


def test_a_spec_without_its_version_is_underlined() -> None:
    assert faults({"paper": "submittal"}) == [[]]


@pytest.mark.parametrize(
    "word",
    [
        "not shown",
        "by others",
        "unknown",
        "not applicable",
        "not_shown",
        "n/a",
        "TBD",
        "VIF",
        "NIC",
    ],
)
@pytest.mark.parametrize(
    "key", ["material", "holes", "diameter", "present", "cleanouts", "slope", "marking"]
)
def test_a_word_may_stand_in_place_of_any_value(word: str, key: str) -> None:
    assert faults({"vocabulary": 1, "drain": {key: word}}) == []


def test_every_synonym_is_accepted_for_its_key() -> None:
    synonyms = JUDGING["$defs"]["coat"]["properties"]["class"]["x-synonyms"]
    assert synonyms
    for said in synonyms:
        assert faults({"vocabulary": 1, "coat": {"class": said}}) == []
        assert (
            faults({"vocabulary": 1, "coat": {"class": {"value": said, "how": "measured"}}}) == []
        )


def test_every_key_of_the_vocabulary_has_its_help() -> None:
    judged = dict(leaves(JUDGING, JUDGING))
    helped = dict(leaves(EDITOR, EDITOR))
    assert list(helped) == list(judged)
    for path, leaf in judged.items():
        assert helped[path]["title"] == leaf["title"], path
        assert helped[path]["description"].startswith(leaf["description"]), path
        assert helped[path]["examples"] == leaf["examples"], path


def test_help_says_how_a_key_left_out_is_read() -> None:
    sides = EDITOR["$defs"]["grade"]["properties"]["sides"]["items"]["properties"]
    assert sides["obstruction_distance"]["description"].endswith(
        "Left out, it reads: no obstruction near this side."
    )


def test_every_example_may_be_written() -> None:
    for path, leaf in leaves(EDITOR, EDITOR):
        for example in leaf["examples"]:
            validator = Draft202012Validator({**leaf, "$defs": EDITOR["$defs"]})
            assert validator.is_valid(example), f"{path}: {example}"
