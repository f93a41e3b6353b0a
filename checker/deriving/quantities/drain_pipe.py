"""Sizes of the drain pipe and its bedding: as shown, from the table of pipes, or to plan with."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.deriving.tables import pipe_row, widest_plastic_pipe

LEAST_BEDDING = 2 * 0.0254
USUAL_PIPE = 4 * 0.0254


@quantity(
    "drain.pipe_outside_diameter",
    title="outside diameter of the pipe",
    kind="length",
    needs=("drain.outside_diameter?", "drain.diameter?", "drain.material?"),
    rises_with=("drain.outside_diameter",),
    formula="the outside diameter shown, else the table of pipes by nominal size and material",
    source="shared/tables/pipes.yaml",
)
def pipe_outside_diameter(
    shown: float | None, diameter: float | None, material: str | None
) -> float | Assumed:
    """Return the outside diameter of the pipe [m]."""
    if shown is not None:
        return shown
    row = pipe_row(diameter, material) if diameter is not None and material else None
    if row is None:
        raise NotShown("the outside diameter of the pipe", "drain.outside_diameter")
    return Assumed(row.outside_diameter, "the usual size for this pipe, from the table of pipes")


@quantity(
    "drain.pipe_wall",
    title="wall of the pipe",
    kind="length",
    needs=("drain.wall_thickness?", "drain.diameter?", "drain.material?"),
    rises_with=("drain.wall_thickness",),
    formula="the wall shown, else the table of pipes by nominal size and material",
    source="shared/tables/pipes.yaml",
)
def pipe_wall(shown: float | None, diameter: float | None, material: str | None) -> float | Assumed:
    """Return the thickness of the pipe's wall [m]."""
    if shown is not None:
        return shown
    row = pipe_row(diameter, material) if diameter is not None and material else None
    if row is None:
        raise NotShown("the wall thickness of the pipe", "drain.wall_thickness")
    return Assumed(row.wall, "the usual wall for this pipe, from the table of pipes")


@quantity(
    "drain.outside_diameter_planned",
    title="outside diameter of the pipe to plan with",
    kind="length",
    needs=("drain.pipe_outside_diameter?", "drain.diameter?"),
    rises_with=("drain.pipe_outside_diameter",),
    formula="the outside diameter, else the widest plastic pipe of the nominal size, else of 4 in",
    source="shared/tables/pipes.yaml; 4 in is common practice",
)
def outside_diameter_planned(known: float | None, diameter: float | None) -> float | Assumed:
    """Return the outside diameter to reckon with before a pipe is chosen [m]."""
    if known is not None:
        return known
    row = widest_plastic_pipe(diameter if diameter is not None else USUAL_PIPE)
    if row is None:
        raise NotShown("the outside diameter of the pipe", "drain.outside_diameter")
    size = "its nominal size" if diameter is not None else "4 in"
    why = f"the pipe is not fully shown, so the widest plastic pipe of {size} was taken"
    return Assumed(row.outside_diameter, why)


@quantity(
    "drain.bedding_planned",
    title="bedding under the pipe to plan with",
    kind="length",
    needs=("stone.bedding?",),
    rises_with=("stone.bedding",),
    formula="the bedding shown, else 2 in",
    source="IRC R405.1 for the 2 in",
)
def bedding_planned(shown: float | None) -> float | Assumed:
    """Return the bedding to reckon with before one is shown [m]."""
    if shown is not None:
        return shown
    return Assumed(LEAST_BEDDING, "the bedding is not shown; 2 in, the least under a pipe")
