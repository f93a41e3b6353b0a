"""Sieve curves: read between sieves, never beyond them, and regraded."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import gradation
from checker.formulas.gradation import Curve

MM = 1e-3
# Half passes 1 mm, all passes 4 mm.
PLAIN = ((0.25 * MM, 0.0), (1 * MM, 0.5), (4 * MM, 1.0))
LEVEL = ((0.1 * MM, 0.1), (1 * MM, 0.5), (2 * MM, 0.5), (4 * MM, 1.0))


@st.composite
def curves(draw: st.DrawFn, fines: float = 0.0, most: float = 1.0) -> Curve:
    """Draw a sieve curve that begins at a share `fines` or more and ends at `most` or more."""
    sizes = draw(st.lists(st.integers(1, 400), min_size=3, max_size=9, unique=True))
    shares = draw(st.lists(st.floats(fines, 1), min_size=len(sizes), max_size=len(sizes)))
    shares = [*sorted(shares)[:-1], draw(st.floats(max(most, sorted(shares)[-2]), 1))]
    # Sizes a fiftieth of a decade apart, from 0.01 mm.
    openings = [0.01 * MM * 10 ** (n / 50) for n in sorted(sizes)]
    return tuple(zip(openings, shares, strict=True))


def test_halfway_in_share_is_halfway_in_the_logarithm_of_size() -> None:
    # A quarter: halfway from 0.25 to 1 mm, the geometric mean sqrt(0.25 x 1) = 0.5 mm.
    assert gradation.size_at(PLAIN, 0.25) == pytest.approx(0.5 * MM)
    # 0.75: sqrt(1 x 4) = 2 mm. Reading the size linear would give 2.5.
    assert gradation.size_at(PLAIN, 0.75) == pytest.approx(2 * MM)


def test_sieves_themselves_are_read_exactly() -> None:
    for size, share in PLAIN:
        assert gradation.size_at(PLAIN, share) == pytest.approx(size, rel=1e-12)
        assert gradation.share_at(PLAIN, size) == pytest.approx(share)


def test_where_the_curve_is_level_either_end_can_be_had() -> None:
    assert gradation.size_at(LEVEL, 0.5) == pytest.approx(1 * MM)
    assert gradation.size_at(LEVEL, 0.5, coarser=True) == pytest.approx(2 * MM)
    # Everything passes the sieve at which it does first, not only the last named.
    longer = (*PLAIN, (8 * MM, 1.0))
    assert gradation.size_at(longer, 1.0) == pytest.approx(4 * MM)


@pytest.mark.parametrize("share", [0.05, 0.97])
def test_no_reading_beyond_the_ends(share: float) -> None:
    curve = ((0.075 * MM, 0.10), (4.75 * MM, 0.95))
    for coarser in (False, True):
        with pytest.raises(ValueError, match="does not reach"):
            gradation.size_at(curve, share, coarser=coarser)


def test_beyond_a_sieve_that_all_passes_all_passes() -> None:
    assert gradation.share_at(PLAIN, 50 * MM) == 1.0
    assert gradation.share_at(PLAIN, 0.01 * MM) == 0.0
    short = ((0.075 * MM, 0.10), (4.75 * MM, 0.95))
    for opening in (0.01 * MM, 19 * MM):
        with pytest.raises(ValueError, match=r"begins|ends"):
            gradation.share_at(short, opening)


@pytest.mark.parametrize(
    ("curve", "fault"),
    [
        ((), "two sieves"),
        (((1 * MM, 0.5),), "two sieves"),
        (((1 * MM, 0.5), (1 * MM, 0.6)), "two points"),
        (((1 * MM, 0.5), (2 * MM, 0.4)), "falls"),
        (((1 * MM, 0.5), (2 * MM, 1.4)), "between none and all"),
        (((0.0, 0.5), (2 * MM, 1.0)), "above nothing"),
        (((2 * MM, 0.5), (1 * MM, 1.0)), "two points"),
    ],
)
def test_what_is_no_sieve_curve_is_refused(curve: Curve, fault: str) -> None:
    assert fault in gradation.fault_in(curve)
    for read in (gradation.size_at, gradation.share_at, gradation.regrade):
        with pytest.raises(ValueError, match=fault):
            read(curve, 0.5)


def test_a_good_curve_has_no_fault() -> None:
    assert gradation.fault_in(PLAIN) == ""
    gradation.check(PLAIN)


def test_regrading_divides_by_what_passes() -> None:
    # Half passes 1 mm, so a quarter of the whole is half of the part.
    curve = ((0.25 * MM, 0.25), (1 * MM, 0.5), (4 * MM, 1.0))
    assert gradation.regrade(curve, 1 * MM) == ((0.25 * MM, 0.5), (1 * MM, 1.0))


def test_regrading_on_a_size_nothing_passes_is_refused() -> None:
    with pytest.raises(ValueError, match="nothing passes"):
        gradation.regrade(((2 * MM, 0.0), (4 * MM, 1.0)), 2 * MM)


@pytest.mark.parametrize(
    ("passing_no4", "fines", "broad", "needed"),
    [
        (1.0, 0.30, True, False),  # no gravel
        (0.9, 0.30, False, True),
        (0.9, 0.14, True, True),
        (0.9, 0.14, False, False),  # few fines and few sizes: the one exemption
        (0.9, 0.15, False, True),
        (0.9, 0.14, None, True),  # nobody can say
    ],
)
def test_when_a_soil_is_regraded(
    passing_no4: float, fines: float, broad: bool | None, needed: bool
) -> None:
    assert gradation.needs_regrading(passing_no4, fines, broad=broad) is needed


def test_more_fines_than_pass_the_no_4_cannot_be() -> None:
    with pytest.raises(ValueError, match="No. 200"):
        gradation.needs_regrading(0.3, 0.4, broad=None)


@pytest.mark.parametrize("sizes", [(0.0, 1.0), (2.0, 1.0)])
def test_coefficients_want_sizes_in_order(sizes: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="sizes"):
        gradation.uniformity(*sizes)
    with pytest.raises(ValueError, match="sizes"):
        gradation.curvature(*sizes, 3.0)


@given(curve=curves(most=1.0), shares=st.lists(st.floats(0, 1), min_size=2, max_size=20))
def test_more_is_finer_than_a_larger_size(curve: Curve, shares: list[float]) -> None:
    low, high = curve[0][1], curve[-1][1]
    reached = [low + share * (high - low) for share in sorted(shares)]
    for coarser in (False, True):
        sizes = [gradation.size_at(curve, share, coarser=coarser) for share in reached]
        assert all(b >= a * (1 - 1e-9) for a, b in pairwise(sizes))
        assert all(curve[0][0] <= size * (1 + 1e-9) for size in sizes)
        assert all(size <= curve[-1][0] * (1 + 1e-9) for size in sizes)


@given(curve=curves(), share=st.floats(0, 1))
def test_the_finer_end_is_never_coarser(curve: Curve, share: float) -> None:
    reached = curve[0][1] + share * (curve[-1][1] - curve[0][1])
    fine = gradation.size_at(curve, reached)
    assert fine <= gradation.size_at(curve, reached, coarser=True) * (1 + 1e-9)


@given(curve=curves(), along=st.floats(0, 1))
def test_size_and_share_undo_each_other(curve: Curve, along: float) -> None:
    reached = curve[0][1] + along * (curve[-1][1] - curve[0][1])
    back = gradation.share_at(curve, gradation.size_at(curve, reached))
    assert back == pytest.approx(reached, abs=1e-6)


@given(curve=curves(fines=0.01, most=1.0))
def test_regrading_twice_changes_nothing(curve: Curve) -> None:
    opening = math.sqrt(curve[0][0] * curve[-1][0])
    once = gradation.regrade(curve, opening)
    again = gradation.regrade(once, opening)
    assert [size for size, _ in again] == [size for size, _ in once]
    assert [share for _, share in again] == pytest.approx([share for _, share in once])


@given(curve=curves(fines=0.01, most=1.0), share=st.floats(0.05, 1))
def test_regrading_never_makes_a_soil_coarser(curve: Curve, share: float) -> None:
    opening = math.sqrt(curve[0][0] * curve[-1][0])
    regraded = gradation.regrade(curve, opening)
    if share < regraded[0][1]:
        return
    assert gradation.size_at(regraded, share) <= gradation.size_at(curve, share) * (1 + 1e-9)
