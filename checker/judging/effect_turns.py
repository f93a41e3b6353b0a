"""What came of an edit: the findings of two reviews of one paper, set side by side."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from checker.judging.effect_data import BETTER, OTHER, WAYS, WORSE, Margin, Turn
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

# What margins of one comparison may differ by as floats.
_NOISE = 1e-8


def turns_of(before: Review, after: Review) -> tuple[Turn, ...]:
    """Return the findings that came out otherwise, the gravest first."""
    pairs = _pairs(before, after)
    return tuple(sorted((Turn(way, a, b) for a, b in pairs if (way := _way(a, b))), key=gravest))


def margins_of(before: Review, after: Review) -> tuple[Margin, ...]:
    """Return the comparisons that are met on both sides and have other room, or are tight now."""
    return tuple(sorted(_margins(before, after), key=_least_room))


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
    was, now = _least(before.compared, NOT_MET), _least(after.compared, NOT_MET)
    changes = [_change(was[path], now[path]) for path in now if path in was]
    if any(changes):
        return WORSE if min(changes) < 0 else BETTER
    told = [[(one.path, one.shown, one.needed) for one in f.compared] for f in (before, after)]
    return OTHER if told[0] != told[1] else ""


def _margins(before: Review, after: Review) -> Iterator[Margin]:
    for a, b in _pairs(before, after):
        if a is None or b is None or a.outcome != b.outcome or b.open:
            continue
        was, now = _least(a.compared, MET), _least(b.compared, MET)
        tight = b.tight and not a.tight
        found = [
            Margin(b, was[path], one, tight)
            for path, one in now.items()
            if path in was and _change(was[path], one)
        ]
        if tight and not found:
            found = [Margin(b, None, one, True) for one in list(now.values())[:1]]
        yield from found


def _least(compared: Iterable[Compared], outcome: str) -> dict[str, Compared]:
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
