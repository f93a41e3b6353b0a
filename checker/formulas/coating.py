"""Thickness of a coat from what was used on how much wall."""

from __future__ import annotations


def wet_film(volume: float, area: float, loss: float = 0.0) -> float:
    """Return the mean thickness of a coat as applied [m].

    In the units of the trade: wet mil = 1604 x gallons / square feet, as 231 cubic inches / 0.001
    in / 144 = 1604.17.

    Parameters: volume used [m3]; area covered [m2]; loss, the share that did not reach the wall
    [-]. Source: definition of volume. Raises ValueError for an area of nothing or less, a negative
    volume or a loss outside 0 to 1.
    """
    if area <= 0:
        raise ValueError("a coat needs an area above nothing")
    if volume < 0:
        raise ValueError("a coat cannot use less than nothing")
    _check_loss(loss)
    return volume * (1 - loss) / area


def dry_film(wet: float, solids: float) -> float:
    """Return the thickness that stays when the coat has dried [m].

    Parameters: wet thickness [m]; solids, share of the volume that stays [-]. Source: definition
    of solids by volume; dry = wet x solids. Raises ValueError for a negative thickness or solids
    outside 0 to 1.
    """
    if wet < 0:
        raise ValueError("a film cannot be thinner than nothing")
    _check_solids(solids)
    return wet * solids


def wet_needed(dry: float, solids: float) -> float:
    """Return the thickness to apply, and to read on the wet-film gauge, for a dry one [m].

    Parameters: dry thickness wanted [m]; solids, share of the volume that stays [-]. Source:
    definition of solids by volume; wet = dry / solids. Raises ValueError for a negative thickness
    or solids outside 0 to 1.
    """
    if dry < 0:
        raise ValueError("a film cannot be thinner than nothing")
    _check_solids(solids)
    return dry / solids


def coverage(dry: float, solids: float, loss: float = 0.0) -> float:
    """Return the area that a volume covers at a dry thickness, area per volume [1/m].

    In the units of the trade: square feet per gallon = 1604 x solids / dry mil x (1 - loss).

    Parameters: dry thickness wanted [m]; solids, share of the volume that stays [-]; loss, the
    share that does not reach the wall [-]. Source: definition of solids by volume. Raises
    ValueError for a thickness of nothing or less, solids or a loss outside 0 to 1.
    """
    if dry <= 0:
        raise ValueError("a film needs a thickness above nothing")
    _check_solids(solids)
    _check_loss(loss)
    return solids * (1 - loss) / dry


def volume_needed(dry: float, area: float, solids: float, loss: float = 0.0) -> float:
    """Return the volume that makes a dry thickness over an area [m3].

    Parameters: dry thickness wanted [m]; area [m2]; solids and loss as in `coverage` [-]. Source:
    definition of solids by volume. Raises ValueError for an area of nothing or less, and as
    `coverage` does.
    """
    if area <= 0:
        raise ValueError("a coat needs an area above nothing")
    return area / coverage(dry, solids, loss)


def _check_solids(solids: float) -> None:
    if not 0 < solids <= 1:
        raise ValueError("solids are a share of the volume, above none and at most all")


def _check_loss(loss: float) -> None:
    if not 0 <= loss < 1:
        raise ValueError("the loss is a share between none and all")
