"""What became of one lot, as rows: each finding with its figures before and after."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from checker.judging.effect_data import BETTER, OTHER, WORSE, Lot, Margin, RuleEdit, Turn
from checker.judging.review_data import Compared, Finding
from checker.judging.rulebook import Rule
from checker.judging.wording import say_difference
from checker.showing.finding_text import named
from checker.showing.lines import joined
from checker.showing.rule_page import rule_rows

TIGHT = "tight now"
LOST = "room lost"
WON = "room won"
# Which way a row can go, in the order that rows are told in.
ROW_WAYS = (WORSE, BETTER, OTHER, TIGHT, LOST, WON)

# What was and what is.
Both = tuple[str, str]


class Figure(NamedTuple):
    """One comparison before and after; `change` is the room lost or won."""

    title: str
    shown: Both
    needed: Both
    room: Both
    change: str


class Row(NamedTuple):
    """A finding that went one way, or has other room. `rule` names its item too."""

    way: str
    severity: str
    title: str
    rule: str
    outcome: Both
    figures: tuple[Figure, ...]
    because: str
    safety: str


class Cells(NamedTuple):
    """A row as a table shows it: what is asked, and what each side has to say to it."""

    asked: tuple[str, ...]
    was: tuple[str, ...]
    now: tuple[str, ...]


class RuleText(NamedTuple):
    """A labelled text of a rule that differs; a side that does not say it is empty."""

    label: str
    was: str
    now: str

    @property
    def sides(self) -> tuple[str, ...]:
        """Return what each side says that says something."""
        named = (("before", self.was), ("after", self.now))
        return tuple(f"{side}: {text}" for side, text in named if text)


class RuleRow(NamedTuple):
    """A rule that differs, and the texts of it that do."""

    rule: str
    title: str
    how: str
    texts: tuple[RuleText, ...]


class Closest(NamedTuple):
    """How near a lot is to a limit, or how far beyond one, where it matters most."""

    margin: float
    text: str


def rows_of(lot: Lot) -> tuple[Row, ...]:
    """Return what became of a lot: findings that went some way, then the room that is left."""
    return (*map(_turned, lot.turns), *map(_with_other_room, lot.margins))


def closest(lot: Lot) -> Closest:
    """Return how near to its limit the first thing is that is told of a lot."""
    compared: Sequence[Compared] = ()
    if lot.turns:
        compared = (lot.turns[0].after or lot.turns[0].finding).compared
    elif lot.margins:
        compared = (lot.margins[0].after,)
    found = [one for one in compared if one.margin is not None]
    if not found:
        return Closest(math.inf, "")
    least = min(found, key=_margin)
    return Closest(_margin(least), room_text(least))


def label_of(row: Row, *, with_title: bool = False) -> str:
    """Return which way a row went; of what is worse, how grave it is."""
    label = row.severity if row.way == WORSE else row.way
    return f"{label}, {row.title[:1].lower()}{row.title[1:]}" if with_title else label


def cells_of(row: Row) -> Cells:
    """Return the figures of a finding for a table, in the same order in every cell."""
    asked: list[str] = []
    was: list[str] = []
    now: list[str] = []
    several = len(row.figures) > 1
    for figure in row.figures:
        same = figure.needed[0] == figure.needed[1] or not all(figure.needed)
        needed = (figure.needed[1] or figure.needed[0]) if same else ""
        asked.append(joined([figure.title, f"needed {needed}" if needed else ""], ": "))
        for cell, side in ((was, 0), (now, 1)):
            told = [
                figure.shown[side],
                "" if same else f"needed {figure.needed[side]}",
                figure.room[side],
                figure.change if side else "",
            ]
            text = joined(told, ", ")
            cell.append(f"{figure.title} {text}" if several and text else text)
    return Cells(tuple(asked), tuple(filter(None, was)), tuple(filter(None, now)))


def rule_row(edit: RuleEdit) -> RuleRow:
    """Return how a rule differs."""
    was, now = _texts(edit.before), _texts(edit.after)
    if was and now:
        how, labels = "changed", tuple(dict.fromkeys((*now, *was)))
    else:
        how, labels = ("new" if now else "not asked any more"), ("severity", "needed")
    texts = []
    for label in labels:
        # A rule with many cases differs in one of them.
        old, new = was.get(label, []), now.get(label, [])
        first = " ".join(text for text in old if text not in new)
        second = " ".join(text for text in new if text not in old)
        texts += [RuleText(label, first, second)] if first or second else []
    return RuleRow(edit.rule.id, edit.rule.title, how, tuple(texts))


def room_text(compared: Compared) -> str:
    """Return how much room a comparison leaves, or by how much it fails."""
    if compared.off_by:
        return f"off by {compared.off_by}"
    return f"{compared.room} left" if compared.room else ""


def was_now(both: Both) -> str:
    """Return what was and what is in a few words, or once where they are the same."""
    was, now = both
    if was == now or not was:
        return now
    return f"{was}, now {now}" if now else f"{was} before"


def _turned(turn: Turn) -> Row:
    finding = turn.finding
    return Row(
        turn.way, finding.severity, named(finding.title, finding.item), _rule(finding),
        (_outcome(turn.before), _outcome(turn.after)),
        tuple(_figures(turn.before, turn.after)),
        _because(turn.before, turn.after),
        finding.safety if turn.way == WORSE else "",
    )  # fmt: skip


def _with_other_room(margin: Margin) -> Row:
    finding = margin.finding
    way = TIGHT if margin.tight else LOST if margin.change < 0 else WON
    return Row(
        way, finding.severity, named(finding.title, finding.item), _rule(finding), ("", ""),
        (_figure(margin.before, margin.after),), "", "",
    )  # fmt: skip


def _rule(finding: Finding) -> str:
    return f"{finding.rule} {finding.item}".rstrip()


def _outcome(finding: Finding | None) -> str:
    if finding is None:
        return "not asked"
    return f"{finding.outcome}, allowed by {finding.varied}" if finding.varied else finding.outcome


def _because(before: Finding | None, after: Finding | None) -> str:
    """Return why a finding is what it is, and how grave it was if that has changed."""
    graver = before and after and before.severity != after.severity
    missing = f"not shown: {', '.join(after.missing)}" if after and after.missing else ""
    return joined(
        [
            f"was {before.severity}" if graver and before else "",
            after.because if after else "",
            missing if after and after.open else "",
        ]
    )


def _figures(before: Finding | None, after: Finding | None) -> Iterator[Figure]:
    was, now = ({one.path: one for one in f.compared} if f else {} for f in (before, after))
    for path in dict.fromkeys((*now, *was)):
        yield _figure(was.get(path), now.get(path))


def _figure(was: Compared | None, now: Compared | None) -> Figure:
    one = now or was
    assert one is not None
    return Figure(
        one.title,
        (was.shown if was else "", now.shown if now else ""),
        (was.needed if was else "", now.needed if now else ""),
        (_room(was, now), _room(now, was)),
        _change(was, now),
    )


def _room(compared: Compared | None, other: Compared | None) -> str:
    """Return the room on one side; where only the other side has any, that it is not known."""
    text = room_text(compared) if compared else ""
    return text or ("room not known" if compared and other and room_text(other) else "")


def _change(was: Compared | None, now: Compared | None) -> str:
    """Return the room lost or won; what is lost is told rounded up, what is won rounded down."""
    if not was or not now or was.margin is None or now.margin is None or was.kind != now.kind:
        return ""
    change = now.margin - was.margin
    text = say_difference(now.kind, abs(change), now.unit, "up" if change < 0 else "down")
    return f"{text} {'lost' if change < 0 else 'won'}" if change else ""


def _margin(compared: Compared) -> float:
    return math.inf if compared.margin is None else compared.margin


def _texts(rule: Rule | None) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for label, text in rule_rows(rule) if rule else ():
        found.setdefault(label, []).append(text)
    return found
