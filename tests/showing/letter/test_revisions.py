"""The second round: numbers stay, what is answered is closed, what changed quietly is said."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any

import pytest

from checker import load_rulebook, review
from checker.showing.json_report import as_json as review_as_json
from checker.showing.letter import Earlier, Letter, in_form, letter_of, load_earlier, matching
from checker.showing.letter.contents import NEW, OPEN_AGAIN, STILL_OPEN
from tests.support import spec_of

FIRST: dict[str, Any] = {
    "job": {"name": "Quillwater Lane", "lot": "14", "as_of": "2031-04-11"},
    "documents": [{"id": "SUB-03", "type": "submittal", "trade": "drain", "rev": "1"}],
    "levels": {"unit": "ft", "slab_underside": "91.67", "footing_top": "91.67",
               "footing_underside": "90.67"},
    "drain": {"present": "yes", "position": "beside", "outside_diameter": "4.2 in",
              "wall_thickness": "0.1 in", "diameter": "4 in",
              "corners": [{"id": "NE", "invert": "91.60"}]},
    "coat": {"class": "waterproofing"},
    "sheet": {"kind": "dimpled_plain", "side_lap": "6 in"},
}  # fmt: skip


def revised(*changes: tuple[str, Any]) -> dict[str, Any]:
    mapping = copy.deepcopy(FIRST)
    for path, value in changes:
        section, key = path.split(".")
        mapping.setdefault(section, {})[key] = value
    return mapping


def write(mapping: dict[str, Any], earlier: Earlier | None = None, trade: str = "") -> Letter:
    spec = spec_of(mapping, paper="submittal")
    return letter_of(spec, review(spec, load_rulebook()), trade, earlier)


def kept(letter: Letter, folder: Path) -> Earlier:
    """Return a letter as the next one reads it."""
    file = folder / "letter.json"
    file.write_text(str(in_form([letter], "json")), encoding="utf-8")
    (earlier,) = load_earlier(file)
    return earlier


def numbers(letter: Letter) -> dict[str, int]:
    return {item.key: item.number for item in letter.items}


LOWERED = ("drain.corners", [{"id": "NE", "invert": "91.20"}])


def test_numbers_stay_and_what_is_answered_is_closed(tmp_path: Path) -> None:
    first = write(FIRST)
    second = write(revised(LOWERED), kept(first, tmp_path))
    # Crown 91.20 + 4.1/12 = 91.542 ft, under the slab at 91.67: this one is answered.
    key = "rule drain.above-slab"
    assert key in numbers(first)
    assert key not in numbers(second)
    (closed,) = [one for one in second.closed if one.number == numbers(first)[key]]
    assert closed.how == "answered: now met"
    both = numbers(first).keys() & numbers(second).keys()
    assert both
    assert all(numbers(first)[one] == numbers(second)[one] for one in both)
    assert {one.revision for one in second.items if one.key in both} == {STILL_OPEN}


def test_a_number_is_never_given_twice(tmp_path: Path) -> None:
    first = write(FIRST)
    second = write(revised(LOWERED), kept(first, tmp_path))
    third = write(revised(LOWERED, ("coat.class", "none")), kept(second, tmp_path))
    fresh = [one for one in third.items if one.key not in {**numbers(first), **numbers(second)}]
    assert fresh
    assert all(one.number > len(first.items) for one in fresh)
    assert {one.revision.partition(",")[0] for one in fresh} == {NEW}
    every = list(third.numbers.values())
    assert len(every) == len(set(every))


def test_what_comes_back_has_its_old_number(tmp_path: Path) -> None:
    first = write(FIRST)
    second = write(revised(LOWERED), kept(first, tmp_path))
    third = write(FIRST, kept(second, tmp_path))
    (item,) = [one for one in third.items if one.key == "rule drain.above-slab"]
    assert item.number == numbers(first)["rule drain.above-slab"]
    assert item.revision == OPEN_AGAIN


def test_an_answer_that_fails_is_a_new_item_that_names_the_question(tmp_path: Path) -> None:
    first = write(FIRST)
    asked = numbers(first)["value stone.bedding"]
    second = write(revised(("stone.bedding", "1 in")), kept(first, tmp_path))
    (item,) = [one for one in second.items if one.key == "rule stone.bedding"]
    assert item.revision == f"new, follows from the answer to item {asked}"
    assert any(one.number == asked and one.how == "answered: 1 in" for one in second.closed)


def test_what_nobody_asked_to_change_is_said(tmp_path: Path) -> None:
    first = write(FIRST)
    second = write(revised(("sheet.side_lap", "7 in"), LOWERED), kept(first, tmp_path))
    assert [(one.path, one.was, one.now) for one in second.changed] == [
        ("sheet.side_lap", "6 in", "7 in")
    ]
    for form in ("markdown", "html"):
        assert "Changed though nobody asked for it" in str(in_form([second], form))


def test_what_is_left_out_or_added_is_said_too(tmp_path: Path) -> None:
    mapping = revised(("sheet.thickness", "8 mm"))
    del mapping["sheet"]["side_lap"]
    second = write(mapping, kept(write(FIRST), tmp_path))
    told = {(one.path, one.was, one.now) for one in second.changed}
    assert told == {
        ("sheet.side_lap", "6 in", "not shown"),
        ("sheet.thickness", "not shown", "8 mm"),
    }


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("sheet.side_lap", '6"'),
        ("sheet.side_lap", "0.5 ft"),
        ("coat.class", "Waterproofing"),
        ("job.as_of", "2031-05-02"),
        ("documents.rev", "2"),
    ],
)
def test_the_same_written_otherwise_is_no_change(tmp_path: Path, path: str, value: str) -> None:
    mapping = copy.deepcopy(FIRST)
    if path == "documents.rev":
        mapping["documents"][0]["rev"] = value
    else:
        section, key = path.split(".")
        mapping[section][key] = value
    second = write(mapping, kept(write(FIRST), tmp_path))
    assert second.changed == ()


def test_an_earlier_review_gives_the_same_numbers_as_its_letter(tmp_path: Path) -> None:
    spec = spec_of(FIRST, paper="submittal")
    judged = review(spec, load_rulebook())
    file = tmp_path / "review.json"
    file.write_text(review_as_json([judged]), encoding="utf-8")
    (from_review,) = load_earlier(file)
    from_letter = kept(write(FIRST), tmp_path)
    assert from_review.numbers == from_letter.numbers
    assert from_review.open_as == from_letter.open_as
    second = write(revised(("sheet.side_lap", "7 in"), LOWERED), from_review)
    assert [one.path for one in second.changed] == ["sheet.side_lap"]


def test_a_trade_sees_its_own_changes_and_closed_items(tmp_path: Path) -> None:
    earlier = kept(write(FIRST), tmp_path)
    mapping = revised(("sheet.side_lap", "7 in"), LOWERED)
    drain = write(mapping, earlier, "drain")
    coating = write(mapping, earlier, "coating")
    assert "rule drain.above-slab" in earlier.open_as
    assert any(one.title.startswith("Drain too high") for one in drain.closed)
    assert not any(one.title.startswith("Drain too high") for one in coating.closed)
    assert coating.changed == ()


def test_an_assembly_is_found_by_its_name_or_by_being_alone(tmp_path: Path) -> None:
    one = kept(write(FIRST), tmp_path)
    assert matching((one,), "Quillwater Lane, lot 14", alone=False) is one
    assert matching((one,), "lot 14 revised", alone=True) is one
    assert matching((one,), "lot 14 revised", alone=False) is None


@pytest.mark.parametrize(
    "text",
    ["", "{", "[]", "{}", '{"letter_format": 99}', '{"letter_format": 1}',
     '{"letter_format": 1, "letters": [{"assembly": "x"}]}',
     '{"review_format": 1, "reviews": [{"findings": 3}]}',
     "[" * 100_000],
    ids=lambda text: text[:40],
)  # fmt: skip
def test_what_is_neither_letter_nor_review_is_refused(tmp_path: Path, text: str) -> None:
    file = tmp_path / "x.json"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(ValueError, match="x.json: "):
        load_earlier(file)


def test_the_json_of_a_letter_to_one_trade_keeps_every_number(tmp_path: Path) -> None:
    whole, part = write(FIRST), write(FIRST, None, "coating")
    assert len(part.items) < len(whole.items)
    told = json.loads(str(in_form([part], "json")))["letters"][0]
    assert told["numbers"] == {item.key: item.number for item in whole.items}
    assert kept(part, tmp_path).open_as.keys() == whole.open_as.keys()
