"""What a page of an effect tells, in its order: first the edits, then the lots, the gravest first.

A value of a standard touches many lots and is told once. Lots to which the same happens are told
once too: the one with the least room in full, the others by name.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from checker.judging.effect_data import (
    BETTER,
    NOTHING,
    OTHER,
    ROOM,
    WAYS,
    WORSE,
    Effect,
    Lot,
)
from checker.showing.effect_page.edited import FEW, Edited, edited_files, files_of
from checker.showing.effect_page.names import STANDARD, Names, listed, papers
from checker.showing.effect_page.rows import Row, closest, label_of, rows_of
from checker.showing.lines import counted, joined

TITLES = {
    WORSE: "Worse",
    BETTER: "Better",
    OTHER: "Judged otherwise, neither worse nor better",
    ROOM: "Met as before, with other room",
    NOTHING: "Edited, and nothing comes of it",
}


class Again(NamedTuple):
    """Findings that went one way and are told of the lot with this number."""

    way: str
    number: int
    rules: str


class Alike(NamedTuple):
    """Lots to which the same happens: one in full, the others by name, with their own figures.

    `first` is the gravest thing that happens to them; `again` names the findings that are told,
    word for word the same, of a lot further up.
    """

    number: int
    lot: Lot
    name: str
    by: str
    first: str
    rows: tuple[Row, ...]
    again: tuple[Again, ...]
    others: tuple[str, ...]


class Section(NamedTuple):
    """The lots that went one way."""

    way: str
    title: str
    alike: tuple[Alike, ...]

    @property
    def lots(self) -> int:
        """How many lots there are."""
        return sum(1 + len(one.others) for one in self.alike)

    def rest(self, most: int) -> list[str]:
        """Return the names of the lots that are left out where so many are told in full."""
        return [name for one in self.alike[most:] for name in (one.name, *one.others)]


class Contents(NamedTuple):
    """The whole page. `alone` are lists of what was not compared, each under its title."""

    sides: tuple[tuple[str, str], ...]
    summary: str
    edited: tuple[Edited, ...]
    sections: tuple[Section, ...]
    same: str
    alone: tuple[tuple[str, tuple[str, ...]], ...]
    closing: str


def contents_of(effect: Effect) -> Contents:
    """Put an effect in the order of its page."""
    names = Names(effect)
    edited = edited_files(effect, names)
    told = _Told(names, several=len(edited) > 1)
    sections = [Section(way, TITLES[way], tuple(told.alike(effect.of(way)))) for way in WAYS]
    stage = f"only what must be right by stage {effect.by.replace('_', ' ')}" if effect.by else ""
    rules = joined([f"rule book belowgrade, digest {effect.digest[:12]}", stage])
    return Contents(
        (("before", effect.before), ("after", effect.after), ("by", rules)),
        _summary(effect),
        edited,
        tuple(one for one in sections if one.alike),
        f"{papers(effect.same)} judged alike on both sides." if effect.same else "",
        tuple((title, told) for title, told in _alone(effect, names) if told),
        _closing(effect),
    )


class _Told:
    """Numbers the lots that are told in full, and tells no finding twice in the same words."""

    def __init__(self, names: Names, *, several: bool) -> None:
        self._names, self._several = names, several
        self._number = 0
        self._rows: dict[Row, int] = {}

    def alike(self, lots: Sequence[Lot]) -> Iterator[Alike]:
        """Yield lots by what happens to them, one of each kind in full."""
        groups: dict[object, list[Lot]] = {}
        for lot in lots:
            groups.setdefault(_kind(lot), []).append(lot)
        for group in groups.values():
            yield self._one(sorted(group, key=lambda lot: closest(lot).margin))

    def _one(self, lots: Sequence[Lot]) -> Alike:
        first, *others = lots
        self._number += 1
        found = rows_of(first)
        rows, again = [], dict[tuple[str, int], list[str]]()
        for row in found:
            number = self._rows.setdefault(row, self._number)
            if number == self._number:
                rows.append(row)
            else:
                again.setdefault((row.way, number), []).append(row.rule)
        return Alike(
            self._number,
            first,
            self._names.lot(first),
            self._by(first),
            label_of(found[0], with_title=True) if found else "",
            tuple(rows),
            tuple(Again(way, at, ", ".join(rules)) for (way, at), rules in again.items()),
            tuple(self._with_figure(lot) for lot in others),
        )

    def _by(self, lot: Lot) -> str:
        """Return which edits reach a lot, where they are not its own alone."""
        files = files_of(lot)
        told = self._several and files != [lot.after.file]
        return f"by the edits in {listed(files, FEW)}" if told else ""

    def _with_figure(self, lot: Lot) -> str:
        return joined([self._names(lot.after), closest(lot).text], ": ")


def _kind(lot: Lot) -> tuple[object, ...]:
    """Return what lots have in common that are told as one."""
    turns = [
        (one.way, one.finding.rule, one.finding.item, one.finding.severity,
         one.before and one.before.outcome, one.after and one.after.outcome)
        for one in lot.turns
    ]  # fmt: skip
    margins = [
        (one.finding.rule, one.finding.item, one.after.path, one.change > 0, one.tight)
        for one in lot.margins
        if one.tight or not turns
    ]
    return lot.after.paper == STANDARD, tuple(files_of(lot)), tuple(turns), tuple(sorted(margins))


def _summary(effect: Effect) -> str:
    said = [
        f"{papers([lot.after for lot in effect.of(way)])} {words}"
        for way, words in _WENT.items()
        if effect.of(way)
    ]
    critical = [
        lot.after
        for lot in effect.of(WORSE)
        if any(one.finding.severity == "critical" for one in lot.of(WORSE))
    ]
    if critical:
        few = len(critical) < len(effect.of(WORSE))
        which = f"{papers(critical)} of them" if few else "each"
        said[0] += f", {which} by something critical"
    return f"{joined(said)}." if said else "Nothing that a review could see differs."


_WENT = {
    WORSE: "worse",
    BETTER: "better",
    OTHER: "judged otherwise, neither worse nor better",
    ROOM: "met as before with other room",
    NOTHING: "edited, and nothing comes of it",
}


def _alone(effect: Effect, names: Names) -> Iterable[tuple[str, tuple[str, ...]]]:
    yield "New, so there is nothing to compare with", tuple(map(names.full, effect.new))
    yield "Gone", tuple(map(names.full, effect.gone))
    yield "Not compared, because it could not be read", tuple(map(str, effect.unread))


def _closing(effect: Effect) -> str:
    compared = len(effect.lots) + len(effect.same)
    unread = len({(one.side, one.fault.file) for one in effect.unread})
    left = f", {counted(unread, 'file')} not read" if unread else ""
    worse, better = (len(effect.of(way)) for way in (WORSE, BETTER))
    return f"{compared} compared{left}: {worse} worse, {better} better. This is not a release."
