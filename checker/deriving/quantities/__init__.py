"""Every quantity of the project. Importing this package registers them all."""

from checker.deriving.quantities import (
    adopted,
    backfill,
    coat,
    drain_entry,
    drain_levels,
    drain_run,
    excavation,
    footing,
    grade,
    levels,
    lists,
    outlets,
    sheet,
    soil,
    stone,
)

__all__ = [
    "adopted",
    "backfill",
    "coat",
    "drain_entry",
    "drain_levels",
    "drain_run",
    "excavation",
    "footing",
    "grade",
    "levels",
    "lists",
    "outlets",
    "sheet",
    "soil",
    "stone",
]
