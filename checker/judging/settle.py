"""What a spec is judged by: the rule book, the law of its place, its house, and the day."""

from __future__ import annotations

import dataclasses
import hashlib
from typing import NamedTuple

from checker.judging.day import on_day
from checker.judging.house import House, by_the_house, find_house, load_house
from checker.judging.judge import review as judge
from checker.judging.places import Place, by_the_law_of, find_place, in_place, place_of
from checker.judging.review_data import Review
from checker.judging.rulebook import Rule, Rulebook
from checker.judging.variances import vary
from checker.reading.spec import Spec


class Settled(NamedTuple):
    """A spec with what it is judged by."""

    spec: Spec
    rulebook: Rulebook
    house: House | None
    day: str

    def review(self, by: str = "") -> Review:
        """Judge it, and mark what a variance of the house allows."""
        found = judge(self.spec, self.rulebook, by, self.day)
        variances = self.house.variances if self.house else ()
        if self.house and self.house.hold_at:
            found = dataclasses.replace(found, hold_at=self.house.hold_at)
        if not variances and not self.spec.lists.get("variances"):
            return found
        rules = {rule.id: rule for rule in self.rulebook.rules}
        return vary(found, self.spec, variances, rules)


def settle(spec: Spec, rulebook: Rulebook, place: str = "", day: str = "") -> Settled:
    """Find out what a spec is judged by.

    The place is the one asked for, else the one that the spec's jurisdiction names, else the
    house's. `day` is the day asked for. Raises Unreadable for a house file at fault, and
    LookupError for a place asked for that is not known.
    """
    found = find_house(spec.file, submittal=spec.paper == "submittal")
    house = load_house(found) if found else None
    where = find_place(place) if place else place_of(spec)
    stated = spec.text("job.jurisdiction")
    notes: tuple[str, ...] = ()
    if where is None and stated:
        notes = (f"no file of rules/local is for {stated}: no local law was looked at",)
    if where is None and house and not stated:
        where = house.place
    spec = in_place(spec, where) if where else spec
    spec = dataclasses.replace(on_day(spec, day), notes=spec.notes + notes)
    return Settled(spec, _book(rulebook, where, house), house, day)


def rules_of_its_house(review: Review) -> tuple[Rule, ...]:
    """Return the rules that the house of a reviewed spec adds, for a report to look up."""
    found = find_house(review.file, submittal=review.paper == "submittal")
    return load_house(found).rules if found else ()


def _book(rulebook: Rulebook, place: Place | None, house: House | None) -> Rulebook:
    if place is None and house is None:
        return rulebook
    key = (rulebook.digest, place.digest if place else "", house.digest if house else "")
    if key not in _BOOKS:
        book = by_the_law_of(place, rulebook) if place else rulebook
        book = by_the_house(house, book) if house else book
        digest = hashlib.sha256(" ".join(key).encode()).hexdigest()[:12]
        _BOOKS[key] = dataclasses.replace(book, digest=digest)
    return _BOOKS[key]


# Thousands of specs of one house are judged by one book.
_BOOKS: dict[tuple[str, str, str], Rulebook] = {}
