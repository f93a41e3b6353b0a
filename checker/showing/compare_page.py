"""A submittal beside a standard, as lines: what nobody declared comes first."""

from __future__ import annotations

from checker.judging.compare import (
    DIFFERENT,
    LOOSER,
    NOT_SHOWN,
    SAME,
    STRICTER,
    Compared,
    Field,
)
from checker.showing.finding_text import labelled
from checker.showing.lines import (
    BLANK,
    PIPE_WIDTH,
    WIDEST,
    Line,
    counted,
    heading,
    line,
    paragraph,
)

_MEANS = {
    LOOSER: "looser than the standard",
    DIFFERENT: "different, and no rule says which is better",
    STRICTER: "stricter than the standard",
}
_RULES = 6


def compare_page(compared: Compared, *, width: int = PIPE_WIDTH) -> list[Line]:
    """Return the comparison as lines of at most `width` columns."""
    width = min(width, WIDEST)
    fields = compared.fields
    lines = paragraph(f"{compared.submittal} beside {compared.standard}", width, style="heading")
    lines += _section("Not declared", [one for one in fields if one.open], width)
    declared = [one for one in fields if one.declared]
    lines += _section("Declared as deviations", declared, width)
    stricter = [one for one in fields if one.verdict == STRICTER and not one.declared]
    lines += _section("Stricter than the standard", stricter, width)
    lines += _titles("Not shown in the submittal", NOT_SHOWN, compared, width)
    lines += _titles("Same", SAME, compared, width)
    for one in compared.idle:
        lines += heading(f"Deviation {one} fits no difference that was found", width)
    return [*lines, BLANK, line(_closing(compared), "closing")]


def _section(title: str, fields: list[Field], width: int) -> list[Line]:
    if not fields:
        return []
    lines = heading(f"{title}: {len(fields)}", width)
    for number, one in enumerate(fields, 1):
        lines += paragraph(
            f"{one.title} ({one.path})", width, label=f"{number}.", hang=4, style="title"
        )
        more = len(one.rules) - _RULES
        rules = ", ".join(one.rules[:_RULES]) + (f" and {more} more" if more > 0 else "")
        rows = [
            ("standard", one.standard),
            ("submitted", f"{one.submitted} (line {one.line})" if one.line else one.submitted),
            ("so", _MEANS.get(one.verdict, one.verdict)),
            ("declared", one.declared),
            ("rules", rules),
        ]
        lines += [row for label, text in rows for row in labelled(label, text, width)]
    return lines


def _titles(title: str, verdict: str, compared: Compared, width: int) -> list[Line]:
    found = [one for one in compared.fields if one.verdict == verdict and not one.declared]
    if not found:
        return []
    text = "; ".join(f"{one.title} ({one.path})" for one in found)
    return [*heading(f"{title}: {len(found)}", width), *paragraph(text, width, indent=4)]


def _closing(compared: Compared) -> str:
    undeclared = sum(one.open for one in compared.fields)
    return (
        f"{counted(len(compared.fields), 'field')} compared, {undeclared} looser or different and "
        f"not declared; {compared.extra} only in the submittal. This is not a release."
    )
