"""What was measured: kept in the temp folder, part by part, and put into the README as a table."""

from __future__ import annotations

import json
import os
import platform
import re
import tempfile
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from tests.benchmarks.turns import Ratio, Row

ROOT = Path(__file__).parents[2]
KEPT = Path(tempfile.gettempdir()) / "belowgrade-benchmark.json"
COMMAND = "python tests/benchmarks/bench.py"
_PLACE = re.compile(r"(?s)(<!-- measured -->\n).*?(<!-- end of measured -->)")
_HEAD = ("| what | ours | beside | ratio (middle half) | aim |", "|---|---|---|---|---|")


def shown(ratio: Ratio) -> str:
    """Return a ratio with its middle half, where it has one."""
    if ratio.low is None or ratio.high is None:
        return _number(ratio.middle)
    return f"{_number(ratio.middle)} ({_number(ratio.low)} to {_number(ratio.high)})"


def _number(value: float) -> str:
    return f"{value:.1f}" if value >= 10 else f"{value:.2f}"


def keep(part: str, rows: Sequence[Row], options: str) -> None:
    """Keep what one part came to, in place of what it came to before."""
    kept = {**_kept(), part: {"options": options, "rows": rows}}
    KEPT.write_text(json.dumps(kept, indent=1), encoding="utf-8")


def write_table(parts: Sequence[str]) -> None:
    """Put what is kept into README.md; a part that was never measured is named and left out."""
    kept = _kept()
    for part in parts:
        if part not in kept:
            print(f"{part} was never measured here, and is not in the table")
    measured = [kept[part] for part in parts if part in kept]
    rows = [_cells(row) for one in measured for row in map(_row, one["rows"]) if row.aim]
    page = ROOT / "README.md"
    text = "\n".join([*_HEAD, *rows, "", _made_by(measured), ""])
    before = page.read_text(encoding="utf-8")
    after, places = _PLACE.subn(lambda found: found[1] + text + found[2], before)
    if places != 1:
        raise SystemExit("README.md has no place for the table: <!-- measured -->")
    page.write_text(after, encoding="utf-8")


def _kept() -> dict[str, Any]:
    """Return the rows of each part, and the options it was measured with."""
    kept: dict[str, Any] = json.loads(KEPT.read_text(encoding="utf-8")) if KEPT.is_file() else {}
    return kept


def _row(cells: list[Any]) -> Row:
    what, ours, beside, ratio, aim = cells
    return Row(what, ours, beside, Ratio(*ratio), aim)


def _cells(row: Row) -> str:
    return f"| {row.what} | {row.ours} | {row.beside} | {shown(row.ratio)} | {row.aim} |"


def _made_by(measured: Sequence[dict[str, Any]]) -> str:
    options = sorted({one["options"] for one in measured})
    commands = " and ".join(f"`{' '.join(filter(None, (COMMAND, one)))}`" for one in options)
    return (
        f"Measured by {commands} on {os.cpu_count()} cores with Python"
        f" {platform.python_version()} ({platform.system()})."
    )
