"""The house file, `belowgrade.yaml`: what a house settles for the specs in its folder and below."""

from __future__ import annotations

import dataclasses
import functools
import hashlib
import stat
from pathlib import Path
from typing import NamedTuple

from checker.judging.amendments import Amendment, amend, read_amendment
from checker.judging.headed import Headed, read_headed
from checker.judging.places import Place, find_place
from checker.judging.review_data import Book
from checker.judging.rule_files import entries
from checker.judging.rulebook import Rule, Rulebook, across, read_rule
from checker.judging.variances import Variance, faults_of, read_variances
from checker.reading.faults import Fault, Unreadable
from checker.reading.starts_from import FENCE


class House(NamedTuple):
    """A house and what it settles. `place` and `hold_at` are empty where it settles neither."""

    name: str
    file: str
    place: Place | None
    hold_at: str
    rules: tuple[Rule, ...]
    amendments: tuple[Amendment, ...]
    approvers: tuple[str, ...]
    variances: tuple[Variance, ...]
    dispositions: dict[str, dict[str, str]]
    digest: str


def find_house(spec: str, *, submittal: bool = False) -> Path | None:
    """Return the nearest house file upward from a spec, or None.

    The search ends, after it has looked there, at the top of a checkout (a folder that holds
    `.git`) and at the user's home, and before any folder that everybody may write to. Whoever
    submits does not bring the rules: a file that lies beside a submittal is passed over. So is an
    empty one, which only marks how far `starts_from` may reach.
    """
    if not Path(spec).is_file():
        return None
    try:
        folder, home = Path(spec).resolve().parent, Path.home()
        for here in (folder, *folder.parents):
            if here.stat().st_mode & stat.S_IWOTH:
                return None
            beside = submittal and here == folder
            file = here / FENCE
            if not beside and file.is_file() and file.stat().st_size:
                return file
            if here == home or (here / ".git").exists():
                return None
    except (OSError, RuntimeError):
        # What may not be looked into settles nothing.
        return None
    return None


@functools.cache
def load_house(path: Path) -> House:
    """Read a house file and its own rule book. Raises Unreadable with every fault of both."""
    read = read_headed(path, "house.schema.json", "house file")
    content, faults = read.content, list[Fault]()
    files = _files(path, read, faults)
    rules, amendments, digest = _own(files, faults)
    place = _place(read, faults)
    variances = read_variances(read, faults)
    if faults:
        raise Unreadable(faults)
    return House(
        content["house"], str(path), place, content.get("hold_at", ""), rules,
        (*amendments, *_switched_off(read)), tuple(content.get("approvers", ())), variances,
        content.get("dispositions", {}),
        hashlib.sha256(f"{read.digest} {digest}".encode()).hexdigest()[:12],
    )  # fmt: skip


def _place(read: Headed, faults: list[Fault]) -> Place | None:
    if "place" not in read.content:
        return None
    try:
        return find_place(read.content["place"])
    except LookupError as error:
        faults.append(read.fault(str(error.args[0]), "place"))
        return None


def _switched_off(read: Headed) -> tuple[Amendment, ...]:
    found = []
    for number, one in enumerate(read.content.get("off", ())):
        line, column = read.where["off", number, "rule"]
        found.append(
            Amendment(one["rule"], one["reason"], "", True, None, (), one, read.name, line, column)
        )
    return tuple(found)


def _files(path: Path, read: Headed, faults: list[Fault]) -> list[Path]:
    """Return the files of the house's own rule book, which lie inside its folder."""
    files: list[Path] = []
    top = path.resolve().parent
    for number, written in enumerate(read.content.get("rules", ())):
        found = (top / written).resolve()
        inside = found.is_relative_to(top)
        some = sorted(found.glob("*.yaml")) if inside and found.is_dir() else [found]
        if not inside:
            message = f"'{written}' leads out of the folder that holds {FENCE}"
            faults.append(read.fault(message, "rules", number))
        elif not some or not all(one.is_file() for one in some):
            faults.append(read.fault(f"there is no rule file in '{written}'", "rules", number))
        else:
            files += [path.parent / one.relative_to(top) for one in some]
    return files


def _own(
    files: list[Path], faults: list[Fault]
) -> tuple[tuple[Rule, ...], tuple[Amendment, ...], str]:
    read = entries(files, faults)
    rules: list[Rule] = []
    amendments: list[Amendment] = []
    for file, raw, line, inner in read["rules"]:
        lines = inner or {id(raw): line}
        if "amends" in raw:
            amendment = read_amendment(raw, lines, file, faults, house=True)
            amendments += [amendment] if amendment else []
        else:
            rule = read_rule(raw, lines, file, faults, house=True)
            rules += [rule] if rule else []
    return tuple(rules), tuple(amendments), read["digest"]


def by_the_house(house: House, rulebook: Rulebook) -> Rulebook:
    """Return a rule book with what a house adds to it and changes in it. Raises Unreadable."""
    faults: list[Fault] = []
    rules, notes = amend((*rulebook.rules, *house.rules), house.amendments, house.name, faults)
    faults += across([*rulebook.rules, *house.rules])
    faults += faults_of(house.variances, house.approvers, {rule.id: rule for rule in rules})
    if faults:
        raise Unreadable(faults)
    return dataclasses.replace(
        rulebook,
        rules=tuple(sorted(rules, key=lambda rule: rule.id)),
        books=(*rulebook.books, Book(house.name, house.digest)),
        notes=(*rulebook.notes, *notes),
    )
