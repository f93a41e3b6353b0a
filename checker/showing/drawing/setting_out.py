"""Where wall, pipe, stone, ground and hole stand, from what the spec shows of them."""

from __future__ import annotations

from dataclasses import dataclass

from checker.showing.drawing.figures import USUAL, Figures, Measure
from checker.showing.drawing.geometry import FAR, Point, bank_top, ground_at
from checker.showing.drawing.levels import Levels, levels_of

_BURIED = 0.1  # m; less ground than this over the bottom of a hole is no hole


@dataclass(frozen=True, slots=True)
class PipePlace:
    """The footing drain at its highest corner: its middle across, its levels, its sizes."""

    present: bool
    position: str
    across: float
    invert: Measure
    outside: Measure
    wall: Measure
    bedding: Measure

    @property
    def bottom(self) -> float:
        """Return the level of the outside bottom."""
        return self.invert.value - self.wall.value

    @property
    def crown(self) -> float:
        """Return the level of the outside top."""
        return self.bottom + self.outside.value

    @property
    def middle(self) -> Point:
        """Return the middle of the pipe."""
        return self.across, self.bottom + self.outside.value / 2

    @property
    def bed(self) -> float:
        """Return the level of the bottom of the stone under the pipe."""
        return self.bottom - self.bedding.value


@dataclass(frozen=True, slots=True)
class StonePlace:
    """The drain stone: how far out it reaches from the wall's face, and its two levels."""

    reach: float
    reach_shown: bool
    top: Measure
    bottom: float


@dataclass(frozen=True, slots=True)
class GroundPlace:
    """The finished ground on the side drawn, and the hole: its bottom, its face, its bank.

    `bank` is the foot and the top of the bank, or empty where nothing is dug in.
    """

    side: str
    line: tuple[Point, ...]
    shown: bool
    hole_bottom: float
    face: float
    hole_shown: bool
    bank: tuple[Point, ...]
    bank_shown: bool


@dataclass(frozen=True, slots=True)
class Setting:
    """Everything that the parts of the section are placed by."""

    levels: Levels
    wall: Measure
    toe: Measure
    inner_toe: float
    crawl: bool
    pipe: PipePlace
    stone: StonePlace | None
    ground: GroundPlace

    @property
    def joint(self) -> float:
        """Return the level of the joint between footing and wall."""
        return self.levels.footing_top.value

    @property
    def inside(self) -> float:
        """Return the inside face of the wall."""
        return -self.wall.value

    @property
    def inner_edge(self) -> float:
        """Return the inside edge of the footing."""
        return -self.wall.value - self.inner_toe


def set_out(figures: Figures) -> Setting:
    """Return where everything stands; what is not shown stands where it usually does."""
    levels = levels_of(figures)
    wall, toe = figures.size("wall.thickness"), figures.size("footing.toe")
    width = figures.find("footing.width")
    inner = max(width.value - wall.value - toe.value, 0.0) if width else toe.value
    pipe = _pipe(figures, levels, wall.value + inner, toe.value)
    stone = _stone(figures, levels, pipe, toe.value)
    ground = _ground(figures, levels, stone, toe.value)
    return Setting(levels, wall, toe, inner, bare_ground_inside(figures), pipe, stone, ground)


def bare_ground_inside(figures: Figures) -> bool:
    """Say whether there is bare ground inside the wall instead of a floor."""
    encloses = figures.word("wall.encloses")
    return encloses in ("crawl_space", "nothing") and not figures.known("slab.thickness")


def _pipe(figures: Figures, levels: Levels, inside: float, toe: float) -> PipePlace:
    outside = figures.size("drain.pipe_outside_diameter", "drain.outside_diameter")
    wall, bedding = figures.size("drain.pipe_wall"), figures.size("stone.bedding")
    position = figures.word("drain.position")
    invert = figures.find("drain.highest_invert")
    if invert is None:
        base = levels.footing_top if position == "on_footing" else levels.footing_underside
        invert = Measure(base.value + bedding.value + wall.value, shown=False)
    offset, radius = figures.size("drain.offset").value, outside.value / 2
    across = {
        "on_footing": max(radius, toe / 2),
        "inside": -inside - offset - radius,
    }.get(position, toe + offset + radius)
    present = figures.yes("drain.present") is not False
    return PipePlace(present, position, across, invert, outside, wall, bedding)


def _stone(figures: Figures, levels: Levels, pipe: PipePlace, toe: float) -> StonePlace | None:
    if pipe.position == "inside" or not (pipe.present or figures.known("stone.top_level")):
        return None
    beyond, side = figures.find("stone.beyond_footing"), figures.find("stone.side")
    reach = toe + USUAL["stone.beyond_footing"]
    if beyond is not None:
        reach = toe + beyond.value
    elif side is not None:
        reach = pipe.across + pipe.outside.value / 2 + side.value
    usual = max(pipe.crown + USUAL["stone.cover"], levels.footing_top.value)
    top = figures.find("stone.surface_level") or Measure(usual, shown=False)
    return StonePlace(reach, beyond is not None or side is not None, top, pipe.bed)


def _ground(
    figures: Figures, levels: Levels, stone: StonePlace | None, toe: float
) -> GroundPlace:  # fmt: skip
    side = side_drawn(figures)
    own = figures.find("grade.sides.each.grade_at_wall", side) if side else None
    grade = own or levels.grade
    fall = figures.find("grade.sides.each.fall", side) if side else None
    run = figures.find("grade.sides.each.in_distance", side) if side else None
    line: tuple[Point, ...] = ((0.0, grade.value), (FAR, grade.value))
    if fall and run:
        line = ((0.0, grade.value), (run.value, grade.value - fall.value))
    bottom = stone.bottom if stone else levels.footing_underside.value
    clear = figures.size("excavation.bottom_clear_width")
    face = max(clear.value, stone.reach if stone else toe)
    lean, lean_shown = _lean(figures)
    buried = ground_at(line, face) > bottom + _BURIED
    bank = ((face, bottom), bank_top(line, (face, bottom), lean)) if buried else ()
    return GroundPlace(
        side, line, grade.shown and bool(fall and run), bottom, face, clear.shown, bank,
        clear.shown and lean_shown,
    )  # fmt: skip


def _lean(figures: Figures) -> tuple[float, bool]:
    """Return how far the bank leans back for each rise, and whether that is shown."""
    shown = figures.find("excavation.run_per_rise")
    if shown is not None:
        return shown.value, True
    how = figures.word("excavation.protection")
    if how in ("none", "shore", "box"):
        return 0.0, True
    allowed = figures.find("excavation.steepest_allowed")
    return (allowed.value if allowed else USUAL["excavation.run_per_rise"]), False


def side_drawn(figures: Figures) -> str:
    """Return the side whose ground falls least away from the wall, else the first listed."""
    sides = figures.items("grade.sides")
    slopes = [(figures.find("grade.sides.each.slope", side), side) for side in sides]
    known = [(slope.value, side) for slope, side in slopes if slope is not None]
    return min(known, key=lambda pair: pair[0])[1] if known else next(iter(sides), "")
