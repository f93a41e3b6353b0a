"""What was said about the revision before: read from that letter, or that review, as JSON."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, NamedTuple

from checker.judging.review_data import (
    DOES_NOT_APPLY,
    FREQUENCIES,
    MET,
    NOT_MET,
    NOT_SHOWN,
    SEVERITIES,
    Review,
)
from checker.reading.spec import Spec
from checker.showing.finding_text import named
from checker.showing.letter.items import fault_key, question_key

FORMAT = 1
_HOW = {
    MET: "answered: now met",
    NOT_SHOWN: "no longer a fault that can be told: now not shown",
    DOES_NOT_APPLY: "no longer asked: it does not apply now",
}


@dataclass(frozen=True, slots=True)
class Earlier:
    """The numbers that were given, the items that were open, and what the spec said then.

    `complete` says whether `values` holds everything the spec said, or only what the findings
    rested on.
    """

    assembly: str
    digest: str
    numbers: dict[str, int]
    open_paths: dict[str, tuple[str, ...]]
    open_as: dict[str, tuple[str, tuple[str, ...]]]
    values: dict[str, str]
    complete: bool


class Closed(NamedTuple):
    """An item that was open and is not any more."""

    number: int
    title: str
    how: str


def load_earlier(path: Path) -> tuple[Earlier, ...]:
    """Return what a letter or a review in JSON says, assembly by assembly.

    Raises OSError when the file cannot be read, ValueError when it is neither.
    """
    try:
        raw = json.loads(path.read_text(encoding="utf-8-sig"))
    except (UnicodeDecodeError, json.JSONDecodeError, RecursionError) as error:
        raise ValueError(f"{path}: this is not JSON: {error}") from None
    try:
        if raw.get("letter_format") == FORMAT:
            return tuple(_of_letter(one) for one in raw["letters"])
        if raw.get("review_format") == FORMAT:
            return tuple(_of_review(one) for one in raw["reviews"])
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        raise ValueError(f"{path}: this letter or review is not whole: {error}") from None
    raise ValueError(f"{path}: neither a letter nor a review as this version writes them")


def matching(earlier: Sequence[Earlier], assembly: str, *, alone: bool) -> Earlier | None:
    """Return what was said about an assembly; one that is `alone` may have had another name."""
    found = next((one for one in earlier if one.assembly == assembly), None)
    return found or (earlier[0] if alone and len(earlier) == 1 else None)


def closed(earlier: Earlier, review: Review, spec: Spec, trade: str) -> tuple[Closed, ...]:
    """Return the items that were open and are not any more, by their numbers."""
    outcomes = {fault_key(one.rule, one.item): one.outcome for one in review.findings}
    still = {question_key(one.path) for one in review.questions}
    still |= {key for key, outcome in outcomes.items() if outcome == NOT_MET}
    found = []
    for key, (title, trades) in earlier.open_as.items():
        if key not in still and (not trade or trade in trades):
            how = _how(key, earlier, outcomes, spec)
            found.append(Closed(earlier.numbers[key], title, how))
    return tuple(sorted(found))


def _how(key: str, earlier: Earlier, outcomes: Mapping[str, str], spec: Spec) -> str:
    kind, _, rest = key.partition(" ")
    if kind == "rule":
        return _HOW.get(outcomes.get(key, ""), "no longer asked by these rules at this stage")
    shown = spec.values.get(rest)
    if shown is not None and shown.value is not None:
        return f"answered: {shown.written}"
    if any(one == rest or one.startswith(f"{rest}.") for one in (*spec.values, *spec.lists)):
        return "answered"
    return "no longer asked: nothing waits for it now"


def _of_letter(raw: Mapping[str, Any]) -> Earlier:
    return Earlier(
        str(raw["assembly"]), str(raw["digest"]),
        {str(key): int(number) for key, number in raw["numbers"].items()},
        {str(key): tuple(map(str, paths)) for key, paths in raw["open_paths"].items()},
        {str(key): (str(title), tuple(map(str, trades)))
         for key, (title, trades) in raw["open_as"].items()},
        {str(path): str(written) for path, written in raw["values"].items()},
        complete=True,
    )  # fmt: skip


def _of_review(raw: Mapping[str, Any]) -> Earlier:
    """Number what a review found as its first letter did."""
    findings = raw["findings"]
    trades = {one["rule"]: one["trade"] for one in findings}
    faults = sorted(
        (one for one in findings if one["outcome"] == NOT_MET),
        key=lambda one: (SEVERITIES.index(one["severity"]), FREQUENCIES.index(one["how_often"])),
    )
    open_paths = {
        fault_key(one["rule"], one["item"]): tuple(place["path"] for place in one["places"])
        for one in faults
    }
    open_as: dict[str, tuple[str, tuple[str, ...]]] = {
        fault_key(one["rule"], one["item"]): (named(one["title"], one["item"]), (one["trade"],))
        for one in faults
    }
    for one in raw["questions"]:
        key = question_key(one["path"])
        open_paths[key] = (one["path"],)
        open_as[key] = (one["title"], tuple(dict.fromkeys(trades[rule] for rule in one["rules"])))
    values = {place["path"]: place["written"] for one in findings for place in one["places"]}
    numbers = {key: at for at, key in enumerate(open_paths, start=1)}
    return Earlier(
        raw["assembly"], raw["digest"], numbers, open_paths, open_as, values, complete=False
    )
