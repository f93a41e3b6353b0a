"""What the footing drain's pipe carries, run by run, by Manning's equation."""

from __future__ import annotations

from checker.deriving.flow_tables import roughness
from checker.deriving.quantities.drain_levels import Corners, all_inverts
from checker.deriving.quantities.drain_run import AS_LOOP, LOOP
from checker.deriving.quantity import Assumed, NotApplicable, NotShown, OutsideLimits, quantity
from checker.formulas import pipe_flow, pipe_run

EACH = "drain.corners.each"
MANNING = "Manning's equation, FHWA HEC-22 section 9.1.3"
RUN_NEEDS = (
    f"{EACH}.id",
    "drain.corners.all.invert",
    "drain.corners.all.run_to_next?",
    "drain.outlet_corner",
    "drain.shape?",
)


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


def _run(
    corner: str, inverts: Corners, lengths: Corners, outlet: str, shape: str | None
) -> tuple[pipe_run.Run, float]:
    """Return the run that leads on from a corner, and its length [m].

    Raises NotShown for an invert or length that is missing, NotApplicable at the end of a line.
    """
    names = [name for name, _ in inverts or ()]
    closed = shape in (None, LOOP)
    runs = [length for _, length in lengths or ()]
    known = [run for run in runs if run is not None]
    if not closed:
        known = [run for run in runs[:-1] if run is not None]
        if corner == names[-1]:
            raise NotApplicable("the line ends at this corner")
    if len(known) < len(names) - (not closed):
        raise NotShown("the length of every run", f"{EACH}.run_to_next")
    found = pipe_run.runs_to_outlet(all_inverts(inverts), known, names.index(outlet), closed)
    at = names.index(corner)
    return found[at], known[at]


@quantity(
    f"{EACH}.run_slope",
    title="slope of the run to the next corner",
    kind="slope",
    needs=RUN_NEEDS,
    formula="drop toward the outlet / length; less than nothing where it rises",
    source="definition of slope",
)
def run_slope(
    corner: str, inverts: Corners, lengths: Corners, outlet: str, shape: str | None
) -> float | Assumed:
    """Return the slope toward the outlet of the run that leads on from a corner [-]."""
    run, length = _run(corner, inverts, lengths, outlet, shape)
    slope = run.drop / length
    return slope if shape is not None else Assumed(slope, AS_LOOP)


@quantity(
    f"{EACH}.run_share",
    title="share of the drain's water in the run to the next corner",
    kind="fraction",
    needs=RUN_NEEDS,
    formula="length from the highest corner to the lower end of the run / length of the drain",
    source="geometry; water comes in evenly",
)
def run_share(
    corner: str, inverts: Corners, lengths: Corners, outlet: str, shape: str | None
) -> float:
    """Return the share of all the water that passes the lower end of a run [-]."""
    return _run(corner, inverts, lengths, outlet, shape)[0].share


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
    title="what the run to the next corner carries, just full",
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
