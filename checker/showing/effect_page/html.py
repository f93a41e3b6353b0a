"""The effect of an edit as one HTML file, with the sections of before and after side by side."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any, NamedTuple

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from checker.judging.effect_data import WORSE, Lot
from checker.judging.review_data import Review
from checker.reading.spec import Spec
from checker.showing.drawing.keynotes import Keynote, keynotes_of
from checker.showing.effect_page.contents import Alike, Contents
from checker.showing.effect_page.names import listed
from checker.showing.effect_page.rows import ROW_WAYS, cells_of, label_of
from checker.showing.lines import clean
from checker.showing.report.picture import Picture, section_picture

# Lots drawn in full: each takes two drawings of some forty thousand characters.
MOST_DRAWN = 12
_IN_FULL = 100
_HERE = Path(__file__).parent
_STYLES = (_HERE.parent / "report" / "style.css", _HERE / "templates" / "effect.css")
_TITLE = re.compile(r"<title>.*?</title>", re.DOTALL)

BothSides = Callable[[Lot], list[tuple[Spec, Review]]]


class Drawn(NamedTuple):
    """One side of a lot as a drawing, with what its numbers mean; `turned` went another way."""

    side: str
    prefix: str
    picture: Picture
    keynotes: tuple[Keynote, ...]
    turned: frozenset[tuple[str, str]]


def as_html(contents: Contents, both: BothSides) -> str:
    """Return the page in plain ASCII; nothing beside it is needed. `both` gives a lot's sides.

    Lots that are worse are drawn, and others where the drawing has changed, up to MOST_DRAWN.
    """
    drawn, left = _draw(contents, both)
    page = _environment().get_template("effect.html.j2").render(
        contents=contents,
        drawn=drawn,
        left=left,
        most=_IN_FULL,
        style="\n".join(file.read_text(encoding="utf-8") for file in _STYLES),
    )  # fmt: skip
    # A browser reads these references in any encoding, and any output can take them.
    return page.encode("ascii", "xmlcharrefreplace").decode("ascii")


def _draw(contents: Contents, both: BothSides) -> tuple[dict[int, list[Drawn]], list[str]]:
    """Return the drawings by the number of their lot, and the names of lots that have none."""
    drawn: dict[int, list[Drawn]] = {}
    left: list[str] = []
    for one in (one for section in contents.sections for one in section.alike[:_IN_FULL]):
        if len(drawn) == MOST_DRAWN:
            left.append(one.name)
            continue
        sides = _sides(one, both(one.lot))
        if one.lot.way == WORSE or _lines(sides[0]) != _lines(sides[1]):
            drawn[one.number] = sides
    return drawn, left


def _sides(alike: Alike, pairs: Iterable[tuple[Spec, Review]]) -> list[Drawn]:
    turned = frozenset((one.finding.rule, one.finding.item) for one in alike.lot.turns)
    return [
        Drawn(
            side, prefix := f"{side}{alike.number}-", section_picture(spec, review, prefix),
            tuple(keynotes_of(review)), turned,
        )
        for side, (spec, review) in zip(("before", "after"), pairs, strict=True)
    ]  # fmt: skip


def _lines(drawn: Drawn) -> str:
    """Return a drawing without what no edit has changed: its names and its title."""
    return _TITLE.sub("", drawn.picture.svg.replace(drawn.prefix, ""))


def _environment() -> Environment:
    environment = Environment(
        loader=FileSystemLoader(_HERE / "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=_plain,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.globals |= {
        "cells_of": cells_of, "label_of": label_of, "listed": listed,
        "ways": ROW_WAYS,
    }  # fmt: skip
    environment.filters["breakable"] = _breakable
    return environment


def _breakable(path: str) -> Markup:
    """Return a path that a narrow page may break after its dots."""
    return Markup("<wbr>").join(re.split(r"(?<=[._])", clean(path)))


def _plain(value: Any) -> Any:
    """Take out of a text what no text should hold, before it is escaped."""
    markup = hasattr(value, "__html__")
    return clean(value) if isinstance(value, str) and not markup else value
