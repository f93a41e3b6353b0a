"""Rain on roofs and ground against worked examples of their sources."""

from __future__ import annotations

import pytest

from checker.deriving.flow_tables import runoff_share
from checker.formulas import surface_water

FOOT = 0.3048
INCH = 0.0254
CFS = FOOT**3
GALLON = 231 * INCH**3
GPM = GALLON / 60
ACRE = 43_560 * FOOT**2
INCH_PER_HOUR = INCH / 3_600

EXISTING = ((22.1, 0.25), (21.2, 0.22))
IMPROVED = ((5.4, 0.90), (1.6, 0.15), (18.6, 0.25), (17.7, 0.22))


@pytest.mark.parametrize(("parts", "share"), [(EXISTING, 0.235), (IMPROVED, 0.315)])
def test_hec_22_example_4_1_mixed_ground(
    parts: tuple[tuple[float, float], ...], share: float
) -> None:
    # FHWA HEC-22, example 4.1: parts that are added up are weighted by their area.
    one = INCH_PER_HOUR
    together = sum(surface_water.rational(c, one, acres * ACRE) for acres, c in parts)
    whole = surface_water.rational(1.0, one, sum(acres for acres, _ in parts) * ACRE)
    assert together / whole == pytest.approx(share, abs=5e-4)


@pytest.mark.parametrize(("share", "rain", "flow"), [(0.235, 1.9, 19.3), (0.315, 2.3, 31.4)])
def test_hec_22_example_4_3_peak_flow(share: float, rain: float, flow: float) -> None:
    # Example 4.3, 43.3 acres. The book rounds its factor Ku to 1; an inch an hour on an acre is
    # 1.0083 cfs. Misprint in the source: for 31.4 cfs it gives 89 m3/s, which is 0.89.
    found = surface_water.rational(share, rain * INCH_PER_HOUR, 43.3 * ACRE)
    assert found == pytest.approx(1.0083 * flow * CFS, rel=3e-3)


def test_an_inch_on_2500_square_feet_of_roof() -> None:
    # B. Anderson, Foundation Drainage (article): about 200 cubic feet and 1,500 gallons. Exactly
    # 208.3 and 1,558, so the article rounds down by 4 %.
    found = surface_water.rational(1.0, INCH_PER_HOUR, 2_500 * FOOT**2) * 3_600
    assert found == pytest.approx(200 * FOOT**3, rel=0.05)
    assert found == pytest.approx(1_500 * GALLON, rel=0.05)


def test_roof_area_by_intensity_of_the_plumbing_code() -> None:
    # Uniform Plumbing Code, appendix D: 21,400 sq ft at 1 in/h are 6,688 sq ft at 3.2 in/h.
    one = surface_water.rational(1.0, INCH_PER_HOUR, 21_400 * FOOT**2)
    assert surface_water.rational(1.0, 3.2 * INCH_PER_HOUR, 6_688 * FOOT**2) == pytest.approx(
        one, rel=1e-4
    )


@pytest.mark.parametrize(
    ("depth", "minutes", "rain"),
    [(0.822, 5, 9.86), (1.15, 5, 13.8), (2.38, 60, 2.38), (4.38, 60, 4.38), (7.28, 1_440, 0.3033)],
)
def test_intensity_from_the_rainfall_atlas(depth: float, minutes: float, rain: float) -> None:
    # NOAA Atlas 14, volume 9, 26.6 N 81.9 W: depths of 5 minutes (10 and 100 years), an hour (2 and
    # 100 years) and a day (10 years), as the service answered.
    found = surface_water.intensity(depth * INCH, minutes * 60)
    assert found == pytest.approx(rain * INCH_PER_HOUR, rel=2e-3)


def test_three_inch_leader_of_the_plumbing_code() -> None:
    # National Standard Plumbing Code 2006, Table 13.6.1: 3 in, 67 gpm, 6,426 sq ft at 1 in/h and
    # 1,607 at 4 in/h. The form of the equation is from memory; it is the table that is met.
    found = surface_water.leader(3 * INCH)
    assert found == pytest.approx(67 * GPM, rel=0.01)
    for rain, area in ((1, 6_426), (4, 1_607)):
        load = surface_water.rational(1.0, rain * INCH_PER_HOUR, area * FOOT**2)
        assert load == pytest.approx(found, rel=0.01)


@pytest.mark.parametrize(("size", "area"), [(2, 720), (3, 2_150), (4, 4_600), (5, 8_300)])
def test_leaders_of_the_chicago_code(size: float, area: float) -> None:
    # Chicago 18-29-1106.2: roof area by size of leader. That its storm is 3 in/h is our finding, by
    # the match of all four sizes.
    load = surface_water.rational(1.0, 3 * INCH_PER_HOUR, area * FOOT**2)
    assert surface_water.leader(size * INCH) == pytest.approx(load, rel=0.01)


# FHWA HEC-22, Table 4.1.
@pytest.mark.parametrize(
    ("surface", "slope", "least", "most"),
    [
        ("roof", 0.0, 0.75, 0.95),
        ("drive", 0.0, 0.75, 0.85),
        ("asphalt_paving", 0.0, 0.70, 0.95),
        ("concrete_paving", 0.0, 0.80, 0.95),
        ("unimproved", 0.0, 0.10, 0.30),
        ("lawn_sandy", 0.02, 0.05, 0.10),
        ("lawn_sandy", 0.05, 0.10, 0.15),
        ("lawn_sandy", 0.071, 0.15, 0.20),
        ("lawn_heavy", 0.0, 0.13, 0.17),
        ("lawn_heavy", -0.05, 0.18, 0.22),
        ("lawn_heavy", 0.08, 0.25, 0.35),
    ],
)
def test_shares_that_run_off(surface: str, slope: float, least: float, most: float) -> None:
    assert runoff_share(surface, slope) == pytest.approx((least, most))
