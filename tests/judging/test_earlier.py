"""An earlier review is read back as it was written; anything else is refused in one sentence."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from checker.judging.carried import as_earlier, compare
from checker.judging.earlier import load_earlier
from checker.judging.judge import review as judge
from checker.judging.review_data import Review
from checker.judging.rulebook import load_rulebook
from checker.reading.faults import Unreadable
from checker.reading.reader import load_spec
from checker.showing.json_report import as_json, as_json_line

BAD = Path(__file__).parents[2] / "specs" / "bad.yaml"


@pytest.fixture(scope="module")
def bad() -> Review:
    (spec,) = load_spec(BAD)
    return judge(spec, load_rulebook())


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "before.json"


def test_what_was_written_comes_back(bad: Review, file: Path) -> None:
    file.write_text(as_json([bad, bad]), encoding="utf-8")
    assert load_earlier(file) == (as_earlier(bad), as_earlier(bad))


def test_lines_come_back_too(bad: Review, file: Path) -> None:
    file.write_text(as_json_line(bad) * 2, encoding="utf-8")
    assert load_earlier(file) == (as_earlier(bad), as_earlier(bad))
    file.write_text(as_json_line(bad), encoding="utf-8")
    assert load_earlier(file) == (as_earlier(bad),)


def test_a_review_compared_with_itself_is_all_carried_over(bad: Review, file: Path) -> None:
    file.write_text(as_json([bad]), encoding="utf-8")
    comparison = compare(load_earlier(file), [bad], "")
    assert (comparison.fresh, comparison.fixed, comparison.dropped) == ((), (), ())
    assert comparison.carried == sum(finding.open for finding in bad.findings) > 50


@pytest.mark.parametrize(
    "text",
    [
        "", "no JSON", "[]", "7", "null", '{"reviews": 7}', '{"reviews": [7]}', '{"reviews": [{}]}',
        '{"reviews": [{"findings": []}]}', "[" * 100_000, '{"a": ' * 100_000, "{}\n{}\n", "NaN",
    ],
    ids=range(13),
)  # fmt: skip
def test_anything_else_is_refused(text: str, file: Path) -> None:
    file.write_text(text, encoding="utf-8")
    with pytest.raises(Unreadable) as raised:
        load_earlier(file)
    (fault,) = raised.value.faults
    assert "not a review" in fault.message
    assert fault.file == str(file)


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("outcome", "passed"), ("severity", "grave"), ("open", "yes"), ("rule", 7), ("item", None),
        ("compared", 7), ("fingerprint", []),
    ],
)  # fmt: skip
def test_a_finding_that_no_review_holds_is_refused(
    bad: Review, file: Path, key: str, value: Any
) -> None:
    report = json.loads(as_json([bad]))
    report["reviews"][0]["findings"][0][key] = value
    file.write_text(json.dumps(report), encoding="utf-8")
    with pytest.raises(Unreadable):
        load_earlier(file)


def test_no_such_file(file: Path) -> None:
    with pytest.raises(Unreadable, match="cannot be opened"):
        load_earlier(file)
