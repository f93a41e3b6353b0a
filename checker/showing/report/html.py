"""Reviews as one HTML file that needs nothing beside it: no network, no script, no other file."""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from checker.judging.review_data import Review
from checker.reading.spec import Spec
from checker.showing.finding_text import named, stage_words
from checker.showing.lines import clean, counted, sentence
from checker.showing.report.contents import contents_of, figures, margin
from checker.showing.text import closing

_HERE = Path(__file__).parent
_TEMPLATES = _HERE / "templates"


def report_page(pairs: Sequence[tuple[Spec, Review]], *, accepted: bool = False) -> str:
    """Return assemblies with their reviews as a page, in plain ASCII, a sheet for each.

    The same pairs always give the same text. `accepted` says that whoever asked let pass what is
    not shown; the last lines then say so.
    """
    sheets = [
        contents_of(spec, review, number, accepted=accepted)
        for number, (spec, review) in enumerate(pairs, start=1)
    ]
    script = _verbatim("unfold.js")
    page = _environment().get_template("page.html.j2").render(
        sheets=sheets,
        extracts=sorted({(one.kind, one.word) for sheet in sheets for one in sheet.extracts}),
        closing=closing([review for _, review in pairs], accepted=accepted),
        style=_verbatim("style.css"),
        script=script,
        script_digest=_digest(script),
    )  # fmt: skip
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
    environment.filters |= {"counted": counted, "sentence": sentence, "stage": stage_words}
    environment.globals |= {"named": named, "margin": margin, "figures": figures}
    return environment


def _plain(value: Any) -> Any:
    """Take out of a text what no text should hold, before it is escaped."""
    markup = hasattr(value, "__html__")
    return clean(value) if isinstance(value, str) and not markup else value


def _verbatim(name: str) -> str:
    """Return a file of our own that goes into the page as it stands."""
    return (_HERE / name).read_text(encoding="utf-8")


def _digest(script: str) -> str:
    """Return what a browser compares a script with before it runs it."""
    return base64.b64encode(hashlib.sha256(script.encode()).digest()).decode("ascii")
