"""What stands on the field sheet of one stage; the forms of it only lay it out.

What still passes is asked of the rules, at one reading after another. Blanks stay blank.
"""

from __future__ import annotations

from typing import NamedTuple

from checker.deriving.engine import Deriver
from checker.judging.passing import Passes
from checker.judging.review_data import NOT_MET, Review
from checker.judging.rulebook import Rulebook
from checker.reading.notations import NotationError, read_quantity
from checker.reading.spec import Spec
from checker.showing.field_sheet.dates import Earliest, earliest
from checker.showing.field_sheet.photos import Photo, photos_of
from checker.showing.field_sheet.pipe import PipeWord, pipe_words
from checker.showing.field_sheet.rows import Row, rows_of
from checker.values import ends

_FIRST = 3
_ROD = 7.62  # m, 25 ft: the longest levelling rod in common use


class Hold(NamedTuple):
    """A hold point of the stage; its signature is never filled in."""

    id: str
    type: str
    by: str


class First(NamedTuple):
    """One of the three things to measure if there is time for no more."""

    row: Row
    spare: str
    close: bool


class Sheet(NamedTuple):
    """The sheet of one assembly for one stage.

    `instrument` is the level of the instrument as it was given; rows then have rod readings.
    `open_faults` counts what is not met by this stage.
    """

    assembly: str
    file: str
    job: str
    lot: str
    datum: str
    as_of: str
    stage: str
    instrument: str
    cautions: tuple[tuple[str, str], ...]
    buried: tuple[str, ...]
    first: tuple[First, ...]
    measure: tuple[Row, ...]
    look: tuple[Row, ...]
    pipe: tuple[PipeWord, ...]
    photos: tuple[Photo, ...]
    holds: tuple[Hold, ...]
    dates: tuple[Earliest, ...]
    open_faults: int
    rulebook: str
    digest: str

    @property
    def rows(self) -> tuple[Row, ...]:
        """Return every numbered row, in the order of its numbers."""
        return (*self.measure, *self.look)


def sheet_of(spec: Spec, review: Review, rulebook: Rulebook, instrument: str = "") -> Sheet:
    """Return the sheet of an assembly for the stage by which it was reviewed.

    `rulebook` is what it was reviewed by: readings are judged by it, too. Raises ValueError when
    the instrument's level cannot be read in the unit of the spec's levels.
    """
    stage = review.by or review.stage
    height = instrument_level(spec, instrument) if instrument else None
    passes = Passes(spec, rulebook, frozenset(one.rule for one in review.findings if one.varied))
    rows = rows_of(spec, review, rulebook, stage, passes, height)
    measure = tuple(row for row in rows if row.numeric)
    look = tuple(row for row in rows if not row.numeric)
    return Sheet(
        assembly=spec.name, file=spec.file, job=spec.text("job.name"), lot=spec.text("job.lot"),
        datum=spec.text("levels.datum"), as_of=review.day, stage=stage,
        instrument=instrument.strip(),
        cautions=tuple((one.signal, one.text) for one in review.cautions), buried=review.buried,
        first=_first(measure, look), measure=measure, look=look,
        pipe=pipe_words(spec, Deriver(spec), passes, stage),
        photos=photos_of(spec, stage, rows), holds=_holds(spec, stage),
        dates=earliest(spec, stage), open_faults=_faults(review), rulebook=review.rulebook,
        digest=review.digest,
    )  # fmt: skip


def instrument_level(spec: Spec, text: str) -> float:
    """Return the level of the instrument [m]. Raises ValueError with a sentence that says why."""
    unit = spec.text("levels.unit")
    if not unit:
        raise ValueError("levels.unit is not shown, so the level of the instrument has no unit")
    try:
        value = read_quantity("level", text, unit).value
    except NotationError as error:
        raise ValueError(f"the level of the instrument: {error}") from None
    low, high = ends(value)
    if low != high:
        raise ValueError(f"the level of the instrument is one figure, not '{text}'")
    if not _within_reach(spec, low):
        raise ValueError(
            f"an instrument at {text} cannot read this drain: its level stands below a corner, or "
            "more than a 25 ft rod above one"
        )
    return low


def _within_reach(spec: Spec, height: float) -> bool:
    """Say whether every corner's invert is below the instrument and no lower than a rod is long."""
    corners = (spec.values.get(f"drain.corners.{one}.invert") for one in _corners(spec))
    levels = [one.value for one in corners if one is not None and isinstance(one.value, float)]
    return all(0.0 <= height - level <= _ROD for level in levels)


def _corners(spec: Spec) -> tuple[str, ...]:
    return spec.lists.get("drain.corners", ())


def _first(measure: tuple[Row, ...], look: tuple[Row, ...]) -> tuple[First, ...]:
    """Return what to measure first: the smallest margins, then what is missing and critical."""
    close = sorted(
        (row for row in measure if row.ratio is not None), key=lambda row: row.ratio or 0
    )
    missing = [row for row in (*measure, *look) if row.missing and row.critical]
    chosen = [First(row, row.spare, (row.ratio or 0) < 1) for row in close]
    chosen += [First(row, "", close=False) for row in missing]
    return tuple(chosen[:_FIRST])


def _holds(spec: Spec, stage: str) -> tuple[Hold, ...]:
    found = []
    for one in spec.lists.get("holds", ()):
        shown = spec.values.get(f"holds.{one}.stage")
        if shown is not None and shown.value == stage:
            kind, by = spec.text(f"holds.{one}.type"), spec.text(f"holds.{one}.by")
            found.append(Hold(one, kind, by))
    return tuple(found)


def _faults(review: Review) -> int:
    return sum(one.open for one in review.of(NOT_MET))
