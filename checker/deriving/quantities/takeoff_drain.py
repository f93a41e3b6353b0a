"""What the drain takes: pipe, fittings and stone, to be ordered by."""

from __future__ import annotations

import math

from checker.deriving.quantity import Assumed, NotShown, OutsideLimits, quantity
from checker.formulas import levels, takeoff

FOOT = 0.3048
POUND = 4.4482216152605

LOOP = "loop"
USUAL_STONE = 100 * POUND / FOOT**3
ALLOWED_SHORT = 0.05

Legs = tuple[tuple[str, float | None], ...] | None
Words = tuple[tuple[str, str | None], ...] | None


@quantity(
    "drain.length_to_order",
    title="perforated pipe that the drain takes",
    kind="length",
    needs=("drain.length_at_pipe?", "drain.shape?", "drain.corners.all.run_to_next?"),
    rises_with=("drain.length_at_pipe", "drain.corners.all.run_to_next"),
    formula="length of the loop at the middle of the pipe, else the sum of the runs",
    source="geometry",
)
def length_to_order(at_pipe: float | None, shape: str | None, runs: Legs) -> float:
    """Return the length of perforated pipe without waste [m]."""
    if at_pipe is not None:
        return at_pipe
    lengths = [length for _, length in runs or ()]
    if shape not in (None, LOOP):
        lengths = lengths[:-1]  # the last corner of a line has no next one
    known = [length for length in lengths if length is not None]
    if not known or len(known) < len(lengths):
        raise NotShown("the length of the drain", "wall.perimeter", "drain.corners")
    return math.fsum(known)


@quantity(
    "drain.solid_length",
    title="solid pipe that the legs to the outlets take",
    kind="length",
    needs=("outlets", "outlets.all.kind?", "outlets.all.leg_length?"),
    rises_with=("outlets.all.leg_length",),
    formula="sum of the legs; a sump has none",
    source="geometry",
)
def solid_length(outlets: tuple[str, ...], kinds: Words, legs: Legs) -> float:
    """Return the length of solid pipe without waste [m]."""
    kind_of, length_of = dict(kinds or ()), dict(legs or ())
    led = [name for name in outlets if kind_of.get(name) not in ("sump", "none")]
    lengths = [length_of.get(name) for name in led]
    known = [length for length in lengths if length is not None]
    if len(known) < len(led):
        bare = (name for name, length in zip(led, lengths, strict=True) if length is None)
        raise NotShown("the length of each leg", *(f"outlets.{name}.leg_length" for name in bare))
    return math.fsum(known)


@quantity(
    "drain.elbows",
    title="elbows at the corners of the drain",
    kind="count",
    needs=("drain.corners", "drain.corners.all.turn?"),
    formula="one at each corner that is not straight",
    source="common practice",
)
def elbows(corners: tuple[str, ...], turns: Words) -> int | Assumed:
    """Return the number of elbows."""
    turning = [name for name, turn in turns or () if turn != "straight"]
    if any(turn is None for _, turn in turns or ()):
        return Assumed(len(turning), "every corner whose turn is not shown turns")
    return len(turning)


@quantity(
    "drain.tees",
    title="tees where a leg leaves the drain or a cleanout stands on it",
    kind="count",
    needs=("outlets", "outlets.all.kind?", "drain.cleanouts?"),
    formula="one for each outlet + one for each cleanout",
    source="common practice",
)
def tees(outlets: tuple[str, ...], kinds: Words, cleanouts: int | None) -> int | Assumed:
    """Return the number of tees or wyes."""
    legs = len(outlets) - sum(kind == "none" for _, kind in kinds or ())
    if cleanouts is None:
        return Assumed(legs, "no cleanout is counted, for none is shown")
    return legs + cleanouts


