"""What is measured inside one process: a warm review beside libyaml, and how it grows."""

from __future__ import annotations

import dataclasses
import gc
import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

import yaml

from checker import load_rulebook, load_spec, review
from checker.judging.review_data import Finding, Review
from checker.judging.rulebook import Rulebook
from checker.reading.faults import Unreadable
from checker.reading.reader import read_specs
from checker.reading.spec import Spec
from tests.benchmarks import aims
from tests.benchmarks.turns import Ratio, Row, in_turn, ratio, seconds, told

ROOT = Path(__file__).parents[2]
GOOD = ROOT / "specs" / "good.yaml"


class Once(NamedTuple):
    """How long the steps took for one file, once."""

    compose: float
    read: float
    review: float
    work_out: float


# -- warm ------------------------------------------------------------------------------------------


def warm(files: Sequence[Path], before: Sequence[Path], turns: int) -> Iterator[Row]:
    """Compare with libyaml composing the same text into nodes and doing nothing with it.

    Each of `files` is read for the first time, after those of `before`: what is remembered from
    other files may help, what is remembered from itself may not. The good example is read `turns`
    times.
    """
    rulebook = load_rulebook()
    for file in before:
        _once(file, rulebook, compose_first=False)
    # The rule book is large, and looking through it for garbage would be charged to both sides.
    gc.freeze()
    many = [
        once for turn, file in enumerate(files) if (once := _once(file, rulebook, turn % 2 == 1))
    ]
    yield from _rows(f"{len(many)} specs, each read once", many)
    ours = sum(once.read + once.review for once in many)
    beside = sum(once.compose for once in many)
    yield Row(
        "read and review: all of them added up",
        told([ours]),
        f"{told([beside])}, libyaml composing",
        Ratio(ours / beside),
    )
    good = [once for turn in range(turns + 5) if (once := _once(GOOD, rulebook, turn % 2 == 1))]
    gc.unfreeze()
    yield from _rows("specs/good.yaml, over and over", good[5:])


def _rows(of_what: str, times: Sequence[Once]) -> Iterator[Row]:
    compose = [once.compose for once in times]

    def row(what: str, ours: list[float], aim: str = "") -> Row:
        beside = f"{told(compose)}, libyaml composing"
        return Row(f"{what}: {of_what}", told(ours), beside, ratio(ours, compose), aim)

    yield row("read and review", [once.read + once.review for once in times], aims.WARM)
    yield row("reading alone", [once.read for once in times])
    yield row("review alone", [once.review for once in times])
    every = [once.read + once.review + once.work_out for once in times]
    yield row("read, review and ask for every field of every finding", every)


def _once(file: Path, rulebook: Rulebook, compose_first: bool) -> Once | None:
    """Time one file; one that cannot be read is left out."""
    text = file.read_text(encoding="utf-8")
    specs: list[Spec] = []
    reviews: list[Review] = []

    def compose() -> None:
        for _ in yaml.compose_all(text, Loader=yaml.CSafeLoader):
            pass

    try:
        first = seconds(compose) if compose_first else 0
        read = seconds(lambda: specs.extend(load_spec(file)))
        judge = seconds(lambda: reviews.extend(review(spec, rulebook) for spec in specs))
        work_out = seconds(lambda: _work_out(reviews))
        return Once(first or seconds(compose), read, judge, work_out)
    except (Unreadable, yaml.YAMLError):
        return None


def _work_out(reviews: Iterable[Review]) -> None:
    """Ask for every field of every finding: some may be worked out only when asked for."""
    for one in reviews:
        for finding in one.findings:
            for name in _FIELDS:
                _walk(getattr(finding, name))


# However a Finding comes by its fields, each is declared.
_FIELDS = tuple(Finding.__annotations__)


def _walk(value: object) -> None:
    if isinstance(value, Sequence) and not isinstance(value, str):
        for one in value:
            _walk(one)


# -- growth ----------------------------------------------------------------------------------------


def growth_over_rules(files: Sequence[Path], turns: int) -> Iterator[Row]:
    """Tell the time per rule with a quarter, a half and all of the rules."""
    book = load_rulebook()
    specs = [spec for file in files for spec in _read(file)]
    books = {
        len(some): dataclasses.replace(book, rules=some)
        for some in (book.rules[::4], book.rules[::2], book.rules)
    }

    def task(some: Rulebook) -> Callable[[], object]:
        return lambda: _work_out(review(spec, some) for spec in specs)

    taken = in_turn({str(count): task(some) for count, some in books.items()}, turns)
    each = {count: [one / count / len(specs) for one in taken[str(count)]] for count in books}
    yield curve(f"review by more rules, for each rule ({len(specs)} specs)", "rules", each)


# One thing of a list, with its number and another figure to fill in.
ITEMS = {
    "outlets": (
        "  - {id: o%d, kind: daylight, invert: 89.60, leg_length: %d ft, leg_slope: 1/8 in/ft,\n"
        "     leg_pipe: solid, distance_line: 14 ft, guard: screen, responsible: by others}\n"
    ),
    "fabrics": (
        "  - {id: f%d, kind: nonwoven, position: around_stone, aos: 0.%d mm,\n"
        "     permittivity: 1.3 1/s, top_lap: 12 in}\n"
    ),
}


def growth_over_items(turns: int) -> Iterator[Row]:
    """Tell the time per outlet, and per fabric, of a spec that has many; the first is not counted."""
    book = load_rulebook()

    def task(text: str) -> Callable[[], object]:
        return lambda: _work_out(review(spec, book) for spec in read_specs(text, "many.yaml"))

    for section in ITEMS:
        counts = (10, 100, 500)
        sides = {str(count): task(with_items(section, count)) for count in (1, *counts)}
        taken = in_turn(sides, turns)
        each = {count: without_the_first(taken[str(count)], taken["1"], count) for count in counts}
        yield curve(f"read and review a spec with more {section}, for each", section, each)


def with_items(section: str, count: int) -> str:
    """Return the good example with so many things in one of its lists."""
    items = "".join(ITEMS[section] % (number, 10 + number % 80) for number in range(count))
    text = GOOD.read_text(encoding="utf-8")
    return re.sub(rf"(?m)^{section}:\n(?:  .*\n)+", lambda _: f"{section}:\n{items}", text)


def _read(file: Path) -> list[Spec]:
    try:
        return load_spec(file)
    except Unreadable:
        return []


def without_the_first(taken: Sequence[float], one: Sequence[float], count: int) -> list[float]:
    """Return the time of each thing beyond the first, which brings the start along."""
    return [
        (all_of_them - first) / (count - 1) for all_of_them, first in zip(taken, one, strict=True)
    ]


def curve(what: str, things: str, each: dict[int, list[float]]) -> Row:
    """Return a row that shows the time of each thing for few and for many; flat is linear."""
    few, *between, many = each
    shown = [f"{count}: {told(each[count])}" for count in (*between, many)]
    return Row(
        what,
        ", ".join(shown),
        f"{told(each[few])} with {few} {things}",
        ratio(each[many], each[few]),
        aims.GROWTH,
    )
