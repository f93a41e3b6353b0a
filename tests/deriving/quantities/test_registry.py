"""What holds for every quantity: names, needs, and the directions they declare."""

from __future__ import annotations

import math
import random
from collections.abc import Callable
from typing import Any

import pytest

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.quantity import (
    REGISTRY,
    Assumed,
    NotApplicable,
    NotShown,
    OutsideLimits,
    Quantity,
)
from checker.reading.kinds import KINDS
from checker.reading.vocabulary import Items, Leaf, vocabulary
from checker.values import Range

OTHER_KINDS = {"text", "texts", "yes_no", "year"}
DIRECTED = [quantity for quantity in REGISTRY.values() if quantity.rises_with | quantity.falls_with]

# Numbers of each kind as a house has them, in SI, from least to most.
USUAL: dict[str, tuple[float, float]] = {
    "length": (0.002, 3.0),
    "level": (20.0, 30.0),
    "slope": (0.0005, 0.1),
    "dig_slope": (0.0, 2.0),
    "fraction": (0.02, 0.98),
    "angle": (0.1, 3.0),
    "area": (1.0, 200.0),
    "volume": (0.05, 20.0),
    "permeability": (1e-8, 1e-3),
    "permittivity": (0.05, 2.0),
    "pressure": (100.0, 20_000.0),
    "unit_weight": (14_000.0, 22_000.0),
    "conductivity": (0.5, 3.0),
    "temperature": (265.0, 300.0),
    "duration": (3_600.0, 1e7),
    "freezing_index": (1e7, 1e8),
    "number": (1.0, 60.0),
    "ratio": (0.1, 10.0),
    "count": (1, 6),
    "year": (2000, 2030),
    "area_per_length": (0.0005, 0.01),
    "flow": (1e-5, 0.01),
    "flow_per_area": (1e-4, 0.1),
    "velocity": (0.1, 3.0),
    "force_per_length": (1_000.0, 50_000.0),
    "rain": (3e-7, 6e-5),
    "rate": (0.5, 5.0),
    "mass": (100.0, 10_000.0),
}
# What no made-up house may break: soil presses sideways with less than its own weight.
POSSIBLE: dict[str, Callable[[list[Any]], bool]] = {
    "wall.thrust_at_high_water": lambda arguments: arguments[0] <= arguments[1],
}
WORDS = ("A", "B", "C")
SIEVES = (0.002e-3, 0.075e-3, 0.425e-3, 2.0e-3, 4.75e-3, 25e-3)


def test_every_kind_can_be_made_up() -> None:
    assert KINDS.keys() == USUAL.keys()


def test_no_quantity_bears_the_name_of_a_key() -> None:
    assert not REGISTRY.keys() & vocabulary().nodes.keys()


@pytest.mark.parametrize("name", REGISTRY)
def test_needs_exist_and_the_kind_is_known(name: str) -> None:
    quantity = REGISTRY[name]
    paths = {need.path.replace(".all.", ".each.") for need in quantity.needs}
    assert paths <= REGISTRY.keys() | vocabulary().nodes.keys()
    assert quantity.kind in KINDS.keys() | OTHER_KINDS
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
    """Raise each directed input in many made-up houses and look which way the result goes."""
    chance = random.Random(quantity.name)
    directed = quantity.rises_with | quantity.falls_with
    reached = dict.fromkeys(directed, 0)
    for _ in range(400):
        arguments = [_made_up(chance, need.path, need.optional) for need in quantity.needs]
        if not _possible(quantity, arguments):
            continue
        before = _result(quantity, arguments)
        if before is None:
            continue
        for place, need in enumerate(quantity.needs):
            if need.path not in directed or arguments[place] is None:
                continue
            raised = list(arguments)
            raised[place] = _raise(arguments[place], chance.uniform(0.001, 0.2))
            after = _result(quantity, raised)
            if after is None or not _possible(quantity, raised):
                continue
            reached[need.path] += 1
            sign = 1 if need.path in quantity.rises_with else -1
            slack = 1e-9 * max(1.0, abs(before), abs(after))
            assert sign * (after - before) >= -slack, (need.path, arguments)
    assert all(reached.values()), f"no made-up house gives a number: {reached}"


def _possible(quantity: Quantity, arguments: list[Any]) -> bool:
    check = POSSIBLE.get(quantity.name)
    return check is None or check(arguments)


def _made_up(chance: random.Random, path: str, optional: bool) -> Any:
    if optional and chance.random() < 0.25:
        return None
    if ".all." in path:
        return tuple((name, _one(chance, path.replace(".all.", ".each."))) for name in WORDS)
    return _one(chance, path)


def _one(chance: random.Random, path: str) -> Any:
    node = vocabulary().nodes.get(path)
    if isinstance(node, Items):
        return WORDS
    kind = node.kind if isinstance(node, Leaf) else REGISTRY[path].kind
    if kind in USUAL:
        low, high = USUAL[kind]
        whole = kind in ("count", "year")
        return chance.randint(int(low), int(high)) if whole else chance.uniform(low, high)
    if kind == "yes_no":
        return chance.random() < 0.5
    if kind == "curve":
        return tuple(zip(SIEVES, sorted(chance.random() for _ in SIEVES), strict=True))
    known = sorted(set(node.words.values())) if isinstance(node, Leaf) else []
    word = chance.choice(known or WORDS)
    return (word,) if kind in ("words", "texts") else word


def _result(quantity: Quantity, arguments: list[Any]) -> float | None:
    try:
        value = quantity.body(*arguments)
    except (NotShown, NotApplicable, OutsideLimits, ValueError, ZeroDivisionError):
        return None
    number = value.value if isinstance(value, Assumed) else value
    lower = float(number.low if isinstance(number, Range) else number)
    return None if math.isnan(lower) else lower


def _raise(value: Any, share: float) -> Any:
    if isinstance(value, tuple):
        return tuple((name, one * (1 + share)) for name, one in value)
    return value + 1 if isinstance(value, int) else value * (1 + share)
