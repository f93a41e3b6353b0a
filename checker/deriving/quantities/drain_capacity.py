"""What the footing drain carries off: pipe, openings and outlet, which is least, and how fast."""

from __future__ import annotations

from checker.deriving.quantities.drain_levels import Corners
from checker.deriving.quantities.pipe_runs import MANNING
from checker.deriving.quantity import Assumed, NotApplicable, NotShown, OutsideLimits, quantity
from checker.formulas import pipe_flow


@quantity(
    "drain.pipe_capacity",
    title="inflow that the pipe of the drain carries off",
    kind="flow",
    needs=(
        "drain.corners.all.run_capacity?",
        "drain.corners.all.run_share?",
        "drain.parting_corner?",
        "drain.outlet_corner?",
        "drain.flattest_slope",
        "drain.pipe_inside_diameter",
        "drain.pipe_roughness",
    ),
    rises_with=(
        "drain.corners.all.run_capacity",
        "drain.flattest_slope",
        "drain.pipe_inside_diameter",
    ),
    falls_with=("drain.corners.all.run_share", "drain.pipe_roughness"),
    formula="least of capacity of the run / its share, else the pipe full at its flattest slope",
    source=MANNING,
)
def pipe_capacity(
    capacities: Corners,
    shares: Corners,
    parting: str | None,
    outlet: str | None,
    slope: float,
    diameter: float,
    n: float,
) -> float | Assumed:
    """Return the inflow, spread evenly along the drain, that its tightest run carries [m3/s]."""
    sharing = _sharing(shares, parting, outlet)
    if not sharing:
        alone = pipe_flow.full_flow(diameter, slope, n)
        return Assumed(alone, "no run is fully shown, so all the water is taken to go one way")
    carried = dict(capacities or ())
    _all_fall([name for name in sharing if carried.get(name) is None])
    return min((carried[name] or 0.0) / share for name, share in sharing.items())


@quantity(
    "drain.slowest_velocity",
    title="velocity in the drain's slowest run, flowing full or half full",
    kind="velocity",
    needs=(
        "drain.corners.all.run_velocity?",
        "drain.corners.all.run_share?",
        "drain.parting_corner?",
        "drain.outlet_corner?",
        "drain.flattest_slope",
        "drain.pipe_inside_diameter",
        "drain.pipe_roughness",
    ),
    rises_with=(
        "drain.corners.all.run_velocity",
        "drain.flattest_slope",
        "drain.pipe_inside_diameter",
    ),
    falls_with=("drain.pipe_roughness",),
    formula="least of the runs, else the pipe full at its flattest slope",
    source=MANNING,
)
def slowest_velocity(
    velocities: Corners,
    shares: Corners,
    parting: str | None,
    outlet: str | None,
    slope: float,
    diameter: float,
    n: float,
) -> float:
    """Return the velocity in the slowest run when it flows full [m/s]."""
    sharing = _sharing(shares, parting, outlet)
    if not sharing:
        return pipe_flow.velocity(pipe_flow.full(diameter), slope, n)
    found = dict(velocities or ())
    _all_fall([name for name in sharing if found.get(name) is None])
    return min(found[name] or 0.0 for name in sharing)


def _sharing(shares: Corners, parting: str | None, outlet: str | None) -> dict[str, float]:
    """Return the share of each run; none when the runs are not shown well enough to have one."""
    if parting is not None and parting == outlet:
        raise OutsideLimits("the outlet lies at the highest corner, so nothing runs to it")
    return {name: share for name, share in shares or () if share is not None}


def _all_fall(flat: list[str]) -> None:
    if flat:
        raise OutsideLimits(
            f"the run from {', '.join(flat)} is level or rises toward the outlet, and Manning's "
            "equation gives a flow only to a pipe that falls"
        )


LEG = "outlets.each"


