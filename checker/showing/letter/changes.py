"""What was changed between two revisions although no open item rested on it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from checker.judging.questions import title_of
from checker.reading.notations import NotationError, read_quantity
from checker.reading.spec import Spec
from checker.reading.vocabulary import Leaf, plain_word, vocabulary
from checker.showing.letter.earlier import Earlier

# What every revision changes about itself.
_OF_THE_PAPER = ("documents.", "deviations.", "variances.", "job.as_of", "job.stage", "job.done")
_HEAD = ("vocabulary", "paper", "id", "based_on", "starts_from", "assembly")


class Change(NamedTuple):
    """A value that is not what it was."""

    path: str
    title: str
    was: str
    now: str
    line: int


def changes(earlier: Earlier, spec: Spec, only: frozenset[str] | None) -> tuple[Change, ...]:
    """Return the values that differ though no open item of the earlier letter rested on them.

    `only` keeps those of one trade. What was added is told only where everything the spec said
    before is known.
    """
    asked = {path for paths in earlier.open_paths.values() for path in paths}
    was, now = earlier.values, {path: one.written for path, one in spec.values.items()}
    paths = [*was, *(path for path in now if path not in was)] if earlier.complete else [*was]
    found = []
    for path in paths:
        if _own(path) or _under(path, asked) or (only is not None and path not in only):
            continue
        old, new = was.get(path, "not shown"), now.get(path, "not shown")
        if not _same(path, old, new, spec):
            line = spec.values[path].line if path in now else 0
            found.append(Change(path, title_of(path), old, new, line))
    return tuple(found)


def _own(path: str) -> bool:
    return path in _HEAD or path.startswith(_OF_THE_PAPER)


def _under(path: str, asked: Iterable[str]) -> bool:
    """Say whether a value, or a section or list that it stands in, was asked for."""
    return any(path == one or path.startswith(f"{one}.") for one in asked)


def _same(path: str, old: str, new: str, spec: Spec) -> bool:
    """Say whether two texts say the same: `4 in` and `4"` do."""
    if plain_word(old) == plain_word(new) and old.split() == new.split():
        return True
    located = vocabulary().locate(path)
    leaf = located[0] if located else None
    if not isinstance(leaf, Leaf):
        return False
    if not leaf.numeric:
        return _word(leaf, old) == _word(leaf, new)
    unit = spec.text("levels.unit") or None
    try:
        first, second = (read_quantity(leaf.kind, one, unit).value for one in (old, new))
    except NotationError:
        return False
    return first == second


def _word(leaf: Leaf, text: str) -> str:
    plain = plain_word(text)
    return leaf.words.get(plain, text.strip()) if leaf.words else " ".join(text.split())
