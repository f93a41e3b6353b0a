"""The coat on the wall: how far up and down it goes, and how thick it can be."""

from __future__ import annotations

from checker.deriving.quantities.grade import PerSide, least_over_grade
from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import coating, levels


@quantity(
    "coat.below_joint",
    title="coat below the joint of footing and wall",
    kind="length",
    needs=("footing.top_level", "coat.bottom_level"),
    rises_with=("footing.top_level",),
    falls_with=("coat.bottom_level",),
    formula="top of the footing - bottom of the coat",
    source="geometry",
)
def below_joint(footing_top: float, bottom: float) -> float:
    """Return how far the coat reaches under the joint, negative above it [m]."""
    return levels.height_above(footing_top, bottom)


@quantity(
    "coat.below_floor",
    title="coat below the top of the floor",
    kind="length",
    needs=("slab.top_level", "coat.bottom_level"),
    rises_with=("slab.top_level",),
    falls_with=("coat.bottom_level",),
    formula="top of the floor - bottom of the coat",
    source="geometry",
)
def below_floor(floor: float, bottom: float) -> float:
    """Return how far the coat reaches under the floor, negative above it [m]."""
    return levels.height_above(floor, bottom)


@quantity(
    "coat.top_over_grade",
    title="top of the coat over the ground at the wall",
    kind="length",
    needs=(
        "coat.top_level?",
        "levels.finished_grade_at_wall?",
        "grade.sides.all.coat_top?",
        "grade.sides.all.grade_at_wall?",
    ),
    rises_with=("coat.top_level", "grade.sides.all.coat_top"),
    falls_with=("levels.finished_grade_at_wall", "grade.sides.all.grade_at_wall"),
    formula="top of the coat - finished grade at the wall, on the side where it is least",
    source="geometry",
)
def top_over_grade(
    top: float | None, ground: float | None, tops: PerSide, grounds: PerSide
) -> float:
    """Return how far the coat ends above the ground, negative when the ground is higher [m]."""
    return least_over_grade(top, ground, tops, grounds, "coat.top_level")


@quantity(
    "coat.wet_film",
    title="wet thickness that the quantity of coat can make",
    kind="length",
    needs=("coat.quantity?", "coat.area?", "coat.loss?", "coat.wet_thickness?"),
    rises_with=("coat.quantity", "coat.wet_thickness"),
    falls_with=("coat.area", "coat.loss"),
    formula="quantity x (1 - loss) / area, in mil 1604 x gal / sq ft; else the thickness shown",
    source="definition of volume",
)
def wet_film(
    volume: float | None, area: float | None, loss: float | None, shown: float | None
) -> float | Assumed:
    """Return the mean thickness of the coat as applied [m]."""
    if volume is not None and area is not None:
        mean = coating.wet_film(volume, area, loss or 0.0)
        return mean if loss is not None else Assumed(mean, "nothing is lost to rough wall or drips")
    if shown is None:
        raise NotShown("the quantity of coat and the area", "coat.quantity", "coat.area")
    return shown


@quantity(
    "coat.dry_film",
    title="dry thickness that the quantity of coat can make",
    kind="length",
    needs=("coat.wet_film", "coat.solids"),
    rises_with=("coat.wet_film", "coat.solids"),
    formula="wet thickness x solids by volume",
    source="definition of solids by volume",
)
def dry_film(wet: float, solids: float) -> float:
    """Return the mean thickness of the dried coat [m]."""
    return coating.dry_film(wet, solids)
