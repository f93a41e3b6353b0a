"""Drawings of an assembly as sheets of working drawings in SVG.

A drawing is made of a spec and its review. It takes every number from them and judges nothing.
"""

from __future__ import annotations

from checker.judging.review_data import Review
from checker.reading.spec import Spec
from checker.showing.drawing.figures import Figures
from checker.showing.drawing.ladder import draw_ladder
from checker.showing.drawing.plan import draw_plan
from checker.showing.drawing.section import draw_section
from checker.showing.drawing.sheet import Sheets
from checker.showing.drawing.svg import written

PICTURES = ("section", "plan", "levels")


def draw(pairs: list[tuple[Spec, Review]], picture: str = "section") -> str:
    """Return assemblies with their reviews as one SVG, a sheet or more for each.

    The same pairs always give the same text. Raises ValueError for an unknown picture.
    """
    if picture not in PICTURES:
        raise ValueError(f"there is no picture '{picture}'; there are {', '.join(PICTURES)}")
    sheets = Sheets("; ".join(review.assembly for _, review in pairs))
    put = {"section": draw_section, "plan": draw_plan, "levels": draw_ladder}[picture]
    for spec, review in pairs:
        put(sheets, Figures(spec), review)
    return written(sheets.drawing)
