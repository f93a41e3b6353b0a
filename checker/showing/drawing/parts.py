"""The section part by part, the ground first, each with the places that a note can point to."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from checker.showing.drawing.figures import Figures
from checker.showing.drawing.geometry import Pipe, Point, Shape
from checker.showing.drawing.setting_out import Setting


@dataclass(slots=True)
class Parts:
    """What has been drawn so far, in the order in which it lies on the sheet."""

    figures: Figures
    setting: Setting
    shapes: list[Shape] = field(default_factory=list)
    pipes: list[Pipe] = field(default_factory=list)
    places: dict[str, Point] = field(default_factory=dict)

    def area(
        self, name: str, points: Iterable[Point], hatch: str, *, shown: bool = True,
        pen: str = "edge",
    ) -> None:  # fmt: skip
        """Add an area with its hatch."""
        self.shapes.append(Shape(name, tuple(points), hatch, pen, shown))

    def line(
        self, name: str, points: Iterable[Point], pen: str, *, shown: bool = True, off: float = 0.0
    ) -> None:
        """Add a line."""
        self.shapes.append(Shape(name, tuple(points), "", pen, shown, off))
