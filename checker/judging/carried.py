"""One review set against an earlier one: what is new, what is fixed, and what is carried over.

A finding is the same as before when its rule, its item, its assembly and what the spec shows are
the same. Neither the name of the file nor the line takes part, so that moving text about changes
nothing.
"""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from typing import NamedTuple

from checker.judging.review_data import MET, NOT_SHOWN, SEVERITIES, Finding, Review


class Stood(NamedTuple):
    """How one rule stood for one item in an earlier review.

    `open` says whether it counted; `fingerprint` is what `fingerprint` gave for it.
    """

    rule: str
    item: str
    title: str
    severity: str
    outcome: str
    shown: str
    open: bool
    fingerprint: str


class Earlier(NamedTuple):
    """An earlier review of one assembly."""

    file: str
    assembly: str
    basis: str
    by: str
    digest: str
    findings: tuple[Stood, ...]


class Fresh(NamedTuple):
    """A finding that stands open and did not, or not so, before. `before` is None if it is new."""

    review: Review
    finding: Finding
    before: Stood | None


class Closed(NamedTuple):
    """What stood open before and does so no longer. `now` is None where it was not asked again."""

    earlier: Earlier
    before: Stood
    now: Finding | None


class Comparison(NamedTuple):
    """What became of the findings that stand open, of all assemblies.

    `fixed` was met this time, `dropped` does not apply any more or was not asked again. `notes`
    say why two reviews may differ although no spec was changed.
    """

    against: str
    fresh: tuple[Fresh, ...]
    fixed: tuple[Closed, ...]
    dropped: tuple[Closed, ...]
    carried: int
    notes: tuple[str, ...]

    def holds(self, hold_at: str = "") -> bool:
        """Say whether something at or above a severity, else at its house's, is new."""
        at = SEVERITIES.index
        return any(
            at(one.finding.severity) <= at(hold_at or one.review.hold_at) for one in self.fresh
        )


def fingerprint(review: Review, finding: Finding) -> str:
    """Return what a finding is known by for as long as the spec shows the same."""
    return _digest(
        review.assembly,
        review.basis,
        finding.rule,
        finding.item,
        finding.outcome,
        *(text for pair in _shown(finding) for text in pair),
    )


def as_earlier(review: Review) -> Earlier:
    """Return a review as one to compare with."""
    findings = tuple(
        Stood(
            finding.rule,
            finding.item,
            finding.title,
            finding.severity,
            finding.outcome,
            shown_text(finding),
            finding.open,
            fingerprint(review, finding),
        )
        for finding in review.findings
    )
    return Earlier(review.file, review.assembly, review.basis, review.by, review.digest, findings)


def compare(earlier: Sequence[Earlier], reviews: Sequence[Review], against: str) -> Comparison:
    """Compare reviews with earlier ones of the same assemblies; `against` is what those are called.

    A value that has changed and still fails is new, because it may be worse than it was.
    """
    pairs = _pairs(earlier, reviews)
    fresh: list[Fresh] = []
    closed: list[Closed] = []
    carried = 0
    for review, old in pairs:
        new = _fresh(review, old)
        fresh += new
        carried += sum(finding.open for finding in review.findings) - len(new)
        closed += _closed(old, review.findings) if old else []
    seen_again = {id(old) for _, old in pairs}
    for old in earlier:
        closed += _closed(old, ()) if id(old) not in seen_again else []
    return Comparison(
        against,
        tuple(fresh),
        tuple(one for one in closed if one.now and one.now.outcome == MET),
        tuple(one for one in closed if not one.now or one.now.outcome != MET),
        carried,
        tuple(_notes(pairs)),
    )


def shown_text(finding: Finding) -> str:
    """Return what the spec shows where a finding rests on it, in a few words."""
    texts = dict.fromkeys(shown for _, shown in _shown(finding) if shown)
    return ", ".join(texts)


def _fresh(review: Review, old: Earlier | None) -> list[Fresh]:
    """Return what stands open and did not stand open so before."""
    before = {(one.rule, one.item): one for one in old.findings} if old else {}
    found = []
    for finding in review.findings:
        stood = before.get((finding.rule, finding.item))
        same = stood and stood.open and stood.fingerprint == fingerprint(review, finding)
        if finding.open and not same:
            found.append(Fresh(review, finding, stood))
    return found


def _closed(old: Earlier, findings: Sequence[Finding]) -> list[Closed]:
    """Return what stood open and does so no longer."""
    now = {(one.rule, one.item): one for one in findings}
    stood_open = [(one, now.get((one.rule, one.item))) for one in old.findings if one.open]
    return [Closed(old, one, again) for one, again in stood_open if not (again and again.open)]


def _shown(finding: Finding) -> list[tuple[str, str]]:
    """Return path and text of the comparisons that a finding's outcome comes from.

    What is not shown has no text: how the spec says so makes no other finding of it.
    """
    told = finding.outcome != NOT_SHOWN
    return [
        (one.path, one.shown if told else "")
        for one in finding.compared
        if one.outcome == finding.outcome
    ]


def _pairs(
    earlier: Sequence[Earlier], reviews: Sequence[Review]
) -> list[tuple[Review, Earlier | None]]:
    """Find for each review the earlier one of the same assembly, in the same file if there is one.

    Two assemblies of one name in files that were renamed are told apart by their order.
    """
    left: dict[tuple[str, str], list[Earlier]] = {}
    for old in earlier:
        left.setdefault((old.assembly, old.basis), []).append(old)
    found: dict[int, Earlier] = {}
    for same_file in (True, False):
        for number, review in enumerate(reviews):
            known = left.get((review.assembly, review.basis), [])
            at = next(
                (at for at, old in enumerate(known) if old.file == review.file or not same_file),
                None,
            )
            if number not in found and at is not None:
                found[number] = known.pop(at)
    return [(review, found.get(number)) for number, review in enumerate(reviews)]


def _notes(pairs: Sequence[tuple[Review, Earlier | None]]) -> list[str]:
    notes: dict[str, None] = {}
    for review, old in pairs:
        if old is None:
            notes[f"{review.assembly} was not reviewed before: all of it is new"] = None
            continue
        if old.digest != review.digest:
            then, now = old.digest[:12], review.digest[:12]
            notes[f"the rule book has changed: digest {then} then, {now} now"] = None
        if old.by != review.by:
            then, now = (each.replace("_", " ") or "every stage" for each in (old.by, review.by))
            notes[f"asked for {then} then, for {now} now"] = None
    return list(notes)


def _digest(*texts: str) -> str:
    state = hashlib.sha256()
    for text in texts:
        part = text.encode("utf-8", "surrogatepass")
        # With its length before it, so that no two rows of texts run together to the same bytes.
        state.update(b"%d:%s" % (len(part), part))
    return state.hexdigest()[:32]
