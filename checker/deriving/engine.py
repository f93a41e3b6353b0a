"""Quantities of one spec: worked out when asked for, once each, with what they rest on."""

from __future__ import annotations

import functools
import math
from itertools import chain
from typing import Any, NamedTuple

from checker.deriving.choices import for_every_choice
from checker.deriving.quantity import (
    REGISTRY,
    Assumed,
    NotApplicable,
    NotShown,
    OutsideLimits,
    Quantity,
)
from checker.reading.kinds import default_unit
from checker.reading.measured import differences, has_measurements
from checker.reading.spec import MEASURED, NOT_APPLICABLE, Spec
from checker.reading.vocabulary import Items, Leaf, vocabulary
from checker.values import Choice, Range

# The section of what was measured, as a need: what in it differs from the design.
DIFFERENCES = "measured"


class Derived(NamedTuple):
    """One value at a concrete path, shown or worked out.

    `value` is None when there is none; then `missing` names the spec paths that would have to
    be shown, or `because` says why there can be no number (`inapplicable` where the spec says
    that the thing is not there). `rests_on` names the spec paths
    that the value was read from, `assumed` what was taken for granted on the way.
    """

    path: str
    pattern: str
    title: str
    kind: str
    value: Any
    unit: str = ""
    missing: tuple[str, ...] = ()
    because: str = ""
    assumed: tuple[str, ...] = ()
    rests_on: tuple[str, ...] = ()
    inapplicable: bool = False

    @property
    def known(self) -> bool:
        """Say whether there is a value."""
        return self.value is not None


