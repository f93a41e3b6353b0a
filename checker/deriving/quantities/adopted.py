"""Which codes the place has adopted, by the names a spec gives them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from checker.deriving.quantity import Body, NotApplicable, NotShown, quantity

Editions = tuple[tuple[str, str | None], ...]

COUNTRY_OF = {
    "irc": "us",
    "ibc": "us",
    "ipc": "us",
    "upc": "us",
    "nec": "us",
    "o_reg_332_12": "ca",
    "bcbc": "ca",
    "nbc": "ca",
    "ad_c": "gb",
    "bs_8102": "gb",
    "din_4095": "de",
}

_YEAR = re.compile(r"(?<!\d)(?:19|20)\d\d(?!\d)")


def code_family(name: str) -> str:
    """Return the plain name of a code: lower case, one underscore between words, without a year.

    `O. Reg. 332/12` gives `o_reg_332_12`, `IRC 2018` gives `irc`.
    """
    words = re.findall(r"[a-z0-9]+", name.lower())
    return "_".join(word for word in words if not _YEAR.fullmatch(word))


def code_year(name: str, edition: str | None) -> int | None:
    """Return the year of an edition, from its own text or else from the code's name."""
    found = _YEAR.search(edition or "") or _YEAR.search(name)
    return int(found.group()) if found else None


def _year_of(family: str) -> Body:
    def year(codes: tuple[str, ...], editions: Editions) -> int:
        for name, edition in editions:
            if code_family(name) == family:
                known = code_year(name, edition)
                if known is None:
                    raise NotShown(f"the edition of {name}", f"job.codes.{name}.edition")
                return known
        # A place that names its codes has said which others it has not adopted.
        raise NotApplicable("other codes are named, and this one is not among them")

    return year


def _named(family: str) -> Body:
    def named(codes: tuple[str, ...]) -> bool:
        return family in map(code_family, codes)

    return named


def country(shown: str | None, codes: tuple[str, ...] | None) -> str:
    """Return the country whose rules apply: the one shown, else that of the codes named."""
    if shown is not None:
        return shown
    found = set(_countries(codes or ()))
    if len(found) != 1:
        raise NotShown("the country whose rules apply", "job.country")
    return found.pop()


def _countries(codes: tuple[str, ...]) -> Iterator[str]:
    return (COUNTRY_OF[family] for family in map(code_family, codes) if family in COUNTRY_OF)


MODEL_CODES = {"irc": "International Residential Code", "ibc": "International Building Code"}

for _family, _title in MODEL_CODES.items():
    quantity(
        f"adopted.{_family}",
        title=f"{_title} adopted",
        kind="year",
        needs=("job.codes", "job.codes.all.edition?"),
        formula="year of the edition named",
        source="the codes named in the spec",
    )(_year_of(_family))

for _family, _title in {"o_reg_332_12": "O. Reg. 332/12", "din_4095": "DIN 4095"}.items():
    quantity(
        f"adopted.{_family}",
        title=f"{_title} adopted",
        kind="yes_no",
        needs=("job.codes",),
        formula="whether it is among the codes named",
        source="the codes named in the spec",
    )(_named(_family))

quantity(
    "adopted.country",
    title="country whose rules apply",
    kind="text",
    needs=("job.country?", "job.codes?"),
    formula="the country shown, else that of the codes named",
    source="the codes named in the spec",
)(country)
