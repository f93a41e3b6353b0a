"""What a quantity is: a named number that follows from a spec, and what it needs."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, NamedTuple

Body = Callable[..., Any]


class Assumed(NamedTuple):
    """A value taken from a default or a table because the spec does not show it."""

    value: Any
    why: str


class NotShown(Exception):
    """The spec does not show enough; `paths` are the values that would do."""

    def __init__(self, what: str, *paths: str) -> None:
        super().__init__(what)
        self.what = what
        self.paths = paths


class NotApplicable(Exception):
    """The quantity means nothing for this spec, and asking for more would not change that."""


class OutsideLimits(Exception):
    """The inputs lie outside what the formula is good for, so there is no number."""


class Need(NamedTuple):
    """One input of a quantity: a path of the spec or the name of another quantity.

    `each` says that it is of the item at hand, `every` that it is of all items of a list.
    """

    path: str
    optional: bool
    each: bool
    every: bool


@dataclass(frozen=True, slots=True)
class Quantity:
    """One entry of the graph of quantities.

    `rises_with` and `falls_with` say how the result moves with a ranged input; an input in
    neither, given as a range, yields no number. `told_in` holds the units, American and metric,
    that the result is shown in where neither its inputs' nor the usual unit of its kind would do:
    coats come in gallons, stone by the ton.
    """

    name: str
    title: str
    kind: str
    needs: tuple[Need, ...]
    rises_with: frozenset[str]
    falls_with: frozenset[str]
    formula: str
    source: str
    body: Body
    told_in: tuple[str, str] = ("", "")


REGISTRY: dict[str, Quantity] = {}


def quantity(
    name: str,
    *,
    title: str,
    kind: str,
    needs: tuple[str, ...],
    formula: str,
    source: str,
    rises_with: tuple[str, ...] = (),
    falls_with: tuple[str, ...] = (),
    told_in: tuple[str, str] = ("", ""),
) -> Callable[[Body], Body]:
    """Register the function below as the body of the quantity `name`.

    A need that ends in `?` may be absent (the body then gets None). Raises ValueError when the
    name is taken or a direction names something that is not a need.
    """

    def register(body: Body) -> Body:
        if name in REGISTRY:
            raise ValueError(f"two quantities are called {name}")
        parsed = tuple(
            Need(need.removesuffix("?"), need.endswith("?"), ".each" in need, ".all." in need)
            for need in needs
        )
        known = {need.path for need in parsed}
        strangers = (set(rises_with) | set(falls_with)) - known
        if strangers:
            raise ValueError(
                f"{name} rises or falls with {sorted(strangers)}, which it does not need"
            )
        REGISTRY[name] = Quantity(
            name,
            title,
            kind,
            parsed,
            frozenset(rises_with),
            frozenset(falls_with),
            formula,
            source,
            body,
            told_in,
        )
        return body

    return register
