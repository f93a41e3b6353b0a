"""How old the concrete of the wall is when something is put on it or against it."""

from __future__ import annotations

from datetime import date

from checker.deriving.quantity import Assumed, NotShown, quantity

DAY = 86_400.0


def _age(born: str, day: str, what: str) -> float:
    """Return the time from one day to another [s]. Raises ValueError when it runs backward."""
    days = (date.fromisoformat(day) - date.fromisoformat(born)).days
    if days < 0:
        raise ValueError(f"{what} before the wall was poured")
    return days * DAY


@quantity(
    "coat.wall_age",
    title="age of the wall when it was coated",
    kind="duration",
    needs=("wall.poured", "coat.applied"),
    formula="day the coat was applied - day the wall was poured",
    source="definition",
    told_in=("days", "days"),
)
def coat_wall_age(poured: str, applied: str) -> float:
    """Return the age of the concrete under the coat [s]."""
    return _age(poured, applied, "the coat was applied")


@quantity(
    "backfill.wall_age",
    title="age of the wall when it is backfilled",
    kind="duration",
    needs=("wall.poured", "backfill.starts?", "job.as_of?"),
    formula="day backfill starts, else the day of the spec - day the wall was poured",
    source="definition",
    told_in=("days", "days"),
)
def backfill_wall_age(poured: str, starts: str | None, as_of: str | None) -> float | Assumed:
    """Return the age of the concrete when fill goes against it [s]."""
    if starts is not None:
        return _age(poured, starts, "backfill starts")
    if as_of is None:
        raise NotShown("the day that backfill starts", "backfill.starts")
    age = _age(poured, as_of, "the spec is dated")
    return Assumed(age, "counted to the day of the spec; no day for the backfill is shown")
