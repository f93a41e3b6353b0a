"""The field sheet as one HTML file: a page to fill in by hand, its back, and photo cards."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from checker.showing.field_sheet import phrases
from checker.showing.field_sheet.contents import Sheet
from checker.showing.field_sheet.fill_in import fill_in
from checker.showing.field_sheet.text import NOT_A_RELEASE
from checker.showing.field_sheet.words import Words
from checker.showing.lines import clean

_TEMPLATES = Path(__file__).parent / "templates"


def as_html(sheets: Sequence[Sheet], words: Words) -> str:
    """Return sheets as one page in plain ASCII that needs nothing beside it."""
    style = Markup((_TEMPLATES / "sheet.css").read_text(encoding="utf-8"))
    page = _environment().get_template("sheet.html.j2").render(
        sheets=[(one, "\n".join(fill_in(one, words))) for one in sheets],
        w=words, p=phrases, style=style,
        command="belowgrade review SPEC --measured both", not_a_release=NOT_A_RELEASE,
    )  # fmt: skip
    # A browser reads these references in any encoding, and any output can take them.
    return page.encode("ascii", "xmlcharrefreplace").decode("ascii")


def _environment() -> Environment:
    return Environment(
        loader=FileSystemLoader(_TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=_plain,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def _plain(value: object) -> object:
    """Take out of a text what no text should hold, before it is escaped; its lines stay."""
    if isinstance(value, Markup) or not isinstance(value, str):
        return value
    return "\n".join(map(clean, value.split("\n")))
