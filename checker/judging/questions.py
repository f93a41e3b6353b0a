"""What was not shown, grouped by the value that is missing rather than by the rule that waits."""

from __future__ import annotations

from collections.abc import Sequence

from checker.deriving.engine import Deriver
from checker.judging.review_data import NOT_SEEN, NOT_SHOWN, SEVERITIES, STAGES, Finding, Question
from checker.reading.vocabulary import vocabulary


def gather_questions(findings: Sequence[Finding], deriver: Deriver) -> tuple[Question, ...]:
    """Return one question for each missing value, the most severe and earliest first."""
    waiting: dict[str, list[Finding]] = {}
    for finding in findings:
        if finding.outcome == NOT_SHOWN:
            for path in finding.missing or (f"({finding.rule})",):
                waiting.setdefault(path, []).append(finding)
    questions = [_question(path, rules) for path, rules in waiting.items()]
    return tuple(
        sorted(
            questions, key=lambda q: (SEVERITIES.index(q.severity), STAGES.index(q.stage), q.path)
        )
    )


def _question(path: str, waiting: list[Finding]) -> Question:
    severity = min((finding.severity for finding in waiting), key=SEVERITIES.index)
    stage = min((finding.stage for finding in waiting), key=STAGES.index)
    # A rule's question is about the value it judges, which need not be the one that is missing.
    about = [one for one in waiting if not one.compared or one.compared[0].path == path]
    # Where the whole list is missing, its one question is asked of each thing on it.
    ask = next((one.ask.replace("{item}", one.item or "(each)") for one in about if one.ask), "")
    alone = [finding for finding in waiting if finding.missing in ((), (path,))]
    because = next((finding.because for finding in alone if finding.because), "")
    if all(finding.because == NOT_SEEN for finding in waiting):
        because = NOT_SEEN
    rules = tuple(dict.fromkeys(finding.rule for finding in waiting))
    title = waiting[0].title if path.startswith("(") else title_of(path)
    return Question(path, title, ask, severity, stage, rules, because)


def title_of(path: str) -> str:
    """Return what a builder calls the value at a concrete path, with the item it belongs to."""
    found = vocabulary().locate(path)
    if found is None:
        return path
    node, item = found
    return f"{node.title} ({item})" if item else node.title
