"""What holds for every sheet: XML, text as text, keynotes, sizes of type, nothing from outside."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from checker.judging.review_data import NOT_MET
from checker.showing.drawing import PICTURES, draw
from checker.showing.drawing.keynotes import PLACES, keynotes_of
from checker.showing.text import by_weight
from tests.showing.drawing.conftest import ROOT, SVG, Drawn, pairs_of, rulebook, sheet_of

Sheet = Callable[..., Drawn]

SPECS = sorted((ROOT / "specs").glob("*.yaml"))
PAPERS = sorted((ROOT / "tests" / "causes").glob("*.yaml"))
HOSTILE = "<script>alert('a & b')</script>]]>\u202e\x1b[31m\ufffe"


def numbers(drawing: Drawn, sort: str) -> list[int]:
    found = [re.fullmatch(rf"sheet-\d+-{sort}-(\d+)", name or "") for name in drawing.parts]
    return sorted(int(match[1]) for match in found if match)


@pytest.mark.parametrize("file", [*SPECS, *PAPERS], ids=lambda file: file.stem)
def test_every_finding_that_is_not_met_has_one_keynote_and_one_line(file: Path) -> None:
    for pair in pairs_of(file):
        drawing = Drawn(draw([pair]))
        expected = list(range(1, len(pair[1].of(NOT_MET)) + 1))
        assert numbers(drawing, "keynote") == expected
        assert numbers(drawing, "legend") == expected


@pytest.mark.parametrize("picture", PICTURES)
@pytest.mark.parametrize("name", [file.stem for file in SPECS])
def test_ids_are_unique_and_type_is_never_smaller_than_seven_points(
    name: str, picture: str
) -> None:
    drawing = sheet_of(name, picture)
    ids = re.findall(r'\bid="([^"]*)"', drawing.text)
    assert len(ids) == len(set(ids))
    sizes = [float(part.get("font-size") or 0) for part in drawing.root.iter(f"{SVG}text")]
    assert sizes
    assert min(sizes) >= 7


def test_keynotes_are_numbered_as_the_review_numbers_them() -> None:
    ((_, review),) = pairs_of(ROOT / "specs" / "bad.yaml")
    notes = keynotes_of(review)
    assert [note.finding for note in notes] == by_weight(review.of(NOT_MET))
    assert [note.number for note in notes] == list(range(1, len(notes) + 1))


def test_legend_gives_what_is_shown_needed_and_how_far_off(sheet: Sheet) -> None:
    ((_, review),) = pairs_of(ROOT / "specs" / "bad.yaml")
    (note,) = [one for one in keynotes_of(review) if one.finding.rule == "drain.above-slab"]
    (compared,) = note.finding.compared
    text = " ".join(sheet("bad").texts())
    assert compared.off_by
    assert (
        f"{note.number} Drain too high to protect the floor shown {compared.shown}; "
        f"needed {compared.needed}; off by {compared.off_by}"
    ) in text


def test_a_long_legend_goes_on_over_a_further_sheet(sheet: Sheet) -> None:
    bad = sheet("bad")
    assert "Keynotes, continued" in bad.texts()
    assert bad.root.get("height") == "17in"


def test_every_section_of_the_rule_book_has_a_place() -> None:
    assert {rule.id.partition(".")[0] for rule in rulebook().rules} <= PLACES.keys()
    named = {name for name in PLACES if "." in name}
    assert named <= {rule.id for rule in rulebook().rules}


@pytest.mark.parametrize("picture", PICTURES)
def test_the_same_spec_gives_the_same_bytes(picture: str) -> None:
    once, twice = (draw(pairs_of(ROOT / "specs" / "bad.yaml"), picture) for _ in range(2))
    assert once == twice


@pytest.mark.parametrize("picture", PICTURES)
def test_text_from_a_spec_stays_text(drawn: Sheet, picture: str) -> None:
    drawing = drawn(
        {
            "job": {"name": HOSTILE, "lot": '"/><a href="x">'},
            "levels": {"unit": "ft", "datum": HOSTILE, "footing_top": "91"},
            "wall": {"penetrations": [{"id": '"><script>', "level": "95"}]},
            "drain": {
                "present": "yes",
                "corners": [
                    {"id": "<b>", "invert": "91", "run_to_next": "9 ft"},
                    {"id": "c", "invert": "90", "run_to_next": "9 ft"},
                ],
            },
            "grade": {"sides": [{"id": "&amp;", "fall": "1 in", "in_distance": "9 ft"}]},
            "fabrics": [{"id": "x onload=y", "kind": "woven", "position": "around_stone"}],
        },
        picture,
    )
    tags = {part.tag.removeprefix(SVG) for part in drawing.root.iter()}
    assert tags <= {
        "svg", "title", "defs", "pattern", "path", "rect", "circle", "g", "line", "polyline",
        "polygon", "text", "clipPath",
    }  # fmt: skip
    assert any("<script>" in text for text in drawing.texts())
    assert "\u202e" not in "".join(drawing.texts())
    assert drawing.text.isascii()


@pytest.mark.parametrize("picture", PICTURES)
def test_nothing_is_fetched_and_nothing_runs(sheet: Sheet, picture: str) -> None:
    text = sheet("bad", picture).text
    assert re.findall(r"url\((?!#)", text) == []
    for word in ("href", "<script", "<style", "@import", "onload"):
        assert word not in text
    assert set(re.findall(r'font-family="([^"]*)"', text)) == {"sans-serif"}
    assert text.count("http") == 1  # the name of the namespace


def test_names_of_two_thousand_letters_are_cut_to_their_cells(drawn: Sheet) -> None:
    name = "W" * 2000
    drawing = drawn({"job": {"name": name}, "levels": {"unit": "ft", "datum": name}})
    assert name not in drawing.texts()
    assert max(len(text) for text in drawing.texts()) < 120


def test_sheet_says_whose_it_is_and_what_it_is_not(sheet: Sheet) -> None:
    texts = sheet("good").texts()
    for text in ("Quillwater Lane", "14", "nail in east kerb = 100.00", "submittal, desk",
                 "2031-04-16", "NOT FOR CONSTRUCTION"):  # fmt: skip
        assert text in texts
    assert "is not a release." in " ".join(texts)


def test_no_date_is_made_up(drawn: Sheet) -> None:
    assert "date" not in drawn({"job": {"name": "Reed Yard"}}).texts()


def test_each_assembly_of_a_file_has_a_sheet(sheet: Sheet) -> None:
    walkout = sheet("walkout")
    assert {"sheet-1-all", "sheet-2-all"} <= walkout.parts.keys()
    assert walkout.parts["sheet-2-all"].get("transform") == "translate(0 612)"


def test_an_unknown_picture_is_refused() -> None:
    with pytest.raises(ValueError, match="no picture 'front'"):
        draw([], "front")
