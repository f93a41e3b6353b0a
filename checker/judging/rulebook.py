"""Rule books: read, understood, and refused with a place when something in them is wrong."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from pathlib import Path
from typing import Any, NamedTuple

import checker.deriving.quantities  # noqa: F401  (registers every quantity)
from checker.data import data_dir
from checker.judging.conditions import (
    Combined,
    Condition,
    compile_all,
    compile_condition,
)
from checker.judging.literals import RuleError
from checker.judging.review_data import FREQUENCIES, SEVERITIES, STAGES, Amended, Book
from checker.judging.rule_files import Entries, entries, without_lines
from checker.judging.skimmed import Test, skimmed
from checker.judging.standing import HOUSE_STANDARD, Source, register
from checker.reading.faults import Fault, Unreadable
from checker.reading.kept import kept
from checker.reading.vocabulary import nearest

COMMON_PRACTICE = "common practice"
BUILT_IN = "belowgrade"
TRADES = (
    "excavation", "concrete", "coating", "drain", "plumbing", "framing", "grading", "gutters",
    "engineer", "superintendent",
)  # fmt: skip
PROTECTS = ("people", "building", "record")
_REQUIRED = (
    "id",
    "title",
    "severity",
    "how_often",
    "stage",
    "trade",
    "protects",
    "rationale",
    "remedy",
    "examples",
)
_OPTIONAL = (
    "due", "until", "guard", "walk", "at_best", "seen", "applies", "cases", "require", "sources",
    "unless", "differs", "stop", "ask", "safety", "formerly",
)  # fmt: skip
_CASE_KEYS = ("where", "require", "sources", "severity", "remedy")


@dataclass(frozen=True, slots=True)
class Case:
    """What is asked where some condition holds, and on whose authority.

    `house` says that the house asks for it of its own accord. `governs` and `holds` answer `where`
    and `require` with yes, no or not known.
    """

    where: Combined | None
    require: Condition
    sources: tuple[Source, ...]
    severity: str
    remedy: str
    house: bool = False
    governs: Test = field(init=False, repr=False, compare=False)
    holds: Test = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "governs", skimmed(self.where))
        object.__setattr__(self, "holds", skimmed(self.require))

    def __reduce__(self) -> tuple[Any, ...]:
        return _made_again(self)


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule, ready to be asked.

    `each` is the list whose items it judges, or nothing; `amended` says who changed it and why.
    `concerns` answers `applies` with yes, no or not known.
    """

    id: str
    title: str
    severity: str
    how_often: str
    stage: str
    due: str
    until: str
    trade: str
    protects: str
    guard: str
    walk: str
    at_best: str
    seen: bool
    applies: Combined | None
    cases: tuple[Case, ...]
    unless: tuple[Case, ...]
    rationale: str
    differs: str
    remedy: str
    stop: str
    ask: str
    safety: str
    each: str
    file: str
    line: int
    raw: dict[str, Any]
    amended: tuple[Amended, ...] = ()
    concerns: Test = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "concerns", skimmed(self.applies))

    def __hash__(self) -> int:
        return hash(self.id)

    def __reduce__(self) -> tuple[Any, ...]:
        return _made_again(self)


def _made_again(one: Case | Rule) -> tuple[Any, ...]:
    """Say how to make it in another process, which cannot be handed what conditions became."""
    return type(one), tuple(getattr(one, each.name) for each in fields(one) if each.init)


@dataclass(frozen=True, slots=True)
class Rulebook:
    """Every rule that a review asks, in a settled order, with a digest of what was read.

    `books` are the books it was put together from, `law` the places and families of codes whose
    texts are law under it, `notes` what a reviewer must know of it.
    """

    rules: tuple[Rule, ...]
    digest: str
    books: tuple[Book, ...] = ()
    law: frozenset[str] = frozenset()
    notes: tuple[str, ...] = ()

    def rule(self, rule_id: str) -> Rule | None:
        """Return a rule by its id."""
        return next((rule for rule in self.rules if rule.id == rule_id), None)


def load_rulebook(*paths: Path | str) -> Rulebook:
    """Read rule files or folders of them; with none given, the rules that come with belowgrade.

    Raises Unreadable with every fault of every file, and FileNotFoundError when there is no rule.
    """
    files: list[Path] = []
    for path in [Path(each) for each in paths] or [data_dir("rules")]:
        files += sorted(path.glob("*.yaml")) if path.is_dir() else [path]
    faults: list[Fault] = []
    if not paths:
        rules, digest = _compiled(kept(files, lambda: without_lines(entries(files, []))), faults)
    if paths or faults:
        # Read again: what is kept knows the line of a rule, but not the lines inside it.
        faults = []
        rules, digest = _compiled(entries(files, faults), faults)
    if faults:
        raise Unreadable(faults)
    if not rules:
        raise FileNotFoundError(
            f"no rule was found in {', '.join(map(str, files)) or 'the rule book'}"
        )
    ordered = tuple(sorted(rules, key=lambda rule: rule.id))
    return Rulebook(ordered, digest, (Book(BUILT_IN, digest),))


