"""Shapes and text as SVG: one canvas, named pens, and text that can never become markup."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from checker.showing.lines import clean

NAMESPACE = "http://www.w3.org/2000/svg"
INK = "#000"
WATER_INK = "#123f73"

# All lengths are points, 72 to the inch, so that text has its true size on letter paper.
SMALL = 7.0
LEADING = 8.4

Point = tuple[float, float]


class Pen(NamedTuple):
    """How a line is drawn: its weight in points, its dashes, its ink."""

    weight: float
    dashes: str = ""
    ink: str = INK


PENS = {
    "border": Pen(1.6),
    "cut": Pen(1.3),
    "edge": Pen(0.8),
    "thin": Pen(0.4),
    "membrane": Pen(2.0),
    "film": Pen(1.2),
    "unshown": Pen(0.7, "4 2.5"),
    "beyond": Pen(0.6, "9 2 1.5 2"),
    "halo": Pen(2.2, "", "#fff"),
    "water": Pen(0.9, "", WATER_INK),
    "dig": Pen(0.9, "7 2 1.5 2 1.5 2"),
    "fabric": Pen(0.8),
    "sheet": Pen(1.0),
}  # fmt: skip

_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def words(text: str) -> str:
    """Return a text on one line, without anything that SVG could not hold."""
    return " ".join(_NOT_XML.sub("", clean(text)).split())


def number(value: float) -> str:
    """Return a coordinate with at most two decimals."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


class Canvas:
    """Draws into one SVG element."""

    def __init__(self, parent: ET.Element, prefix: str = "") -> None:
        self.parent = parent
        self.prefix = prefix

    def group(self, name: str = "", clip: str = "") -> Canvas:
        """Return a canvas that draws into a group of its own."""
        given = {"id": self._id(name), "clip-path": f"url(#{clip})" if clip else ""}
        group = ET.SubElement(self.parent, "g", {k: v for k, v in given.items() if v})
        return Canvas(group, self.prefix)

    def line(self, start: Point, end: Point, pen: str = "thin", *, name: str = "") -> None:
        """Draw a straight line."""
        ends = zip(("x1", "y1", "x2", "y2"), (*start, *end), strict=True)
        self._add("line", {key: number(one) for key, one in ends}, pen, "", name)

    def path(
        self, points: Iterable[Point], pen: str = "thin", *, closed: bool = False, fill: str = "",
        name: str = "",
    ) -> None:  # fmt: skip
        """Draw a line through points, or close it round an area."""
        listed = " ".join(f"{number(x)},{number(y)}" for x, y in points)
        self._add("polygon" if closed else "polyline", {"points": listed}, pen, fill, name)

    def rect(
        self, corner: Point, size: Point, pen: str = "thin", *, fill: str = "", name: str = ""
    ) -> None:
        """Draw a rectangle from its upper left corner."""
        ends = zip(("x", "y", "width", "height"), (*corner, *size), strict=True)
        self._add("rect", {key: number(one) for key, one in ends}, pen, fill, name)

    def circle(
        self, middle: Point, radius: float, pen: str = "thin", *, fill: str = "", name: str = ""
    ) -> None:
        """Draw a circle."""
        given = {"cx": number(middle[0]), "cy": number(middle[1]), "r": number(radius)}
        self._add("circle", given, pen, fill, name)

    def text(
        self, at: Point, text: str, *, size: float = SMALL, bold: bool = False, to: str = "start",
        name: str = "",
    ) -> None:  # fmt: skip
        """Write one line of text; `to` says which end of it stands at the point."""
        given = {"x": number(at[0]), "y": number(at[1]), "font-size": number(size)}
        given |= {"text-anchor": to} if to != "start" else {}
        given |= {"font-weight": "bold"} if bold else {}
        given |= {"id": self._id(name)} if name else {}
        ET.SubElement(self.parent, "text", given).text = words(text)

    def lines(
        self, at: Point, texts: Sequence[str], *, size: float = SMALL, bold: bool = False,
        to: str = "start",
    ) -> None:  # fmt: skip
        """Write lines of text one under the other, the first on the point."""
        for row, text in enumerate(texts):
            self.text((at[0], at[1] + row * LEADING * size / SMALL), text, size=size, bold=bold,
                      to=to)  # fmt: skip

    def _id(self, name: str) -> str:
        """Return an id that is unique in the drawing; a name with words of a spec gets none."""
        return f"{self.prefix}{name}" if name and " " not in name else ""

    def _add(self, tag: str, given: dict[str, str], pen: str, fill: str, name: str) -> None:
        identity = self._id(name)
        given = {"id": identity, **given} if identity else given
        if pen:
            weight, dashes, ink = PENS[pen]
            given |= {"stroke": ink, "stroke-width": number(weight)}
            given |= {"stroke-dasharray": dashes} if dashes else {}
        ET.SubElement(self.parent, tag, {**given, "fill": fill or "none"})


