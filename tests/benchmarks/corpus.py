"""Invented specs for measuring, as many as wanted, each another: no two files are the same.

    python tests/benchmarks/corpus.py FOLDER N [--seed S]

Writes N specs of some two hundred lines into FOLDER, a hundred to a subfolder. The same seed gives
the same files, and a file does not depend on how many others there are. They are put together from
the parts in parts/, which are written as a spec is, with three marks:

    <a|b||c>     one of a and b; a careless writer may take c, which is wrong
    $name        a level, a length or a name of this lot
    two spaces and a question mark at the end of an item: it may be missing

A part stands under a line of tags, `==== basement early`; it fits a lot that has all of them. About
three files in a hundred cannot be read: one is no YAML, one misspells a key, one uses a word that
nobody knows.
"""

from __future__ import annotations

import argparse
import functools
import re
import sys
from collections.abc import Callable
from pathlib import Path
from random import Random
from string import Template
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.benchmarks import hand
from tests.benchmarks.lot import Lot, invent

PARTS = Path(__file__).parent / "parts"
SHORTEST, LONGEST = 150, 260

_HEAD = ("head", "paper")
_PLAN = ("footing", "joint", "wall", "coat", "insulation", "sheet", "drain", "stone", "fabrics",
         "outlets")  # fmt: skip
_SECTIONS = {
    "basement": (*_HEAD, "job", "documents", "levels", "soil", "site", "climate", "excavation",
                 "footing", "joint", "wall", "coat", "insulation", "sheet", "drain", "inside_drain",
                 "stone", "fabrics", "outlets", "sump", "slab", "backfill", "grade", "wells", "roof",
                 "holds", "record", "end"),
    "crawl": (*_HEAD, "job", "documents", "levels", "soil", "site", "climate", "excavation", *_PLAN,
              "backfill", "grade", "roof", "holds", "record", "end"),
    "hill": (*_HEAD, "job", "levels", "soil", "site", "climate", "roof", "hill_side", *_PLAN, "slab",
             "backfill", "grade", "open_side"),
    "standard": (*_HEAD, "job", "documents", *_PLAN, "slab", "backfill", "roof"),
}  # fmt: skip
# Often nobody has a word to say about these.
_MAY_BE_MISSING = {"climate": 0.2, "inside_drain": 0.7, "insulation": 0.2, "documents": 0.2,
                   "holds": 0.2, "wells": 0.1, "excavation": 0.1}  # fmt: skip

# What is done to a file that cannot be read, and how many of a thousand are.
FAULTS: dict[str, Callable[[str, Random], str]] = {
    "torn": hand.torn,
    "misspelled": hand.misspelled,
    "unknown word": hand.with_an_unknown_word,
}
_OF_A_THOUSAND = 10


class Made(NamedTuple):
    """One file: where it goes below the folder, its text, and which of FAULTS it has, if any."""

    path: str
    text: str
    fault: str


def make(number: int, seed: int = 1) -> Made:
    """Return the file of this number; the first of every hundred is the standard of the others."""
    attempt = 0
    while True:
        rng = Random(f"{seed} {number} {attempt}")
        lot = invent(number, rng)
        text = _text(lot, rng)
        if SHORTEST <= text.count("\n") <= LONGEST:
            break
        attempt += 1
    fault = ""
    if "standard" not in lot.tags:
        fault = next((name for name in FAULTS if rng.randrange(1000) < _OF_A_THOUSAND), "")
    if fault:
        text = FAULTS[fault](text, rng)
    return Made(f"{number // 100:03}/{_name(lot)}.yaml", text, fault)


def write(folder: Path, count: int, seed: int = 1) -> None:
    """Write files 0 to `count` below a folder."""
    for number in range(count):
        made = make(number, seed)
        file = folder / made.path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(made.text, encoding="utf-8")


def _name(lot: Lot) -> str:
    if "standard" in lot.tags:
        return "standard"
    return f"{lot.names['street']} lot {lot.names['lot']}".lower().replace(" ", "-")


def _text(lot: Lot, rng: Random) -> str:
    writer = hand.hand(rng, lot.tags, lot.names)
    kind = next(kind for kind in _SECTIONS if kind in lot.tags)
    parts = []
    for section in _SECTIONS[kind]:
        fitting = [text for tags, text in _parts(section) if tags <= lot.tags]
        if fitting and rng.random() >= _MAY_BE_MISSING.get(section, 0):
            filled = Template(_chosen(rng.choice(fitting), lot, rng)).substitute(lot.names)
            parts.append(hand.by_hand(hand.with_units(filled, writer), writer))
    head, *rest = parts
    return head + ("\n" if writer.spaced else "").join(rest)


def _chosen(text: str, lot: Lot, rng: Random) -> str:
    def one(found: re.Match[str]) -> str:
        inside: str = found[1]
        right, _, wrong = inside.partition("||")
        choices = wrong if wrong and rng.random() < lot.careless else right
        return rng.choice(choices.split("|"))

    return re.sub(r"<([^<>\n]*)>", one, text)


@functools.cache
def _parts(section: str) -> list[tuple[frozenset[str], str]]:
    """Return every way in which a section is written, each with its tags."""
    text = (PARTS / f"{section}.txt").read_text(encoding="utf-8")
    _, *parts = re.split(r"(?m)^==== (.+)\n", text)
    return [
        (frozenset(tags.split()), part) for tags, part in zip(parts[::2], parts[1::2], strict=True)
    ]


def main() -> None:
    parser = argparse.ArgumentParser(description="Write invented specs for measuring.")
    parser.add_argument("folder", type=Path)
    parser.add_argument("count", type=int)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    write(options.folder, options.count, options.seed)


if __name__ == "__main__":
    main()