def _compiled(read: Entries, faults: list[Fault]) -> tuple[list[Rule], str]:
    rules = [
        rule
        for file, raw, line, lines in read["rules"]
        if (rule := read_rule(raw, lines or {id(raw): line}, file, faults)) is not None
    ]
    faults += across(rules)
    return rules, read["digest"]


class RuleReader(NamedTuple):
    """Collects the faults of one rule, each at the line of the mapping it stands in.

    `house` says that it stands in the book of a house, which may cite its own standard.
    """

    name: str
    lines: dict[int, int]
    faults: list[Fault]
    rule: str
    first: int
    house: bool = False

    def fault(self, message: str, near: Any = None) -> None:
        """Add a fault at the line of a mapping, else at that of the rule."""
        line = self.lines.get(id(near), self.first)
        self.faults.append(Fault(self.name, line, 1, f"{self.rule}: {message}", self.rule))


def read_rule(
    raw: dict[str, Any], lines: dict[int, int], name: str, faults: list[Fault], house: bool = False
) -> Rule | None:
    """Return a rule understood; what is wrong with it becomes faults, and there is no rule."""
    rule_id = str(raw.get("id", "a rule without an id"))
    reader = RuleReader(name, lines, faults, rule_id, lines[id(raw)], house)
    before = len(faults)
    _check_shape(raw, reader)
    if len(faults) > before:
        return None
    _check_keys(raw, reader)
    applies = _conditions(raw["applies"], reader) if "applies" in raw else None
    stated = raw.get("cases", [raw] if "require" in raw else [])
    cases = [read_case(each, reader) for each in stated]
    unless = [read_case(each, reader) for each in raw.get("unless", [])]
    if len(faults) > before:
        return None
    built = tuple(case for case in cases if case is not None)
    return Rule(
        id=rule_id, title=raw["title"], severity=raw["severity"], how_often=raw["how_often"],
        stage=raw["stage"].replace(" ", "_"), due=raw.get("due", "").replace(" ", "_"),
        until=raw.get("until", "").replace(" ", "_"),
        trade=raw["trade"], protects=raw["protects"], guard=raw.get("guard", ""),
        walk=raw.get("walk", ""), at_best=raw.get("at_best", ""), seen=raw.get("seen") == "yes",
        applies=applies, cases=built, unless=tuple(case for case in unless if case is not None),
        rationale=raw["rationale"].strip(), differs=raw.get("differs", "").strip(),
        remedy=raw["remedy"].strip(), stop=raw.get("stop", "").strip(),
        ask=raw.get("ask", "").strip(), safety=raw.get("safety", "").strip(),
        each=list_judged(built, applies), file=name, line=lines[id(raw)], raw=raw,
    )  # fmt: skip


_GROUPS = ("applies", "cases", "examples", "require", "sources", "unless", "where")


def _check_shape(raw: dict[str, Any], reader: RuleReader) -> None:
    """Refuse what stands where it cannot be understood at all: a list in place of a text."""
    for key, value in raw.items():
        if key not in _GROUPS and not isinstance(value, str):
            reader.fault(f"{key}: one text belongs here", raw)
    for key in ("cases", "unless"):
        for each in raw[key] if isinstance(raw.get(key), list) else ():
            if isinstance(each, dict):
                _check_shape(each, reader)
        if not isinstance(raw.get(key, []), list):
            reader.fault(f"{key}: a list belongs here", raw)
    sources = raw.get("sources")
    for cited in sources if isinstance(sources, list) else ():
        texts = list(cited.values()) if isinstance(cited, dict) else [cited]
        if not all(isinstance(text, str) for text in texts):
            reader.fault("sources: each is written {ref: ..., at: ...}", cited)


