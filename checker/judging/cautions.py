"""The safety block: at most three lines for the stage at hand, never filtered away."""

from __future__ import annotations

import functools

from checker.data import data_dir
from checker.judging.review_data import Caution
from checker.reading.compose import TextLoader

LINES = 3


def cautions_for(stage: str) -> tuple[Caution, ...]:
    """Return the lines for a stage, the gravest first."""
    return tuple(caution for stages, caution in _cautions() if stage in stages)[:LINES]


@functools.cache
def _cautions() -> tuple[tuple[frozenset[str], Caution], ...]:
    import yaml

    text = (data_dir("shared") / "cautions.yaml").read_text(encoding="utf-8")
    order = ("DANGER", "WARNING", "CAUTION", "NOTICE")
    entries = sorted(yaml.load(text, TextLoader), key=lambda entry: order.index(entry["signal"]))
    return tuple(
        (frozenset(entry["stages"]), Caution(entry["signal"], entry["text"].strip()))
        for entry in entries
    )
