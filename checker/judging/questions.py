"""What was not shown, grouped by the value that is missing rather than by the rule that waits."""

from __future__ import annotations

from collections.abc import Iterable

from checker.judging.review_data import NOT_SEEN, NOT_SHOWN, SEVERITIES, STAGES, Question
from checker.judging.ruling import Ruling
from checker.reading.vocabulary import vocabulary


def gather_questions(rulings: Iterable[Ruling]) -> tuple[Question, ...]:
    """Return one question for each missing value, the most severe and earliest first."""
    waiting: dict[str, list[Ruling]] = {}
    for ruling in rulings:
        if ruling.outcome == NOT_SHOWN:
            for path in ruling.missing or (f"({ruling.rule.id})",):
                waiting.setdefault(path, []).append(ruling)
    questions = [_question(path, rules) for path, rules in waiting.items()]
    return tuple(
        sorted(
            questions, key=lambda q: (SEVERITIES.index(q.severity), STAGES.index(q.stage), q.path)
        )
    )


def _question(path: str, waiting: list[Ruling]) -> Question:
    severity = min((ruling.severity for ruling in waiting), key=SEVERITIES.index)
    stage = min((ruling.rule.stage for ruling in waiting), key=STAGES.index)
    # A rule's question is about the value it judges, which need not be the one that is missing.
    about = [one for one in waiting if not one.judged or one.judged[0].left.path == path]
    # Where the whole list is missing, its one question is asked of each thing on it.
    asked = (one.question.replace("{item}", one.item or "(each)") for one in about)
    ask = next(filter(None, asked), "")
    alone = [ruling for ruling in waiting if ruling.missing in ((), (path,))]
    because = next((ruling.because for ruling in alone if ruling.because), "")
    if all(ruling.because == NOT_SEEN for ruling in waiting):
        because = NOT_SEEN
    rules = tuple(dict.fromkeys(ruling.rule.id for ruling in waiting))
    title = waiting[0].rule.title if path.startswith("(") else title_of(path)
    return Question(path, title, ask, severity, stage, rules, because)


def title_of(path: str) -> str:
    """Return what a builder calls the value at a concrete path, with the item it belongs to."""
    found = vocabulary().locate(path)
    if found is None:
        return path
    node, item = found
    return f"{node.title} ({item})" if item else node.title
