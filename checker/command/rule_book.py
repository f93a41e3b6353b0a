"""The commands that show rules: `rules` and `why`."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated

import typer

from checker.command import shells
from checker.command.options import PlaceName, place_asked, rulebook_of
from checker.command.printing import complain


def rules(
    paths: Annotated[
        list[Path] | None, typer.Argument(metavar="[FILE...]", help="Rule files or folders.")
    ] = None,
) -> None:
    """List the rules, or check the rule files given and list theirs."""
    from checker.showing.console import write
    from checker.showing.rule_page import rules_list

    write(rules_list(rulebook_of(*(paths or ()))), sys.stdout)


def why(
    rule: Annotated[
        str,
        typer.Argument(
            metavar="ID", help="A rule, such as drain.above-slab.", autocompletion=shells.rules
        ),
    ],
    place: PlaceName = "",
) -> None:
    """Show one rule: what it asks, why, on whose authority, and examples of both outcomes."""
    from checker.judging.places import by_the_law_of, load_place
    from checker.judging.standing import register
    from checker.reading.vocabulary import nearest
    from checker.showing.console import write
    from checker.showing.rule_page import rule_page

    book = rulebook_of()
    if where := place_asked(place):
        book = by_the_law_of(load_place(where), book)
    found = book.rule(rule)
    if found is None:
        complain(f"there is no rule '{rule}'{nearest(rule, [each.id for each in book.rules])}")
        raise typer.Exit(2)
    write(rule_page(found, register()), sys.stdout)
