"""What stands on the sheet of one assembly, put in order for the templates, which only lay it out.

Every finding of a review stands in exactly one place: among what is not met, what could not be
judged, what is good, or what does not apply.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from checker.deriving.quantity import REGISTRY
from checker.judging.review_data import (
    DOES_NOT_APPLY,
    MET,
    NOT_MET,
    NOT_SHOWN,
    SEVERITIES,
    At,
    Compared,
    Finding,
    Question,
    Review,
)
from checker.reading.spec import MEASURED, Spec
from checker.showing.calc_sheet import Step, steps_to
from checker.showing.finding_text import COMMON_PRACTICE, cited, elsewhere, named, stage_words
from checker.showing.good_text import at_the_limit
from checker.showing.lines import joined
from checker.showing.report.extracts import (
    Extract,
    extracts_of,
    trades_asked,
    trades_of,
    values_asked,
)
from checker.showing.report.picture import Picture, section_picture
from checker.showing.text import by_weight, closing

# Questions asked in full before the rest is folded away: more of them bury the ones that matter.
_ASKED_FIRST = 12
# A longer legend than this has no room beside the drawing for figures.
_LEGEND_WITH_FIGURES = 12
_FOR_A_PERSON = "no objection"


class Fault(NamedTuple):
    """A finding that is not met, under the number it has in the review as text."""

    number: int
    finding: Finding
    title: str
    figures: tuple[str, ...]
    says: tuple[str, ...]
    places: tuple[str, ...]
    elsewhere: tuple[str, ...]
    amended: tuple[str, ...]
    steps: tuple[Step, ...]


class Asked(NamedTuple):
    """A value that is not shown, under the number of its question."""

    number: int
    question: Question
    trades: str


class Waiting(NamedTuple):
    """A finding that could not be judged, and the numbers of the questions it waits for."""

    finding: Finding
    questions: tuple[int, ...]


class Group(NamedTuple):
    """Findings that belong together, under the reason or the part of the house they share."""

    title: str
    findings: tuple[Finding, ...]


class Contents(NamedTuple):
    """The whole sheet. `number` is its place in the file, `prefix` begins every name on it."""

    number: int
    prefix: str
    review: Review
    block: tuple[tuple[str, str], ...]
    picture: Picture
    extracts: tuple[Extract, ...]
    faults: tuple[Fault, ...]
    asked_first: tuple[Asked, ...]
    asked_later: tuple[Asked, ...]
    waiting: tuple[Waiting, ...]
    for_a_person: tuple[Group, ...]
    good: tuple[Group, ...]
    not_applying: tuple[Group, ...]
    assumed: tuple[str, ...]
    closing: str

    @property
    def roomy(self) -> bool:
        """Say whether the legend has room for more than what each keynote is about."""
        return len(self.faults) <= _LEGEND_WITH_FIGURES

    @property
    def by_severity(self) -> list[tuple[str, list[Fault]]]:
        """Return the faults of each severity that has some, the gravest first."""
        found = [
            (severity, [one for one in self.faults if one.finding.severity == severity])
            for severity in SEVERITIES
        ]
        return [(severity, faults) for severity, faults in found if faults]


def contents_of(spec: Spec, review: Review, number: int, *, accepted: bool) -> Contents:
    """Put a review in the order of its sheet."""
    prefix = f"s{number}-"
    questions = _asked(review)
    apart = review.of(DOES_NOT_APPLY)
    person = [one for one in apart if one.because.startswith(_FOR_A_PERSON)]
    others = [one for one in apart if not one.because.startswith(_FOR_A_PERSON)]
    return Contents(
        number=number, prefix=prefix, review=review, block=_block(spec, review),
        picture=section_picture(spec, review, prefix), extracts=tuple(extracts_of(review)),
        faults=tuple(_fault(at, one, spec, review)
                     for at, one in enumerate(by_weight(review.of(NOT_MET)), start=1)),
        asked_first=questions[:_ASKED_FIRST], asked_later=questions[_ASKED_FIRST:],
        waiting=_waiting(review, questions), for_a_person=_by_reason(person),
        good=_by_part(review.of(MET)),
        not_applying=_by_reason(others),
        assumed=tuple(dict.fromkeys(note for one in review.findings for note in one.assumed)),
        closing=closing([review], accepted=accepted),
    )  # fmt: skip


def margin(finding: Finding) -> str:
    """Return how close a finding that is met came to its limit, where that is worth a word."""
    return joined(
        [
            "by an exception" if finding.by_exception else "",
            _closeness(finding) if finding.tight else "",
        ]
    )


def _closeness(finding: Finding) -> str:
    closest = next((one for one in finding.compared if one.room), None)
    if closest is None:
        return "tight: by less than its readings can be trusted to"
    if at_the_limit(finding):
        return f"at the limit: {closest.shown}"
    return f"tight: {closest.shown}, needed {closest.needed}, {closest.room} left"


def figures(finding: Finding) -> str:
    """Return what a finding was judged by, in a few words."""
    return joined([f"{one.title} {one.shown}" for one in finding.compared if one.shown])


def _block(spec: Spec, review: Review) -> tuple[tuple[str, str], ...]:
    """Return what the title block says; what the spec does not show is said so."""
    assumed = " (assumed: the spec names none)" if review.stage_assumed else ""
    measured = ", judged by what was measured" if review.basis == MEASURED else ""
    only = f"; only what must be right by {stage_words(review.by)}" if review.by else ""
    return (
        ("job", spec.text("job.name") or NOT_SHOWN),
        ("lot", spec.text("job.lot") or NOT_SHOWN),
        ("assembly", review.assembly),
        ("paper", (review.paper.replace("_", " ") or NOT_SHOWN) + measured),
        ("stage", f"{stage_words(review.stage)}{assumed}{only}"),
        ("jurisdiction", spec.text("job.jurisdiction") or NOT_SHOWN),
        ("codes", _codes(spec) or NOT_SHOWN),
        ("levels on the datum", spec.text("levels.datum") or NOT_SHOWN),
        ("day judged", review.day or spec.text("job.as_of") or NOT_SHOWN),
        ("rule book", joined([review.rulebook, *_more_books(review)], ", ")),
        ("digest of the rules", review.digest[:12]),
        ("made from", review.file),
    )


def _more_books(review: Review) -> list[str]:
    """Return the rule books that were laid over the first, each with its own digest."""
    return [
        f"{book.name} ({book.digest[:12]})" for book in review.books if book.name != review.rulebook
    ]


def _codes(spec: Spec) -> str:
    codes = spec.lists.get("job.codes", ())
    return joined([f"{one} {spec.text(f'job.codes.{one}.edition')}".strip() for one in codes], ", ")


def _fault(number: int, finding: Finding, spec: Spec, review: Review) -> Fault:
    return Fault(
        number, finding, named(finding.title, finding.item),
        tuple(_apart(one) for one in finding.compared if one.outcome == NOT_MET),
        _says(finding),
        tuple(_place(place, review.file) for place in finding.places),
        tuple(elsewhere(other) for other in finding.elsewhere),
        tuple(f"by {one.by}: {one.reason}" for one in finding.amended),
        tuple(steps_to(spec, _quantities(finding))),
    )  # fmt: skip


def _apart(one: Compared) -> str:
    """Return how far a comparison is missed, in the few words that a legend has room for."""
    figures = [f"{one.title} {one.shown}", f"needed {one.needed}" if one.needed else ""]
    return joined([*figures, f"off by {one.off_by}" if one.off_by else ""])


def _quantities(finding: Finding) -> list[tuple[str, str]]:
    """Return the quantities that a finding compares, each with the item it was worked out for."""
    return [_pattern(one.path, finding.item) for one in finding.compared if one.is_quantity]


def _pattern(path: str, item: str) -> tuple[str, str]:
    if path in REGISTRY or not item:
        return path, ""
    return path.replace(f".{item}", ".each", 1), item


def _says(finding: Finding) -> tuple[str, ...]:
    if finding.sources:
        return tuple(cited(source) for source in finding.sources)
    common = finding.standing in ("", "common practice")
    return (COMMON_PRACTICE if common else finding.standing,)


def _place(place: At, file: str) -> str:
    written = f"{place.path}: {place.written}" if place.written else place.path
    origin = joined([f"from {place.source}" if place.source else "", place.how], ", ")
    other = f"{place.file} " if place.file not in ("", file) else ""
    return f"{other}line {place.line}, {written}{f' ({origin})' if origin else ''}"


def _asked(review: Review) -> tuple[Asked, ...]:
    trades = trades_of(review)
    return tuple(
        Asked(at, one, " ".join(trades_asked(one, trades)))
        for at, one in enumerate(values_asked(review), start=1)
    )


def _waiting(review: Review, asked: Sequence[Asked]) -> tuple[Waiting, ...]:
    numbers = {one.question.path: one.number for one in asked}
    return tuple(
        Waiting(one, tuple(numbers[path] for path in one.missing if path in numbers))
        for one in by_weight(review.of(NOT_SHOWN))
    )


def _by_part(findings: Sequence[Finding]) -> tuple[Group, ...]:
    parts = sorted({one.rule.partition(".")[0] for one in findings})
    return tuple(
        Group(part.replace("_", " "), tuple(f for f in findings if f.rule.startswith(f"{part}.")))
        for part in parts
    )


def _by_reason(findings: Sequence[Finding]) -> tuple[Group, ...]:
    reasons = sorted({one.because for one in findings})
    return tuple(
        Group(reason or "outside the scope of the rule",
              tuple(one for one in findings if one.because == reason))
        for reason in reasons
    )  # fmt: skip
