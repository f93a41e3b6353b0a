"""What holds for every quantity: names, needs, and the directions they declare."""

from __future__ import annotations

from typing import Any

import pytest

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Deriver
from checker.deriving.quantity import REGISTRY, Assumed, NotShown, OutsideLimits, Quantity
from checker.reading.kinds import KINDS
from checker.reading.vocabulary import vocabulary
from tests.published.test_worked_example import HOUSE
from tests.support import spec_of

# The same house before anybody has an invert, with a side that differs and codes named.
PLAN: dict[str, Any] = {
    "job": {"codes": [{"id": "IRC", "edition": "2018"}]},
    "levels": {
        "unit": "ft",
        "finished_grade_at_wall": 100.00,
        "floor_top": 92.00,
        "footing_top": 91.67,
        "seasonal_high_water": 92.50,
    },
    "excavation": {"osha_type": "B"},
    "footing": {"thickness": "12 in", "projection": "7 in"},
    "wall": {"perimeter": "144 ft"},
    "coat": {"wet_thickness": "65 mil", "solids": "0.62", "top_level": 100.00},
    "sheet": {"top_level": 100.00, "bottom_level": 91.00},
    "drain": {
        "slope": "1/16 in/ft",
        "run_long": "72 ft",
        "invert_low": 90.86,
        "diameter": "4 in",
        "material": "rigid_pvc",
        "offset": "3 in",
    },
    "stone": {"cover": "12 in", "bedding": "2 in", "beyond_footing": "14 in"},
    "outlets": [{"id": "main", "invert": 89.60, "leg_length": "95 ft"}],
    "slab": {"thickness": "4 in"},
    "soil": {place: {"fines": "72 %"} for place in ("bearing", "bank", "backfill")},
    "grade": {
        "sides": [
            {"id": "north", "fall": "6 in", "in_distance": "10 ft", "expected_settlement": "4 in"},
            {"id": "east", "fall": "5 in", "in_distance": "7 ft", "grade_at_wall": 99.50},
        ]
    },
}
DIRECTED = [quantity for quantity in REGISTRY.values() if quantity.rises_with | quantity.falls_with]


def test_no_quantity_bears_the_name_of_a_key() -> None:
    assert not REGISTRY.keys() & vocabulary().nodes.keys()


@pytest.mark.parametrize("name", REGISTRY)
def test_needs_exist_and_the_kind_is_known(name: str) -> None:
    quantity = REGISTRY[name]
    paths = {need.path.replace(".all.", ".each.") for need in quantity.needs}
    assert paths <= REGISTRY.keys() | vocabulary().nodes.keys()
    assert quantity.kind in {*KINDS, "text", "yes_no", "year", "ratio"}
    assert quantity.formula
    assert quantity.source


@pytest.mark.parametrize("name", REGISTRY)
def test_no_quantity_rests_on_itself(name: str) -> None:
    seen: set[str] = set()
    front = {need.path for need in REGISTRY[name].needs}
    while front:
        seen |= front
        front = {
            need.path for path in front & REGISTRY.keys() for need in REGISTRY[path].needs
        } - seen
    assert name not in seen


@pytest.mark.parametrize("quantity", DIRECTED, ids=lambda quantity: quantity.name)
def test_a_quantity_moves_the_way_it_says(quantity: Quantity) -> None:
    """Nudge each directed input of two houses upward and look which way the result goes."""
    tried = 0
    for mapping in (HOUSE, PLAN):
        arguments = _arguments(Deriver(spec_of(mapping)), quantity)
        before = _result(quantity, arguments)
        if before is None:
            continue
        for place, need in enumerate(quantity.needs):
            if (
                arguments[place] is None
                or need.path not in quantity.rises_with | quantity.falls_with
            ):
                continue
            nudged = [*arguments[:place], _higher(arguments[place]), *arguments[place + 1 :]]
            after = _result(quantity, nudged)
            if after is None:
                continue
            tried += 1
            moved = after - before
            assert moved >= 0 if need.path in quantity.rises_with else moved <= 0, need.path
    assert tried, "neither house reaches this quantity"


def _arguments(deriver: Deriver, quantity: Quantity) -> list[Any]:
    items = {"grade.sides.each": "north", "outlets.each": "main"}
    item = next((i for prefix, i in items.items() if quantity.name.startswith(prefix)), "")
    return [
        deriver.get(need.path, item if ".each" in need.path else "").value
        for need in quantity.needs
    ]


def _result(quantity: Quantity, arguments: list[Any]) -> float | None:
    required = zip(quantity.needs, arguments, strict=True)
    if any(value is None and not need.optional for need, value in required):
        return None
    try:
        value = quantity.body(*arguments)
    except (NotShown, OutsideLimits, ValueError):
        return None
    return float(value.value if isinstance(value, Assumed) else value)


def _higher(value: Any) -> Any:
    if isinstance(value, tuple):
        return tuple((name, None if one is None else one + 0.01) for name, one in value)
    return value * 1.01 if value > 0 else value + 0.01
