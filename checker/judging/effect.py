"""What an edit does to one paper: which values differ, what is worse or better, what room is left.

The two sides are the same paper before and after the edit, each read and settled by itself.
"""

from __future__ import annotations

import dataclasses
import os
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from checker.judging.house import House
from checker.judging.questions import title_of
from checker.judging.review_data import (
    MET,
    NOT_MET,
    NOT_SHOWN,
    SEVERITIES,
    Compared,
    Finding,
    Review,
    weight,
)
from checker.judging.rulebook import Rule, Rulebook
from checker.judging.settle import Settled
from checker.reading.spec import Shown, Spec

WORSE = "worse"
BETTER = "better"
OTHER = "otherwise"
ROOM = "room"
NOTHING = "nothing"
WAYS = (WORSE, BETTER, OTHER, ROOM, NOTHING)

# What margins of one comparison may differ by as floats.
_NOISE = 1e-8
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


class Side(NamedTuple):
    """A paper on one side of the edit, with what it is judged by."""

    paper: Paper
    settled: Settled
    top: str

    def told(self, file: str) -> str:
        """Return a file's name as seen from the folder that was named."""
        return Path(os.path.relpath(file or self.settled.spec.file, self.top)).as_posix()

    @property
    def house_file(self) -> str:
        """Return the name of the house file that counts, or nothing."""
        house = self.settled.house
        return self.told(house.file) if house else ""


def side_of(settled: Settled, top: str, nth: int) -> Side:
    """Return a paper as one side; `top` is the folder that was named."""
    spec = settled.spec
    side = Side(Paper("", spec.file, spec.name, nth, spec.paper, ()), settled, top)
    files = {side.told(shown.file) for shown in spec.values.values() if shown.file}
    own = side.told(spec.file)
    paper = side.paper._replace(file=own, leans_on=tuple(sorted(files - {own})))
    return side._replace(paper=paper)


def effect_on(before: Side, after: Side, by: str = "") -> Lot | None:
    """Return what the edit does to a paper, None where both sides are judged alike."""
    if _alike(before.settled, after.settled):
        return None
    was, now = before.settled.review(by), after.settled.review(by)
    return Lot(
        before.paper,
        after.paper,
        now.hold_at,
        (*_value_edits(before, after), *_house_edits(before, after)),
        tuple(_rule_edits(before, after)),
        tuple(sorted(_turns(was, now), key=gravest)),
        tuple(sorted(_margins(was, now), key=_least_room)),
    )


def _alike(before: Settled, after: Settled) -> bool:
    """Say whether nothing differs that a review could see."""
    same_rules = before.rulebook.digest == after.rulebook.digest
    return same_rules and _resolved(before.spec) == _resolved(after.spec)


def _resolved(spec: Spec) -> tuple[object, ...]:
    values = {path: _answer(shown) for path, shown in spec.values.items()}
    return spec.paper, spec.system, values, spec.lists, spec.words


def _answer(shown: Shown) -> Shown:
    """Return a value without its place; how a number is written counts where it is none."""
    written = shown.written if shown.value is None else ""
    return shown._replace(line=0, column=0, file="", written=written)


# -- what was edited -------------------------------------------------------------------------------


def _value_edits(before: Side, after: Side) -> Iterator[Edit]:
    was, now = before.settled.spec, after.settled.spec
    for path in dict.fromkeys((*now.values, *was.values)):
        a, b = was.values.get(path), now.values.get(path)
        if (a and _answer(a)) != (b and _answer(b)) and not path.endswith(".id"):
            texts = _told_apart(a, b)
            yield _edit(
                path,
                _said(texts[0], a.file, a.line, before) if a else None,
                _said(texts[1], b.file, b.line, after) if b else None,
                after.paper.file,
            )
    for sides in ((was.lists, now.lists), (was.words, now.words)):
        for path in dict.fromkeys((*sides[1], *sides[0])):
            first, second = (one.get(path) for one in sides)
            if first != second:
                yield _edit(
                    path, _whole(first, path, before), _whole(second, path, after), after.paper.file
                )


