"""Documents laid under one another: what one says holds wherever the one above it is silent."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from typing import TypeVar

from checker.reading.spec import Shown, Spec
from checker.reading.vocabulary import plain_word

# What a paper says about itself alone.
_OF_THE_PAPER = ("vocabulary", "paper", "id", "assembly", "based_on", "starts_from")
# What happened at a house, and is no plan for another one.
_OF_THE_HOUSE = ("job.stage", "job.done", "job.as_of", "record", "measured")
_SIGNED = ("signed", "date")

_Said = TypeVar("_Said")


def under(spec: Spec, base: Spec) -> Spec:
    """Return `spec` with what `base` says wherever `spec` is silent itself.

    A list is taken whole from one of the two, and a word that stands in place of a section (or a
    list) is an answer for all of it. What a paper says about itself is never taken over; neither
    are levels on another datum, nor, from another house, what happened there.
    """
    values = _where_silent(base.values, spec)
    lists = _where_silent(base.lists, spec)
    words = _where_silent(base.words, spec)
    words = {path: word for path, word in words.items() if not _speaks_of(spec, path)}
    if _is_other_house(spec, base):
        values = {path: _as_a_plan(shown) for path, shown in _planned(values).items()}
        lists, words = _planned(lists), _planned(words)
    notes = base.notes
    if _differ(spec, base, "levels.datum"):
        levels = [path for path, shown in values.items() if shown.kind == "level"]
        values = {path: shown for path, shown in values.items() if shown.kind != "level"}
        told = f"levels of {base.file} stand on another datum and were not taken over"
        notes += (told,) if levels else ()
    return dataclasses.replace(
        spec,
        values=values | spec.values,
        lists=lists | spec.lists,
        places=base.places | spec.places,
        words=words | spec.words,
        notes=tuple(dict.fromkeys((*notes, *spec.notes))),
    )


def _where_silent(said: dict[str, _Said], spec: Spec) -> dict[str, _Said]:
    return {
        path: what
        for path, what in said.items()
        if path not in spec.values
        and path not in _OF_THE_PAPER
        and not any(above in spec.lists or above in spec.words for above in _above(path))
    }


def _above(path: str) -> Iterator[str]:
    """Yield a path and the paths of all that it stands in."""
    end = len(path)
    while end > 0:
        yield path[:end]
        end = path.rfind(".", 0, end)


def _speaks_of(spec: Spec, path: str) -> bool:
    inside = f"{path}."
    return any(
        said.startswith(inside) for group in (spec.values, spec.lists, spec.words) for said in group
    )


# -- another house ---------------------------------------------------------------------------------


def _is_other_house(spec: Spec, base: Spec) -> bool:
    """Say whether `base` is a standard, or names another job or lot."""
    return base.paper == "standard" or any(
        _differ(spec, base, path) for path in ("job.name", "job.lot")
    )


def _happened(path: str) -> bool:
    if path.startswith("holds."):
        return path.rpartition(".")[2] in _SIGNED
    return any(above in _OF_THE_HOUSE for above in _above(path))


def _planned(said: dict[str, _Said]) -> dict[str, _Said]:
    return {path: what for path, what in said.items() if not _happened(path)}


def _as_a_plan(shown: Shown) -> Shown:
    """Return a value without the sighting: what somebody saw at one house he saw at that one."""
    return shown._replace(how="", by="", date="") if shown.how == "measured" else shown


def _differ(spec: Spec, base: Spec, path: str) -> bool:
    """Say whether both give this text, and not the same."""
    ours, theirs = (plain_word(one.text(path)) for one in (spec, base))
    return bool(ours and theirs) and ours != theirs
