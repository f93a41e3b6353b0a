"""Stages: what is buried, what is done out of turn, and what is asked earlier than usual."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from checker.judging.judge import review
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, Finding, Review
from checker.judging.rulebook import Rulebook, load_rulebook
from checker.judging.stages import Progress, buried_by
from tests.judging.test_judge import book
from tests.support import spec_of


def rule(tmp_path: Path, section: str, stage: str, due: str, seen: str = "no") -> Rulebook:
    path = book(
        tmp_path,
        f"- id: {section}.test\n  title: Test\n  sources: common practice\n  due: {due}\n  seen: {seen}\n"
        "  require: {value: slab.retarder, is: yes}\n",
    )
    text = (tmp_path / "rules.yaml").read_text(encoding="utf-8")
    (tmp_path / "rules.yaml").write_text(
        text.replace("stage: drain", f"stage: {stage}"), encoding="utf-8"
    )
    assert path.rules
    return load_rulebook(tmp_path / "rules.yaml")


def judged(rules: Rulebook, spec: dict[str, Any], by: str = "") -> list[Finding]:
    return list(review(spec_of(spec), rules, by).findings)


SLAB = {"slab": {"retarder": "yes"}}


def at(stage: str, done: list[str], **more: Any) -> dict[str, Any]:
    return {"job": {"stage": stage, "done": done}, **SLAB, **more}


def test_a_stage_is_reached_when_at_hand_past_or_done_early() -> None:
    progress = Progress("drain", frozenset({"slab"}))
    assert [stage for stage in ("sheet", "drain", "pre_backfill", "backfill", "slab") if progress.reached(stage)] == [
        "sheet", "drain", "slab",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("done", "outcome"),
    [
        ([], DOES_NOT_APPLY),
        (["footing_poured"], DOES_NOT_APPLY),
        (["slab"], MET),
        (["final_grade"], DOES_NOT_APPLY),
    ],
)
def test_a_slab_placed_before_backfill_is_due_now(
    tmp_path: Path, done: list[str], outcome: str
) -> None:
    (finding,) = judged(rule(tmp_path, "slab", "slab", "slab"), at("pre_backfill", done))
    assert finding.outcome == outcome


def test_what_is_done_early_is_asked_by_an_earlier_stage(tmp_path: Path) -> None:
    rules = rule(tmp_path, "slab", "slab", "slab")
    assert judged(rules, at("desk", []), "pre_backfill") == []
    (finding,) = judged(rules, at("desk", ["slab"]), "pre_backfill")
    assert finding.outcome == MET


def test_what_is_done_early_must_have_been_seen(tmp_path: Path) -> None:
    rules = rule(tmp_path, "slab", "slab", "desk", "yes")
    (planned,) = judged(rule(tmp_path, "slab", "slab", "slab", "yes"), at("drain", []))
    assert planned.because == "not due until slab"
    (unseen,) = judged(rules, at("drain", ["slab"]))
    assert unseen.because.startswith("planned, not yet seen")


FORMS = {"drain": {"kind": "drained_footing_form"}}
PIPE = {"drain": {"kind": "pipe"}}


def test_forms_that_are_the_drain_bring_its_rules_to_the_forms(tmp_path: Path) -> None:
    rules = rule(tmp_path, "drain", "drain", "drain")
    (finding,) = judged(rules, at("forms", [], **FORMS), "forms")
    assert (finding.outcome, finding.stage) == (MET, "forms")
    assert judged(rules, at("forms", [], **PIPE), "forms") == []
    (finding,) = judged(rules, at("forms", [], **PIPE))
    assert (finding.outcome, finding.because) == (DOES_NOT_APPLY, "not due until drain")


def test_they_move_nothing_to_a_later_stage_and_nothing_of_another_section(tmp_path: Path) -> None:
    early = rule(tmp_path, "drain", "excavation", "desk")
    assert judged(early, at("forms", [], **FORMS))[0].stage == "excavation"
    other = rule(tmp_path, "stone", "drain", "drain")
    assert judged(other, at("forms", [], **FORMS))[0].stage == "drain"


def test_that_rules_were_moved_is_said(tmp_path: Path) -> None:
    rules = rule(tmp_path, "drain", "drain", "drain")
    (note,) = review(spec_of(at("forms", [], **FORMS)), rules).notes
    assert note.startswith("rules of 'drain' are asked by stage forms")
    assert review(spec_of(at("forms", [], **PIPE)), rules).notes == ()


# -- what is buried --------------------------------------------------------------------------------


def of(spec: dict[str, Any], by: str = "") -> Review:
    return review(spec_of(spec), load_rulebook(), by)


def test_the_pour_buries_the_thickness_of_the_footing() -> None:
    assert any("thickness" in line for line in buried_by("forms"))


def test_what_is_buried_goes_by_the_stage_asked_for_else_by_the_one_stated() -> None:
    stated = {"job": {"stage": "forms"}}
    assert of(stated).buried == buried_by("forms")
    assert of(stated, "coating").buried == buried_by("coating")
    assert of({}, "coating").buried == buried_by("coating")


def test_nothing_is_said_to_be_buried_where_no_stage_is_named() -> None:
    assert of({}).buried == ()


def test_the_real_rules_of_the_slab_come_due_when_it_is_done() -> None:
    late = {
        f.rule
        for f in of({"job": {"stage": "drain"}}).findings
        if f.because == "not due until slab"
    }
    early = of({"job": {"stage": "drain", "done": ["slab"]}})
    assert late
    assert not late & {f.rule for f in early.findings if f.because.startswith("not due")}
    assert {f.outcome for f in early.findings if f.rule in late} <= {
        "not shown",
        NOT_MET,
        DOES_NOT_APPLY,
    }


UNTIL = """
- id: excavation.test
  title: Test
  until: slab
  require: {value: excavation.tension_cracks, is: no}
  sources: common practice
"""


@pytest.mark.parametrize(
    ("stage", "done", "by", "outcome"),
    [
        ("drain", [], "", NOT_MET),
        ("slab", [], "", NOT_MET),
        ("final_grade", [], "", DOES_NOT_APPLY),
        # Placed out of turn, the slab does not close the hole.
        ("drain", ["slab"], "", NOT_MET),
        # Whoever asks what must be right by the handover stands in the hole today.
        ("drain", [], "handover", NOT_MET),
    ],
)
def test_a_rule_is_asked_until_its_last_stage_is_over(
    tmp_path: Path, stage: str, done: list[str], by: str, outcome: str
) -> None:
    spec = {"job": {"stage": stage, "done": done}, "excavation": {"tension_cracks": "yes"}}
    (finding,) = judged(book(tmp_path, UNTIL), spec, by)
    assert finding.outcome == outcome
    assert finding.because == (
        "not asked once stage slab is over" if stage == "final_grade" else ""
    )
