"""What the classes of soil under, beside and behind the wall say: fine-grained, free-draining."""

from __future__ import annotations

from functools import partial

from checker.deriving.quantity import NotShown, quantity
from checker.formulas import soils

Curve = tuple[tuple[float, float], ...]

PLACES = {"bearing": "under the footing", "bank": "in the bank", "backfill": "in the backfill"}


def fines_share(shown: float | None, curve: Curve | None) -> float:
    """Return the share of a soil that passes the No. 200 sieve [-]."""
    if shown is not None:
        return shown
    if curve is None:
        raise NotShown("the share that passes the No. 200 sieve")
    return soils.passing(curve, soils.SIEVE_200)


def fine_grained(path: str, symbol: str | None, fines: float | None) -> bool:
    """Say whether a soil is clay or silt.

    Raises NotShown, naming `path` of the symbol, when both are absent or contradict each other.
    """
    by_fines = None if fines is None else soils.has_fine_grain(fines)
    by_symbol = by_fines if symbol is None else soils.is_fine_grained(symbol)
    if by_symbol is None:
        raise NotShown("the soil class, or the share that passes the No. 200 sieve", path)
    if by_fines not in (None, by_symbol):
        raise NotShown("one soil class; the symbol and the share of fines contradict", path)
    return by_symbol


def free_draining(symbol: str) -> bool:
    """Say whether a soil is in the group that needs no drain."""
    return soils.is_free_draining(symbol)


def _register(place: str, where: str) -> None:
    symbol, fines, curve = (f"soil.{place}.{key}" for key in ("usc", "fines", "gradation"))
    share = f"soil.{place}.fines_share"
    quantity(
        share,
        title=f"fines {where}",
        kind="fraction",
        needs=(f"{fines}?", f"{curve}?"),
        rises_with=(fines,),
        formula="the share shown, else the sieve curve at the No. 200 sieve",
        source="ASTM D2487 as restated in UFC 3-220-10 section 1-3.3",
    )(fines_share)
    quantity(
        f"soil.{place}.fine_grained",
        title=f"clay or silt {where}",
        kind="yes_no",
        needs=(f"{symbol}?", f"{share}?"),
        rises_with=(share,),
        formula="the group symbol, or half or more passing the No. 200 sieve",
        source="ASTM D2487 as restated in UFC 3-220-10 section 1-3.3",
    )(partial(fine_grained, symbol))
    quantity(
        f"soil.{place}.free_draining",
        title=f"free-draining soil {where}",
        kind="yes_no",
        needs=(symbol,),
        formula="GW, GP, SW, SP, GM or SM; of a pair, both",
        source="IRC Table R405.1, from memory",
    )(free_draining)


for _place, _where in PLACES.items():
    _register(_place, _where)
