"""Height of earth that a foundation wall holds back on one side only."""

from __future__ import annotations


def unbalanced_height(outside_grade: float, inside: float) -> float:
    """Return how much higher the ground stands outside the wall than inside [m].

    Before the slab is placed `inside` is the lower of the top of the footing and the ground
    inside; with a slab that touches the wall it is the top of the slab.

    Parameters: outside_grade, highest level of the ground at the wall [m]; inside, the level
    counted from [m]. Source: IBC 2021 section 1807.1.2. Not below zero: where the inside is
    higher, nothing is held back from outside.
    """
    return max(0.0, outside_grade - inside)


def counted_from(footing_top: float, inside_grade: float | None = None) -> float:
    """Return the inside level that counts while no slab is there [m].

    Parameters: footing_top [m]; inside_grade, the ground inside if it is known [m]. Source: IBC
    2021 section 1807.1.2: the lower of the two.
    """
    return footing_top if inside_grade is None else min(footing_top, inside_grade)
