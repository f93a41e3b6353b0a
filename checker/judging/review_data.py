"""What a review is: plain data, the same every run for the same input, judged by nothing later."""

from __future__ import annotations

import functools
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, NamedTuple

MET = "met"
NOT_MET = "not met"
NOT_SHOWN = "not shown"
DOES_NOT_APPLY = "does not apply"

NOT_SEEN = "planned, not yet seen: look, and write who looked and when"

SEVERITIES = ("critical", "major", "minor")
FREQUENCIES = ("common", "known", "rare")
STAGES = (
    "desk", "excavation", "forms", "footing_poured", "wall_stripped", "coating", "sheet",
    "drain", "pre_backfill", "backfill", "slab", "final_grade", "roof_water", "handover",
)  # fmt: skip


class At(NamedTuple):
    """Where in a file a value stands and where it came from.

    `file` is another than the review's own where the spec starts from that one.
    """

    path: str
    title: str
    written: str
    line: int
    column: int
    source: str
    how: str
    file: str = ""


class Compared(NamedTuple):
    """One comparison: what the spec shows beside what is needed, in the user's units.

    `off_by` is empty when the comparison holds; `room` is empty when it fails. `margin` is the same
    as a number of the `kind`, in SI: the room, negative where it fails by so much; None where that
    is no number, or where it is not known which. `unit` is what the user is told it in.
    """

    path: str
    title: str
    outcome: str
    shown: str
    needed: str
    off_by: str
    room: str
    is_quantity: bool
    margin: float | None = None
    kind: str = ""
    unit: str = ""


class Cited(NamedTuple):
    """A source, what it says, how far that was verified, and its standing for this spec."""

    ref: str
    at: str
    title: str
    says: str
    seen: str
    standing: str


class Elsewhere(NamedTuple):
    """How the same assembly would stand under a text that is not adopted here."""

    outcome: str
    needed: str
    cited: tuple[Cited, ...]


class Amended(NamedTuple):
    """Who changed a rule, and why: a house, or the law of a place."""

    by: str
    reason: str


class Book(NamedTuple):
    """A book of rules that a review went by, and the digest of what was read of it."""

    name: str
    digest: str


class Allowance(NamedTuple):
    """A variance as it stands on the day judged.

    `state` is "in force", "requested", or says why it does not count; `by` is who approved it.
    """

    id: str
    rule: str
    state: str
    by: str
    reason: str
    condition: str
    expires: str


Later = Callable[["Finding", str], Any]


class Finding:
    """What one rule says of one spec (or of one item of a list in it).

    `amended` says who changed the rule, `varied` is the variance that allows the departure. What
    takes work is worked out when it is first read, because most of a review nobody reads: fields
    that are not given come from `later`, which takes the finding and the name of the field.
    """

    rule: str
    title: str
    severity: str
    how_often: str
    stage: str
    trade: str
    protects: str
    item: str
    outcome: str
    because: str
    compared: Sequence[Compared]
    places: tuple[At, ...]
    missing: tuple[str, ...]
    assumed: tuple[str, ...]
    tight: bool
    by_exception: bool
    standing: str
    sources: tuple[Cited, ...]
    elsewhere: tuple[Elsewhere, ...]
    rationale: str
    differs: str
    remedy: str
    stop: bool
    ask: str
    safety: str
    amended: tuple[Amended, ...]
    varied: str

    _fields = (
        "rule", "title", "severity", "how_often", "stage", "trade", "protects", "item", "outcome",
        "because", "compared", "places", "missing", "assumed", "tight", "by_exception", "standing",
        "sources", "elsewhere", "rationale", "differs", "remedy", "stop", "ask", "safety",
        "amended", "varied",
    )  # fmt: skip
    __slots__ = (*_fields, "_later")

    def __init__(self, later: Later | None = None, **given: Any) -> None:
        self._later = later
        self.varied = ""
        if later is None:
            self.amended = ()
        for name, value in given.items():
            setattr(self, name, value)

    if not TYPE_CHECKING:

        def __getattr__(self, name: str) -> Any:
            if name not in self._fields or self._later is None:
                raise AttributeError(name)
            value = self._later(self, name)
            setattr(self, name, value)
            return value

    @property
    def open(self) -> bool:
        """Say whether this must still be put right, or be shown."""
        return self.outcome in (NOT_MET, NOT_SHOWN) and not self.varied

    def _replace(self, **changes: Any) -> Finding:
        """Return the same finding with some fields changed."""
        return Finding(**dict(zip(self._fields, self, strict=True)) | changes)

    def __iter__(self) -> Iterator[Any]:
        return (getattr(self, name) for name in self._fields)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Finding):
            return NotImplemented
        named = (self.rule, self.item, self.outcome) == (other.rule, other.item, other.outcome)
        return self is other or (named and tuple(self) == tuple(other))

    def __hash__(self) -> int:
        return hash((self.rule, self.item, self.outcome))

    def __repr__(self) -> str:
        return f"<{self.rule} {self.item}: {self.outcome}>"

    def __reduce__(self) -> tuple[Any, ...]:
        return _finding, tuple(self)


def _finding(*fields: Any) -> Finding:
    """Return a finding from all its fields, in another process."""
    return Finding(**dict(zip(Finding._fields, fields, strict=True)))


@functools.cache
def rank(severity: str, protects: str, how_often: str) -> tuple[int, bool, int]:
    """Return what findings are put in order by: severity, people before buildings, frequency."""
    return SEVERITIES.index(severity), protects != "people", FREQUENCIES.index(how_often)


def weight(finding: Finding) -> tuple[int, bool, int]:
    """Return the rank of a finding."""
    return rank(finding.severity, finding.protects, finding.how_often)


class Question(NamedTuple):
    """A value that is not shown and the rules that wait for it."""

    path: str
    title: str
    ask: str
    severity: str
    stage: str
    rules: tuple[str, ...]
    because: str


class Caution(NamedTuple):
    """One line of the safety block."""

    signal: str
    text: str


@dataclass(frozen=True, slots=True)
class Review:
    """A whole review of one assembly.

    `basis` says whether the design was judged or what was measured; `buried` what can no longer
    be changed after the stage, empty where neither the spec nor whoever asked names one. `day` is
    the day judged, empty where none is known; `books` are the rule books it went by, `hold_at` the
    severity that its house holds at.
    """

    file: str
    assembly: str
    paper: str
    stage: str
    stage_assumed: bool
    by: str
    rulebook: str
    digest: str
    cautions: tuple[Caution, ...]
    findings: tuple[Finding, ...]
    questions: tuple[Question, ...]
    notes: tuple[str, ...]
    basis: str = "design"
    buried: tuple[str, ...] = ()
    day: str = ""
    books: tuple[Book, ...] = ()
    variances: tuple[Allowance, ...] = ()
    hold_at: str = "major"

    def of(self, outcome: str) -> tuple[Finding, ...]:
        """Return the findings with an outcome, in the order of the review."""
        return tuple(finding for finding in self.findings if finding.outcome == outcome)

    @property
    def judged(self) -> bool:
        """Say whether anything at all could be judged."""
        return any(finding.outcome in (MET, NOT_MET) for finding in self.findings)

    def holds(self, hold_at: str = "") -> bool:
        """Say whether something at or above a severity stands open, or nothing could be judged.

        With none given, the severity is the one that its house holds at.
        """
        limit = SEVERITIES.index(hold_at or self.hold_at)
        return not self.judged or any(
            finding.open and SEVERITIES.index(finding.severity) <= limit
            for finding in self.findings
        )
