"""Hatches of the trade: concrete, block, earth, fill, stone, sand, clay, insulation, water.

Each differs from the others by its figure, never by its colour, so that a copy in black and white
reads the same.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from typing import NamedTuple

from checker.showing.drawing.svg import INK, WATER_INK


class Hatch(NamedTuple):
    """A tile that is repeated: its size, its strokes, and its dots as (x, y, radius)."""

    width: float
    height: float
    strokes: str
    dots: tuple[tuple[float, float, float], ...] = ()
    weight: float = 0.35
    ground: str = "#fff"
    ink: str = INK


HATCHES = {
    "concrete": Hatch(
        26, 24, "M5 4 l3 1 -2.4 2.2 z M17 14 l2.6 -1.6 .6 3 z M8 18.5 l2.4 1 -2.2 1.4 z",
        ((2, 10, 0.4), (11, 9, 0.4), (15, 3, 0.4), (22, 7, 0.4), (4, 15, 0.4), (13, 22, 0.4),
         (20, 20, 0.4), (24, 12, 0.4), (10, 13, 0.3), (18, 9.5, 0.3), (1.5, 21, 0.3)),
    ),
    "block": Hatch(8, 8, "M-1 9 L9 -1 M-1 6 L6 -1 M2 9 L9 2"),
    "earth": Hatch(
        30, 30, "M2 12 l8 -8 M5 13 l7 -7 M9 13.5 l4 -4 M17 17 l8 8 M20 16.5 l6 6 M17 21 l4.5 4.5",
        weight=0.4, ink="#666",
    ),
    "fill": Hatch(24, 18, "M3 4 h4 M15 9 h3 M6 14 h3 M19 15.5 h3", ((11, 3, 0.3), (20, 4, 0.3)),
                  ink="#666"),
    "stone": Hatch(
        15, 14, "M1 3.4 l2.6 -2.4 3 1 -.4 3 -3.4 1.2 z M8.6 2 l2.8 -1 2.4 2 -1.4 2.8 -3 -.8 z "
        "M4.6 9 l2.8 -1.8 2.8 1.6 -1 3 -3.6 .4 z M11.4 8.4 l2.4 -.6 .6 2.6 -2.2 1.6 z "
        "M.6 9.4 l2 -.6 1 2.2 -1.8 1.8 z",
        weight=0.4,
    ),
    "sand": Hatch(
        9, 9, "", ((1.5, 1.5, 0.42), (6, 2.4, 0.42), (3.6, 5, 0.42), (7.8, 6.4, 0.42),
                   (1.6, 7.8, 0.42)),
    ),
    "clay": Hatch(6, 5, "M0 1.2 h3.6 M3 3.7 h3", weight=0.5),
    "insulation": Hatch(7, 7, "M0 0 L7 7 M7 0 L0 7", weight=0.35),
    "water": Hatch(16, 5, "M0 1.2 h9 M6 3.7 h8", weight=0.4, ground="", ink=WATER_INK),
    "window": Hatch(5, 5, "M-1 6 L6 -1", weight=0.3, ink="#666"),
    "plain": Hatch(4, 4, ""),
}  # fmt: skip

NAMES = {
    "concrete": "concrete",
    "block": "block, stone",
    "earth": "ground",
    "fill": "backfill",
    "stone": "drain stone",
    "sand": "free-draining",
    "clay": "cap",
    "insulation": "insulation",
    "water": "water stands",
    "window": "room for pipe",
}


def fill_of(hatch: str) -> str:
    """Return the paint of a hatch."""
    return f"url(#hatch-{hatch})"


def define(definitions: ET.Element) -> None:
    """Put all hatches into the definitions of a drawing."""
    for name, hatch in HATCHES.items():
        tile = ET.SubElement(
            definitions,
            "pattern",
            {
                "id": f"hatch-{name}",
                "width": f"{hatch.width:g}",
                "height": f"{hatch.height:g}",
                "patternUnits": "userSpaceOnUse",
            },
        )
        _fill_tile(tile, hatch)


def _fill_tile(tile: ET.Element, hatch: Hatch) -> None:
    if hatch.ground:
        size = {"width": f"{hatch.width:g}", "height": f"{hatch.height:g}"}
        ET.SubElement(tile, "rect", {**size, "fill": hatch.ground})
    if hatch.strokes:
        stroke = {"stroke": hatch.ink, "stroke-width": f"{hatch.weight:g}", "fill": "none"}
        ET.SubElement(tile, "path", {"d": hatch.strokes, **stroke})
    for x, y, radius in hatch.dots:
        at = {"cx": f"{x:g}", "cy": f"{y:g}", "r": f"{radius:g}"}
        ET.SubElement(tile, "circle", {**at, "fill": hatch.ink})