def _check_keys(raw: dict[str, Any], reader: RuleReader) -> None:
    for key in raw:
        if key not in _REQUIRED and key not in _OPTIONAL:
            reader.fault(
                f"there is no '{key}' in a rule{nearest(key, [*_REQUIRED, *_OPTIONAL])}", raw
            )
    for key in _REQUIRED:
        if key not in raw:
            reader.fault(f"'{key}' is missing", raw)
    allowed = {
        "severity": SEVERITIES, "how_often": FREQUENCIES, "stage": STAGES, "due": STAGES,
        "until": STAGES,
        "trade": TRADES, "protects": PROTECTS, "at_best": ("for_person",), "seen": ("yes", "no"),
    }  # fmt: skip
    for key, known in allowed.items():
        if key in raw and str(raw[key]).replace(" ", "_") not in known:
            reader.fault(f"{key}: '{raw[key]}' is not one of {', '.join(known)}", raw)
    if ("cases" in raw) == ("require" in raw):
        reader.fault("a rule has either 'require' with 'sources', or 'cases'", raw)
    examples = raw.get("examples")
    if not isinstance(examples, dict) or not all(examples.get(side) for side in ("met", "not met")):
        reader.fault("a rule has at least one example that is 'met' and one 'not met'", raw)


def _conditions(raw: Any, reader: RuleReader) -> Combined | None:
    try:
        return compile_all(raw)
    except RuleError as error:
        reader.fault(str(error), raw[0] if isinstance(raw, list) and raw else raw)
        return None


def read_case(raw: Any, reader: RuleReader) -> Case | None:
    """Return a case understood; what is wrong with it becomes faults."""
    if not isinstance(raw, dict) or "require" not in raw:
        reader.fault("a case has 'require' and 'sources'", raw)
        return None
    for key in raw:
        if "id" not in raw and key not in _CASE_KEYS:
            reader.fault(f"there is no '{key}' in a case{nearest(key, list(_CASE_KEYS))}", raw)
    where = _conditions(raw["where"], reader) if "where" in raw else None
    try:
        require = compile_condition(raw["require"])
    except RuleError as error:
        reader.fault(str(error), raw["require"])
        return None
    severity = "" if "id" in raw else raw.get("severity", "")
    if severity and severity not in SEVERITIES:
        reader.fault(f"severity: '{severity}' is not one of {', '.join(SEVERITIES)}", raw)
    return Case(
        where,
        require,
        _sources(raw, reader),
        severity,
        "" if "id" in raw else raw.get("remedy", ""),
        raw.get("sources") == HOUSE_STANDARD,
    )


def _sources(raw: dict[str, Any], reader: RuleReader) -> tuple[Source, ...]:
    given = raw.get("sources")
    if given == COMMON_PRACTICE or (given == HOUSE_STANDARD and reader.house):
        return ()
    if not isinstance(given, list) or not given:
        reader.fault("'sources' is missing: name them, or say 'common practice'", raw)
        return ()
    found = []
    for cited in given:
        ref, at = (
            (cited.get("ref", ""), cited.get("at", ""))
            if isinstance(cited, dict)
            else (str(cited), "")
        )
        source = register().get((ref, at))
        if source is None:
            known = [f"{r} at {a}" for r, a in register()]
            reader.fault(
                f"the register has no source '{ref} at {at}'{nearest(f'{ref} at {at}', known)}",
                cited,
            )
        else:
            found.append(source)
    return tuple(found)


def list_judged(cases: tuple[Case, ...], applies: Combined | None = None) -> str:
    """Return the list whose items a rule judges, from the first path that has an `each`."""
    for path in _paths(cases, applies):
        if ".each" in path:
            return path.partition(".each")[0]
    return ""


def _paths(cases: tuple[Case, ...], applies: Combined | None) -> list[str]:
    found: list[str] = []

    def gather(condition: Condition | None) -> None:
        if isinstance(condition, Combined):
            for part in condition.parts:
                gather(part)
        elif condition is not None:
            found.extend(path for path in (condition.value, condition.other) if path)

    for case in cases:
        gather(case.require)
        gather(case.where)
    gather(applies)
    return found


def across(rules: list[Rule]) -> list[Fault]:
    """Check what shows only across rules: ids used twice, guards that are none, weak sources."""
    faults = []
    ids: dict[str, Rule] = {}
    for rule in rules:
        if rule.id in ids:
            faults.append(
                Fault(rule.file, rule.line, 1, f"two rules are called '{rule.id}'", rule.id)
            )
        ids[rule.id] = rule
    for rule in rules:
        if rule.guard and rule.guard not in ids:
            message = (
                f"{rule.id}: its guard '{rule.guard}' is no rule{nearest(rule.guard, list(ids))}"
            )
            faults.append(Fault(rule.file, rule.line, 1, message, rule.id))
        for case in rule.cases:
            severity = case.severity or rule.severity
            if severity == "critical" and case.sources and not any(s.strong for s in case.sources):
                first = case.sources[0]
                message = (
                    f"{rule.id}: a critical rule may not rest on {first.ref} at {first.at} "
                    f"({first.seen}) alone: name a source that was read, or say 'common practice'"
                )
                faults.append(Fault(rule.file, rule.line, 1, message, rule.id))
    return faults
