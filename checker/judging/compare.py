"""A submittal set against a standard, field by field: same, stricter, looser, different.

What is stricter follows from the rules: a rule that asks for *at least* makes more of its value
stricter, and more of whatever that value rises with. Nothing about any one key is written here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from checker.deriving.engine import Deriver
from checker.deriving.quantity import REGISTRY
from checker.judging.conditions import Combined, Compare, Condition
from checker.judging.rulebook import Rule, Rulebook
from checker.reading.notations import NotationError, read_quantity
from checker.reading.spec import NOT_APPLICABLE, Shown, Spec, Value
from checker.reading.vocabulary import Leaf, plain_word, vocabulary
from checker.values import Choice, Range, ends

SAME = "same"
STRICTER = "stricter"
LOOSER = "looser"
DIFFERENT = "different"
NOT_SHOWN = "not shown"
VERDICTS = (LOOSER, DIFFERENT, NOT_SHOWN, STRICTER, SAME)

# What a paper says of itself, of one house, and of what happened there.
_NOT_COMPARED = (
    "vocabulary", "paper", "id", "assembly", "based_on", "starts_from", "job", "fits", "record",
    "measured", "holds", "deviations", "variances", "site", "documents", "levels",
)  # fmt: skip
_RISING = ("at least", "above")
_FALLING = ("at most", "below")


class Field(NamedTuple):
    """One value of the standard beside what is submitted.

    `rules` are those that stand nearest to it, `declared` the deviation that names the difference;
    line, column and file are of the submitted value, 0 where there is none.
    """

    path: str
    title: str
    standard: str
    submitted: str
    verdict: str
    rules: tuple[str, ...]
    declared: str
    file: str
    line: int
    column: int

    @property
    def open(self) -> bool:
        """Say whether it is a difference for the worse, or unjudged, that nobody declared."""
        return self.verdict in (LOOSER, DIFFERENT) and not self.declared


class Compared(NamedTuple):
    """A submittal beside a standard: undeclared differences first, then by verdict.

    `extra` counts what only the submittal shows, `idle` names deviations that fit no difference.
    """

    standard: str
    submittal: str
    fields: tuple[Field, ...]
    extra: int
    idle: tuple[str, ...]

    @property
    def open(self) -> bool:
        """Say whether something is looser or different and not declared."""
        return any(field.open for field in self.fields)


class Touch(NamedTuple):
    """How a rule bears on a key: from how far, and whether more of it is stricter (1) or not."""

    distance: int
    rule: str
    sign: int


def compare(standard: Spec, submittal: Spec, rulebook: Rulebook) -> Compared:
    """Compare every choice that a standard makes with what is submitted."""
    side = _Side(standard, submittal, rulebook)
    fields = [side.field(shown) for shown in standard.values.values() if _is_compared(shown)]
    used = {field.declared for field in fields}
    return Compared(
        standard.name,
        submittal.name,
        tuple(sorted(fields, key=lambda one: (not one.open, VERDICTS.index(one.verdict)))),
        sum(
            _is_compared(shown) and side.theirs(shown.path) not in standard.values
            for shown in submittal.values.values()
        ),
        tuple(one for one in submittal.lists.get("deviations", ()) if one not in used),
    )


def _is_compared(shown: Shown) -> bool:
    leaf = vocabulary().leaf(shown.pattern)
    choice = leaf is not None and leaf.nature == "choice" and not shown.pattern.endswith(".id")
    return choice and shown.value is not None and shown.path.split(".")[0] not in _NOT_COMPARED


class _Side:
    """The two papers, and which rules bear on which key."""

    def __init__(self, standard: Spec, submittal: Spec, rulebook: Rulebook) -> None:
        self._standard = Deriver(standard)
        self._submittal = Deriver(submittal)
        self._parts: dict[str, list[tuple[str, Compare]]] = {}
        self._touches: dict[str, list[Touch]] = {}
        for rule in rulebook.rules:
            for part in _asked(rule, self._submittal):
                self._parts.setdefault(part.value, []).append((rule.id, part))
                for path, touch in _touched(rule.id, part):
                    self._touches.setdefault(path, []).append(touch)

    def field(self, ours: Shown) -> Field:
        """Return one field compared."""
        path = self._path_of(ours)
        theirs = self._submittal.spec.values.get(path)
        word = _word_over(path, self._submittal.spec) if theirs is None else theirs.word
        verdict = self._verdict(ours, theirs, word)
        named = theirs or ours
        leaf = vocabulary().leaf(ours.pattern)
        rules = self._near(ours.pattern)
        return Field(
            path, leaf.title if leaf else path, ours.written,
            theirs.written if theirs and not word else word or NOT_SHOWN, verdict, rules,
            _declared(path, ours, theirs, rules, self._submittal.spec) if verdict != SAME else "",
            (theirs.file or self._submittal.spec.file) if theirs else "",
            named.line if theirs else 0, named.column if theirs else 0,
        )  # fmt: skip

    def theirs(self, path: str) -> str:
        """Return the path in the standard of a path in the submittal."""
        return _mapped(path, self._submittal.spec, self._standard.spec)

    def _path_of(self, ours: Shown) -> str:
        return _mapped(ours.path, self._standard.spec, self._submittal.spec)

    def _near(self, pattern: str) -> tuple[str, ...]:
        """Return the rules that stand nearest to a key."""
        touches = self._touches.get(pattern, [])
        direct = [rule for rule, _ in self._parts.get(pattern, [])]
        least = min((one.distance for one in touches), default=0)
        near = [one.rule for one in touches if one.distance == least]
        return tuple(dict.fromkeys([*direct, *near]))

    def _verdict(self, ours: Shown, theirs: Shown | None, word: str) -> str:
        if word == NOT_APPLICABLE:
            return DIFFERENT
        if theirs is None or word or theirs.value is None:
            return NOT_SHOWN
        if _within(theirs.value, ours.value):
            return SAME
        return self._by_outcome(ours, theirs) or self._by_direction(ours, theirs)

    def _by_outcome(self, ours: Shown, theirs: Shown) -> str:
        """Say what the rules that compare the key itself make of both."""
        said = set()
        for _, part in self._parts.get(ours.pattern, []):
            before, after = (
                part.answer(deriver, _item(shown), asking=True).outcome
                for deriver, shown in ((self._standard, ours), (self._submittal, theirs))
            )
            if before is not after and None not in (before, after):
                said.add(STRICTER if after else LOOSER)
        return said.pop() if len(said) == 1 else ""

    def _by_direction(self, ours: Shown, theirs: Shown) -> str:
        """Say which way a number has gone. The nearest rules decide, if they agree."""
        a, b = ours.value, theirs.value
        touches = self._touches.get(ours.pattern, [])
        least = min((one.distance for one in touches), default=0)
        signs = {one.sign for one in touches if one.distance == least}
        if len(signs) != 1 or not _is_number(a) or not _is_number(b):
            return DIFFERENT
        wanted, given = ends(a), ends(b)  # type: ignore[arg-type]
        sign = signs.pop()
        worse = given.low < wanted.low if sign > 0 else given.high > wanted.high
        return LOOSER if worse else STRICTER


# -- what bears on what ----------------------------------------------------------------------------


def _asked(rule: Rule, deriver: Deriver) -> Iterator[Compare]:
    """Yield the comparisons of the cases that may govern the submittal."""
    if rule.applies and rule.applies.answer(deriver, "", asking=False).outcome is False:
        return
    for case in rule.cases:
        where = case.where.answer(deriver, "", asking=False).outcome if case.where else True
        if where is not False:
            yield from _compares(case.require)
        if where:
            return


def _compares(condition: Condition) -> Iterator[Compare]:
    if isinstance(condition, Combined):
        for part in condition.parts:
            yield from _compares(part)
    else:
        yield condition


def _touched(rule: str, part: Compare) -> Iterator[tuple[str, Touch]]:
    if part.operator not in (*_RISING, *_FALLING):
        return
    sign = 1 if part.operator in _RISING else -1
    for path, distance, turned in _leaves(part.value, 0, sign):
        yield path, Touch(distance, rule, turned)
    if part.other:
        for path, distance, turned in _leaves(part.other, 1, -sign):
            yield path, Touch(distance, rule, turned)


def _leaves(path: str, distance: int, sign: int) -> Iterator[tuple[str, int, int]]:
    """Yield the keys that a value rises or falls with, from how far, and which way."""
    quantity = REGISTRY.get(path)
    if quantity is None:
        yield path.replace(".all.", ".each."), distance, sign
        return
    for need in quantity.needs:
        if need.path in quantity.rises_with:
            yield from _leaves(need.path, distance + 1, sign)
        elif need.path in quantity.falls_with:
            yield from _leaves(need.path, distance + 1, -sign)


# -- values ----------------------------------------------------------------------------------------


def _within(given: Value, wanted: Value) -> bool:
    """Say whether what is given is what is wanted, or one of what is left open."""
    if isinstance(wanted, Choice):
        options = given.options if isinstance(given, Choice) else (given,)
        return all(any(_within(one, other) for other in wanted.options) for one in options)
    if _is_number(given) and _is_number(wanted):
        a, b = ends(given), ends(wanted)  # type: ignore[arg-type]
        return _no_less(a.low, b.low) and _no_less(b.high, a.high)
    if isinstance(given, str) and isinstance(wanted, str):
        return plain_word(given) == plain_word(wanted)
    if isinstance(given, tuple) and isinstance(wanted, tuple):
        return sorted(map(str, given)) == sorted(map(str, wanted))
    return given == wanted


def _no_less(a: float, b: float) -> bool:
    return a >= b or abs(a - b) <= 1e-9 * max(abs(a), abs(b))


def _is_number(value: Value) -> bool:
    return isinstance(value, int | float | Range) and not isinstance(value, bool)


def _word_over(path: str, spec: Spec) -> str:
    """Return the word that stands in place of a section that a path lies in."""
    steps = path.split(".")
    above = (".".join(steps[:end]) for end in range(len(steps), 0, -1))
    return next((spec.words[one] for one in above if one in spec.words), "")


def _item(shown: Shown) -> str:
    found = vocabulary().locate(shown.path)
    return found[1] if found else ""


def _mapped(path: str, own: Spec, other: Spec) -> str:
    """Return a path in another spec; the one item of a list is the one item of the other's."""
    for listed, ids in own.lists.items():
        theirs = other.lists.get(listed, ())
        if len(ids) == len(theirs) == 1 and path.startswith(f"{listed}.{ids[0]}."):
            return f"{listed}.{theirs[0]}.{path.removeprefix(f'{listed}.{ids[0]}.')}"
    return path


# -- deviations ------------------------------------------------------------------------------------


def _declared(
    path: str, ours: Shown, theirs: Shown | None, rules: Sequence[str], spec: Spec
) -> str:
    """Return the deviation that declares a difference, or nothing.

    It bears the field's path, its title or a rule's id as its own id; or it tells both values.
    """
    leaf = vocabulary().leaf(ours.pattern)
    names = {plain_word(name) for name in (path, ours.pattern, leaf.title if leaf else "", *rules)}
    for one in spec.lists.get("deviations", ()):
        if plain_word(one) in names:
            return one
        told = (spec.text(f"deviations.{one}.standard"), spec.text(f"deviations.{one}.submitted"))
        if leaf and theirs and _tells(leaf, told[0], ours) and _tells(leaf, told[1], theirs):
            return one
    return ""


def _tells(leaf: Leaf, text: str, shown: Shown) -> bool:
    if not text:
        return False
    if plain_word(text) == plain_word(shown.written):
        return True
    if not leaf.numeric:
        return leaf.words.get(plain_word(text), "") == shown.value
    try:
        value = read_quantity(leaf.kind, text).value
    except NotationError:
        return False
    return _within(value, shown.value) and _within(shown.value, value)
