"""The rule book as a list, and the page of one rule: what it asks, of what, on whose word."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from itertools import groupby

from checker.deriving.quantity import REGISTRY
from checker.judging.conditions import Combined, Compare, Condition
from checker.judging.rulebook import Case, Rule, Rulebook
from checker.judging.standing import HOUSE_STANDARD, Source
from checker.reading.vocabulary import vocabulary
from checker.showing.finding_text import COMMON_PRACTICE, READ, labelled, stage_words
from checker.showing.lines import (
    BLANK,
    PIPE_WIDTH,
    WIDEST,
    Line,
    counted,
    heading,
    line,
    paragraph,
    sentence,
)

Row = tuple[str, str]
Register = Mapping[tuple[str, str], Source]

_LABEL = 12
_HOW_OFTEN = {"common": "common", "known": "known to happen", "rare": "rare"}
_AT_BEST = "Never counts as met: at best these rules have no objection, and a person decides."
_SEEN = "Only values that somebody measured count, with a name and a date."
_SIDES = {"met": "Meets it", "not met": "Does not meet it", "does not apply": "Is not asked of"}
_BLANK = re.compile(r"\{(\w+)\}")
_VERBS = {
    "at most": "is at most",
    "at least": "is at least",
    "below": "is below",
    "above": "is above",
    "between": "is between",
    "one of": "is one of",
    "none of": "is none of",
    "before": "is before",
    "not before": "is not before",
}


def rules_list(rulebook: Rulebook, *, width: int = PIPE_WIDTH) -> list[Line]:
    """Return every rule by section of the spec: its id, how bad the fault is, and its title."""
    width = min(width, WIDEST)
    hang = max(len(rule.id) for rule in rulebook.rules) + 2
    lines = paragraph(
        f"{counted(len(rulebook.rules), 'rule')}, digest {rulebook.digest}. "
        "'belowgrade why ID' shows one of them.",
        width,
    )
    for section, rules in by_section(rulebook.rules):
        lines += heading(section, width)
        for rule in rules:
            text = f"{rule.severity}: {rule.title}"
            lines += paragraph(text, width, label=rule.id, indent=2, hang=hang)
    return lines


def rule_page(rule: Rule, register: Register, *, width: int = PIPE_WIDTH) -> list[Line]:
    """Return the page of one rule; `register` is what its sources are looked up in."""
    width = min(width, WIDEST)
    lines = [line(rule.id, "faint"), *paragraph(rule.title, width, style="heading"), BLANK]
    for label, text in [*rule_rows(rule), ("editions", _other_editions(rule, register))]:
        lines += labelled(label, text, width, _LABEL)
    for title, texts in examples(rule):
        lines += heading(title, width)
        for text in texts:
            lines += paragraph(text, width, label="-", indent=2, hang=2)
    return lines


def by_section(rules: Sequence[Rule]) -> list[tuple[str, list[Rule]]]:
    """Return rules by the section of the spec that their ids begin with, in order of their ids."""
    ordered = sorted(rules, key=lambda rule: rule.id)
    return [
        (name, list(group)) for name, group in groupby(ordered, lambda one: one.id.split(".")[0])
    ]


def rule_rows(rule: Rule) -> list[Row]:
    """Return what a rule says of itself, as labelled texts."""
    due = f"not before stage {stage_words(rule.due)}" if rule.due else ""
    until = f"not once stage {stage_words(rule.until)} is over" if rule.until else ""
    rows = [
        ("severity", f"{rule.severity}; {_HOW_OFTEN[rule.how_often]}; protects {rule.protects}"),
        ("stage", f"last cheap to put right at {stage_words(rule.stage)}; trade {rule.trade}"),
        ("due", due),
        ("until", until),
        ("asked of", f"every item of {rule.each}" if rule.each else ""),
        ("applies", f"where {condition_words(rule.applies)}" if rule.applies else ""),
        *[("amended", f"by {one.by}: {one.reason}") for one in rule.amended],
        *_cases(rule.cases, "needed"),
        *_cases(rule.unless, "unless"),
        ("seen", _SEEN if rule.seen else ""),
        ("at best", _AT_BEST if rule.at_best else ""),
        ("why", rule.rationale),
        ("differs", rule.differs),
        ("do", _blanks(rule.remedy)),
        ("STOP", _blanks(rule.stop)),
        ("guard", f"The remedy may not break {rule.guard}." if rule.guard else ""),
        ("ask", _blanks(rule.ask)),
        ("safety", rule.safety),
    ]
    return [(label, " ".join(text.split())) for label, text in rows if text]


def examples(rule: Rule) -> Iterable[tuple[str, list[str]]]:
    """Yield "Meets it" and so on with what the rule's own examples are."""
    for key, title in _SIDES.items():
        shown = rule.raw.get("examples", {}).get(key, [])
        if shown or key != "does not apply":
            yield title, [str(example["says"]) for example in shown if "says" in example]


