"""Sentences that every form of the letter has in common, so that no two of them can differ."""

from __future__ import annotations

from checker.showing.finding_text import stage_words
from checker.showing.letter.contents import Letter
from checker.showing.letter.dispositions import ASK_FIRST, NO_COMMENT, SEND_BACK
from checker.showing.letter.items import Item
from checker.showing.lines import counted, joined

TITLE = "Comments on a submittal"
FOOT = (
    "Not a code review. The local authority, the competent person and the licensed engineer decide."
)
_MEANS = {
    SEND_BACK: "the paper should be changed and come again.",
    ASK_FIRST: "somebody must answer before anybody can decide.",
    NO_COMMENT: "these rules have nothing to say to it. That is no approval.",
}


def head(letter: Letter) -> list[tuple[str, str]]:
    """Return the head of the letter; who writes it, to whom and when is left to a person."""
    lot = f", lot {letter.lot}" if letter.lot else ""
    job = f"{letter.job}{lot}" if letter.job else letter.assembly
    part = letter.assembly if letter.assembly != job else ""
    trade = f"for trade {letter.trade}" if letter.trade else ""
    rows = [
        ("Date", ""),
        ("To", ""),
        ("From", letter.builder),
        ("Job", job),
        ("Place", letter.place),
        ("About", joined([part, letter.file, trade])),
        ("Values as of", letter.as_of),
    ]
    return [(label, text) for label, text in rows if text or label in ("Date", "To")]


def suggestion(letter: Letter) -> str:
    """Return what is suggested for the whole, and what that means."""
    return f"{letter.suggestion}: {_MEANS[letter.suggestion]}"


def summary(letter: Letter) -> str:
    """Return in one sentence what the letter holds."""
    parts = [
        f"{counted(len(letter.faults), 'item')} not met",
        f"{counted(len(letter.questions), 'value')} not shown",
        f"{letter.met} checked and good",
        f"{letter.apart} that do not apply",
    ]
    whose = f" of trade {letter.trade}" if letter.trade else ""
    text = f"What these rules{whose} found: {', '.join(parts)}."
    return text if letter.judged else f"{text} Nothing could be judged."


def item_head(item: Item) -> str:
    """Return what is suggested for an item, how grave it is, whose it is and by when."""
    return joined(
        [
            item.revision,
            item.severity,
            f"trade {', '.join(item.trades)}",
            f"to be settled before stage {stage_words(item.stage)} is over",
        ]
    )


def prepared(letter: Letter) -> str:
    """Return the line at the foot that says what the letter was made with."""
    follows = (
        f" The letter before this one was made with digest {letter.follows[:12]}."
        if letter.follows and letter.follows != letter.digest
        else ""
    )
    books = "; ".join(f"{name}, digest {digest[:12]}" for name, digest in letter.books)
    return f"Prepared with rules of {books}.{follows} {FOOT}"
