"""A standard has no house: what only a house can show is judged on each lot."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from checker.judging.judge import review
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, NOT_SHOWN, Finding
from checker.judging.standards import ON_EACH_LOT, belongs_to_a_lot
from tests.judging.test_judge import book
from tests.support import spec_of


@pytest.mark.parametrize(
    "path",
    [
        "levels.floor_top", "drain.corners.NE.invert", "stone.top_level", "coat.area",
        "stone.quantity", "soil.bank.fines", "drain.continuous", "wall.design_by", "job.stage",
        "documents", "deviations", "variances", "drain.corners", "roof.leaders", "grade.sides",
        "site.diversion", "outlets.main.invert", "outlets.main.leg_length", "wall.perimeter",
    ],
)  # fmt: skip
def test_only_a_house_shows(path: str) -> None:
    assert belongs_to_a_lot(path)


@pytest.mark.parametrize(
    "path",
    [
        "drain.slope", "stone.bedding", "coat.base", "fabrics", "fabrics.wrap.aos", "outlets",
        "outlets.main.kind", "job.codes", "job.codes.IRC.edition", "slab.retarder", "no.such",
    ],
)  # fmt: skip
def test_a_standard_shows(path: str) -> None:
    assert not belongs_to_a_lot(path)


def judged(tmp_path: Path, require: str, spec: dict[str, Any], paper: str = "standard") -> Finding:
    rules = book(
        tmp_path,
        f"- id: stone.test\n  title: Test\n  sources: common practice\n  require: {require}\n",
        protects="people",
    )
    (finding,) = review(spec_of(spec, paper=paper), rules).findings
    return finding


LEVELS = "{value: stone.over_footing, at least: 6 in}"  # from levels alone
BOTH = "{all: [{value: levels.footing_top, shown: yes}, {value: stone.bedding, at least: 2 in}]}"


def test_what_needs_levels_does_not_apply_to_a_standard(tmp_path: Path) -> None:
    finding = judged(tmp_path, LEVELS, {})
    assert (finding.outcome, finding.because) == (DOES_NOT_APPLY, ON_EACH_LOT)
    assert finding.missing == ()


def test_any_other_paper_is_asked_for_its_levels(tmp_path: Path) -> None:
    for paper in ("submittal", "house", "self_check"):
        assert judged(tmp_path, LEVELS, {}, paper).outcome == NOT_SHOWN


def test_a_standard_is_asked_for_what_it_can_show_and_for_nothing_else(tmp_path: Path) -> None:
    finding = judged(tmp_path, BOTH, {})
    assert finding.outcome == NOT_SHOWN
    assert finding.missing == ("stone.bedding",)


def test_once_it_has_shown_that_the_rest_is_judged_on_each_lot(tmp_path: Path) -> None:
    finding = judged(tmp_path, BOTH, {"stone": {"bedding": "2 in"}})
    assert (finding.outcome, finding.because) == (DOES_NOT_APPLY, ON_EACH_LOT)


def test_what_a_standard_shows_wrong_is_not_met(tmp_path: Path) -> None:
    assert judged(tmp_path, BOTH, {"stone": {"bedding": "1 in"}}).outcome == NOT_MET


def test_a_range_is_judged_at_its_ends(tmp_path: Path) -> None:
    require = "{value: stone.bedding, at least: 2 in}"
    assert judged(tmp_path, require, {"stone": {"bedding": "2 to 4 in"}}).outcome == MET
    half = judged(tmp_path, require, {"stone": {"bedding": "1 to 4 in"}})
    assert (half.outcome, half.missing) == (NOT_SHOWN, ())


def test_nobody_has_seen_a_standard(tmp_path: Path) -> None:
    require = "{value: stone.bedding, at least: 2 in}\n  seen: yes"
    finding = judged(
        tmp_path, require, {"stone": {"bedding": "2 in"}, "job": {"stage": "handover"}}
    )
    assert (finding.outcome, finding.because) == (DOES_NOT_APPLY, ON_EACH_LOT)


def test_a_list_of_the_house_that_is_left_out(tmp_path: Path) -> None:
    finding = judged(tmp_path, "{value: grade.sides.each.fall, at least: 6 in}", {})
    assert (finding.outcome, finding.because) == (DOES_NOT_APPLY, ON_EACH_LOT)
    assert judged(tmp_path, "{value: outlets.each.kind, is not: none}", {}).outcome == NOT_SHOWN
