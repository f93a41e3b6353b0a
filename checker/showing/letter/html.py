"""The letter as one HTML file, to be printed on letter paper or A4."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from checker.showing.finding_text import stage_words
from checker.showing.letter import wording
from checker.showing.letter.contents import Letter
from checker.showing.lines import clean

_TEMPLATES = Path(__file__).parent / "templates"


def as_html(letters: Sequence[Letter]) -> str:
    """Return letters as a page in plain ASCII that needs nothing beside it, one after the other."""
    style = Markup((_TEMPLATES / "letter.css").read_text(encoding="utf-8"))
    page = _environment().get_template("letter.html.j2").render(letters=letters, style=style)
    # A browser reads these references in any encoding, and any output can take them.
    return page.encode("ascii", "xmlcharrefreplace").decode("ascii")


def _environment() -> Environment:
    environment = Environment(
        loader=FileSystemLoader(_TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=_plain,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters["stage"] = stage_words
    environment.globals["wording"] = wording
    return environment


def _plain(value: object) -> object:
    """Take out of a text what no text should hold, before it is escaped."""
    return value if isinstance(value, Markup) or not isinstance(value, str) else clean(value)
