"""The owner's page: only parts that were built, and nothing that could be taken for a warranty."""

from __future__ import annotations

import re
from typing import Any

import pytest

from checker import load_rulebook, review
from checker.showing.owner_page import PARTS, owner_page
from checker.showing.text import closing
from tests.support import spec_of

HOUSE: dict[str, dict[str, Any]] = {
    "The ground round the house": {"grade": {"sides": [
        {"id": "north", "fall": "6 in", "in_distance": "10 ft"}]}},
    "Gutters and leaders": {"roof": {"gutters": "yes"}},
    "The drain's outlet": {"outlets": [{"id": "main", "kind": "daylight"}]},
    "The drain": {"drain": {"cleanouts": "2", "cleanouts_at": ["NE", "SE"]}},
    "The sump and its pump": {"sump": {"present": "yes"}},
    "Window wells and outside stairs": {"wells": [{"id": "W1"}]},
    "Inside": {"wall": {"type": "cast"}},
}  # fmt: skip


def page(mapping: dict[str, Any]) -> str:
    spec = spec_of(mapping)
    return owner_page([(spec, review(spec, load_rulebook(), "handover"))])


def headings(text: str) -> list[str]:
    return [line.removeprefix("## ") for line in text.splitlines() if line.startswith("## ")]


def test_the_parts_of_this_test_are_those_of_the_page() -> None:
    assert [title for title, _ in PARTS] == list(HOUSE)


@pytest.mark.parametrize("title", HOUSE)
def test_only_what_is_there_is_spoken_of(title: str) -> None:
    told = headings(page(HOUSE[title]))
    assert [one for one in told if one in HOUSE] == [title]


def test_what_is_not_there_is_not_spoken_of() -> None:
    text = page({"sump": {"present": "no"}, "roof": {"gutters": "no"}, "outlets": [
        {"id": "main", "kind": "sump"}]})  # fmt: skip
    assert not set(headings(text)) & set(HOUSE)


def test_figures_are_those_of_the_spec() -> None:
    text = page(HOUSE["The ground round the house"] | HOUSE["The drain"])
    assert "north side: it was to fall 6 in within 10 ft of the wall." in text
    assert "2 cleanouts at NE, SE" in text


def test_a_pump_without_power_of_its_own_is_said() -> None:
    text = page({"sump": {"present": "yes", "backup": "none"}})
    assert "When the power fails nothing pumps." in text
    text = page({"sump": {"present": "yes", "backup": ["battery"]}})
    assert "there is: battery. Try it twice a year." in text


def test_nobody_pumps_out_a_flood_in_one_go() -> None:
    assert "Do not pump it out in one go" in " ".join(page(HOUSE["Inside"]).split())


def test_what_an_owner_must_know_and_is_not_shown_is_asked() -> None:
    assert "Where does the water of the footing drain go?" in page({"job": {"lot": "1"}})
    assert "Where does the water of the footing drain go?" not in page(HOUSE["The drain's outlet"])


def test_the_foot_counts_as_the_review_does() -> None:
    spec = spec_of(HOUSE["Inside"])
    judged = review(spec, load_rulebook(), "handover")
    assert closing([judged]) in owner_page([(spec, judged)])


def test_markup_from_a_spec_is_text() -> None:
    text = page({
        "job": {"name": "<script>x</script>", "lot": "*1*"},
        "outlets": [{"id": "[a](b)", "kind": "daylight", "distance_house": "10 ft"}],
        "backfill": {"settlement_plan": "`rm` | <b>"},
        "grade": {"sides": [{"id": "no|rth", "fall": "6 in", "in_distance": "10 ft"}]},
    })  # fmt: skip
    assert "<script>" not in text.replace("\\<script\\>", "")
    assert "\\[a\\](b)" in text
    assert not re.search(r"(?<!\\)[`|]", text)
