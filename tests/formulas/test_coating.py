"""Film thickness: volume over area, and what is left when it dries."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import coating


def test_a_litre_on_a_square_metre_is_a_millimetre() -> None:
    assert coating.wet_film(1e-3, 1.0) == pytest.approx(1e-3)
    # A fifth lost leaves 0.8 mm.
    assert coating.wet_film(1e-3, 1.0, loss=0.2) == pytest.approx(0.8e-3)


def test_no_coat_is_no_film() -> None:
    assert coating.wet_film(0.0, 1.0) == 0.0
    assert coating.dry_film(0.0, 0.5) == 0.0


def test_dry_film_is_the_solid_share() -> None:
    assert coating.dry_film(1e-3, 0.6) == pytest.approx(0.6e-3)
    assert coating.dry_film(1e-3, 1.0) == 1e-3


@given(
    volume=st.floats(1e-4, 10), area=st.floats(0.1, 1000), solids=st.floats(0.01, 1),
)  # fmt: skip
def test_coverage_undoes_the_film(volume: float, area: float, solids: float) -> None:
    dry = coating.dry_film(coating.wet_film(volume, area), solids)
    assert coating.coverage(dry, solids) * volume == pytest.approx(area)


@pytest.mark.parametrize(
    ("volume", "area", "loss"),
    [(1.0, 0.0, 0.0), (-1.0, 1.0, 0.0), (1.0, 1.0, 1.0), (1.0, 1.0, -0.1)],
)
def test_wet_film_that_cannot_be_is_refused(volume: float, area: float, loss: float) -> None:
    with pytest.raises(ValueError, match=r"coat|loss"):
        coating.wet_film(volume, area, loss)


@pytest.mark.parametrize("solids", [0.0, -0.1, 1.01])
def test_solids_outside_none_to_all_are_refused(solids: float) -> None:
    with pytest.raises(ValueError, match="solids"):
        coating.dry_film(1e-3, solids)
    with pytest.raises(ValueError, match="solids"):
        coating.coverage(1e-3, solids)


def test_films_below_nothing_are_refused() -> None:
    with pytest.raises(ValueError, match="film"):
        coating.dry_film(-1e-3, 0.5)
    with pytest.raises(ValueError, match="film"):
        coating.coverage(0.0, 0.5)
