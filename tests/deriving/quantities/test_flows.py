"""Water in and out of one wet house, each number by hand with a pocket calculator.

The house of tests/published/test_worked_example.py: loop of 42 ft and 30 ft runs that falls from NE
to SW, pipe of 3.975 in inside. Groundwater stands over the drain, one leader is tied in, and the
loop runs to a sump.
"""

from __future__ import annotations

import copy
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Derived, Deriver
from checker.deriving.quantities.sump_pump import UNATTENDED
from checker.values import Range, ends
from tests.support import spec_of

FOOT = 0.3048
INCH = 0.0254
GALLON = 231 * INCH**3
GPM = GALLON / 60

WET: dict[str, Any] = {
    "levels": {
        "unit": "ft",
        "slab_underside": 91.67,
        "footing_underside": 90.67,
        "seasonal_high_water": 92.20,
        "tight_layer": 84.00,
    },
    "soil": {
        "bank": {"usc": "SM", "permeability": "1e-4 cm/s"},
        "bearing": {"usc": "SM", "permeability": "1e-4 cm/s"},
    },
    "rain": {"depth": "0.82 in", "duration": "5 min"},
    "wall": {"perimeter": "144 ft"},
    "drain": {
        "present": "yes",
        "diameter": "4 in",
        "outside_diameter": "4.215 in",
        "wall_thickness": "0.12 in",
        "material": "rigid_pvc",
        "shape": "loop",
        "outlet_at": "SW",
        "holes": "down",
        "hole_size": "3/8 in",
        "hole_rows": "2",
        "hole_spacing": "3 in",
        "corners": [
            {"id": "NE", "invert": 91.16, "run_to_next": "42 ft"},
            {"id": "NW", "invert": 90.98, "run_to_next": "30 ft"},
            {"id": "SW", "invert": 90.86, "run_to_next": "42 ft"},
            {"id": "SE", "invert": 91.04, "run_to_next": "30 ft"},
        ],
    },
    "outlets": [
        {"id": "pit", "kind": "sump"},
        {"id": "main", "kind": "daylight", "leg_slope": "1/8 in/ft", "leg_diameter": "4 in"},
    ],
    "stone": {"quantity": "15 cy"},
    "slab": {
        "area": "1260 sq ft",
        "width": "30 ft",
        "base_thickness": "4 in",
        "base_linked_to_drain": "yes",
    },
    "backfill": {"cap_material": "topsoil", "free_draining_width": "18 in"},
    "roof": {
        "area": "1700 sq ft",
        "leaders": [
            {"id": "L1", "area": "850 sq ft", "into_drain": "no", "size": "3 in"},
            {"id": "L2", "area": "200 sq ft", "into_drain": "yes", "size": "2 in"},
        ],
    },
    "areaways": [
        {
            "id": "A1",
            "area": "48 sq ft",
            "drain_size": "3 in",
            "drain_to": "sump",
            "threshold_above_floor": "6 in",
        }
    ],
    "wells": [
        {"id": "W1", "area": "9 sq ft", "drain_to": "footing_drain", "cover": "no"},
        {"id": "W2", "area": "9 sq ft", "drain_to": "stone", "cover": "yes"},
    ],
    "grade": {
        "sides": [
            {
                "id": "north",
                "fall": "6 in",
                "in_distance": "10 ft",
                "area": "1200 sq ft",
                "swale_slope": "2 %",
                "swale_depth": "3 in",
                "swale_side": "4H:1V",
            }
        ]
    },
    "sump": {
        "present": "yes",
        "diameter": "18 in",
        "pump_on_level": 90.50,
        "pump_off_level": 89.83,
        "pump_flow": "32 gpm",
        "pump_head": "10 ft",
        "discharge_size": "1 1/2 in",
        "discharge_run": "20 ft",
        "discharge_rise": "7 ft",
    },
}


