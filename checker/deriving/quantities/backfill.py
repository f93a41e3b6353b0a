"""Height of earth the wall holds back, before and after the slab is there to hold its foot."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import backfill


@quantity(
    "backfill.unbalanced_height_slab_in",
    title="height of fill held back with the slab in place",
    kind="length",
    needs=("grade.highest_at_wall", "slab.top_level"),
    rises_with=("grade.highest_at_wall",),
    falls_with=("slab.top_level",),
    formula="highest finished grade at the wall - top of the floor",
    source="IBC 2021 section 1807.1.2",
)
def unbalanced_slab_in(grade: float, floor: float) -> float:
    """Return the height of fill over the floor [m]."""
    return backfill.unbalanced_height(grade, floor)


@quantity(
    "backfill.unbalanced_height_slab_out",
    title="height of fill held back before the slab is placed",
    kind="length",
    needs=("grade.highest_at_wall", "footing.top_level"),
    rises_with=("grade.highest_at_wall",),
    falls_with=("footing.top_level",),
    formula="highest finished grade at the wall - top of the footing",
    source="IBC 2021 section 1807.1.2",
)
def unbalanced_slab_out(grade: float, footing_top: float) -> float:
    """Return the height of fill over the top of the footing [m]."""
    return backfill.unbalanced_height(grade, backfill.counted_from(footing_top))


@quantity(
    "backfill.unbalanced_height",
    title="height of fill held back as the day stands",
    kind="length",
    needs=(
        "grade.highest_at_wall",
        "backfill.slab_placed?",
        "slab.top_level?",
        "footing.top_level?",
    ),
    rises_with=("grade.highest_at_wall",),
    falls_with=("slab.top_level", "footing.top_level"),
    formula="down to the top of the floor once the slab is placed, else to the top of the footing",
    source="IBC 2021 section 1807.1.2",
)
def unbalanced(
    grade: float, placed: bool | None, floor: float | None, footing_top: float | None
) -> float | Assumed:
    """Return the height of fill that the wall holds back today [m]."""
    if placed:
        if floor is None:
            raise NotShown("the level of the top of the floor", "levels.floor_top")
        return backfill.unbalanced_height(grade, floor)
    if footing_top is None:
        raise NotShown("the level of the top of the footing", "levels.footing_top")
    height = backfill.unbalanced_height(grade, backfill.counted_from(footing_top))
    if placed is None:
        return Assumed(height, "no slab is said to be there, so the fill counts to the footing")
    return height
