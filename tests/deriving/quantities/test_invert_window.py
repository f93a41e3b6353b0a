"""The interval for the highest invert: what binds at each end, and when nothing fits."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Derived, Deriver
from checker.deriving.quantity import REGISTRY
from tests.support import spec_of

FOOT = 0.3048
INCH = 0.0254

# 12 in of footing, 2 in bed, 4.215 in pipe of 0.12 in wall, 3.6 in of fall.
PLAN: dict[str, Any] = {
    "levels": {
        "unit": "ft",
        "slab_underside": 91.67,
        "footing_top": 91.67,
        "footing_underside": 90.67,
    },
    "drain": {
        "outside_diameter": "4.215 in",
        "wall_thickness": "0.12 in",
        "slope": "0.05 in/ft",
        "run_long": "72 ft",
    },
    "stone": {"bedding": "2 in"},
}


def house(**changes: Any) -> Deriver:
    return Deriver(spec_of({**PLAN, **changes}))


def outlet(invert: float, **more: Any) -> list[dict[str, Any]]:
    return [{"id": "main", "kind": "daylight", "invert": invert, "leg_length": "96 ft"} | more]


def feet(found: Derived) -> float:
    assert isinstance(found.value, float), found
    return found.value / FOOT


def test_between_floor_and_bearing() -> None:
    # 91.67 - 4.095/12 = 91.329; 90.67 + 2.12/12 + 0.3 = 91.147
    plain = house()
    assert feet(plain.get("drain.invert_window_top")) == pytest.approx(91.329, abs=5e-4)
    assert feet(plain.get("drain.invert_window_bottom")) == pytest.approx(91.147, abs=5e-4)


def test_an_outlet_that_binds_is_named() -> None:
    # 90.10 + 96/96 + 0.3 = 91.40, over the top of 91.329
    high = house(outlets=outlet(90.10))
    assert feet(high.get("drain.invert_window_bottom")) == pytest.approx(91.40, abs=5e-4)
    assert "outlet main" in high.get("drain.invert_window_bottom_by").value
    assert feet(high.get("drain.invert_window")) == pytest.approx(-0.071, abs=1e-3)
    low = house(outlets=outlet(89.00))
    assert "footing" in low.get("drain.invert_window_bottom_by").value


def test_no_footing_helps_against_a_high_outlet() -> None:
    found = house(outlets=outlet(90.10)).get("footing.thickness_that_fits")
    assert not found.known
    assert "no footing helps" in found.because
    # 91.67 - (91.329 - 0.3 - 2.12/12) = 0.818 ft
    fits = house(outlets=outlet(89.00)).get("footing.thickness_that_fits")
    assert fits.value / INCH == pytest.approx(9.815, abs=1e-3)


def test_stone_that_ends_low_binds_at_the_top() -> None:
    # 91.80 - 0.5 - 4.095/12 = 90.959
    low = house(stone={"bedding": "2 in", "top_level": 91.80})
    assert feet(low.get("drain.invert_window_top")) == pytest.approx(90.959, abs=5e-4)
    assert "stone" in low.get("drain.invert_window_top_by").value


def test_a_sump_binds_by_its_inlet() -> None:
    # 91.20 + 0.3
    pumped = house(sump={"present": "yes", "inlet_invert": 91.20})
    assert feet(pumped.get("drain.invert_window_bottom")) == pytest.approx(91.50, abs=5e-4)
    assert "sump" in pumped.get("drain.invert_window_bottom_by").value


def test_an_outlet_with_a_pump_does_not_bind_by_its_level() -> None:
    pumped = house(outlets=outlet(95.00, kind="sump"))
    assert "footing" in pumped.get("drain.invert_window_bottom_by").value


def test_a_leg_without_a_length_does_not_bind() -> None:
    unknown = house(outlets=[{"id": "main", "kind": "daylight", "invert": 91.60}])
    assert "footing" in unknown.get("drain.invert_window_bottom_by").value


@pytest.mark.parametrize(
    ("changes", "feet_long"),
    [
        # 5.785 in / (0.05 in/ft) = 115.7 ft
        ({}, 115.7),
        # at 1/16 in/ft where no slope is shown: 92.56 ft
        ({"drain": {"outside_diameter": "4.215 in"}}, 92.56),
        # a standard has no levels: 12 in of footing under a slab on its top
        ({"levels": {"unit": "ft"}, "footing": {"thickness": "12 in"}}, 115.7),
    ],
)
def test_how_far_a_half_loop_carries(changes: dict[str, Any], feet_long: float) -> None:
    found = house(**changes).get("drain.longest_run_that_fits")
    assert feet(found) == pytest.approx(feet_long, abs=0.05)
    assert found.unit == "ft"


def test_no_run_fits_beside_a_footing_thinner_than_bed_and_pipe() -> None:
    levels = PLAN["levels"] | {"footing_underside": 91.17}
    found = house(levels=levels).get("drain.longest_run_that_fits")
    assert "not even a level pipe" in found.because


def test_a_level_drain_has_no_longest_run() -> None:
    found = house(drain=PLAN["drain"] | {"slope": "0 %"}).get("drain.longest_run_that_fits")
    assert "level pipe" in found.because


@given(invert=st.floats(90.0, 92.5))
def test_inside_the_interval_floor_and_bearing_are_kept(invert: float) -> None:
    level = round(invert, 4)
    drain = {**PLAN["drain"], "invert_high": level}
    one = house(drain=drain)
    inside = (
        one.get("drain.invert_window_bottom").value
        <= level * FOOT
        <= one.get("drain.invert_window_top").value
    )
    kept = one.get("drain.floor_cover").value >= 0 and one.get("drain.bearing_cover").value >= 0
    close = min(abs(one.get(n).value) for n in ("drain.floor_cover", "drain.bearing_cover"))
    assert inside == kept or close < 1e-6


def test_the_quantities_are_told_apart_by_their_titles() -> None:
    titles = [one.title for one in REGISTRY.values() if one.name.startswith("drain.invert_window")]
    assert len(titles) == 5
    assert len(set(titles)) == len(titles)
