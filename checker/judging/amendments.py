"""Changes to rules that others wrote: what a house or the law of a place asks instead, and why.

A rule that protects people can be made stricter, and nothing else.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from typing import Any, NamedTuple

from checker.judging.conditions import Combined, Compare, Condition
from checker.judging.review_data import SEVERITIES, Amended
from checker.judging.rulebook import Case, Rule, RuleReader, list_judged, read_case
from checker.reading.faults import Fault
from checker.reading.vocabulary import nearest

PEOPLE = "people"

_KEYS = (
    "amends", "reason", "severity", "off", "where", "require", "sources", "remedy", "unless",
)  # fmt: skip
_ASKED = ("where", "require", "sources", "remedy")


class Amendment(NamedTuple):
    """A change to one rule. `case` is put before the rule's own, `unless` after its own."""

    rule: str
    reason: str
    severity: str
    off: bool
    case: Case | None
    unless: tuple[Case, ...]
    raw: dict[str, Any]
    file: str
    line: int
    column: int = 1


def read_amendment(
    raw: dict[str, Any], lines: dict[int, int], name: str, faults: list[Fault], *, house: bool
) -> Amendment | None:
    """Return an amendment understood; what is wrong with it becomes faults."""
    rule = str(raw.get("amends"))
    reader = RuleReader(name, lines, faults, f"amends {rule}", lines[id(raw)], house)
    before = len(faults)
    for key in raw:
        if key not in _KEYS:
            reader.fault(f"there is no '{key}' in an amendment{nearest(key, list(_KEYS))}", raw)
    if not str(raw.get("reason", "")).strip():
        reader.fault("'reason' is missing: say why the rule is changed", raw)
    severity = str(raw.get("severity", ""))
    if severity and severity not in SEVERITIES:
        reader.fault(f"severity: '{severity}' is not one of {', '.join(SEVERITIES)}", raw)
    off = _is_off(raw, reader)
    asked = {key: raw[key] for key in _ASKED if key in raw}
    case = read_case(asked, reader) if asked else None
    unless = [read_case(each, reader) for each in raw.get("unless", [])]
    if not (severity or off or asked or unless):
        reader.fault("it changes nothing: say 'severity', 'require', 'unless' or 'off'", raw)
    if len(faults) > before:
        return None
    return Amendment(
        rule, raw["reason"].strip(), severity, off, case,
        tuple(one for one in unless if one), raw, name, lines[id(raw)],
    )  # fmt: skip


def _is_off(raw: dict[str, Any], reader: RuleReader) -> bool:
    off = str(raw.get("off", "no"))
    if off not in ("yes", "no"):
        reader.fault(f"off: '{off}' is neither yes nor no", raw)
    return off == "yes"


def amend(
    rules: Sequence[Rule], amendments: Sequence[Amendment], by: str, faults: list[Fault]
) -> tuple[list[Rule], list[str]]:
    """Return the rules as somebody changed them, and a note for each that was switched off.

    `by` is the name of whoever changed them. An amendment that may not be is a fault.
    """
    changed = {rule.id: rule for rule in rules}
    notes = []
    for one in amendments:
        rule = changed.get(one.rule)
        refused = (
            _refused(one, rule, list(changed.values()))
            if rule
            else f"there is no rule '{one.rule}'{nearest(one.rule, list(changed))}"
        )
        if refused or rule is None:
            faults.append(Fault(one.file, one.line, one.column, refused, one.rule))
        elif one.off:
            del changed[one.rule]
            notes.append(f"{by} does not ask {one.rule} ({rule.title}): {one.reason}")
        else:
            changed[one.rule] = _with(rule, one, by)
    return list(changed.values()), notes


def _with(rule: Rule, one: Amendment, by: str) -> Rule:
    cases = rule.cases
    if one.case:
        case = dataclasses.replace(one.case, severity=one.severity)
        cases = (_also(case, rule), *cases)
    severity = one.severity if one.severity and not one.case else rule.severity
    if severity != rule.severity:
        cases = tuple(dataclasses.replace(case, severity="") for case in cases)
    return dataclasses.replace(
        rule,
        severity=severity,
        cases=cases,
        unless=rule.unless + one.unless,
        amended=(*rule.amended, Amended(by, one.reason)),
    )


def _also(case: Case, rule: Rule) -> Case:
    """Let what the law of the place asks stand beside what the house asks: both must hold."""
    first = rule.cases[0]
    if not rule.amended or first.where is not None:
        return case
    require = Combined(True, (case.require, first.require))
    return dataclasses.replace(case, require=require, sources=case.sources + first.sources)


# -- what may not be changed -----------------------------------------------------------------------


def _refused(one: Amendment, rule: Rule, rules: Sequence[Rule]) -> str:
    """Return why an amendment may not be, or nothing."""
    if rule.protects == PEOPLE and (why := _loosens(one, rule)):
        return f"{rule.id} protects people and {why}"
    if one.off:
        guarded = [other.id for other in rules if other.guard == rule.id]
        if guarded:
            return f"{rule.id} cannot be switched off: it guards the remedy of {', '.join(guarded)}"
    judged = list_judged(tuple(filter(None, (one.case, *one.unless))))
    if judged not in ("", rule.each):
        return f"{rule.id} is asked of {rule.each or 'the whole'}, not of each of {judged}"
    grave = (one.severity or rule.severity) == "critical"
    sources = one.case.sources if one.case else ()
    if grave and sources and not any(source.strong for source in sources):
        return (
            f"{rule.id} is critical and may not rest on a source that was not read: "
            "give a lower severity, or name one that was"
        )
    return ""


def _loosens(one: Amendment, rule: Rule) -> str:
    if one.off:
        return "cannot be switched off"
    if one.unless:
        return "takes no further exception"
    graver = SEVERITIES.index
    if one.severity and graver(one.severity) > graver(rule.severity):
        return f"cannot be made less than {rule.severity}"
    if one.case and not all(_tighter(one.case.require, case.require) for case in rule.cases):
        return (
            "can only be made stricter: compare the same value in the same way, "
            "with a limit no looser than any it has"
        )
    return ""


def _tighter(new: Condition, old: Condition) -> bool:
    """Say whether nothing meets `new` that does not meet `old`."""
    if new == old:
        return True
    if isinstance(old, Combined) and old.every:
        return all(_tighter(new, part) for part in old.parts)
    if isinstance(new, Combined):
        return new.every and any(_tighter(part, old) for part in new.parts)
    if isinstance(old, Combined) or (new.value, new.operator) != (old.value, old.operator):
        return False
    return _no_looser(new, old)


def _no_looser(new: Compare, old: Compare) -> bool:
    """Compare limits; one that differs by the unit a spec is written in must hold in both."""
    ours, theirs = _limits(new), _limits(old)
    if not ours or not theirs:
        return False
    if new.operator in ("at least", "above"):
        return min(ours) >= max(theirs)
    return new.operator in ("at most", "below") and max(ours) <= min(theirs)


def _limits(compare: Compare) -> list[float]:
    limits = [compare.literal, *([compare.twin.value] if compare.twin else [])]
    return limits if all(isinstance(one, int | float) for one in limits) else []
