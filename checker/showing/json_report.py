"""Reviews as JSON for other programs, as shared/review.schema.json describes it."""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Iterable, Iterator, Sequence
from textwrap import indent
from typing import Any, NamedTuple

from checker.judging.carried import Closed, Comparison, Fresh, fingerprint, shown_text
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, NOT_SHOWN, Review
from checker.showing.text import Tally, closing, closing_of, tally

# Raised whenever a program that reads the report would have to be changed.
FORMAT = 1

_OUTCOMES = (MET, NOT_MET, NOT_SHOWN, DOES_NOT_APPLY)


class Part(NamedTuple):
    """One review as JSON text, and its tally."""

    text: str
    tally: Tally


def as_json(
    reviews: Sequence[Review], *, accepted: bool = False, comparison: Comparison | None = None
) -> str:
    """Return reviews as JSON text in plain ASCII, keys in the same order every time.

    `accepted` says that whoever asked let pass what is not shown, as in the text output;
    `comparison` is how the reviews differ from earlier ones.
    """
    parts = (part(review, accepted=accepted) for review in reviews)
    return "".join(in_one(parts, accepted=accepted, comparison=comparison))


def part(review: Review, *, accepted: bool = False) -> Part:
    """Return one review as it stands among the others, so that none need wait for them."""
    text = json.dumps(_review(review, accepted=accepted), indent=2)
    return Part(indent(text, "    "), tally(review))


def in_one(
    parts: Iterable[Part], *, accepted: bool = False, comparison: Comparison | None = None
) -> Iterator[str]:
    """Yield the text of `as_json` piece by piece."""
    tallies: list[Tally] = []
    yield f'{{\n  "review_format": {FORMAT},\n  "reviews": ['
    for one in parts:
        yield (",\n" if tallies else "\n") + one.text
        tallies.append(one.tally)
    report: dict[str, Any] = {"carried_over": _comparison(comparison)} if comparison else {}
    report["closing"] = closing_of(tallies, accepted=accepted)
    yield ("\n  ],\n" if tallies else "],\n") + json.dumps(report, indent=2)[2:] + "\n"


def as_json_line(review: Review, *, accepted: bool = False) -> str:
    """Return one review as one line of JSON, so that any number can be written as they come."""
    report = {"review_format": FORMAT, **_review(review, accepted=accepted)}
    return json.dumps(report, separators=(",", ":")) + "\n"


def _review(review: Review, *, accepted: bool) -> dict[str, Any]:
    report: dict[str, Any] = _plain(review)
    for finding, plain in zip(review.findings, report["findings"], strict=True):
        # What a later review knows it by.
        plain |= {"open": finding.open, "fingerprint": fingerprint(review, finding)}
    report["counts"] = {outcome: len(review.of(outcome)) for outcome in _OUTCOMES}
    report["closing"] = closing([review], accepted=accepted)
    return report


def _comparison(comparison: Comparison) -> dict[str, Any]:
    return {
        "against": comparison.against,
        "notes": list(comparison.notes),
        "unchanged": comparison.carried,
        "new": [_fresh(one) for one in comparison.fresh],
        "fixed": [_closed(one) for one in comparison.fixed],
        "dropped": [_closed(one) for one in comparison.dropped],
    }


def _fresh(one: Fresh) -> dict[str, Any]:
    finding, before = one.finding, one.before
    return {
        "file": one.review.file,
        "assembly": one.review.assembly,
        "rule": finding.rule,
        "item": finding.item,
        "severity": finding.severity,
        "outcome": finding.outcome,
        "shown": shown_text(finding),
        "before": {"outcome": before.outcome, "shown": before.shown} if before else None,
    }


def _closed(one: Closed) -> dict[str, Any]:
    return {
        "file": one.earlier.file,
        "assembly": one.earlier.assembly,
        "rule": one.before.rule,
        "item": one.before.item,
        "severity": one.before.severity,
        "before": {"outcome": one.before.outcome, "shown": one.before.shown},
        "now": {"outcome": one.now.outcome, "shown": shown_text(one.now)} if one.now else None,
    }


# Nearly all there is.
_ATOMS = (str, bool, int, float, type(None))


def _plain(value: Any) -> Any:
    """Return records as mappings, in the order their fields are written down in."""
    if type(value) in _ATOMS:
        return value
    if names := getattr(value, "_fields", ()):
        return {
            name: one if type(one) in _ATOMS else _plain(one)
            for name, one in zip(names, value, strict=True)
        }
    if dataclasses.is_dataclass(value):
        names = [field.name for field in dataclasses.fields(value)]
        return {name: _plain(getattr(value, name)) for name in names}
    if isinstance(value, Sequence):
        return [one if type(one) in _ATOMS else _plain(one) for one in value]
    return value
