"""Variances: departures that the house approved, for one job and for a time.

Only the house's own file puts one in force. What a paper lists under `variances` is asked for.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from checker.judging.amendments import PEOPLE
from checker.judging.day import read_day
from checker.judging.headed import Headed
from checker.judging.review_data import NOT_MET, Allowance, Finding, Review
from checker.judging.rulebook import Rule
from checker.reading.faults import Fault
from checker.reading.spec import Spec
from checker.reading.vocabulary import nearest, plain_word

IN_FORCE = "in force"
REQUESTED = "requested"

_LIST = "variances"


class Variance(NamedTuple):
    """One variance as the house file holds it; `scope` says what it is for."""

    id: str
    rule: str
    scope: dict[str, str]
    reason: str
    condition: str
    approved_by: str
    issued: str
    expires: str
    at: Fault


def read_variances(read: Headed, faults: list[Fault]) -> tuple[Variance, ...]:
    """Return the variances of a house file; a day that is none, or an id again, is a fault."""
    found: list[Variance] = []
    for number, raw in enumerate(read.content.get(_LIST, ())):
        before = len(faults)
        for key in ("issued", "expires"):
            try:
                read_day(raw[key])
            except ValueError as error:
                faults.append(read.fault(f"{raw['id']}: {error}", _LIST, number, key))
        if raw["id"] in {one.id for one in found}:
            faults.append(read.fault(f"two variances are called '{raw['id']}'", _LIST, number))
        if len(faults) == before:
            at = read.fault("", _LIST, number)
            found.append(
                Variance(
                    raw["id"], raw["rule"], raw["scope"], raw["reason"], raw.get("condition", ""),
                    raw["approved_by"], raw["issued"], raw["expires"], at,
                )
            )  # fmt: skip
    return tuple(found)


def faults_of(
    variances: Sequence[Variance], approvers: Sequence[str], rules: Mapping[str, Rule]
) -> list[Fault]:
    """Return what keeps variances from ever being in force, each at its place."""
    return [
        one.at._replace(message=f"{one.id}: {why}")
        for one in variances
        for why in _wrong(one, approvers, rules)
    ]


def _wrong(one: Variance, approvers: Sequence[str], rules: Mapping[str, Rule]) -> list[str]:
    wrong = []
    if why := _not_to_be_varied(one.rule, rules):
        wrong.append(why)
    if one.approved_by not in approvers:
        known = ", ".join(approvers) or "nobody"
        wrong.append(f"'{one.approved_by}' is not among the approvers: {known}")
    if one.expires < one.issued:
        wrong.append(f"it expires ({one.expires}) before it is issued ({one.issued})")
    if not {"job", "lot"} & set(one.scope):
        wrong.append("its scope names neither a job nor a lot")
    return wrong


def _not_to_be_varied(rule: str, rules: Mapping[str, Rule]) -> str:
    if rule not in rules:
        return f"there is no rule '{rule}'{nearest(rule, list(rules))}"
    if rules[rule].protects == PEOPLE:
        return f"{rule} protects people: no variance covers it"
    return ""


def vary(
    review: Review, spec: Spec, variances: Sequence[Variance], rules: Mapping[str, Rule]
) -> Review:
    """Return a review in which what a variance in force allows is marked, and all are listed.

    A finding that is varied stays what it is, *not met*, and counts no more. Only what is shown
    can be allowed: *not shown* stays open.
    """
    ours = [one for one in variances if _is_for(one, spec)]
    live = [one for one in ours if _state(one, review.day) == IN_FORCE]
    listed = [_allowance(one, _state(one, review.day)) for one in ours]
    return dataclasses.replace(
        review,
        findings=tuple(_varied(finding, live) for finding in review.findings),
        variances=(*listed, *_requests(spec, {one.id for one in ours}, rules)),
    )


def _varied(finding: Finding, live: Sequence[Variance]) -> Finding:
    for one in live:
        item = one.scope.get("item", "")
        fits = not item or plain_word(item) == plain_word(finding.item)
        if finding.rule == one.rule and finding.outcome == NOT_MET and fits:
            return finding if finding.protects == PEOPLE else finding._replace(varied=one.id)
    return finding


def _is_for(one: Variance, spec: Spec) -> bool:
    names = {"job": "job.name", "lot": "job.lot", "assembly": "assembly"}
    return all(
        plain_word(one.scope[key]) == plain_word(spec.text(path))
        for key, path in names.items()
        if key in one.scope
    )


def _state(one: Variance, day: str) -> str:
    if not day:
        return "not in force: no day is known, so name one with --on or job.as_of"
    if day < one.issued:
        return f"not yet in force: issued {one.issued}"
    if day > one.expires:
        return f"expired {one.expires}"
    return IN_FORCE


def _allowance(one: Variance, state: str) -> Allowance:
    return Allowance(
        one.id, one.rule, state, one.approved_by, one.reason, one.condition, one.expires
    )


def _requests(spec: Spec, granted: set[str], rules: Mapping[str, Rule]) -> tuple[Allowance, ...]:
    """Return what the paper itself asks to depart from, with what stands against it."""
    found = []
    for one in spec.lists.get(_LIST, ()):
        if one in granted:
            continue
        rule, by, reason, condition, expires = (
            spec.text(f"{_LIST}.{one}.{key}")
            for key in ("rule", "approved_by", "reason", "condition", "expires")
        )
        against = [
            _not_to_be_varied(rule, rules) if rule else "it names no rule",
            "" if reason else "it gives no reason",
            "" if expires else "it has no last day",
        ]
        state = "; ".join([f"{REQUESTED}, not in force", *filter(None, against)])
        found.append(Allowance(one, rule, state, by, reason, condition, expires))
    return tuple(found)
