"""The effect of an edit as JSON, as shared/effect.schema.json describes it."""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import Any, TypeVar

from checker.judging.effect_data import (
    WAYS,
    Edit,
    Effect,
    Lot,
    Margin,
    Paper,
    RuleEdit,
    Turn,
    Unread,
)
from checker.judging.review_data import Finding
from checker.showing.effect_page.contents import contents_of
from checker.showing.effect_page.rows import RuleRow, rule_row

Told = TypeVar("Told")
# A rule that differs, with the file that was edited.
_Rule = tuple[str, RuleRow]

# Raised whenever a program that reads it would have to be changed.
FORMAT = 1


def as_json(effect: Effect) -> str:
    """Return an effect as JSON text in plain ASCII, keys in the same order every time.

    Nothing is left out. An edit is told once; each lot names by their numbers those that reach it.
    """
    edits = _numbered(edit for lot in effect.lots for edit in lot.edits)
    rules = _numbered(_rule(rule) for lot in effect.lots for rule in lot.rules)
    contents = contents_of(effect)
    report = {
        "effect_format": FORMAT,
        "before": effect.before,
        "after": effect.after,
        "by": effect.by,
        "digest": effect.digest,
        "edits": [_edit(edit) for edit in edits],
        "rules": [_changed(rule) for rule in rules],
        "lots": [_lot(lot, edits, rules) for lot in effect.lots],
        "same": [_paper(paper) for paper in effect.same],
        "gone": [_paper(paper) for paper in effect.gone],
        "new": [_paper(paper) for paper in effect.new],
        "unread": [_unread(one) for one in effect.unread],
        "counts": {way: len(effect.of(way)) for way in WAYS} | {"same": len(effect.same)},
        "summary": contents.summary,
        "closing": contents.closing,
    }
    return json.dumps(report, indent=2) + "\n"


def _numbered(things: Iterable[Told]) -> dict[Told, int]:
    return {thing: number for number, thing in enumerate(dict.fromkeys(things))}


def _lot(lot: Lot, edits: dict[Edit, int], rules: dict[_Rule, int]) -> dict[str, Any]:
    return {
        "way": lot.way,
        "before": _paper(lot.before),
        "after": _paper(lot.after),
        "hold_at": lot.hold_at,
        "edits": [edits[edit] for edit in lot.edits],
        "rules": [rules[_rule(rule)] for rule in lot.rules],
        "findings": [_turn(turn) for turn in lot.turns],
        "room": [_margin(margin) for margin in lot.margins],
    }


def _paper(paper: Paper) -> dict[str, Any]:
    return {"file": paper.file, "assembly": paper.name, "paper": paper.paper}


def _edit(edit: Edit) -> dict[str, Any]:
    sides = {"before": edit.before, "after": edit.after}
    told = {key: side._asdict() if side else None for key, side in sides.items()}
    return {"path": edit.path, "title": edit.title, "file": edit.file, **told}


def _rule(edit: RuleEdit) -> _Rule:
    return edit.file, rule_row(edit)


def _changed(rule: _Rule) -> dict[str, Any]:
    file, row = rule
    texts = [{"label": one.label, "before": one.was, "after": one.now} for one in row.texts]
    return {"rule": row.rule, "title": row.title, "file": file, "how": row.how, "texts": texts}


def _turn(turn: Turn) -> dict[str, Any]:
    sides = {"before": turn.before, "after": turn.after}
    told = {key: _stood(side) if side else None for key, side in sides.items()}
    return {"way": turn.way, **_name(turn.finding), **told}


def _stood(finding: Finding) -> dict[str, Any]:
    return {
        "outcome": finding.outcome,
        "severity": finding.severity,
        "open": finding.open,
        "because": finding.because,
        "missing": list(finding.missing),
        "compared": [one._asdict() for one in finding.compared],
    }


def _margin(margin: Margin) -> dict[str, Any]:
    return {
        **_name(margin.finding),
        "tight": margin.tight,
        "change": margin.change,
        "before": margin.before._asdict() if margin.before else None,
        "after": margin.after._asdict(),
    }


def _name(finding: Finding) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "item": finding.item,
        "title": finding.title,
        "severity": finding.severity,
        "stage": finding.stage,
        "trade": finding.trade,
        "protects": finding.protects,
    }


def _unread(one: Unread) -> dict[str, Any]:
    fault = one.fault
    return {
        "side": one.side,
        "file": fault.file,
        "line": fault.line,
        "column": fault.column,
        "message": fault.message,
    }
