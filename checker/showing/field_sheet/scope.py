"""Which values can be measured or looked at during which stage of the work."""

from __future__ import annotations

from checker.reading.vocabulary import Leaf, vocabulary

# When each part of the house stands there to be measured; the longest beginning of a path counts.
_BUILT = {
    "excavation": "excavation", "site": "excavation", "soil": "excavation",
    "levels.water_seen": "excavation", "footing": "forms", "levels.footing": "forms",
    "joint": "footing_poured", "footing.winter": "footing_poured",
    "footing.heater": "footing_poured", "wall": "wall_stripped",
    "levels.top_of_wall": "wall_stripped", "coat": "coating", "insulation": "sheet",
    "sheet": "sheet", "drain": "drain", "upper_drain": "drain", "stone": "drain",
    "fabrics": "drain", "outlets": "drain", "backfill": "backfill", "backfill.deck": "pre_backfill",
    "backfill.braced": "pre_backfill", "backfill.base_key": "pre_backfill", "slab": "slab",
    "inside_drain": "slab", "levels.slab": "slab", "levels.floor": "slab", "sump": "slab",
    "grade": "final_grade", "wells": "final_grade", "areaways": "final_grade",
    "levels.finished_grade": "final_grade", "roof": "roof_water",
}  # fmt: skip

# What is measured once more, because it is seen for the last time.
_AGAIN = {
    "footing_poured": ("forms",),
    "pre_backfill": ("coating", "sheet", "drain"),
    "handover": ("slab", "final_grade", "roof_water"),
}

# What a data sheet or a label says and nobody measures on site.
_ON_PAPER = (
    "coat.maker", "coat.solids", "coat.area", "coat.rate", "sheet.maker", "sheet.thickness",
    "sheet.roll", "fabrics.each.aos", "fabrics.each.perm", "fabrics.each.flow",
    "fabrics.each.thickness", "fabrics.each.roll", "fabrics.each.open", "drain.diameter",
    "drain.outside_diameter",
    "drain.wall_thickness", "drain.hole_size", "drain.slot", "drain.joint_gap", "drain.roughness",
    "drain.stiffness", "drain.open_area", "drain.laying", "drain.slope", "stone.min", "stone.max",
    "stone.passing", "stone.void", "stone.unit", "stone.gradation", "stone.size",
    "soil.", "sump.pump_flow", "sump.pump_head", "sump.pump_shutoff", "slab.base_d10",
    "slab.base_void", "slab.base_min", "slab.retarder_thickness", "wall.design", "wall.strength_",
)  # fmt: skip
# A quantity ordered is on a ticket, a person's say-so in a letter.
_NO_READING = ("text", "texts", "curve", "date", "volume", "count")


def on_site(leaf: Leaf, stage: str) -> bool:
    """Say whether the value at a key is measured or looked at during a stage."""
    if leaf.nature == "record" or leaf.kind in _NO_READING or leaf.path.startswith(_ON_PAPER):
        return False
    built = built_at(leaf.path)
    # Once more only what may have moved or been harmed since: levels, and what is seen.
    again = leaf.kind == "level" or leaf.nature == "fact"
    return built == stage or (again and built in _AGAIN.get(stage, ()))


def built_at(pattern: str) -> str:
    """Return the stage at which something stands there to be measured, or nothing."""
    fitting = [start for start in _BUILT if pattern.startswith(start)]
    return _BUILT[max(fitting, key=len)] if fitting else ""


def leaf_at(path: str) -> tuple[Leaf, str] | None:
    """Return the key at a concrete path, and the id of the item it belongs to."""
    located = vocabulary().locate(path)
    if located is None or not isinstance(located[0], Leaf):
        return None
    return located[0], located[1]
