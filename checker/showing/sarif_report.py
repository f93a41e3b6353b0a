"""Reviews as SARIF 2.1.0, the form in which editors and code hosts take in findings.

What is not met is a result of kind `fail`, with the level that its severity stands for. What is not
shown is `open`: the standard's word for a rule that could not be decided for want of facts. What a
person must decide is `review`. What is met, or does not apply, is counted and not listed, because
readers that do not know of kinds would show each of them as a fault.
"""

from __future__ import annotations

import json
import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any, NamedTuple
from urllib.parse import quote

from checker.judging.carried import Comparison, fingerprint
from checker.judging.review_data import (
    DOES_NOT_APPLY,
    MET,
    NOT_MET,
    NOT_SHOWN,
    At,
    Finding,
    Review,
)
from checker.judging.rulebook import COMMON_PRACTICE, Rule, Rulebook
from checker.judging.settle import rules_of_its_house
from checker.reading.faults import Fault
from checker.showing.finding_text import named
from checker.showing.forms import End
from checker.showing.lines import clean, joined, sentence
from checker.showing.text import Tally, closing_of, tally

SCHEMA = (
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)
LEVELS = {"critical": "error", "major": "warning", "minor": "note"}
# A later way of working out fingerprints gets a name of its own.
FINGERPRINT = "belowgrade/v1"

_FOR_A_PERSON = "no objection"
_ROOT = "%SRCROOT%"
_STANDARD_INPUT = "standard input"
# YAML breaks lines at all of these.
_LINE_BREAKS = ["\r\n", "\n", "\r", "\x85", "\u2028", "\u2029"]
_EXITS = {
    0: "Nothing stands open at or above the threshold.",
    1: "Something stands open at or above the threshold, or nothing could be judged.",
    2: "Something could not be read.",
}


class Part(NamedTuple):
    """What one review gives to a log, as JSON text wherever no other review has a say in it.

    `results` have the id of their rule before them; `rules` are those of the house, by id.
    """

    results: tuple[tuple[str, str], ...]
    rules: dict[str, str]
    assembly: str
    cautions: tuple[str, ...]
    asked: tuple[str, str]
    tally: Tally


def as_sarif(
    reviews: Iterable[Review],
    rulebook: Rulebook,
    *,
    faults: Sequence[Fault] = (),
    exit_status: int = 0,
    comparison: Comparison | None = None,
    version: str = "",
) -> str:
    """Return reviews as one run of SARIF, in plain ASCII, the same for the same reviews.

    `faults` are what could not be read, `exit_status` what the command ends with, `version` that of
    belowgrade. With a `comparison` every result says whether it is new.
    """
    states = _states(comparison)
    parts = (part(rulebook, review, states) for review in reviews)
    return "".join(in_one(parts, rulebook, lambda: End(faults, exit_status), version))


def part(rulebook: Rulebook, review: Review, states: dict[str, str] | None = None) -> Part:
    """Return what one review gives to a log; `states` say by fingerprint what is new."""
    listed = [finding for finding in review.findings if _kind(finding)]
    of_house = {one.rule for one in listed}.difference(rule.id for rule in rulebook.rules)
    rules = rules_of_its_house(review) if of_house else ()
    return Part(
        results=tuple((one.rule, json.dumps(_result(review, one, states))) for one in listed),
        rules={rule.id: json.dumps(_rule(rule)) for rule in rules},
        assembly=json.dumps(_assembly(review)),
        cautions=tuple(f"{one.signal}: {one.text}" for one in review.cautions),
        asked=(review.by, review.basis),
        tally=tally(review),
    )


def in_one(
    parts: Iterable[Part], rulebook: Rulebook, end: Callable[[], End], version: str
) -> Iterator[str]:
    """Yield the text of `as_sarif` piece by piece; `end` is asked after the last part.

    The results come first, each on a line, so that none has to wait for another file. The rules
    that they name follow, in the order in which they were first named.
    """
    log = json.dumps({"$schema": SCHEMA, "version": "2.1.0"})
    yield f'{log[:-1]}, "runs": [{{\n"results": ['
    gathered = _Gathered(rulebook)
    for one in parts:
        yield gathered.results(one)
    yield "\n],\n"
    yield from gathered.rest(end(), version)
    yield "\n}]}\n"