@quantity(
    f"{LEG}.leg_capacity",
    title="flow that the outlet leg carries, just full",
    kind="flow",
    needs=(
        f"{LEG}.kind",
        f"{LEG}.leg_slope?",
        f"{LEG}.fall_available?",
        f"{LEG}.leg_length?",
        f"{LEG}.leg_diameter?",
        "drain.pipe_inside_diameter?",
        "drain.pipe_roughness",
    ),
    rises_with=(
        f"{LEG}.leg_slope",
        f"{LEG}.fall_available",
        f"{LEG}.leg_diameter",
        "drain.pipe_inside_diameter",
    ),
    falls_with=(f"{LEG}.leg_length", "drain.pipe_roughness"),
    formula="Q = A R^(2/3) S^(1/2) / n at the slope shown, else at fall to the outlet / length",
    source="Manning's equation, FHWA HEC-22 section 9.1.3",
)
def leg_capacity(
    kind: str,
    slope: float | None,
    fall: float | None,
    length: float | None,
    size: float | None,
    drain_size: float | None,
    n: float,
) -> Assumed:
    """Return what the leg carries when just full [m3/s]."""
    if kind in ("sump", "none"):
        raise NotApplicable("no leg runs from the drain to this outlet by gravity")
    notes = ["as rough as the drain's pipe"]
    if slope is None:
        if fall is None or length is None:
            raise NotShown("the slope of the outlet leg", f"{LEG}.leg_slope")
        slope = fall / length
        notes.append("the leg falls evenly to its end")
    diameter = size
    if diameter is None:
        notes.append("as wide as the drain's pipe")
        diameter = drain_size
    if diameter is None:
        raise NotShown("the size of the outlet leg", f"{LEG}.leg_diameter")
    if slope < 0:
        raise OutsideLimits("the outlet lies higher than the drain; nothing runs to it by itself")
    return Assumed(pipe_flow.full_flow(diameter, slope, n), ", ".join(notes))


@quantity(
    f"{LEG}.capacity",
    title="flow that the outlet takes",
    kind="flow",
    needs=(f"{LEG}.kind", f"{LEG}.leg_capacity?", "sump.pump_duty?"),
    rises_with=(f"{LEG}.leg_capacity", "sump.pump_duty"),
    formula="capacity of the leg; of a sump, what its pump gives",
    source="definition",
)
def outlet_capacity(kind: str, leg: float | None, pump: float | None) -> float:
    """Return what one outlet takes [m3/s]."""
    if kind == "none":
        raise NotApplicable("this is no outlet")
    found = pump if kind == "sump" else leg
    if found is None and kind == "sump":
        raise NotShown("what the pump gives", "sump.pump_flow", "sump.pump_head")
    if found is None:
        raise NotShown("slope and size of the outlet leg", f"{LEG}.leg_slope", "drain.material")
    return found


@quantity(
    "drain.outlet_capacity",
    title="flow that the best outlet of the drain takes",
    kind="flow",
    needs=("outlets.all.capacity",),
    rises_with=("outlets.all.capacity",),
    formula="the outlet that takes most, by itself",
    source="common practice: a second outlet stands in for the first, not beside it",
)
def best_outlet(capacities: Corners) -> float:
    """Return what the best outlet takes alone [m3/s]."""
    known = [found for _, found in capacities or () if found is not None]
    if not known:
        raise OutsideLimits("no outlet is shown to which the drain runs by itself or is pumped")
    return max(known)


PARTS = ("drain.pipe_capacity", "drain.inlet_capacity", "drain.outlet_capacity")


@quantity(
    "drain.capacity",
    title="inflow that the drain carries off",
    kind="flow",
    needs=PARTS,
    rises_with=PARTS,
    formula="the least of pipe, openings and outlet",
    source="definition",
)
def capacity(pipe: float, inlets: float, outlet: float) -> float:
    """Return the least of what pipe, openings and outlet take [m3/s]."""
    return min(pipe, inlets, outlet)


@quantity(
    "drain.governed_by",
    title="part of the drain that limits it",
    kind="text",
    needs=PARTS,
    formula="the part whose capacity is least",
    source="definition",
)
def governed_by(pipe: float, inlets: float, outlet: float) -> str:
    """Name the part that limits the drain."""
    parts = {"pipe": pipe, "openings of the pipe": inlets, "outlet": outlet}
    return min(parts, key=lambda name: parts[name])


@quantity(
    "drain.capacity_factor",
    title="what the drain can carry off over what arrives",
    kind="ratio",
    needs=("drain.capacity", "drain.inflow"),
    rises_with=("drain.capacity",),
    falls_with=("drain.inflow",),
    formula="capacity / inflow",
    source="definition",
)
def capacity_factor(able: float, inflow: float) -> float:
    """Return how many times the drain carries what arrives [-]."""
    if inflow <= 0:
        raise OutsideLimits("nothing arrives, by these sums, so there is no factor")
    return able / inflow
