"""What the wall and the ground beside it take: coat, sheet, free-draining fill, cap, slab base."""

from __future__ import annotations

from checker.deriving.quantities.grade import PerSide, on_each_side
from checker.deriving.quantity import Assumed, NotApplicable, NotShown, OutsideLimits, quantity
from checker.formulas import levels, takeoff

USUAL_LOSS = 0.05
USUAL_ROLL = 2.0
USUAL_LAP = 6 * 0.0254
SHEET_WASTE = 0.05
ALLOWED_SHORT = 0.05


@quantity(
    "coat.area_by_levels",
    title="wall and footing to coat, by the levels",
    kind="area",
    needs=(
        "wall.perimeter",
        "coat.top_level?",
        "grade.sides.all.coat_top?",
        "coat.bottom_level",
        "footing.top_level",
        "footing.toe",
    ),
    rises_with=("wall.perimeter", "coat.top_level", "grade.sides.all.coat_top", "footing.toe"),
    falls_with=("coat.bottom_level",),
    formula="perimeter x height, and the footing's top and side where the coat goes down to there",
    source="geometry",
)
def coat_area(
    around: float,
    top: float | None,
    tops: PerSide,
    bottom: float,
    footing_top: float,
    toe: float,
) -> float:
    """Return the area between top and bottom of the coat [m2]."""
    highest = max(on_each_side(top, tops, "coat.top_level"))
    return takeoff.wall_face(around, highest, bottom, footing_top, toe)


@quantity(
    "coat.least_area",
    title="least area to reckon the coat with",
    kind="area",
    needs=("coat.area_by_levels",),
    rises_with=("coat.area_by_levels",),
    formula="wall and footing to coat, less 5 %",
    source="common practice for the 5 %",
)
def coat_least(area: float) -> float:
    """Return the smallest area that the levels bear out [m2]."""
    return area * (1 - ALLOWED_SHORT)


@quantity(
    "coat.volume_needed",
    title="coat to order, with loss",
    kind="volume",
    needs=(
        "coat.area?",
        "coat.area_by_levels?",
        "coat.dry_thickness",
        "coat.solids",
        "coat.loss?",
    ),
    rises_with=("coat.area", "coat.area_by_levels", "coat.dry_thickness", "coat.loss"),
    falls_with=("coat.solids",),
    formula="area x dry thickness / (solids x (1 - loss)); gallons = sq ft x mil / 1604 / the same",
    source="definition of volume; common practice for a loss of 5 %",
    told_in=("gal", "L"),
)
def coat_volume(
    shown: float | None, by_levels: float | None, dry: float, solids: float, loss: float | None
) -> float | Assumed:
    """Return the volume of coat that makes its dry thickness [m3]."""
    area = shown if shown is not None else by_levels
    if area is None:
        raise NotShown("the area to be coated", "coat.area", "coat.top_level", "wall.perimeter")
    volume = takeoff.coat_volume(area, dry, solids, USUAL_LOSS if loss is None else loss)
    if loss is not None:
        return volume
    return Assumed(volume, "5 % is lost to rough wall, drips and pails, a guess")


@quantity(
    "sheet.net_area",
    title="wall behind the drainage sheet",
    kind="area",
    needs=(
        "wall.perimeter",
        "sheet.top_level?",
        "grade.sides.all.sheet_top?",
        "sheet.bottom_level",
    ),
    rises_with=("wall.perimeter", "sheet.top_level", "grade.sides.all.sheet_top"),
    falls_with=("sheet.bottom_level",),
    formula="perimeter x (top - bottom of the sheet)",
    source="geometry",
)
def sheet_net(around: float, top: float | None, tops: PerSide, bottom: float) -> float:
    """Return the area that the sheet covers [m2]."""
    height = levels.height_above(max(on_each_side(top, tops, "sheet.top_level")), bottom)
    if height <= 0:
        raise OutsideLimits("the top of the sheet is not above its bottom")
    return around * height