class _Gathered:
    """What the parts leave behind when their results are written: little, for each of them."""

    def __init__(self, rulebook: Rulebook) -> None:
        self._known = {rule.id: rule for rule in rulebook.rules}
        self._rules: list[str] = []
        # How a result begins, by its rule, which has its number from the first that names it.
        self._begins: dict[str, str] = {}
        self._assemblies: list[str] = []
        self._cautions: dict[str, None] = {}
        self._asked: set[tuple[str, str]] = set()
        self._tallies: list[Tally] = []

    def results(self, part: Part) -> str:
        """Return the results of one part as they stand in the log."""
        self._assemblies.append(part.assembly)
        self._cautions.update(dict.fromkeys(part.cautions))
        self._asked.add(part.asked)
        self._tallies.append(part.tally)
        lines = []
        for rule, result in part.results:
            comma = "," if self._begins else ""
            lines.append(f"{comma}\n{self._begin(rule, part)}{result[1:]}")
        return "".join(lines)

    def _begin(self, rule: str, part: Part) -> str:
        if rule not in self._begins:
            known = self._known.get(rule)
            number = len(self._rules)
            self._rules.append(json.dumps(_rule(known)) if known else part.rules[rule])
            self._begins[rule] = f'{{"ruleId": {json.dumps(rule)}, "ruleIndex": {number}, '
        return self._begins[rule]

    def rest(self, end: End, version: str) -> Iterator[str]:
        """Yield all of the run but its results."""
        driver = {
            "name": "belowgrade",
            **({"version": version, "semanticVersion": version} if version else {}),
            "notifications": [
                {"id": "unreadable", "shortDescription": {"text": "A file could not be read."}}
            ],
        }
        run = {
            "automationDetails": {"id": _automation(self._asked)},
            "columnKind": "unicodeCodePoints",
            "newlineSequences": _LINE_BREAKS,
            "originalUriBaseIds": {
                _ROOT: {"description": {"text": "The folder that the command was started in."}}
            },
            "invocations": [_invocation(end)],
        }
        told = {"closing": closing_of(self._tallies), "cautions": list(self._cautions)}
        yield '"tool": {"driver": '
        yield from _with_list(driver, "rules", self._rules)
        yield f'}},\n{json.dumps(run)[1:-1]},\n"properties": '
        yield from _with_list(told, "assemblies", self._assemblies)


def _with_list(values: dict[str, Any], key: str, texts: Iterable[str]) -> Iterator[str]:
    """Yield values as JSON, and last among them a list of what is JSON already."""
    yield f"{json.dumps(values)[:-1]}, {json.dumps(key)}: ["
    for number, text in enumerate(texts):
        yield f",\n{text}" if number else f"\n{text}"
    yield "\n]}"


# -- results ---------------------------------------------------------------------------------------


def _kind(finding: Finding) -> str:
    """Return the kind of result that a finding is, or nothing where it is none."""
    if finding.outcome == NOT_MET:
        return "fail"
    if finding.outcome == NOT_SHOWN:
        return "open"
    return "review" if finding.because.startswith(_FOR_A_PERSON) else ""


def _result(review: Review, finding: Finding, states: dict[str, str] | None) -> dict[str, Any]:
    """Return a result without its rule, whose number only the log as a whole knows."""
    kind = _kind(finding)
    known = fingerprint(review, finding)
    places = [_location(place.file or review.file, place) for place in finding.places]
    result: dict[str, Any] = {
        "kind": kind,
        "level": LEVELS[finding.severity] if kind == "fail" else "none",
        "message": _message(_text(finding)),
        "locations": places[:1] or [_nowhere(review.file, finding.missing)],
        "partialFingerprints": {FINGERPRINT: known},
        "properties": _details(review, finding),
    }
    if places[1:]:
        result["relatedLocations"] = places[1:]
    if finding.varied:
        result["suppressions"] = [_suppression(review, finding.varied)]
    if states is not None:
        result["baselineState"] = states.get(known, "unchanged")
    return result


def _text(finding: Finding) -> str:
    """Return the message of a result; its first sentence can stand alone."""
    title = named(finding.title, finding.item)
    if finding.outcome == DOES_NOT_APPLY:
        return joined([sentence(title), _as_sentence(finding.because)], " ")
    if finding.outcome == NOT_SHOWN:
        missing = f"Not shown: {', '.join(finding.missing)}." if finding.missing else ""
        texts = [f"Could not be judged: {sentence(title)}", _as_sentence(finding.because), missing]
        return joined([*texts, finding.ask], " ")
    numbers = [
        joined([f"shown {one.shown} ({one.title})", f"needed {one.needed}",
                f"off by {one.off_by}" if one.off_by else ""], ", ")
        for one in finding.compared
        if one.outcome == NOT_MET
    ]  # fmt: skip
    texts = [sentence(title), *map(_as_sentence, numbers), finding.remedy, finding.safety]
    return joined([*texts, f"Asked by {_sources(finding)}."], " ")


def _sources(finding: Finding) -> str:
    """Return who asks for it, each with its standing."""
    cited = [f"{one.title} {one.at} ({one.standing})" for one in finding.sources]
    return joined(cited) or finding.standing or COMMON_PRACTICE


def _as_sentence(text: str) -> str:
    return sentence(text[:1].upper() + text[1:])


def _details(review: Review, finding: Finding) -> dict[str, Any]:
    return _cleaned(
        {
            "assembly": review.assembly,
            "basis": review.basis,
            "item": finding.item,
            "outcome": finding.outcome,
            "severity": finding.severity,
            "stage": finding.stage,
            "trade": finding.trade,
            "protects": finding.protects,
            "standing": finding.standing,
            "stop": finding.stop,
            "amendedBy": [f"{one.by}: {one.reason}" for one in finding.amended],
            "missing": list(finding.missing),
            "assumed": list(finding.assumed),
        }
    )


