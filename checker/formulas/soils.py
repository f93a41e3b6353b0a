"""What a soil's group symbol or its share of fines says about it."""

from __future__ import annotations

SIEVE_200 = 0.075e-3

COARSE = frozenset({"gw", "gp", "gm", "gc", "sw", "sp", "sm", "sc"})
FINE = frozenset({"ml", "cl", "ol", "mh", "ch", "oh", "pt"})

# Group I of IRC Table R405.1. The table itself was not read; federal rules for manufactured homes
# (24 CFR 3285.202) put the same six symbols in one class.
GROUP_I = frozenset({"gw", "gp", "sw", "sp", "gm", "sm"})


def is_fine_grained(symbol: str) -> bool:
    """Say whether a USCS group symbol, or a pair such as CL-ML, stands for fine-grained soil.

    Peat counts as fine: it holds water and passes a filter's limits no better. Source: ASTM D2487
    as restated in UFC 3-220-10 section 1-3.3. Raises ValueError for something that is not a
    symbol, and for a pair of a coarse and a fine one (a borderline call, not a class).
    """
    parts = _parts(symbol)
    if len({part in FINE for part in parts}) > 1:
        raise ValueError(f"{symbol} is half coarse and half fine; which is it?")
    return parts[0] in FINE


def has_fine_grain(fines: float) -> bool:
    """Say whether a share of fines makes a soil fine-grained: half or more passes the No. 200.

    Parameters: fines, share by weight that passes the No. 200 sieve, 0.075 mm [-]. Source: ASTM
    D2487 as restated in UFC 3-220-10 section 1-3.3 (coarse: more than half is retained).
    Raises ValueError outside 0 to 1.
    """
    if not 0 <= fines <= 1:
        raise ValueError("a share lies between none and all")
    return fines >= 0.5


def is_free_draining(symbol: str) -> bool:
    """Say whether a USCS symbol lies in Group I, well-drained ground by IRC Table R405.1.

    Of a pair such as GW-GM both must. Source: IRC Table R405.1, from memory, supported by 24 CFR
    3285.202. Raises ValueError for something that is not a symbol.
    """
    return all(part in GROUP_I for part in _parts(symbol))


def passing(curve: tuple[tuple[float, float], ...], opening: float) -> float:
    """Return the share of a sieve curve that passes exactly this opening [-].

    Parameters: curve, pairs of opening [m] and share passing [-]; opening [m]. No reading between
    sieves: the curve must hold the opening, to 1 % of its size. Source: definition.
    Raises ValueError when it does not.
    """
    for size, share in curve:
        if abs(size - opening) <= 0.01 * opening:
            return share
    raise ValueError(f"the sieve curve has no point at {opening * 1000:g} mm")


def _parts(symbol: str) -> list[str]:
    parts = symbol.lower().replace("-", "_").split("_")
    if len(parts) > 2 or any(part not in COARSE | FINE for part in parts):
        raise ValueError(f"{symbol!r} is not a soil group symbol")
    return parts