@quantity(
    "sheet.area_needed",
    title="drainage sheet to order, with laps and waste",
    kind="area",
    needs=("sheet.net_area", "sheet.roll_width?", "sheet.side_lap?", "sheet.maker_lap?"),
    rises_with=("sheet.net_area", "sheet.side_lap", "sheet.maker_lap"),
    falls_with=("sheet.roll_width",),
    formula="area x roll width / (roll width - lap) + 5 %; roll 2 m, lap 6 in where none is shown",
    source="geometry; common practice for the 5 %",
)
def sheet_area(net: float, roll: float | None, lap: float | None, maker: float | None) -> Assumed:
    """Return the area of sheet with its laps and what is cut off [m2]."""
    laps = [one for one in (lap, maker) if one is not None] or [USUAL_LAP]
    covered = takeoff.lapped(net, USUAL_ROLL if roll is None else roll, max(laps))
    area = takeoff.with_waste(covered, SHEET_WASTE)
    wide = ", rolls 2 m wide" if roll is None else ""
    narrow = ", laps of 6 in" if lap is None and maker is None else ""
    return Assumed(area, f"5 % waste{wide}{narrow}")


@quantity(
    "sheet.least_order",
    title="least drainage sheet to order",
    kind="area",
    needs=("sheet.area_needed",),
    rises_with=("sheet.area_needed",),
    formula="drainage sheet to order, less 5 %",
    source="common practice for the 5 %",
)
def sheet_least(area: float) -> float:
    """Return the smallest order that the takeoff bears out [m2]."""
    return area * (1 - ALLOWED_SHORT)


@quantity(
    "backfill.zone_volume",
    title="free-draining fill against the wall, over the stone",
    kind="volume",
    needs=(
        "wall.perimeter",
        "backfill.free_draining_width",
        "backfill.free_draining_top",
        "stone.surface_level",
        "footing.top_level",
    ),
    rises_with=("wall.perimeter", "backfill.free_draining_width", "backfill.free_draining_top"),
    falls_with=("stone.surface_level", "footing.top_level"),
    formula="width x ring length at its middle x height from the stone to its top",
    source="geometry",
)
def zone_volume(
    around: float, width: float, top: float, stone_top: float, footing_top: float
) -> float:
    """Return the volume of the free-draining zone in place [m3]."""
    height = levels.height_above(top, max(stone_top, footing_top))
    if height < 0:
        raise OutsideLimits("the free-draining fill ends under the top of the stone")
    return takeoff.ring_area(around, 0.0, width) * height


@quantity(
    "backfill.cap_volume",
    title="tight soil for the cap over the free-draining zone",
    kind="volume",
    needs=(
        "wall.perimeter",
        "backfill.cap_material?",
        "backfill.cap_thickness",
        "backfill.free_draining_width",
    ),
    rises_with=("wall.perimeter", "backfill.cap_thickness", "backfill.free_draining_width"),
    formula="width of the zone x ring length at its middle x thickness",
    source="geometry",
)
def cap_volume(
    around: float, material: str | None, thickness: float, width: float
) -> float | Assumed:
    """Return the volume of the cap in place, no wider than the zone [m3]."""
    if material in ("paving", "none"):
        raise NotApplicable("the zone is not capped with soil")
    volume = takeoff.ring_area(around, 0.0, width) * thickness
    return Assumed(volume, "in place and as wide as the zone; loose clay takes more room")


@quantity(
    "slab.base_volume",
    title="base under the slab",
    kind="volume",
    needs=("slab.area", "slab.base_thickness"),
    rises_with=("slab.area", "slab.base_thickness"),
    formula="floor area x thickness of the base",
    source="geometry",
)
def base_volume(area: float, thickness: float) -> float:
    """Return the volume of the base in place [m3]."""
    return area * thickness


@quantity(
    "slab.base_mass",
    title="base under the slab, by weight",
    kind="mass",
    needs=("slab.base_volume", "stone.weight"),
    rises_with=("slab.base_volume", "stone.weight"),
    formula="volume x weight of the stone",
    source="definition",
    told_in=("short ton", "tonne"),
)
def base_mass(volume: float, weight: float) -> float:
    """Return the mass of the base [kg]."""
    return takeoff.mass(volume, weight)
