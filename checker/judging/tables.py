"""Limits that come from a published table: the row is chosen by a value of the spec."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

from checker.data import load_table
from checker.deriving.engine import Derived, Deriver
from checker.reading.notations import read_quantity
from checker.reading.vocabulary import plain_word
from checker.values import Choice, Range


class Band(NamedTuple):
    """A row chosen by a number: above `low` (or at it) up to `high` (or at it)."""

    low: float
    low_included: bool
    high: float
    high_included: bool

    def holds(self, value: float) -> bool:
        """Say whether the row is the one for a number."""
        over = value >= self.low if self.low_included else value > self.low
        under = value <= self.high if self.high_included else value < self.high
        return over and under


class Lookup(NamedTuple):
    """One column of one table, by a path of the spec."""

    table: str
    title: str
    path: str
    kind: str
    words: dict[str, float]
    bands: tuple[tuple[Band, float], ...]
    worst: float | None

    def find(self, deriver: Deriver, item: str) -> Derived:
        """Return the limit for a spec, or what is missing to choose the row."""
        row = deriver.get(self.path, item if ".each" in self.path else "")
        found = row._replace(title=self.title, kind=self.kind, unit="")
        if not row.known:
            if self.worst is None:
                return found
            note = f"{row.title} is not shown, so the worst row of {self.title} was taken"
            return found._replace(value=self.worst, missing=(), because="", assumed=(note,))
        values = {self._limit(end) for end in _ends(row.value)}
        if len(values) > 1 or None in values:
            because = (
                f"{row.title} spans rows of {self.title}"
                if len(values) > 1
                else f"no row of {self.title} fits"
            )
            return found._replace(value=None, missing=row.rests_on, because=because)
        return found._replace(value=values.pop())

    def _limit(self, value: Any) -> float | None:
        if isinstance(value, str):
            return self.words.get(plain_word(value))
        return next((limit for band, limit in self.bands if band.holds(value)), None)


def _ends(value: Any) -> tuple[Any, ...]:
    if isinstance(value, Choice):
        return value.options
    return (value.low, value.high) if isinstance(value, Range) else (value,)


_EDGES = {
    "at least": ("low", True),
    "above": ("low", False),
    "at most": ("high", True),
    "below": ("high", False),
}


def compile_lookup(
    raw: dict[str, Any], kind: str, operator: str, kind_of: Callable[[str], str]
) -> Lookup:
    """Compile `{table:, row:, column:, if_missing:}`. Raises ValueError for what is not there."""
    unknown = set(raw) - {"table", "row", "column", "if_missing"}
    if unknown or not {"table", "row", "column"} <= set(raw):
        raise ValueError("a table is named as {table: ..., row: ..., column: ...}")
    if not all(isinstance(each, str) for each in raw.values()):
        raise ValueError("a table, its row and its column are each called by one word")
    try:
        table = load_table(_plain_name(raw["table"]))
    except OSError:
        raise ValueError(f"there is no table '{raw['table']}'") from None
    column = table["columns"].get(raw["column"])
    if column is None:
        raise ValueError(f"table '{raw['table']}' has no column '{raw['column']}'")
    if column["kind"] != kind:
        raise ValueError(
            f"column '{raw['column']}' is a {column['kind']}, and a {kind} is compared"
        )
    row_kind = kind_of(raw["row"])
    words: dict[str, float] = {}
    bands: list[tuple[Band, float]] = []
    for row in table["rows"]:
        limit = _number(kind, row[raw["column"]])
        if "row" in row:
            words[plain_word(str(row["row"]))] = limit
        else:
            bands.append((_band(row, row_kind), limit))
    limits = [*words.values(), *(limit for _, limit in bands)]
    worst = (max if operator in ("at least", "above") else min)(limits)
    return Lookup(
        raw["table"], f"{column['title']} ({table['title']})", raw["row"], kind, words,
        tuple(bands), worst if raw.get("if_missing") == "worst" else None,
    )  # fmt: skip


def _plain_name(name: str) -> str:
    """Return the name of a table, which is never a path to somewhere else."""
    if not name.replace("_", "").isalnum():
        raise ValueError(f"there is no table '{name}'")
    return name


def _band(row: dict[str, Any], kind: str) -> Band:
    edges: dict[str, tuple[float, bool]] = {
        "low": (float("-inf"), False),
        "high": (float("inf"), False),
    }
    for word, (end, included) in _EDGES.items():
        if word in row:
            edges[end] = (_number(kind, row[word]), included)
    return Band(*edges["low"], *edges["high"])


def _number(kind: str, text: Any) -> float:
    value = read_quantity(kind, str(text)).value
    if isinstance(value, Range):
        raise ValueError(f"a table holds one number in each place, not '{text}'")
    return value
