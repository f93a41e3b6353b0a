"""No rule is idle: each has met something and failed something, and what is judged is listed."""

from __future__ import annotations

import yaml

from checker.data import data_dir
from checker.judging.review_data import MET, NOT_MET
from tests.rules.asking import BOOK
from tests.rules.coverage import of_examples, of_specs, table

# The share of the rules that the specs and the causes make fail, by now. It may only rise.
SHARE_THAT_FAILS = 0.40


def test_no_rule_is_idle() -> None:
    for side in (MET, NOT_MET):
        idle = [rule.id for rule in BOOK.rules if not of_examples()[rule.id][side]]
        assert idle == []


def test_the_specs_make_many_rules_fail() -> None:
    failing = [rule.id for rule in BOOK.rules if of_specs()[rule.id][NOT_MET]]
    assert len(failing) >= SHARE_THAT_FAILS * len(BOOK.rules)


def test_the_table_has_a_line_for_every_rule() -> None:
    assert [line.split()[0] for line in table()[1:]] == [rule.id for rule in BOOK.rules]


def test_what_is_not_judged_is_told_with_the_reason() -> None:
    text = (data_dir("shared") / "not_judged.yaml").read_text(encoding="utf-8")
    found = yaml.safe_load(text)
    assert all(set(one) == {"what", "why"} and all(one.values()) for one in found)
    assert len({one["what"] for one in found}) == len(found)
    page = (data_dir("rules") / "README.md").read_text(encoding="utf-8")
    assert page.count("## Not judged") == 1
