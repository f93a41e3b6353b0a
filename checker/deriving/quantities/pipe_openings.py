"""The holes, slots and open joints of the drain pipe against the stone round it."""

from __future__ import annotations

from checker.deriving.quantity import Assumed, quantity
from checker.formulas import openings

SLOTTED = "slotted"


@quantity(
    "drain.stone_d85_needed",
    title="least D85 of stone that the openings of the pipe keep out",
    kind="length",
    needs=("drain.hole_size", "drain.holes?"),
    rises_with=("drain.hole_size",),
    formula="diameter of the hole x 1.0, or width of the slot x 1.2",
    source="USACE coastal guidance on filters, equations 9 and 10",
)
def stone_d85_needed(opening: float, holes: tuple[str, ...] | None) -> float | Assumed:
    """Return the least D85 of the stone for the pipe's openings [m]."""
    if holes is None:
        least = openings.least_d85(opening, slot=True)
        return Assumed(least, "taken as slots, which ask for more than holes")
    return openings.least_d85(opening, slot=SLOTTED in holes)


@quantity(
    "drain.stone_d85_wanted",
    title="D85 of stone at the upper end of what the openings of the pipe ask for",
    kind="length",
    needs=("drain.hole_size", "drain.holes?"),
    rises_with=("drain.hole_size",),
    formula="diameter of the hole x 1.2, or width of the slot x 1.4",
    source="USACE coastal guidance on filters, equations 9 and 10",
)
def stone_d85_wanted(opening: float, holes: tuple[str, ...] | None) -> float:
    """Return the D85 of the stone that the strict end of the same guidance asks for [m]."""
    return openings.least_d85(opening, slot=holes is None or SLOTTED in holes, strict=True)


@quantity(
    "drain.joint_loss_chance",
    title="chance that stone goes on washing through the open joints of the pipe",
    kind="fraction",
    needs=("drain.joint_gap", "stone.d95_fine"),
    rises_with=("drain.joint_gap",),
    falls_with=("stone.d95_fine",),
    formula="by gap / D95 of the stone: 0.5 0.0001, 0.75 0.001, 1 0.1, 2 0.5, 3 0.9",
    source="USACE Risk Management Center, constricted exit; made for dams, for information",
)
def joint_loss_chance(gap: float, d95: float) -> float:
    """Return how likely the stone is to go on washing out [-]."""
    return openings.continuing_erosion(gap, d95)


@quantity(
    "drain.joint_band_share",
    title="share of the stone's band whose D95 is finer than the open joints",
    kind="fraction",
    needs=("drain.joint_gap", "stone.d95_fine", "stone.d95_coarse"),
    rises_with=("drain.joint_gap",),
    falls_with=("stone.d95_fine", "stone.d95_coarse"),
    formula="log(gap / finest D95) / log(coarsest D95 / finest D95), from 0 to 1",
    source="USACE Risk Management Center, constricted exit; made for dams, for information",
)
def joint_band_share(gap: float, finest: float, coarsest: float) -> float:
    """Return how much of the stone that its size number allows the joints would let out [-]."""
    return openings.share_of_band_finer(gap, finest, coarsest)
