"""The section on the page: the drawing without border, legend and title block.

The page round it has these as text, where they can be read on a phone and by a screen reader.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import NamedTuple

from checker.judging.review_data import Review
from checker.reading.spec import Spec
from checker.showing.drawing import hatches, sheet
from checker.showing.drawing.figures import Figures
from checker.showing.drawing.section import draw_section
from checker.showing.drawing.svg import Canvas, number

# What of the drawing's sheet is picture: all but the column of the legend and the title block.
_WINDOW = (sheet.LEFT, sheet.TOP, sheet.RIGHT - sheet.LEFT, sheet.BOTTOM - sheet.TOP)


# A scale such as 1/4" = 1'-0" holds on paper of one size; a page is shown and printed at any.
_BY_THE_BARS = "Take sizes from the scale bars: a page has no scale of its own."


class Material(NamedTuple):
    """A hatch that the picture uses: what it stands for, and the paint it is filled with."""

    name: str
    fill: str


class Picture(NamedTuple):
    """A picture as SVG for a page, every text in it escaped, and what is said about it there."""

    svg: str
    title: str
    materials: tuple[Material, ...]
    notes: tuple[str, ...]


class _Bare(sheet.Sheets):
    """Takes a picture and leaves border, legend and title block to the page."""

    page: sheet.Page

    def finish(self, canvas: Canvas, page: sheet.Page, job: sheet.Job) -> None:
        self.page = page


def section_picture(spec: Spec, review: Review, prefix: str) -> Picture:
    """Draw the section; `prefix` keeps its names apart from those of other pictures on a page."""
    bare = _Bare(f"Section of {review.assembly}")
    draw_section(bare, Figures(spec), review)
    drawing = bare.drawing
    for size in ("width", "height", "xmlns"):
        drawing.attrib.pop(size, None)
    drawing.set("viewBox", " ".join(number(one) for one in _WINDOW))
    for element in drawing.iter():
        _rename(element, prefix)
    page = bare.page
    _unscaled(drawing, page.scale)
    materials = [
        Material(hatches.NAMES[name], _renamed(hatches.fill_of(name), prefix))
        for name in page.materials
    ]
    svg = ET.tostring(drawing, encoding="unicode")
    return Picture(svg, page.title, tuple(materials), (*_notes(page, review), _BY_THE_BARS))


def _unscaled(drawing: ET.Element, scale: str) -> None:
    """Take the scales out of a drawing."""
    for parent in drawing.iter():
        for child in list(parent):
            if child.tag == "text" and child.text and child.text in scale.split(" and "):
                parent.remove(child)


def _notes(page: sheet.Page, review: Review) -> list[str]:
    """Return the general notes without the safety block, which stands above, whole."""
    said = {f"{one.signal}: {one.text}" for one in review.cautions}
    loose = ", ".join(str(one) for one in page.loose)
    papers = [f"Keynotes not in the drawing, because they are of the papers: {loose}."]
    return [note for note in page.notes if note not in said] + (papers if loose else [])


def _rename(element: ET.Element, prefix: str) -> None:
    for key, value in element.attrib.items():
        element.set(key, f"{prefix}{value}" if key == "id" else _renamed(value, prefix))


def _renamed(value: str, prefix: str) -> str:
    """Return an attribute, renamed if it points at something else in the drawing."""
    return value.replace("url(#", f"url(#{prefix}", 1) if value.startswith("url(#") else value
