"""The page of an edit's effect: what was edited, and what it does to every lot that it reaches."""

from __future__ import annotations

from typing import TYPE_CHECKING

from checker.showing.effect_page.contents import contents_of

if TYPE_CHECKING:
    from checker.judging.effect_data import Effect
    from checker.showing.effect_page.html import BothSides
    from checker.showing.lines import Line


def in_form(form: str, effect: Effect, both: BothSides, width: int) -> str | list[Line]:
    """Return an effect as text, markdown, html or json; only what that form needs is loaded.

    `both` gives a lot before and after, each with its review, for whoever draws it.
    """
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
