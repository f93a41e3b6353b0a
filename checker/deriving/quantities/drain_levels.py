"""The footing drain in height: inverts, fall, crown and the bottom of its trench."""

from __future__ import annotations

from collections.abc import Sequence

from checker.deriving.quantities.levels import TOLERANCE
from checker.deriving.quantity import NotShown, quantity
from checker.formulas import levels, pipe_run

Corners = tuple[tuple[str, float | None], ...] | None

INVERT_NEEDS = (
    "drain.corners.all.invert?",
    "drain.invert_high?",
    "drain.invert_low?",
    "drain.slope?",
    "drain.run_long?",
)


def all_inverts(corners: Corners) -> list[float]:
    """Return the inverts when every corner shows one, else an empty list."""
    inverts = [invert for _, invert in corners or ()]
    known = [invert for invert in inverts if invert is not None]
    return known if len(known) == len(inverts) else []


def lacking(corners: Corners, otherwise: str) -> Sequence[str]:
    """Return the paths of the corners without an invert; `otherwise` when no corner is listed."""
    bare = [f"drain.corners.{name}.invert" for name, invert in corners or () if invert is None]
    return bare or [otherwise]


@quantity(
    "drain.highest_invert",
    title="invert of the pipe at its highest corner",
    kind="level",
    needs=INVERT_NEEDS,
    rises_with=(
        "drain.corners.all.invert",
        "drain.invert_high",
        "drain.invert_low",
        "drain.slope",
        "drain.run_long",
    ),
    formula="highest corner, else the high invert shown, else low invert + slope x longest run",
    source="geometry",
)
def highest_invert(
    corners: Corners,
    high: float | None,
    low: float | None,
    slope: float | None,
    run: float | None,
) -> float:
    """Return the highest inside bottom of the loop [m]."""
    inverts = all_inverts(corners)
    if inverts:
        return max(inverts)
    if high is not None:
        return high
    if low is None or slope is None or run is None:
        raise NotShown("the drain's highest invert", *lacking(corners, "drain.invert_high"))
    return low + pipe_run.fall(slope, run)


@quantity(
    "drain.lowest_invert",
    title="invert of the pipe at its lowest corner",
    kind="level",
    needs=INVERT_NEEDS,
    rises_with=("drain.corners.all.invert", "drain.invert_high", "drain.invert_low"),
    falls_with=("drain.slope", "drain.run_long"),
    formula="lowest corner, else the low invert shown, else high invert - slope x longest run",
    source="geometry",
)
def lowest_invert(
    corners: Corners,
    high: float | None,
    low: float | None,
    slope: float | None,
    run: float | None,
) -> float:
    """Return the lowest inside bottom of the loop [m]."""
    inverts = all_inverts(corners)
    if inverts:
        return min(inverts)
    if low is not None:
        return low
    if high is None or slope is None or run is None:
        raise NotShown("the drain's lowest invert", *lacking(corners, "drain.invert_low"))
    return high - pipe_run.fall(slope, run)


@quantity(
    "drain.fall_total",
    title="fall of the drain from its highest to its lowest corner",
    kind="length",
    needs=INVERT_NEEDS,
    rises_with=("drain.invert_high", "drain.slope", "drain.run_long"),
    falls_with=("drain.invert_low",),
    formula="highest - lowest invert, else slope x longest run",
    source="geometry",
)
def fall_total(
    corners: Corners,
    high: float | None,
    low: float | None,
    slope: float | None,
    run: float | None,
) -> float:
    """Return the fall of the loop [m]; it needs no invert when slope and run are shown."""
    inverts = all_inverts(corners)
    if inverts:
        return max(inverts) - min(inverts)
    if high is not None and low is not None:
        if high < low:
            raise ValueError("the high invert lies below the low one")
        return high - low
    if slope is None or run is None:
        otherwise = "drain.slope" if slope is None else "drain.run_long"
        raise NotShown(
            "every invert of the drain, or its slope and longest run", *lacking(corners, otherwise)
        )
    return pipe_run.fall(slope, run)


@quantity(
    "drain.contradiction",
    title="inverts that cannot all be true",
    kind="text",
    needs=INVERT_NEEDS,
    formula="corners against the high and low invert, and the fall against slope x longest run",
    source="geometry; two levels are good to 0.04 ft",
)
def contradiction(
    corners: Corners,
    high: float | None,
    low: float | None,
    slope: float | None,
    run: float | None,
) -> str:
    """Return "none", or a sentence that names what disagrees."""
    inverts = all_inverts(corners)
    top = max(inverts) if inverts else high
    bottom = min(inverts) if inverts else low
    pairs = [
        ("the highest corner and the high invert", max(inverts, default=None), high),
        ("the lowest corner and the low invert", min(inverts, default=None), low),
        (
            "the fall by the inverts and the slope over the longest run",
            None if top is None or bottom is None else top - bottom,
            None if slope is None or run is None else pipe_run.fall(slope, run),
        ),
    ]
    compared = [(what, a, b) for what, a, b in pairs if a is not None and b is not None]
    if not compared:
        raise NotShown("two ways to the same invert", "drain.corners", "drain.invert_high")
    apart = [f"{what} disagree" for what, a, b in compared if abs(a - b) > TOLERANCE]
    return "; ".join(apart) or "none"


@quantity(
    "drain.crown_high",
    title="crown of the pipe at its highest corner",
    kind="level",
    needs=("drain.highest_invert", "drain.pipe_outside_diameter", "drain.pipe_wall"),
    rises_with=("drain.highest_invert", "drain.pipe_outside_diameter"),
    falls_with=("drain.pipe_wall",),
    formula="crown = invert + outside diameter - wall thickness",
    source="geometry",
)
def crown_high(invert: float, outside: float, wall: float) -> float:
    """Return the highest level of the pipe's outside top [m]."""
    return levels.crown(invert, outside, wall)


@quantity(
    "drain.outside_bottom_low",
    title="outside bottom of the pipe at its lowest corner",
    kind="level",
    needs=("drain.lowest_invert", "drain.pipe_wall"),
    rises_with=("drain.lowest_invert",),
    falls_with=("drain.pipe_wall",),
    formula="invert - wall thickness",
    source="geometry",
)
def outside_bottom_low(invert: float, wall: float) -> float:
    """Return the lowest level of the pipe's outside bottom [m]."""
    return levels.outside_bottom(invert, wall)


@quantity(
    "drain.trench_bottom_low",
    title="bottom of the drain trench at the lowest corner",
    kind="level",
    needs=("drain.lowest_invert", "drain.pipe_wall", "stone.bedding"),
    rises_with=("drain.lowest_invert",),
    falls_with=("drain.pipe_wall", "stone.bedding"),
    formula="invert - wall thickness - bedding",
    source="geometry",
)
def trench_bottom_low(invert: float, wall: float, bedding: float) -> float:
    """Return the lowest level the drain trench is dug to [m]."""
    return levels.trench_bottom(invert, wall, bedding)