def wet(**changed: Any) -> dict[str, Any]:
    """Return the wet house with keys of its sections changed; a list replaces the section."""
    mapping = copy.deepcopy(WET)
    for section, keys in changed.items():
        whole = isinstance(keys, list) or section not in mapping
        mapping[section] = keys if whole else {**mapping[section], **keys}
    return mapping


def find(name: str, item: str = "", **changed: Any) -> Derived:
    return Deriver(spec_of(wet(**changed))).get(name, item)


# -- out -------------------------------------------------------------------------------------------

FLOWS = [
    # 0.18 / 42 = 0.4286 %; D 0.33125 ft, A 0.08618 ft2, R^(2/3) 0.18998;
    # 1.486 / 0.013 x 0.18998 x sqrt(0.0042857) = 1.4217 ft/s x 0.08618 = 0.12252 cfs
    ("drain.corners.each.run_capacity", "NE", 55.0),
    # the same at 0.12 / 30 = 0.4 %: x sqrt(0.4 / 0.42857) = 0.9661
    ("drain.corners.each.run_capacity", "NW", 53.1),
    # shares NE 42/144, NW 72/144, SW (from SE) 72/144, SE 30/144; least is NW: 53.1 / 0.5
    ("drain.pipe_capacity", "", 106.2),
    # holes 0.8836 sq in/ft = 0.0061361 ft2/ft; head 2.025 in = 0.16875 ft, sqrt(2 g h) 3.2953 ft/s;
    # 144 x 0.5 x 0.61 x 0.0061361 x 3.2953 = 0.8881 cfs
    ("drain.inlet_capacity", "", 398.6),
    # 4 in at 1/96, n 0.013: 87.1 gpm
    ("outlets.each.leg_capacity", "main", 87.1),
    ("outlets.each.capacity", "main", 87.1),
    ("outlets.each.capacity", "pit", 32.0),
    ("drain.outlet_capacity", "", 87.1),
    ("drain.capacity", "", 87.1),
    # n 0.033, 0.25 ft deep: 165 gpm at n 0.035, x 35/33 = 174.7
    ("grade.sides.each.swale_capacity", "north", 174.7),
    # NSPC: 27.8 x 0.12827 x 3^(8/3) 18.72 = 66.8
    ("roof.leaders.each.capacity", "L1", 66.8),
    # mouth 0.5 x 0.61 x 0.049087 ft2 x sqrt(64.35 x 0.5) 5.672 = 0.08492 cfs = 38.1; pipe 40.4
    ("areaways.each.drain_capacity", "A1", 38.1),
    # -- in --
    # 0.82 x 12 = 9.84 in/h; 9 sq ft x 9.84 / 96.25
    ("wells.each.storm_inflow", "W1", 0.920),
    ("wells.each.storm_inflow", "W2", 0.0),
    # 48 x 9.84 / 96.25
    ("areaways.each.storm_inflow", "A1", 4.91),
    # strip 1.5 ft wide: 1.5 x (144 + 6) = 225 sq ft x 9.84 / 96.25; no permeability of the fill
    ("backfill.soak_in", "", 23.0),
    # k 1e-6 m/s, root 0.001; tight layer 6.86 ft under the drain and 8.20 ft under the water, together
    # 15.06 ft = 4.590 m; 43.89 m x 0.001 x 4.590 / 3000 = 6.716e-5 m3/s; fed by rain twice that
    ("drain.line_inflow", "", 1.064),
    ("drain.recharge_inflow", "", 2.129),
    ("drain.ground_inflow", "", 2.129),
    # 14 gpm x 1.26
    ("sump.inflow_by_rule", "", 17.64),
    # named at 10 ft, works against 9.5 ft
    ("sump.pump_duty", "", 32.0),
]


@pytest.mark.parametrize(("name", "item", "gallons"), FLOWS)
def test_flow(name: str, item: str, gallons: float) -> None:
    assert find(name, item).value == pytest.approx(gallons * GPM, rel=3e-3, abs=1e-9)


