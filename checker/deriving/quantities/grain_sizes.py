"""Sizes read off the sieve curve of the soil in the bank, and how widely it is graded."""

from __future__ import annotations

from functools import partial

from checker.deriving.quantity import quantity
from checker.formulas import gradation, uscs
from checker.formulas.gradation import Curve

GRAINS = ("mm", "mm")  # the unit grains are told in
READING = "log D linear in the share passing, between the sieves on either side"
CORPS = "USACE Risk Management Center, filter evaluation v1.0, base gradation"
SCALPED = "FHWA NHI-07-092, chapter 2, from memory"

# Of a curve that runs level at a share, the finer size is the safe one to hold soil back by, and
# the coarser to let its water through by.
SIZES = {"d10": 0.10, "d15": 0.15, "d30": 0.30, "d50": 0.50, "d60": 0.60, "d85": 0.85}


def size(share: float, curve: Curve) -> float:
    """Return the size that a share of a soil is finer than [m]."""
    return gradation.size_at(curve, share, coarser=share == SIZES["d15"])


def uniformity(curve: Curve) -> float:
    """Return Cu of a curve [-]."""
    return gradation.uniformity(size(0.10, curve), size(0.60, curve))


def curvature(curve: Curve) -> float:
    """Return Cc of a curve [-]."""
    return gradation.curvature(size(0.10, curve), size(0.30, curve), size(0.60, curve))


def broadly_graded(curve: Curve, fines: float) -> bool | None:
    """Say whether a soil is broadly graded; None where its curve does not reach far enough."""
    try:
        gravel = uscs.is_gravel(gradation.share_at(curve, gradation.NO_4), fines)
        return uscs.well_graded(uniformity(curve), curvature(curve), gravel=gravel)
    except ValueError:
        return None


def most_fines(curve: Curve) -> float:
    """Return the share that passes No. 200, or as much as passes the finest sieve above it [-]."""
    gradation.check(curve)
    return gradation.share_at(curve, max(curve[0][0], gradation.NO_200))


def base_curve(curve: Curve, fines: float) -> Curve:
    """Return the curve that a filter is chosen by: regraded on the No. 4 sieve where it must be."""
    return gradation.regrade(curve) if is_regraded(curve, fines) else curve


def is_regraded(curve: Curve, fines: float) -> bool:
    """Say whether a soil is regraded before its filter is chosen."""
    passing = gradation.share_at(curve, gradation.NO_4)
    return gradation.needs_regrading(passing, fines, broad=broadly_graded(curve, fines))


def base_fines(curve: Curve, fines: float) -> float:
    """Return the share of fines that a filter is chosen by [-]."""
    if is_regraded(curve, fines):
        return fines / gradation.share_at(curve, gradation.NO_4)
    return fines


def base_size(share: float, curve: Curve, fines: float) -> float:
    """Return a size of the curve that a filter is chosen by [m]."""
    return size(share, base_curve(curve, fines))


def scalped_size(share: float, curve: Curve) -> float:
    """Return a size of the part finer than the No. 4 sieve, by which geotextiles are chosen [m]."""
    return size(share, gradation.regrade(curve))


CURVE = "soil.bank.gradation"

for _name, _share in SIZES.items():
    quantity(
        f"soil.bank.{_name}",
        title=f"D{_name[1:]} of the soil in the bank",
        kind="length",
        needs=(CURVE,),
        formula=READING,
        source=CORPS,
        told_in=GRAINS,
    )(partial(size, _share))

quantity(
    "soil.bank.uniformity",
    title="coefficient of uniformity of the soil in the bank",
    kind="ratio",
    needs=(CURVE,),
    formula="Cu = D60 / D10",
    source="UFC 3-220-10, equation 1-1",
)(uniformity)

quantity(
    "soil.bank.curvature",
    title="coefficient of curvature of the soil in the bank",
    kind="ratio",
    needs=(CURVE,),
    formula="Cc = D30^2 / (D60 D10)",
    source="UFC 3-220-10, equation 1-2",
)(curvature)

_WITH_FINES = (CURVE, "soil.bank.fines_share")

quantity(
    "soil.bank.passing_no4",
    title="share of the soil in the bank that passes the No. 4 sieve",
    kind="fraction",
    needs=(CURVE,),
    formula="the curve at 4.75 mm",
    source=CORPS,
)(partial(gradation.share_at, opening=gradation.NO_4))

quantity(
    "soil.bank.regraded",
    title="soil in the bank regraded on the No. 4 sieve",
    kind="yes_no",
    needs=_WITH_FINES,
    formula="where it holds gravel, unless fines < 15 % and it is not broadly graded",
    source=CORPS,
)(is_regraded)

quantity(
    "soil.bank.base_fines",
    title="fines of the soil in the bank by which its filter is chosen",
    kind="fraction",
    needs=_WITH_FINES,
    formula="fines, divided by the share passing No. 4 where the soil is regraded",
    source=CORPS,
)(base_fines)

quantity(
    "soil.bank.base_d85",
    title="D85 of the soil in the bank by which its filter is chosen",
    kind="length",
    needs=_WITH_FINES,
    formula=f"{READING}; after regrading on the No. 4 sieve where the soil is regraded",
    source=CORPS,
    told_in=GRAINS,
)(partial(base_size, 0.85))

for _name, _share in (("d15", 0.15), ("d85", 0.85)):
    quantity(
        f"soil.bank.scalped_{_name}",
        title=f"D{_name[1:]} of the soil in the bank finer than the No. 4 sieve",
        kind="length",
        needs=(CURVE,),
        formula=f"{READING}; all shares divided by the share passing No. 4",
        source=SCALPED,
        told_in=GRAINS,
    )(partial(scalped_size, _share))


@quantity(
    "soil.bank.scalped_uniformity",
    title="coefficient of uniformity of the soil in the bank finer than the No. 4 sieve",
    kind="ratio",
    needs=(CURVE,),
    formula="Cu = D60 / D10; all shares divided by the share passing No. 4",
    source=SCALPED,
)
def scalped_uniformity(curve: Curve) -> float:
    """Return Cu of the part finer than the No. 4 sieve [-]."""
    return uniformity(gradation.regrade(curve))
