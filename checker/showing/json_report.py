"""Reviews as JSON for other programs, as shared/review.schema.json describes it."""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Sequence
from typing import Any

from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, NOT_SHOWN, Review
from checker.showing.text import closing

# Raised whenever a program that reads the report would have to be changed.
FORMAT = 1

_OUTCOMES = (MET, NOT_MET, NOT_SHOWN, DOES_NOT_APPLY)


def as_json(reviews: Sequence[Review], *, accepted: bool = False) -> str:
    """Return reviews as JSON text in plain ASCII, keys in the same order every time.

    `accepted` says that whoever asked let pass what is not shown, as in the text output.
    """
    report = {
        "review_format": FORMAT,
        "reviews": [_review(review, accepted=accepted) for review in reviews],
        "closing": closing(reviews, accepted=accepted),
    }
    return json.dumps(report, indent=2) + "\n"


def _review(review: Review, *, accepted: bool) -> dict[str, Any]:
    report: dict[str, Any] = _plain(review)
    report["counts"] = {outcome: len(review.of(outcome)) for outcome in _OUTCOMES}
    report["closing"] = closing([review], accepted=accepted)
    return report


def _plain(value: Any) -> Any:
    """Return records as mappings, in the order their fields are written down in."""
    if dataclasses.is_dataclass(value):
        names = [field.name for field in dataclasses.fields(value)]
        return {name: _plain(getattr(value, name)) for name in names}
    if hasattr(value, "_fields"):
        return {name: _plain(getattr(value, name)) for name in value._fields}
    if isinstance(value, tuple):
        return [_plain(one) for one in value]
    return value
