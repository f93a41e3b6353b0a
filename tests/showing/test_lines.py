"""What comes from a spec is text: it moves no cursor, and it fits the width."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.showing.lines import clean, line, paragraph, sentence


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ("plain words, 8'-2 1/2\" \u00bd", "plain words, 8'-2 1/2\" \u00bd"),
        ("\x1b[31mred\x1b[0m", "red"),
        ("\x9b31mred\x9b0m", "red"),
        ("\x1b]0;new title\x07after", "after"),
        ("\x1b]8;;http://evil\x1b\\link\x1b]8;;\x1b\\", "link"),
        ("\x9d0;new title\x9cafter", "after"),
        ("cut off \x1b", "cut off "),
        ("cut off \x1b[", "cut off ["),
        ("a\nb\tc\rd\u2028e\u00a0f", "a b c d e f"),
        ("back\x08\x08\x08\x7f", "back"),
        ("not \u202edevorppa", "not devorppa"),
        ("zero\u200bwidth\ufeff", "zerowidth"),
        ("half a pair \ud800", "half a pair "),
    ],
)
def test_nothing_is_left_that_a_terminal_would_obey(written: str, shown: str) -> None:
    assert clean(written) == shown


@given(st.text())
def test_no_control_format_or_break_is_left_of_any_text(written: str) -> None:
    left = {unicodedata.category(character) for character in clean(written)}
    assert not left & {"Cc", "Cf", "Cs", "Zl", "Zp"}


def test_a_torrent_of_unfinished_escapes_is_cleaned_in_no_time() -> None:
    # A pattern that began again at each would take minutes over this.
    assert clean("\x9d" * 200_000) == ""
    assert clean("\x1b]" * 200_000) == "]" * 200_000


@given(st.text(max_size=300), st.integers(min_value=40, max_value=100))
def test_a_paragraph_never_exceeds_its_width(text: str, width: int) -> None:
    lines = paragraph(text, width, label="label", indent=4, hang=11)
    assert all(len("".join(span.text for span in one)) <= width for one in lines)


def test_a_paragraph_keeps_every_word_in_order() -> None:
    words = [f"word{number}" for number in range(200)]
    lines = paragraph(" ".join(words), 60, label="why", indent=4, hang=11)
    assert "".join(f" {one[-1].text}" for one in lines).split() == words


def test_ids_are_not_broken_at_their_hyphens() -> None:
    lines = paragraph("waits for backfill.no-base-restraint", 40)
    assert [one[-1].text for one in lines] == ["waits for backfill.no-base-restraint"]
    lines = paragraph("waits for backfill.no-base-restraint", 35)
    assert [one[-1].text for one in lines] == ["waits for", "backfill.no-base-restraint"]


def test_label_stands_once_and_the_text_under_itself() -> None:
    first, second = paragraph("aaaa " * 8, 36, label="why", indent=4, hang=11)
    assert "".join(span.text for span in first).startswith("    why        aaaa")
    assert "".join(span.text for span in second).startswith(" " * 15 + "aaaa")


def test_label_without_a_text_is_left_out() -> None:
    assert paragraph("", 80, label="differs") == []
    assert paragraph(" \x1b[0m\n", 80, label="differs") == []


def test_style_stays_with_the_text_it_belongs_to() -> None:
    (one,) = paragraph("text", 80, label="STOP", hang=6, style="strong", label_style="stop")
    styles = {span.text.strip(): span.style for span in one if span.text.strip()}
    assert styles == {"STOP": "stop", "text": "strong"}


def test_line_is_not_wrapped() -> None:
    assert [span.text for span in line("x " * 100)] == ["x " * 100]


@pytest.mark.parametrize(
    ("said", "ended"), [("Falls 6 in", "Falls 6 in."), ("Why?", "Why?"), ("", ""), (" a. ", "a.")]
)
def test_sentence_ends_once(said: str, ended: str) -> None:
    assert sentence(said) == ended
