"""Sources and their standing: law here, law elsewhere, guidance, common practice."""

from __future__ import annotations

import functools
from dataclasses import dataclass
from typing import Any

import yaml

from checker.data import data_dir
from checker.deriving.engine import Deriver
from checker.deriving.quantities.adopted import code_family, code_year
from checker.judging.review_data import Cited
from checker.reading.compose import TextLoader
from checker.reading.kept import kept
from checker.reading.vocabulary import plain_word

LAW_HERE = "law here"
LAW_ELSEWHERE = "law elsewhere"
GUIDANCE = "guidance"
HOUSE_STANDARD = "house standard"
COMMON_PRACTICE = "common practice"
ORDER = (LAW_HERE, LAW_ELSEWHERE, GUIDANCE, COMMON_PRACTICE)

_STRONG = ("own text", "quoted in law")


@dataclass(frozen=True, slots=True)
class Source:
    """One cited place of one source, as the register holds it."""

    ref: str
    at: str
    title: str
    kind: str
    family: str
    edition: str
    country: str
    place: str
    says: str
    seen: str
    editions: tuple[str, ...]

    @property
    def name(self) -> str:
        """The title, with the edition where that is a year or a number."""
        dated = any(map(str.isdigit, self.edition)) and self.edition not in self.title
        return f"{self.title} {self.edition}" if dated else self.title

    @property
    def strong(self) -> bool:
        """Say whether the text itself was read, or an adopted law that quotes it."""
        return self.seen in _STRONG


@functools.cache
def register() -> dict[tuple[str, str], Source]:
    """Return every cited place of the register by (ref, at)."""
    file = data_dir("shared") / "sources.yaml"
    raw = kept([file], lambda: yaml.load(file.read_text(encoding="utf-8"), TextLoader))
    return {
        (ref, at): _source(ref, at, entry, place)
        for ref, entry in raw.items()
        for at, place in entry["places"].items()
    }


def _source(ref: str, at: str, entry: dict[str, Any], place: dict[str, Any]) -> Source:
    edition = entry.get("edition", "")
    return Source(
        ref,
        at,
        entry["title"],
        entry["kind"],
        entry.get("family", ""),
        edition,
        entry.get("country", ""),
        entry.get("place", ""),
        place["says"].strip(),
        place["seen"],
        (edition, *place.get("editions", ())),
    )


class Citing:
    """Cites sources for one spec, each once.

    `law` holds the places and the families of codes that a chosen place makes law.
    """

    def __init__(self, deriver: Deriver, law: frozenset[str] = frozenset()) -> None:
        self._deriver = deriver
        self._law = law
        self._known: dict[tuple[str, str], Cited] = {}

    def __call__(self, sources: tuple[Source, ...]) -> tuple[Cited, ...]:
        """Return sources with the standing they have where this spec is built."""
        return tuple(self._known.get((one.ref, one.at)) or self._cite(one) for one in sources)

    def _cite(self, source: Source) -> Cited:
        worth = standing(source, self._deriver, self._law)
        name = _read_elsewhere(source, self._deriver) or source.name
        cited = Cited(source.ref, source.at, name, source.says, source.seen, worth)
        self._known[source.ref, source.at] = cited
        return cited


def _read_elsewhere(source: Source, deriver: Deriver) -> str:
    """Return the name of a code in the edition adopted, where another edition of it was read."""
    if source.kind != "model code" or not source.edition:
        return ""
    for code in deriver.items("job.codes") or ():
        year = code_year(code, deriver.get("job.codes.each.edition", code).value)
        if code_family(code) == source.family and year and str(year) != source.edition:
            known = str(year) in source.editions
            return f"{source.title} {year}, as read in {source.edition}" if known else ""
    return ""


def standing(source: Source, deriver: Deriver, law: frozenset[str] = frozenset()) -> str:
    """Work out what a source is worth for this spec; it is never typed into a rule."""
    if source.kind == "federal regulation":
        return LAW_HERE if deriver.get("adopted.country").value == source.country else LAW_ELSEWHERE
    if source.kind not in ("law", "model code"):
        return GUIDANCE
    if source.place in law or source.family in law:
        return LAW_HERE
    if source.place:
        jurisdiction = plain_word(deriver.spec.text("job.jurisdiction"))
        return LAW_HERE if plain_word(source.place) == jurisdiction else LAW_ELSEWHERE
    return LAW_HERE if _adopted(source, deriver) else LAW_ELSEWHERE


def _adopted(source: Source, deriver: Deriver) -> bool:
    for code in deriver.items("job.codes") or ():
        if code_family(code) == source.family:
            year = code_year(code, deriver.get("job.codes.each.edition", code).value)
            years = {code_year("", edition) for edition in source.editions} - {None}
            return year is None or not years or year in years
    return False


def strongest(cited: tuple[Cited, ...]) -> str:
    """Return the standing of the strongest source, or common practice when there is none."""
    return min((one.standing for one in cited), key=ORDER.index, default=COMMON_PRACTICE)
