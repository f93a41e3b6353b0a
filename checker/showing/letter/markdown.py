"""The letter in Markdown: every text from the spec is text, whatever it looks like."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from checker.showing.finding_text import stage_words
from checker.showing.letter import wording
from checker.showing.letter.contents import Letter
from checker.showing.letter.items import Item
from checker.showing.lines import counted
from checker.showing.markdown import code, page, table, text

BOX = "\N{BALLOT BOX}"
_LINE = "\\_" * 24


def as_markdown(letters: Sequence[Letter]) -> str:
    """Return letters as one Markdown text, one after the other."""
    lines: list[str] = []
    for letter in letters:
        lines += ["", "---", ""] if lines else []
        lines += _letter(letter)
    return page(lines)


def _letter(letter: Letter) -> list[str]:
    return [
        f"# {wording.TITLE}: {text(letter.assembly)}",
        "",
        *table(["", ""], [[label, text(words) or _LINE] for label, words in wording.head(letter)]),
        *_bullets("Papers", (f"{text(one.id)}: {text(one.text)}" for one in letter.papers)),
        *(f"**{signal}** {text(words)}\n" for signal, words in letter.cautions),
        f"Suggested for the whole: **{wording.suggestion(letter)}**",
        "",
        wording.summary(letter),
        "",
        f"The reviewer ticks one: {_boxes(letter)}",
        "",
        f"Reviewed by {_LINE} Date {_LINE}",
        "",
        *_revisions(letter),
        *_faults(letter),
        *_questions(letter),
        *_bullets("Variances that allow nothing here", map(text, letter.variances)),
        *_bullets(
            "No objection from these rules; a competent person or the engineer decides",
            map(code, letter.for_a_person),
        ),
        *_bullets(
            f"Checked and good: {letter.met}",
            (f"{one.name} ({one.findings}): {text(', '.join(one.faults))}" for one in letter.good),
        ),
        "---",
        "",
        wording.prepared(letter),
    ]


def _boxes(letter: Letter) -> str:
    return " ".join(f"{BOX} {text(word)}" for word in letter.stamp)


def _bullets(title: str, texts: Iterable[str]) -> list[str]:
    lines = [f"- {one}" for one in texts]
    return [f"## {title}", "", *lines, ""] if lines else []


def _revisions(letter: Letter) -> list[str]:
    return [
        *_bullets(
            "Changed though nobody asked for it",
            (f"{text(one.title)} ({code(one.path)}): was {text(one.was)}, now {text(one.now)}"
             for one in letter.changed),
        ),
        *_bullets(
            "Closed since the last letter",
            (f"Item {one.number}. {text(one.title)}: {text(one.how)}" for one in letter.closed),
        ),
    ]  # fmt: skip


def _faults(letter: Letter) -> list[str]:
    lines = [f"## Items not met: {len(letter.faults)}", ""] if letter.faults else []
    for item in letter.faults:
        lines += _fault(item, letter)
    return lines


def _fault(item: Item, letter: Letter) -> list[str]:
    figures = [
        [text(one.what), text(one.shown), text(one.needed), text(one.off_by)]
        for one in item.figures
    ]
    rows = [
        ("Action", f"**STOP.** {text(item.action)}" if item.stop else text(item.action)),
        ("Safety", text(item.safety)),
        ("Variance", text(item.varied)),
        ("Place", "; ".join(map(text, item.places))),
        ("Source", "; ".join(map(text, item.sources))),
        ("Rule", ", ".join(map(code, item.rules))),
        ("The reviewer ticks one", _boxes(letter)),
    ]
    return [
        f"### {item.number}. {text(item.title)}",
        "",
        f"Suggested: **{item.suggestion}** ({text(wording.item_head(item))})",
        "",
        *table(["", "shown", "needed", "off by"], figures),
        *(f"- {label}: {words}" for label, words in rows if words),
        "",
    ]


def _questions(letter: Letter) -> list[str]:
    if not letter.questions:
        return []
    rows = [
        [
            str(one.number), "<br>".join(map(text, (one.action, *one.places))), text(one.why),
            stage_words(one.stage), text(one.suggestion), text(one.revision), "",
        ]
        for one in letter.questions
    ]  # fmt: skip
    heads = ["item", "question", "why it is asked", "needed by stage", "suggested", "", "answer"]
    count = counted(len(rows), "value")
    return [f"## Questions: {count} not shown", "", *table(heads, rows)]