RANGES = [
    # 850 x 9.84 / 96.25 = 86.90, x 0.75 and 0.95
    ("roof.leaders.each.runoff", "L1", 65.2, 82.6),
    ("roof.runoff", "", 130.3, 165.1),
    # the bank is silty sand, so the lawn is sandy; 5 % of slope: 0.10 to 0.15 of 122.7 gpm
    ("grade.sides.each.runoff", "north", 12.27, 18.40),
    # 23.0 + 0.92 + 200 x 9.84 / 96.25 x 0.75 to 0.95 = 15.33 to 19.42
    ("drain.storm_inflow", "", 39.3, 43.3),
    ("drain.inflow", "", 41.4, 45.5),
    # and the areaway: 4.91
    ("sump.inflow", "", 46.3, 50.4),
    ("sump.inflow_planned", "", 46.3, 50.4),
]


@pytest.mark.parametrize(("name", "item", "low", "high"), RANGES)
def test_flow_between_two_ends(name: str, item: str, low: float, high: float) -> None:
    found = find(name, item).value
    assert isinstance(found, Range)
    assert (found.low / GPM, found.high / GPM) == pytest.approx((low, high), rel=3e-3)


def test_the_part_that_limits_is_named() -> None:
    assert find("drain.governed_by").value == "outlet"
    # holes 60 in apart: 398.6 / 20 = 19.9 gpm
    few = find("drain.governed_by", drain={"hole_spacing": "60 in"})
    assert few.value == "openings of the pipe"
    # 2 in inside: (2 / 3.975)^(8/3) = 0.160; 106.2 x 0.160 = 17 gpm
    thin = find(
        "drain.governed_by", drain={"outside_diameter": "2.2 in", "wall_thickness": "0.1 in"}
    )
    assert thin.value == "pipe"


def test_the_factor_is_capacity_over_inflow() -> None:
    # 87.1 / 45.5 = 1.91 and 87.1 / 41.4 = 2.10
    found = find("drain.capacity_factor").value
    assert (found.low, found.high) == pytest.approx((1.91, 2.10), abs=0.01)


def test_slopes_shares_and_speeds_of_runs() -> None:
    shares = {"NE": 42 / 144, "NW": 0.5, "SW": 0.5, "SE": 30 / 144}
    for corner, share in shares.items():
        assert find("drain.corners.each.run_share", corner).value == pytest.approx(share)
    assert find("drain.corners.each.run_slope", "SE").value == pytest.approx(0.12 / 30)
    # 1.4217 x 0.9661 = 1.3735 ft/s
    assert find("drain.slowest_velocity").value == pytest.approx(1.3735 * FOOT, rel=1e-3)
    assert find("drain.corners.each.run_velocity", "NE").value == pytest.approx(
        1.4217 * FOOT, rel=1e-3
    )


def test_depth_of_what_arrives() -> None:
    # Half of 53.1 gpm arrives in a run that carries 53.1 full: half the flow is half the depth.
    seepage = {"site": {"seepage": "53.13 gpm"}, "backfill": {"cap_material": "clay"}}
    dry = {"roof": {"leaders": []}, "wells": [], **seepage}
    found = find("drain.corners.each.run_depth", "NW", **dry)
    assert found.value == pytest.approx(3.975 / 2 * INCH, rel=1e-3)
    speed = find("drain.corners.each.run_velocity_part_full", "NW", **dry)
    assert speed.value == pytest.approx(1.3735 * FOOT, rel=1e-3)


# -- pit -------------------------------------------------------------------------------------------


