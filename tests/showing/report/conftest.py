"""Specs of the checkout, reviewed with its rules, and pages read as a browser reads them."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import html5lib
import pytest

from checker import load_rulebook, load_spec
from checker import review as judge
from checker.judging.review_data import Review
from checker.judging.rulebook import Rulebook
from checker.reading.reader import read_specs
from checker.reading.spec import Spec
from checker.showing.report.html import report_page

SPECS = Path(__file__).parents[3] / "specs"

Pairs = list[tuple[Spec, Review]]


@pytest.fixture(scope="session")
def rulebook() -> Rulebook:
    """The rules of the checkout."""
    return load_rulebook()


@pytest.fixture(scope="session")
def reviewed(rulebook: Rulebook) -> Callable[..., Pairs]:
    """Reviews the specs named, which stand in specs/."""

    def reviewed(*names: str) -> Pairs:
        specs = [spec for name in names for spec in load_spec(SPECS / name)]
        return [(spec, judge(spec, rulebook)) for spec in specs]

    return reviewed


@pytest.fixture(scope="session")
def reviewed_text(rulebook: Rulebook) -> Callable[[str], Pairs]:
    """Reviews a spec given as text."""

    def reviewed(text: str) -> Pairs:
        return [(spec, judge(spec, rulebook)) for spec in read_specs(text, "lot14.yaml")]

    return reviewed


@pytest.fixture(scope="session")
def bad(reviewed: Callable[..., Pairs]) -> Pairs:
    """The spec with the most faults."""
    return reviewed("bad.yaml")


@pytest.fixture(scope="session")
def bad_page(bad: Pairs) -> ET.Element:
    """Its page."""
    return parsed(report_page(bad))


def parsed(page: str) -> ET.Element:
    """Read a page. Raises html5lib.html5parser.ParseError where it is not well formed."""
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    found: ET.Element = parser.parse(page)
    return found


def words(element: ET.Element) -> str:
    """Return the text of an element on one line."""
    return " ".join(" ".join(element.itertext()).split())


def under(element: ET.Element, path: str) -> ET.Element:
    """Return the first element at a path, which must be there."""
    found = element.find(path)
    assert found is not None, path
    return found


def classed(page: ET.Element, name: str) -> list[ET.Element]:
    """Return the elements of a class."""
    return [one for one in page.iter() if name in one.get("class", "").split()]


def refers_only_to_itself(page: ET.Element) -> None:
    """Assert that a page asks for nothing: every name stands once, and what it links to is here."""
    ids = Counter(one.get("id") for one in page.iter() if one.get("id"))
    assert {name: n for name, n in ids.items() if n > 1} == {}
    for element in page.iter():
        for key, value in element.attrib.items():
            plain = key.rpartition("}")[2]
            assert plain not in ("src", "srcset", "action", "data", "poster", "style")
            assert not plain.startswith("on")
            if plain == "href":
                assert value[:1] == "#", value
                assert value[1:] in ids
            if "url(" in value:
                assert value.startswith("url(#")
                assert value[5:-1] in ids
    assert page.find(".//link") is None
