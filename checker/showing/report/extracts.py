"""Sheets for one trade or one stage: what of a review concerns it, the rest left out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from checker.judging.review_data import NOT_MET, STAGES, Question, Review


class Extract(NamedTuple):
    """One such sheet: `kind` is trade or stage, `word` which of them as rules write it."""

    kind: str
    word: str
    faults: int
    questions: int

    @property
    def name(self) -> str:
        """Return the trade or stage as it is said."""
        return self.word.replace("_", " ")

    @property
    def open(self) -> int:
        """Return how much stands open on it."""
        return self.faults + self.questions


def extracts_of(review: Review) -> list[Extract]:
    """Return a sheet for each trade, then for each stage, with something open, in their order."""
    trades = trades_of(review)
    asked = [(question.stage, trades_asked(question, trades)) for question in values_asked(review)]
    not_met = review.of(NOT_MET)
    everybody = sorted({finding.trade for finding in review.findings})
    by_trade = [
        Extract("trade", trade, faults, sum(trade in waiting for _, waiting in asked))
        for trade, faults in _counted(everybody, [f.trade for f in not_met])
    ]
    by_stage = [
        Extract("stage", stage, faults, sum(stage == due for due, _ in asked))
        for stage, faults in _counted(STAGES, [f.stage for f in not_met])
    ]
    return [one for one in by_trade + by_stage if one.open]


def values_asked(review: Review) -> list[Question]:
    """Return the questions that a value would answer; one in brackets stands for a rule alone."""
    return [question for question in review.questions if not question.path.startswith("(")]


def trades_of(review: Review) -> dict[str, str]:
    """Return the trade of each rule that was asked."""
    return {finding.rule: finding.trade for finding in review.findings}


def trades_asked(question: Question, trades: Mapping[str, str]) -> list[str]:
    """Return the trades whose rules wait for a value."""
    return sorted({trades[rule] for rule in question.rules})


def _counted(words: Iterable[str], found: list[str]) -> list[tuple[str, int]]:
    return [(word, found.count(word)) for word in words]
