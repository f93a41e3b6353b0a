"""A rule's page says all that the rule says, in words a builder reads."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from checker.judging.rulebook import Rulebook, load_rulebook
from checker.judging.standing import Source, register
from checker.showing.console import as_text
from checker.showing.rule_page import condition_words, rule_page, rule_rows, rules_list

RULES = """\
- id: drain.too-low
  title: Drain below the footing
  severity: critical
  how_often: known
  stage: drain
  due: excavation
  trade: drain
  protects: people
  guard: drain.too-high
  at_best: for_person
  seen: yes
  applies: [{value: drain.present, is: yes}]
  cases:
    - where: [{value: drain.material, one of: [abs, rigid_pvc]}]
      require:
        any:
          - {value: drain.invert_low, at least: levels.footing_underside}
          - all:
              - {value: drain.diameter, between: [3 in, 6 in]}
              - {value: drain.kind, shown: yes}
      sources: [{ref: irc-2018, at: R406.1}]
    - require: {value: drain.invert_low, at least: levels.footing_underside}
      severity: major
      remedy: Raise {item} by {off_by}.
      sources: common practice
  unless:
    - require: {value: drain.slope, above: 1 %}
      sources: common practice
  rationale: Soil runs out from under the footing.
  differs: One county lets the pipe lie at the base.
  remedy: Raise it by {off_by} or more.
  stop: There is no room ({room} left).
  ask: How deep is it?
  safety: Nobody digs beside a footing alone.
  examples:
    met: [{says: pipe beside the footing, spec: {drain: {present: yes}}}]
    not met: [{says: pipe under the footing, spec: {drain: {present: yes}}}]
- id: drain.too-high
  title: Drain above the floor
  severity: minor
  how_often: rare
  stage: roof_water
  trade: drain
  protects: building
  require: {value: drain.position, is not: inside}
  sources: common practice
  rationale: Water stands on the floor.
  remedy: Lower it.
  examples:
    met: [{says: low, spec: {drain: {present: yes}}}]
    not met: [{says: high, spec: {drain: {present: yes}}}]
- id: coat.sides
  title: A side without its coat
  severity: major
  how_often: common
  stage: coating
  trade: coating
  protects: building
  require: {value: drain.corners.each.invert, shown: yes}
  sources: common practice
  rationale: Water comes in there.
  remedy: Coat it.
  examples:
    met: [{says: coated, spec: {drain: {present: yes}}}]
    not met: [{says: bare, spec: {drain: {present: yes}}}]
"""


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Rulebook:
    path = tmp_path_factory.mktemp("rules") / "drain.yaml"
    path.write_text(RULES, encoding="utf-8")
    return load_rulebook(path)


def page(book: Rulebook, rule_id: str) -> str:
    rule = book.rule(rule_id)
    assert rule is not None
    return as_text(rule_page(rule, register()))


def flat(text: str) -> str:
    return " ".join(text.split())


def test_list_has_every_rule_once_by_section(book: Rulebook) -> None:
    text = as_text(rules_list(book))
    assert f"3 rules, digest {book.digest}." in text
    assert text.endswith(
        "\ncoat\n  coat.sides      major: A side without its coat\n"
        "\ndrain\n"
        "  drain.too-high  minor: Drain above the floor\n"
        "  drain.too-low   critical: Drain below the footing\n"
    )


def test_page_says_all_that_the_rule_says(book: Rulebook) -> None:
    text = flat(page(book, "drain.too-low"))
    for part in (
        "drain.too-low Drain below the footing",
        "severity critical; known to happen; protects people",
        "stage last cheap to put right at drain; trade drain",
        "due not before stage excavation",
        "applies where footing drain (drain.present) is yes",
        "seen Only values that somebody measured count, with a name and a date.",
        "at best Never counts as met",
        "why Soil runs out from under the footing.",
        "differs One county lets the pipe lie at the base.",
        "guard The remedy may not break drain.too-high.",
        "ask How deep is it?",
        "safety Nobody digs beside a footing alone.",
        "Meets it - pipe beside the footing",
        "Does not meet it - pipe under the footing",
    ):
        assert part in text


def test_cases_come_in_order_each_with_its_source(book: Rulebook) -> None:
    text = flat(page(book, "drain.too-low"))
    first = text.index("needed where pipe material (drain.material) is one of abs, rigid pvc: ")
    source = text.index("says International Residential Code 2018 R406.1")
    second = text.index("needed otherwise: lowest invert (drain.invert_low) is at least underside")
    assert first < source < second
    assert "This case is major. says common practice: no code is cited for it" in text
    assert "unless slope (drain.slope) is above 1 %." in text


def test_blanks_of_a_remedy_read_as_blanks(book: Rulebook) -> None:
    text = flat(page(book, "drain.too-low"))
    assert "do Raise [item] by [off by]. unless" in text
    assert "do Raise it by [off by] or more. STOP There is no room ([room] left)." in text
    assert "{" not in text


def test_nested_conditions_are_bracketed(book: Rulebook) -> None:
    rule = book.rule("drain.too-low")
    assert rule is not None
    assert condition_words(rule.cases[0].require) == (
        "lowest invert (drain.invert_low) is at least underside of footing "
        "(levels.footing_underside) or (pipe size (drain.diameter) is between 3 in and 6 in "
        "and kind of drain (drain.kind) is shown)"
    )


def test_rule_of_a_list_says_that_each_item_is_asked(book: Rulebook) -> None:
    assert "asked of every item of drain.corners" in flat(page(book, "coat.sides"))
    assert "asked of" not in page(book, "drain.too-high")


def test_rows_without_a_text_are_left_out(book: Rulebook) -> None:
    rule = book.rule("drain.too-high")
    assert rule is not None
    labels = [label for label, _ in rule_rows(rule)]
    assert labels == ["severity", "stage", "needed", "says", "why", "do"]


def test_other_editions_of_a_cited_place_are_named(book: Rulebook) -> None:
    rule = book.rule("drain.too-low")
    assert rule is not None
    (cited,) = rule.cases[0].sources
    older = Source("irc-1999", cited.at, cited.title, cited.kind, cited.family, "1999",
                   "us", "", "Less.", "own text", ("1999",))  # fmt: skip
    other = Source("irc-1998", "R999", cited.title, cited.kind, cited.family, "1998",
                   "us", "", "Else.", "own text", ("1998",))  # fmt: skip
    known = {(one.ref, one.at): one for one in (cited, older, other)}
    text = flat(as_text(rule_page(rule, known)))
    assert f"editions The register also holds {cited.title} R406.1 of 1999." in text
    assert "editions" not in as_text(rule_page(rule, {(cited.ref, cited.at): cited}))


def test_no_line_is_wider_than_80_in_a_pipe(book: Rulebook) -> None:
    for rule in book.rules:
        assert max(len(one) for one in page(book, rule.id).splitlines()) <= 80


def test_list_of_rules_and_pages_need_no_colour_library(tmp_path: Path) -> None:
    path = tmp_path / "drain.yaml"
    path.write_text(RULES, encoding="utf-8")
    program = (
        "import sys\n"
        "from checker.judging.rulebook import load_rulebook\n"
        "from checker.showing.console import write\n"
        "from checker.showing.rule_page import rules_list\n"
        f"write(rules_list(load_rulebook({str(path)!r})), sys.stdout)\n"
        "print(sorted({'rich', 'typer', 'jinja2', 'jsonschema'} & set(sys.modules)))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=Path(__file__).parents[2],
        capture_output=True, text=True, check=True, timeout=60,
    )  # fmt: skip
    assert done.stdout.splitlines()[-1] == "[]"