def test_storage_head_and_cycle() -> None:
    # pi x 0.75^2 x 0.67 = 1.184 ft3 = 8.857 gal; 4 x 8.857 / 32 = 1.107 min
    assert find("sump.storage").value == pytest.approx(8.857 * GALLON, rel=1e-3)
    assert find("sump.cycle_least").value == pytest.approx(1.107 * 60, rel=1e-3)
    # 32 gpm = 2.0189e-3 m3/s in 0.0381 m over 6.096 m, C 140: 10.67 x 6.096 x 1.0205e-5 /
    # (9,430 x 1.227e-7) = 0.574 m; V 1.771 m/s, V2/2g 0.160 m; 2.134 + 0.574 + 0.160 = 2.867 m
    assert find("sump.total_head").value == pytest.approx(2.867, abs=0.005)


def test_a_pump_named_at_too_little_head_needs_its_curve() -> None:
    weak = {"pump_head": "5 ft"}
    found = find("sump.pump_duty", sump=weak)
    assert not found.known
    assert found.missing == ("sump.pump_shutoff_head",)
    # Through (32 gpm, 5 ft) and (0, 15 ft): 15 - 10 (Q/32)2 meets 7 + 2.41 (Q/32)1.852 or so at
    # (Q/32)2 of about 0.64, that is 25 to 26 gpm.
    curve = find("sump.pump_duty", sump=weak | {"pump_shutoff_head": "15 ft"})
    assert 25 * GPM < curve.value < 26 * GPM
    assert find("sump.pump_duty", sump=weak | {"pump_shutoff_head": "6 ft"}).value < 1e-9


def test_time_without_power_is_a_range_of_one_digit_with_its_warning() -> None:
    # Room in the pit alone: pi x 0.75^2 x 1.17 = 2.068 ft3 = 15.47 gal; by 50.4 gpm 0.307 min.
    # With pipe (144 x 0.08618 = 12.41 ft3) and 35 % of 405 + 420 ft3 = 288.75 ft3: 303.2 ft3 = 2268
    # gal; by 46.3 gpm 48.98 min.
    found = find("sump.time_to_slab")
    assert (found.value.low / 60, found.value.high / 60) == pytest.approx((0.3, 40.0))
    assert found.unit == "min"
    assert any(UNATTENDED in note for note in found.assumed)


def test_a_long_time_is_told_in_hours() -> None:
    # 15.47 gal by 0.0183 gpm (0.1 in an hour in 18 in: 0.1102 gal) = 140 h, rounded down to 100
    slow = {"rise": "0.1 in", "rise_time": "1 h", "pump_on_level": 90.50}
    bare = wet(sump=slow) | {"slab": {}, "stone": {}, "drain": {"present": "yes"}}
    found = Deriver(spec_of(bare)).get("sump.time_to_slab")
    assert found.value == pytest.approx(100 * 3_600)


# -- what stands in for what -----------------------------------------------------------------------


def test_a_drain_without_corners_takes_all_its_water_one_way() -> None:
    # 1/16 in/ft = 0.5208 %: 53.13 x sqrt(0.5208 / 0.4) = 60.6 gpm
    drain = {**WET["drain"], "slope": "1/16 in/ft", "run_long": "72 ft", "invert_high": 91.16}
    del drain["corners"]
    mapping = {**copy.deepcopy(WET), "drain": drain}
    found = Deriver(spec_of(mapping)).get("drain.pipe_capacity")
    assert found.value == pytest.approx(60.6 * GPM, rel=2e-3)
    assert any("one way" in note for note in found.assumed)


def test_the_rough_end_of_the_material_is_assumed_and_said() -> None:
    found = find("drain.pipe_roughness", drain={"material": "corrugated_coil"})
    assert found.value == 0.025
    assert any("0.018 to 0.025" in note for note in found.assumed)
    assert find("drain.pipe_roughness", drain={"roughness": "0.017"}).value == 0.017


def test_without_material_it_is_asked_for() -> None:
    drain = {key: value for key, value in WET["drain"].items() if key != "material"}
    found = Deriver(spec_of({**WET, "drain": drain})).get("drain.capacity")
    assert not found.known
    assert "drain.material" in found.missing


