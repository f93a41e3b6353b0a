"""The drain's quantities through a spec: what stands in for what, and what is asked when it lacks.

Levels are in feet; every expected number is worked out by hand beside its check.
"""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Derived, Deriver
from checker.deriving.quantities import drain_entry, drain_levels, drain_room
from checker.deriving.quantity import Assumed
from checker.values import Range
from tests.support import spec_of

FOOT = 0.3048
INCH = 0.0254


def find(name: str, **sections: Any) -> Derived:
    sections.setdefault("levels", {"unit": "ft"})
    return Deriver(spec_of(sections)).get(name)


def corners(*inverts: float | str, run: str = "10 ft") -> list[dict[str, Any]]:
    return [
        {"id": f"C{number}", "invert": invert, "run_to_next": run}
        for number, invert in enumerate(inverts)
    ]


# -- before there are inverts ---------------------------------------------------------------------

SELF_CHECK: dict[str, Any] = {
    "levels": {"unit": "ft", "footing_top": 0.0, "slab_underside": 0.0},
    "footing": {"thickness": "12 in"},
    "drain": {"slope": "1/16 in/ft", "run_long": "72 ft"},
}


def test_a_self_check_answers_from_footing_levels_slope_and_run_alone() -> None:
    # Bedding 2 in and the widest plastic 4 in pipe, 4.8 in: room 12 - 2 - 4.8 = 5.2 in; the fall
    # takes 72 / 16 = 4.5 in; 0.7 in are left, and 12 - 0.7 = 11.3 in of footing would do.
    spare, needed = (
        find("drain.window_spare", **SELF_CHECK),
        find("footing.thickness_needed", **SELF_CHECK),
    )
    assert spare.value == pytest.approx(0.7 * INCH)
    assert needed.value == pytest.approx(11.3 * INCH)
    for found in (spare, needed):
        assert any("bedding" in note for note in found.assumed)
        assert any("widest plastic pipe of 4 in" in note for note in found.assumed)


def test_what_is_shown_takes_the_place_of_what_was_assumed() -> None:
    # 12 - 3 - 4.215 = 4.785
    drain = SELF_CHECK["drain"] | {"diameter": "4 in", "outside_diameter": "4.215 in"}
    room = find("drain.window", **(SELF_CHECK | {"drain": drain, "stone": {"bedding": "3 in"}}))
    assert room.value == pytest.approx(4.785 * INCH)
    assert room.assumed == ()


def test_without_slope_or_inverts_the_fall_is_asked_for() -> None:
    for shown, asked in (("run_long", "slope"), ("slope", "run_long")):
        drain = {shown: SELF_CHECK["drain"][shown]}
        found = find("drain.window_spare", **(SELF_CHECK | {"drain": drain}))
        assert not found.known
        assert found.missing == (f"drain.{asked}",)


@given(
    gentle=st.floats(0, 0.05),
    more=st.floats(1e-6, 0.05),
    run=st.floats(1, 50),
    room=st.floats(-1, 1),
)
def test_a_steeper_drain_leaves_less_room(
    gentle: float, more: float, run: float, room: float
) -> None:
    def spare(slope: float) -> Any:
        return drain_room.window_spare(room, drain_levels.fall_total(None, None, None, slope, run))

    assert spare(gentle + more) < spare(gentle)


# -- inverts --------------------------------------------------------------------------------------


def test_corners_win_over_the_high_and_low_invert() -> None:
    drain = {"corners": corners(91.2, 90.9), "invert_high": 95.0, "invert_low": 80.0}
    assert find("drain.highest_invert", drain=drain).value == pytest.approx(91.2 * FOOT)
    assert find("drain.lowest_invert", drain=drain).value == pytest.approx(90.9 * FOOT)
    assert find("drain.fall_total", drain=drain).value == pytest.approx(0.3 * FOOT)


def test_one_invert_with_slope_and_run_gives_the_other() -> None:
    # 1 % over 50 ft is 0.5 ft.
    low = {"invert_low": 90.0, "slope": "1 %", "run_long": "50 ft"}
    high = {"invert_high": 90.5, "slope": "1 %", "run_long": "50 ft"}
    assert find("drain.highest_invert", drain=low).value == pytest.approx(90.5 * FOOT)
    assert find("drain.lowest_invert", drain=high).value == pytest.approx(90.0 * FOOT)


@pytest.mark.parametrize("lacking", ["slope", "run_long"])
def test_half_of_slope_and_run_gives_no_invert(lacking: str) -> None:
    whole = {"slope": "1 %", "run_long": "50 ft"}
    half = {key: text for key, text in whole.items() if key != lacking}
    highest = find("drain.highest_invert", drain={"invert_low": 90.0} | half)
    assert highest.missing == ("drain.invert_high",)
    lowest = find("drain.lowest_invert", drain={"invert_high": 90.0} | half)
    assert lowest.missing == ("drain.invert_low",)


