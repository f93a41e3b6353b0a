"""The items of a letter: a finding that is not met, or a value that is not shown."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from checker.judging.questions import title_of
from checker.judging.review_data import NOT_MET, NOT_SHOWN, At, Finding, Question, Review
from checker.reading.spec import Spec
from checker.showing.finding_text import COMMON_PRACTICE, cited, named
from checker.showing.lines import joined, sentence

# More places than this hide the item; the calculation sheet has them all.
_PLACES = 6
ALLOWED = "None as long as the variance below counts."
_REASONS = 3


class Figures(NamedTuple):
    """One comparison that fails."""

    what: str
    shown: str
    needed: str
    off_by: str


class Item(NamedTuple):
    """One numbered item. `key` is what its number belongs to, `paths` the values it rests on.

    `revision` says how it stands against the letter before this one, empty in a first letter;
    `varied` is the variance that allows it for a time.
    """

    number: int
    key: str
    outcome: str
    title: str
    severity: str
    stage: str
    trades: tuple[str, ...]
    suggestion: str
    revision: str
    places: tuple[str, ...]
    figures: tuple[Figures, ...]
    action: str
    stop: bool
    safety: str
    sources: tuple[str, ...]
    varied: str
    why: str
    rules: tuple[str, ...]
    paths: tuple[str, ...]


def fault_key(rule: str, item: str) -> str:
    """Return what the number of a finding belongs to; a rule may bear the name of a value."""
    return f"rule {rule} {item}".rstrip()


def question_key(path: str) -> str:
    """Return what the number of a question belongs to."""
    return f"value {path}"


def fault_item(finding: Finding, review: Review, suggestion: str) -> Item:
    """Return a finding that is not met as an item that has no number yet."""
    failed = [one for one in finding.compared if one.outcome == NOT_MET]
    return Item(
        number=0, key=fault_key(finding.rule, finding.item), outcome=NOT_MET,
        title=named(finding.title, finding.item), severity=finding.severity, stage=finding.stage,
        trades=(finding.trade,), suggestion=suggestion, revision="",
        places=_places(finding.places, review.file),
        figures=tuple(Figures(one.title, one.shown, one.needed, one.off_by) for one in failed),
        action=ALLOWED if finding.varied else sentence(finding.remedy),
        stop=finding.stop and not finding.varied, safety=finding.safety,
        sources=_sources(finding), varied=_variance(finding, review), why=finding.rationale,
        rules=(finding.rule,),
        paths=tuple(dict.fromkeys(one.path for one in finding.places)),
    )  # fmt: skip


def question_item(
    question: Question,
    spec: Spec,
    trades: Mapping[str, str],
    titles: Mapping[str, str],
    suggestion: str,
) -> Item:
    """Return a value that is not shown as an item that has no number yet, in neutral words."""
    waiting = tuple(dict.fromkeys(trades[rule] for rule in question.rules))
    shown = spec.values.get(question.path)
    place = _place_of(shown.source, shown.line, shown.file, spec.file) if shown else ""
    quoted = f'{place} says "{shown.written}"' if shown else ""
    return Item(
        number=0, key=question_key(question.path), outcome=NOT_SHOWN, title=question.title,
        severity=question.severity, stage=question.stage, trades=waiting, suggestion=suggestion,
        revision="", places=(quoted,) if quoted else (), figures=(),
        action=question.ask or _neutral(question), stop=False, safety="", sources=(), varied="",
        why=_why(question, titles), rules=question.rules, paths=(question.path,),
    )  # fmt: skip


def _neutral(question: Question) -> str:
    if question.path.startswith("("):
        return f"Not decided by what is shown: {question.because or 'please show more'}."
    return f"Please show: {question.title} ({question.path})."


def _why(question: Question, titles: Mapping[str, str]) -> str:
    """Return why it is asked: what cannot be ruled out without it."""
    faults = [_lower(titles[rule]) for rule in question.rules]
    left = len(faults) - _REASONS
    more = f"; and {left} more" if left > 0 else ""
    asked = f"without it this cannot be ruled out: {'; '.join(faults[:_REASONS])}{more}"
    note = "" if question.path.startswith("(") else question.because
    return sentence(joined([note, asked]))


def _lower(title: str) -> str:
    return title[:1].lower() + title[1:] if title[1:2].islower() else title


def _places(places: tuple[At, ...], file: str) -> tuple[str, ...]:
    """Return the values that an item rests on, page by page of the submittal."""
    pages: dict[str, list[str]] = {}
    for one in places[:_PLACES]:
        page, line = (one.source, "") if one.source else (one.file or file, f"line {one.line}, ")
        pages.setdefault(page, []).append(f"{line}{title_of(one.path)} {one.written}".rstrip())
    texts = [f"{page}: {'; '.join(values)}" for page, values in pages.items()]
    if not texts:
        return ("nothing in the paper says it",)
    left = len(places) - _PLACES
    return (*texts, f"and {left} more") if left > 0 else tuple(texts)


def _place_of(source: str, line: int, own: str, file: str) -> str:
    """Return the page of the submittal; where none is named, the line of the file."""
    return source or f"line {line} of {own or file}"


def _sources(finding: Finding) -> tuple[str, ...]:
    amended = tuple(f"amended by {one.by}: {one.reason}" for one in finding.amended)
    if finding.sources:
        return (*(cited(one) for one in finding.sources), *amended)
    common = finding.standing in ("", "common practice")
    return (COMMON_PRACTICE if common else finding.standing, *amended)


def _variance(finding: Finding, review: Review) -> str:
    granted = next((one for one in review.variances if one.id == finding.varied), None)
    if granted is None:
        return finding.varied
    condition = f"on condition of {granted.condition}" if granted.condition else ""
    approved = f"approved by {granted.by} until {granted.expires}"
    return joined([f"{granted.id}, {approved}", condition, granted.reason])
