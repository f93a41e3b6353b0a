"""The page of an edit's effect: what was edited, and what it does to every lot that it reaches."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from checker.showing.effect_page.contents import contents_of

if TYPE_CHECKING:
    from checker.judging.effect import Lot
    from checker.judging.effect_files import Effect
    from checker.judging.review_data import Review
    from checker.reading.spec import Spec
    from checker.showing.lines import Line

# A lot before and after, each with its review, for whoever draws it.
Both = Callable[["Lot"], "list[tuple[Spec, Review]]"]


def in_form(form: str, effect: Effect, both: Both, width: int) -> str | list[Line]:
    """Return an effect as text, markdown, html or json; only what that form needs is loaded."""
    if form == "json":
        from checker.showing.effect_page.data import as_json

        return as_json(effect)
    if form == "markdown":
        from checker.showing.effect_page.markdown import as_markdown

        return as_markdown(contents_of(effect))
    if form == "html":
        from checker.showing.effect_page.html import as_html

        return as_html(contents_of(effect), both)
    from checker.showing.effect_page.text import as_lines

    return as_lines(contents_of(effect), width=width)