@pytest.mark.parametrize(("high", "feet"), [(91.4, 0.5), (90.9, 0.0)])
def test_fall_between_the_high_and_the_low_invert(high: float, feet: float) -> None:
    # 91.4 - 90.9, and a level drain
    found = find("drain.fall_total", drain={"invert_high": high, "invert_low": 90.9})
    assert found.value == pytest.approx(feet * FOOT, abs=1e-9)


def test_a_corner_without_an_invert_is_named() -> None:
    drain = {"corners": [*corners(91.2, 90.9), {"id": "SW"}]}
    for name in ("drain.highest_invert", "drain.lowest_invert"):
        assert find(name, drain=drain).missing == ("drain.corners.SW.invert",)


def test_a_high_invert_below_the_low_one_gives_no_fall() -> None:
    found = find("drain.fall_total", drain={"invert_high": 90.0, "invert_low": 91.0})
    assert not found.known
    assert "high invert lies below the low one" in found.because


def test_a_ranged_invert_gives_a_ranged_crown() -> None:
    # Pipe 4.2 in over all with a wall of 0.2 in adds 4.0 in to both ends.
    pipe = {"outside_diameter": "4.2 in", "wall_thickness": "0.2 in"}
    found = find("drain.crown_high", drain=pipe | {"invert_high": "91.0 to 91.2"})
    low, high = 91 * FOOT + 4 * INCH, 91.2 * FOOT + 4 * INCH
    assert isinstance(found.value, Range)
    assert tuple(found.value) == pytest.approx((low, high))


@pytest.mark.parametrize(
    ("drain", "says"),
    [
        ({"corners": corners(91.2, 90.9), "invert_high": 91.2}, "none"),
        ({"corners": corners(91.2, 90.9), "invert_high": 91.23}, "none"),
        ({"corners": corners(91.2, 90.9), "invert_low": 90.9}, "none"),
        ({"corners": corners(91.4, 90.9), "slope": "1 %", "run_long": "50 ft"}, "none"),
        ({"corners": corners(91.2, 90.9), "invert_high": 91.3}, "highest corner"),
        ({"corners": corners(91.2, 90.9), "invert_low": 90.8}, "lowest corner"),
        # 1 % over 50 ft is 0.5 ft, the inverts fall by 0.3
        ({"corners": corners(91.2, 90.9), "slope": "1 %", "run_long": "50 ft"}, "slope"),
        ({"invert_high": 91.4, "invert_low": 90.9, "slope": "1 %", "run_long": "50 ft"}, "none"),
    ],
)
def test_inverts_said_twice_must_agree(drain: dict[str, Any], says: str) -> None:
    assert says in find("drain.contradiction", drain=drain).value


@pytest.mark.parametrize(
    "drain",
    [
        {"corners": corners(91.2, 90.9)},
        {"invert_high": 91.2, "slope": "1 %", "run_long": "50 ft"},
        {"invert_low": 90.9, "slope": "1 %", "run_long": "50 ft"},
    ],
)
def test_what_is_said_once_cannot_contradict_itself(drain: dict[str, Any]) -> None:
    assert not find("drain.contradiction", drain=drain).known


# -- pipe -----------------------------------------------------------------------------------------


def test_pipe_sizes_come_from_the_table_by_size_and_material() -> None:
    # 4 in ABS sewer pipe: 4.215 in outside, wall at least 0.120 in (ASTM D2751). Of rigid PVC the
    # widest counts, schedule 40 with 4.500 in outside and 0.237 in of wall (ASTM D1785).
    for material, outside, wall in (("abs", 4.215, 0.120), ("rigid_pvc", 4.500, 0.237)):
        drain = {"diameter": "4 in", "material": material}
        found = find("drain.pipe_outside_diameter", drain=drain)
        assert found.value == pytest.approx(outside * INCH)
        assert "table of pipes" in found.assumed[0]
        found = find("drain.pipe_wall", drain=drain)
        assert found.value == pytest.approx(wall * INCH)
        assert "table of pipes" in found.assumed[0]


def test_a_metric_size_finds_its_pipe() -> None:
    # 100 mm and 4 in (101.6 mm) are one nominal size.
    found = find("drain.pipe_outside_diameter", drain={"diameter": "100 mm", "material": "clay"})
    assert found.value == pytest.approx(5.0 * INCH)