class Deriver:
    """Works out the quantities of one spec, lazily, each at most once.

    `says_absent` tells whether the spec says of anything that it is not applicable.
    """

    def __init__(self, spec: Spec) -> None:
        self.spec = spec
        self.system = spec.system
        self._nodes = vocabulary().nodes
        self._memo: dict[tuple[str, str], Derived] = {}
        self._leaves_open = any(isinstance(one.value, Choice) for one in spec.values.values())
        self.says_absent = NOT_APPLICABLE in spec.words.values() or any(
            one.word == NOT_APPLICABLE for one in spec.values.values()
        )

    def get(self, pattern: str, item: str = "") -> Derived:
        """Return the value at a path; `item` stands for its `each`."""
        key = (pattern, item)
        known = self._memo.get(key)
        if known is None:
            known = self._memo[key] = self._find(pattern, item)
        return known

    def items(self, list_path: str) -> tuple[str, ...] | None:
        """Return the ids of a list; None when the spec does not show the list."""
        return self.spec.lists.get(list_path)

    def _find(self, pattern: str, item: str) -> Derived:
        path = pattern.replace(".each", f".{item}", 1) if item else pattern
        node = self._nodes.get(pattern)
        if type(node) is Leaf:
            return self._shown(node, path)
        quantity = REGISTRY.get(pattern)
        if quantity is not None:
            return self._compute(quantity, path, item)
        if type(node) is Items:
            return self._ids(node, path)
        if pattern == DIFFERENCES:
            return self._differences()
        if ".all." in pattern:
            return self._all(pattern)
        raise KeyError(pattern)

    def _shown(self, leaf: Leaf, path: str) -> Derived:
        shown = self.spec.values.get(path)
        if shown is None:
            return self._absent(leaf, path)
        if shown.word or shown.value is None:
            because = f'the spec says "{shown.word}"' if shown.word else "it was kept as written"
            return _lacking(
                leaf,
                path,
                because,
                inapplicable=shown.word == NOT_APPLICABLE,
                rests_on=(path,),
            )
        assumed = (f"{leaf.title}: {shown.assumed}",) if shown.assumed else ()
        return Derived(
            path,
            leaf.path,
            leaf.title,
            leaf.kind,
            shown.value,
            shown.unit,
            (),
            "",
            assumed,
            (path,),
        )

    def _absent(self, leaf: Leaf, path: str) -> Derived:
        word = self._word_above(path)
        if word:
            because = f'the spec says "{word}"'
            return _lacking(leaf, path, because, inapplicable=word == NOT_APPLICABLE)
        if path == leaf.path:
            return _left_out(leaf)
        return _as_left_out(leaf, path)

    def _word_above(self, path: str) -> str:
        if not self.spec.words:
            return ""
        parts = path.split(".")
        for length in range(len(parts) - 1, 0, -1):
            word = self.spec.words.get(".".join(parts[:length]))
            if word:
                return word
        return ""

    def _ids(self, node: Items, path: str) -> Derived:
        ids = self.spec.lists.get(path)
        if ids is None:
            word = self.spec.words.get(path) or self._word_above(path)
            if not word and node.if_absent:
                note = f"{node.title} are left out, which reads as: {node.if_absent}"
                return Derived(path, path, node.title, "texts", (), assumed=(note,))
            because = f'the spec says "{word}"' if word else ""
            return Derived(
                path,
                path,
                node.title,
                "texts",
                None,
                "",
                (path,),
                because,
                inapplicable=word == NOT_APPLICABLE,
            )
        return Derived(path, path, node.title, "texts", ids, "", (), "", (), (path,))

    def _all(self, pattern: str) -> Derived:
        list_path, _, key = pattern.partition(".all.")
        ids = self.get(list_path)
        if not ids.known:
            return ids._replace(path=pattern)
        found = [self.get(f"{list_path}.each.{key}", each) for each in ids.value]
        title = found[0].title if found else ids.title
        return Derived(
            pattern,
            pattern,
            title,
            found[0].kind if found else "text",
            tuple((each, one.value) for each, one in zip(ids.value, found, strict=True)),
            next((one.unit for one in found if one.unit), ""),
            tuple(path for one in found for path in one.missing),
            "",
            tuple(note for one in found for note in one.assumed),
            tuple(path for one in found for path in one.rests_on) or (list_path,),
        )

    def _differences(self) -> Derived:
        """Return what was measured and differs from the design, as texts."""
        title = "what was measured and is not as designed"
        blank = Derived(DIFFERENCES, DIFFERENCES, title, "texts", None, inapplicable=True)
        if not has_measurements(self.spec):
            return blank._replace(because="the spec holds nothing that was measured")
        found = differences(self.spec)
        # Judged by what was measured, both paths name the same place.
        own = [] if self.spec.basis == MEASURED else [one.path for one in found]
        paths = (*own, *(one.measured.path for one in found))
        return blank._replace(value=tuple(map(str, found)), rests_on=paths, inapplicable=False)

    # -- quantities ------------------------------------------------------------------------------

    def _compute(self, quantity: Quantity, path: str, item: str) -> Derived:
        found: list[Derived] = []
        lacking: list[Derived] = []
        for need in quantity.needs:
            one = self.get(need.path, item if need.each else "")
            found.append(one)
            if not need.optional and (one.value is None or (need.every and one.missing)):
                lacking.append(one)
        value: Any = None
        unit = because = ""
        missing: tuple[str, ...] = ()
        assumed = _merge([one.assumed for one in found])
        inapplicable = False
        if lacking:
            missing = _merge([one.missing for one in lacking])
            because = next((one.because for one in lacking if one.because), "")
            inapplicable = all(one.inapplicable for one in lacking)
        else:
            try:
                value, why = self._value(quantity, [one.value for one in found])
                assumed += (why,) if why else ()
                unit = self._unit(quantity, value, found)
            except NotShown as reason:
                missing, because = self._asked_for(reason, found, item), f"would do: {reason.what}"
            except NotApplicable as reason:
                because, inapplicable = str(reason), True
            except (OutsideLimits, ValueError, ZeroDivisionError, OverflowError) as reason:
                because = f"no number: {reason}"
        return Derived(
            path, quantity.name, quantity.title, quantity.kind, value, unit, missing, because,
            assumed, _merge([one.rests_on for one in found]), inapplicable,
        )  # fmt: skip

    def _asked_for(self, reason: NotShown, found: list[Derived], item: str) -> tuple[str, ...]:
        paths = reason.paths or tuple(path for one in found for path in one.missing)
        named = tuple(p.replace(".each", f".{item}", 1) if item else p for p in paths)
        # What stands in the spec already is not what has to be asked for.
        return tuple(p for p in named if not self._stands(p)) or named

    def _stands(self, path: str) -> bool:
        shown = self.spec.values.get(path)
        return shown is not None and shown.value is not None

    def _value(self, quantity: Quantity, arguments: list[Any]) -> tuple[Any, str]:
        """Return what a quantity comes to, and what was taken for granted, if anything was."""
        if self._leaves_open:
            value = for_every_choice(functools.partial(_result, quantity), arguments)
        else:
            value = _result(quantity, arguments)
        why = ""
        if isinstance(value, Assumed):
            value, why = value.value, f"{quantity.title}: {value.why}"
        if isinstance(value, float) and math.isnan(value):
            raise OutsideLimits("the values given lead to no number")
        return value, why

    def _unit(self, quantity: Quantity, value: Any, found: list[Derived]) -> str:
        kind = quantity.kind
        if kind in ("text", "yes_no", "texts", "year", "word", "date"):
            return ""
        told_in = quantity.told_in[self.system == "si"]
        if told_in:
            return told_in
        unit = next((one.unit for one in found if one.kind == kind and one.unit), "")
        if unit:
            return unit
        return default_unit(kind, self.system, _size(value))


