"""Reviews in the form that was asked for; only what that form needs is loaded."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from checker.judging.carried import Comparison
    from checker.judging.review_data import Review
    from checker.judging.rulebook import Rulebook
    from checker.reading.faults import Fault
    from checker.reading.spec import Spec
    from checker.showing.lines import Line


class Reviewed(NamedTuple):
    """All that a run has come to: assemblies with their reviews, by which rules, and what is wrong.

    `faults` are those of files that could not be read, `comparison` how the reviews differ from
    earlier ones, `status` what the command ends with.
    """

    pairs: Sequence[tuple[Spec, Review]]
    rulebook: Rulebook
    faults: Sequence[Fault]
    comparison: Comparison | None
    status: int

    @property
    def reviews(self) -> list[Review]:
        """The reviews alone."""
        return [review for _, review in self.pairs]


# The forms that can say what is new.
COMPARED = ("text", "json", "sarif")


def in_form(form: str, reviewed: Reviewed, width: int) -> str | list[Line]:
    """Return an output as text, or as lines of at most `width` columns."""
    if form == "json":
        from checker.showing.json_report import as_json

        return as_json(reviewed.reviews, comparison=reviewed.comparison)
    if form == "sarif":
        from checker.showing.sarif_report import as_sarif

        return as_sarif(
            reviewed.reviews,
            reviewed.rulebook,
            faults=reviewed.faults,
            exit_status=reviewed.status,
            comparison=reviewed.comparison,
            version=_version(),
        )
    if form == "junit":
        from checker.showing.junit_report import as_junit

        return as_junit(reviewed.reviews, reviewed.faults)
    if form == "html":
        from checker.showing.report.html import report_page

        return report_page(reviewed.pairs)
    return _as_text(reviewed, width)


def _as_text(reviewed: Reviewed, width: int) -> list[Line]:
    if reviewed.comparison:
        from checker.showing.carried_text import render_comparison

        return render_comparison(reviewed.reviews, reviewed.comparison, width=width)
    from checker.showing.text import render

    return render(reviewed.reviews, width=width)


def _version() -> str:
    """Return the version that is installed, or nothing where it only lies in a folder."""
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version("belowgrade")
    except PackageNotFoundError:
        return ""
