"""How long a review takes, as two ratios to something that everybody can measure.

    python tests/benchmarks/bench.py [SPEC] [--rounds N] [--runs N]

1. Warm, in one process: reading, deriving and judging a spec, against libyaml composing the same
   text into nodes and doing nothing with it. The rule book is loaded once, outside the clock.
2. Cold, whole processes: `belowgrade review SPEC` into a pipe, against `yamllint SPEC`.

The two sides of each pair take turns, so that a machine that slows down slows both. Printed are
the medians, the median of the pairs' ratios and the middle half of those ratios. Nothing is
asserted: a ratio is for comparing two commits on one machine, a few minutes apart.
"""

from __future__ import annotations

import argparse
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import yaml

from checker import load_rulebook, load_spec, review

ROOT = Path(__file__).parents[2]
SCRIPTS = Path(sys.executable).parent

Task = Callable[[], object]


def seconds(task: Task) -> float:
    start = time.perf_counter()
    task()
    return time.perf_counter() - start


def compare(name: str, ours: Task, theirs: Task, times: int) -> None:
    """Run both in turn, `times` times, and print what came out."""
    for warm_up in (ours, theirs, ours, theirs):
        warm_up()
    pairs = [(seconds(ours), seconds(theirs)) for _ in range(times)]
    ratios = [mine / yours for mine, yours in pairs]
    low, middle, high = statistics.quantiles(ratios, n=4)
    mine, yours = (1000 * statistics.median(side) for side in zip(*pairs, strict=True))
    print(f"{name}, {times} pairs")
    print(f"  {mine:.2f} ms against {yours:.2f} ms")
    print(f"  ratio {middle:.2f} (middle half {low:.2f} to {high:.2f})")


def warm(spec: Path, rounds: int) -> None:
    rulebook = load_rulebook()
    text = spec.read_text(encoding="utf-8")

    def ours() -> None:
        for assembly in load_spec(spec):
            review(assembly, rulebook)

    def theirs() -> None:
        for _ in yaml.compose_all(text, Loader=yaml.CSafeLoader):
            pass

    compare("Warm: review against compose", ours, theirs, rounds)


def cold(spec: Path, runs: int) -> None:
    def process(*command: str | Path) -> Task:
        def task() -> None:
            done = subprocess.run(
                [str(part) for part in command],
                stdin=subprocess.DEVNULL,
                capture_output=True,
                check=False,
            )
            # Both answer 1 when they found something; anything higher is a run that failed.
            if done.returncode > 1:
                raise SystemExit(done.stderr.decode())

        return task

    ours = process(SCRIPTS / "belowgrade", "review", spec)
    theirs = process(SCRIPTS / "yamllint", spec)
    compare("Cold: belowgrade review against yamllint", ours, theirs, runs)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("spec", nargs="?", type=Path, default=ROOT / "specs" / "good.yaml")
    parser.add_argument("--rounds", type=int, default=300, help="warm pairs")
    parser.add_argument("--runs", type=int, default=30, help="cold pairs")
    options = parser.parse_args()
    lines = len(options.spec.read_text(encoding="utf-8").splitlines())
    print(f"{options.spec.name}, {lines} lines; Python {sys.version.split()[0]}")
    warm(options.spec, options.rounds)
    cold(options.spec, options.runs)


if __name__ == "__main__":
    main()
