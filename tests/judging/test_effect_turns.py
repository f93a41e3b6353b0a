"""What an edit of a standard does to a lot that starts from it, worked out by hand.

Lot 15 by hand, as the head of specs/house.yaml has it: crown at the highest corner
91.25 + (4.215 - 0.12)/12 = 91.59125 ft, and the slab's underside at 91.67 ft, so that
(91.67 - 91.25) x 12 - 4.095 = 0.945 in are left.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.judging.effect_data import BETTER, OTHER, ROOM, WORSE
from checker.judging.review_data import MET, NOT_MET, NOT_SHOWN
from tests.judging.effects import (
    INCH,
    MIL,
    STANDARD,
    Collection,
    margins,
    turns,
)

DIAMETER = "outside_diameter: 4.215 in"
COAT = "dry_thickness: at least 40 mil"


@pytest.fixture
def collection(tmp_path: Path) -> Collection:
    return Collection(tmp_path)


# -- room ------------------------------------------------------------------------------------------


def test_a_thicker_pipe_takes_its_thickness_from_the_room_under_the_slab(
    collection: Collection,
) -> None:
    # 4.5 - 4.215 = 0.285 in; 0.945 - 0.285 = 0.66 in are left.
    lot = collection.edit(DIAMETER, "outside_diameter: 4.5 in").on()
    above = margins(lot)["drain.above-slab"]
    assert above.before is not None
    assert above.before.margin == pytest.approx(0.945 * INCH, abs=1e-6)
    assert above.after.margin == pytest.approx(0.66 * INCH, abs=1e-6)
    assert above.change == pytest.approx(-0.285 * INCH, abs=1e-6)
    assert (above.after.kind, above.after.unit, above.after.room) == ("level", "in", "0.66 in")
    # 12 in of footing - 2 (bed) - 4.5 (pipe) = 5.5 in for 4.68 in of fall: 0.82 in of 1.105.
    budget = margins(lot)["drain.vertical-budget"]
    assert budget.after.margin == pytest.approx(0.82 * INCH, abs=1e-6)
    # At 1/16 in/ft 5.5 in are enough for 88 ft, and the standard is said to fit runs of up to 92.
    assert set(turns(lot)) == {"footing.fits-too-far"}


def test_what_gains_room_says_so(collection: Collection) -> None:
    lot = collection.edit("retarder_thickness: 10 mil", "retarder_thickness: 15 mil").on()
    (margin,) = lot.margins
    assert (lot.way, lot.turns) == (ROOM, ())
    assert not lot.holds("minor")
    assert margin.finding.rule == "slab.retarder"
    assert margin.change == pytest.approx(5 * MIL)


def test_what_is_tight_is_told_when_it_becomes_so(collection: Collection) -> None:
    # A rod reads to 0.02 ft = 0.24 in. 0.945 in are tight on a rod and a tape already, so a lot is
    # taken whose corner lies 0.1 ft = 1.2 in lower: 2.145 in, then 2.145 - 1.285 = 0.86 in.
    lower = [
        ("NE, invert: 91.25", "NE, invert: 91.15"),
        ("NW, invert: 91.01", "NW, invert: 90.95"),
        ("SE, invert: 91.10", "SE, invert: 91.00"),
    ]
    file = collection.lot(16, *lower)
    lot = collection.edit(DIAMETER, "outside_diameter: 5.5 in").on(file)
    above = margins(lot)["drain.above-slab"]
    assert above.before is not None
    assert above.before.margin == pytest.approx(2.145 * INCH, abs=1e-6)
    assert above.after.margin == pytest.approx(0.86 * INCH, abs=1e-6)
    assert above.tight
    assert lot.margins[0].tight


# -- worse and better ------------------------------------------------------------------------------


def test_a_pipe_that_reaches_over_the_slab_is_worse(collection: Collection) -> None:
    # 91.25 + (5.5 - 0.12)/12 = 91.69833 ft, 0.34 in over 91.67 ft.
    lot = collection.edit(DIAMETER, "outside_diameter: 5.5 in").on()
    above = turns(lot)["drain.above-slab"]
    assert lot.turns[0] == above
    assert above.way == lot.way == WORSE
    assert above.before is not None
    assert above.after is not None
    assert (above.before.outcome, above.after.outcome) == (MET, NOT_MET)
    assert above.finding.severity == "critical"
    (compared,) = above.after.compared
    assert compared.margin == pytest.approx(-0.34 * INCH, abs=1e-6)
    assert (above.before.compared[0].shown, compared.shown) == ("91.59 ft", "91.70 ft")
    assert lot.holds("critical")
    assert "drain.above-slab" not in margins(lot)


# From, to, which way the coat went, and both outcomes. The coat is asked to be 40 mil.
COATS = [
    ("at least 40 mil", "30 mil", WORSE, MET, NOT_MET),
    ("30 mil", "at least 40 mil", BETTER, NOT_MET, MET),
    # One end of the range will do and the other will not.
    ("at least 40 mil", "at least 30 mil", WORSE, MET, NOT_SHOWN),
    ("at least 30 mil", "30 mil", WORSE, NOT_SHOWN, NOT_MET),
    # Missed by more is worse, by less better.
    ("30 mil", "20 mil", WORSE, NOT_MET, NOT_MET),
    ("20 mil", "30 mil", BETTER, NOT_MET, NOT_MET),
    # What is taken away has mended nothing, and was open before.
    ("30 mil", "not shown", OTHER, NOT_MET, NOT_SHOWN),
    ("40 mil", "not shown", WORSE, MET, NOT_SHOWN),
]  # fmt: skip


@pytest.mark.parametrize(("was", "now", "way", "before", "after"), COATS)
def test_which_way_a_coat_goes(
    tmp_path: Path, was: str, now: str, way: str, before: str, after: str
) -> None:
    collection = Collection(tmp_path).edit(COAT, f"dry_thickness: {was}", also=True)
    lot = collection.edit(f"\n  dry_thickness: {was}\n", f"\n  dry_thickness: {now}\n").on()
    coat = turns(lot)["coat.thickness"]
    assert coat.way == way
    assert coat.before is not None
    assert coat.after is not None
    assert (coat.before.outcome, coat.after.outcome) == (before, after)
    assert lot.holds("minor") is any(one.way == WORSE for one in lot.turns)


def test_what_is_worse_counts_from_its_severity_on(collection: Collection) -> None:
    lot = collection.edit(COAT, "dry_thickness: 30 mil").on()
    assert {one.finding.severity for one in lot.of(WORSE)} == {"major"}
    assert (lot.holds("critical"), lot.holds("major"), lot.holds()) == (False, True, True)


def test_the_standard_itself_is_reviewed_as_one(collection: Collection) -> None:
    # By hand, in its head: for the longest house 5.785 in for 5.75 in of fall, 0.035 in are left;
    # a pipe 0.285 in thicker takes all of that.
    lot = collection.edit(DIAMETER, "outside_diameter: 4.5 in").on(STANDARD)
    assert lot.after.paper == "standard"
    budget = turns(lot)["drain.vertical-budget"]
    assert budget.after is not None
    assert (budget.way, budget.after.outcome) == (WORSE, NOT_MET)
    assert budget.after.compared[0].margin == pytest.approx(-0.25 * INCH, abs=1e-6)
