"""A spec as read: plain values, SI inside, each with its place and where it came from."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import NamedTuple

from checker.values import Choice, Range

Value = float | int | bool | str | tuple[str, ...] | Range | Choice | None

NOT_SHOWN = "not shown"
BY_OTHERS = "by others"
UNKNOWN = "unknown"
NOT_APPLICABLE = "not applicable"

DESIGN = "design"
MEASURED = "measured"

# Line, column and file.
Place = tuple[int, int, str]


class Shown(NamedTuple):
    """One value of a spec.

    `value` is SI (None when `word` stands in its place or the text was kept as written);
    `written` is what the user wrote and `unit` the unit it was written in. `file` is where it
    stands: another than the spec's own where the spec starts from that one.
    """

    path: str
    pattern: str
    value: Value
    written: str
    unit: str
    word: str
    line: int
    column: int
    kind: str
    source: str = ""
    how: str = ""
    by: str = ""
    date: str = ""
    assumed: str = ""
    file: str = ""

    @property
    def seen(self) -> bool:
        """Say whether somebody with a name saw this on a day."""
        return self.how == "measured" and bool(self.by) and bool(self.date)


@dataclass(frozen=True, slots=True)
class Spec:
    """One assembly.

    `values` holds every leaf by its path, `lists` the ids of every list in file order,
    `places` the line, column and file of keys, sections and list items, `words` the words that
    stand in place of whole sections and lists, `notes` what the reader did that the writer
    should know. `basis` says whether the design is to be judged or what was measured; then
    `drawn` holds the designed values that the measured ones stand in place of.
    """

    file: str
    name: str
    paper: str
    values: dict[str, Shown] = field(repr=False)
    lists: dict[str, tuple[str, ...]] = field(repr=False)
    places: dict[str, Place] = field(repr=False)
    words: dict[str, str] = field(repr=False)
    notes: tuple[str, ...] = ()
    basis: str = DESIGN
    drawn: dict[str, Shown] = field(default_factory=dict, repr=False)

    def text(self, path: str) -> str:
        """Return a value as written, or nothing."""
        shown = self.values.get(path)
        return shown.written if shown and not shown.word else ""

    @property
    def system(self) -> str:
        """Return `us` or `si`, after the unit the levels are written in or the first length."""
        unit = self.text("levels.unit")
        if not unit:
            unit = next(
                (s.unit for s in self.values.values() if s.kind == "length" and s.unit), "ft"
            )
        return "si" if unit in {"m", "mm", "cm"} else "us"
