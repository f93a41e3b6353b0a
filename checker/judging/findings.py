"""Rulings put into words: each part of a finding when somebody first reads it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Any, NamedTuple

from checker.deriving.engine import Deriver
from checker.judging.conditions import Judged, kind_of
from checker.judging.review_data import (
    DOES_NOT_APPLY,
    MET,
    NOT_MET,
    NOT_SHOWN,
    At,
    Cited,
    Compared,
    Elsewhere,
    Finding,
)
from checker.judging.rulebook import Case
from checker.judging.ruling import OUTSIDE, Ruling
from checker.judging.skimmed import Reads
from checker.judging.standing import HOUSE_STANDARD, Citing, strongest
from checker.judging.wording import InWords, fill, put
from checker.reading.vocabulary import vocabulary

_LENGTHS = ("length", "level")


class Room(NamedTuple):
    """All rulings on one spec by rule and item, with what it takes to put them into words."""

    rulings: dict[tuple[str, str], Ruling]
    deriver: Deriver
    citing: Citing

    def finding(self, ruling: Ruling) -> Finding:
        """Return a ruling as a finding."""
        found = Finding(partial(_word, ruling, self))
        found.rule, found.item = ruling.rule.id, ruling.item
        found.outcome, found.because = ruling.outcome, ruling.because
        return found


def _word(ruling: Ruling, room: Room, finding: Finding, name: str) -> Any:
    """Work out a field of a finding that was not given to it."""
    work = _WORKED_OUT.get(name)
    if work:
        return work(ruling, finding, room)
    # Whoever reads one of these reads the others.
    for one in _OF_RULE:
        setattr(finding, one, getattr(ruling.rule, one))
    for one in _OF_RULING:
        setattr(finding, one, getattr(ruling, one))
    return getattr(finding, name)


def _compared(ruling: Ruling, finding: Finding, room: Room) -> Sequence[Compared]:
    return InWords(ruling.judged)


def _standing(ruling: Ruling, finding: Finding, room: Room) -> str:
    if ruling.case and ruling.case.house and not finding.sources:
        return HOUSE_STANDARD
    return strongest(finding.sources)


def _sources(ruling: Ruling, finding: Finding, room: Room) -> tuple[Cited, ...]:
    return room.citing(ruling.case.sources) if ruling.case else ()


def _ask(ruling: Ruling, finding: Finding, room: Room) -> str:
    return ruling.question.replace("{item}", ruling.item)


def _remedy(ruling: Ruling, finding: Finding, room: Room) -> str:
    text, finding.stop = _advice(ruling, finding.compared, room.rulings)
    return text


def _stop(ruling: Ruling, finding: Finding, room: Room) -> bool:
    finding.remedy, stop = _advice(ruling, finding.compared, room.rulings)
    return stop


def _advice(
    ruling: Ruling, compared: Sequence[Compared], rulings: dict[tuple[str, str], Ruling]
) -> tuple[str, bool]:
    """Return what to do, and whether it is STOP because the remedy would break the guard."""
    rule = ruling.rule
    if ruling.outcome != NOT_MET:
        return "", False
    text = (ruling.case.remedy if ruling.case else "") or rule.remedy
    guard = rulings.get((rule.guard, ruling.item)) or rulings.get((rule.guard, ""))
    if not rule.guard or guard is None or guard.outcome == DOES_NOT_APPLY:
        return fill(text, compared, ruling.item, ""), False
    left = put(guard.judged[0]).room if guard.judged and guard.outcome == MET else ""
    room = next((one for one in guard.judged if one.room is not None), None)
    off = next((one for one in ruling.judged if one.off is not None), None)
    if guard.outcome == MET and room and off:
        if not _alike(room, off):
            note = f"Mind '{guard.rule.title.lower()}': {left} left there."
            return f"{fill(text, compared, ruling.item, left)} {note}", False
        if (room.room or 0.0) >= (off.off or 0.0):
            return fill(text, compared, ruling.item, left), False
    if guard.outcome == NOT_SHOWN:
        waits = (
            f"First have shown what '{guard.rule.title.lower()}' needs. Until then change no level."
        )
        return waits, True
    return fill(rule.stop or text, compared, ruling.item, left or "nothing"), True


def _alike(one: Judged, other: Judged) -> bool:
    """Say whether two comparisons can be set against each other: a slope is no length."""
    return one.left.kind == other.left.kind or (
        one.left.kind in _LENGTHS and other.left.kind in _LENGTHS
    )


def _places(ruling: Ruling, finding: Finding, room: Room) -> tuple[At, ...]:
    if ruling.because == OUTSIDE:
        return ()
    values = room.deriver.spec.values
    paths: dict[str, None] = {}
    for one in ruling.judged:
        for derived in (one.left, one.right):
            if derived is not None:
                paths.update(dict.fromkeys(derived.rests_on))
    found = []
    for path in paths:
        shown = values.get(path)
        if shown is not None:
            title = _title(shown.pattern)
            found.append(
                At(
                    path, title, shown.written, shown.line, shown.column, shown.source, shown.how,
                    shown.file,
                )
            )  # fmt: skip
    return tuple(found)


def _assumed(ruling: Ruling, finding: Finding, room: Room) -> tuple[str, ...]:
    if ruling.known is None and not _rests_on_assumptions(ruling, room.deriver):
        return ()
    notes: dict[str, None] = {}
    for one in ruling.judged:
        for side in (one.left, one.right):
            if side is not None and side.assumed:
                notes.update(dict.fromkeys(side.assumed))
    return tuple(notes)


def _rests_on_assumptions(ruling: Ruling, deriver: Deriver) -> bool:
    """Say whether anything that was looked at may be assumed, without comparing it again."""
    for read in ruling.reads:
        found = deriver.get(read.path, ruling.item if read.each else "")
        if found.assumed or (read.worst and not found.known):
            return True
    return False


def _title(pattern: str) -> str:
    leaf = vocabulary().nodes.get(pattern)
    return leaf.title if leaf is not None else pattern


def _tight(ruling: Ruling, finding: Finding, room: Room) -> bool:
    if ruling.outcome != MET or (ruling.known is None and not _of_lengths(ruling.reads)):
        return False
    return any(_holds_barely(one, room.deriver) for one in ruling.judged)


def _of_lengths(reads: Reads) -> bool:
    return any(kind_of(read.path) in _LENGTHS for read in reads)


def _holds_barely(judged: Judged, deriver: Deriver) -> bool:
    """Say whether a comparison holds by less than its readings can be trusted."""
    if judged.room is None or judged.left.kind not in _LENGTHS:
        return False
    paths = judged.left.rests_on + (judged.right.rests_on if judged.right else ())
    return any(judged.room < _tolerance(path, deriver) for path in paths)


def _tolerance(path: str, deriver: Deriver) -> float:
    shown = deriver.spec.values.get(path)
    leaf = vocabulary().leaf(shown.pattern) if shown else None
    return leaf.tolerance if leaf and leaf.kind in _LENGTHS else 0.0


def _elsewhere(ruling: Ruling, finding: Finding, room: Room) -> tuple[Elsewhere, ...]:
    """Judge, for information, the cases not adopted here that come out otherwise.

    Where the rule was amended, what is adopted and no longer governs is told too.
    """
    if ruling.outcome not in (MET, NOT_MET) or len(ruling.rule.cases) < 2:
        return ()
    found = []
    for case in ruling.rule.cases:
        if (
            case is ruling.case
            or case.where is None
            or not case.sources
            or not _about_adoption(case)
        ):
            continue
        adopted = case.where.answer(room.deriver, ruling.item, asking=False).outcome
        if adopted is not False and not (adopted and ruling.rule.amended):
            continue
        answer = case.require.answer(room.deriver, ruling.item, asking=True)
        outcome = {True: MET, False: NOT_MET, None: NOT_SHOWN}[answer.outcome]
        if outcome != ruling.outcome and answer.judged:
            cited = room.citing(case.sources)
            found.append(Elsewhere(outcome, put(answer.judged[0]).needed, cited))
    return tuple(found)


def _about_adoption(case: Case) -> bool:
    return case.where is not None and all(
        getattr(part, "value", "").startswith("adopted.") for part in case.where.parts
    )


_OF_RULE = (
    "title", "how_often", "stage", "trade", "protects", "rationale", "differs", "safety", "amended",
)  # fmt: skip
_OF_RULING = ("severity", "missing", "by_exception")
_WORKED_OUT: dict[str, Callable[[Ruling, Finding, Room], Any]] = {
    "compared": _compared, "places": _places, "assumed": _assumed, "tight": _tight,
    "standing": _standing, "sources": _sources, "elsewhere": _elsewhere,
    "remedy": _remedy, "stop": _stop, "ask": _ask,
}  # fmt: skip
