"""How long a review takes and how much room, each as a ratio to something anybody can measure.

    python tests/benchmarks/bench.py [PART...] [--files N] [--turns N] [--seed S] [--table]

Parts, all of them where none is named:

    warm     one process: reading and judging a spec, against libyaml composing the same text
    cold     whole processes: a first review, against yamllint
    many     whole processes over the same files, against yamllint and check-jsonschema
    jobs     two processes that share the work, against one
    memory   the most memory for ten times the files, against that for one times
    growth   the time for each file, rule and thing in a list, as there are more of them

The two sides take turns, so that a machine that slows down slows both. Shown are the medians, the
median of the ratios of the pairs and the middle half of those. Nothing is asserted: a ratio is for
comparing two commits on one machine, a few minutes apart. Needs `pip install -e '.[bench]'`. All of
it takes an hour, on a machine that should do nothing else; `--files 200` takes a fifth of that.

The specs are invented on the spot (corpus.py) and thrown away afterwards. What was measured is kept
in the temp folder, so that a slow part need not be measured twice; `--table` puts all that is kept
into the README, and alone it measures nothing.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.benchmarks import corpus, inside, outside, table
from tests.benchmarks.turns import Row

_SAMPLE, _WARM_UP = 100, 20
_FOR_JOBS = 300
_SHARES = (0.1, 0.2, 0.4, 0.8, 1.6)


class Setting(NamedTuple):
    """What a run measures on: how many files, how many turns (0 is the part's own), which files."""

    files: int
    turns: int
    seed: int
    room: Path

    def folder(self, count: int) -> Path:
        """Return a folder with so many specs, written once in a run."""
        folder = self.room / str(count)
        if not folder.exists():
            corpus.write(folder, count, self.seed)
        return folder

    def paths(self, count: int) -> list[Path]:
        """Return the files of such a folder."""
        return sorted(self.folder(count).rglob("*.yaml"))


def _warm(on: Setting) -> Iterator[Row]:
    sample = min(_SAMPLE, on.files)
    files = on.paths(sample + _WARM_UP)
    yield from inside.warm(files[_WARM_UP:], files[:_WARM_UP], on.turns or 100)


def _cold(on: Setting) -> Iterator[Row]:
    yield from outside.cold(on.turns or 20)


def _many(on: Setting) -> Iterator[Row]:
    yield from outside.many(on.folder(on.files), on.files, on.turns or 3)


def _jobs(on: Setting) -> Iterator[Row]:
    count = min(_FOR_JOBS, on.files)
    yield from outside.jobs(on.folder(count), count, on.turns or 7)


def _memory(on: Setting) -> Iterator[Row]:
    few, more = on.files, 10 * on.files
    yield from outside.memory((on.folder(few), few), (on.folder(more), more), on.turns or 1)


def _growth(on: Setting) -> Iterator[Row]:
    counts = [max(2, round(share * on.files)) for share in _SHARES]
    yield from outside.growth_over_files(on.folder(counts[-1]), counts, on.turns or 3)
    yield from inside.growth_over_rules(on.paths(_WARM_UP), on.turns or 7)
    yield from inside.growth_over_items(on.turns or 7)


PARTS: dict[str, Callable[[Setting], Iterator[Row]]] = {
    "warm": _warm,
    "cold": _cold,
    "many": _many,
    "jobs": _jobs,
    "memory": _memory,
    "growth": _growth,
}


def measure(part: str, setting: Setting, options: str) -> None:
    """Measure one part, print what comes out as it comes, and keep it."""
    print(f"\n{part}")
    rows = []
    for row in PARTS[part](setting):
        rows.append(row)
        aim = f"; aim: {row.aim}" if row.aim else ""
        print(f"  {row.what}\n    {row.ours} against {row.beside}")
        print(f"    ratio {table.shown(row.ratio)}{aim}", flush=True)
    table.keep(part, rows, options)


def main() -> None:
    text = __doc__ or ""
    parser = argparse.ArgumentParser(
        description=text, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("parts", nargs="*", metavar="PART", help=", ".join([*PARTS, "or all"]))
    parser.add_argument("--files", type=int, default=1000, help="how many specs, 1000")
    parser.add_argument("--turns", type=int, default=0, help="in place of each part's own")
    parser.add_argument("--seed", type=int, default=1, help="of the invented specs, 1")
    parser.add_argument("--table", action="store_true", help="put what is kept into the README")
    options = parser.parse_args()
    if unknown := set(options.parts) - {*PARTS, "all"}:
        parser.error(f"there is no part {', '.join(sorted(unknown))}")
    every = "all" in options.parts or not (options.parts or options.table)
    changed = {name: getattr(options, name) for name in ("files", "turns", "seed")}
    given = " ".join(
        f"--{name} {value}" for name, value in changed.items() if value != parser.get_default(name)
    )
    with tempfile.TemporaryDirectory(prefix="belowgrade-") as room:
        setting = Setting(**changed, room=Path(room))
        for part in PARTS if every else options.parts:
            measure(part, setting, given)
    if options.table:
        table.write_table(list(PARTS))


if __name__ == "__main__":
    main()
