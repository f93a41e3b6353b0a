"""A review as a text message: the three worst faults, by how much, by when, and what is open."""

from __future__ import annotations

from collections.abc import Iterable

from checker.judging.review_data import NOT_MET, Finding, Review
from checker.showing.finding_text import named, stage_words
from checker.showing.lines import Line, clean, counted, joined, line
from checker.showing.text import by_weight, closing, with_blanks

WORST = 3
# Two parts of a text message; a longer line is broken off where somebody reads it in a hole.
_LONGEST = 300
_GRAVE = "DANGER"


def short(reviews: Iterable[Review]) -> list[Line]:
    """Return each review as a text message, with a blank line between them."""
    return [row for lines in with_blanks(map(message, reviews), list) for row in lines]


def message(review: Review) -> list[Line]:
    """Return a review as a few lines that are never wrapped.

    First what can kill at this stage, then the three worst faults, then how much else stands open.
    """
    texts = [*_danger(review), *_worst(review)]
    return [*(line(_cut(text)) for text in texts), line(_open(review), "closing")]


def _danger(review: Review) -> list[str]:
    """Return the first sentence of what kills: a safety note is never left out."""
    texts = [one.text for one in review.cautions if one.signal == _GRAVE]
    return [f"{_GRAVE}: {texts[0].partition('. ')[0].rstrip('.')}."] if texts else []


def _worst(review: Review) -> list[str]:
    worst = by_weight(one for one in review.of(NOT_MET) if one.open)[:WORST]
    return [_fault(number, one) for number, one in enumerate(worst, start=1)]


def _fault(number: int, finding: Finding) -> str:
    how_far = "STOP, ask first" if finding.stop else _off(finding)
    title = named(finding.title, finding.item)
    return f"{number}. {joined([title, how_far], ': ')}; by stage {stage_words(finding.stage)}"


def _off(finding: Finding) -> str:
    failed = next((one for one in finding.compared if one.outcome == NOT_MET), None)
    if failed is None:
        return ""
    if failed.off_by:
        return f"off by {failed.off_by}"
    return f"{failed.shown}, needed {failed.needed}"


def _open(review: Review) -> str:
    basis = " as measured" if review.basis == "measured" else ""
    asked = counted(sum(not one.path.startswith("(") for one in review.questions), "question")
    return f"{clean(review.assembly)}{basis}: {asked}. {closing([review])}"


def _cut(text: str) -> str:
    words = " ".join(clean(text).split())
    return words if len(words) <= _LONGEST else f"{words[: _LONGEST - 3].rstrip()}..."
