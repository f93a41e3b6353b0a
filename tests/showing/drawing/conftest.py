"""Drawings of whole specs, and what stands where in them."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from checker.judging.judge import review
from checker.judging.review_data import Review
from checker.judging.rulebook import Rulebook, load_rulebook
from checker.reading.reader import load_spec
from checker.reading.spec import Spec
from checker.showing.drawing import draw
from tests.support import spec_of

ROOT = Path(__file__).parents[3]
SVG = "{http://www.w3.org/2000/svg}"


class Drawn:
    """One SVG, asked by the ids of its parts."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.root = ET.fromstring(text)
        self.parts = {part.get("id"): part for part in self.root.iter() if part.get("id")}

    def points(self, name: str) -> list[tuple[float, float]]:
        listed = self.parts[name].get("points") or ""
        return [(float(x), float(y)) for x, y in (pair.split(",") for pair in listed.split())]

    def number(self, name: str, key: str) -> float:
        return float(self.parts[name].get(key) or "nan")

    def heights(self, name: str) -> tuple[float, float]:
        """The highest and the lowest y of a part."""
        ys = [y for _, y in self.points(name)]
        return min(ys), max(ys)

    def texts(self) -> list[str]:
        return [part.text or "" for part in self.root.iter(f"{SVG}text")]


@cache
def rulebook() -> Rulebook:
    return load_rulebook()


def pairs_of(file: Path) -> list[tuple[Spec, Review]]:
    return [(spec, review(spec, rulebook())) for spec in load_spec(str(file))]


@cache
def sheet_of(name: str, picture: str = "section") -> Drawn:
    return Drawn(draw(pairs_of(ROOT / "specs" / f"{name}.yaml"), picture))


@pytest.fixture
def sheet() -> Callable[..., Drawn]:
    """The drawing of an example in specs/, by its name and picture."""
    return sheet_of


@pytest.fixture
def drawn() -> Callable[..., Drawn]:
    """The drawing of a mapping of keys."""

    def make(mapping: dict[str, Any], picture: str = "section") -> Drawn:
        spec = spec_of(mapping)
        return Drawn(draw([(spec, review(spec, rulebook()))], picture))

    return make
