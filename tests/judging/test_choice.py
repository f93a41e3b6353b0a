"""What a standard leaves open: met if every choice meets a rule, not met if none does."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from checker.judging.conditions import HALF_OPEN
from checker.judging.judge import review
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, NOT_SHOWN, Finding
from checker.values import Choice
from tests.judging.test_judge import book
from tests.support import spec_of


def judged(tmp_path: Path, body: str, drain: dict[str, Any]) -> Finding:
    """Return the one finding of one rule on a standard."""
    rules = book(
        tmp_path, f"- id: drain.test\n  title: Test\n  sources: common practice\n  {body}\n"
    )
    (finding,) = review(spec_of({"drain": drain}, paper="standard"), rules).findings
    return finding


@pytest.mark.parametrize(
    ("require", "outcome"),
    [
        ("{value: drain.material, one of: [rigid_pvc, abs, clay]}", MET),
        ("{value: drain.material, one of: [rigid_pvc, clay]}", NOT_SHOWN),
        ("{value: drain.material, one of: [clay, dual_wall_pe]}", NOT_MET),
        ("{value: drain.material, none of: [clay]}", MET),
        ("{value: drain.material, none of: [abs]}", NOT_SHOWN),
        ("{value: drain.material, none of: [abs, rigid_pvc]}", NOT_MET),
        ("{value: drain.material, is: abs}", NOT_SHOWN),
        ("{value: drain.material, is: clay}", NOT_MET),
        ("{value: drain.material, is not: clay}", MET),
        ("{value: drain.material, is not: abs}", NOT_SHOWN),
        ("{value: drain.material, shown: yes}", MET),
        ("{value: drain.material, shown: no}", NOT_MET),
    ],
)
def test_words(tmp_path: Path, require: str, outcome: str) -> None:
    finding = judged(tmp_path, f"require: {require}", {"material": ["rigid_pvc", "abs"]})
    assert finding.outcome == outcome
    assert finding.compared[0].shown == "rigid pvc or abs"
    assert finding.because == (HALF_OPEN if outcome == NOT_SHOWN else "")


def test_none_among_the_choices_is_half_shown(tmp_path: Path) -> None:
    finding = judged(tmp_path, "require: {value: coat.protection, shown: yes}", {})
    assert finding.outcome == NOT_SHOWN
    rules = book(
        tmp_path,
        "- id: coat.test\n  title: Test\n  sources: common practice\n"
        "  require: {value: coat.protection, shown: yes}\n",
    )
    spec = spec_of({"coat": {"protection": ["none", "sheet"]}}, paper="standard")
    (finding,) = review(spec, rules).findings
    assert (finding.outcome, finding.because) == (NOT_SHOWN, HALF_OPEN)


def test_a_scope_that_holds_for_some_of_the_choices_leaves_the_rule_open(tmp_path: Path) -> None:
    rule = (
        "applies: [{value: drain.kind, is: pipe}]\n  require: {value: drain.cleanouts, at least: 2}"
    )
    either = ["pipe", "drained_footing_form"]
    assert judged(tmp_path, rule, {"kind": either, "cleanouts": 1}).outcome == NOT_SHOWN
    assert judged(tmp_path, rule, {"kind": either, "cleanouts": 2}).outcome == MET
    assert judged(tmp_path, rule, {"kind": "drained_footing_form"}).outcome == DOES_NOT_APPLY


def test_one_value_against_a_choice_on_the_other_side(tmp_path: Path) -> None:
    spec = spec_of({"stone": {"size_number": {"one of": ["57", "67"]}}}, paper="standard")
    assert spec.values["stone.size_number"].value == Choice(("57", "67"))
    rules = book(
        tmp_path,
        "- id: stone.test\n  title: Test\n  sources: common practice\n"
        "  require: {value: stone.size_number, is not: '2'}\n",
    )
    (finding,) = review(spec, rules).findings
    assert finding.outcome == MET
    assert finding.compared[0].shown == "57 or 67"
