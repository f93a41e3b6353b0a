"""The stages of the work: how far it has come, what each buries, what is asked at which."""

from __future__ import annotations

import dataclasses
import functools
from collections.abc import Sequence
from typing import Any, NamedTuple

from checker.data import data_dir
from checker.deriving.engine import Deriver
from checker.judging.conditions import Combined, compile_all
from checker.judging.review_data import STAGES
from checker.judging.rulebook import Rule
from checker.reading.compose import TextLoader


class Progress(NamedTuple):
    """How far the work has come: the stage asked for, stages finished out of turn, the one at hand.

    The stage asked for may lie ahead of the one at hand; nothing is over any sooner for that.
    """

    stage: str
    done: frozenset[str]
    now: str = STAGES[0]

    def reached(self, stage: str) -> bool:
        """Say whether the facts of a stage can exist: it is at hand, past, or done early."""
        return STAGES.index(stage) <= STAGES.index(self.stage) or stage in self.done

    def over(self, stage: str) -> bool:
        """Say whether a later stage than this one is at hand.

        A stage done out of turn does not count: what it left open may be open still.
        """
        return STAGES.index(stage) < STAGES.index(self.now)


class Move(NamedTuple):
    """A section of the rule book whose rules are asked earlier where the house is built so."""

    section: str
    where: Combined
    to: str
    because: str


def buried_by(stage: str) -> tuple[str, ...]:
    """Return what can no longer be changed once a stage is over, in plain words."""
    return next(tuple(one["buries"]) for one in _stages()["stages"] if one["id"] == stage)


def placed(rules: Sequence[Rule], deriver: Deriver) -> tuple[list[Rule], tuple[str, ...]]:
    """Return the rules at the stages this house asks them at, and a note for what was moved."""
    placed = list(rules)
    notes = []
    for move in _moves():
        if move.where.answer(deriver, "", asking=False).outcome:
            placed = [_earlier(rule, move) for rule in placed]
            notes.append(
                f"rules of '{move.section}' are asked by stage {move.to.replace('_', ' ')}: "
                f"{move.because}"
            )
    return placed, tuple(notes)


# The rules of a book are the same for thousands of specs.
@functools.lru_cache(maxsize=4096)
def _earlier(rule: Rule, move: Move) -> Rule:
    if rule.id.partition(".")[0] != move.section:
        return rule
    due = min(rule.due, move.to, key=STAGES.index) if rule.due else ""
    return dataclasses.replace(rule, stage=min(rule.stage, move.to, key=STAGES.index), due=due)


@functools.cache
def _moves() -> tuple[Move, ...]:
    return tuple(
        Move(one["section"], compile_all(one["where"]), one["to"], one["because"])
        for one in _stages()["moves"]
    )


@functools.cache
def _stages() -> dict[str, Any]:
    import yaml

    text = (data_dir("shared") / "stages.yaml").read_text(encoding="utf-8")
    stages: dict[str, Any] = yaml.load(text, TextLoader)
    return stages
