"""Lists as a whole: whether there is any outlet or filter, and what papers and pictures lack."""

from __future__ import annotations

from checker.deriving.quantity import NotShown, quantity

Words = tuple[tuple[str, str | None], ...] | None

AT_STONE = frozenset({"around_stone", "over_stone", "against_bank", "both"})


def _any(words: Words, wanted: frozenset[str] | None, list_path: str, key: str) -> bool:
    """Say whether an item has a wanted word (any but none when `wanted` is None).

    An item that does not show its word could have it, so without another that does there is no
    answer. An empty list has none.
    """
    items = words or ()
    shown = [word for _, word in items if word is not None]
    if any(word in wanted if wanted else word != "none" for word in shown):
        return True
    bare = [f"{list_path}.{name}.{key}" for name, word in items if word is None]
    if bare:
        raise NotShown("the kind of each of them", *bare)
    return False


@quantity(
    "outlets.any",
    title="an outlet for the drain",
    kind="yes_no",
    needs=("outlets", "outlets.all.kind?"),
    formula="some outlet is of a kind other than none",
    source="definition",
)
def any_outlet(ids: tuple[str, ...], kinds: Words) -> bool:
    """Say whether the drain has an outlet at all."""
    return _any(kinds, None, "outlets", "kind")


@quantity(
    "fabrics.any",
    title="a filter between soil and pipe",
    kind="yes_no",
    needs=("fabrics", "fabrics.all.kind?"),
    formula="some fabric is of a kind other than none",
    source="definition",
)
def any_fabric(ids: tuple[str, ...], kinds: Words) -> bool:
    """Say whether there is a filter at all."""
    return _any(kinds, None, "fabrics", "kind")


@quantity(
    "fabrics.at_stone",
    title="a filter between the soil and the stone",
    kind="yes_no",
    needs=("fabrics", "fabrics.all.position?"),
    formula="some fabric lies around the stone, over it or against the bank",
    source="definition",
)
def at_stone(ids: tuple[str, ...], positions: Words) -> bool:
    """Say whether soil meets a filter before it meets stone."""
    return _any(positions, AT_STONE, "fabrics", "position")


PARTS_WITH_DATA = ("pipe", "stone", "fabric", "coat", "sheet")


@quantity(
    "documents.data_missing",
    title="parts that no data sheet covers",
    kind="text",
    needs=("documents", "documents.all.type?", "documents.all.covers?"),
    formula="pipe, stone, fabric, coat and sheet less what the product data cover",
    source="definition",
)
def data_missing(
    ids: tuple[str, ...],
    types: Words,
    covers: tuple[tuple[str, tuple[str, ...] | None], ...],
) -> str:
    """Return the parts of the assembly that no data sheet covers, or "none"."""
    sheets = {name for name, kind in types or () if kind == "product_data"}
    covered = {part for name, parts in covers for part in parts or () if name in sheets}
    return ", ".join(part for part in PARTS_WITH_DATA if part not in covered) or "none"


TO_BE_SEEN = ("joint", "sheet_bottom", "pipe_with_rod", "stone_with_rule", "fabric_closed")


@quantity(
    "record.photos_missing",
    title="photographs missing, corner by corner",
    kind="text",
    needs=("drain.corners", "record.photos", "record.photos.all.at?", "record.photos.all.shows?"),
    formula="joint, sheet, pipe, stone and fabric at every corner less what is photographed",
    source="definition",
)
def photos_missing(
    corners: tuple[str, ...],
    ids: tuple[str, ...],
    places: Words,
    shows: tuple[tuple[str, tuple[str, ...] | None], ...],
) -> str:
    """Return what no photograph shows, corner by corner, or "none"."""
    at = dict(places or ())
    seen = {(at.get(name), what) for name, parts in shows for what in parts or ()}
    lacking = [
        f"{corner}: {', '.join(missing)}"
        for corner in corners
        if (
            missing := [what.replace("_", " ") for what in TO_BE_SEEN if (corner, what) not in seen]
        )
    ]
    return "; ".join(lacking) or "none"
