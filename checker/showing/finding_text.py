"""One finding that is not met, as lines: its numbers first, then where, who says so, what to do."""

from __future__ import annotations

from collections.abc import Iterable

from checker.judging.review_data import NOT_MET, At, Cited, Compared, Elsewhere, Finding
from checker.showing.lines import Line, joined, paragraph, sentence

INDENT = 4
LABEL = 11
# What is written stronger than the rest, and its label.
_LOUD = {
    "STOP": ("strong", "stop"),
    "shown": ("strong", "label"),
    "needed": ("strong", "label"),
    "off by": ("strong", "label"),
    "tight": ("strong", "label"),
}
# More places than this hide the finding; the calculation sheet and the JSON have them all.
_PLACES = 6

COMMON_PRACTICE = "common practice: no code is cited for it"
# How far a source was read, where it was less than its own text.
READ = {
    "quoted in law": "as quoted in law",
    "quoted elsewhere": "as quoted elsewhere",
    "summary": "from a summary of it",
    "memory": "from memory, not verified",
}


def finding_lines(
    number: int, finding: Finding, width: int, said: frozenset[str], file: str = ""
) -> list[Line]:
    """Return the lines of a finding.

    `said` holds the safety texts that stand above already; `file` is the reviewed one, whose name
    need not be told at every line.
    """
    title = f"{finding.severity}: {named(finding.title, finding.item)}"
    lines = paragraph(title, width, label=f"{number}.", hang=INDENT, style="title")
    for compared in finding.compared:
        if compared.outcome == NOT_MET:
            lines += _numbers(compared, width)
    # Three grave findings must not drown in forty small ones: `why` tells the rest of those.
    brief = finding.severity == "minor"
    rows = [
        *relabelled("where", _where(finding.places, file)),
        *relabelled("says", _says(finding)),
        ("why", "" if brief else finding.rationale),
        ("differs", "" if brief else finding.differs),
        ("STOP" if finding.stop else "do", finding.remedy),
        ("safety", "" if finding.safety in said else finding.safety),
        *relabelled("assumed", finding.assumed),
        ("elsewhere", "" if brief else joined([elsewhere(one) for one in finding.elsewhere])),
        *relabelled("amended", [f"by {one.by}: {one.reason}" for one in finding.amended]),
        ("rule", _rule(finding)),
    ]
    return lines + [row for label, text in rows for row in labelled(label, text, width)]


def labelled(label: str, text: str, width: int, hang: int = LABEL) -> list[Line]:
    """Return a text behind a label, in the columns that findings share."""
    style, label_style = _LOUD.get(label, ("", "label"))
    return paragraph(
        text, width, label=label, indent=INDENT, hang=hang, style=style, label_style=label_style
    )


def named(title: str, item: str) -> str:
    """Return a title with the item of a list that it speaks of."""
    return f"{title}, {item}" if item else title


def cited(source: Cited) -> str:
    """Return a source, its standing for this spec, how far it was read, and what it says."""
    standing = joined([source.standing, READ.get(source.seen, "")])
    return f"{source.title} {source.at} ({standing}): {sentence(source.says)}"


def elsewhere(other: Elsewhere) -> str:
    """Return in a few words how the assembly stands under a text that is not adopted."""
    texts = ", ".join(f"{source.title} {source.at}" for source in other.cited)
    needed = f", needed {other.needed}" if other.needed else ""
    return f"{texts or 'another text'}: {other.outcome}{needed}"


def stage_words(stage: str) -> str:
    """Return a stage as it is said."""
    return stage.replace("_", " ")


def _numbers(compared: Compared, width: int) -> list[Line]:
    rows = [
        ("shown", f"{compared.shown} ({compared.title})"),
        ("needed", compared.needed),
        ("off by", compared.off_by),
    ]
    return [row for label, text in rows for row in labelled(label, text, width)]


def _where(places: tuple[At, ...], file: str) -> list[str]:
    texts = [_place(place, file) for place in places[:_PLACES]]
    left = len(places) - _PLACES
    return [*texts, f"and {left} more"] if left > 0 else texts


def _place(place: At, file: str) -> str:
    origin = joined([f"from {place.source}" if place.source else "", place.how], ", ")
    written = f"{place.path}: {place.written}" if place.written else place.path
    other = f"{place.file} " if place.file not in ("", file) else ""
    return f"{other}line {place.line}, {written}" + (f" ({origin})" if origin else "")


def _says(finding: Finding) -> list[str]:
    if not finding.sources:
        standing = finding.standing or "common practice"
        return [COMMON_PRACTICE if standing == "common practice" else standing]
    texts = [cited(source) for source in finding.sources]
    if finding.standing and finding.standing not in {one.standing for one in finding.sources}:
        texts.insert(0, f"{finding.standing} here")
    return texts


def _rule(finding: Finding) -> str:
    return (
        f"{finding.rule}; trade {finding.trade}; "
        f"last cheap to put right at stage {stage_words(finding.stage)}"
    )


def relabelled(label: str, texts: Iterable[str]) -> list[tuple[str, str]]:
    """Give the first of some texts the label and leave the others below it."""
    return [(label if number == 0 else "", text) for number, text in enumerate(texts)]
