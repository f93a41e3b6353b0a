"""The page of a comparison: what nobody declared first, and a last line that releases nothing."""

from __future__ import annotations

from typing import Any

from checker.judging.compare import compare
from checker.judging.rulebook import load_rulebook
from checker.showing.compare_page import compare_page
from tests.support import spec_of

BOOK = load_rulebook()
STANDARD = {
    "stone": {"cover": "12 in", "bedding": "2 in", "side": "6 in"},
    "slab": {"retarder": "yes"},
}
SUBMITTAL = {
    "stone": {"cover": "14 in", "bedding": "1 in"},
    "slab": {"retarder": "no"},
    "deviations": [{"id": "stone.bedding"}, {"id": "roof"}],
}


def page(submittal: dict[str, Any], width: int = 80) -> list[str]:
    found = compare(spec_of(STANDARD), spec_of(submittal), BOOK)
    return ["".join(span.text for span in line) for line in compare_page(found, width=width)]


def test_each_difference_stands_under_what_became_of_it() -> None:
    text = "\n".join(page(SUBMITTAL))
    headings = [
        "Not declared: 1", "Declared as deviations: 1", "Stricter than the standard: 1",
        "Not shown in the submittal: 1", "Deviation roof fits no difference",
    ]  # fmt: skip
    places = [text.index(one) for one in headings]
    assert places == sorted(places)
    assert text.index("slab.retarder") < text.index("stone.bedding") < text.index("stone.cover")
    assert "slab.retarder" in text
    assert "looser than the standard" in text


def test_the_last_line_counts_and_releases_nothing() -> None:
    last = page(SUBMITTAL)[-1]
    assert last == (
        "4 fields compared, 1 looser or different and not declared; 0 only in the submittal. "
        "This is not a release."
    )


def test_no_line_but_the_last_is_wider_than_asked() -> None:
    assert max(map(len, page(SUBMITTAL, 60)[:-1])) <= 60


def test_text_of_a_spec_cannot_move_a_cursor() -> None:
    wanted = {"backfill": {"settlement_plan": "refill"}}
    given = {"backfill": {"settlement_plan": "none \x1b[2Jof it"}}
    found = compare(spec_of(wanted), spec_of(given), BOOK)
    text = "".join(span.text for line in compare_page(found) for span in line)
    assert "\x1b" not in text
