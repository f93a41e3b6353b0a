"""Why a text is no quantity, in a sentence that says what would be."""

import re

from checker.reading import units
from checker.reading.kinds import KINDS
from checker.reading.numerals import SIGNED, number

_TWO_MEANINGS = {
    "ton": "a ton can be 2000 lb or 1000 kg: write short ton, or tonne",
    "month": "a month has no one length: write days or weeks",
}


def why_not(kind: str, text: str) -> str:
    """Return the sentence that says why a text is no quantity of this kind, and what would be."""
    wanted = f"{KINDS[kind].noun} wants {KINDS[kind].would_do}"
    match = re.match(SIGNED, text)
    if match is None:
        vague = re.match(r"(about|approx\w*|around|circa|~)", text)
        if vague:
            return f"{vague[1]} does not say how near: write two ends, such as 3 to 5 in"
        return f"{_quoted(text)} does not begin with a number; {wanted}"
    rest = text[match.end() :].strip()
    if not rest:
        if kind == "fraction":
            part = float(number(match["number"])) / 100
            return f"{text} has no unit: write {text} %, or {match['sign']}{part:g} of the whole"
        return f"{text} has no unit; {wanted}"
    return _why_not_unit(kind, match[0], rest, wanted)


def _why_not_unit(kind: str, number: str, rest: str, wanted: str) -> str:
    name = units.canonical(rest)
    if name.removesuffix("s") in _TWO_MEANINGS:
        return _TWO_MEANINGS[name.removesuffix("s")]
    measured = next((what for what, table in units.DIMENSIONS.items() if name in table), None)
    if measured:
        return f"{name} measures {measured}; {wanted}"
    words = rest.split()
    for count in range(len(words) - 1, 0, -1):
        head = " ".join(words[:count])
        if units.find(kind, head):
            tail = " ".join(words[count:])
            return f"after {number} {head} stands {_quoted(tail)}, which is not understood"
    meant = _nearest(kind, rest)
    if meant:
        return f"{_quoted(rest)} is not a known unit; did you mean {meant}? ({wanted})"
    return f"{_quoted(rest)} after {number} is not a known unit; {wanted}"


def _nearest(kind: str, written: str) -> str | None:
    from difflib import get_close_matches

    if re.search(r"[0-9]", written):
        return None
    close = get_close_matches("".join(written.split()), list(units.BY_KIND[kind]), 1, 0.6)
    return close[0] if close else None


def _quoted(text: str) -> str:
    return f"'{text}'" if '"' in text else f'"{text}"'