def _suppression(review: Review, varied: str) -> dict[str, Any]:
    """Return the variance that allows a departure, which somebody approved outside the spec."""
    allowed = next((one for one in review.variances if one.id == varied), None)
    why = f": {allowed.reason} Approved by {allowed.by}" if allowed else ""
    text = clean(f"Variance {varied}{why}")
    return {"kind": "external", "status": "accepted", "justification": sentence(text)}


def _states(comparison: Comparison | None) -> dict[str, str] | None:
    """Return what is new (`new`) or has changed (`updated`), by fingerprint."""
    if comparison is None:
        return None
    return {
        fingerprint(one.review, one.finding): "updated" if one.before else "new"
        for one in comparison.fresh
    }


# -- rules -----------------------------------------------------------------------------------------


def _rule(rule: Rule) -> dict[str, Any]:
    why = joined([rule.rationale, f"Who says otherwise: {rule.differs}" if rule.differs else ""])
    more = f"'belowgrade why {rule.id}' shows what it asks, on whose authority, with examples."
    sources = [source for case in rule.cases for source in case.sources]
    return {
        "id": rule.id,
        "shortDescription": _message(sentence(rule.title)),
        "fullDescription": _message(sentence(rule.rationale)),
        "help": _message(f"{sentence(why)} {more}"),
        "defaultConfiguration": {"level": LEVELS[rule.severity]},
        "properties": {
            "severity": rule.severity,
            "howOften": rule.how_often,
            "stage": rule.stage,
            "trade": rule.trade,
            "protects": rule.protects,
            "sources": sorted({f"{one.name} {one.at}" for one in sources}),
            "sourceKinds": sorted({one.kind for one in sources}) or [COMMON_PRACTICE],
            "tags": sorted({rule.severity, rule.stage, rule.trade}),
        },
    }


# -- places ----------------------------------------------------------------------------------------


def _location(file: str, place: At) -> dict[str, Any]:
    written = f": {place.written}" if place.written else ""
    return {
        "physicalLocation": {"artifactLocation": _artifact(file)}
        | _region(place.line, place.column),
        "logicalLocations": _logical([place.path]),
        "message": _message(f"{place.title}{written}"),
    }


def _nowhere(file: str, missing: Sequence[str]) -> dict[str, Any]:
    """Return the file as a whole, with the names of what stands nowhere in it."""
    location: dict[str, Any] = {"physicalLocation": {"artifactLocation": _artifact(file)}}
    return location | ({"logicalLocations": _logical(missing)} if missing else {})


def _logical(paths: Sequence[str]) -> list[dict[str, str]]:
    return [{"fullyQualifiedName": clean(path), "kind": "value"} for path in paths]


def _region(line: int, column: int) -> dict[str, Any]:
    """Return the place from a column to the end of its line, which is what no end means."""
    return {"region": {"startLine": line, "startColumn": max(column, 1)}} if line else {}


def _artifact(file: str) -> dict[str, Any]:
    if file == _STANDARD_INPUT:
        return {"description": {"text": _STANDARD_INPUT}}
    path = Path(file)
    if path.is_absolute():
        return {"uri": path.as_uri()}
    return {"uri": quote(os.fsencode(path.as_posix())), "uriBaseId": _ROOT}


# -- the run ---------------------------------------------------------------------------------------


def _automation(asked: Iterable[tuple[str, str]]) -> str:
    """Return what tells apart runs that ask different things of the same files."""
    stages = sorted({stage for stage, _ in asked if stage})
    bases = sorted({basis for _, basis in asked if basis != "design"})
    return "/".join(["belowgrade", *stages, *bases]) + "/"


def _invocation(end: End) -> dict[str, Any]:
    return {
        "executionSuccessful": not end.faults,
        "exitCode": end.status,
        "exitCodeDescription": _EXITS[end.status],
        "toolExecutionNotifications": [_notification(fault) for fault in end.faults],
    }


def _notification(fault: Fault) -> dict[str, Any]:
    artifact = {"artifactLocation": _artifact(fault.file)}
    return {
        "descriptor": {"id": "unreadable", "index": 0},
        "level": "error",
        "message": _message(sentence(fault.message)),
        "locations": [{"physicalLocation": artifact | _region(fault.line, fault.column)}],
    }


def _assembly(review: Review) -> dict[str, Any]:
    counts = {
        outcome: len(review.of(outcome)) for outcome in (MET, NOT_MET, NOT_SHOWN, DOES_NOT_APPLY)
    }
    return _cleaned(
        {
            "file": review.file,
            "assembly": review.assembly,
            "basis": review.basis,
            "paper": review.paper,
            "stage": review.stage,
            "digest": review.digest,
            "counts": counts,
        }
    )


def _message(text: str) -> dict[str, str]:
    """Return a text as a message, in which nothing is a link and nothing waits to be filled in."""
    text = clean(text).replace("](", "] (")
    return {"text": text.replace("{", "{{").replace("}", "}}")}


def _cleaned(values: dict[str, Any]) -> dict[str, Any]:
    return {key: _clean(value) for key, value in values.items()}


def _clean(value: Any) -> Any:
    if isinstance(value, list):
        return [_clean(one) for one in value]
    return clean(value) if isinstance(value, str) else value
