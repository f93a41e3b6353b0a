"""Soil classes and adopted codes through a spec."""

from __future__ import annotations

from typing import Any

import pytest

import checker.deriving.quantities  # noqa: F401  (registers the quantities)
from checker.deriving.engine import Derived, Deriver
from checker.deriving.quantities.adopted import code_family, code_year
from tests.support import spec_of


def find(name: str, **sections: Any) -> Derived:
    return Deriver(spec_of(sections)).get(name)


@pytest.mark.parametrize(
    ("bank", "fine"),
    [
        ({"usc": "CL"}, True),
        ({"usc": "SM"}, False),
        ({"fines": "72 %"}, True),
        ({"fines": "30 %"}, False),
        ({"gradation": {"No. 200": "72 %", "No. 40": "95 %"}}, True),
        ({"usc": "CL", "fines": "72 %"}, True),
    ],
)
def test_fine_grained_by_symbol_or_by_fines(bank: dict[str, Any], fine: bool) -> None:
    assert find("soil.bank.fine_grained", soil={"bank": bank}).value is fine


def test_a_symbol_that_its_fines_contradict_is_no_class() -> None:
    found = find("soil.bank.fine_grained", soil={"bank": {"usc": "CL", "fines": "20 %"}})
    assert not found.known
    assert "contradict" in found.because
    assert found.missing == ("soil.bank.usc",)
    assert find("soil.bank.fine_grained").missing == ("soil.bank.usc",)


def test_fines_come_from_the_curve_when_they_are_not_shown() -> None:
    curve = {"No. 200": "72 %", "No. 40": "95 %"}
    assert find("soil.bank.fines_share", soil={"bank": {"gradation": curve}}).value == 0.72
    both = {"gradation": curve, "fines": "70 %"}
    assert find("soil.bank.fines_share", soil={"bank": both}).value == 0.70
    assert find("soil.bank.fines_share").missing[0] == "soil.bank.fines"


@pytest.mark.parametrize(("symbol", "drains"), [("GP", True), ("SC", False), ("CL", False)])
def test_free_draining_by_symbol(symbol: str, drains: bool) -> None:
    for place in ("bearing", "bank", "backfill"):
        found = find(f"soil.{place}.free_draining", soil={place: {"usc": symbol}})
        assert found.value is drains


def codes(*named: tuple[str, str]) -> dict[str, Any]:
    listed = [{"id": name} | ({"edition": edition} if edition else {}) for name, edition in named]
    return {"codes": listed}


def test_the_year_of_the_edition_named() -> None:
    job = codes(("IRC", "2018"), ("IBC", "2021 with amendments"))
    assert find("adopted.irc", job=job).value == 2018
    assert find("adopted.ibc", job=job).value == 2021


def test_a_code_without_its_edition_is_asked_for() -> None:
    assert find("adopted.irc", job=codes(("IRC", ""))).missing == ("job.codes.IRC.edition",)


def test_a_code_that_is_not_among_those_named_does_not_apply() -> None:
    found = find("adopted.irc", job=codes(("O Reg 332/12", "")))
    assert not found.known
    assert found.missing == ()
    assert found.inapplicable
    assert find("adopted.o_reg_332_12", job=codes(("IRC", "2018"))).value is False
    assert find("adopted.o_reg_332_12", job=codes(("O Reg 332/12", ""))).value is True
    assert find("adopted.din_4095", job=codes(("DIN 4095", ""))).value is True


def test_without_any_code_named_it_is_asked_for() -> None:
    for name in ("adopted.irc", "adopted.ibc", "adopted.o_reg_332_12", "adopted.din_4095"):
        assert find(name).missing == ("job.codes",)


def test_the_country_follows_from_the_codes_unless_shown() -> None:
    assert find("adopted.country", job=codes(("IRC", "2018"))).value == "us"
    assert find("adopted.country", job=codes(("DIN 4095", ""))).value == "de"
    assert find("adopted.country", job=codes(("DIN 4095", "")) | {"country": "ca"}).value == "ca"
    both = codes(("IRC", "2018"), ("DIN 4095", ""))
    assert find("adopted.country", job=both).missing == ("job.country",)
    assert find("adopted.country").missing == ("job.country",)


@pytest.mark.parametrize(
    ("written", "family", "year"),
    [
        ("IRC", "irc", None),
        ("IRC 2018", "irc", 2018),
        ("O. Reg. 332/12", "o_reg_332_12", None),
        ("DIN 4095", "din_4095", None),
        ("BS 8102:2022", "bs_8102", 2022),
    ],
)
def test_names_of_codes(written: str, family: str, year: int | None) -> None:
    assert code_family(written) == family
    assert code_year(written, None) == year
