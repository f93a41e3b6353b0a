"""A review as a text message: the three worst faults, by how much, by when, and what is open."""

from __future__ import annotations

from collections.abc import Sequence

from checker.judging.review_data import NOT_MET, Finding, Review
from checker.showing.finding_text import named, stage_words
from checker.showing.lines import BLANK, Line, clean, counted, joined, line
from checker.showing.text import by_weight, closing

WORST = 3
# Two parts of a text message; a longer line is broken off where somebody reads it in a hole.
_LONGEST = 300
_GRAVE = "DANGER"


def short(reviews: Sequence[Review], *, accepted: bool = False) -> list[Line]:
    """Return each review as a few lines that are never wrapped.

    First what can kill at this stage, then the three worst faults, then how much else stands open.
    """
    lines: list[Line] = []
    for number, review in enumerate(reviews):
        lines += [BLANK] if number else []
        lines += [line(_cut(text)) for text in _danger(review)]
        worst = by_weight(one for one in review.of(NOT_MET) if one.open)[:WORST]
        lines += [line(_cut(_fault(at, one))) for at, one in enumerate(worst, start=1)]
        lines.append(line(_open(review, accepted=accepted), "closing"))
    return lines


def _danger(review: Review) -> list[str]:
    """Return the first sentence of what kills: a safety note is never left out."""
    texts = [one.text for one in review.cautions if one.signal == _GRAVE]
    return [f"{_GRAVE}: {texts[0].partition('. ')[0].rstrip('.')}."] if texts else []


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


def _open(review: Review, *, accepted: bool) -> str:
    basis = " as measured" if review.basis == "measured" else ""
    asked = counted(sum(not one.path.startswith("(") for one in review.questions), "question")
    return f"{clean(review.assembly)}{basis}: {asked}. {closing([review], accepted=accepted)}"


def _cut(text: str) -> str:
    words = " ".join(clean(text).split())
    return words if len(words) <= _LONGEST else f"{words[: _LONGEST - 3].rstrip()}..."
