"""The house's working spec: what it takes from the standard, and what was measured in the end."""

from __future__ import annotations

import functools
from pathlib import Path

from checker import load_rulebook, load_spec, review
from checker.judging.review_data import MET, NOT_MET, NOT_SHOWN, Finding, Review
from checker.reading.measured import on_basis
from checker.values import Choice, Range

SPECS = Path(__file__).parents[2] / "specs"


@functools.cache
def both() -> tuple[Review, Review]:
    """Return the review of the design and the one of what was measured."""
    (spec,) = load_spec(SPECS / "house.yaml")
    design, measured = (review(one, load_rulebook()) for one in on_basis(spec, "both"))
    return design, measured


def of(one: Review, rule: str) -> Finding:
    (finding,) = (f for f in one.findings if f.rule == rule)
    return finding


def test_it_takes_the_standard_and_adds_its_levels() -> None:
    (spec,) = load_spec(SPECS / "house.yaml")
    assert spec.name == "Quillwater Lane, lot 15"
    assert spec.values["drain.outside_diameter"].file == str(SPECS / "standards" / "HF-FDN-02.yaml")
    assert spec.values["drain.material"].value == Choice(("rigid_pvc", "abs"))
    assert isinstance(spec.values["fits.run_long"].value, Range)
    assert spec.values["drain.run_long"].written == "72 ft"
    assert spec.values["levels.slab_underside"].file == str(SPECS / "house.yaml")


def test_a_finding_names_both_files() -> None:
    files = {Path(at.file).name for at in of(both()[0], "drain.above-slab").places}
    assert files == {"house.yaml", "HF-FDN-02.yaml"}


def test_the_room_that_is_left() -> None:
    # 12 - 2 - 4.215 - 4.68 in = 1.105 in
    assert of(both()[0], "drain.vertical-budget").compared[0].room == "1.1 in"


def test_on_paper_the_drain_is_low_enough_and_as_laid_it_is_not() -> None:
    design, measured = (of(one, "drain.above-slab") for one in both())
    # 91.67 - 91.59125 = 0.07875 ft = 0.945 in; 91.70125 - 91.67 = 0.03125 ft = 0.375 in
    assert (design.outcome, design.compared[0].room) == (MET, "0.94 in")
    assert (measured.outcome, measured.compared[0].off_by) == (NOT_MET, "3/8 in")


def test_only_what_moved_more_than_a_rod_reads_is_named() -> None:
    # 91.02 against 91.01 and 91.11 against 91.10 are within 0.02 ft; 0.11 ft = 1.32 in
    shown = of(both()[0], "record.differs").compared[0].shown
    assert shown == "drain.corners.NE.invert 91.25, measured 91.36, 1.3 in higher"


def test_the_choice_of_the_standard_is_no_hindrance() -> None:
    assert of(both()[0], "drain.crush").outcome == MET


def test_the_standard_is_not_asked_for_what_only_a_lot_has() -> None:
    (standard,) = load_spec(SPECS / "standards" / "HF-FDN-02.yaml")
    asked = {path for f in review(standard, load_rulebook()).of(NOT_SHOWN) for path in f.missing}
    lots = [
        p for p in asked if p.startswith(("levels.", "soil.", "site.", "excavation.", "documents"))
    ]
    assert lots == []
    assert asked
