"""How far the side of a dig must lean back. For planning: the competent person decides on site."""

from __future__ import annotations

# 29 CFR 1926 Subpart P, Appendix B, Table B-1: horizontal run per unit of rise, up to 20 ft deep.
RUN_PER_RISE = {"stable_rock": 0.0, "a": 0.75, "b": 1.0, "c": 1.5}

# 29 CFR 1926.652(b)(1)(i): without a classified soil no steeper than one and a half to one.
UNCLASSIFIED = 1.5

DEEPEST_BY_TABLE = 20 * 0.3048


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
