"""An edit of the example standard, and the pages that are made of what it does."""

from __future__ import annotations

from functools import partial
from pathlib import Path

import pytest

from checker.judging.effect import Terms, both_sides
from checker.judging.effect_data import Effect
from checker.showing.console import as_text
from checker.showing.effect_page import in_form
from tests.judging.effects import BOOK, LOT, Collection

# A name that is a tag, an attribute, a mention, a reference, a link, a table's column and more.
HOSTILE = (
    "</title><script>alert(1)</script> '\\\"><img src=x> @somebody #12 GH-7 http://x.invalid/a "
    "www.x.invalid | `code` **bold** [a](b) &lt;i&gt; {{ 7 * 7 }} \\e[31mred\\e[0m \\u202eturned"
)


def shown(effect: Effect, form: str, collection: Collection, width: int = 80) -> str:
    """Return an effect in a form, as the command prints it."""
    terms = Terms(collection.before, collection.after, BOOK)
    page = in_form(form, effect, partial(both_sides, terms=terms), width)
    return page if isinstance(page, str) else as_text(page)


@pytest.fixture
def collection(tmp_path: Path) -> Collection:
    """The standard and lot 15 on both sides, nothing edited yet."""
    return Collection(tmp_path)


@pytest.fixture
def thicker(collection: Collection) -> Collection:
    """A pipe of 5.5 in, which reaches 0.34 in over the slab of lot 15; lot 16 has its own pipe."""
    own = "drain:\n  outside_diameter: 4.215 in\n  run_long: 72 ft"
    collection.lot(16, ("drain:\n  run_long: 72 ft", own))
    for number in (17, 18):
        collection.lot(number)
    return collection.edit("outside_diameter: 4.215 in", "outside_diameter: 5.5 in")


@pytest.fixture
def hostile(collection: Collection) -> Collection:
    """A lot with a name that means harm, and a value of the standard that does."""
    collection.edit("name: Quillwater Lane", f'name: "{HOSTILE}"', file=LOT, also=True)
    collection.edit("settlement_plan: refill visit", f'settlement_plan: "{HOSTILE}" #')
    return collection.edit("outside_diameter: 4.215 in", "outside_diameter: 5.5 in")
