"""The footing drain along its length: outlet corner, slopes, lengths, and water that stays."""

from __future__ import annotations

from typing import NamedTuple

from checker.deriving.quantities.drain_levels import Corners, all_inverts
from checker.deriving.quantity import Assumed, NotShown, OutsideLimits, quantity
from checker.formulas import pipe_run

LOOP = "loop"
AS_LOOP = "the drain is read as a loop that closes on itself"

Inverts = tuple[tuple[str, float], ...]


class Course(NamedTuple):
    """A drain whose every run has a length: inverts and runs in order, and its shape."""

    inverts: list[float]
    runs: list[float]
    closed: bool
    shape_shown: bool


@quantity(
    "drain.outlet_corner",
    title="corner at which the drain leaves for its outlet",
    kind="text",
    needs=("drain.outlet_at?", "drain.corners", "drain.corners.all.invert?"),
    formula="the corner shown, else the lowest",
    source="common practice",
)
def outlet_corner(shown: str | None, corners: tuple[str, ...], inverts: Corners) -> str | Assumed:
    """Return the id of the corner the outlet leg starts from."""
    if shown is not None:
        matches = [corner for corner in corners if corner.casefold() == shown.strip().casefold()]
        if not matches:
            raise NotShown(f"'{shown}' is not the id of a corner of the drain", "drain.outlet_at")
        return matches[0]
    known = all_inverts(inverts)
    if not known:
        raise NotShown("the corner at which the drain leaves for its outlet", "drain.outlet_at")
    lowest = corners[known.index(min(known))]
    return Assumed(lowest, f"{lowest}, the lowest corner")


@quantity(
    "drain.ponding_depth",
    title="deepest water that stays in the drain",
    kind="length",
    needs=("drain.corners.all.invert", "drain.outlet_corner", "drain.shape?"),
    formula="over all corners: highest invert on the lower way round to the outlet - own invert",
    source="geometry",
)
def ponding_depth(corners: Inverts, outlet: str, shape: str | None) -> float | Assumed:
    """Return the depth of the deepest pond [m]; 0 when the whole drain empties."""
    depths, shape_matters = _standing(corners, outlet, shape)
    return Assumed(max(depths), AS_LOOP) if shape_matters else max(depths)


@quantity(
    "drain.ponding_at",
    title="corner at which water stays deepest",
    kind="text",
    needs=("drain.corners.all.invert", "drain.outlet_corner", "drain.shape?"),
    formula="the corner of the deepest pond, or none",
    source="geometry",
)
def ponding_at(corners: Inverts, outlet: str, shape: str | None) -> str | Assumed:
    """Return the id of the corner with the deepest pond, or "none"."""
    depths, shape_matters = _standing(corners, outlet, shape)
    deepest = max(depths)
    where = corners[depths.index(deepest)][0] if deepest > 0 else "none"
    return Assumed(where, AS_LOOP) if shape_matters else where


def _standing(corners: Inverts, outlet: str, shape: str | None) -> tuple[list[float], bool]:
    """Return the ponds at each corner, and whether an unshown shape would change them."""
    if len(corners) < 2:
        raise OutsideLimits("one corner alone is no run of pipe")
    inverts = [invert for _, invert in corners]
    at = [name for name, _ in corners].index(outlet)
    as_loop = pipe_run.standing_depths(inverts, at, closed=True)
    if shape == LOOP:
        return as_loop, False
    as_line = pipe_run.standing_depths(inverts, at, closed=False)
    if shape is not None:
        return as_line, False
    return as_loop, as_loop != as_line


@quantity(
    "drain.flattest_slope",
    title="slope of the drain's flattest run",
    kind="slope",
    needs=(
        "drain.corners.all.invert?",
        "drain.corners.all.run_to_next?",
        "drain.shape?",
        "drain.slope?",
        "drain.invert_high?",
        "drain.invert_low?",
        "drain.run_long?",
    ),
    rises_with=("drain.slope",),
    formula="least drop / length of all runs, else fall / longest run, else the slope shown",
    source="definition of slope",
)
def flattest_slope(
    corners: Corners,
    lengths: Corners,
    shape: str | None,
    shown: float | None,
    high: float | None,
    low: float | None,
    run: float | None,
) -> float | Assumed:
    """Return the slope of the flattest run [-]."""
    course = _course(corners, lengths, shape)
    if course is not None:
        least = min(pipe_run.run_fractions(course.inverts, course.runs, course.closed))
        return least if course.shape_shown else Assumed(least, AS_LOOP)
    inverts = all_inverts(corners)
    if inverts:
        high, low = max(inverts), min(inverts)
    if shown is not None and not (inverts and run is not None):
        return shown
    if high is None or low is None or run is None:
        raise NotShown("the drain's slope, or every invert and run", "drain.slope", "drain.corners")
    return Assumed(pipe_run.slope(high - low, run), "the fall is spread evenly over the run")


