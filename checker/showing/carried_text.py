"""What became of an earlier review's findings, as text: new, fixed, and how many carried over."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from checker.judging.carried import Closed, Comparison, Fresh, shown_text
from checker.judging.review_data import NOT_MET, Review
from checker.showing.finding_text import finding_lines, labelled, named
from checker.showing.lines import BLANK, PIPE_WIDTH, WIDEST, Line, heading, joined, line, paragraph
from checker.showing.text import closing, head_lines, more_cautions, top_cautions


def render_comparison(
    reviews: Sequence[Review],
    comparison: Comparison,
    *,
    width: int = PIPE_WIDTH,
    accepted: bool = False,
) -> list[Line]:
    """Return what is new in full, what is fixed in a line each, and how many carried over.

    The safety block of every assembly stands above, and the last line is that of any review.
    """
    width = min(width, WIDEST)
    closed = (*comparison.fixed, *comparison.dropped)
    told_of = {(review.file, review.assembly) for review in reviews}
    many = len(told_of | {one.earlier[:2] for one in closed}) > 1
    cautions = list(dict.fromkeys(one for review in reviews for one in review.cautions))
    lines = [row for review in reviews for row in head_lines(review, width)]
    lines += [*top_cautions(cautions, width), BLANK]
    lines += paragraph(f"Compared with {comparison.against}", width)
    for note in comparison.notes:
        lines += paragraph(note, width, label="-", indent=2, hang=2)
    lines += _new(comparison.fresh, width, many=many)
    lines += _closed("Fixed", comparison.fixed, width, many=many)
    lines += _closed("No longer asked", comparison.dropped, width, many=many)
    lines += heading(f"Carried over: {comparison.carried}", width)
    lines += more_cautions(cautions, width)
    return [*lines, BLANK, line(closing(reviews, accepted=accepted), "closing")]


def _new(fresh: Sequence[Fresh], width: int, *, many: bool) -> list[Line]:
    lines = heading(f"New: {len(fresh)}", width)
    for number, one in enumerate(fresh, start=1):
        finding = one.finding
        said = frozenset(caution.text for caution in one.review.cautions)
        lines.append(BLANK)
        if finding.outcome == NOT_MET:
            lines += finding_lines(number, finding, width, said, one.review.file)
        else:
            lines += _open(number, one, width)
        lines += labelled("before", _stood(one), width)
        lines += labelled("of", f"{one.review.assembly} ({one.review.file})" if many else "", width)
    return lines


def _open(number: int, one: Fresh, width: int) -> list[Line]:
    finding = one.finding
    title = f"{finding.severity}, {finding.outcome}: {named(finding.title, finding.item)}"
    rows = [
        ("not shown", ", ".join(finding.missing)),
        ("because", finding.because),
        ("ask", finding.ask),
        ("rule", finding.rule),
    ]
    lines = paragraph(title, width, label=f"{number}.", hang=4, style="title")
    return lines + [row for label, text in rows for row in labelled(label, text, width)]


def _stood(one: Fresh) -> str:
    if one.before is None:
        return "not asked"
    return joined([one.before.outcome, one.before.shown], ", ")


def _closed(title: str, closed: Sequence[Closed], width: int, *, many: bool) -> list[Line]:
    if not closed:
        return []
    lines = heading(f"{title}: {len(closed)}", width)
    for (file, assembly), group in groupby(closed, key=lambda one: one.earlier[:2]):
        lines += paragraph(f"{assembly} ({file})", width) if many else []
        for one in group:
            lines += paragraph(_became(one), width, label="-", indent=2, hang=2)
    return lines


def _became(one: Closed) -> str:
    was = joined([one.before.outcome, one.before.shown], ", ")
    title = f"{one.before.severity}: {named(one.before.title, one.before.item)}"
    if one.now is None:
        return f"{title} ({one.before.rule}): was {was}; not asked again"
    allowed = f"allowed by variance {one.now.varied}" if one.now.varied else ""
    now = joined([one.now.outcome, allowed or one.now.because or shown_text(one.now)], ", ")
    return f"{title} ({one.before.rule}): was {was}; now {now}"
