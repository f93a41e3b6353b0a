"""Whatever stands in a spec or a rule book, it is read or refused: nothing in between."""

from __future__ import annotations

import functools
import os
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from checker.judging.judge import review as judge
from checker.judging.review_data import Review
from checker.judging.rulebook import Rulebook, load_rulebook
from checker.reading.faults import Fault, Unreadable
from checker.reading.measured import on_basis
from checker.reading.reader import read_specs
from checker.reading.spec import Spec
from checker.showing.console import as_text
from checker.showing.json_report import as_json_line
from checker.showing.junit_report import as_junit
from checker.showing.sarif_report import as_sarif
from checker.showing.text import render
from tests.attack.mutations import mutated, text_of, torn, written

SPECS = ("specs/good.yaml", "specs/bad.yaml", "specs/house.yaml", "specs/standards/HF-FDN-02.yaml")
RULES = ("rules/drain.yaml", "rules/wall.yaml", "rules/grade.yaml", "rules/excavation.yaml")

# More than the suite asks for, when somebody looks for trouble: BELOWGRADE_EXAMPLES=5000.
EXAMPLES = int(os.environ.get("BELOWGRADE_EXAMPLES", "25"))
FEW = settings(
    max_examples=EXAMPLES,
    deadline=None,
    derandomize="BELOWGRADE_EXAMPLES" not in os.environ,
    suppress_health_check=list(HealthCheck),
)


@functools.cache
def rules() -> Rulebook:
    """The rules that come with belowgrade; no fixture, because its contents would be printed."""
    return load_rulebook()


def faults_of(text: str) -> list[Fault] | None:
    """Return what is wrong with a text, or None where it can be read."""
    try:
        read_specs(text, "lot.yaml")
    except Unreadable as error:
        return error.faults
    return None


def reviewed(text: str) -> list[tuple[Spec, Review]]:
    """Return what a text gives; one that cannot be read gives faults with places, and nothing."""
    faults = faults_of(text)
    if faults is not None:
        assert faults
        lines = len(text.splitlines()) + 1
        assert all(fault.message and 0 <= fault.line <= lines for fault in faults), faults
        return []
    judged = [each for spec in read_specs(text, "lot.yaml") for each in on_basis(spec, "both")]
    return [(each, judge(each, rules())) for each in judged]


def check_outputs(pairs: list[tuple[Spec, Review]]) -> None:
    """Every form can be written, and nothing in a spec acts in any of them."""
    reviews = [review for _, review in pairs]
    text = as_text(render(reviews))
    assert text.endswith("This is not a release.\n")
    assert all(one.isprintable() for one in text.split("\n"))
    assert as_sarif(reviews, rules()).isascii()
    ElementTree.fromstring(as_junit(reviews))
    for review in reviews:
        assert as_json_line(review).count("\n") == 1


@FEW
@given(tree=mutated(*SPECS))
def test_a_spec_with_something_else_in_a_few_places(tree: Any) -> None:
    pairs = reviewed(written(tree))
    check_outputs(pairs)


@FEW
@given(text=torn(*SPECS))
def test_a_spec_with_its_text_torn(text: str) -> None:
    reviewed(text)


@FEW
@given(text=st.text(max_size=200))
def test_any_text_at_all(text: str) -> None:
    reviewed(text)
    reviewed(f"vocabulary: 1\n{text}")


def load(text: str, folder: Path) -> Rulebook | None:
    """Read a rule book, which may be refused with faults and in no other way."""
    file = folder / "rules.yaml"
    file.write_text(text, encoding="utf-8", errors="replace")
    try:
        return load_rulebook(file)
    except (Unreadable, FileNotFoundError) as error:
        refused = str(error)
    assert "rules.yaml" in refused
    return None


def check_rules(text: str, folder: Path) -> None:
    """Rules that are taken can be asked."""
    book = load(text, folder)
    if book is not None:
        for name in SPECS[:2]:
            for spec in read_specs(text_of(name), name):
                judge(spec, book)


@FEW
@given(tree=mutated(*RULES))
def test_a_rule_book_with_something_else_in_a_few_places(
    tree: Any, tmp_path_factory: pytest.TempPathFactory
) -> None:
    check_rules(written(tree), tmp_path_factory.mktemp("rules"))


@FEW
@given(text=torn(*RULES))
def test_a_rule_book_with_its_text_torn(
    text: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    check_rules(text, tmp_path_factory.mktemp("rules"))