def root(width: float, height: float, title: str) -> ET.Element:
    """Return an empty drawing of a size in points, which prints at that size."""
    drawing = ET.Element(
        "svg",
        {
            "xmlns": NAMESPACE,
            "width": f"{number(width / 72)}in",
            "height": f"{number(height / 72)}in",
            "viewBox": f"0 0 {number(width)} {number(height)}",
            "role": "img",
            "font-family": "sans-serif",
            "fill": INK,
            "stroke-linejoin": "round",
        },
    )
    ET.SubElement(drawing, "title").text = words(title)
    Canvas(drawing).rect((0, 0), (width, height), "", fill="#fff")
    return drawing


def written(drawing: ET.Element) -> str:
    """Return a drawing as the text of a file, in ASCII whatever the names in it."""
    ET.indent(drawing, " ")
    body = ET.tostring(drawing, encoding="us-ascii", xml_declaration=False).decode("ascii")
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{body}\n'


_NARROW = frozenset("iljI.,:;'|!() /-[]ft")
_BROAD = frozenset("mwMW%@")


def width_of(text: str, size: float = SMALL, *, bold: bool = False) -> float:
    """Return about how wide a text comes out, in a sans-serif on the wide side."""
    ems = math.fsum(
        0.36 if c in _NARROW else 0.93 if c in _BROAD else 0.66 if c.isupper() or c.isdigit()
        else 1.0 if ord(c) > 0x2E7F else 0.6
        for c in text
    )  # fmt: skip
    return ems * size * (1.1 if bold else 1.0)


def wrapped(
    text: str, room: float, most: int = 99, *, size: float = SMALL, bold: bool = False
) -> list[str]:
    """Break a text into lines no wider than `room`, at most so many; what is left out shows."""
    lines = [""]
    for word in _broken(words(text), room, size, bold=bold):
        longer = f"{lines[-1]} {word}" if lines[-1] else word
        if width_of(longer, size, bold=bold) <= room:
            lines[-1] = longer
        elif len(lines) == most:
            lines[-1] = shortened(longer, room, size, bold=bold)
            break
        else:
            lines.append(word)
    return [line for line in lines if line]


def shortened(text: str, room: float, size: float = SMALL, *, bold: bool = False) -> str:
    """Cut a text to a width; three points say that it goes on."""
    text = words(text)
    if width_of(text, size, bold=bold) <= room:
        return text
    while text and width_of(f"{text}...", size, bold=bold) > room:
        text = text[: min(len(text) - 1, int(room / size * 4))]
    return f"{text.rstrip()}..."


def _broken(text: str, room: float, size: float, *, bold: bool) -> Iterable[str]:
    """Yield the words of a text, those wider than a line in pieces."""
    for word in text.split():
        piece = ""
        for character in word if width_of(word, size, bold=bold) > room else ():
            if width_of(piece + character, size, bold=bold) > room:
                yield piece
                piece = ""
            piece += character
        yield piece or word
