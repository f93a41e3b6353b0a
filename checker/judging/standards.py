"""What a company standard cannot say, because it is drawn for many houses and none of them."""

from __future__ import annotations

import functools

from checker.reading.vocabulary import Leaf, Section, vocabulary

ON_EACH_LOT = "a standard has no levels, facts or records of its own: judged on each lot"

# The lists that a standard does hold; all others list what is at one house, such as its corners.
_LISTED = ("job.codes", "fabrics", "outlets")
_OBSERVED = "site."
# What depends on the size of the house and on where it stands.
_KINDS_OF_ONE_HOUSE = ("level", "area", "volume")
_LENGTHS_OF_ONE_HOUSE = ("wall.perimeter", "outlets.each.leg_length")


@functools.cache
def belongs_to_a_lot(path: str) -> bool:
    """Say whether only a house can show a value: a level, a fact, a record, an area, a list."""
    if path.startswith(_OBSERVED):
        return True
    if path.startswith("job.codes."):
        return False
    found = vocabulary().locate(path)
    if found is None or isinstance(found[0], Section):
        return False
    node = found[0]
    if isinstance(node, Leaf):
        of_one_house = node.kind in _KINDS_OF_ONE_HOUSE or node.path in _LENGTHS_OF_ONE_HOUSE
        return of_one_house or node.nature != "choice"
    return path not in _LISTED
