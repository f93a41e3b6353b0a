"""What was checked and is good, by part of the house, with what is good by a hair named."""

from __future__ import annotations

import re
from collections.abc import Sequence

from checker.judging.review_data import Compared, Finding
from checker.showing.finding_text import labelled
from checker.showing.lines import Line, heading

_LABEL = 14
_NOTHING = re.compile(r"0(\.0+)?( [^\d]|$)")


def good_lines(met: Sequence[Finding], width: int) -> list[Line]:
    """Return the findings that are met, each by the fault that was looked for and not found."""
    if not met:
        return []
    sections: dict[str, dict[str, list[str]]] = {}
    for one in met:
        section, _, fault = one.rule.partition(".")
        sections.setdefault(section, {}).setdefault(fault, []).append(one.item)
    rows = [(section, _faults(faults)) for section, faults in sorted(sections.items())]
    close = [one for one in met if one.tight]
    rows += [("tight", _margin(one)) for one in close if not at_the_limit(one)]
    rows += [
        ("at the limit", ", ".join(_figure(one) for one in close if at_the_limit(one))),
        ("by exception", ", ".join(_name(one) for one in met if one.by_exception)),
    ]
    lines = heading(f"Checked and good: {len(met)} (faults looked for and not found)", width)
    return lines + [row for label, text in rows for row in labelled(label, text, width, _LABEL)]


def _faults(faults: dict[str, list[str]]) -> str:
    return ", ".join(_with_items(fault, items) for fault, items in faults.items())


def _with_items(fault: str, items: Sequence[str]) -> str:
    listed = [item for item in items if item]
    return f"{fault} ({', '.join(listed)})" if listed else fault


def _name(finding: Finding) -> str:
    return f"{finding.rule} {finding.item}".rstrip()


def _closest(finding: Finding) -> Compared | None:
    """Return the comparison whose margin is told: the first that has one."""
    return next((one for one in finding.compared if one.room), None)


def at_the_limit(finding: Finding) -> bool:
    """Say whether nothing at all is left to the limit of a finding that is met."""
    closest = _closest(finding)
    return closest is not None and bool(_NOTHING.match(closest.room))


def _margin(finding: Finding) -> str:
    closest = _closest(finding)
    if closest is None:
        return f"{_name(finding)}: by less than its readings can be trusted to"
    figures = f"{closest.title} {closest.shown}, needed {closest.needed}"
    return f"{_name(finding)}: {closest.room} left; {figures}"


def _figure(finding: Finding) -> str:
    closest = _closest(finding)
    return f"{_name(finding)} ({closest.shown})" if closest else _name(finding)
