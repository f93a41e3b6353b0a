"""A window on paper through which a part of the assembly is seen at one scale."""

from __future__ import annotations

from typing import NamedTuple

from checker.showing.drawing.svg import Point

FOOT = 0.3048
INCH = 0.0254
POINTS_PER_METRE = 72 / INCH


class Scale(NamedTuple):
    """A scale by its name, and how many points a metre takes."""

    name: str
    per_metre: float


_US = (
    ('6" = 1\'-0"', 6), ('3" = 1\'-0"', 3), ('1 1/2" = 1\'-0"', 1.5), ('1" = 1\'-0"', 1),
    ('3/4" = 1\'-0"', 0.75), ('1/2" = 1\'-0"', 0.5), ('3/8" = 1\'-0"', 0.375),
    ('1/4" = 1\'-0"', 0.25), ('3/16" = 1\'-0"', 0.1875), ('1/8" = 1\'-0"', 0.125),
    ('3/32" = 1\'-0"', 0.09375), ('1" = 20\'', 0.05), ('1" = 30\'', 1 / 30), ('1" = 40\'', 0.025),
    ('1" = 60\'', 1 / 60), ('1" = 100\'', 0.01),
)  # fmt: skip
_SI = (2, 5, 10, 20, 25, 50, 75, 100, 150, 200, 250, 500, 1000)


def scales(system: str) -> tuple[Scale, ...]:
    """Return the usual scales of drawings, the largest first."""
    if system == "si":
        return tuple(Scale(f"1:{ratio}", POINTS_PER_METRE / ratio) for ratio in _SI)
    return tuple(Scale(name, inches * 72 / FOOT) for name, inches in _US)


def fitting(width: float, height: float, room: Point, system: str) -> Scale:
    """Return the largest usual scale at which a size [m] fits into a room [points].

    What fits at no usual scale gets one of its own, named by its ratio.
    """
    for scale in scales(system):
        if width * scale.per_metre <= room[0] and height * scale.per_metre <= room[1]:
            return scale
    per_metre = min(room[0] / max(width, 1e-9), room[1] / max(height, 1e-9))
    return Scale(f"1:{POINTS_PER_METRE / per_metre:.0f}", per_metre)


class View(NamedTuple):
    """A window on paper [points] and the place in the assembly [m] at its upper left corner."""

    left: float
    top: float
    width: float
    height: float
    x0: float
    y0: float
    scale: Scale

    @property
    def right(self) -> float:
        """Return the right edge on paper."""
        return self.left + self.width

    @property
    def bottom(self) -> float:
        """Return the lower edge on paper."""
        return self.top + self.height

    @property
    def x1(self) -> float:
        """Return the place in the assembly at the right edge."""
        return self.x0 + self.width / self.scale.per_metre

    @property
    def y1(self) -> float:
        """Return the level at the lower edge."""
        return self.y0 - self.height / self.scale.per_metre

    def x(self, metres: float) -> float:
        """Return where on paper a distance out from the wall lies."""
        return self.left + (metres - self.x0) * self.scale.per_metre

    def y(self, level: float) -> float:
        """Return where on paper a level lies."""
        return self.top + (self.y0 - level) * self.scale.per_metre

    def at(self, point: Point) -> Point:
        """Return where on paper a point of the assembly lies."""
        return self.x(point[0]), self.y(point[1])

    def shows(self, point: Point) -> bool:
        """Say whether a point of the assembly lies inside the window."""
        x, y = self.at(point)
        return self.left <= x <= self.right and self.top <= y <= self.bottom
