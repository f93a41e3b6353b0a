"""The edits as a page tells them: once each, by file and line, however many lots they reach."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from checker.judging.effect_data import Edit, Effect, Lot
from checker.showing.effect_page.names import Names, listed, papers
from checker.showing.effect_page.rows import RuleRow, rule_row

FEW = 8


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


def edited_files(effect: Effect, names: Names) -> tuple[Edited, ...]:
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
        return f"all but {listed([names(lot.after) for lot in rest], FEW)}"
    return f"{len(found)} of {len(lots)}: {listed([names(lot.after) for lot in found], FEW)}"


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
