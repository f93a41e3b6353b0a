"""What was edited of one paper: its values, the rules it is judged by, what its house settles."""

from __future__ import annotations

import dataclasses
import os
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from checker.judging.effect_data import Edit, Paper, RuleEdit, Said
from checker.judging.house import House
from checker.judging.questions import title_of
from checker.judging.rulebook import Rule, Rulebook
from checker.judging.settle import Settled
from checker.reading.spec import Shown, Spec


class Side(NamedTuple):
    """A paper on one side of the edit, with what it is judged by."""

    paper: Paper
    settled: Settled
    top: str

    def told(self, file: str) -> str:
        """Return a file's name as seen from the folder that was named."""
        return Path(os.path.relpath(file or self.settled.spec.file, self.top)).as_posix()

    @property
    def house_file(self) -> str:
        """Return the name of the house file that counts, or nothing."""
        house = self.settled.house
        # Links were followed on the way up to it.
        top = os.path.realpath(self.top)
        return Path(os.path.relpath(house.file, top)).as_posix() if house else ""


def side_of(settled: Settled, top: str, nth: int) -> Side:
    """Return a paper as one side; `top` is the folder that was named."""
    spec = settled.spec
    side = Side(Paper("", spec.file, spec.name, nth, spec.paper, ()), settled, top)
    files = {side.told(shown.file) for shown in spec.values.values() if shown.file}
    own = side.told(spec.file)
    paper = side.paper._replace(file=own, leans_on=tuple(sorted(files - {own})))
    return side._replace(paper=paper)


def alike(before: Settled, after: Settled) -> bool:
    """Say whether nothing differs that a review could see."""
    same_rules = before.rulebook.digest == after.rulebook.digest
    return same_rules and _resolved(before.spec) == _resolved(after.spec)


def _resolved(spec: Spec) -> tuple[object, ...]:
    values = {path: _answer(shown) for path, shown in spec.values.items()}
    return spec.paper, spec.system, values, spec.lists, spec.words


def _answer(shown: Shown) -> Shown:
    """Return a value without its place; how a number is written counts where it is none."""
    written = shown.written if shown.value is None else ""
    return shown._replace(line=0, column=0, file="", written=written)


def value_edits(before: Side, after: Side) -> Iterator[Edit]:
    """Yield the values, lists and words that differ, each with its place on both sides."""
    was, now = before.settled.spec, after.settled.spec
    for path in dict.fromkeys((*now.values, *was.values)):
        a, b = was.values.get(path), now.values.get(path)
        if (a and _answer(a)) != (b and _answer(b)) and not path.endswith(".id"):
            texts = _told_apart(a, b)
            first = _said(texts[0], a.file, a.line, before) if a else None
            second = _said(texts[1], b.file, b.line, after) if b else None
            yield Edit(path, title_of(path), _edited(first, second, before, after), first, second)
    for said, says in ((was.lists, now.lists), (was.words, now.words)):
        for path in dict.fromkeys((*says, *said)):
            if said.get(path) != says.get(path):
                first, second = _whole(said, path, before), _whole(says, path, after)
                file = _edited(first, second, before, after)
                yield Edit(path, title_of(path), file, first, second)


def _edited(was: Said | None, now: Said | None, before: Side, after: Side) -> str:
    """Return the file that was edited: where a value moved to or from the paper itself, that."""
    files = {side.file for side in (was, now) if side}
    if files & {before.paper.file, after.paper.file}:
        return after.paper.file
    return now.file if now else files.pop()


def _said(text: str, file: str, line: int, side: Side) -> Said:
    return Said(text, side.told(file), line)


def _whole(all_said: Mapping[str, tuple[str, ...] | str], path: str, side: Side) -> Said | None:
    """Return what is said of a list or of a section as a whole."""
    said = all_said.get(path)
    if said is None:
        return None
    line, _, file = side.settled.spec.places.get(path, (0, 0, ""))
    return _said(said if isinstance(said, str) else ", ".join(said) or "none", file, line, side)


def _told_apart(a: Shown | None, b: Shown | None) -> tuple[str, str]:
    """Return two values as written, with their units or origins where those alone differ."""
    texts = [one.word or one.written if one else "" for one in (a, b)]
    if a and b and texts[0] == texts[1]:
        more = [one.unit if a.unit != b.unit else _origin(one) for one in (a, b)]
        texts = [f"{texts[0]} ({added})" if added else texts[0] for added in more]
    return texts[0], texts[1]


def _origin(shown: Shown) -> str:
    """Return where a value came from."""
    source = f"from {shown.source}" if shown.source else ""
    return ", ".join(filter(None, (source, shown.how, shown.by, shown.date, shown.assumed)))


def house_edits(before: Side, after: Side) -> Iterator[Edit]:
    """Yield what differs of the house file beside its rules."""
    was, now = _settings(before.settled.house), _settings(after.settled.house)
    file = after.house_file or before.house_file
    for key in dict.fromkeys((*now, *was)):
        if was.get(key) != now.get(key):
            sides = [Said(told[key], file, 0) if key in told else None for told in (was, now)]
            yield Edit(key, _HOUSE_KEYS.get(key, "variance of the house"), file, *sides)


_HOUSE_KEYS = {"house": "house", "place": "place whose law holds", "hold_at": "severity that holds"}


def _settings(house: House | None) -> dict[str, str]:
    if house is None:
        return {}
    told = {"house": house.name, "hold_at": house.hold_at}
    told["place"] = house.place.id if house.place else ""
    for one in house.variances:
        told[f"variances.{one.id}"] = f"{one.rule}, {one.issued} to {one.expires}: {one.reason}"
    return {key: text for key, text in told.items() if text}


def rule_edits(before: Side, after: Side) -> Iterator[RuleEdit]:
    """Yield the rules that differ between the two rule books."""
    was, now = (_rules(side.settled.rulebook) for side in (before, after))
    houses = [side.settled.house.digest if side.settled.house else "" for side in (before, after)]
    # A rule that differs for another reason does so because the place is another.
    file = after.paper.file if houses[0] == houses[1] else after.house_file or before.house_file
    for rule in sorted(was.keys() | now.keys()):
        a, b = was.get(rule), now.get(rule)
        if a is not b and (a and _asked(a)) != (b and _asked(b)):
            yield RuleEdit(file, a, b)


def _rules(book: Rulebook) -> dict[str, Rule]:
    return {rule.id: rule for rule in book.rules}


def _asked(rule: Rule) -> Rule:
    """Return a rule without where it stands."""
    return dataclasses.replace(rule, file="", line=0, raw={})
