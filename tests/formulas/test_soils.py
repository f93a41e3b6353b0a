"""Group symbols: which are fine-grained and which drain."""

from __future__ import annotations

import pytest

from checker.formulas import soils


@pytest.mark.parametrize("symbol", ["ml", "cl", "ol", "mh", "ch", "oh", "pt", "cl_ml", "CL-ML"])
def test_fine_grained(symbol: str) -> None:
    # Every symbol of M, C or O with L or H, and peat (ASTM D2487 as restated in UFC 3-220-10).
    assert soils.is_fine_grained(symbol)
    assert not soils.is_free_draining(symbol)


@pytest.mark.parametrize("symbol", ["gw", "gp", "gm", "gc", "sw", "sp", "sm", "sc", "sp_sm"])
def test_coarse_grained(symbol: str) -> None:
    assert not soils.is_fine_grained(symbol)


@pytest.mark.parametrize(
    ("symbol", "drains"),
    [
        ("gw", True),
        ("sm", True),
        ("gw_gm", True),
        ("gc", False),
        ("sc_sm", False),
        ("sp_sc", False),
    ],
)
def test_a_pair_drains_only_when_both_do(symbol: str, drains: bool) -> None:
    assert soils.is_free_draining(symbol) is drains


def test_half_through_the_200_sieve_is_fine_grained() -> None:
    # Coarse needs more than half retained, so exactly half passing is fine (UFC 3-220-10, 1-3.3).
    assert soils.has_fine_grain(0.5)
    assert not soils.has_fine_grain(0.499)


def test_passing_reads_a_point_of_the_curve_and_guesses_none() -> None:
    curve = ((0.002e-3, 0.18), (0.075e-3, 0.72), (0.425e-3, 0.95))
    assert soils.passing(curve, soils.SIEVE_200) == 0.72
    with pytest.raises(ValueError, match=r"0\.15 mm"):
        soils.passing(curve, 0.15e-3)


@pytest.mark.parametrize("symbol", ["", "xx", "gw_gm_gc", "57", "sm_ml"])
def test_what_is_no_class_is_refused(symbol: str) -> None:
    with pytest.raises(ValueError, match=r"symbol|half"):
        soils.is_fine_grained(symbol)


def test_a_share_outside_none_to_all_is_refused() -> None:
    for share in (-0.1, 1.1):
        with pytest.raises(ValueError, match="share"):
            soils.has_fine_grain(share)
