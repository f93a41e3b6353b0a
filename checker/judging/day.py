"""The day that a review judges: the one asked for, else the spec's own. No clock is read here."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Iterator
from datetime import date

from checker.reading.spec import Shown, Spec

AS_OF = "job.as_of"

_ISO = re.compile(r"\d{4}-\d\d-\d\d")
# Days to come: until when a departure is asked for says nothing of the day at hand.
_TO_COME = "variances."


def day_of(spec: Spec) -> str:
    """Return the day a spec speaks of: `job.as_of`, else the latest date in it, else nothing."""
    as_of = spec.values.get(AS_OF)
    if as_of is not None and isinstance(as_of.value, str):
        return as_of.value
    return max(_dates(spec), default="")


def on_day(spec: Spec, day: str) -> Spec:
    """Return a spec as it is judged on another day than its own. Ages are counted to that day."""
    if not day:
        return spec
    shown = Shown(AS_OF, AS_OF, day, day, "", "", 1, 1, "date", source="the day asked for")
    return dataclasses.replace(spec, values={**spec.values, AS_OF: shown})


def read_day(text: str) -> str:
    """Return a day written 2031-07-02. Raises ValueError for anything else."""
    if not _ISO.fullmatch(text.strip()):
        raise ValueError(f"'{text}' is no day: write it as 2031-07-02")
    try:
        return date.fromisoformat(text.strip()).isoformat()
    except ValueError:
        raise ValueError(f"there is no day '{text}'") from None


def _dates(spec: Spec) -> Iterator[str]:
    for path, shown in spec.values.items():
        if path.startswith(_TO_COME):
            continue
        if shown.kind == "date" and isinstance(shown.value, str):
            yield shown.value
        if _ISO.fullmatch(shown.date):
            yield shown.date
