"""The earliest days of the next steps, from days and times that the spec shows and no others."""

from __future__ import annotations

import math
from datetime import date, timedelta
from typing import NamedTuple

from checker.reading.spec import Shown, Spec

_DAY = 86_400.0
# The stages at which somebody waits for concrete or a coat.
_STAGES = ("footing_poured", "wall_stripped", "coating", "sheet", "drain", "pre_backfill")

# How many of the steps are over at a stage.
_DONE = {"wall_stripped": 1, "coating": 1, "sheet": 2, "drain": 3, "pre_backfill": 3}

STRIP, COAT, COVER, BACKFILL = "strip the wall", "coat the wall", "cover the coat", "backfill"


class Earliest(NamedTuple):
    """A step with its earliest day, and what that rests on; without a day, why there is none.

    `because` and `moved_by` are phrases of ours, whose `days` and `lines` are filled in.
    """

    step: str
    day: str
    because: str
    days: str
    lines: str
    moved_by: str


def earliest(spec: Spec, stage: str) -> tuple[Earliest, ...]:
    """Return the steps that are still to come; nothing where the spec shows no day at all."""
    poured, coated = spec.values.get("wall.poured"), spec.values.get("coat.applied")
    if stage not in _STAGES or (_day(poured) is None and _day(coated) is None):
        return ()
    cure = spec.values.get("coat.maker_cure") or spec.values.get("coat.cure_before_cover")
    steps = (
        _nothing(STRIP, "no age or strength for stripping is shown; whoever placed it decides"),
        _after(
            COAT, poured, spec.values.get("coat.maker_wall_age"),
            "wall poured, and the maker's age of concrete of {days}",
            "a later pour, cold, or another coat",
        ),
        _after(
            COVER, coated, cure,
            "coat applied, and its cure of {days}", "a later coat, cold, rain, or a thicker coat",
        ),
        _backfill(spec),
    )  # fmt: skip
    return steps[_DONE.get(stage, 0) :]


def _after(
    step: str, start: Shown | None, wait: Shown | None, because: str, moved_by: str
) -> Earliest:
    began = _day(start)
    if began is None:
        return _nothing(step, "the day it waits for is not shown")
    if wait is None or not isinstance(wait.value, float) or start is None:
        return _nothing(step, "the time to wait is not shown")
    # A day begun counts whole: nobody writes down the hour.
    day = began + timedelta(days=math.ceil(wait.value / _DAY - 1e-9))
    lines = f"{start.line}, {wait.line}"
    return Earliest(step, day.isoformat(), because, wait.written, lines, moved_by)


def _backfill(spec: Spec) -> Earliest:
    """No age of concrete is a strength, and the wall's is a person's decision: no day is told."""
    wanted, reached = spec.values.get("wall.strength_design"), spec.values.get("wall.strength")
    if wanted is None or not isinstance(wanted.value, float):
        return _nothing(BACKFILL, "the strength to wait for is not shown, and days are no strength")
    if reached is None or not isinstance(reached.value, float):
        return _nothing(BACKFILL, "wait for a test: the strength reached is not shown")
    if reached.value < wanted.value:
        return _nothing(BACKFILL, "the strength that was tested is less than asked for")
    return _nothing(
        BACKFILL, "no objection by strength; deck, braces and the engineer decide the day"
    )


def _nothing(step: str, why: str) -> Earliest:
    return Earliest(step, "", why, "", "", "")


def _day(shown: Shown | None) -> date | None:
    return date.fromisoformat(shown.value) if shown and isinstance(shown.value, str) else None
