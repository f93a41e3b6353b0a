"""Conditions of rules: compiled once, then answered yes, no or not known for a spec.

Missing values follow three-valued logic (Kleene): an answer is not known only when a missing
value could change it.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any, NamedTuple

from checker.deriving.engine import Derived, Deriver
from checker.deriving.quantity import REGISTRY
from checker.judging.literals import RuleError, Twin, read_limit, read_literal
from checker.judging.review_data import STAGES
from checker.judging.tables import Lookup, compile_lookup
from checker.reading.kinds import KINDS
from checker.reading.units import system_of
from checker.reading.vocabulary import Items, Leaf, plain_word, vocabulary
from checker.values import Choice, Range

OPERATORS = (
    "at most", "at least", "below", "above", "between", "is", "is not", "one of", "none of",
    "shown", "before", "not before",
)  # fmt: skip
_NOTHING = ("none", "no")
ONE_END = "it is met at one end of the range and not at the other"
HALF_OPEN = "it holds for some of the choices that are left open, and not for others"


class Judged(NamedTuple):
    """One comparison answered.

    `off` and `room` are in the kind's SI unit, None where not a number; `text` is the limit as the
    rule writes it, where it is a literal, and `beside` the American figure that a metric one stands
    for.
    """

    outcome: bool | None
    left: Derived
    operator: str
    limit: Any
    right: Derived | None
    off: float | None = None
    room: float | None = None
    because: str = ""
    text: str = ""
    beside: str = ""

    @property
    def inapplicable(self) -> bool:
        """Say whether it stays open only because the spec says that the thing is not there."""
        lacking = self.left if not self.left.known or self.right is None else self.right
        return self.outcome is None and lacking.inapplicable

    @property
    def missing(self) -> tuple[str, ...]:
        """The spec paths that would have to be shown to answer it."""
        found = () if self.left.known else self.left.missing
        if self.right is not None and not self.right.known:
            found = found + self.right.missing
        return found


class Answer(NamedTuple):
    """A condition answered, with the comparisons that decided it, nearest to being met first."""

    outcome: bool | None
    judged: tuple[Judged, ...]

    @property
    def inapplicable(self) -> bool:
        """Say whether it stays open only because the spec says that the things are not there."""
        return bool(self.judged) and all(one.inapplicable for one in self.judged)


class Compare(NamedTuple):
    """`value` compared with a literal, another path, or a table."""

    value: str
    operator: str
    literal: Any
    other: str
    lookup: Lookup | None
    text: str = ""
    twin: Twin | None = None

    def answer(self, deriver: Deriver, item: str, *, asking: bool) -> Answer:
        """Answer for one item; `asking` is True where a missing value becomes a question."""
        left = deriver.get(self.value, item if ".each" in self.value else "")
        if self.operator == "shown":
            return self._shown(left, asking=asking)
        if self.twin and self.in_metric(left, deriver):
            metric = self._replace(literal=self.twin.value, text=self.twin.text, twin=None)
            return _beside(metric.answer(deriver, item, asking=asking), self.text)
        right: Derived | None = None
        limit = self.literal
        if self.other:
            right = deriver.get(self.other, item if ".each" in self.other else "")
            limit = right.value
        elif self.lookup is not None:
            right = self.lookup.find(deriver, item)
            limit = right.value
        if not left.known or (right is not None and not right.known):
            return self._missing(left, limit, right, asking=asking)
        judged = self._judge(left, limit, right)
        return Answer(judged.outcome, (judged,))

    @staticmethod
    def in_metric(left: Derived, deriver: Deriver) -> bool:
        """Say whether the metric one of two figures is the limit for a value."""
        return (system_of(left.unit) or deriver.system) == "si"

    def _judge(self, left: Derived, limit: Any, right: Derived | None) -> Judged:
        """Compare; what is left open holds only if every choice does, and fails if none does."""
        if type(left.value) is not Choice and type(limit) is not Choice:
            return _judge(self, left, limit, right)
        every = [
            _judge(self, left._replace(value=value), other, right)
            for value in _options(left.value)
            for other in _options(limit)
        ]
        outcome = _agreed([one.outcome for one in every])
        because = HALF_OPEN if outcome is None else ""
        return Judged(
            outcome, left, self.operator, limit, right, because=because, text=self.text
        )  # fmt: skip

    def _shown(self, left: Derived, *, asking: bool) -> Answer:
        wanted = bool(self.literal)
        because = ""
        if not left.known:
            outcome = None if wanted and asking else not wanted
        else:
            outcome = _agreed([is_nothing(one) != wanted for one in _options(left.value)])
            because = HALF_OPEN if outcome is None else ""
        return Answer(outcome, (Judged(outcome, left, "shown", wanted, None, because=because),))

    def _missing(self, left: Derived, limit: Any, right: Derived | None, *, asking: bool) -> Answer:
        lacking = left if not left.known or right is None else right
        outcome = False if not asking and lacking.inapplicable else None
        judged = Judged(
            outcome, left, self.operator, limit, right, None, None, lacking.because, self.text
        )  # fmt: skip
        return Answer(outcome, (judged,))


def _beside(answer: Answer, text: str) -> Answer:
    """Return an answer by a metric figure, with the American one that it stands for."""
    return answer._replace(judged=tuple(one._replace(beside=text) for one in answer.judged))


class Combined(NamedTuple):
    """Conditions joined: every one (`all`) or at least one (`any`) must hold."""

    every: bool
    parts: tuple[Compare | Combined, ...]

    def answer(self, deriver: Deriver, item: str, *, asking: bool) -> Answer:
        """Answer for one item, by three-valued logic."""
        if len(self.parts) == 1:
            return self.parts[0].answer(deriver, item, asking=asking)
        answers = [part.answer(deriver, item, asking=asking) for part in self.parts]
        if not self.every and asking:
            # What is not there is no way of meeting the rule, as long as there is another way.
            answers = [one for one in answers if not one.inapplicable] or answers
        if self.every:
            outcome = _all([answer.outcome for answer in answers])
        else:
            outcome = _any([answer.outcome for answer in answers])
        deciding = [answer for answer in answers if answer.outcome is outcome]
        if not self.every and outcome is not True:
            deciding.sort(key=_distance)
        return Answer(outcome, tuple(one for answer in deciding for one in answer.judged))


Condition = Compare | Combined


def _all(outcomes: list[bool | None]) -> bool | None:
    if False in outcomes:
        return False
    return None if None in outcomes else True


def _any(outcomes: list[bool | None]) -> bool | None:
    if True in outcomes:
        return True
    return None if None in outcomes else False


def _distance(answer: Answer) -> float:
    return math.fsum(one.off if one.off is not None else 1e6 for one in answer.judged)


# -- comparing ------------------------------------------------------------------------------------


def _slack(a: float, b: float) -> float:
    # Levels in feet are not exact in metres: equality means equal to a billionth.
    return 1e-9 * max(1.0, abs(a), abs(b)) if max(abs(a), abs(b)) < 1e12 else 0.0


def _options(value: Any) -> tuple[Any, ...]:
    return value.options if isinstance(value, Choice) else (value,)


def _agreed(outcomes: list[bool | None]) -> bool | None:
    """Return the answer that all give, or that it is not known."""
    return outcomes[0] if len(set(outcomes)) == 1 else None


def is_nothing(value: Any) -> bool:
    """Say whether a value says that there is none of what it is about."""
    return value in ((), "") or (isinstance(value, str) and plain_word(value) in _NOTHING)


def _ends(value: Any) -> tuple[float, float]:
    return (value.low, value.high) if isinstance(value, Range) else (value, value)


def _ordered(compare: Compare, left: Derived, limit: Any, right: Derived | None) -> Judged:
    low, high = _ends(left.value)
    least, most = _ends(limit)
    slack = _slack(low if abs(low) < 1e12 else 0.0, most if abs(most) < 1e12 else 0.0)
    if compare.operator in ("at most", "below"):
        strict = compare.operator == "below"
        worst, best = least - high, most - low
    else:
        strict = compare.operator == "above"
        worst, best = low - most, high - least
    met = worst > slack if strict else worst >= -slack
    possible = best > slack if strict else best >= -slack
    outcome = True if met else None if possible else False
    off = None if outcome else max(-worst, 0.0)
    because = ONE_END if outcome is None else ""
    return Judged(
        outcome, left, compare.operator, limit, right, off, worst if outcome else None, because,
        compare.text,
    )  # fmt: skip


def _between(compare: Compare, left: Derived, limit: Any, right: Derived | None) -> Judged:
    low, high = _ends(left.value)
    least, most = limit if isinstance(limit, tuple) else (limit, limit)
    slack = _slack(low, most)
    inside = low >= least - slack and high <= most + slack
    outside = high < least - slack or low > most + slack
    outcome = True if inside else False if outside else None
    room = min(low - least, most - high)
    off, left_over = (None, room) if outcome else (-room, None)
    return Judged(outcome, left, "between", limit, right, off, left_over, "", compare.text)


def _same(operator: str, value: Any, limit: Any) -> bool | None:
    if isinstance(value, tuple) and not isinstance(value, Range):
        equal: bool | None = value == (limit if isinstance(limit, tuple) else (limit,))
        if operator == "is not" and limit != ():
            equal = limit in value
    elif isinstance(value, Range):
        low, high = value
        equal = None if low <= limit <= high else False
    elif isinstance(value, float) and isinstance(limit, int | float):
        equal = abs(value - limit) <= _slack(value, limit)
    else:
        equal = value == limit
    return equal if operator == "is" or equal is None else not equal


def _member(operator: str, value: Any, limit: Any) -> bool:
    values = value if isinstance(value, tuple) else (value,)
    inside = any(one in limit for one in values)
    return inside if operator == "one of" else not inside


def _dated(operator: str, value: Any, limit: Any) -> bool:
    if value in STAGES and limit in STAGES:
        value, limit = STAGES.index(value), STAGES.index(limit)
    return bool(value < limit if operator == "before" else value >= limit)


# What is answered yes or no, and what is answered by how much.
PLAIN: dict[str, Callable[[str, Any, Any], bool | None]] = {
    "is": _same, "is not": _same, "one of": _member, "none of": _member,
    "before": _dated, "not before": _dated,
}  # fmt: skip
_MEASURED: dict[str, Callable[[Compare, Derived, Any, Derived | None], Judged]] = {
    "at most": _ordered, "at least": _ordered, "below": _ordered, "above": _ordered,
    "between": _between,
}  # fmt: skip


def _judge(compare: Compare, left: Derived, limit: Any, right: Derived | None) -> Judged:
    plain = PLAIN.get(compare.operator)
    if plain is None:
        return _MEASURED[compare.operator](compare, left, limit, right)
    outcome = plain(compare.operator, left.value, limit)
    return Judged(outcome, left, compare.operator, limit, right, text=compare.text)


# -- compiling ------------------------------------------------------------------------------------


def kind_of(path: str) -> str:
    """Return the kind of a spec path or quantity. Raises RuleError when there is none."""
    found = REGISTRY.get(path)
    if found is not None:
        return found.kind
    node = vocabulary().nodes.get(path)
    if isinstance(node, Leaf):
        return node.kind
    if isinstance(node, Items):
        return "texts"
    raise RuleError(f"there is no '{path}' among the keys of a spec or the quantities")


def compile_all(raw: Any) -> Combined:
    """Compile a list of conditions (or one) that must all hold."""
    parts = raw if isinstance(raw, list) else [raw]
    return Combined(True, tuple(compile_condition(part) for part in parts))


def compile_condition(raw: Any) -> Condition:
    """Compile `{value:, <comparator>:}`, `{any: [...]}` or `{all: [...]}`. Raises RuleError."""
    if not isinstance(raw, dict):
        raise RuleError(f"a condition is written {{value: ..., at least: ...}}, not '{raw}'")
    for word in ("any", "all"):
        if word in raw:
            if len(raw) > 1 or not isinstance(raw[word], list) or not raw[word]:
                raise RuleError(f"'{word}' holds a list of conditions and stands alone")
            return Combined(word == "all", tuple(compile_condition(part) for part in raw[word]))
    operators = [key for key in raw if key != "value"]
    if "value" not in raw or len(operators) != 1 or operators[0] not in OPERATORS:
        raise RuleError(
            f"a condition has 'value' and one of {', '.join(OPERATORS)}; "
            f"here: {', '.join(map(str, raw))}"
        )
    value, operator = raw["value"], operators[0]
    if not isinstance(value, str):
        raise RuleError("'value' names one key or quantity")
    return _compile_compare(value, operator, raw[operator])


_NUMBERS = ("at most", "at least", "below", "above", "between")
_LISTS = ("between", "one of", "none of")


def _check_operator(value: str, kind: str, operator: str, other: Any) -> None:
    """Refuse what could never be answered: a word that is at most another, a list as a figure."""
    if operator in _NUMBERS and kind not in KINDS:
        raise RuleError(f"'{value}' is a {kind}, and '{operator}' is for numbers")
    if operator in ("before", "not before") and kind != "date" and value != "job.stage":
        raise RuleError(f"'{value}' is a {kind}, and '{operator}' is for days and stages")
    if not isinstance(other, str | dict) and operator not in _LISTS:
        raise RuleError(f"'{operator}' stands before one figure, one word or one path")
    if isinstance(other, list) and not all(isinstance(each, str) for each in other):
        raise RuleError(f"'{operator}' holds a list of figures or words")
    if operator == "between" and isinstance(other, list) and len(other) != 2:
        raise RuleError("'between' holds two figures, the least and the most")


def _compile_compare(value: str, operator: str, other: Any) -> Compare:
    kind = kind_of(value)
    _check_operator(value, kind, operator, other)
    if isinstance(other, dict):
        return Compare(value, operator, None, "", _lookup(other, kind, operator))
    if operator == "shown":
        return Compare(value, operator, read_literal("yes_no", str(other), value), "", None)
    if operator == "between" or operator in ("one of", "none of"):
        if isinstance(other, str):
            other_kind = kind_of(other)
            if operator == "between":
                _comparable(value, kind, other, other_kind)
            return Compare(value, operator, None, other, None)
        if not isinstance(other, list) or not other:
            raise RuleError(f"'{operator}' needs a list")
        literals = tuple(read_literal(kind, str(each), value) for each in other)
        return Compare(
            value,
            operator,
            literals,
            "",
            None,
            (" and " if operator == "between" else ", ").join(map(str, other)),
        )
    text = str(other)
    if text in REGISTRY or isinstance(vocabulary().nodes.get(text), Leaf | Items):
        _comparable(value, kind, text, kind_of(text))
        return Compare(value, operator, None, text, None)
    limit, text, twin = read_limit(kind, text, value)
    if twin and operator not in ("at most", "at least", "below", "above"):
        raise RuleError(f"'{value}': two figures are for at most, at least, below and above")
    return Compare(value, operator, limit, "", None, text, twin)


def _lookup(raw: dict[str, Any], kind: str, operator: str) -> Lookup:
    try:
        return compile_lookup(raw, kind, operator, kind_of)
    except ValueError as error:
        raise RuleError(str(error)) from None


_ALIKE = ({"level", "length"}, {"ratio", "number", "fraction"}, {"text", "word", "texts", "words"})


def _comparable(value: str, kind: str, other: str, other_kind: str) -> None:
    if kind != other_kind and not any({kind, other_kind} <= group for group in _ALIKE):
        raise RuleError(
            f"'{value}' is a {kind} and '{other}' a {other_kind}: they cannot be compared"
        )
