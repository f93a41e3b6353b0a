"""What the footing drain's pipe carries, run by run, by Manning's equation."""

from __future__ import annotations

from checker.deriving.flow_tables import roughness
from checker.deriving.quantities.drain_levels import Corners
from checker.deriving.quantities.drain_run import AS_LOOP, LOOP, Inverts
from checker.deriving.quantity import Assumed, NotApplicable, NotShown, OutsideLimits, quantity
from checker.formulas import pipe_flow, pipe_run

EACH = "drain.corners.each"
MANNING = "Manning's equation, FHWA HEC-22 section 9.1.3"


@quantity(
    "drain.pipe_inside_diameter",
    title="inside diameter of the pipe",
    kind="length",
    needs=("drain.outside_diameter?", "drain.wall_thickness?", "drain.diameter?"),
    rises_with=("drain.outside_diameter", "drain.diameter"),
    falls_with=("drain.wall_thickness",),
    formula="outside diameter - 2 x wall where both are shown, else the nominal size",
    source="geometry",
)
def pipe_inside_diameter(
    outside: float | None, wall: float | None, nominal: float | None
) -> float | Assumed:
    """Return the inside diameter of the pipe [m]."""
    if outside is not None and wall is not None:
        return outside - 2 * wall
    if nominal is None:
        raise NotShown("the size of the pipe", "drain.diameter")
    return Assumed(nominal, "the nominal size")


@quantity(
    "drain.pipe_roughness",
    title="Manning's n of the pipe",
    kind="number",
    needs=("drain.roughness?", "drain.material?"),
    rises_with=("drain.roughness",),
    formula="the roughness shown, else the rough end of the table for the material",
    source="shared/tables/roughness.yaml",
)
def pipe_roughness(shown: float | None, material: str | None) -> float | Assumed:
    """Return Manning's n of the pipe, on the rough side."""
    if shown is not None:
        return shown
    if material is None:
        raise NotShown("the material of the pipe", "drain.material")
    found = roughness()[material]
    name = material.replace("_", " ")
    return Assumed(
        found.high, f"the rough end of {found.low:g} to {found.high:g} for {name}, from the table"
    )


@quantity(
    "drain.parting_corner",
    title="corner at which the water of the loop parts",
    kind="text",
    needs=("drain.corners.all.invert", "drain.outlet_corner", "drain.shape?"),
    formula="the highest corner",
    source="geometry",
)
def parting_corner(inverts: Inverts, outlet: str, shape: str | None) -> str | Assumed:
    """Return the id of the corner from which water runs both ways round."""
    if shape not in (None, LOOP):
        raise NotApplicable("a line carries its water from its ends")
    names = [name for name, _ in inverts]
    found = names[pipe_run.parting_corner([invert for _, invert in inverts], names.index(outlet))]
    return found if shape is not None else Assumed(found, AS_LOOP)


RUN_NEEDS = (f"{EACH}.id", "drain.parting_corner?", "drain.outlet_corner", "drain.shape?")


def _run(
    corner: str,
    names: list[str],
    lengths: list[float],
    parting: str | None,
    outlet: str,
    shape: str | None,
) -> pipe_run.Run:
    """Return the run that leads on from a corner of a loop that parts somewhere, or of a line."""
    if parting is None and shape in (None, LOOP):
        raise NotShown("the invert of every corner", f"{EACH}.invert")
    if parting is None and corner == names[-1]:
        raise NotApplicable("the line ends at this corner")
    start = None if parting is None else names.index(parting)
    found = pipe_run.runs_to_outlet(lengths, len(names), start, names.index(outlet))
    return found[names.index(corner)]


def _lengths(lengths: Corners, shape: str | None) -> list[float]:
    """Return the length of every run; the last corner of a line has none. Raises NotShown."""
    runs = list(lengths or ())
    if shape not in (None, LOOP):
        runs = runs[:-1]
    bare = [f"drain.corners.{name}.run_to_next" for name, length in runs if length is None]
    if bare:
        raise NotShown("the length of every run", *bare)
    return [length for _, length in runs if length is not None]