def test_openings_that_are_not_shown_are_the_least_that_is_asked() -> None:
    drain = {key: value for key, value in WET["drain"].items() if not key.startswith("hole")}
    found = Deriver(spec_of({**WET, "drain": drain})).get("drain.open_area_planned")
    assert found.value == pytest.approx(INCH**2 / FOOT)
    assert found.assumed
    # slots 1/16 in wide and 1 in long, 3 rows each 1 in: 3 x 0.0625 x 12 = 2.25 sq in/ft
    slots = {"holes": "slotted", "hole_size": "1/16 in", "slot_length": "1 in"}
    slotted = {**slots, "hole_rows": "3", "hole_spacing": "1 in"}
    assert find("drain.open_area_known", drain=slotted).value == pytest.approx(
        2.25 * INCH**2 / FOOT
    )


def test_a_capped_fill_takes_no_rain_and_a_tight_one_little() -> None:
    capped = find("backfill.soak_in", backfill={"cap_material": "clay"})
    assert capped.value == 0.0
    assert capped.assumed
    # 225 sq ft = 20.90 m2 x 1e-6 m/s
    tight = find("backfill.soak_in", soil={"backfill": {"permeability": "1e-4 cm/s"}})
    assert tight.value == pytest.approx(2.090e-5, rel=1e-3)


def test_groundwater_below_the_drain_brings_none() -> None:
    found = find("drain.ground_inflow", levels={"seasonal_high_water": 88.50})
    assert found.value == 0.0


def test_without_a_tight_layer_flow_from_below_is_not_counted_and_said() -> None:
    # 1.34 ft of water over the drain: 43.89 x 0.001 x 0.4084 / 3000 = 5.976e-6 m3/s
    levels = {key: value for key, value in WET["levels"].items() if key != "tight_layer"}
    found = Deriver(spec_of({**WET, "levels": levels})).get("drain.line_inflow")
    assert found.value == pytest.approx(5.976e-6, rel=2e-3)
    assert any("from below" in note for note in found.assumed)


def test_seepage_that_the_loop_keeps_off_the_middle_of_the_floor() -> None:
    # D 7.16 ft = 2.1824 m, L 9.144 m, r 0.05353 m, h 0.51 ft = 0.15545 m: x = 1.4996, F = 0.2099,
    # ln(L / pi r) = 3.9959; d = 3.5908 / 4.2058 = 0.8538 m;
    # (8 x 1e-6 x 0.8538 x 0.15545 + 4 x 1e-6 x 0.024165) / 83.61 = 1.3855e-8 m/s
    assert find("slab.rain_carried").value == pytest.approx(1.3855e-8, rel=1e-3)


def test_the_reach_is_told_with_its_spread() -> None:
    # s = 1.34 ft = 0.40843 m; 1500 and 3000 x 0.40843 x 0.001
    assert find("drain.reach_least").value == pytest.approx(0.6126, rel=1e-3)
    assert find("drain.reach_most").value == pytest.approx(1.2253, rel=1e-3)


def test_measured_seepage_stands_before_the_sums() -> None:
    found = find("drain.ground_inflow", site={"seepage": "5 gpm"})
    assert found.value == pytest.approx(5 * GPM)
    assert any("wetter season" in note for note in found.assumed)


def test_two_intensities_that_disagree_are_no_intensity() -> None:
    assert find("rain.design", rain={"intensity": "9.8 in/h"}).known
    found = find("rain.design", rain={"intensity": "5 in/h"})
    assert not found.known
    assert "says another" in found.because


def test_an_unclassed_soil_gives_its_whole_range() -> None:
    # SM 1e-6 to 1e-3 cm/s: 43.89 x 4.590 / 3000 x the root of 1e-8 and 1e-5 m/s, twice over
    found = find("drain.ground_inflow", soil={"bank": {"usc": "SM"}}).value
    assert isinstance(found, Range)
    assert (found.low, found.high) == pytest.approx((1.343e-5, 4.247e-4), rel=2e-3)


