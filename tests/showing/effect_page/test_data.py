"""The effect as JSON: it obeys its schema, leaves nothing out, and tells an edit once."""

from __future__ import annotations

import json
from typing import Any

import jsonschema
import pytest

from checker.data import load_json
from tests.judging.effects import INCH, LOT, Collection
from tests.showing.effect_page.conftest import shown

SCHEMA = load_json("effect.schema.json")


def loaded(collection: Collection) -> Any:
    return json.loads(shown(collection.effect(), "json", collection))


def is_valid(report: Any) -> bool:
    return jsonschema.Draft202012Validator(SCHEMA).is_valid(report)


def test_schema_is_a_schema_and_knows_comparisons_as_a_review_does() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["$defs"]["compared"] == load_json("review.schema.json")["$defs"]["compared"]


def test_an_effect_obeys_its_schema(thicker: Collection) -> None:
    (thicker.after / "lot-17.yaml").write_text("vocabulary: 3\n", encoding="utf-8")
    (thicker.after / "lot-18.yaml").unlink()
    thicker.lot(19)
    (thicker.before / "lot-19.yaml").unlink()
    report = loaded(thicker)
    jsonschema.Draft202012Validator(SCHEMA).validate(report)
    assert [len(report[key]) for key in ("same", "gone", "new", "unread")] == [1, 1, 1, 1]
    assert report["unread"][0]["side"] == "after"


@pytest.mark.parametrize("path", ["edits 0 file", "lots 0 way", "lots 0 room 0 change", "counts"])
def test_schema_misses_what_is_left_out(thicker: Collection, path: str) -> None:
    report = loaded(thicker)
    *above, last = [int(step) if step.isdigit() else step for step in path.split()]
    held = report
    for step in above:
        held = held[step]
    del held[last]
    assert not is_valid(report)


def test_an_edit_is_told_once_and_named_by_every_lot_it_reaches(thicker: Collection) -> None:
    report = loaded(thicker)
    (edit,) = report["edits"]
    assert (edit["path"], edit["before"]["text"], edit["after"]["text"]) == (
        "drain.outside_diameter", "4.215 in", "5.5 in",
    )  # fmt: skip
    assert [lot["edits"] for lot in report["lots"]] == [[0]] * 4
    assert report["counts"]["worse"] == 4
    assert report["counts"]["same"] == 1


def test_margins_are_numbers(thicker: Collection) -> None:
    lot = next(lot for lot in loaded(thicker)["lots"] if lot["after"]["file"] == LOT)
    (above,) = [one for one in lot["findings"] if one["rule"] == "drain.above-slab"]
    (was,), (now,) = (above[side]["compared"] for side in ("before", "after"))
    assert was["margin"] == pytest.approx(0.945 * INCH, abs=1e-6)
    assert now["margin"] == pytest.approx(-0.34 * INCH, abs=1e-6)
    assert (was["kind"], was["unit"], now["outcome"]) == ("level", "in", "not met")
    stone = next(one for one in lot["room"] if one["rule"] == "stone.parts-agree")
    assert stone["change"] == pytest.approx(-1.285 * INCH, abs=1e-6)
    assert stone["tight"]


def test_text_of_a_spec_is_kept_and_harmless_on_a_terminal(hostile: Collection) -> None:
    written = shown(hostile.effect(), "json", hostile)
    assert all(line.isprintable() and line.isascii() for line in written.split("\n"))
    assert "<script>alert(1)</script>" in json.loads(written)["lots"][0]["after"]["assembly"]