def test_a_pipe_the_table_lacks_is_asked_for() -> None:
    clay = {"material": "clay"}
    for drain in (clay, clay | {"diameter": "5 in"}, {"diameter": "4 in"}):
        assert find("drain.pipe_outside_diameter", drain=drain).missing == (
            "drain.outside_diameter",
        )
        assert find("drain.pipe_wall", drain=drain).missing == ("drain.wall_thickness",)


def test_the_trench_is_not_worked_out_from_a_guessed_bedding() -> None:
    drain = {"invert_low": 90.0, "wall_thickness": "0.2 in"}
    assert find("drain.trench_bottom_low", drain=drain).missing == ("stone.bedding",)


# -- loop, line and outlet ------------------------------------------------------------------------


def test_the_outlet_corner_is_the_lowest_unless_another_is_shown() -> None:
    found = find("drain.outlet_corner", drain={"corners": corners(91.2, 90.9, 91.0)})
    assert found.value == "C1"
    assert "lowest corner" in found.assumed[0]
    shown = find("drain.outlet_corner", drain={"corners": corners(91.2, 90.9), "outlet_at": "c0"})
    assert (shown.value, shown.assumed) == ("C0", ())


def test_an_outlet_at_no_corner_is_asked_for() -> None:
    found = find("drain.outlet_corner", drain={"corners": corners(91.2, 90.9), "outlet_at": "C9"})
    assert found.missing == ("drain.outlet_at",)


def test_water_behind_an_outlet_at_the_wrong_corner_is_found() -> None:
    # The outlet leaves at C0, 0.3 ft over the lowest corner.
    drain = {"corners": corners(91.0, 90.9, 90.7, 90.8), "outlet_at": "C0", "shape": "loop"}
    assert find("drain.ponding_depth", drain=drain).value == pytest.approx(0.3 * FOOT)
    assert find("drain.ponding_at", drain=drain).value == "C2"


def test_an_unshown_shape_is_said_only_where_it_matters() -> None:
    # 2 > 1 < 4 > 0: closed, the dip at 1 empties down to 2 and then to the outlet beside it, so
    # 1 stays; as a line it must climb over 4, so 3 stay.
    drain: dict[str, Any] = {"corners": corners(2.0, 1.0, 4.0, 0.0)}
    unshown = find("drain.ponding_depth", drain=drain)
    assert unshown.value == pytest.approx(1 * FOOT)
    assert any("loop" in note for note in unshown.assumed)
    line = find("drain.ponding_depth", drain=drain | {"shape": "line"})
    assert line.value == pytest.approx(3 * FOOT)
    plain = find(
        "drain.ponding_depth", drain={"corners": corners(3.0, 2.0, 1.0), "outlet_at": "C2"}
    )
    assert (plain.value, plain.assumed) == (0, ())


def test_a_run_needs_two_corners() -> None:
    # Two corners will do: the outlet lies 0.1 ft over the other one.
    drain = {"corners": corners(91.0, 90.9), "outlet_at": "C0"}
    assert find("drain.ponding_depth", drain=drain).value == pytest.approx(0.1 * FOOT)
    assert not find("drain.ponding_depth", drain={"corners": corners(91.0)}).known
    # 0.1 ft in 10 ft is 1 %.
    line = {"corners": corners(91.0, 90.9), "shape": "line"}
    assert find("drain.flattest_slope", drain=line).value == pytest.approx(0.01)
    assert not find("drain.flattest_slope", drain={"corners": corners(91.0)}).known


def test_a_slope_read_as_a_loop_says_so_unless_it_is_shown_to_be_one() -> None:
    drain = {"corners": corners(91.0, 90.9, 90.8)}
    for name in ("drain.flattest_slope", "drain.longest_run"):
        assert any("loop" in note for note in find(name, drain=drain).assumed)
        shown = find(name, drain=drain | {"shape": "loop", "outlet_at": "C2"})
        assert shown.assumed == ()


def test_ranged_inverts_leave_the_ponds_unknown() -> None:
    found = find("drain.ponding_depth", drain={"corners": corners(91.0, "90.7 to 90.9", 90.8)})
    assert not found.known


def test_the_last_corner_of_a_line_needs_no_run() -> None:
    # 0.1 ft in 10 ft and 0.2 ft in 20 ft are both 1 %; the way to the end is 30 ft.
    line = [
        {"id": "A", "invert": 91.3, "run_to_next": "10 ft"},
        {"id": "B", "invert": 91.2, "run_to_next": "20 ft"},
        {"id": "C", "invert": 91.0},
    ]
    drain = {"corners": line, "shape": "line"}
    assert find("drain.flattest_slope", drain=drain).value == pytest.approx(0.01)
    assert find("drain.longest_run", drain=drain).value == pytest.approx(30 * FOOT)
    closed = find("drain.longest_run", drain=drain | {"shape": "loop"})
    assert not closed.known


