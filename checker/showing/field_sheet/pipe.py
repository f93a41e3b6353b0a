"""Where the top of the pipe lies under the top of the footing, in words for a tape."""

from __future__ import annotations

from typing import NamedTuple

from checker.deriving.engine import Deriver
from checker.judging.passing import Passes
from checker.reading.spec import Spec
from checker.showing.field_sheet.figures import tape

# While the forms stand, somebody lays a tape over them; later over the footing itself.
_STAGES = ("forms", "footing_poured", "drain", "pre_backfill")
HIGHEST = "the highest corner"


class PipeWord(NamedTuple):
    """How far the top of the pipe lies below the top of form or footing, at one corner.

    `least` and `most` still pass; empty where no rule ends it. Below nothing it lies above.
    """

    corner: str
    shown: str
    least: str
    most: str


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
        tape(reach - invert, unit) if isinstance(invert, float) else "",
        tape(reach - found.high, unit, "up") if found and found.high is not None else "",
        tape(reach - found.low, unit, "down") if found and found.low is not None else "",
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
    least, most = tape(reach - ends[0], unit, "up"), tape(reach - ends[1], unit, "down")
    return (PipeWord(HIGHEST, "", least, most),)
