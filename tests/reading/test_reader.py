"""A spec as read: values in SI, each with its place, its unit and where it came from."""

from __future__ import annotations

from checker.reading.reader import read_specs
from checker.reading.spec import Spec
from checker.values import Range


def read(text: str) -> Spec:
    """Read one assembly."""
    (spec,) = read_specs("vocabulary: 1\n" + text, "lot.yaml")
    return spec


def test_quantity_is_si_and_knows_its_place() -> None:
    shown = read("footing:\n  thickness: 10 in\n").values["footing.thickness"]
    assert shown.value == 0.254
    assert (shown.written, shown.unit, shown.line, shown.column) == ("10 in", "in", 3, 14)


def test_levels_are_plain_numbers_in_the_unit_of_the_datum() -> None:
    spec = read("levels: {unit: ft, floor_top: 92, slab_underside: 91'-8\", footing_top: -1.5}\n")
    assert spec.values["levels.floor_top"].value == 28.0416
    assert spec.values["levels.slab_underside"].value == 27.94
    assert spec.values["levels.footing_top"].value == -0.4572


def test_texts_mean_what_the_schema_says_and_not_what_yaml_guesses() -> None:
    spec = read('job: {lot: "014", as_of: 2031-04-11}\noutlets:\n  - {id: main, leg_slope: 1:50}\n')
    assert spec.values["job.lot"].value == "014"
    assert spec.values["job.as_of"].value == "2031-04-11"
    assert spec.values["outlets.main.leg_slope"].value == 0.02


def test_items_are_called_by_id() -> None:
    spec = read(
        "drain:\n  corners:\n    - {id: NE, invert: 91.16 ft}\n    - {id: SW, invert: 90.86 ft}\n"
    )
    assert spec.lists["drain.corners"] == ("NE", "SW")
    assert spec.values["drain.corners.SW.invert"].line == 5


def test_the_four_words_and_their_site_forms() -> None:
    spec = read("wall: {type: not shown, height: NIC, thickness: TBD, honeycomb: N/A}\n")
    words = [
        spec.values[f"wall.{key}"].word for key in ("type", "height", "thickness", "honeycomb")
    ]
    assert words == ["not shown", "by others", "unknown", "not applicable"]


def test_provenance() -> None:
    text = "wall:\n  thickness: {value: 8 in, from: SUB-03 p2, how: measured, by: R. Halloway, date: 2031-04-20}\n"
    shown = read(text).values["wall.thickness"]
    assert (shown.source, shown.how, shown.by, shown.date) == (
        "SUB-03 p2",
        "measured",
        "R. Halloway",
        "2031-04-20",
    )
    assert shown.seen


def test_measured_without_a_name_is_not_seen() -> None:
    assert (
        not read("wall: {thickness: {value: 8 in, how: measured}}\n").values["wall.thickness"].seen
    )


def test_as_written_is_kept_and_has_no_value() -> None:
    shown = read('drain: {diameter: {as_written: "4", from: SUB-03 p2}}\n').values["drain.diameter"]
    assert (shown.value, shown.written, shown.word) == (None, "4", "not shown")


def test_ranges_and_one_sided_values() -> None:
    spec = read("stone: {bedding: 2 to 4 in}\ncoat: {dry_thickness: 40 mil min}\n")
    assert spec.values["stone.bedding"].value == Range(0.0508, 0.1016)
    assert spec.values["coat.dry_thickness"].value == Range(0.001016, float("inf"))


def test_words_without_regard_to_case_and_hyphens_and_synonyms_are_noted() -> None:
    spec = read("footing: {base_condition: Un-Disturbed}\nwall: {type: CAST}\n")
    assert spec.values["wall.type"].value == "cast"
    assert spec.notes == ()


def test_none_is_an_answer_for_a_list_that_may_be_empty() -> None:
    spec = read("fabrics: none\n")
    assert spec.lists["fabrics"] == ()


def test_empty_value_is_not_shown() -> None:
    assert read("wall:\n  type:\n").values["wall.type"].word == "not shown"


def test_a_comment_behind_an_empty_value_is_a_comment() -> None:
    shown = read("wall:\n  type:   # asked on Monday\n").values["wall.type"]
    assert (shown.word, shown.written) == ("not shown", "")


def test_several_documents_share_what_the_site_document_says() -> None:
    text = (
        "vocabulary: 1\npaper: site\njob: {name: Quillwater Lane}\nlevels: {unit: ft, floor_top: 92.00}\n"
        "---\nvocabulary: 1\nid: rear\nlevels: {unit: ft, floor_top: 91.00}\n---\nvocabulary: 1\nid: front\n"
    )
    rear, front = read_specs(text, "lot.yaml")
    assert (rear.name, front.name) == ("rear", "front")
    assert rear.values["levels.floor_top"].value == 27.7368
    assert front.values["levels.floor_top"].value == 28.0416
    assert front.values["levels.floor_top"].line == 4


def test_keys_of_the_users_own_are_left_alone() -> None:
    assert (
        "x-note" not in read("x-note: {anything: [1, 2]}\nwall: {x-crew: B, type: cast}\n").values
    )
