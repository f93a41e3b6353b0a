"""What an edit does, as plain data: which values differ, what is worse, what room is left."""

from __future__ import annotations

from typing import NamedTuple

from checker.judging.review_data import SEVERITIES, Compared, Finding
from checker.judging.rulebook import Rule
from checker.reading.faults import Fault

WORSE = "worse"
BETTER = "better"
OTHER = "otherwise"
ROOM = "room"
NOTHING = "nothing"
WAYS = (WORSE, BETTER, OTHER, ROOM, NOTHING)

BEFORE = "before"
AFTER = "after"

_FIGURES = 9


class Paper(NamedTuple):
    """One paper on one side. `file` is told from the folder that was named, `path` opens it.

    `nth` counts papers of one name in one file; `leans_on` are the other files that its values
    stand in.
    """

    file: str
    path: str
    name: str
    nth: int
    paper: str
    leans_on: tuple[str, ...]


class Said(NamedTuple):
    """What one side says of a value, and where."""

    text: str
    file: str
    line: int


class Edit(NamedTuple):
    """A value that differs. `file` is the one that was edited; None is a side that says nothing."""

    path: str
    title: str
    file: str
    before: Said | None
    after: Said | None


class RuleEdit(NamedTuple):
    """A rule that differs between the two rule books; None is a side that does not ask it."""

    file: str
    before: Rule | None
    after: Rule | None

    @property
    def rule(self) -> Rule:
        """The rule as it is, else as it was."""
        found = self.after or self.before
        assert found is not None
        return found


class Turn(NamedTuple):
    """A finding that came out otherwise; None is a side on which it was not asked."""

    way: str
    before: Finding | None
    after: Finding | None

    @property
    def finding(self) -> Finding:
        """The finding as it is, else as it was."""
        found = self.after or self.before
        assert found is not None
        return found


class Margin(NamedTuple):
    """A comparison that stays met with other room. `tight` says that it was not so before.

    `before` is None where another comparison decided.
    """

    finding: Finding
    before: Compared | None
    after: Compared
    tight: bool

    @property
    def change(self) -> float:
        """The room won in SI, negative where some is lost, 0.0 where that is not known."""
        was = self.before.margin if self.before else None
        now = self.after.margin
        return 0.0 if was is None or now is None else float(f"{now - was:.{_FIGURES}g}")


class Lot(NamedTuple):
    """What the edit does to one paper, gravest first. `hold_at` is the severity its house names."""

    before: Paper
    after: Paper
    hold_at: str
    edits: tuple[Edit, ...]
    rules: tuple[RuleEdit, ...]
    turns: tuple[Turn, ...]
    margins: tuple[Margin, ...]

    def of(self, way: str) -> tuple[Turn, ...]:
        """Return the findings that went one way."""
        return tuple(one for one in self.turns if one.way == way)

    @property
    def way(self) -> str:
        """Which way the lot went as a whole: what is worse weighs more than what is better."""
        went = {one.way for one in self.turns} | ({ROOM} if self.margins else set())
        return next((way for way in WAYS if way in went), NOTHING)

    def holds(self, hold_at: str = "") -> bool:
        """Say whether something at or above a severity, else at its house's, is worse."""
        at = SEVERITIES.index
        limit = at(hold_at or self.hold_at)
        return any(at(one.finding.severity) <= limit for one in self.of(WORSE))


class Unread(NamedTuple):
    """What is wrong with a file, and on which side."""

    side: str
    fault: Fault

    def __str__(self) -> str:
        return f"{self.side}: {self.fault}"


class Effect(NamedTuple):
    """What an edit does to a collection: the lots it touches, the gravest first.

    `same` are the papers that are judged alike on both sides, `gone` and `new` stand on one side
    alone and were not compared.
    """

    before: str
    after: str
    by: str
    digest: str
    lots: tuple[Lot, ...]
    same: tuple[Paper, ...]
    gone: tuple[Paper, ...]
    new: tuple[Paper, ...]
    unread: tuple[Unread, ...]

    def of(self, way: str) -> tuple[Lot, ...]:
        """Return the lots that went one way."""
        return tuple(lot for lot in self.lots if lot.way == way)

    def holds(self, hold_at: str = "") -> bool:
        """Say whether something at or above a severity, else at its house's, gets worse."""
        return any(lot.holds(hold_at) for lot in self.lots)
