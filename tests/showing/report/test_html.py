"""The page says what the review says, once each, and takes nothing from anywhere else."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import html5lib
import pytest

from checker.judging.review_data import Allowance, Amended
from checker.showing.json_report import as_json
from checker.showing.report.html import report_page
from checker.showing.text import render
from tests.showing.report.conftest import (
    Pairs,
    classed,
    parsed,
    refers_only_to_itself,
    under,
    words,
)

ROOT = Path(__file__).parents[3]
SPECS = sorted(path.name for path in (ROOT / "specs").glob("*.yaml"))


def test_parser_of_these_tests_refuses_what_is_not_valid() -> None:
    with pytest.raises(html5lib.html5parser.ParseError):
        parsed("<!DOCTYPE html><html><head><title>x</title></head><body><p></div></body></html>")


@pytest.mark.parametrize("name", SPECS)
def test_every_finding_stands_on_it_once_with_its_outcome(
    reviewed: Callable[..., Pairs], name: str
) -> None:
    pairs = reviewed(name)
    page = parsed(report_page(pairs))
    shown = Counter(
        (one.get("data-rule"), one.get("data-item"), one.get("data-outcome"))
        for one in page.iter()
        if one.get("data-rule")
    )
    report = json.loads(as_json([review for _, review in pairs]))
    wanted = Counter(
        (one["rule"], one["item"], one["outcome"])
        for review in report["reviews"]
        for one in review["findings"]
    )
    assert wanted
    assert shown == wanted


def test_faults_have_the_numbers_and_titles_of_the_text(bad: Pairs, bad_page: ET.Element) -> None:
    lines = ["".join(span.text for span in line) for line in render([bad[0][1]], width=100)]
    text = re.findall(r"(?m)^(\d+)\. +(\w+: .*)$", "\n".join(lines))
    heads = [words(under(one, ".//h4")) for one in classed(bad_page, "fault")]
    assert len(heads) > 40
    # A title that the text had to wrap is held to its first line.
    assert len(heads) == len(text)
    for head, (number, title) in zip(heads, text, strict=True):
        assert head.startswith(f"{number} {title}")


def test_figures_of_a_fault_are_those_of_the_review(bad: Pairs, bad_page: ET.Element) -> None:
    (fault,) = [f for f in classed(bad_page, "fault") if f.get("data-rule") == "drain.above-slab"]
    # 91.80 + (4.215 - 0.12)/12 = 92.141; 92.141 - 91.67 = 0.471 ft = 5.66 in, rounded up.
    (figures,) = classed(fault, "figures")
    assert words(figures) == (
        "shown 92.14 ft crown of the pipe at its highest corner "
        "needed below underside of the slab 91.67 ft off by 5.7 in"
    )
    assert "crown = invert + outside diameter - wall thickness" in words(fault)


@pytest.mark.parametrize("name", SPECS)
def test_page_is_valid_and_asks_for_nothing(reviewed: Callable[..., Pairs], name: str) -> None:
    text = report_page(reviewed(name))
    page = parsed(text)
    refers_only_to_itself(page)
    assert "@import" not in text
    assert re.search(r"url\((?!#)", text) is None
    assert text.isascii()


@pytest.mark.parametrize("name", SPECS)
def test_headings_go_down_one_level_at_a_time(reviewed: Callable[..., Pairs], name: str) -> None:
    page = parsed(report_page(reviewed(name)))
    levels = [int(one.tag[1]) for one in page.iter() if re.fullmatch(r"h[1-6]", str(one.tag))]
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in zip(levels, levels[1:], strict=False))
    assert page.get("lang") == "en"
    for table in page.iter("table"):
        assert all(head.get("scope") for head in table.iter("th"))
        assert table.find("thead/tr/th") is not None


def test_several_assemblies_have_a_sheet_each_and_an_index(reviewed: Callable[..., Pairs]) -> None:
    pairs = reviewed("good.yaml", "walkout.yaml", "metric.yaml")
    page = parsed(report_page(pairs))
    assert len(pairs) > 3
    sheets = classed(page, "sheet")
    assert [words(under(one, "h2")) for one in sheets] == [r.assembly for _, r in pairs]
    links = [one.get("href") for one in under(page, "body/header/nav").iter("a")]
    assert links == [f"#{sheet.get('id')}" for sheet in sheets]


def test_one_assembly_needs_no_index(bad_page: ET.Element) -> None:
    assert bad_page.find("body/header/nav") is None


def test_safety_comes_before_all_else_and_in_no_extract(bad_page: ET.Element) -> None:
    (sheet,) = classed(bad_page, "sheet")
    first, *_ = [one for one in sheet.iter() if one.tag in ("section", "nav", "table")]
    assert "safety" in first.get("class", "")
    assert "DANGER" in words(first)
    assert [one for one in first.iter() if one.get("data-trade") or one.get("data-stage")] == []


def test_last_line_says_that_it_is_no_release(bad_page: ET.Element) -> None:
    texts = [words(one) for one in under(bad_page, "body").iter("p")]
    assert texts[-1].endswith("This is not a release.")
    assert "58 not met" in texts[-1]


def test_what_was_let_pass_is_said(bad: Pairs) -> None:
    assert "(let pass)" not in report_page(bad)
    assert "(let pass)" in report_page(bad, accepted=True)


def test_nobody_has_signed(bad_page: ET.Element) -> None:
    blanks = classed(bad_page, "blank")
    assert len(blanks) == 1
    assert words(blanks[0]) == ""


HOSTILE = """\
vocabulary: 1
job:
  name: "</title><script>alert(1)</script>"
  lot: '"><img src=x onerror=alert(2)>'
  jurisdiction: "\\e[31mred\\e[0m \\u202eturned {{ 7 * 7 }} at Kraków"
