"""What a comment letter says, put in order for those that write it down; nothing is judged here.

Every finding that is not met is an item, and so is every value that is not shown. An item keeps its
number for good: over revisions of the submittal, and in the letter to one trade.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, NOT_SHOWN, Finding, Review
from checker.reading.spec import Spec
from checker.showing.finding_text import stage_words
from checker.showing.letter.changes import Change, changes
from checker.showing.letter.dispositions import (
    ASK_FIRST,
    NO_COMMENT,
    Dispositions,
    load_dispositions,
    worst,
)
from checker.showing.letter.earlier import Closed, Earlier, closed
from checker.showing.letter.items import Item, fault_item, question_item, question_key
from checker.showing.lines import joined
from checker.showing.text import by_weight

NO_OBJECTION = "no objection"
NEW = "new"
STILL_OPEN = "still open"
OPEN_AGAIN = "open again"


class Paper(NamedTuple):
    """One paper of the submittal, as the spec lists it."""

    id: str
    text: str


class Part(NamedTuple):
    """What was looked for in one part of the house and not found."""

    name: str
    findings: int
    faults: tuple[str, ...]


class Letter(NamedTuple):
    """A letter about one assembly, to one trade or to all.

    `numbers` holds the number of every item there is or was, also of other trades; `open_paths`
    the values that each open one rests on, `open_as` its title and trades; `values` what the spec
    says, so that the next letter can tell what was changed without being asked for.
    """

    assembly: str
    file: str
    trade: str
    job: str
    lot: str
    builder: str
    place: str
    as_of: str
    papers: tuple[Paper, ...]
    books: tuple[tuple[str, str], ...]
    digest: str
    stage: str
    by: str
    cautions: tuple[tuple[str, str], ...]
    suggestion: str
    judged: bool
    stamp: tuple[str, ...]
    items: tuple[Item, ...]
    variances: tuple[str, ...]
    for_a_person: tuple[str, ...]
    good: tuple[Part, ...]
    met: int
    apart: int
    closed: tuple[Closed, ...]
    changed: tuple[Change, ...]
    follows: str
    numbers: dict[str, int]
    open_paths: dict[str, tuple[str, ...]]
    open_as: dict[str, tuple[str, tuple[str, ...]]]
    values: dict[str, str]

    @property
    def faults(self) -> tuple[Item, ...]:
        """Return the items that are not met."""
        return tuple(one for one in self.items if one.outcome == NOT_MET)

    @property
    def questions(self) -> tuple[Item, ...]:
        """Return the items that are not shown."""
        return tuple(one for one in self.items if one.outcome == NOT_SHOWN)


def letter_of(
    spec: Spec,
    review: Review,
    trade: str = "",
    earlier: Earlier | None = None,
    dispositions: Dispositions | None = None,
) -> Letter:
    """Return the letter about one assembly; `trade` leaves in it only what concerns that trade.

    `earlier` is what was said about the revision before this one.
    """
    usual = dispositions or load_dispositions()
    every = _numbered(_items(spec, review, usual), earlier)
    items = tuple(one for one in every if not trade or trade in one.trades)
    mine = [one for one in review.findings if not trade or one.trade == trade]
    rested = _paths(mine) if trade else None
    open_paths = {one.key: one.paths for one in every}
    return Letter(
        assembly=review.assembly, file=review.file, trade=trade,
        job=spec.text("job.name"), lot=spec.text("job.lot"), builder=spec.text("job.builder"),
        place=spec.text("job.jurisdiction"), as_of=review.day or spec.text("job.as_of"),
        papers=_papers(spec, trade), books=_books(review), digest=review.digest,
        stage=review.stage, by=review.by,
        cautions=tuple((one.signal, one.text) for one in review.cautions),
        suggestion=_overall(review, items), judged=review.judged, stamp=usual.stamp, items=items,
        variances=_idle(review), for_a_person=_for_a_person(mine), good=_good(mine),
        met=sum(one.outcome == MET for one in mine),
        apart=sum(one.outcome == DOES_NOT_APPLY and not one.because.startswith(NO_OBJECTION)
                  for one in mine),
        closed=closed(earlier, review, spec, trade) if earlier else (),
        changed=changes(earlier, spec, rested) if earlier else (),
        follows=earlier.digest if earlier else "",
        numbers=(earlier.numbers if earlier else {}) | {one.key: one.number for one in every},
        open_paths=open_paths,
        open_as={one.key: (one.title, one.trades) for one in every},
        values={path: one.written for path, one in spec.values.items()},
    )  # fmt: skip


def _items(spec: Spec, review: Review, usual: Dispositions) -> list[Item]:
    """Return every item in the order that first numbers go by: faults by weight, then questions."""
    trades = {one.rule: one.trade for one in review.findings}
    titles = {one.rule: one.title for one in review.findings}
    faults = [
        fault_item(one, review, NO_COMMENT if one.varied else usual.of(NOT_MET, one.severity))
        for one in by_weight(review.of(NOT_MET))
    ]
    questions = [
        question_item(one, spec, trades, titles, usual.of(NOT_SHOWN, one.severity))
        for one in review.questions
    ]
    return faults + questions


def _numbered(items: Sequence[Item], earlier: Earlier | None) -> list[Item]:
    """Give each item the number it had, or the next one that none ever had; by number."""
    if earlier is None:
        return [one._replace(number=at) for at, one in enumerate(items, start=1)]
    numbers = dict(earlier.numbers)
    numbered = []
    for one in items:
        number = numbers.setdefault(one.key, max(numbers.values(), default=0) + 1)
        numbered.append(one._replace(number=number, revision=_revision(one, earlier)))
    return sorted(numbered, key=lambda one: one.number)


def _revision(item: Item, earlier: Earlier) -> str:
    if item.key in earlier.numbers:
        return STILL_OPEN if item.key in earlier.open_paths else OPEN_AGAIN
    asked = [earlier.numbers[key] for path in item.paths
             if (key := question_key(path)) in earlier.open_paths]  # fmt: skip
    answered = asked and item.outcome == NOT_MET
    return f"{NEW}, follows from the answer to item {asked[0]}" if answered else NEW


def _overall(review: Review, items: Iterable[Item]) -> str:
    """Return the worst suggestion; where nothing at all could be judged, never that all is well."""
    floor = () if review.judged else (ASK_FIRST,)
    return worst([*floor, *(one.suggestion for one in items)])


def _paths(findings: Iterable[Finding]) -> frozenset[str]:
    return frozenset(
        path
        for one in findings
        for path in (*(place.path for place in one.places), *one.missing)
    )  # fmt: skip


def _papers(spec: Spec, trade: str) -> tuple[Paper, ...]:
    """Return the papers of a trade, or all where the spec does not say whose they are."""
    ids = spec.lists.get("documents", ())
    keys = {one: f"documents.{one}" for one in ids}
    mine = [one for one in ids if not trade or _word(spec, f"{keys[one]}.trade") == trade]
    return tuple(Paper(one, _paper(spec, keys[one])) for one in mine or ids)


def _books(review: Review) -> tuple[tuple[str, str], ...]:
    """Return the rule books that the review went by, each with its digest."""
    books = tuple((one.name, one.digest) for one in review.books)
    return books or ((review.rulebook, review.digest),)


def _idle(review: Review) -> tuple[str, ...]:
    """Return the variances that allow nothing here: requested, expired, or about something else."""
    used = {one.varied for one in review.findings}
    return tuple(
        joined([f"{one.id}, of {one.rule or 'no rule'}: {one.state}", one.reason])
        for one in review.variances
        if one.id not in used
    )


def _word(spec: Spec, path: str) -> str:
    shown = spec.values.get(path)
    return str(shown.value) if shown and shown.value is not None else ""


def _paper(spec: Spec, path: str) -> str:
    kind = stage_words(_word(spec, f"{path}.type"))
    revision = spec.text(f"{path}.rev")
    parts = [
        kind,
        f"covers {spec.text(f'{path}.covers')}" if spec.text(f"{path}.covers") else "",
        spec.text(f"{path}.firm"),
        f"revision {revision}" if revision else "",
        spec.text(f"{path}.date"),
    ]
    return ", ".join(part for part in parts if part)


def _for_a_person(findings: Iterable[Finding]) -> tuple[str, ...]:
    left = [
        one
        for one in findings
        if one.outcome == DOES_NOT_APPLY and one.because.startswith(NO_OBJECTION)
    ]
    return tuple(f"{one.rule} {one.item}".rstrip() for one in left)


def _good(findings: Iterable[Finding]) -> tuple[Part, ...]:
    parts: dict[str, dict[str, list[str]]] = {}
    for one in findings:
        if one.outcome == MET:
            part, _, fault = one.rule.partition(".")
            parts.setdefault(part, {}).setdefault(fault, []).append(one.item)
    return tuple(
        Part(
            part.replace("_", " "), sum(map(len, faults.values())),
            tuple(_with_items(*entry) for entry in sorted(faults.items())),
        )
        for part, faults in sorted(parts.items())
    )  # fmt: skip


def _with_items(fault: str, items: Sequence[str]) -> str:
    listed = [item for item in items if item]
    return f"{fault} ({', '.join(listed)})" if listed else fault
