"""Whatever stands in a spec or a rule book, it is read or refused: nothing in between."""

from __future__ import annotations

import functools
import os
import unicodedata
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from typer.testing import CliRunner

from checker.command import app
from checker.judging.judge import review as judge
from checker.judging.many import Asked, judge_files
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
from tests.attack.mutations import ROOT, mutated, plausible, text_of, torn, written

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
    # A character that this Python does not know yet may be a letter; these kinds do something.
    acting = {unicodedata.category(one) for one in text.replace("\n", "")}
    assert not acting & {"Cc", "Cf", "Cs", "Zl", "Zp"}
    assert as_sarif(reviews, rules()).isascii()
    ElementTree.fromstring(as_junit(reviews))
    for review in reviews:
        assert as_json_line(review).count("\n") == 1


@FEW
@given(tree=st.one_of(mutated(*SPECS), plausible(*SPECS)))
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


def settle_by(text: str, folder: Path) -> str:
    """Review by a house file of this text; it is taken, or refused with faults."""
    # The folder of a checkout, so that the search for a house file ends there.
    (folder / ".git").mkdir()
    (folder / "belowgrade.yaml").write_text(text, encoding="utf-8", errors="replace")
    (folder / "lot.yaml").write_text(text_of(SPECS[1]), encoding="utf-8")
    (judged,) = judge_files([folder / "lot.yaml"], Asked(rules(), lambda _, review: review.file))
    assert all(fault.message for fault in judged.faults)
    return " ".join([*judged.made, *map(str, judged.faults)])


@FEW
@given(tree=mutated("specs/standards/belowgrade.yaml"))
def test_a_house_file_with_something_else_in_a_few_places(
    tree: Any, tmp_path_factory: pytest.TempPathFactory
) -> None:
    assert settle_by(written(tree), tmp_path_factory.mktemp("house"))


@FEW
@given(text=torn("specs/standards/belowgrade.yaml"))
def test_a_house_file_with_its_text_torn(
    text: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    assert settle_by(text, tmp_path_factory.mktemp("house"))


# Every command that reads a spec.
COMMANDS = (
    *(["review", "--as", form] for form in ("text", "json", "sarif", "junit", "html")),
    ["review", "--short", "--measured", "both"],
    ["section"],
    ["section", "--picture", "plan"],
    ["section", "--picture", "levels"],
    ["takeoff"],
    ["calc"],
    ["letter"],
    ["letter", "--as", "html"],
    ["fieldsheet", "--by", "drain", "--instrument", "105.32"],
    ["fieldsheet", "--by", "pre_backfill", "--as", "html"],
    ["owner"],
    ["compare", str(ROOT / "specs" / "good.yaml")],
)


@FEW
@given(tree=plausible(*SPECS), command=st.sampled_from(COMMANDS))
def test_every_command_with_such_a_spec(
    tree: Any, command: list[str], tmp_path_factory: pytest.TempPathFactory
) -> None:
    lot = tmp_path_factory.mktemp("lot") / "lot.yaml"
    lot.write_text(written(tree), encoding="utf-8")
    ended = CliRunner().invoke(app, [*command, str(lot)])
    if ended.exception is not None and not isinstance(ended.exception, SystemExit):
        raise ended.exception
    assert ended.exit_code in (0, 1, 2)