def test_gravel_has_no_upper_end() -> None:
    found = find("drain.ground_inflow", soil={"bank": {"usc": "GW"}})
    assert found.value.high == float("inf")


# -- no number -------------------------------------------------------------------------------------


def _corners(*inverts: float) -> dict[str, Any]:
    return {
        "corners": [
            {"id": f"C{number}", "invert": invert, "run_to_next": "20 ft"}
            for number, invert in enumerate(inverts)
        ],
        "outlet_at": "C2",
    }


@pytest.mark.parametrize(
    ("drain", "names"),
    [
        (_corners(91.0, 91.0, 91.0, 91.0), "C0"),
        (_corners(91.1, 91.0, 91.0, 91.05), "C1"),
        # C1 lies lower than the outlet corner
        (_corners(91.1, 90.8, 91.0, 91.05), "C1"),
    ],
)
def test_a_level_or_rising_run_has_no_capacity_and_is_named(
    drain: dict[str, Any], names: str
) -> None:
    for quantity in ("drain.capacity", "drain.pipe_capacity", "drain.slowest_velocity"):
        found = find(quantity, drain=drain)
        assert not found.known
        assert "level or rises" in found.because
        assert names in found.because


def test_a_level_pipe_without_corners_has_no_capacity() -> None:
    drain = {key: value for key, value in WET["drain"].items() if key != "corners"}
    level = {**drain, "slope": "0 %", "run_long": "72 ft", "invert_high": 91.16}
    found = Deriver(spec_of({**WET, "drain": level})).get("drain.capacity")
    assert not found.known
    assert "needs a fall" in found.because


def test_the_outlet_at_the_highest_corner_takes_nothing() -> None:
    found = find("drain.capacity", drain=_corners(91.0, 91.1, 91.2, 91.1))
    assert not found.known
    assert "at the highest corner" in found.because


def test_a_line_gathers_from_both_its_ends() -> None:
    # C0 - C1 - C2 - C3, outlet at C2: 20 and 40 of 60 ft from one end, 20 from the other; each run
    # falls 0.1 ft in 20 ft = 0.5 %, 53.13 x sqrt(0.5 / 0.4) = 59.4 gpm; the tightest is C1 to C2
    line = {**_corners(91.2, 91.1, 91.0, 91.1), "shape": "line"}
    shares = [find("drain.corners.each.run_share", f"C{number}", drain=line) for number in range(4)]
    assert [one.value for one in shares[:3]] == pytest.approx([1 / 3, 2 / 3, 1 / 3])
    assert shares[3].inapplicable
    found = find("drain.pipe_capacity", drain=line)
    assert found.value == pytest.approx(1.5 * 59.4 * GPM, rel=2e-3)


def test_a_loop_with_an_invert_missing_has_no_shares() -> None:
    corners = copy.deepcopy(WET["drain"]["corners"])
    del corners[3]["invert"]
    found = find("drain.corners.each.run_share", "NW", drain={"corners": corners})
    assert not found.known
    assert not find("drain.pipe_capacity", drain={"corners": corners}).known


def test_corners_without_lengths_are_no_runs() -> None:
    # All the water one way at 0.30 ft in 72 ft: 53.13 gpm x sqrt(0.41667 / 0.4) = 54.2
    corners = [{"id": one["id"], "invert": one["invert"]} for one in WET["drain"]["corners"]]
    found = find("drain.pipe_capacity", drain={"corners": corners, "run_long": "72 ft"})
    assert found.value == pytest.approx(54.2 * GPM, rel=2e-3)


def test_a_crown_at_the_slab_leaves_no_head() -> None:
    found = find("drain.inlet_capacity", levels={"slab_underside": 91.50})
    assert not found.known
    assert "no head" in found.because


