"""The footing drain as a run of corners: fall, ways round to the outlet, and water that stays.

Corners are numbered from 0 in order along the pipe. In a loop (`closed`) the last corner runs on
to the first, so there are as many runs as corners and two ways round to the outlet corner; in a
line there is one run fewer and one way.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple


class Run(NamedTuple):
    """One run of a drain: the corner the water comes from and the one it goes to, and the share of
    all the water that passes its lower end [-].
    """

    upper: int
    lower: int
    share: float


def fall(slope: float, run: float) -> float:
    """Return how far a pipe drops along a run [m].

    Parameters: slope, drop over length [-]; run, length along the pipe [m]. Source: definition of
    slope. Raises ValueError for a negative slope or length.
    """
    if slope < 0 or run < 0:
        raise ValueError("slope and length are counted from nothing upward")
    return slope * run


def slope(drop: float, run: float) -> float:
    """Return the slope of a pipe that drops this far along this run [-].

    Parameters: drop [m], negative where the pipe rises; run, length along the pipe [m]. Source:
    definition of slope. Raises ValueError for a run without length.
    """
    if run <= 0:
        raise ValueError("a run needs a length above nothing")
    return drop / run


def ways_to_outlet(corners: int, start: int, outlet: int, closed: bool) -> list[list[int]]:
    """Return the corners met on each way from `start` to `outlet`, both included.

    Raises ValueError when `start` or `outlet` is not one of the corners.
    """
    if not (0 <= start < corners and 0 <= outlet < corners):
        raise ValueError("the way must begin and end at corners of the drain")
    if closed:
        onward = [(start + step) % corners for step in range((outlet - start) % corners + 1)]
        back = [(start - step) % corners for step in range((start - outlet) % corners + 1)]
        return [onward] if start == outlet else [onward, back]
    step = 1 if outlet >= start else -1
    return [list(range(start, outlet + step, step))]


def standing_depths(inverts: Sequence[float], outlet: int, closed: bool) -> list[float]:
    """Return how deep water stays in the pipe at each corner before it can reach the outlet [m].

    On its way water must climb over the highest invert it meets; of two ways round it takes the
    one whose highest invert is lower. What lies under that invert stays full. Corners are taken
    as the only high and low points, with straight pipe between them. The outlet corner counts as
    the last invert of each way, so a low corner beside a higher outlet also stays full.

    Parameters: inverts [m], in order along the pipe; outlet, number of the outlet corner; closed,
    whether it is a loop. Source: geometry (lowest of the highest points of the ways).
    Raises ValueError when there is no corner or `outlet` is not one of them.
    """
    depths = []
    for corner, invert in enumerate(inverts):
        ways = ways_to_outlet(len(inverts), corner, outlet, closed)
        lip = min(max(inverts[passed] for passed in way) for way in ways)
        depths.append(lip - invert)
    if not depths:
        raise ValueError("a drain needs at least one corner")
    return depths


def run_fractions(inverts: Sequence[float], runs: Sequence[float], closed: bool) -> list[float]:
    """Return the slope of each run, whichever way it falls [-].

    Parameters: inverts [m]; runs, length from each corner to the next [m]; closed, whether it is
    a loop. Source: definition of slope. Raises ValueError when runs and corners do not match or a
    run has no length.
    """
    check_runs(inverts, runs, closed)
    following = [*inverts[1:], inverts[0]] if closed else inverts[1:]
    return [
        slope(abs(here - there), run)
        for here, there, run in zip(inverts, following, runs, strict=False)
    ]


def longest_way(
    inverts: Sequence[float], runs: Sequence[float], outlet: int, closed: bool
) -> float:
    """Return the longer way from the highest corner to the outlet corner [m].

    In a loop whose high corner lies opposite its outlet this is half the loop. Where several
    corners are equally high, the one farthest from the outlet by its shorter way counts.

    Parameters: inverts [m]; runs, length from each corner to the next [m]; outlet, number of the
    outlet corner; closed, whether it is a loop. Source: common practice ("half-loop"), geometry.
    Raises ValueError when runs and corners do not match or `outlet` is not a corner.
    """
    check_runs(inverts, runs, closed)
    if not 0 <= outlet < len(inverts):
        raise ValueError("the outlet must be at one of the corners")
    top = max(inverts)
    ways = [
        _lengths(start, outlet, runs, closed)
        for start, invert in enumerate(inverts)
        if invert == top
    ]
    return max(ways, key=min)[-1]


def parting_corner(inverts: Sequence[float], outlet: int) -> int:
    """Return the corner of a loop at which the water parts: the highest.

    Of several that are equally high it is the one with most corners between it and the outlet.
    Parameters: inverts [m], in order along the pipe; outlet, number of the outlet corner. Source:
    geometry. Raises ValueError when `outlet` is not a corner.
    """
    if not 0 <= outlet < len(inverts):
        raise ValueError("the outlet must be at one of the corners")
    top = max(inverts)
    highest = [corner for corner, invert in enumerate(inverts) if invert == top]
    return max(highest, key=lambda corner: _corners_between(corner, outlet, len(inverts)))


def runs_to_outlet(
    runs: Sequence[float], corners: int, parting: int | None, outlet: int
) -> list[Run]:
    """Return which way every run leads and what share of the water passes it, in order.

    Water is taken to come in evenly along the drain. It runs to the outlet by both ways of a loop
    from the corner where it parts, or from both ends of a line, and gathers on its way.

    Parameters: runs, length from each corner to the next [m]; corners, their number; parting,
    number of the corner where the water of a loop parts, None for a line; outlet, number of the
    outlet corner. Source: geometry. Raises ValueError when runs and corners do not match, a number
    is not one of a corner, or the water would part at the outlet.
    """
    closed = parting is not None
    check_runs([0.0] * corners, runs, closed)
    if parting == outlet:
        raise ValueError("the outlet lies at the highest corner, so nothing runs to it")
    starts = (parting, parting) if parting is not None else (0, corners - 1)
    whole = math.fsum(runs[: corners if closed else corners - 1])
    found: dict[int, Run] = {}
    for start, onward in zip(starts, (True, False), strict=True):
        ways = ways_to_outlet(corners, start, outlet, closed)
        gathered = 0.0
        for here, there in pairwise(ways[0 if onward else -1]):
            # A run bears the number of the corner that it leads on from.
            run = here if onward else there
            gathered += runs[run]
            found[run] = Run(here, there, gathered / whole)
    return [found[run] for run in sorted(found)]


def total_length(runs: Sequence[float], corners: int, closed: bool) -> float:
    """Return the length of the whole drain [m].

    Parameters: runs, length from each corner to the next [m]; corners, their number; closed,
    whether it is a loop. Source: geometry. Raises ValueError when runs and corners do not match.
    """
    check_runs([0.0] * corners, runs, closed)
    return math.fsum(runs[:corners] if closed else runs[: corners - 1])


def length_at_offset(around_wall: float, offset: float) -> float:
    """Return the length of a loop that keeps this distance outside a square-cornered wall [m].

    Each outside corner adds twice the distance and each inside corner takes it off again; a loop
    round any square-cornered house has four more outside corners than inside ones, so the loop is
    longer by eight times the distance.

    Parameters: around_wall, length round the wall's outside face [m]; offset, from that face to
    the line measured [m]. Source: geometry. Raises ValueError for a wall without length or a
    negative distance.
    """
    if around_wall <= 0 or offset < 0:
        raise ValueError("a loop needs a length, and a distance that is not negative")
    return around_wall + 8 * offset


def check_runs(inverts: Sequence[float], runs: Sequence[float], closed: bool) -> None:
    """Raise ValueError unless there is a run for each corner (one fewer will do in a line)."""
    needed = len(inverts) if closed else len(inverts) - 1
    if len(inverts) < 2 or not needed <= len(runs) <= len(inverts):
        shape = "loop" if closed else "line"
        raise ValueError(f"{len(inverts)} corners and {len(runs)} runs do not make a {shape}")
    if any(run <= 0 for run in runs[:needed]):
        raise ValueError("a run needs a length above nothing")


def _lengths(start: int, outlet: int, runs: Sequence[float], closed: bool) -> list[float]:
    """Return the length of each way from `start` to `outlet`, the shorter first."""
    onward = math.fsum(runs[min(start, outlet) : max(start, outlet)])
    return sorted([onward, math.fsum(runs) - onward]) if closed else [onward]


def _corners_between(corner: int, outlet: int, corners: int) -> int:
    """Return how many corners the shorter way from a corner of a loop to the outlet passes."""
    apart = abs(corner - outlet)
    return min(apart, corners - apart)
