"""Two states of one collection side by side: which papers are the same, and what became of each.

A paper is known by its file, as seen from the folder that was named, and its own name. What is left
over is known by its name alone, because files are renamed, or else by its file, because standards
are called by their revision.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from pathlib import Path
from typing import NamedTuple

from checker.judging.effect_data import (
    AFTER,
    BEFORE,
    NOTHING,
    WAYS,
    Effect,
    Lot,
    Paper,
    Unread,
)
from checker.judging.effect_edits import (
    Side,
    alike,
    house_edits,
    rule_edits,
    side_of,
    value_edits,
)
from checker.judging.effect_turns import gravest, margins_of, turns_of
from checker.judging.review_data import Review
from checker.judging.rulebook import Rulebook
from checker.judging.settle import settle
from checker.reading.faults import Fault, Unreadable
from checker.reading.reader import find_specs, load_spec
from checker.reading.spec import Spec

# What the reader calls a paper that gives itself no name.
_UNNAMED = re.compile(r"assembly \d+")


class Terms(NamedTuple):
    """The two folders or files as they were named, and what both are judged by."""

    before: Path
    after: Path
    rulebook: Rulebook
    by: str = ""
    day: str = ""
    place: str = ""


class Task(NamedTuple):
    """Two files to set side by side, None where there is none; `only` are two papers in them."""

    before: Path | None
    after: Path | None
    only: tuple[Paper, Paper] | None = None


class Done(NamedTuple):
    """What one task gave; `gone` and `new` found no paper of their name in the other file."""

    lots: tuple[Lot, ...] = ()
    same: tuple[Paper, ...] = ()
    gone: tuple[Paper, ...] = ()
    new: tuple[Paper, ...] = ()
    unread: tuple[Unread, ...] = ()


def tasks_of(before: Path, after: Path) -> list[Task]:
    """Return every file under two folders with its like. Raises LookupError where a side has none.

    Two files that are named themselves are each other's like, whatever they are called.
    """
    if not before.is_dir() and not after.is_dir():
        return [Task(before, after)]
    was, now = _files(before), _files(after)
    for side, found, top in ((BEFORE, was, before), (AFTER, now, after)):
        if not found:
            raise LookupError(f"{side}: no spec was found in {top}")
    return [Task(was.get(name), now.get(name)) for name in sorted(was.keys() | now.keys())]


def find_effect(
    tasks: Sequence[Task], terms: Terms, jobs: int = 1, step: Callable[[], None] = lambda: None
) -> Effect:
    """Return what became of every paper; `step` is called for each task that is done."""
    first: list[Done] = []
    for one in _shared(tasks, terms, jobs):
        first.append(one)
        step()
    gone = [paper for one in first for paper in one.gone]
    new = [paper for one in first for paper in one.new]
    renamed = _renamed(gone, new, one_file=len(tasks) == 1)
    again = [Task(Path(was.path), Path(now.path), (was, now)) for was, now in renamed]
    done = [*first, *_shared(again, terms, jobs)]
    known = {paper for pair in renamed for paper in pair}
    return Effect(
        str(terms.before),
        str(terms.after),
        terms.by,
        terms.rulebook.digest,
        tuple(sorted((lot for one in done for lot in one.lots), key=_gravest_lot)),
        tuple(paper for one in done for paper in one.same),
        tuple(paper for paper in gone if paper not in known),
        tuple(paper for paper in new if paper not in known),
        tuple(dict.fromkeys(fault for one in done for fault in one.unread)),
    )


def both_sides(lot: Lot, terms: Terms) -> list[tuple[Spec, Review]]:
    """Return a lot before and after, each with its review, for whoever draws it."""
    sides = [
        _side(paper, top, terms)
        for paper, top in ((lot.before, terms.before), (lot.after, terms.after))
    ]
    return [(one.settled.spec, one.settled.review(terms.by)) for one in sides]


def _side(paper: Paper, top: Path, terms: Terms) -> Side:
    found = _read(Path(paper.path), top, terms)
    return next(one for one in found if one.paper == paper)


def _files(top: Path) -> dict[str, Path]:
    """Return the spec files under a folder, or the one file, by their names as seen from it."""
    found = [path for path, note in find_specs([str(top)]) if path and not note]
    return {_seen_from(path, top): path for path in found}


def _seen_from(path: Path, top: Path) -> str:
    return path.relative_to(top).as_posix() if top.is_dir() else path.name


# -- one pair of files -----------------------------------------------------------------------------


def _shared(tasks: Sequence[Task], terms: Terms, jobs: int) -> Iterator[Done]:
    do = partial(set_beside, terms=terms)
    if jobs < 2 or len(tasks) < 2:
        yield from map(do, tasks)
        return
    # What it takes to start processes takes time to load.
    from checker.judging.processes import in_processes

    yield from in_processes(tasks, do, jobs, _lost)


def _lost(task: Task) -> Done:
    from checker.judging.processes import ENDED

    return Done(unread=(Unread(AFTER, Fault(str(task.after or task.before), 0, 0, ENDED)),))


def set_beside(task: Task, terms: Terms) -> Done:
    """Return what became of the papers of two files."""
    sides: list[dict[tuple[str, int], Side]] = []
    unread: list[Unread] = []
    for name, file, top in ((BEFORE, task.before, terms.before), (AFTER, task.after, terms.after)):
        try:
            found = _read(file, top, terms) if file else []
        except Unreadable as error:
            unread += [Unread(name, fault) for fault in error.faults]
            continue
        sides.append({(one.paper.name, one.paper.nth): one for one in found})
    if unread:
        return Done(unread=tuple(unread))
    was, now = sides
    if task.only:
        names = [(paper.name, paper.nth) for paper in task.only]
        return _compared([(was[names[0]], now[names[1]])], terms.by)
    done = _compared([(was[name], now[name]) for name in now if name in was], terms.by)
    return done._replace(
        gone=tuple(side.paper for name, side in was.items() if name not in now),
        new=tuple(side.paper for name, side in now.items() if name not in was),
    )


def _compared(pairs: Sequence[tuple[Side, Side]], by: str) -> Done:
    lots: list[Lot] = []
    same: list[Paper] = []
    for was, now in pairs:
        lot = _effect_on(was, now, by)
        if lot:
            lots.append(lot)
        else:
            same.append(now.paper)
    return Done(tuple(lots), tuple(same))


def _effect_on(before: Side, after: Side, by: str) -> Lot | None:
    """Return what the edit does to a paper, None where it does nothing that a review could see."""
    if alike(before.settled, after.settled):
        return None
    was, now = before.settled.review(by), after.settled.review(by)
    lot = Lot(
        before.paper,
        after.paper,
        now.hold_at,
        (*value_edits(before, after), *house_edits(before, after)),
        tuple(rule_edits(before, after)),
        turns_of(was, now),
        margins_of(was, now),
    )
    return lot if lot.edits or lot.rules or lot.way != NOTHING else None


def _read(file: Path, top: Path, terms: Terms) -> list[Side]:
    folder = str(top if top.is_dir() else top.parent)
    seen: Counter[str] = Counter()
    found = []
    for spec in load_spec(file):
        settled = settle(spec, terms.rulebook, terms.place, terms.day)
        found.append(side_of(settled, folder, seen[spec.name]))
        seen[spec.name] += 1
    return found


# -- what was renamed ------------------------------------------------------------------------------


def _renamed(
    gone: Sequence[Paper], new: Sequence[Paper], *, one_file: bool
) -> list[tuple[Paper, Paper]]:
    """Pair what is left over: by name, else as the only ones left over of one file."""
    pairs: list[tuple[Paper, Paper]] = []
    named = _grouped(new, _name)
    for was in gone:
        if found := named.get(_name(was)):
            pairs.append((was, found.pop(0)))
    paired = {paper for pair in pairs for paper in pair}
    sides = [
        _grouped([one for one in side if one not in paired], partial(_file, one_file))
        for side in (gone, new)
    ]
    for file, alone in sides[0].items():
        other = sides[1].get(file, [])
        if len(alone) == len(other) == 1:
            pairs.append((alone[0], other[0]))
    return pairs


def _grouped(papers: Sequence[Paper], key: Callable[[Paper], str]) -> dict[str, list[Paper]]:
    found: dict[str, list[Paper]] = {}
    for one in papers:
        if known := key(one):
            found.setdefault(known, []).append(one)
    return found


def _name(paper: Paper) -> str:
    return "" if _UNNAMED.fullmatch(paper.name) else paper.name


def _file(one_file: bool, paper: Paper) -> str:
    return "the one that was named" if one_file else paper.file


def _gravest_lot(lot: Lot) -> tuple[object, ...]:
    worst = gravest(lot.turns[0])[:4] if lot.turns else ()
    return WAYS.index(lot.way), worst, -len(lot.of(lot.way)), lot.after.file, lot.after.nth