@pytest.mark.parametrize(
    ("name", "changed", "says"),
    [
        ("drain.capacity_factor", {"site": {"seepage": "0 gpm"}}, "nothing arrives"),
        ("sump.storage", {"sump": {"pump_off_level": 90.60}}, "below the lower"),
        ("sump.cycle_time", {"sump": {"rise": "12 ft", "rise_time": "1 min"}}, "never stops"),
        ("grade.sides.each.swale_capacity", {"swale_slope": "0 %"}, "needs a fall"),
    ],
)
def test_no_number_and_the_reason(name: str, changed: dict[str, Any], says: str) -> None:
    item = ""
    if name.startswith("grade"):
        item = "north"
        changed = {"grade": {"sides": [{**WET["grade"]["sides"][0], **changed}]}}
    if name == "drain.capacity_factor":
        dry = {"backfill": {"cap_material": "clay"}, "wells": [], "roof": {"leaders": []}}
        changed = {**changed, **dry}
    found = find(name, item, **changed)
    assert not found.known
    assert says in found.because


# -- ranges ----------------------------------------------------------------------------------------

THROUGH = [
    "drain.line_inflow",
    "drain.recharge_inflow",
    "drain.reach_least",
    "drain.inflow",
    "drain.capacity_factor",
    "sump.inflow_planned",
    "sump.time_to_slab",
]
# Each example reads two specs; a slow machine is no fault of theirs.
unhurried = settings(max_examples=40, deadline=None)


@pytest.mark.parametrize("name", THROUGH)
@unhurried
@given(
    low=st.floats(1e-7, 1e-2),
    more=st.floats(1.0, 1e3),
    at=st.floats(0.0, 1.0),
)
def test_a_range_of_permeability_holds_the_result_at_each_value_in_it(
    name: str, low: float, more: float, at: float
) -> None:
    high = low * more
    inside = min(max(low + at * (high - low), low), high)

    def at_permeability(text: str) -> Derived:
        return find(name, soil={"bank": {"permeability": text}})

    whole = at_permeability(f"{low!r} to {high!r} cm/s")
    one = at_permeability(f"{inside!r} cm/s")
    assert whole.known, whole.because
    least, most = ends(whole.value)
    for end in ends(one.value):
        assert least * (1 - 1e-9) <= end <= most * (1 + 1e-9)


@pytest.mark.parametrize(
    ("name", "item", "section", "key", "unit", "low", "high"),
    [
        ("roof.leaders.each.runoff", "L1", "rain", "intensity", "in/h", 0.5, 15),
        ("drain.pipe_capacity", "", "drain", "roughness", "", 0.009, 0.025),
        ("sump.storage", "", "sump", "diameter", "in", 12, 36),
        ("sump.cycle_least", "", "sump", "diameter", "in", 12, 36),
        ("sump.total_head", "", "sump", "discharge_run", "ft", 5, 200),
        ("backfill.soak_in", "", "backfill", "free_draining_width", "in", 6, 60),
        ("drain.inlet_capacity", "", "drain", "hole_spacing", "in", 1, 12),
    ],
)
@unhurried
@given(ends_at=st.tuples(st.floats(0, 1), st.floats(0, 1)), at=st.floats(0, 1))
def test_a_range_holds_the_result_at_each_value_in_it(
    name: str, item: str, section: str, key: str, unit: str, low: float, high: float,
    ends_at: tuple[float, float], at: float,
) -> None:  # fmt: skip
    a, b = sorted(low + end * (high - low) for end in ends_at)
    inside = min(max(a + at * (b - a), a), b)
    changed = {"rain": {"depth": "not shown"}} if section == "rain" else {}
    changed[section] = {**changed.get(section, {}), key: f"{a!r} to {b!r} {unit}".strip()}
    whole = ends(find(name, item, **changed).value)
    changed[section] = {**changed[section], key: f"{inside!r} {unit}".strip()}
    one = ends(find(name, item, **changed).value)
    assert whole.low * (1 - 1e-9) <= one.low
    assert one.high <= whole.high * (1 + 1e-9)
