"""How far the side of a dig must lean back. For planning: the competent person decides on site."""

from __future__ import annotations

# 29 CFR 1926 Subpart P, Appendix B, Table B-1: horizontal run per unit of rise, up to 20 ft deep.
RUN_PER_RISE = {"stable_rock": 0.0, "a": 0.75, "b": 1.0, "c": 1.5}

# 29 CFR 1926.652(b)(1)(i): without a classified soil no steeper than one and a half to one.
UNCLASSIFIED = 1.5

DEEPEST_BY_TABLE = 20 * 0.3048

# 29 CFR 1926.651(j)(2): spoil and equipment stay 2 ft from the edge.
LEAST_SETBACK = 2 * 0.3048


def run_per_rise(soil_type: str) -> float:
    """Return the steepest slope allowed for a soil type, as level run per unit of rise [-].

    Parameters: soil_type, one of "stable_rock", "a", "b", "c". Source: 29 CFR 1926 Subpart P,
    Appendix B, Table B-1. Signs of distress, a load near the edge or water call for less.
    Raises ValueError for another type.
    """
    if soil_type not in RUN_PER_RISE:
        raise ValueError(f"there is no soil type {soil_type!r}; they are {', '.join(RUN_PER_RISE)}")
    return RUN_PER_RISE[soil_type]


def run_out(depth: float, per_rise: float) -> float:
    """Return how far back the top edge lies from the toe of the slope [m].

    Parameters: depth of the dig [m]; per_rise, level run per unit of rise [-]. Source: geometry;
    29 CFR 1926 Subpart P, Appendix B, Table B-1 and Appendix F for the limit.
    Raises ValueError for a depth of nothing or less, for more than 20 ft (6.096 m), where a
    registered engineer must design the protection, and for a negative slope.
    """
    if depth <= 0:
        raise ValueError("a dig needs a depth above nothing")
    if depth > DEEPEST_BY_TABLE + 1e-9:
        raise ValueError("the table ends at 20 ft; below that a registered engineer designs it")
    if per_rise < 0:
        raise ValueError("a side that leans outward is no slope")
    return depth * per_rise


def bench_slope(width: float, height: float) -> float:
    """Return how far a benched side lies back on the whole, as level run per unit of rise [-].

    Parameters: width of each bench [m]; height of each face [m]. Source: geometry; the figures of
    29 CFR 1926 Subpart P, Appendix B, judge benches by the line through their edges. Raises
    ValueError for a face without height or a negative width.
    """
    if height <= 0:
        raise ValueError("a bench needs a face with a height above nothing")
    if width < 0:
        raise ValueError("a bench cannot be narrower than nothing")
    return width / height


def room_needed(run: float, working_width: float, footing_toe: float) -> float:
    """Return the room from the wall to the top edge of the slope [m].

    Parameters: run, from the toe of the slope to its top edge [m]; working_width, clear between
    forms and toe [m]; footing_toe, footing beyond the wall [m]. Source: geometry. Raises ValueError
    for a negative length.
    """
    if min(run, working_width, footing_toe) < 0:
        raise ValueError("the parts of the room are counted from nothing upward")
    return run + working_width + footing_toe


def distance_needed(base: float, bottom: float, run: float) -> float:
    """Return how far the edge of a dig must keep from a footing that it may not undercut [m].

    A line runs down at 1 to 1 from the footing's base; the toe of the dig stays outside it. Where
    the bank lies back farther than the base stands over the bottom, nothing is needed.

    Parameters: base, level of the footing's underside [m]; bottom, level of the dig [m]; run of the
    dig's side from its top edge to its toe, 0 where it stands upright [m]. Source: common practice,
    geometry. Raises ValueError for a negative run.
    """
    if run < 0:
        raise ValueError("a side that leans outward is no slope")
    return max(0.0, base - bottom - run)


def setback_needed(depth: float, run: float) -> float:
    """Return how far from the edge a load must stand so as not to press on the bank [m].

    It stands as far from the toe as the hole is deep, and 2 ft from the edge at least.

    Parameters: depth of the dig [m]; run of its side from edge to toe [m]. Source: common practice
    for the line at 1 to 1; 29 CFR 1926.651(j)(2) for the 2 ft. Raises ValueError for a depth of
    nothing or a negative run.
    """
    if depth <= 0 or run < 0:
        raise ValueError("a dig has a depth, and its sides do not lean outward")
    return max(LEAST_SETBACK, depth - run)
