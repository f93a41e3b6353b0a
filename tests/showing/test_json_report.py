"""Reviews as JSON: they obey their schema, lose nothing, and come out the same every time."""

from __future__ import annotations

import dataclasses
import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from checker.judging.review_data import Compared, Finding, Review
from checker.showing.json_report import as_json

SCHEMA = json.loads(
    (Path(__file__).parents[2] / "shared" / "review.schema.json").read_text(encoding="utf-8")
)


def loaded(*reviews: Review, accepted: bool = False) -> Any:
    return json.loads(as_json(reviews, accepted=accepted))


def is_valid(report: Any) -> bool:
    return jsonschema.Draft202012Validator(SCHEMA).is_valid(report)


def test_schema_is_a_schema() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


def test_report_obeys_its_schema(review: Review, empty: Review) -> None:
    jsonschema.Draft202012Validator(SCHEMA).validate(loaded(review, empty))
    jsonschema.Draft202012Validator(SCHEMA).validate(loaded())


@pytest.mark.parametrize("field", [*Finding._fields, "open", "fingerprint"])
def test_schema_misses_a_field_that_is_left_out(review: Review, field: str) -> None:
    report = loaded(review)
    del report["reviews"][0]["findings"][0][field]
    assert not is_valid(report)


@pytest.mark.parametrize("field", Compared._fields)
def test_schema_misses_a_figure_that_is_left_out(review: Review, field: str) -> None:
    report = loaded(review)
    del report["reviews"][0]["findings"][0]["compared"][0][field]
    assert not is_valid(report)


@pytest.mark.parametrize(
    ("field", "value"),
    [("outcome", "passed"), ("severity", "high"), ("score", 7), ("rule", "Drain")],
)
def test_schema_refuses_what_no_review_says(review: Review, field: str, value: Any) -> None:
    report = loaded(review)
    report["reviews"][0]["findings"][0][field] = value
    assert not is_valid(report)


def test_every_word_of_the_review_is_there(review: Review) -> None:
    (report,) = loaded(review)["reviews"]
    assert report["assembly"] == "Quillwater Lane, lot 14"
    assert [one["rule"] for one in report["findings"]] == [one.rule for one in review.findings]
    assert [one["text"] for one in report["cautions"]] == [one.text for one in review.cautions]
    too_high = next(one for one in report["findings"] if one["rule"] == "drain.above-slab")
    assert too_high["compared"][0] == {
        "path": "drain.crown_high", "title": "crown of the pipe at its highest corner",
        "outcome": "not met", "shown": "91.92 ft", "needed": "below underside of slab 91.67 ft",
        "off_by": "3 in", "room": "", "is_quantity": True,
        "margin": -0.0762, "kind": "level", "unit": "in",
    }  # fmt: skip
    assert too_high["places"][0]["line"] == 41
    assert too_high["elsewhere"][0]["cited"][0]["ref"] == "o-reg-332-12"
    assert report["questions"][0]["rules"] == ["site.high-water-missing", "levels.floor-near-water"]


def test_counts_and_closing_agree_with_the_findings(review: Review, empty: Review) -> None:
    report = loaded(review, empty)
    assert report["reviews"][0]["counts"] == {
        "met": 20, "not met": 3, "not shown": 6, "does not apply": 4,
    }  # fmt: skip
    assert report["reviews"][1]["closing"] == "Nothing could be judged. This is not a release."
    assert report["closing"] == (
        "20 met, 3 not met, 11 could not be judged. This is not a release."
    )


def test_letting_pass_what_is_not_shown_is_said(review: Review) -> None:
    assert "(let pass)" in loaded(review, accepted=True)["closing"]
    assert "(let pass)" in loaded(review, accepted=True)["reviews"][0]["closing"]


def test_keys_stand_in_the_order_of_the_record(review: Review) -> None:
    (report,) = loaded(review)["reviews"]
    assert tuple(report["findings"][0]) == (*Finding._fields, "open", "fingerprint")
    assert list(report)[:3] == ["file", "assembly", "paper"]
    assert as_json([review]) == as_json([review])


def test_text_of_a_spec_is_kept_and_harmless_on_a_terminal(empty: Review) -> None:
    evil = "\x1b[2J\x9b31m\u202elot\n\ud800"
    written = as_json([dataclasses.replace(empty, assembly=evil)])
    assert all(one.isprintable() and one.isascii() for one in written.split("\n"))
    assert json.loads(written)["reviews"][0]["assembly"] == evil
