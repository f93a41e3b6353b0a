"""What an audit ends with: an advisory is never taken for a service that does not answer."""

from __future__ import annotations

import json
from typing import Any

import pytest

from tests.audit import judged

SOUND = {"name": "alder", "version": "1.2", "vulns": []}
FAULTY = {
    "name": "birch", "version": "0.9",
    "vulns": [{"id": "PYSEC-2031-7", "fix_versions": ["1.0"], "aliases": [], "description": ""}],
}  # fmt: skip
SKIPPED = {"name": "cedar", "skip_reason": "Dependency not found: cedar (3.0)"}


@pytest.mark.parametrize(
    ("answers", "status", "says"),
    [
        ([], 1, "pip-audit was asked about nothing."),
        ([SOUND, SOUND], 0, "2 libraries, and no advisory about any of them."),
        ([SOUND, FAULTY], 1, "birch 0.9: PYSEC-2031-7, mended in ['1.0']"),
        ([SKIPPED, FAULTY], 1, "birch 0.9: PYSEC-2031-7, mended in ['1.0']"),
        ([SOUND, SKIPPED], 1, "No answer about cedar."),
        (
            [SKIPPED, SKIPPED],
            0,
            "Nothing was audited: the index that was asked keeps no advisories.",
        ),
    ],
)
def test_answers(answers: list[dict[str, Any]], status: int, says: str) -> None:
    assert judged(json.dumps({"dependencies": answers, "fixes": []}), "") == (status, says)


def test_nobody_to_ask_is_no_fault() -> None:
    complaint = "ConnectionError: HTTPSConnectionPool(host='advisories', port=443): Max retries"
    status, says = judged("", complaint)
    assert (status, says.partition(":")[0]) == (0, "Nothing was audited")


@pytest.mark.parametrize("out", ["", "No known faults", "[]", "{}"])
def test_an_answer_that_is_none_is_a_fault(out: str) -> None:
    status, says = judged(out, "error: unrecognized arguments: --format")
    assert status == 1
    assert "unrecognized arguments" in says