@quantity(
    "stone.height",
    title="height of the stone beside the footing",
    kind="length",
    needs=("stone.surface_level", "drain.trench_bottom_low"),
    rises_with=("stone.surface_level",),
    falls_with=("drain.trench_bottom_low",),
    formula="top of the stone - bottom of the trench at its lowest corner",
    source="geometry",
)
def height(top: float, trench: float) -> Assumed:
    """Return how high the stone stands, its bottom dug level [m]."""
    return Assumed(levels.height_above(top, trench), "the trench is dug level at its lowest bottom")


@quantity(
    "stone.breadth",
    title="breadth of the stone, over the footing too where it reaches so high",
    kind="length",
    needs=("stone.beyond_footing", "footing.toe", "stone.over_footing"),
    formula="stone beyond the footing + footing beyond the wall where the stone covers it",
    source="geometry",
)
def breadth(beyond: float, toe: float, over: float) -> float:
    """Return how broad the stone is at its top [m]."""
    return beyond + (toe if over > 0 else 0.0)


@quantity(
    "stone.volume",
    title="stone that the drain takes",
    kind="volume",
    needs=(
        "wall.perimeter?",
        "drain.shape?",
        "drain.position?",
        "drain.kind?",
        "stone.beyond_footing",
        "stone.height",
        "footing.toe",
        "stone.over_footing",
        "drain.length_to_order",
        "drain.pipe_outside_diameter?",
    ),
    rises_with=(
        "wall.perimeter",
        "stone.beyond_footing",
        "stone.height",
        "stone.over_footing",
    ),
    falls_with=("drain.pipe_outside_diameter",),
    formula="each part of the section x the ring length of its middle, less the pipe",
    source="geometry",
)
def stone_volume(
    around: float | None,
    shape: str | None,
    position: str | None,
    kind: str | None,
    reach: float,
    deep: float,
    toe: float,
    over: float,
    length: float,
    outside: float | None,
) -> float | Assumed:
    """Return the volume of stone in place, without waste [m3]."""
    if position not in (None, "beside"):
        raise OutsideLimits("the sum is for a drain beside the footing")
    pipe = 0.0
    if kind != "stone_only":
        if outside is None:
            raise NotShown("the outside diameter of the pipe", "drain.outside_diameter")
        pipe = takeoff.pipe_volume(length, outside)
    if around is not None and shape in (None, LOOP):
        return takeoff.stone_in_ring(around, reach, deep, toe, over) - pipe
    volume = takeoff.stone_section(reach, deep, toe, over) * length - pipe
    return Assumed(volume, "the whole section runs along the length of the pipe")


@quantity(
    "stone.least_order",
    title="least stone to order",
    kind="volume",
    needs=("stone.volume",),
    rises_with=("stone.volume",),
    formula="stone that the drain takes, less 5 %",
    source="common practice for the 5 %",
)
def stone_least(volume: float) -> float:
    """Return the smallest order that the takeoff bears out [m3]."""
    return volume * (1 - ALLOWED_SHORT)


@quantity(
    "stone.weight",
    title="weight of the stone to reckon with",
    kind="unit_weight",
    needs=("stone.unit_weight?",),
    rises_with=("stone.unit_weight",),
    formula="the weight shown, else 100 lb/ft3",
    source="2,700 lb/cu yd of crushed stone, a federal table of 2006 as a web page quotes it",
)
def stone_weight(shown: float | None) -> float | Assumed:
    """Return the unit weight of loose stone [N/m3]."""
    if shown is not None:
        return shown
    return Assumed(USUAL_STONE, "100 pcf for loose crushed stone, 1.35 short tons a cubic yard")


@quantity(
    "stone.mass",
    title="stone that the drain takes, by weight",
    kind="mass",
    needs=("stone.volume", "stone.weight"),
    rises_with=("stone.volume", "stone.weight"),
    formula="volume x weight of the stone",
    source="definition",
    told_in=("short ton", "tonne"),
)
def stone_mass(volume: float, weight: float) -> float:
    """Return the mass of the stone [kg]."""
    return takeoff.mass(volume, weight)