def test_slope_and_run_stand_in_for_corners() -> None:
    drain = {"slope": "1/8 in/ft", "run_long": "50 ft"}
    assert find("drain.flattest_slope", drain=drain).value == pytest.approx(1 / 96)
    assert find("drain.average_slope", drain=drain).value == pytest.approx(1 / 96)
    assert find("drain.longest_run", drain=drain).value == pytest.approx(50 * FOOT)
    # 0.5 ft in 50 ft
    inverts = {"invert_high": 90.5, "invert_low": 90.0, "run_long": "50 ft"}
    spread = find("drain.flattest_slope", drain=inverts)
    assert spread.value == pytest.approx(0.01)
    assert "evenly" in spread.assumed[0]
    assert not find("drain.flattest_slope", drain={"run_long": "50 ft"}).known
    # Measured corners without the lengths between them count before the slope on paper.
    measured = {"corners": [{"id": "A", "invert": 90.5}, {"id": "B", "invert": 90.0}]}
    both = find("drain.flattest_slope", drain=measured | {"slope": "2 %", "run_long": "50 ft"})
    assert both.value == pytest.approx(0.01)
    stated = find("drain.flattest_slope", drain=measured | {"slope": "2 %"})
    assert stated.value == pytest.approx(0.02)


# -- entry and path -------------------------------------------------------------------------------


def test_holes_down_or_up_need_the_angle_between_their_rows() -> None:
    for holes in ("down", "up"):
        found = find("drain.hole_height", drain={"holes": holes})
        assert found.missing == ("drain.hole_rows_apart",)


@pytest.mark.parametrize("holes", ["both", "all_around", "slotted"])
def test_openings_all_round_let_water_in_at_the_bottom(holes: str) -> None:
    found = find("drain.entry_level", drain={"holes": holes, "invert_high": 91.0})
    assert found.value == pytest.approx(91.0 * FOOT)


def test_holes_up_let_water_stand_over_the_joint() -> None:
    # Inside radius 2 in, rows 120 degrees apart about the top: 3 in over the invert, less what
    # half a hole takes off. With no hole size they count at their middle: 91.5 ft + 3 in is 1 in
    # over a footing top at 91.667 ft.
    pipe = {"outside_diameter": "4.2 in", "wall_thickness": "0.1 in", "invert_high": 91.5}
    drain = pipe | {"holes": "up", "hole_rows_apart": "120 deg"}
    levels = {"unit": "ft", "footing_top": 91.6666667}
    found = find("drain.entry_over_joint", drain=drain, levels=levels)
    assert found.value == pytest.approx(1 * INCH, abs=1e-6)
    assert any("middle" in note for note in found.assumed)


@given(
    invert=st.floats(-50, 50),
    holes=st.sampled_from(["down", "up", "both", "slotted", "all_around"]),
    apart=st.floats(0, 3.14),
    size=st.floats(0, 0.02),
)
def test_water_never_enters_below_the_invert(
    invert: float, holes: str, apart: float, size: float
) -> None:
    height = drain_entry.hole_height((holes,), apart, size, 0.107, 0.003)
    height = height.value if isinstance(height, Assumed) else height
    assert drain_entry.entry_level(invert, height) >= invert


def test_cover_stands_in_for_the_top_of_the_stone() -> None:
    covered = find("drain.path_to_pipe", stone={"cover": "12 in"})
    assert covered.value == pytest.approx(-12 * INCH)
    short = {"outside_diameter": "4.2 in", "wall_thickness": "0.2 in", "invert_high": 91.0}
    # Crown 91.333; stone stops at 91.083, 3 in lower.
    stone = {"top_level": 91.0833333}
    found = find("drain.path_to_pipe", drain=short, stone=stone)
    assert found.value == pytest.approx(3 * INCH, abs=1e-6)
    assert find("drain.path_to_pipe").missing[0] == "stone.top_level"


def test_room_for_fall_by_two_heights_where_there_are_no_levels() -> None:
    # 12 in of footing + 1 in to the slab - 2 in of bed - 4.215 in of pipe = 6.785 in
    drain = {"present": "yes", "outside_diameter": "4.215 in"}
    sections: dict[str, Any] = {"drain": drain, "stone": {"bedding": "2 in"}}
    sections["footing"] = {"thickness": "12 in"}
    raised = find("drain.window", slab={"above_footing": "1 in"}, **sections)
    assert raised.value / INCH == pytest.approx(6.785)
    sunk = find("drain.window", slab={"above_footing": "-2 in"}, **sections)
    assert sunk.value / INCH == pytest.approx(3.785)
    assert find("drain.window", **sections).missing == (
        "levels.slab_underside",
        "levels.footing_underside",
    )
