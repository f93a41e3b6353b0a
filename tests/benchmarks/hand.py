"""What the hands of different writers do to the same text: units, shorthand, notes, gaps, slips."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from random import Random
from typing import NamedTuple

_WIDTH = 100


class Hand(NamedTuple):
    """How one writer writes. The numbers are how often, from 0 to 1."""

    rng: Random
    metric: bool
    inch: str
    foot: str
    feet_and_inches: bool
    in_blocks: bool
    spaced: bool
    leaves_out: float
    stands_in: float
    remarks: float
    source: Callable[[], str]
    sourced: float


def hand(rng: Random, tags: frozenset[str], names: dict[str, str]) -> Hand:
    """Return the hand that wrote one lot: somebody who measured, or somebody with sheets of paper."""
    paper = rng.choice((f"SUB-{names['n1']}", f"PD-{names['n2']}", "sheet S-2"))

    def measured() -> str:
        return f"how: measured, by: {names['super']}, date: {names['day']}"

    def on_paper() -> str:
        return f"from: {paper} p{rng.randint(1, 6)}"

    late, standard = "late" in tags, "standard" in tags
    return Hand(
        rng=rng,
        metric="metric" in tags,
        inch=rng.choice(('"', '"', " in", " in", " inches")),
        foot=rng.choice((" ft", " ft", "'")),
        feet_and_inches=rng.random() < 0.3,
        in_blocks=rng.random() < 0.25,
        spaced=rng.random() < 0.7,
        leaves_out=0.0 if standard else rng.choice((0.0, 0.03, 0.06, 0.12)),
        stands_in=0.0 if standard else rng.choice((0.0, 0.0, 0.02)),
        remarks=rng.choice((0.0, 0.02, 0.06)),
        source=measured if late else on_paper,
        sourced=rng.choice((0.7, 0.9) if late else (0.0,) if standard else (0.0, 0.0, 0.1, 0.5)),
    )


# -- quantities ------------------------------------------------------------------------------------

_QUANTITY = re.compile(
    r"(?<![\w./-])(?P<sign>-?)(?P<number>\d+(?:\.\d+)?(?: \d+/\d+)?|\d+/\d+)"
    r" (?P<unit>sq ft|in/ft|ft|in|mil|psi|gal|cy|F)(?![\w/-])"
)
_METRIC_SLOPES = {"1/16": "1:200", "1/8": "1:100", "1/4": "1:50"}


def with_units(text: str, writer: Hand) -> str:
    """Return a text with every quantity in it as this writer writes them."""
    return _QUANTITY.sub(_metric if writer.metric else lambda found: _american(found, writer), text)


def _american(found: re.Match[str], writer: Hand) -> str:
    sign, number, unit = found.groups()
    if unit == "ft":
        return sign + number + writer.foot
    if unit != "in":
        return found[0]
    if writer.feet_and_inches and number.isdigit() and int(number) >= 24:
        return f"{sign}{int(number) // 12}'-{int(number) % 12}\""
    return sign + number + writer.inch


def _metric(found: re.Match[str]) -> str:
    sign, number, unit = found.groups()
    value = float(sum(Fraction(part) for part in number.split()))
    written = {
        "in": lambda: f"{_round_length(value, '.' in number)} mm",
        "ft": lambda: f"{value * 0.3048:.1f} m",
        "sq ft": lambda: f"{value * 0.0929:.0f} m2",
        "in/ft": lambda: _METRIC_SLOPES[number],
        "mil": lambda: f"{value * 0.0254:.2g} mm",
        "psi": lambda: f"{value * 6.9:.0f} kPa" if value < 1000 else f"{value * 0.0069:.0f} MPa",
        "gal": lambda: f"{value * 3.785:.0f} L",
        "cy": lambda: f"{value * 0.765:.1f} m3",
        "F": lambda: f"{(value - 32) / 1.8:.0f} C",
    }
    return sign + written[unit]()


def _round_length(inches: float, exactly: bool) -> int:
    """Return the millimetres that somebody orders by who thinks in them."""
    step = 1 if exactly or inches < 2 else 5 if inches < 5 else 50
    return step * round(inches * 25.4 / step)


# -- lines -----------------------------------------------------------------------------------------

_SECTION = re.compile(r"(?m)^(\w+):")
# `  key: value` of a section, with nothing in the value that would need quotes inside braces.
_LEAF = re.compile(r"  (?P<key>\w+): (?P<value>[^\[\]{},#:\n]+|\"[^\"]*\")")
_ITEM = re.compile(r"(?P<indent> +)- \{(?P<pairs>.*)\}")
_LEVEL_OF_AN_ITEM = re.compile(r"\binvert: (\d+\.\d+)")
_BETWEEN_PAIRS = re.compile(r", (?=\w+: )(?![^{]*\})")
_OPTIONAL = "  ?"
# Sections about the paper; keys without which the rest could not be read, and lists.
_AS_IT_IS = {"job", "documents", "fits", "holds", "record", "climate"}
_KEPT = {"unit", "datum", "high_water_how", "high_water_read", "steps", "hardscape",
         "sleeves", "present"}  # fmt: skip
_STAND_INS = ("not shown", "not shown", "by others", "unknown")
_REMARKS = (
    "as drawn", "by tape", "he says", "ask again", "as on the last lot", "see the note on S-2",
    "changed after the call", "both ends", "sheet says otherwise", "from the ticket", "checked",
    "to the middle of the pipe", "no data sheet yet", "typical", "worst side", "as agreed",
)  # fmt: skip


def by_hand(part: str, writer: Hand) -> str:
    """Return one section of a spec as this writer leaves it."""
    named = _SECTION.search(part)
    lines = _without_empty_lists(list(_wanted(part.splitlines(), writer.rng)))
    if writer.in_blocks:
        lines = [line for item in lines for line in _in_block(item)]
    if named and named[1] not in _AS_IT_IS:
        lines = [changed for line in lines if (changed := _changed(line, writer)) is not None]
    folded = [piece for line in lines for piece in _folded(line)]
    return "".join(_remarked(line, writer) + "\n" for line in folded)


def _wanted(lines: list[str], rng: Random) -> Iterator[str]:
    """Leave out some of the items that are marked as optional, each with all its lines."""
    dropped: int | None = None
    for line in lines:
        indent = _indent(line)
        if dropped is not None and indent > dropped:
            continue
        dropped = indent if line.endswith(_OPTIONAL) and rng.random() < 0.5 else None
        if dropped is None:
            yield line.removesuffix(_OPTIONAL)


def _without_empty_lists(lines: list[str]) -> list[str]:
    """Say none where every item of a list is gone."""
    after = [*lines[1:], ""]
    return [
        f"{line} none" if line.endswith(":") and _indent(below) <= _indent(line) else line
        for line, below in zip(lines, after, strict=True)
    ]


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip())


def _in_block(line: str) -> list[str]:
    item = _ITEM.fullmatch(line)
    if item is None:
        return [line]
    first, *rest = _BETWEEN_PAIRS.split(item["pairs"])
    return [f"{item['indent']}- {first}", *(f"{item['indent']}  {pair}" for pair in rest)]


def _changed(line: str, writer: Hand) -> str | None:
    """Return a line with its source, or with a word in place of its value; None leaves it out."""
    rng = writer.rng
    if rng.random() < writer.sourced and _ITEM.fullmatch(line):
        return _LEVEL_OF_AN_ITEM.sub(rf"invert: {{value: \1, {writer.source()}}}", line)
    leaf = _LEAF.fullmatch(line)
    if leaf is None or leaf["key"] in _KEPT:
        return line
    if rng.random() < writer.leaves_out:
        return None
    if rng.random() < writer.stands_in:
        return f"  {leaf['key']}: {rng.choice(_STAND_INS)}"
    if rng.random() < writer.sourced and leaf["value"] not in _STAND_INS:
        return f"  {leaf['key']}: {{value: {leaf['value']}, {writer.source()}}}"
    return line


def _folded(line: str) -> list[str]:
    """Break a line that is too long after one of its commas, as people do."""
    if len(line) <= _WIDTH or line.startswith("#"):
        return [line]
    indent = " " * (_indent(line) + 3)
    first, *rest = line.split(", ")
    lines = [first]
    for piece in rest:
        if len(lines[-1]) + len(piece) + 3 <= _WIDTH:
            lines[-1] += f", {piece}"
        else:
            lines[-1] += ","
            lines.append(indent + piece)
    return lines


def _remarked(line: str, writer: Hand) -> str:
    if line.startswith(" ") and writer.rng.random() < writer.remarks:
        return f"{line}  # {writer.rng.choice(_REMARKS)}"
    return line


# -- slips -----------------------------------------------------------------------------------------


def misspelled(text: str, rng: Random) -> str:
    """Return a text with two letters of one key changed round."""
    keys = [found for found in re.finditer(r"(?m)^  (\w{5,}):", text) if found[1][2] != found[1][3]]
    key = rng.choice(keys)
    first = key.start(1) + 2
    return text[:first] + text[first + 1] + text[first] + text[first + 2 :]


def with_an_unknown_word(text: str, rng: Random) -> str:
    """Return a text with a word that means nothing, or a number without its unit."""
    slips = {
        r"(?m)^(  present: )(?:yes|no)$": "there",
        r"(?m)^(  class: )\w+$": "tanked",
        r"(?m)^(  hole_size: ).*$": "0.375",
        r"(?m)^(  bedding: ).*$": "2",
        r"(?m)^(  encloses: )\w+$": "shed",
        r"(?m)^(sheet: \{kind: )\w+": "eggbox",
        r"(?m)^(wall: \{type: )\w+": "wattle",
    }
    fitting = [pattern for pattern in slips if re.search(pattern, text)]
    pattern = rng.choice(fitting)
    return re.sub(pattern, rf"\g<1>{slips[pattern]}", text, count=1)


def torn(text: str, rng: Random) -> str:
    """Return a text that is no YAML any more: a tab, a lost bracket, a quote never closed."""
    lines = text.splitlines(keepends=True)
    leaves = [number for number, line in enumerate(lines) if re.match(r"  \w+: [^{\[]", line)]
    at = rng.choice(leaves)
    key = lines[at].partition(":")[0].strip()
    lines[at] = rng.choice(
        (f"\t{lines[at].lstrip()}", f"  {key}: [4 in\n", f'  {key}: "4""\n', f"  {key} 4 in\n")
    )
    return "".join(lines)