@quantity(
    "drain.average_slope",
    title="slope of the drain over its longest run",
    kind="slope",
    needs=("drain.fall_total", "drain.longest_run"),
    rises_with=("drain.fall_total",),
    falls_with=("drain.longest_run",),
    formula="fall / longest run",
    source="definition of slope",
)
def average_slope(fall: float, run: float) -> float:
    """Return the fall over the longer way round [-]."""
    return pipe_run.slope(fall, run)


@quantity(
    "drain.longest_run",
    title="longest run of the drain to its outlet",
    kind="length",
    needs=(
        "drain.corners.all.invert?",
        "drain.corners.all.run_to_next?",
        "drain.shape?",
        "drain.outlet_corner?",
        "drain.run_long?",
    ),
    rises_with=("drain.run_long",),
    formula="longer way round from the highest corner to the outlet, else the run shown",
    source="geometry; common practice",
)
def longest_run(
    corners: Corners,
    lengths: Corners,
    shape: str | None,
    outlet: str | None,
    shown: float | None,
) -> float | Assumed:
    """Return the longer way from the highest corner to the outlet [m]."""
    course = _course(corners, lengths, shape)
    if course is None or outlet is None:
        if shown is None:
            raise NotShown("the drain's longest run", "drain.run_long", "drain.corners")
        return shown
    at = [name for name, _ in corners or ()].index(outlet)
    longest = pipe_run.longest_way(course.inverts, course.runs, at, course.closed)
    return longest if course.shape_shown else Assumed(longest, AS_LOOP)


@quantity(
    "drain.loop_length",
    title="length of the drain, run by run",
    kind="length",
    needs=("drain.corners.all.run_to_next", "drain.shape?"),
    rises_with=("drain.corners.all.run_to_next",),
    formula="sum of all runs",
    source="geometry",
)
def loop_length(lengths: Inverts, shape: str | None) -> float:
    """Return the sum of the runs as written [m]."""
    runs = [length for _, length in lengths]
    return pipe_run.total_length(runs, len(runs), closed=shape in (None, LOOP))


@quantity(
    "drain.length_at_pipe",
    title="length of a loop at the middle of the pipe",
    kind="length",
    needs=(
        "wall.perimeter",
        "drain.shape?",
        "footing.toe",
        "drain.offset",
        "drain.pipe_outside_diameter",
    ),
    rises_with=("wall.perimeter", "footing.toe", "drain.offset", "drain.pipe_outside_diameter"),
    formula="perimeter of the wall + 8 x (footing beyond the wall + offset + half the diameter)",
    source="geometry of a square-cornered loop",
)
def length_at_pipe(
    around: float, shape: str | None, footing_toe: float, offset: float, outside: float
) -> Assumed:
    """Return the length of pipe in a loop that follows the wall all the way round [m]."""
    if shape not in (None, LOOP):
        raise OutsideLimits("the sum holds for a loop only")
    length = pipe_run.length_at_offset(around, footing_toe + offset + outside / 2)
    return Assumed(length, "the loop follows the whole wall, and its corners are square")


def _course(corners: Corners, lengths: Corners, shape: str | None) -> Course | None:
    """Return the drain as inverts and runs, or None when one of them is not shown.

    The last corner of a line has no next one, so its run may be left out.
    """
    inverts = all_inverts(corners)
    closed = shape in (None, LOOP)
    runs = [length for _, length in lengths or ()]
    if not closed:
        runs = runs[:-1]
    known = [run for run in runs if run is not None]
    if len(inverts) < 2 or not runs or len(known) < len(runs):
        return None
    return Course(inverts, known, closed, shape is not None)
