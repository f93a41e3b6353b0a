"""Places whose law changes rules: `rules/local/`, one file each, chosen by name."""

from __future__ import annotations

import dataclasses
import functools
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import yaml

from checker.data import data_dir
from checker.deriving.quantities.adopted import MODEL_CODES, code_family
from checker.judging.amendments import Amendment, amend, read_amendment
from checker.judging.headed import read_headed
from checker.judging.review_data import Book
from checker.judging.rulebook import Rulebook
from checker.reading.compose import TextLoader
from checker.reading.faults import Fault, Unreadable
from checker.reading.kept import kept
from checker.reading.spec import Shown, Spec
from checker.reading.vocabulary import nearest, plain_word

_CODES = "job.codes"
_COUNTRY = "job.country"


class Code(NamedTuple):
    """A code that a place has adopted; the edition is empty where it was not read."""

    id: str
    edition: str


class Place(NamedTuple):
    """A place and what its law changes."""

    id: str
    title: str
    country: str
    names: tuple[str, ...]
    adopts: tuple[Code, ...]
    amendments: tuple[Amendment, ...]
    file: str
    digest: str

    @property
    def law(self) -> frozenset[str]:
        """The places and families of codes whose texts are law here.

        A model code is law by the edition that the spec names, so its family is none of them.
        """
        families = {code_family(code.id) for code in self.adopts} - set(MODEL_CODES)
        return frozenset({self.id, *families})


@functools.cache
def place_files() -> dict[str, Path]:
    """Return the file of every place by its id."""
    folder = data_dir("rules") / "local"
    return {file.stem: file for file in sorted(folder.glob("*.yaml"))}


@functools.cache
def load_place(place: str) -> Place:
    """Return a place by its id. Raises Unreadable; KeyError where there is no such file."""
    return read_place(place_files()[place], trusted=True)


def read_place(path: Path, *, trusted: bool = False) -> Place:
    """Read the file of a place. Raises Unreadable with every fault of it."""
    read = read_headed(path, "place.schema.json", "file of a place", trusted=trusted)
    content, faults = read.content, list[Fault]()
    if content["place"] != path.stem:
        faults.append(read.fault(f"the file of '{content['place']}' bears its name", "place"))
    raw = content.get("rules", [])
    amendments = [read_amendment(one, read.lines, read.name, faults, house=False) for one in raw]
    if faults:
        raise Unreadable(faults)
    return Place(
        content["place"], content["title"], content["country"],
        (content["place"], content["title"], *content.get("also", ())),
        tuple(Code(one["id"], one.get("edition", "")) for one in content.get("adopts", ())),
        tuple(one for one in amendments if one), read.name, read.digest,
    )  # fmt: skip


def find_place(name: str) -> Place:
    """Return the place asked for. Raises LookupError, naming the nearest known."""
    known = _known()
    if plain_word(name) not in known:
        names = sorted(place_files())
        near = nearest(name, names)
        raise LookupError(f"there is no place '{name}'{near}; known: {', '.join(names)}")
    return load_place(known[plain_word(name)])


def place_of(spec: Spec) -> Place | None:
    """Return the place that a spec's jurisdiction names; most towns have none of their own."""
    found = _known().get(plain_word(spec.text("job.jurisdiction")))
    return load_place(found) if found else None


@functools.cache
def _known() -> dict[str, str]:
    """Return the id of every place by its names. Only the heads of the files are read for it."""
    files = list(place_files().values())
    heads = kept(files, lambda: [_head(file) for file in files])
    return {plain_word(name): head[0] for head in heads for name in head}


def _head(file: Path) -> list[str]:
    head = yaml.load(file.read_text(encoding="utf-8"), TextLoader)
    return [head["place"], head["title"], *head.get("also", ())]


def by_the_law_of(place: Place, rulebook: Rulebook) -> Rulebook:
    """Return a rule book as the law of a place changes it. Raises Unreadable."""
    faults: list[Fault] = []
    rules, notes = amend(rulebook.rules, place.amendments, place.title, faults)
    if faults:
        raise Unreadable(faults)
    return dataclasses.replace(
        rulebook,
        rules=tuple(rules),
        books=(*rulebook.books, Book(place.title, place.digest)),
        law=rulebook.law | place.law,
        notes=(*rulebook.notes, *notes),
    )


def in_place(spec: Spec, place: Place) -> Spec:
    """Return a spec with the codes and the country of a place wherever it names none itself."""
    if _COUNTRY in spec.values and _CODES in spec.lists:
        return spec
    values = dict(spec.values)
    lists = dict(spec.lists)
    notes: list[str] = []
    if _COUNTRY not in values:
        values[_COUNTRY] = _shown(_COUNTRY, _COUNTRY, place.country, place)
    if _CODES not in lists and _CODES not in spec.words and place.adopts:
        lists[_CODES] = tuple(code.id for code in place.adopts)
        values |= {shown.path: shown for shown in _codes(place)}
        named = ", ".join(" ".join(filter(None, code)) for code in place.adopts)
        notes.append(f"the spec names no codes; those of {place.title} were taken: {named}")
    return dataclasses.replace(spec, values=values, lists=lists, notes=(*spec.notes, *notes))


def _codes(place: Place) -> Iterator[Shown]:
    for code in place.adopts:
        for key, text in (("id", code.id), ("edition", code.edition)):
            if text:
                path = f"{_CODES}.{code.id}.{key}"
                yield _shown(path, f"{_CODES}.each.{key}", text, place)


def _shown(path: str, pattern: str, text: str, place: Place) -> Shown:
    kind = "word" if pattern == _COUNTRY else "text"
    return Shown(path, pattern, text, text, "", "", 1, 1, kind, source=place.title, file=place.file)
