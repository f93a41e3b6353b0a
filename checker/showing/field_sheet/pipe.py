"""Where the top of the pipe lies under the top of the footing, in words for a tape."""

from __future__ import annotations

from typing import NamedTuple

from checker.deriving.engine import Deriver
from checker.judging.passing import Passes
from checker.reading.spec import Spec
from checker.reading.write_back import Toward
from checker.showing.field_sheet.figures import tape

# While the forms stand, somebody lays a tape over them; later over the footing itself.
_STAGES = ("forms", "footing_poured", "drain", "pre_backfill")
HIGHEST = "the highest corner"


class Below(NamedTuple):
    """A distance below, or above."""

    distance: str
    above: bool


class PipeWord(NamedTuple):
    """How far the top of the pipe lies below the top of form or footing, at one corner.

    `least` and `most` still pass; None where no rule ends it.
    """

    corner: str
    shown: Below | None
    least: Below | None
    most: Below | None


def pipe_words(spec: Spec, deriver: Deriver, passes: Passes, stage: str) -> tuple[PipeWord, ...]:
    """Return the words for every corner, or for the highest before there are any inverts."""
    if stage not in _STAGES:
        return ()
    top = deriver.get("footing.top_level").value
    outside = deriver.get("drain.pipe_outside_diameter").value
    wall = deriver.get("drain.pipe_wall").value
    corners = [
        one for one in spec.lists.get("drain.corners", ()) if isinstance(_invert(spec, one), float)
    ]
    if not isinstance(top, float):
        return ()
    unit = "mm" if spec.system == "si" else "in"
    if not corners or not isinstance(outside, float) or not isinstance(wall, float):
        return _planned(deriver, top, unit) if not corners else ()
    over = outside - wall
    return tuple(_word(one, spec, passes, top - over, unit) for one in corners)


def _invert(spec: Spec, corner: str) -> object:
    shown = spec.values.get(f"drain.corners.{corner}.invert")
    return shown.value if shown else None


def _word(corner: str, spec: Spec, passes: Passes, reach: float, unit: str) -> PipeWord:
    """`reach` is the level an invert has when the pipe's top is level with the footing's."""
    invert = _invert(spec, corner)
    found = passes.of(f"drain.corners.{corner}.invert")
    return PipeWord(
        corner,
        _below(reach - invert, unit, "nearest") if isinstance(invert, float) else None,
        _below(reach - found.high, unit, "up") if found and found.high is not None else None,
        _below(reach - found.low, unit, "down") if found and found.low is not None else None,
    )


def _planned(deriver: Deriver, top: float, unit: str) -> tuple[PipeWord, ...]:
    ends = [
        deriver.get(f"drain.invert_window_{end}").value for end in ("top", "bottom")
    ]  # fmt: skip
    outside = deriver.get("drain.outside_diameter_planned").value
    wall = deriver.get("drain.wall_planned").value
    if not all(isinstance(one, float) for one in (*ends, outside, wall)) or ends[0] < ends[1]:
        return ()
    reach = top - (outside - wall)
    least = _below(reach - ends[0], unit, "up")
    return (PipeWord(HIGHEST, None, least, _below(reach - ends[1], unit, "down")),)


def _below(depth: float, unit: str, toward: Toward) -> Below:
    """Return a depth; `toward` rounds it as a number, so that above stays on the safe side too."""
    text = tape(depth, unit, toward)
    return Below(text.removeprefix("-"), text.startswith("-"))