def condition_words(condition: Condition) -> str:
    """Return a condition as a clause, each value by its title and its path."""
    if isinstance(condition, Compare):
        return f"{name_words(condition.value)} {_asked(condition)}"
    parts = [_bracketed(part, len(condition.parts)) for part in condition.parts]
    return (" and " if condition.every else " or ").join(parts)


def name_words(path: str) -> str:
    """Return a value or quantity by its title, with its path in brackets."""
    quantity = REGISTRY.get(path)
    node = vocabulary().nodes.get(path)
    title = quantity.title if quantity else node.title if node else ""
    return f"{title} ({path})" if title and title != path else path


def source_words(source: Source) -> str:
    """Return a source with its edition, its place, how far it was read, and what it says."""
    read = f" ({READ[source.seen]})" if source.seen in READ else ""
    return f"{source.name} {source.at}{read}: {sentence(source.says)}"


def _blanks(text: str) -> str:
    """Return a remedy with the blanks that a finding fills in written as [off by]."""
    return _BLANK.sub(lambda found: f"[{found[1].replace('_', ' ')}]", text)


def _bracketed(part: Condition, siblings: int) -> str:
    words = condition_words(part)
    many = isinstance(part, Combined) and len(part.parts) > 1 and siblings > 1
    return f"({words})" if many else words


def _asked(compare: Compare) -> str:
    if compare.operator == "shown":
        return "is shown" if compare.literal else "is not shown"
    verb = _VERBS.get(compare.operator, compare.operator)
    if compare.lookup is not None:
        return f"{verb} the {compare.lookup.title} for {name_words(compare.lookup.path)}"
    if compare.other:
        return f"{verb} {name_words(compare.other)}"
    text = compare.text.replace("_", " ")
    if compare.twin:
        text = f"{text} ({compare.twin.text} in a metric spec)"
    return f"{verb} {text.replace(', ', ' and ') if compare.operator == 'between' else text}"


def _cases(cases: Sequence[Case], label: str) -> list[Row]:
    rows: list[Row] = []
    for number, case in enumerate(cases):
        where = f"where {condition_words(case.where)}: " if case.where else ""
        otherwise = "otherwise: " if number and not where else ""
        severity = f" This case is {case.severity}." if case.severity else ""
        text = f"{where}{otherwise}{condition_words(case.require)}.{severity}"
        rows.append((label, text))
        said = [source_words(source) for source in case.sources]
        own = HOUSE_STANDARD if case.house else COMMON_PRACTICE
        rows += [("says", text) for text in said or [own]]
        if case.remedy:
            rows.append(("do", _blanks(case.remedy)))
    return rows


def _other_editions(rule: Rule, register: Register) -> str:
    """Return the editions in the register that hold a cited place and are not cited for it."""
    cited = {source.ref: source for case in rule.cases for source in case.sources}
    others: dict[str, list[str]] = {}
    for source in cited.values():
        for other in register.values():
            same = (other.family, other.at) == (source.family, source.at)
            if source.family and same and other.ref not in cited:
                others.setdefault(f"{other.title} {other.at}", []).append(other.edition)
    texts = [f"{title} of {', '.join(sorted(set(found)))}" for title, found in others.items()]
    return f"The register also holds {'; '.join(texts)}." if texts else ""
