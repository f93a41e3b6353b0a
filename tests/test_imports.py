"""A plain review loads nothing that it does not need: each of these libraries costs more time
than the review itself."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
GOOD = ROOT / "specs" / "good.yaml"

# Each library, and what may load it.
LATER = {
    "jinja2": "an output made from a template",
    "jsonschema": "a spec that does not fit the schema, to word its faults",
    "multiprocessing": "a review by several processes",
    "pint": "the tests alone",
    "pydantic": "nothing",
    "rich": "a review on a terminal",
}


def modules_loaded(*arguments: str, exits: set[int]) -> set[str]:
    """The top-level modules that a run of Python loads, from the interpreter's own account."""
    done = subprocess.run(
        [sys.executable, "-X", "importtime", *arguments],
        cwd=ROOT,
        capture_output=True,
        text=True,
        stdin=subprocess.DEVNULL,
        timeout=60,
        check=False,
    )
    assert done.returncode in exits, done.stdout + done.stderr
    account = [line for line in done.stderr.splitlines() if line.startswith("import time:")]
    return {line.rsplit("|", 1)[1].strip().partition(".")[0] for line in account}


def test_piped_review_of_a_sound_spec_loads_none_of_them() -> None:
    loaded = modules_loaded("-m", "checker", "review", str(GOOD), exits={0, 1})
    assert {"checker", "yaml"} <= loaded
    assert loaded & LATER.keys() == set()


def test_listing_the_rules_loads_none_of_them() -> None:
    loaded = modules_loaded("-m", "checker", "rules", exits={0})
    assert loaded & LATER.keys() == set()


@pytest.mark.parametrize("library", ["jsonschema", "pint", "rich"])
def test_a_library_that_is_loaded_would_be_seen(library: str) -> None:
    assert library in modules_loaded("-c", f"import {library}", exits={0})
