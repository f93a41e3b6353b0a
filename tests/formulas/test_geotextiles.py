"""Geotextiles: factor of retention, limits of the opening, flow across."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import geotextiles

MM = 1e-3


@pytest.mark.parametrize("cu", [2.0, 4.0, 8.0])
def test_the_branches_of_the_factor_meet(cu: float) -> None:
    here = geotextiles.retention_factor(0.3, cu, nonwoven=True)
    for near in (cu * (1 - 1e-9), cu * (1 + 1e-9)):
        assert geotextiles.retention_factor(0.3, near, nonwoven=True) == pytest.approx(here)


@given(fines=st.floats(0, 1), cu=st.none() | st.floats(1, 100), nonwoven=st.booleans())
def test_the_factor_lies_between_1_and_2(fines: float, cu: float | None, nonwoven: bool) -> None:
    factor = geotextiles.retention_factor(fines, cu, nonwoven=nonwoven)
    assert 1 <= factor <= 2
    if cu is not None:
        unknown = geotextiles.retention_factor(fines, None, nonwoven=nonwoven)
        assert unknown <= factor, "not to know Cu may not allow more"


@pytest.mark.parametrize(
    ("fines", "index", "cohesive"),
    [(0.11, 5.1, True), (0.10, 5.1, False), (0.11, 5.0, False), (0.72, 21, True)],
)
def test_soil_that_holds_together(fines: float, index: float, cohesive: bool) -> None:
    assert geotextiles.is_cohesive(fines, index) is cohesive


def test_the_army_s_form() -> None:
    # Coastal guidance on filters: D85 / opening >= 1 up to half fines; above, the No. 70 sieve.
    assert geotextiles.army_max_opening(0.5, 0.4 * MM) == 0.4 * MM
    assert geotextiles.army_max_opening(0.51, None) == pytest.approx(0.21 * MM, abs=0.005 * MM)
    with pytest.raises(ValueError, match="D85"):
        geotextiles.army_max_opening(0.5, None)


def test_clogging_is_asked_of_widely_graded_soil_alone() -> None:
    assert geotextiles.clogging_opening(0.1 * MM, 3.0) == 0.0
    assert geotextiles.clogging_opening(0.1 * MM, 3.1) == pytest.approx(0.3 * MM)


def test_soil_that_passes_no_water_is_bettered_without_end() -> None:
    assert geotextiles.permeability_factor(1e-3, 0.0) == math.inf


@pytest.mark.parametrize(
    "call",
    [
        lambda: geotextiles.retention_factor(1.1, 3.0, nonwoven=True),
        lambda: geotextiles.retention_factor(0.1, 0.9, nonwoven=True),
        lambda: geotextiles.max_opening(0.0, 1.0),
        lambda: geotextiles.army_max_opening(-0.1, 1.0),
        lambda: geotextiles.is_cohesive(0.1, -1.0),
        lambda: geotextiles.clogging_opening(0.0, 4.0),
        lambda: geotextiles.permeability(-1.0, 1.0),
        lambda: geotextiles.permeability_factor(1.0, -1.0),
    ],
)
def test_what_cannot_be_is_refused(call: object) -> None:
    assert callable(call)
    with pytest.raises(ValueError, match=r"nothing|share|coefficient"):
        call()
