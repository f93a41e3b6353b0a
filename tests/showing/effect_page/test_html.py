"""The page as HTML: valid, alone, with the sections of both sides beside each other."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest

from checker.judging.effect_data import WORSE
from checker.showing.effect_page import html
from tests.judging.effects import LOT, Collection
from tests.showing.effect_page.conftest import shown
from tests.showing.report.conftest import classed, parsed, refers_only_to_itself, under, words

SVG = "{http://www.w3.org/2000/svg}"


def page_of(collection: Collection) -> ET.Element:
    return parsed(shown(collection.effect(), "html", collection))


def test_every_finding_stands_on_it_with_what_was_and_what_is(thicker: Collection) -> None:
    page = page_of(thicker)
    lots = classed(page, "lot")
    assert words(under(lots[0], "h3")) == "1. Quillwater Lane, lot 15 (house.yaml)"
    (row,) = [one for one in lots[0].iter("tr") if one.get("data-rule") == "drain.above-slab"]
    assert row.get("data-way") == WORSE
    was, now = (words(cell) for cell in row.iter("td"))
    assert (was, now) == (
        "met 91.59 ft, 0.94 in left",
        "not met 91.70 ft, off by 0.34 in, 1.3 in lost",
    )
    texts = [words(one) for one in under(page, "body").iter("p")]
    assert texts[-1] == "5 compared: 4 worse, 0 better. This is not a release."


def test_a_lot_that_is_worse_is_drawn_before_and_after(thicker: Collection) -> None:
    page = page_of(thicker)
    first, second = classed(page, "lot")[:2]
    for lot in (first, second):
        (pair,) = classed(lot, "pair")
        captions = [words(under(one, "figcaption")).split()[0] for one in pair.iter("figure")]
        assert captions == ["before", "after"]
        assert len(list(pair.iter(f"{SVG}svg"))) == 2
    (pair,) = classed(first, "pair")
    drawings = [words(svg) for svg in pair.iter(f"{SVG}svg")]
    # 91.25 + 4.095/12 and 91.25 + 5.38/12; only the second is noted, because it is not met.
    assert "91.70 ft" in drawings[1]
    assert "91.70 ft" not in drawings[0]
    turned = [words(one) for one in classed(pair, "turned")]
    assert "Drain too high to protect the floor" in " ".join(turned)


def test_a_lot_is_drawn_for_another_wall_and_not_for_another_retarder(
    collection: Collection,
) -> None:
    retarder = collection.edit("retarder_lap: 12 in", "retarder_lap: 14 in").effect()
    page = parsed(shown(retarder, "html", collection))
    assert {lot.way for lot in retarder.lots} & {WORSE} == set()
    assert classed(page, "pair") == []
    thicker = collection.edit("thickness: 10 in", "thickness: 12 in").effect()
    lot = next(lot for lot in thicker.lots if lot.after.file == LOT)
    assert lot.way != WORSE
    assert classed(parsed(shown(thicker, "html", collection)), "pair") != []


def test_no_more_are_drawn_than_a_page_will_hold(
    thicker: Collection, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(html, "MOST_DRAWN", 1)
    page = page_of(thicker)
    assert len(classed(page, "pair")) == 1
    (left,) = [words(one) for one in classed(page, "names") if "Not drawn" in words(one)]
    assert "HF-FDN-02 rev C, the standard itself" in left


def test_page_is_valid_and_asks_for_nothing(thicker: Collection) -> None:
    text = shown(thicker.effect(), "html", thicker)
    page = parsed(text)
    refers_only_to_itself(page)
    assert list(page.iter("script")) == []
    assert re.search(r"url\((?!#)|@import", text) is None
    assert text.isascii()


def test_headings_go_down_one_level_at_a_time(thicker: Collection) -> None:
    page = page_of(thicker)
    levels = [int(one.tag[1]) for one in page.iter() if re.fullmatch(r"h[1-6]", str(one.tag))]
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in zip(levels, levels[1:], strict=False))
    for table in page.iter("table"):
        assert all(head.get("scope") for head in table.iter("th"))


def test_a_name_is_text_everywhere(hostile: Collection) -> None:
    text = shown(hostile.effect(), "html", hostile)
    page = parsed(text)
    assert list(page.iter("script")) == []
    assert list(page.iter("img")) == []
    heads = [words(one) for one in page.iter("h3")]
    assert any("</title><script>alert(1)</script> '\"><img src=x>" in head for head in heads)
    assert any("{{ 7 * 7 }} red turned" in head for head in heads)
    assert "\x1b" not in text
    assert "&#8238;" not in text


def test_an_edited_rule_of_the_house_is_told_in_its_words(collection: Collection) -> None:
    house = "house: Harrow and Fenn Homes\nrules: [rules]\n"
    rule = "- {amends: stone.bedding, reason: soft clay, require: {value: stone.bedding, at least: DEPTH}, sources: house standard}\n"
    for side, depth in ((collection.before, "2 in"), (collection.after, "3 in")):
        (side / ".git").mkdir()
        (side / "rules").mkdir()
        (side / "belowgrade.yaml").write_text(house, encoding="utf-8")
        (side / "rules" / "own.yaml").write_text(rule.replace("DEPTH", depth), encoding="utf-8")
    page = page_of(collection)
    (edited,) = classed(page, "edited")
    assert words(under(edited, "h2")) == "Edited: belowgrade.yaml"
    told = [words(one) for one in edited.iter("dd")]
    assert len(told) == 2
    assert "is at least 2 in" in told[0]
    assert "is at least 3 in" in told[1]
