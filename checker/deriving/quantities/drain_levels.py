"""The footing drain in height: inverts, crown, trench, and the room between floor and bearing."""

from __future__ import annotations

from collections.abc import Sequence

from checker.deriving.quantities.levels import TOLERANCE
from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.deriving.tables import pipe_row, widest_plastic_pipe
from checker.formulas import levels, pipe_run

Corners = tuple[tuple[str, float | None], ...] | None

INVERT_NEEDS = (
    "drain.corners.all.invert?",
    "drain.invert_high?",
    "drain.invert_low?",
    "drain.slope?",
    "drain.run_long?",
)
LEAST_BEDDING = 2 * 0.0254
USUAL_PIPE = 4 * 0.0254


def all_inverts(corners: Corners) -> list[float]:
    """Return the inverts when every corner shows one, else an empty list."""
    inverts = [invert for _, invert in corners or ()]
    known = [invert for invert in inverts if invert is not None]
    return known if len(known) == len(inverts) else []


def lacking(corners: Corners, otherwise: str) -> Sequence[str]:
    """Return the paths of the corners without an invert; `otherwise` when no corner is listed."""
    bare = [f"drain.corners.{name}.invert" for name, invert in corners or () if invert is None]
    return bare or [otherwise]


@quantity(
    "drain.highest_invert",
    title="invert of the pipe at its highest corner",
    kind="level",
    needs=INVERT_NEEDS,
    rises_with=(
        "drain.corners.all.invert",
        "drain.invert_high",
        "drain.invert_low",
        "drain.slope",
        "drain.run_long",
    ),
    formula="highest corner, else the high invert shown, else low invert + slope x longest run",
    source="geometry",
)
def highest_invert(
    corners: Corners,
    high: float | None,
    low: float | None,
    slope: float | None,
    run: float | None,
) -> float:
    """Return the highest inside bottom of the loop [m]."""
    inverts = all_inverts(corners)
    if inverts:
        return max(inverts)
    if high is not None:
        return high
    if low is None or slope is None or run is None:
        raise NotShown("the drain's highest invert", *lacking(corners, "drain.invert_high"))
    return low + pipe_run.fall(slope, run)


@quantity(
    "drain.lowest_invert",
    title="invert of the pipe at its lowest corner",
    kind="level",
    needs=INVERT_NEEDS,
    rises_with=("drain.corners.all.invert", "drain.invert_high", "drain.invert_low"),
    falls_with=("drain.slope", "drain.run_long"),
    formula="lowest corner, else the low invert shown, else high invert - slope x longest run",
    source="geometry",
)
def lowest_invert(
    corners: Corners,
    high: float | None,
    low: float | None,
    slope: float | None,
    run: float | None,
) -> float:
    """Return the lowest inside bottom of the loop [m]."""
    inverts = all_inverts(corners)
    if inverts:
        return min(inverts)
    if low is not None:
        return low
    if high is None or slope is None or run is None:
        raise NotShown("the drain's lowest invert", *lacking(corners, "drain.invert_low"))
    return high - pipe_run.fall(slope, run)


@quantity(
    "drain.fall_total",
    title="fall of the drain from its highest to its lowest corner",
    kind="length",
    needs=INVERT_NEEDS,
    rises_with=("drain.invert_high", "drain.slope", "drain.run_long"),
    falls_with=("drain.invert_low",),
    formula="highest - lowest invert, else slope x longest run",
    source="geometry",
)
def fall_total(
    corners: Corners,
    high: float | None,
    low: float | None,
    slope: float | None,
    run: float | None,
) -> float:
    """Return the fall of the loop [m]; it needs no invert when slope and run are shown."""
    inverts = all_inverts(corners)
    if inverts:
        return max(inverts) - min(inverts)
    if high is not None and low is not None:
        if high < low:
            raise ValueError("the high invert lies below the low one")
        return high - low
    if slope is None or run is None:
        otherwise = "drain.slope" if slope is None else "drain.run_long"
        raise NotShown(
            "every invert of the drain, or its slope and longest run", *lacking(corners, otherwise)
        )
    return pipe_run.fall(slope, run)