levels: {unit: ft, datum: LONG, slab_underside: 91.67, footing_top: 91.67}
drain: {present: yes}
"""


def test_text_of_a_spec_is_text_everywhere(reviewed_text: Callable[[str], Pairs]) -> None:
    long = "note " * 400
    text = report_page(reviewed_text(HOSTILE.replace("LONG", f'"{long}"')))
    page = parsed(text)
    assert len(list(page.iter("script"))) == 1
    assert list(page.iter("img")) == []
    block = words(classed(page, "block")[0])
    assert "</title><script>alert(1)</script>" in block
    assert '"><img src=x onerror=alert(2)>' in block
    assert "red turned {{ 7 * 7 }} at Kraków" in block
    assert text.isascii()
    assert long.strip() in block
    assert "\x1b" not in text
    assert "&#8238;" not in text
    assert "<script>alert(1)" in words(under(page, "head/title"))


def test_page_is_the_same_whatever_the_order_of_sets(tmp_path: Path) -> None:
    pages = []
    for seed in ("1", "2"):
        to = tmp_path / f"{seed}.html"
        subprocess.run(
            [sys.executable, "-m", "checker", "review", "specs/bad.yaml", "specs/metric.yaml",
             "--as", "html", "--to", to],
            cwd=ROOT, env={**os.environ, "PYTHONHASHSEED": seed}, timeout=120, check=False,
        )  # fmt: skip
        pages.append(to.read_bytes())
    assert pages[0] == pages[1]
    assert pages[0].startswith(b"<!DOCTYPE html>")


def test_page_is_printed_where_no_file_is_named(bad: Pairs) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "checker", "review", "specs/bad.yaml", "--as", "html"],
        cwd=ROOT, env={**os.environ, "PYTHONIOENCODING": "ascii"}, capture_output=True, text=True,
        timeout=120, check=False,
    )  # fmt: skip
    assert done.returncode == 1
    assert done.stderr == ""
    assert len(classed(parsed(done.stdout), "fault")) == len(bad[0][1].of("not met"))


def test_what_was_allowed_and_amended_is_told_with_who_did_it(bad: Pairs) -> None:
    ((spec, review),) = bad
    first = review.of("not met")[0]._replace(
        varied="V-07", amended=(Amended("Harrow and Fenn Homes", "our clay is worse"),)
    )
    allowed = Allowance(
        "V-07", first.rule, "in force", "R. Halloway", "rock at 6 ft", "sump", "2032-01-01"
    )
    page = parsed(
        report_page(
            [(spec, replace(review, findings=(first,), questions=(), variances=(allowed,)))]
        )
    )
    (fault,) = classed(page, "fault")
    assert "Allowed by variance V-07." in words(fault)
    assert "by Harrow and Fenn Homes: our clay is worse" in words(fault)
    (row,) = [one for one in page.iter("tr") if words(one).startswith("V-07")]
    assert words(row) == (
        f"V-07 {first.rule} in force, by R. Halloway, until 2032-01-01 rock at 6 ft; sump"
    )
