"""What must be photographed before it is covered, and the cards to hold into the pictures."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from checker.reading.spec import Spec
from checker.showing.field_sheet.rows import Row

# What is covered by the work of each stage, in the words that `record.photos.shows` knows.
_OF_STAGE = {
    "forms": ("footing_base",),
    "footing_poured": ("joint",),
    "coating": ("coat",),
    "sheet": ("sheet_bottom",),
    "drain": ("pipe_with_rod", "stone_with_rule", "fabric_closed"),
    "pre_backfill": ("joint", "sheet_bottom", "pipe_with_rod", "stone_with_rule", "fabric_closed"),
    "slab": ("under_slab",),
}
_ONCE = {"drain": ("outlet",), "pre_backfill": ("outlet", "brace")}
VISIBLE = {
    "footing_base": "the soil under the form, with a rule beside the form",
    "joint": "the joint of footing and wall, with a rule on the footing",
    "coat": "the coat from the footing up, with the gauge or its label",
    "sheet_bottom": "the bottom edge of the sheet and the stone or footing it reaches",
    "pipe_with_rod": "the pipe with the rod on it, its reading legible",
    "stone_with_rule": "the stone under, beside and over the pipe, with a rule",
    "fabric_closed": "the fabric lapped shut over the stone, with a rule across the lap",
    "outlet": "the end of the outlet, with the rod on its invert",
    "brace": "the deck or the braces that hold the top of the wall",
    "under_slab": "the stone, the retarder and its laps, with a rule",
}


class Photo(NamedTuple):
    """Pictures of one corner: what each must show, the rows they prove, and the file name of each.

    `taken` are those that the record has already.
    """

    at: str
    shows: tuple[str, ...]
    files: tuple[str, ...]
    taken: tuple[str, ...]
    rows: tuple[int, ...]


def photos_of(spec: Spec, stage: str, rows: Sequence[Row]) -> tuple[Photo, ...]:
    """Return the pictures of a stage, corner by corner, then those that are taken once."""
    corners = spec.lists.get("drain.corners", ()) or spec.lists.get("grade.sides", ())
    at_each = _OF_STAGE.get(stage, ())
    found = [_photo(spec, stage, corner, at_each, rows) for corner in corners if at_each]
    if at_each and not corners:
        found.append(_photo(spec, stage, "", at_each, rows))
    once = _ONCE.get(stage, ())
    outlets = spec.lists.get("outlets", ()) if once else ()
    found += [_photo(spec, stage, one, ("outlet",), rows) for one in outlets]
    if "brace" in once:
        found.append(_photo(spec, stage, "", ("brace",), rows))
    return tuple(found)


def _photo(spec: Spec, stage: str, at: str, shows: tuple[str, ...], rows: Sequence[Row]) -> Photo:
    seen = _seen(spec, at)
    wanted = tuple(one for one in shows if one not in seen)
    names = tuple(f"{_name(spec.text('job.lot'), stage, at, one)}.jpg" for one in wanted)
    proved = tuple(row.number for row in rows if at and row.item == at)
    return Photo(at, wanted, names, tuple(one for one in shows if one in seen), proved)


def _seen(spec: Spec, at: str) -> frozenset[str]:
    """Return what the record shows of a corner already."""
    found: set[str] = set()
    for one in spec.lists.get("record.photos", ()):
        shows = spec.values.get(f"record.photos.{one}.shows")
        if spec.text(f"record.photos.{one}.at") == at and shows is not None:
            found.update(map(str, shows.value if isinstance(shows.value, tuple) else ()))
    return frozenset(found)


def _name(lot: str, *parts: str) -> str:
    """Return a name that every system can keep: letters, digits, strokes and underscores."""
    words = [f"lot{lot}" if lot else "", *parts]
    kept = (re.sub(r"[^A-Za-z0-9_]+", "-", word).strip("-")[:40] for word in words)
    return "-".join(word for word in kept if word)
