"""The page to take to the site: what to measure, what still passes, what to photograph."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from checker.showing.field_sheet.contents import Sheet, sheet_of
from checker.showing.field_sheet.words import Words, languages, words_in

if TYPE_CHECKING:
    from checker.showing.lines import Line

__all__ = ["Sheet", "in_form", "languages", "sheet_of", "words_in"]


def in_form(sheets: Sequence[Sheet], words: Words, form: str, width: int) -> str | list[Line]:
    """Return sheets as html, or as lines of text of at most `width` columns."""
    if form == "html":
        from checker.showing.field_sheet.html import as_html

        return as_html(sheets, words)
    from checker.showing.field_sheet.text import as_text
    from checker.showing.lines import BLANK

    lines: list[Line] = []
    for sheet in sheets:
        lines += [BLANK, BLANK] if lines else []
        lines += as_text(sheet, words, width=width)
    return lines
