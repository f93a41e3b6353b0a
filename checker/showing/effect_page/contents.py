"""What a page of an effect tells, in its order: first the edits, then the lots, the gravest first.

A value of a standard touches many lots and is told once. Lots to which the same happens are told
once too: the one with the least room in full, the others by name.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from checker.judging.effect import BETTER, NOTHING, OTHER, ROOM, WAYS, WORSE, Edit, Lot, Paper
from checker.judging.effect_files import Effect
from checker.showing.effect_page.rows import Row, RuleRow, closest, label_of, rows_of, rule_row
from checker.showing.lines import counted, joined

TITLES = {
    WORSE: "Worse",
    BETTER: "Better",
    OTHER: "Otherwise, neither worse nor better",
    ROOM: "Met as before, with other room",
    NOTHING: "Values differ and nothing comes of it",
}
# More names than this hide what they are named for.
MOST_NAMES = 30
_FEW = 8
STANDARD = "standard"


class EditRow(NamedTuple):
    """A value that differs: where it stands, what it was, what it is, and which lots it reaches.

    `reaches` is empty where it reaches all that the file reaches.
    """

    line: str
    path: str
    title: str
    was: str
    now: str
    reaches: str


class Edited(NamedTuple):
    """A file that was edited, and what it reaches."""

    file: str
    reaches: str
    rows: tuple[EditRow, ...]
    rules: tuple[RuleRow, ...]


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
    edited = _edited(effect, names)
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


# -- what was edited -------------------------------------------------------------------------------


def _edited(effect: Effect, names: Names) -> tuple[Edited, ...]:
    """Return the files that were edited, those that reach most lots first."""
    reached: dict[str, list[Lot]] = {}
    for lot in effect.lots:
        for file in files_of(lot):
            reached.setdefault(file, []).append(lot)
    order = sorted(reached, key=lambda file: (-len(reached[file]), file))
    return tuple(_file(file, reached[file], effect, names) for file in order)


def files_of(lot: Lot) -> list[str]:
    """Return the files whose edits reach a lot."""
    return sorted({one.file for one in lot.edits} | {one.file for one in lot.rules})


def _file(file: str, lots: list[Lot], effect: Effect, names: Names) -> Edited:
    edits: dict[Edit, list[Lot]] = {}
    rules = []
    for lot in lots:
        for edit in lot.edits:
            if edit.file == file:
                edits.setdefault(edit, []).append(lot)
        for rule in lot.rules:
            row = rule_row(rule)
            rules += [row] if rule.file == file and row not in rules else []
    rows = [_row(edit, found, lots, file, names) for edit, found in edits.items()]
    return Edited(file, _reaches(file, lots, effect), tuple(_by_line(rows)), tuple(rules))


def _row(edit: Edit, found: list[Lot], lots: list[Lot], file: str, names: Names) -> EditRow:
    was, now = edit.before, edit.after
    place = now or was
    line = f"line {place.line}" if place and place.line else ""
    gone = f"was line {was.line}" if was and not now and was.line else ""
    # A paper that was renamed is still itself.
    own = (file, found[0].before.file)
    texts = [
        "not said" if side is None
        else side.text if side.file in own
        else f"{side.text} ({side.file}, line {side.line})"
        for side in (was, now)
    ]  # fmt: skip
    return EditRow(
        gone or line, edit.path, edit.title, texts[0], texts[1], _of_all(found, lots, names)
    )


def _of_all(found: list[Lot], lots: list[Lot], names: Names) -> str:
    """Return which of the lots that a file reaches one edit reaches, nothing where it is all."""
    reached = {lot.after for lot in found}
    rest = [lot for lot in lots if lot.after not in reached]
    if not rest:
        return ""
    if len(rest) < len(found):
        return f"all but {listed([names(lot.after) for lot in rest], _FEW)}"
    return f"{len(found)} of {len(lots)}: {listed([names(lot.after) for lot in found], _FEW)}"


def _by_line(rows: Iterable[EditRow]) -> list[EditRow]:
    return sorted(rows, key=lambda row: (int(row.line.rpartition(" ")[2] or 0), row.path))


def _reaches(file: str, lots: list[Lot], effect: Effect) -> str:
    """Return how many papers the edits of a file reach, of those that stand on it."""
    if [lot.after.file for lot in lots] == [file]:
        return ""
    idle = [paper for paper in effect.same if file in paper.leans_on]
    verbs = ("starts", "takes") if len(idle) == 1 else ("start", "take")
    rest = f"; {papers(idle)} {verbs[0]} from it and {verbs[1]} over nothing that was edited"
    return f"reaches {papers([lot.after for lot in lots])}{rest if idle else ''}"


# -- what came of it -------------------------------------------------------------------------------


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
        return f"by the edits in {listed(files, _FEW)}" if told else ""

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
    NOTHING: "with other values and nothing that comes of it",
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
