"""What papers are called on a page, and how many there are."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from checker.judging.effect_data import Effect, Lot, Paper
from checker.showing.lines import counted, joined

# More names than this hide what they are named for.
MOST_NAMES = 30
STANDARD = "standard"


class Names:
    """What papers are called: by their names, with the file where two bear the same."""

    def __init__(self, effect: Effect) -> None:
        known = [lot.after for lot in effect.lots] + [*effect.same, *effect.new]
        self._counts = Counter(paper.name for paper in known)

    def __call__(self, paper: Paper) -> str:
        """Return the name of a paper."""
        return self.full(paper) if self._counts[paper.name] > 1 else paper.name

    def full(self, paper: Paper) -> str:
        """Return the name of a paper with its file."""
        itself = ", the standard itself" if paper.paper == STANDARD else ""
        return f"{paper.name}{itself} ({paper.file})"

    def lot(self, lot: Lot) -> str:
        """Return the name of a lot with its file, and what both were called if that differs."""
        was, now = lot.before, lot.after
        before = [
            was.name if was.name != now.name else "",
            was.file if was.file != now.file else "",
        ]
        return joined([self.full(now), f"before: {joined(before, ', ')}" if any(before) else ""])


def papers(found: Sequence[Paper]) -> str:
    """Return how many lots and standards there are."""
    standards = sum(one.paper == STANDARD for one in found)
    lots = len(found) - standards
    return joined(
        [counted(lots, "lot") if lots or not standards else "",
         counted(standards, "standard") if standards else ""], " and ",
    )  # fmt: skip


def listed(names: Sequence[str], most: int = MOST_NAMES) -> str:
    """Return names in a row; of more than somebody would read, how many are left out."""
    left = len(names) - most
    # Names of lots have commas in them.
    return joined([*names[:most], f"and {left} more" if left > 0 else ""])
