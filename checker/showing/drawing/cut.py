"""The cut through the wall at the highest corner of its drain, with everything in it."""

from __future__ import annotations

from dataclasses import dataclass

from checker.showing.drawing import parts_building, parts_drain, parts_ground
from checker.showing.drawing.figures import Figures, Measure
from checker.showing.drawing.geometry import Pipe, Point, Shape
from checker.showing.drawing.parts import Parts
from checker.showing.drawing.setting_out import Setting, set_out

# In the order in which they lie on the sheet: what comes later covers what came before.
_ORDER = (
    parts_ground.add_earth,
    parts_ground.add_fill,
    parts_drain.add_stone,
    parts_building.add_slab,
    parts_building.add_footing,
    parts_building.add_wall,
    parts_building.add_insulation,
    parts_building.add_coat_and_sheet,
    parts_building.add_breaks,
    parts_drain.add_filter,
    parts_drain.add_pipe,
    parts_drain.add_sleeves,
    parts_drain.add_other_drains,
    parts_drain.add_outlet,
    parts_ground.add_water,
)


@dataclass(frozen=True, slots=True)
class Cut:
    """Everything the section shows, and the places that a note can point to."""

    setting: Setting
    shapes: tuple[Shape, ...]
    pipes: tuple[Pipe, ...]
    places: dict[str, Point]
    entry: Measure | None


def cut_of(figures: Figures) -> Cut:
    """Return the cut through an assembly."""
    setting = set_out(figures)
    parts = Parts(figures, setting)
    for add in _ORDER:
        add(parts)
    entry = figures.find("drain.entry_level") if setting.pipe.present else None
    return Cut(setting, tuple(parts.shapes), tuple(parts.pipes), parts.places, entry)
