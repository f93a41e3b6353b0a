"""What a film takes: it undoes what a quantity makes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.formulas import coating


@given(
    dry=st.floats(1e-5, 1e-2), area=st.floats(0.1, 1000), solids=st.floats(0.05, 1),
    loss=st.floats(0, 0.9),
)  # fmt: skip
def test_the_quantity_needed_makes_the_film(
    dry: float, area: float, solids: float, loss: float
) -> None:
    volume = coating.volume_needed(dry, area, solids, loss)
    wet = coating.wet_film(volume, area, loss)
    assert wet == pytest.approx(coating.wet_needed(dry, solids))
    assert coating.dry_film(wet, solids) == pytest.approx(dry)


@pytest.mark.parametrize("loss", [-0.1, 1.0])
def test_a_loss_of_all_is_refused(loss: float) -> None:
    with pytest.raises(ValueError, match="loss"):
        coating.coverage(1e-3, 0.5, loss)
    with pytest.raises(ValueError, match="loss"):
        coating.volume_needed(1e-3, 1.0, 0.5, loss)


def test_no_area_and_no_film_are_refused() -> None:
    with pytest.raises(ValueError, match="area"):
        coating.volume_needed(1e-3, 0.0, 0.5)
    with pytest.raises(ValueError, match="film"):
        coating.wet_needed(-1e-3, 0.5)
    with pytest.raises(ValueError, match="solids"):
        coating.wet_needed(1e-3, 0.0)
