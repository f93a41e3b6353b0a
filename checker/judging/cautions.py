"""The safety block: at most three lines for the stage at hand, never filtered away."""

from __future__ import annotations

import functools
from collections.abc import Sequence

from checker.data import data_dir
from checker.judging.review_data import NOT_MET, Caution, Finding
from checker.reading.compose import TextLoader

LINES = 3


def cautions_for(stage: str, findings: Sequence[Finding]) -> tuple[Caution, ...]:
    """Return the lines for a stage, the gravest first; a hazard that was found comes before all."""
    lines = [caution for stages, caution in _cautions() if stage in stages]
    hazard = next((one for one in findings if _is_hazard(one)), None)
    if hazard and not any(line.signal == "DANGER" for line in lines):
        lines.insert(
            0, Caution("DANGER", f"As it stands people can be hurt: {hazard.title}. Stop.")
        )
    return tuple(lines[:LINES])


def _is_hazard(finding: Finding) -> bool:
    return (
        finding.outcome == NOT_MET
        and finding.severity == "critical"
        and finding.protects == "people"
    )


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