@quantity(
    "drain.contradiction",
    title="inverts that cannot all be true",
    kind="text",
    needs=INVERT_NEEDS,
    formula="corners against the high and low invert, and the fall against slope x longest run",
    source="geometry; two levels are good to 0.04 ft",
)
def contradiction(
    corners: Corners,
    high: float | None,
    low: float | None,
    slope: float | None,
    run: float | None,
) -> str:
    """Return "none", or a sentence that names what disagrees."""
    inverts = all_inverts(corners)
    top = max(inverts) if inverts else high
    bottom = min(inverts) if inverts else low
    pairs = [
        ("the highest corner and the high invert", max(inverts, default=None), high),
        ("the lowest corner and the low invert", min(inverts, default=None), low),
        (
            "the fall by the inverts and the slope over the longest run",
            None if top is None or bottom is None else top - bottom,
            None if slope is None or run is None else pipe_run.fall(slope, run),
        ),
    ]
    compared = [(what, a, b) for what, a, b in pairs if a is not None and b is not None]
    if not compared:
        raise NotShown("two ways to the same invert", "drain.corners", "drain.invert_high")
    apart = [f"{what} disagree" for what, a, b in compared if abs(a - b) > TOLERANCE]
    return "; ".join(apart) or "none"


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


@quantity(
    "drain.crown_high",
    title="crown of the pipe at its highest corner",
    kind="level",
    needs=("drain.highest_invert", "drain.pipe_outside_diameter", "drain.pipe_wall"),
    rises_with=("drain.highest_invert", "drain.pipe_outside_diameter"),
    falls_with=("drain.pipe_wall",),
    formula="crown = invert + outside diameter - wall thickness",
    source="geometry",
)
def crown_high(invert: float, outside: float, wall: float) -> float:
    """Return the highest level of the pipe's outside top [m]."""
    return levels.crown(invert, outside, wall)


@quantity(
    "drain.outside_bottom_low",
    title="outside bottom of the pipe at its lowest corner",
    kind="level",
    needs=("drain.lowest_invert", "drain.pipe_wall"),
    rises_with=("drain.lowest_invert",),
    falls_with=("drain.pipe_wall",),
    formula="invert - wall thickness",
    source="geometry",
)
def outside_bottom_low(invert: float, wall: float) -> float:
    """Return the lowest level of the pipe's outside bottom [m]."""
    return levels.outside_bottom(invert, wall)


@quantity(
    "drain.trench_bottom_low",
    title="bottom of the drain trench at the lowest corner",
    kind="level",
    needs=("drain.lowest_invert", "drain.pipe_wall", "stone.bedding"),
    rises_with=("drain.lowest_invert",),
    falls_with=("drain.pipe_wall", "stone.bedding"),
    formula="invert - wall thickness - bedding",
    source="geometry",
)
def trench_bottom_low(invert: float, wall: float, bedding: float) -> float:
    """Return the lowest level the drain trench is dug to [m]."""
    return levels.trench_bottom(invert, wall, bedding)


@quantity(
    "drain.floor_cover",
    title="underside of the slab over the crown of the pipe",
    kind="length",
    needs=("slab.underside_level", "drain.crown_high"),
    rises_with=("slab.underside_level",),
    falls_with=("drain.crown_high",),
    formula="underside of the slab - crown at the highest corner",
    source="geometry",
)
def floor_cover(slab_base: float, crown: float) -> float:
    """Return how far the pipe stays under the slab at its highest corner [m]."""
    return levels.height_above(slab_base, crown)


@quantity(
    "drain.bearing_cover",
    title="bottom of the drain trench over the underside of the footing",
    kind="length",
    needs=("drain.trench_bottom_low", "footing.underside_level"),
    rises_with=("drain.trench_bottom_low",),
    falls_with=("footing.underside_level",),
    formula="bottom of the trench at the lowest corner - underside of the footing",
    source="geometry",
)
def bearing_cover(trench: float, footing_base: float) -> float:
    """Return how far the trench stays above the footing's bearing [m]."""
    return levels.height_above(trench, footing_base)


@quantity(
    "drain.window",
    title="room for fall between floor and bearing",
    kind="length",
    needs=(
        "slab.underside_level",
        "footing.underside_level",
        "drain.bedding_planned",
        "drain.outside_diameter_planned",
    ),
    rises_with=("slab.underside_level",),
    falls_with=(
        "footing.underside_level",
        "drain.bedding_planned",
        "drain.outside_diameter_planned",
    ),
    formula="underside of the slab - underside of the footing - bedding - outside diameter",
    source="geometry; common practice",
)
def window(slab_base: float, footing_base: float, bedding: float, outside: float) -> float:
    """Return the room for fall once bedding and pipe are in [m]; it needs no inverts."""
    return levels.window(slab_base, footing_base, bedding, outside)


@quantity(
    "drain.window_spare",
    title="room left over once the drain has its fall",
    kind="length",
    needs=("drain.window", "drain.fall_total"),
    rises_with=("drain.window",),
    falls_with=("drain.fall_total",),
    formula="room for fall - fall",
    source="geometry; common practice",
)
def window_spare(room: float, fall: float) -> float:
    """Return the room that is left, negative when the drain does not fit [m]."""
    return room - fall
