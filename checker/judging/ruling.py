"""What a rule comes to for one item of a spec, before it is put into words."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from checker.judging.conditions import Answer, Judged
from checker.judging.rulebook import Case, Rule

OUTSIDE = "outside its scope"


@dataclass(slots=True)
class Ruling:
    """A rule's outcome for one item, and what it rests on.

    `answer` gives the comparisons when they are first read: of most rulings nobody reads them.
    """

    rule: Rule
    item: str
    outcome: str
    because: str
    case: Case | None
    known: tuple[Judged, ...] | None = ()
    missing: tuple[str, ...] = ()
    by_exception: bool = False
    scope_open: bool = False
    answer: Callable[[], Answer] | None = None

    @property
    def judged(self) -> tuple[Judged, ...]:
        """The comparisons that decided it."""
        if self.known is None:
            self.known = self.answer().judged if self.answer else ()
        return self.known

    @property
    def severity(self) -> str:
        """How bad it is by the case that governs, else by the rule."""
        return (self.case.severity if self.case else "") or self.rule.severity

    @property
    def question(self) -> str:
        """What is asked, `{item}` and all; nothing while it is open whether the rule applies."""
        return "" if self.scope_open else self.rule.ask
