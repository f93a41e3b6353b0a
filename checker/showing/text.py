"""A review as text: safety first, then what is not met, what must be asked, and what is good.

The last line can never be taken for a release.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Generic, NamedTuple, TypeVar

from checker.judging.review_data import (
    DOES_NOT_APPLY,
    MET,
    NOT_MET,
    NOT_SEEN,
    NOT_SHOWN,
    SEVERITIES,
    STAGES,
    Allowance,
    Book,
    Caution,
    Finding,
    Question,
    Review,
    weight,
)
from checker.showing.finding_text import INDENT, finding_lines, labelled, named, stage_words
from checker.showing.good_text import good_lines
from checker.showing.lines import (
    BLANK,
    PIPE_WIDTH,
    WIDEST,
    Line,
    counted,
    heading,
    joined,
    line,
    paragraph,
)

# Twenty warnings are none: three stand on top, the others in a block of their own.
_CAUTIONS_ON_TOP = 3
_SIGNAL = 9
_ASKED_IN_FULL = 10
_SECTION = 14
_NO_OBJECTION = "no objection"
_SPEC_SAYS = "the spec says"
_NOT_A_RELEASE = "This is not a release."


# Text as it leaves the process that made it: plain, or lines that still have their styles.
Shape = TypeVar("Shape", str, list[Line])


class Tally(NamedTuple):
    """How many findings of one review came out how: all that the last line of several needs."""

    judged: bool
    met: int
    not_met: int
    not_shown: int
    varied: int


class Part(NamedTuple, Generic[Shape]):
    """One review as text, and its tally."""

    text: Shape
    tally: Tally


def render(
    reviews: Sequence[Review], *, width: int = PIPE_WIDTH, accepted: bool = False
) -> list[Line]:
    """Return reviews as lines of at most `width` columns, never more than 100.

    `accepted` says that whoever asked let pass what is not shown; the last line then says so.
    """
    parts = (part(list, one, width=width, accepted=accepted) for one in reviews)
    return [row for lines in in_a_row(parts, list, accepted=accepted) for row in lines]


def part(
    shape: Callable[[list[Line]], Shape],
    review: Review,
    *,
    width: int = PIPE_WIDTH,
    accepted: bool = False,
) -> Part[Shape]:
    """Return one review as text, so that any number can be written as they come."""
    lines = _review(review, min(width, WIDEST), accepted=accepted)
    return Part(shape(lines), tally(review))


def with_blanks(texts: Iterable[Shape], shape: Callable[[list[Line]], Shape]) -> Iterator[Shape]:
    """Yield texts with a blank line between one and the next."""
    for number, text in enumerate(texts):
        yield shape([BLANK]) + text if number else text


def in_a_row(
    parts: Iterable[Part[Shape]], shape: Callable[[list[Line]], Shape], *, accepted: bool = False
) -> Iterator[Shape]:
    """Yield the parts, and at the end what all come to, unless there is just one."""
    tallies: list[Tally] = []

    def texts() -> Iterator[Shape]:
        for one in parts:
            tallies.append(one.tally)
            yield one.text

    yield from with_blanks(texts(), shape)
    if len(tallies) != 1:
        total = f"{counted(len(tallies), 'assembly', 'assemblies')} in all:"
        yield shape([BLANK, line(total), *_closing(tallies, accepted=accepted)])


def tally(review: Review) -> Tally:
    """Count the findings of a review."""
    met, not_met, not_shown = (len(review.of(each)) for each in (MET, NOT_MET, NOT_SHOWN))
    varied = sum(bool(one.varied) for one in review.findings)
    return Tally(review.judged, met, not_met, not_shown, varied)


def closing(reviews: Iterable[Review], *, accepted: bool = False) -> str:
    """Return the sentence that ends every output: what was judged, and that nothing is released."""
    return closing_of([tally(review) for review in reviews], accepted=accepted)


def closing_of(tallies: Sequence[Tally], *, accepted: bool = False) -> str:
    """Return the same sentence where only the tallies of the reviews are left."""
    if not any(one.judged for one in tallies):
        return f"Nothing could be judged. {_NOT_A_RELEASE}"
    _, met, not_met, not_shown, varied = map(sum, zip(*tallies, strict=True))
    let_pass = " (let pass)" if accepted and not_shown else ""
    by_variance = f" ({varied} by variance)" if varied else ""
    return (
        f"{met} met, {not_met} not met{by_variance}, {not_shown} could not be judged{let_pass}. "
        f"{_NOT_A_RELEASE}"
    )


def by_weight(findings: Iterable[Finding]) -> list[Finding]:
    """Return findings by severity, what protects people first, then by how often it is met with."""
    return sorted(findings, key=weight)


def _review(review: Review, width: int, *, accepted: bool) -> list[Line]:
    return [
        *head_lines(review, width),
        *top_cautions(review.cautions, width),
        *_list("After this stage you can no longer change:", review.buried, width),
        *_not_met(review, width),
        *_varied(review, width),
        *_questions(review, width),
        *_no_answer(review, width),
        *_older(review, width),
        *_for_a_person(review, width),
        *_said_not_to_apply(review, width),
        *good_lines(review.of(MET), width),
        *_not_applying(review, width),
        *more_cautions(review.cautions, width),
        *_list("Assumed, because the spec does not show it", _assumed(review), width),
        *_list("Notes from reading the spec", review.notes, width),
        BLANK,
        *_closing([tally(review)], accepted=accepted),
    ]


def _closing(tallies: Sequence[Tally], *, accepted: bool) -> list[Line]:
    # Never wrapped: the last line alone must say that this is not a release.
    return [line(closing_of(tallies, accepted=accepted), "closing")]


def head_lines(review: Review, width: int) -> list[Line]:
    """Return what was reviewed, as what paper, for which stage, by which rule book."""
    assumed = " (assumed: the spec names none)" if review.stage_assumed else ""
    first = f"Review of {review.assembly}"
    second = joined(
        [
            review.file,
            review.paper.replace("_", " "),
            f"stage {stage_words(review.stage)}{assumed}",
            f"only what must be right by stage {stage_words(review.by)}" if review.by else "",
            "judged by what was measured" if review.basis == "measured" else "",
        ]
    )
    third = _went_by(review)
    return [
        *paragraph(first, width, style="heading"),
        *paragraph(second, width),
        *paragraph(third, width, style="faint"),
    ]


def top_cautions(cautions: Sequence[Caution], width: int) -> list[Line]:
    """Return the first lines of the safety block, which stand above everything else."""
    lines = _cautions(cautions[:_CAUTIONS_ON_TOP], width)
    return [BLANK, *lines] if lines else []


def more_cautions(cautions: Sequence[Caution], width: int) -> list[Line]:
    """Return the rest of the safety block."""
    lines = _cautions(cautions[_CAUTIONS_ON_TOP:], width)
    return [*heading("More on safety", width), *lines] if lines else []


def _went_by(review: Review) -> str:
    """Return the rule books that a review went by, each with its digest, and the day judged."""
    books = review.books or (Book(review.rulebook, review.digest),)
    named = ", ".join(part for book in books for part in (book.name, f"digest {book.digest[:12]}"))
    noun = "rule books" if len(books) > 1 else "rule book"
    return joined([f"{noun} {named}", f"as of {review.day}" if review.day else ""])


def _cautions(cautions: Iterable[Caution], width: int) -> list[Line]:
    return [
        row
        for caution in cautions
        for row in paragraph(
            caution.text, width, label=caution.signal, hang=_SIGNAL, label_style=caution.signal
        )
    ]


def _not_met(review: Review, width: int) -> list[Line]:
    findings = by_weight(one for one in review.of(NOT_MET) if not one.varied)
    if not findings:
        found = "No fault found in what could be judged." if review.judged else ""
        return [BLANK, *paragraph(found, width)] if found else []
    said = frozenset(caution.text for caution in review.cautions)
    lines = heading(f"Not met: {len(findings)}", width)
    for number, finding in enumerate(findings, start=1):
        lines += [BLANK, *finding_lines(number, finding, width, said, review.file)]
    return lines


def _varied(review: Review, width: int) -> list[Line]:
    """What is not met and allowed for a time, and every variance that is not in force."""
    granted = {one.id: one for one in review.variances}
    texts = [
        f"{one.varied} allows {named(one.title, one.item)} ({one.rule}){_figures(one)}: "
        f"{_granted(granted[one.varied])}"
        for one in review.findings
        if one.varied in granted
    ]
    used = {one.varied for one in review.findings}
    idle = [
        joined([f"{one.id}, of {one.rule or 'no rule'}: {one.state}", one.reason])
        for one in review.variances
        if one.id not in used
    ]
    return [
        *_list("Not met, and allowed by a variance", texts, width),
        *_list("Variances that allow nothing here", idle, width),
    ]


def _granted(one: Allowance) -> str:
    condition = f"on condition of {one.condition}" if one.condition else ""
    return joined([f"approved by {one.by} until {one.expires}", condition, one.reason])


def _questions(review: Review, width: int) -> list[Line]:
    older = {one.rule for one in older_paper(review)}
    asked = [
        one
        for one in review.questions
        if not _names_no_value(one) and not older.issuperset(one.rules)
    ]
    if not asked:
        return []
    weighty = [question for question in asked if question.severity != "minor"]
    first = weighty if len(weighty) <= _ASKED_IN_FULL + 5 else weighty[:_ASKED_IN_FULL]
    more = f"; the {len(first)} to ask first" if len(first) < len(asked) else ""
    lines = heading(f"Questions: {counted(len(asked), 'value')} not shown{more}", width)
    for number, question in enumerate(first, start=1):
        lines += _question(number, question, width)
    for severity in SEVERITIES:
        rest = [one for one in asked if one.severity == severity and one not in first]
        lines += _folded(severity, rest, width)
    return lines


def _folded(severity: str, questions: Sequence[Question], width: int) -> list[Line]:
    """A hundred questions in full bury the ten that matter: the others stand by section."""
    if not questions:
        return []
    sections: dict[str, list[str]] = {}
    for one in questions:
        section, _, key = one.path.partition(".")
        title = f"{one.title} ({key})" if key else one.title
        unseen = ", written but not yet seen" if one.because == NOT_SEEN else ""
        sections.setdefault(section, []).append(f"{title}{unseen}")
    lines: list[Line] = [BLANK, line(f"Also not shown, {severity}", "strong")]
    for section, titles in sorted(sections.items()):
        lines += labelled(section, "; ".join(titles), width, _SECTION)
    return lines


def _names_no_value(question: Question) -> bool:
    """Say whether a question stands for a rule that no single value would settle."""
    return question.path.startswith("(")


def _question(number: int, question: Question, width: int) -> list[Line]:
    title = f"{question.severity}: {question.title} ({question.path})"
    waits = f"{', '.join(question.rules)}; by stage {stage_words(question.stage)}"
    return [
        *paragraph(title, width, label=f"Q{number}.", hang=INDENT + 1, style="title"),
        *labelled("ask", question.ask, width),
        *labelled("note", question.because, width),
        *labelled("waiting", waits, width),
    ]


def _no_answer(review: Review, width: int) -> list[Line]:
    """Findings without an answer that no single missing value explains."""
    asked = {question.path for question in review.questions}
    older = older_paper(review)
    left = [
        one
        for one in review.of(NOT_SHOWN)
        if not asked.intersection(one.missing) and one not in older
    ]
    texts = [
        f"{one.severity}: {named(one.title, one.item)} ({one.rule}): "
        + joined([one.because, f"not shown: {', '.join(one.missing)}" if one.missing else ""])
        for one in by_weight(left)
    ]  # fmt: skip
    return _list("Could not be judged for another reason", texts, width)


def older_paper(review: Review) -> list[Finding]:
    """Return what a review by a stage leaves open from earlier ones that is paper, or minor.

    What is grave stays among the questions however old it is.
    """
    if not review.by:
        return []
    now = STAGES.index(review.by)
    return [
        one
        for one in review.of(NOT_SHOWN)
        if STAGES.index(one.stage) < now
        and (one.severity == "minor" or (one.protects == "record" and one.severity != "critical"))
    ]


def _older(review: Review, width: int) -> list[Line]:
    older = older_paper(review)
    if not older:
        return []
    ids = ", ".join(dict.fromkeys(one.rule for one in older))
    text = f"Older open paper: {counted(len(older), 'finding')} not shown ({ids})."
    return [BLANK, *paragraph(text, width)]


def _for_a_person(review: Review, width: int) -> list[Line]:
    left = [one for one in review.of(DOES_NOT_APPLY) if one.because.startswith(_NO_OBJECTION)]
    reasons: dict[str, list[str]] = {}
    for one in left:
        reasons.setdefault(one.because, []).append(f"{named(one.rule, one.item)}{_figures(one)}")
    lines: list[Line] = []
    for because, rules in sorted(reasons.items()):
        lines += _list(because[0].upper() + because[1:], rules, width)
    return lines


def _said_not_to_apply(review: Review, width: int) -> list[Line]:
    said: dict[str, list[str]] = {}
    for one in review.of(DOES_NOT_APPLY):
        if one.because.startswith(_SPEC_SAYS):
            said.setdefault(one.because, []).append(named(one.rule, one.item))
    texts = [f"{because}: {', '.join(rules)}" for because, rules in said.items()]
    return _list("The spec says these do not apply", texts, width)


def _figures(finding: Finding) -> str:
    texts = [f"{one.title} {one.shown}" for one in finding.compared if one.shown]
    return f" ({'; '.join(texts)})" if texts else ""


def _not_applying(review: Review, width: int) -> list[Line]:
    left = [
        one.because
        for one in review.of(DOES_NOT_APPLY)
        if not one.because.startswith((_NO_OBJECTION, _SPEC_SAYS))
    ]
    if not left:
        return []
    kinds = Counter(_reason(because) for because in left)
    reasons = ", ".join(f"{number} {reason}" for reason, number in sorted(kinds.items()))
    verb = "does" if len(left) == 1 else "do"
    text = f"{counted(len(left), 'finding')} {verb} not apply here: {reasons}."
    return [BLANK, *paragraph(text, width)]


def _reason(because: str) -> str:
    """Return one phrase for all the reasons of a kind, so that they can be counted."""
    if because.startswith("not due"):
        return "not due yet"
    if because.startswith("a standard has no"):
        return "judged on each lot, because a standard has no levels, facts or records of its own"
    if because.startswith("none listed"):
        return "with nothing listed to ask about"
    return because or "outside the scope of the rule"


def _assumed(review: Review) -> list[str]:
    return list(dict.fromkeys(note for one in review.findings for note in one.assumed))


def _list(title: str, texts: Iterable[str], width: int) -> list[Line]:
    lines = [row for text in texts for row in paragraph(text, width, label="-", indent=2, hang=2)]
    return [*heading(title, width), *lines] if lines else []
