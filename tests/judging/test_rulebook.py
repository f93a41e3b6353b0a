"""A rule book is checked as strictly as a spec: every fault with its file and line."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.judging.rulebook import load_rulebook
from checker.reading.faults import Fault, Unreadable

GOOD = """- id: stone.thin
  title: Bed too thin
  severity: major
  how_often: known
  stage: drain
  trade: drain
  protects: building
  applies: [{value: drain.present, is: yes}]
  require: {value: stone.bedding, at least: 2 in}
  sources: [{ref: irc-2018, at: R406.1}]
  rationale: Because.
  remedy: Add stone.
  examples:
    met: [{says: enough, spec: {stone: {bedding: 2 in}}}]
    not met: [{says: thin, spec: {stone: {bedding: 1 in}}}]
"""


def faults_of(tmp_path: Path, text: str) -> list[Fault]:
    """Return the faults of a rule file that must have some."""
    path = tmp_path / "rules.yaml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(Unreadable) as raised:
        load_rulebook(path)
    return raised.value.faults


def test_the_rule_that_the_faults_below_are_made_in_is_sound(tmp_path: Path) -> None:
    path = tmp_path / "rules.yaml"
    path.write_text(GOOD, encoding="utf-8")
    (rule,) = load_rulebook(path).rules
    assert rule.id == "stone.thin"


REQUIRE = "  require: {value: stone.bedding, at least: 2 in}\n"
SOURCES = "  sources: [{ref: irc-2018, at: R406.1}]\n"
CASES = [
    ("unknown path", REQUIRE, REQUIRE.replace("bedding", "beding"), 9, ["stone.beding"]),
    ("wrong unit", REQUIRE, REQUIRE.replace("2 in", "2 gal"), 9, ["gal", "length"]),
    ("missing unit", REQUIRE, REQUIRE.replace("2 in", "2"), 9, ["no unit"]),
    ("not a yes or no", "is: yes", "is: sometimes", 8, ["yes or no", "sometimes"]),
    ("missing source", SOURCES, "", 1, ["sources", "missing"]),
    ("unknown source", SOURCES, SOURCES.replace("R406.1", "R999.9"), 10, ["register has no source", "R999.9"]),
    ("no failing example", "    not met: [{says: thin, spec: {stone: {bedding: 1 in}}}]\n", "", 1, ["not met"]),
    ("no comparator", REQUIRE, "  require: {value: stone.bedding}\n", 9, ["at most, at least"]),
    ("two comparators", REQUIRE, REQUIRE.replace("}", ", at most: 4 in}"), 9, ["one of"]),
    ("unknown comparator", REQUIRE, REQUIRE.replace("at least", "over"), 9, ["over"]),
    ("unknown severity", "severity: major", "severity: grave", 1, ["grave", "critical, major, minor"]),
    ("unknown stage", "stage: drain", "stage: digging", 1, ["digging", "excavation"]),
    ("unknown key", "  trade: drain\n", "  trade: drain\n  priority: high\n", 1, ["priority"]),
    ("missing key", "  rationale: Because.\n", "", 1, ["rationale", "missing"]),
    ("no requirement", REQUIRE, "", 1, ["require"]),
    ("same key twice", "  trade: drain\n", "  trade: drain\n  trade: coating\n", 7, ["twice"]),
    ("unlike things compared", REQUIRE, REQUIRE.replace("2 in", "coat.area"), 9, ["cannot be compared"]),
    ("unknown guard", "  trade: drain\n", "  trade: drain\n  guard: drain.nothing\n", 1, ["guard"]),
    ("unknown table", REQUIRE, REQUIRE.replace("2 in", "{table: t, row: soil.bank.fines, column: c}"), 9, ["table 't'"]),
    ("unknown word", "drain.present, is: yes", "drain.material, is: copper", 8, ["copper", "rigid_pvc"]),
]  # fmt: skip


@pytest.mark.parametrize(
    ("what", "old", "new", "line", "words"), CASES, ids=[case[0] for case in CASES]
)
def test_fault(tmp_path: Path, what: str, old: str, new: str, line: int, words: list[str]) -> None:
    assert old in GOOD
    (fault, *more) = faults_of(tmp_path, GOOD.replace(old, new))
    assert not more, more
    assert fault.file.endswith("rules.yaml")
    assert fault.line == line, fault
    for word in words:
        assert word in fault.message, fault


def test_all_faults_in_one_go(tmp_path: Path) -> None:
    text = GOOD.replace("2 in}", "2 gal}", 1).replace("severity: major", "severity: grave")
    assert len(faults_of(tmp_path, text)) == 2


def test_two_rules_of_one_id(tmp_path: Path) -> None:
    (fault,) = faults_of(tmp_path, GOOD + GOOD)
    assert "two rules" in fault.message


def test_a_critical_rule_never_rests_on_memory(tmp_path: Path) -> None:
    text = GOOD.replace("severity: major", "severity: critical")
    weak = text.replace("ref: irc-2018, at: R406.1", "ref: irc-2018, at: R404.1.7")
    assert load_and_count(tmp_path, text) == 1
    (fault,) = faults_of(tmp_path, weak)
    assert "critical rule may not rest on" in fault.message


def load_and_count(tmp_path: Path, text: str) -> int:
    """Return how many rules a sound rule file holds."""
    path = tmp_path / "sound.yaml"
    path.write_text(text, encoding="utf-8")
    return len(load_rulebook(path).rules)


@pytest.mark.parametrize("text", ["id: x\n", "just words\n", "- a\n- b\n"])
def test_not_a_rule_file(tmp_path: Path, text: str) -> None:
    assert faults_of(tmp_path, text)


def test_no_rule_at_all_is_an_error(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError, match="no rule"):
        load_rulebook(tmp_path)
