"""A house, its rule book and a spec of one of its lots, written where a test wants them."""

from __future__ import annotations

import textwrap
from pathlib import Path

from checker.judging.review_data import Finding, Review
from checker.judging.rulebook import load_rulebook
from checker.judging.settle import Settled, settle
from checker.reading.faults import Unreadable
from checker.reading.reader import load_spec

BOOK = load_rulebook()

# 1/32 in/ft is 0.26 %, flatter than any rule asks.
LOT = """\
vocabulary: 1
paper: house
job: {name: Quillwater Lane, lot: "14", as_of: 2031-05-01}
drain: {present: yes, slope: 1/32 in/ft, run_long: 72 ft}
"""

VARIANCE = """\
house: Harrow and Fenn Homes
approvers: [K. Fenn]
variances:
  - id: V-07
    rule: drain.flat
    scope: {job: Quillwater Lane, lot: "14"}
    reason: no room above the bearing line
    condition: levels photographed at each corner
    approved_by: K. Fenn
    issued: 2031-04-15
    expires: 2031-07-15
"""


def write(folder: Path, **files: str) -> Path:
    """Write files into a checkout of its own; `belowgrade`, `lot` and `book` are known names."""
    (folder / ".git").mkdir(exist_ok=True)
    names = {"belowgrade": "belowgrade.yaml", "lot": "lots/lot-14.yaml", "book": "rules/own.yaml"}
    for key, text in files.items():
        file = folder / names[key]
        file.parent.mkdir(exist_ok=True)
        file.write_text(textwrap.dedent(text), encoding="utf-8")
    return folder / names["lot"]


def settled(lot: Path, day: str = "") -> Settled:
    """Return what the one spec of a file is judged by."""
    (spec,) = load_spec(lot)
    return settle(spec, BOOK, day=day)


def reviewed(lot: Path, day: str = "") -> Review:
    """Review the one spec of a file."""
    return settled(lot, day).review()


def finding(review: Review, rule: str) -> Finding:
    """Return what a rule says."""
    (found,) = (one for one in review.findings if one.rule == rule)
    return found


def faults(lot: Path) -> list[str]:
    """Return what is wrong with the house of a spec."""
    try:
        settled(lot)
    except Unreadable as error:
        return [str(fault) for fault in error.faults]
    return []