def _edit(path: str, before: Said | None, after: Said | None, own: str) -> Edit:
    return Edit(path, title_of(path), _edited(before, after, own), before, after)


def _edited(before: Said | None, after: Said | None, own: str) -> str:
    """Return the file that was edited: where a value moved to or from the paper itself, that."""
    files = {side.file for side in (before, after) if side}
    if own in files or not files:
        return own
    return after.file if after else files.pop()


def _said(text: str, file: str, line: int, side: Side) -> Said:
    return Said(text, side.told(file), line)


def _whole(said: tuple[str, ...] | str | None, path: str, side: Side) -> Said | None:
    """Return what is said of a list or of a section as a whole."""
    if said is None:
        return None
    line, _, file = side.settled.spec.places.get(path, (0, 0, ""))
    return _said(said if isinstance(said, str) else ", ".join(said) or "none", file, line, side)


def _told_apart(a: Shown | None, b: Shown | None) -> tuple[str, str]:
    """Return two values as written, with their units or origins where those alone differ."""
    texts = [one.word or one.written if one else "" for one in (a, b)]
    if a and b and texts[0] == texts[1]:
        more = [one.unit if a.unit != b.unit else _origin(one) for one in (a, b)]
        texts = [f"{texts[0]} ({added})" if added else texts[0] for added in more]
    return texts[0], texts[1]


def _origin(shown: Shown) -> str:
    """Return where a value came from."""
    source = f"from {shown.source}" if shown.source else ""
    return ", ".join(filter(None, (source, shown.how, shown.by, shown.date, shown.assumed)))


def _house_edits(before: Side, after: Side) -> Iterator[Edit]:
    """Yield what differs of the house file beside its rules."""
    was, now = _settings(before.settled.house), _settings(after.settled.house)
    file = after.house_file or before.house_file
    for key in dict.fromkeys((*now, *was)):
        if was.get(key) != now.get(key):
            sides = [Said(told[key], file, 0) if key in told else None for told in (was, now)]
            yield Edit(key, _HOUSE_KEYS.get(key, "variance of the house"), file, *sides)


_HOUSE_KEYS = {"house": "house", "place": "place whose law holds", "hold_at": "severity that holds"}


def _settings(house: House | None) -> dict[str, str]:
    if house is None:
        return {}
    told = {"house": house.name, "hold_at": house.hold_at}
    told["place"] = house.place.id if house.place else ""
    for one in house.variances:
        told[f"variances.{one.id}"] = f"{one.rule}, {one.issued} to {one.expires}: {one.reason}"
    return {key: text for key, text in told.items() if text}


def _rule_edits(before: Side, after: Side) -> Iterator[RuleEdit]:
    was, now = (_rules(side.settled.rulebook) for side in (before, after))
    houses = [side.settled.house.digest if side.settled.house else "" for side in (before, after)]
    # A rule that differs for another reason does so because the place is another.
    file = after.paper.file if houses[0] == houses[1] else after.house_file or before.house_file
    for rule in sorted(was.keys() | now.keys()):
        a, b = was.get(rule), now.get(rule)
        if a is not b and (a and _asked(a)) != (b and _asked(b)):
            yield RuleEdit(file, a, b)


def _rules(book: Rulebook) -> dict[str, Rule]:
    return {rule.id: rule for rule in book.rules}


def _asked(rule: Rule) -> Rule:
    """Return a rule without where it stands."""
    return dataclasses.replace(rule, file="", line=0, raw={})


# -- what came of it -------------------------------------------------------------------------------


def _turns(before: Review, after: Review) -> Iterator[Turn]:
    for a, b in _pairs(before, after):
        way = _way(a, b)
        if way:
            yield Turn(way, a, b)


_Pair = tuple[Finding | None, Finding | None]


def _pairs(before: Review, after: Review) -> Iterator[_Pair]:
    was, now = _by_rule(before), _by_rule(after)
    for rule in dict.fromkeys((*now, *was)):
        yield from _of_one_rule(was.get(rule, {}), now.get(rule, {}))


