"""A limit written in both systems: the figure in the system of whoever wrote the value counts."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from checker.judging.conditions import compile_condition
from checker.judging.judge import review
from checker.judging.literals import RuleError
from checker.judging.review_data import MET, NOT_MET, NOT_SHOWN, Finding
from tests.judging.test_judge import book
from tests.support import spec_of

RULE = "- id: stone.test\n  title: Test\n  sources: common practice\n  require: %s\n"
BED = "{value: stone.bedding, at least: 2 in | 50 mm}"


def judged(tmp_path: Path, spec: dict[str, Any], require: str = BED) -> Finding:
    (finding,) = review(spec_of(spec), book(tmp_path, RULE % require)).findings
    return finding


@pytest.mark.parametrize(
    ("bedding", "outcome", "needed", "off_by"),
    [
        ("2 in", MET, "at least 2 in", ""),
        ("50 mm", MET, "at least 50 mm (2 in)", ""),
        ("5 cm", MET, "at least 50 mm (2 in)", ""),
        ("0.05 m", MET, "at least 50 mm (2 in)", ""),
        # 50 mm are 1.97 in: short for whoever writes inches, and 2 in are 50.8 mm.
        ("1.97 in", NOT_MET, "at least 2 in", "0.03 in"),
        ("1 in", NOT_MET, "at least 2 in", "1 in"),
        ("40 mm", NOT_MET, "at least 50 mm (2 in)", "10 mm"),
    ],
)
def test_the_limit_is_the_one_of_whoever_wrote_the_value(
    tmp_path: Path, bedding: str, outcome: str, needed: str, off_by: str
) -> None:
    finding = judged(tmp_path, {"stone": {"bedding": bedding}})
    shown = finding.compared[0]
    assert (finding.outcome, shown.needed, shown.off_by) == (outcome, needed, off_by)


def test_one_metric_data_sheet_in_a_spec_in_feet_is_judged_in_metric(tmp_path: Path) -> None:
    spec = {"levels": {"unit": "ft", "footing_top": 91.67}, "stone": {"bedding": "50 mm"}}
    assert judged(tmp_path, spec).outcome == MET


@pytest.mark.parametrize(
    ("unit", "needed"), [("ft", "at least 2 in"), ("m", "at least 50 mm (2 in)")]
)
def test_what_is_not_shown_is_asked_for_in_the_system_of_the_spec(
    tmp_path: Path, unit: str, needed: str
) -> None:
    finding = judged(tmp_path, {"levels": {"unit": unit}, "stone": {"bedding": "not shown"}})
    assert (finding.outcome, finding.compared[0].needed) == (NOT_SHOWN, needed)


@pytest.mark.parametrize(("unit", "outcome"), [("ft", NOT_MET), ("m", MET)])
def test_a_unit_of_both_systems_leaves_it_to_the_spec(
    tmp_path: Path, unit: str, outcome: str
) -> None:
    # 1/16 in/ft is 0.52 %, 1:200 is 0.5 %
    spec = {"levels": {"unit": unit}, "drain": {"slope": "0.5 %"}}
    require = "{value: drain.slope, at least: 1/16 in/ft | 1:200}"
    assert judged(tmp_path, spec, require).outcome == outcome


def test_a_number_that_is_worked_out_has_the_system_of_what_it_is_worked_out_from(
    tmp_path: Path,
) -> None:
    spec = {"levels": {"unit": "m", "footing_top": 10.000}, "stone": {"top_level": 10.150}}
    require = "{value: stone.over_footing, at least: 6 in | 150 mm}"
    assert judged(tmp_path, spec, require).outcome == MET


@pytest.mark.parametrize(
    ("limit", "complaint"),
    [
        ("50 mm | 2 in", "not one American figure and then one metric one"),
        ("2 in | 3 in", "not one American figure and then one metric one"),
        ("2 in | 50 mm | 5 cm", "not one American figure and then one metric one"),
        ("2 in | 60 mm", "are not the same limit"),
        ("2 in | 500 mm", "are not the same limit"),
        ("1 to 2 in | 50 mm", "a limit is one figure"),
        ("2 in |", "nothing is written here"),
        ("2 in | lots", "lots"),
    ],
)
def test_figures_that_are_no_twins_are_refused(limit: str, complaint: str) -> None:
    with pytest.raises(RuleError, match=complaint):
        compile_condition({"value": "stone.bedding", "at least": limit})


def test_twins_are_for_limits_and_not_for_equality() -> None:
    with pytest.raises(RuleError, match="at most, at least, below and above"):
        compile_condition({"value": "stone.bedding", "is": "2 in | 50 mm"})
