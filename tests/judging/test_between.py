"""`between` asks whether a value lies within two figures, or within a range of the spec."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.judging.judge import review
from checker.judging.review_data import MET, NOT_MET, NOT_SHOWN, Finding
from checker.judging.rulebook import load_rulebook
from checker.reading.faults import Unreadable
from tests.judging.test_judge import book
from tests.support import spec_of

RULE = "- id: fits.test\n  title: Test\n  sources: common practice\n  require: {value: drain.run_long, between: %s}\n"


def judged(tmp_path: Path, run: str, fits: str | None, other: str = "fits.run_long") -> Finding:
    spec = {"drain": {"run_long": run}} | ({"fits": {"run_long": fits}} if fits else {})
    (finding,) = review(spec_of(spec), book(tmp_path, RULE % other)).findings
    return finding


@pytest.mark.parametrize(
    ("run", "fits", "outcome", "off_by"),
    [
        ("72 ft", "20 to 92 ft", MET, ""),
        ("20 ft", "20 to 92 ft", MET, ""),
        ("92 ft", "20 to 92 ft", MET, ""),
        ("96 ft", "20 to 92 ft", NOT_MET, "4 ft"),
        ("19 ft", "20 to 92 ft", NOT_MET, "1 ft"),
        ("96 ft", "up to 92 ft", NOT_MET, "4 ft"),
        ("900 ft", "20 ft or more", MET, ""),
        ("30 to 40 ft", "20 to 92 ft", MET, ""),
        ("90 to 96 ft", "20 to 92 ft", NOT_SHOWN, ""),
        ("94 to 96 ft", "20 to 92 ft", NOT_MET, "4 ft"),
        ("92 ft", "92 ft", MET, ""),
        ("72 ft", None, NOT_SHOWN, ""),
    ],
)
def test_within_a_range_of_the_spec(
    tmp_path: Path, run: str, fits: str | None, outcome: str, off_by: str
) -> None:
    finding = judged(tmp_path, run, fits)
    assert (finding.outcome, finding.compared[0].off_by) == (outcome, off_by)


def test_the_range_is_told(tmp_path: Path) -> None:
    needed = judged(tmp_path, "96 ft", "20 to 92 ft").compared[0].needed
    assert needed == "between longest run to the outlet 20 ft to 92 ft"


def test_within_two_figures(tmp_path: Path) -> None:
    assert judged(tmp_path, "72 ft", None, "[20 ft, 92 ft]").outcome == MET
    assert judged(tmp_path, "96 ft", None, "[20 ft, 92 ft]").outcome == NOT_MET


def test_a_path_of_another_kind_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "rules.yaml"
    book(tmp_path, RULE % "fits.run_long")
    path.write_text(
        path.read_text(encoding="utf-8").replace("fits.run_long", "drain.slope"), encoding="utf-8"
    )
    with pytest.raises(Unreadable, match="cannot be compared"):
        load_rulebook(path)