def _by_rule(review: Review) -> dict[str, dict[str, Finding]]:
    found: dict[str, dict[str, Finding]] = {}
    for one in review.findings:
        found.setdefault(one.rule, {})[one.item] = one
    return found


def _of_one_rule(was: dict[str, Finding], now: dict[str, Finding]) -> Iterator[_Pair]:
    """Pair findings by item.

    What was said of a whole list stands before what is said of each item, and the other way round;
    the one item of a list is the one item of the other, whatever it is called.
    """
    apart = was and now and not was.keys() & now.keys()
    if apart and (list(was) == [""] or list(now) == [""] or len(was) == len(now) == 1):
        gravest = min(was.values(), key=_how_open)
        yield from ((gravest, one) for one in now.values())
        return
    for item in dict.fromkeys((*now, *was)):
        yield was.get(item), now.get(item)


def _how_open(finding: Finding) -> tuple[bool, bool]:
    return not finding.open, finding.outcome != NOT_MET


def _way(before: Finding | None, after: Finding | None) -> str:
    """Return which way a finding went, nothing where it is as it was."""
    was, now = (one is not None and one.open for one in (before, after))
    if now and not was:
        return WORSE
    if before is None or after is None:
        return OTHER if was else ""
    if was and not now:
        return BETTER if after.outcome == MET else OTHER
    if before.outcome != after.outcome:
        # What is taken away has mended nothing; what is shown now and wrong is worse than open.
        return WORSE if (before.outcome, after.outcome) == (NOT_SHOWN, NOT_MET) and now else OTHER
    return _still_open(before, after) if now else ""


def _still_open(before: Finding, after: Finding) -> str:
    graver = SEVERITIES.index(before.severity) - SEVERITIES.index(after.severity)
    if graver:
        return WORSE if graver > 0 else OTHER
    if after.outcome != NOT_MET:
        return ""
    was, now = _margins_of(before.compared, NOT_MET), _margins_of(after.compared, NOT_MET)
    changes = [_change(was[path], now[path]) for path in now if path in was]
    if any(changes):
        return WORSE if min(changes) < 0 else BETTER
    told = [[(one.path, one.shown, one.needed) for one in f.compared] for f in (before, after)]
    return OTHER if told[0] != told[1] else ""


def _margins(before: Review, after: Review) -> Iterator[Margin]:
    """Yield the comparisons that are met on both sides and have other room, or are tight now."""
    for a, b in _pairs(before, after):
        if a is None or b is None or a.outcome != b.outcome or b.open:
            continue
        was, now = _margins_of(a.compared, MET), _margins_of(b.compared, MET)
        tight = b.tight and not a.tight
        found = [
            Margin(b, was[path], one, tight)
            for path, one in now.items()
            if path in was and _change(was[path], one)
        ]
        if tight and not found:
            found = [Margin(b, None, one, True) for one in list(now.values())[:1]]
        yield from found


def _margins_of(compared: Iterable[Compared], outcome: str) -> dict[str, Compared]:
    """Return by its path the comparison of an outcome that leaves the least room."""
    least: dict[str, Compared] = {}
    for one in compared:
        if one.outcome == outcome and one.margin is not None:
            known = least.get(one.path)
            if known is None or known.margin is None or one.margin < known.margin:
                least[one.path] = one
    return least


def _change(before: Compared, after: Compared) -> float:
    """Return how much the margin has grown, 0.0 where it is the same."""
    if before.margin is None or after.margin is None or before.kind != after.kind:
        return 0.0
    change = after.margin - before.margin
    return change if abs(change) > _NOISE * max(abs(before.margin), abs(after.margin)) else 0.0


def gravest(turn: Turn) -> tuple[object, ...]:
    """Return what findings are put in order by: which way they went, then how grave they are."""
    finding = turn.finding
    return WAYS.index(turn.way), *weight(finding), finding.rule, finding.item


def _least_room(margin: Margin) -> tuple[object, ...]:
    """What is newly tight comes first, then what has lost room, then what has won some."""
    finding = margin.finding
    key = not margin.tight, margin.change >= 0, *weight(finding)
    return *key, finding.rule, finding.item, margin.after.path