@quantity(
    f"{EACH}.run_slope",
    title="slope of the run to the next corner",
    kind="slope",
    needs=(*RUN_NEEDS, "drain.corners.all.invert", f"{EACH}.run_to_next"),
    formula="drop toward the outlet / length; less than nothing where it rises",
    source="definition of slope",
)
def run_slope(
    corner: str,
    parting: str | None,
    outlet: str,
    shape: str | None,
    inverts: Inverts,
    length: float,
) -> float:
    """Return the slope toward the outlet of the run that leads on from a corner [-]."""
    names = [name for name, _ in inverts]
    run = _run(corner, names, [1.0] * len(names), parting, outlet, shape)
    return pipe_run.slope(inverts[run.upper][1] - inverts[run.lower][1], length)


@quantity(
    f"{EACH}.run_share",
    title="share of the drain's water in the run to the next corner",
    kind="fraction",
    needs=(*RUN_NEEDS, "drain.corners.all.run_to_next?"),
    formula="length from where the water parts to the lower end of the run / length of the drain",
    source="geometry; water comes in evenly",
)
def run_share(
    corner: str, parting: str | None, outlet: str, shape: str | None, lengths: Corners
) -> float:
    """Return the share of all the water that passes the lower end of a run [-]."""
    names = [name for name, _ in lengths or ()]
    return _run(corner, names, _lengths(lengths, shape), parting, outlet, shape).share


@quantity(
    f"{EACH}.run_velocity",
    title="velocity in the run to the next corner, flowing full or half full",
    kind="velocity",
    needs=(f"{EACH}.run_slope", "drain.pipe_inside_diameter", "drain.pipe_roughness"),
    rises_with=(f"{EACH}.run_slope", "drain.pipe_inside_diameter"),
    falls_with=("drain.pipe_roughness",),
    formula="V = R^(2/3) S^(1/2) / n, R = D / 4 (m, s)",
    source=MANNING,
)
def run_velocity(slope: float, diameter: float, n: float) -> float:
    """Return the velocity in a run that flows full [m/s]."""
    return pipe_flow.velocity(pipe_flow.full(diameter), _falling(slope), n)


@quantity(
    f"{EACH}.run_capacity",
    title="flow that the run to the next corner carries, just full",
    kind="flow",
    needs=(f"{EACH}.run_slope", "drain.pipe_inside_diameter", "drain.pipe_roughness"),
    rises_with=(f"{EACH}.run_slope", "drain.pipe_inside_diameter"),
    falls_with=("drain.pipe_roughness",),
    formula="Q = A R^(2/3) S^(1/2) / n, A = pi D2 / 4, R = D / 4 (m, s)",
    source=MANNING,
)
def run_capacity(slope: float, diameter: float, n: float) -> float:
    """Return what a run carries when just full [m3/s]."""
    return pipe_flow.full_flow(diameter, _falling(slope), n)


@quantity(
    f"{EACH}.run_depth",
    title="depth of water in the run to the next corner, with what arrives",
    kind="length",
    needs=(
        "drain.inflow",
        f"{EACH}.run_share",
        f"{EACH}.run_slope",
        "drain.pipe_inside_diameter",
        "drain.pipe_roughness",
    ),
    rises_with=("drain.inflow", f"{EACH}.run_share", "drain.pipe_roughness"),
    falls_with=(f"{EACH}.run_slope",),
    formula="the depth y at which A R^(2/3) S^(1/2) / n is the inflow x share",
    source=f"{MANNING}, part full",
)
def run_depth(inflow: float, share: float, slope: float, diameter: float, n: float) -> float:
    """Return how deep water stands at the lower end of a run [m]."""
    return pipe_flow.depth_of_flow(inflow * share, diameter, _falling(slope), n)


@quantity(
    f"{EACH}.run_velocity_part_full",
    title="velocity in the run to the next corner, with what arrives",
    kind="velocity",
    needs=(
        f"{EACH}.run_depth",
        f"{EACH}.run_slope",
        "drain.pipe_inside_diameter",
        "drain.pipe_roughness",
    ),
    formula="V = R^(2/3) S^(1/2) / n, R of the part of the circle that is wet",
    source=f"{MANNING}, part full",
)
def run_velocity_part_full(depth: float, slope: float, diameter: float, n: float) -> float:
    """Return the velocity at the depth of what arrives [m/s]."""
    if depth == 0:
        raise NotApplicable("no water arrives, by these sums")
    return pipe_flow.velocity(pipe_flow.part_full(depth, diameter), _falling(slope), n)


def _falling(slope: float) -> float:
    if slope < 0:
        raise OutsideLimits("the run rises toward the outlet, so nothing runs that way by itself")
    return slope
