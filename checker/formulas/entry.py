"""How high water must rise in the stone before it can enter the pipe."""

from __future__ import annotations

import math


def hole_edge_below(inside_radius: float, hole_radius: float, rows_apart: float) -> float:
    """Return the height of the lowest hole edge over the inside bottom, holes turned down [m].

    Two rows of round holes lie at equal angles to left and right of the bottom. The lower edge of
    a hole lies nearer the bottom by half the angle the hole takes up.

    Parameters: inside_radius R of the pipe [m]; hole_radius r [m]; rows_apart, angle between the
    two rows seen from the middle of the pipe [rad]. h = R (1 - cos(rows_apart / 2 - asin(r / R))),
    and 0 where the holes reach the bottom. Source: geometry of a circle.

    Raises ValueError unless r < R and 0 <= rows_apart <= pi: rows farther apart than half the
    round lie in the other half of the pipe.
    """
    return _height(inside_radius, max(0.0, _half(rows_apart) - _reach(inside_radius, hole_radius)))


def hole_edge_above(inside_radius: float, hole_radius: float, rows_apart: float) -> float:
    """Return the height of the lowest hole edge over the inside bottom, holes turned up [m].

    As `hole_edge_below` with the rows at equal angles to left and right of the top.

    Parameters: inside_radius R of the pipe [m]; hole_radius r [m]; rows_apart, angle between the
    two rows [rad]. h = R (1 - cos(pi - rows_apart / 2 - asin(r / R))). Source: geometry of a
    circle. Raises ValueError unless r < R and 0 <= rows_apart <= pi.
    """
    angle = math.pi - _half(rows_apart) - _reach(inside_radius, hole_radius)
    return _height(inside_radius, max(0.0, angle))


def _half(rows_apart: float) -> float:
    if not 0 <= rows_apart <= math.pi:
        raise ValueError("two rows of holes are between 0 and 180 degrees apart")
    return rows_apart / 2


def _reach(inside_radius: float, hole_radius: float) -> float:
    """Return half the angle a hole takes up, seen from the middle of the pipe [rad]."""
    if not 0 <= hole_radius < inside_radius:
        raise ValueError("a hole must be smaller than the pipe it is in")
    return math.asin(hole_radius / inside_radius)


def _height(inside_radius: float, angle: float) -> float:
    """Return the height over the bottom of a point this angle away from the bottom [m]."""
    return inside_radius * (1 - math.cos(angle))
