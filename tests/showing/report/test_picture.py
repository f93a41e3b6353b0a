"""The drawing on a page: its names are its own, and it claims no scale."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

from checker.showing.drawing import draw
from checker.showing.report.picture import section_picture
from tests.showing.report.conftest import Pairs

SCALE = re.compile(r'"= *1\'-0"|" = 1\'|\b1:\d+$')


def test_drawing_has_scales_that_the_page_does_not(bad: Pairs) -> None:
    ((spec, review),) = bad
    texts = [one.text or "" for one in ET.fromstring(draw(bad)).iter() if one.tag.endswith("text")]
    assert any(SCALE.search(text) for text in texts)
    picture = section_picture(spec, review, "s1-")
    texts = [one.text or "" for one in ET.fromstring(picture.svg).iter("text")]
    assert "floor" in texts
    assert [text for text in texts if SCALE.search(text)] == []


def test_names_begin_with_the_prefix_and_every_hatch_is_there(bad: Pairs) -> None:
    ((spec, review),) = bad
    picture = section_picture(spec, review, "s7-")
    names = {one.get("id") for one in ET.fromstring(picture.svg).iter() if one.get("id")}
    assert names
    assert {name for name in names if not str(name).startswith("s7-")} == set()
    assert picture.materials
    for material in picture.materials:
        assert material.fill.removeprefix("url(#").removesuffix(")") in names


def test_every_fault_has_its_number_in_the_drawing_or_is_said_to_be_of_the_papers(
    bad: Pairs,
) -> None:
    ((spec, review),) = bad
    picture = section_picture(spec, review, "s1-")
    drawn = {int(n) for n in re.findall(r'id="s1-[\w-]*keynote-(\d+)"', picture.svg)}
    loose = next(note for note in picture.notes if "of the papers" in note)
    papers = {int(number) for number in re.findall(r"\d+", loose)}
    assert drawn | papers == set(range(1, len(review.of("not met")) + 1))
    assert drawn & papers == set()


def test_safety_is_not_said_twice(bad: Pairs) -> None:
    ((spec, review),) = bad
    notes = " ".join(section_picture(spec, review, "s1-").notes)
    assert review.cautions
    assert "DANGER" not in notes
