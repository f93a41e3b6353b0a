"""The comment letter on a submittal: numbered items, what each asks, and what stands behind it."""

from __future__ import annotations

from collections.abc import Sequence

from checker.showing.letter.contents import Letter, letter_of
from checker.showing.letter.dispositions import Dispositions, load_dispositions
from checker.showing.letter.earlier import Earlier, load_earlier, matching

__all__ = [
    "Dispositions",
    "Earlier",
    "Letter",
    "in_form",
    "letter_of",
    "load_dispositions",
    "load_earlier",
    "matching",
]


def in_form(letters: Sequence[Letter], form: str) -> str | bytes:
    """Return letters as markdown, html, json or docx; only what that form needs is loaded.

    Raises ModuleNotFoundError for docx where python-docx is not installed.
    """
    if form == "html":
        from checker.showing.letter.html import as_html

        return as_html(letters)
    if form == "docx":
        from checker.showing.letter.docx import as_docx

        return as_docx(letters)
    if form == "json":
        from checker.showing.letter.data import as_json

        return as_json(letters)
    from checker.showing.letter.markdown import as_markdown

    return as_markdown(letters)
