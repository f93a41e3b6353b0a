"""Sizes of the drain stone: by its own sieve curve, else at the edges of its size number's band.

A size number allows a band of curves. What it must hold back is judged at the coarse edge, and what
must not fall through the pipe at the fine edge: the edge that does worse.
"""

from __future__ import annotations

from functools import partial

from checker.deriving.aggregates import Band, band, size_numbers
from checker.deriving.quantities.grain_sizes import CORPS, GRAINS, READING
from checker.deriving.quantity import Assumed, NotShown, quantity
from checker.formulas import gradation
from checker.formulas.gradation import Curve

NEEDS = ("stone.gradation?", "stone.size_number?")
TABLE = "shared/tables/aggregates.yaml"
# A share read off a chart or a delivery ticket is good to about a percent.
_SHARES_AGREE = 0.01


def edges(curve: Curve | None, size_number: str | None) -> Band:
    """Return the finest and the coarsest curve that the stone may have."""
    if curve is not None:
        return Band(curve, curve)
    found = band(size_number) if size_number is not None else None
    if found is None:
        known = ", ".join(sorted(size_numbers(), key=int))
        raise NotShown(f"a sieve curve, or a size number among {known}", "stone.gradation")
    return found


def fine_size(share: float, curve: Curve | None, size_number: str | None) -> float | Assumed:
    """Return a size of the stone at the fine edge [m]."""
    found = gradation.size_at(edges(curve, size_number).fine, share)
    return found if curve is not None else Assumed(found, f"finest that No. {size_number} allows")


def coarse_size(share: float, curve: Curve | None, size_number: str | None) -> float | Assumed:
    """Return a size of the stone at the coarse edge [m]."""
    # Of the size that everything is finer than, the least counts: sieves above it hold nothing.
    level = share < 1
    found = gradation.size_at(edges(curve, size_number).coarse, share, coarser=level)
    return found if curve is not None else Assumed(found, f"coarsest that No. {size_number} allows")


def _register(name: str, share: float, edge: str) -> None:
    quantity(
        f"stone.{name}_{edge}",
        title=f"D{name[1:]} of the stone at its {'finest' if edge == 'fine' else 'coarsest'}",
        kind="length",
        needs=NEEDS,
        formula=f"the {edge} edge; {READING}",
        source=f"{CORPS}; bands from {TABLE}",
        told_in=GRAINS,
    )(partial(fine_size if edge == "fine" else coarse_size, share))


for _name, _share in (("d5", 0.05), ("d15", 0.15), ("d50", 0.50), ("d85", 0.85), ("d95", 0.95)):
    _register(_name, _share, "fine")
for _name, _share in (("d15", 0.15), ("d50", 0.50), ("d90", 0.90), ("d95", 0.95), ("d100", 1.0)):
    _register(_name, _share, "coarse")


@quantity(
    "stone.band_width",
    title="coarsest D15 of the stone over its finest",
    kind="ratio",
    needs=("stone.d15_coarse", "stone.d15_fine"),
    rises_with=("stone.d15_coarse",),
    falls_with=("stone.d15_fine",),
    formula="D15 at the coarse edge / D15 at the fine edge",
    source="NEH 633 chapter 26, which allows 5",
)
def band_width(coarse: float, fine: float) -> float:
    """Return how wide the band of the stone is at D15 [-]."""
    return coarse / fine


@quantity(
    "stone.no4_by_size",
    title="most of the stone that may pass the No. 4 sieve",
    kind="fraction",
    needs=NEEDS,
    formula="the curve shown, else the fine edge of the size number's band, at 4.75 mm",
    source=TABLE,
)
def no4_by_size(curve: Curve | None, size_number: str | None) -> float | Assumed:
    """Return the most that may pass the No. 4 sieve [-].

    Of a size number whose finest sieve is wider, as much passes No. 4 as that sieve at most.
    """
    fine = edges(curve, size_number).fine
    if curve is not None:
        return gradation.share_at(curve, gradation.NO_4)
    finest, most = fine[0]
    most = most if finest >= gradation.NO_4 else gradation.share_at(fine, gradation.NO_4)
    return Assumed(most, f"as much as No. {size_number} allows")


@quantity(
    "stone.off_size",
    title="sieves at which the stone is not of its size number",
    kind="text",
    needs=("stone.gradation", "stone.size_number"),
    formula="the curve shown against the band of the size number, sieve by sieve",
    source=TABLE,
)
def off_size(curve: Curve, size_number: str) -> str:
    """Return the sieves at which the curve leaves the band of its size number, or "none"."""
    fine, coarse = edges(None, size_number)
    apart = []
    for (opening, most), (_, least) in zip(fine, coarse, strict=True):
        try:
            share = gradation.share_at(curve, opening)
        except ValueError:
            # The curve ends short of this sieve; what it shows is judged.
            continue
        if not least - _SHARES_AGREE <= share <= most + _SHARES_AGREE:
            band_there = f"{least * 100:.0f} to {most * 100:.0f} %"
            told = f"{share * 100:.3g} % passes {opening * 1000:.4g} mm, not {band_there}"
            apart.append(told)
    return "; ".join(apart) or "none"