# Most keys are left out of most specs, and then they come to the same in all of them.
_LEFT_OUT: dict[str, Derived] = {}


def _left_out(leaf: Leaf) -> Derived:
    known = _LEFT_OUT.get(leaf.path)
    if known is None:
        known = _LEFT_OUT[leaf.path] = _as_left_out(leaf, leaf.path)
    return known


def _as_left_out(leaf: Leaf, path: str) -> Derived:
    """Return what a key that is left out reads as, or that it is not shown."""
    if leaf.if_absent is None:
        return _lacking(leaf, path)
    value, reads = leaf.if_absent
    if value == NOT_APPLICABLE:
        because = f"left out, which reads as: {reads}"
        return _lacking(leaf, path, because, inapplicable=True)
    assumed = (f"{leaf.title} is left out, which reads as: {reads}",)
    return Derived(path, leaf.path, leaf.title, leaf.kind, value, "", (), "", assumed, ())


def _lacking(
    leaf: Leaf,
    path: str,
    because: str = "",
    *,
    inapplicable: bool = False,
    rests_on: tuple[str, ...] = (),
) -> Derived:
    """Return a key of the spec without a value."""
    return Derived(
        path,
        leaf.path,
        leaf.title,
        leaf.kind,
        None,
        missing=(path,),
        because=because,
        rests_on=rests_on,
        inapplicable=inapplicable,
    )


def _result(quantity: Quantity, arguments: list[Any]) -> Any:
    """Work a quantity out; where needs are ranges, at the ends that give the least and the most."""
    # Most values are numbers and words, which are soon told from ranges and lists.
    for value in arguments:
        if isinstance(value, tuple):
            break
    else:
        return quantity.body(*arguments)
    ranged = [
        need.path
        for need, value in zip(quantity.needs, arguments, strict=True)
        if isinstance(value, tuple) and _holds_range(value)
    ]
    if not ranged:
        return quantity.body(*arguments)
    undirected = [path for path in ranged if path not in quantity.rises_with | quantity.falls_with]
    if undirected:
        raise OutsideLimits(
            f"{undirected[0]} is a range, and the result need not lie between its ends"
        )
    low = quantity.body(*_corner(quantity, arguments, rising_at_low=True))
    high = quantity.body(*_corner(quantity, arguments, rising_at_low=False))
    return _between(low, high)


def _size(value: Any) -> float:
    """Return a number that says how large a value is, for choosing the unit it is shown in."""
    end = value.low if isinstance(value, Range) and math.isfinite(value.low) else value
    return end if isinstance(end, float) else 0.0


def _merge(groups: list[tuple[str, ...]]) -> tuple[str, ...]:
    """Return every entry once, in the order in which they come."""
    filled = [group for group in groups if group]
    if len(filled) < 2:
        return tuple(dict.fromkeys(filled[0])) if filled else ()
    return tuple(dict.fromkeys(chain.from_iterable(filled)))


def _holds_range(value: tuple[Any, ...]) -> bool:
    return isinstance(value, Range) or any(
        isinstance(part, tuple) and len(part) == 2 and isinstance(part[1], Range) for part in value
    )


def _corner(quantity: Quantity, arguments: list[Any], *, rising_at_low: bool) -> list[Any]:
    corner = []
    for need, value in zip(quantity.needs, arguments, strict=True):
        low = rising_at_low == (need.path in quantity.rises_with)
        corner.append(_end(value, low=low))
    return corner


def _end(value: Any, *, low: bool) -> Any:
    if isinstance(value, Range):
        return value.low if low else value.high
    if isinstance(value, tuple) and value and isinstance(value[0], tuple):
        return tuple((each, _end(one, low=low)) for each, one in value)
    return value


def _between(low: Any, high: Any) -> Any:
    why = next((end.why for end in (low, high) if isinstance(end, Assumed)), "")
    ends = [end.value if isinstance(end, Assumed) else end for end in (low, high)]
    if ends[0] == ends[1]:
        return Assumed(ends[0], why) if why else ends[0]
    if not all(isinstance(end, int | float) and not isinstance(end, bool) for end in ends):
        raise OutsideLimits("a range stands where one value is wanted")
    if any(math.isnan(end) for end in ends):
        raise OutsideLimits("the range given leads to no number")
    value = Range(float(min(ends)), float(max(ends)))
    return Assumed(value, why) if why else value
