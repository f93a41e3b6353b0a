"""A submittal beside a standard: verdicts follow from the rules, and what is declared is told."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner

from checker.command import app
from checker.judging.compare import DIFFERENT, LOOSER, NOT_SHOWN, SAME, STRICTER, Field, compare
from checker.judging.rulebook import Rulebook, load_rulebook
from checker.reading.reader import load_spec
from tests.support import spec_of

BOOK = load_rulebook()
SPECS = Path(__file__).parents[2] / "specs"


def fields(
    standard: dict[str, Any], submittal: dict[str, Any], book: Rulebook = BOOK
) -> dict[str, Field]:
    found = compare(spec_of(standard, paper="standard"), spec_of(submittal), book)
    return {one.path: one for one in found.fields}


def verdict(path: str, standard: Any, submitted: Any, **more: Any) -> Field:
    section, _, key = path.partition(".")
    wanted = {section: {**more.get(section, {}), key: standard}}
    given = {**more, section: {**more.get(section, {}), key: submitted}}
    return fields(wanted, given)[path]


PIPE = {"drain": {"present": "yes"}}

VERDICTS = [
    # A rule asks for at least so much of the key itself, and both pass or fail it alike.
    ("stone.bedding", "3 in", "4 in", STRICTER),
    ("stone.bedding", "4 in", "3 in", LOOSER),
    ("stone.bedding", "2 in", "50.8 mm", SAME),
    # One meets the rule and the other does not.
    ("stone.bedding", "2 in", "1 in", LOOSER),
    ("drain.material", "corrugated_coil", "rigid_pvc", STRICTER),
    ("slab.retarder", "yes", "no", LOOSER),
    # A rule asks for at most so much.
    ("backfill.lift", "8 in", "10 in", LOOSER),
    ("backfill.lift", "10 in", "8 in", STRICTER),
    # Through a quantity: more cover puts more stone over the crown.
    ("stone.cover", "12 in", "9 in", LOOSER),
    ("stone.cover", "9 in", "12 in", STRICTER),
    # Ranges and choices: what lies inside is what the standard asks.
    ("stone.cover", "6 in to 12 in", "8 in", SAME),
    ("stone.cover", "8 in to 12 in", "7 in", LOOSER),
    ("stone.cover", "8 in to 12 in", "14 in", STRICTER),
    ("drain.material", {"one of": ["rigid_pvc", "abs"]}, "abs", SAME),
    ("coat.dry_thickness", "at least 40 mil", "60 mil", SAME),
    # No rule says which of two good ones is better.
    ("stone.kind", "crushed_stone", "slag", DIFFERENT),
    ("stone.cover", "6 in", "not shown", NOT_SHOWN),
    ("stone.cover", "6 in", "by others", NOT_SHOWN),
    ("stone.cover", "6 in", "not applicable", DIFFERENT),
]  # fmt: skip


@pytest.mark.parametrize(("path", "standard", "submitted", "wanted"), VERDICTS)
def test_verdicts_follow_from_the_rules(
    path: str, standard: Any, submitted: Any, wanted: str
) -> None:
    assert verdict(path, standard, submitted, **PIPE).verdict == wanted


def test_the_direction_turns_with_the_rule(tmp_path: Path) -> None:
    # The same two papers, by a rule that asks for at most: what was looser is stricter.
    text = (
        "- id: stone.test\n  title: t\n  severity: minor\n  how_often: rare\n  stage: drain\n"
        "  trade: drain\n  protects: building\n  sources: common practice\n  rationale: r\n"
        "  remedy: r\n  examples: {met: [{says: a, spec: {}}], not met: [{says: b, spec: {}}]}\n"
        "  require: {value: stone.bedding, OP: 9 in}\n"
    )
    said = {}
    for operator in ("at least", "at most"):
        file = tmp_path / f"{operator}.yaml"
        file.write_text(text.replace("OP", operator), encoding="utf-8")
        given = fields(
            {"stone": {"bedding": "3 in"}}, {"stone": {"bedding": "2 in"}}, load_rulebook(file)
        )
        said[operator] = (given["stone.bedding"].verdict, given["stone.bedding"].rules)
    assert said == {
        "at least": (LOOSER, ("stone.test",)),
        "at most": (STRICTER, ("stone.test",)),
    }


def test_a_section_that_is_waved_at_is_not_shown() -> None:
    found = fields({"stone": {"cover": "6 in"}}, {"stone": "not shown"})
    assert found["stone.cover"].verdict == NOT_SHOWN


def test_the_one_item_of_a_list_is_the_one_item_of_the_other() -> None:
    def wrap(name: str, lap: str) -> dict[str, Any]:
        return {"fabrics": [{"id": name, "position": "around_stone", "top_lap": lap}]}

    found = fields(wrap("wrap", "12 in"), wrap("filter", "6 in"))
    assert found["fabrics.filter.top_lap"].verdict == LOOSER
    assert found["fabrics.filter.position"].verdict == SAME


def test_what_belongs_to_a_lot_is_not_compared() -> None:
    lot = {
        "job": {"lot": "14"},
        "levels": {"unit": "ft", "footing_top": 91.67},
        "stone": {"cover": "6 in"},
    }
    assert set(fields(lot, lot)) == {"stone.cover"}


# -- deviations ------------------------------------------------------------------------------------

FLAT = {"drain": {"present": "yes", "slope": "1/16 in/ft"}}


def declared(**deviation: str) -> Field:
    given = {"drain": {"present": "yes", "slope": "1/32 in/ft"}, "deviations": [deviation]}
    return fields(FLAT, given)["drain.slope"]


@pytest.mark.parametrize(
    "deviation",
    [
        {"id": "drain.slope"},
        {"id": "Slope"},
        {"id": "drain.flat"},
        {"id": "D1", "standard": "1/16 in/ft", "submitted": "1/32 in/ft"},
        {"id": "D1", "standard": "0.0625 in/ft", "submitted": "0.03125 in/ft"},
    ],
)
def test_a_difference_is_declared_by_its_name_or_by_both_values(deviation: dict[str, str]) -> None:
    found = declared(**deviation)
    assert (found.verdict, found.declared, found.open) == (LOOSER, deviation["id"], False)


@pytest.mark.parametrize(
    "deviation",
    [
        {"id": "D1"},
        {"id": "D1", "standard": "1/16 in/ft"},
        {"id": "D1", "standard": "1/16 in/ft", "submitted": "1/20 in/ft"},
        {"id": "stone.cover", "standard": "6 in", "submitted": "4 in"},
    ],
)
def test_half_a_declaration_is_none(deviation: dict[str, str]) -> None:
    assert declared(**deviation).open


def test_undeclared_differences_come_first_and_idle_deviations_are_named() -> None:
    standard = {"stone": {"cover": "12 in", "bedding": "2 in"}, "slab": {"retarder": "yes"}}
    submittal = {
        "stone": {"cover": "12 in", "bedding": "1 in"},
        "slab": {"retarder": "no"},
        "deviations": [{"id": "stone.bedding"}, {"id": "roof"}],
    }
    found = compare(spec_of(standard), spec_of(submittal), BOOK)
    assert [one.path for one in found.fields] == ["slab.retarder", "stone.bedding", "stone.cover"]
    assert found.open
    assert found.idle == ("roof",)


# -- the example, and the command ------------------------------------------------------------------


def test_the_example_submittal_beside_the_house_standard() -> None:
    # By eye: 14 in of stone beyond the footing where the standard has 16; all else that is shown
    # is what the standard asks, but for the name in the plan for settlement.
    (standard,) = load_spec(SPECS / "standards" / "HF-FDN-02.yaml")
    (submittal,) = load_spec(SPECS / "good.yaml")
    found = compare(standard, submittal, BOOK)
    assert {one.path: one.verdict for one in found.fields if one.open} == {
        "stone.beyond_footing": LOOSER,
        "backfill.settlement_plan": DIFFERENT,
    }
    assert next(one for one in found.fields if one.open).line > 0


def test_the_command_ends_with_1_for_what_is_not_declared(tmp_path: Path) -> None:
    standard = str(SPECS / "standards" / "HF-FDN-02.yaml")
    run = CliRunner().invoke(app, ["compare", standard, str(SPECS / "good.yaml")])
    assert run.exit_code == 1
    assert run.output.index("Not declared: 2") < run.output.index("Same:")
    assert run.output.rstrip().endswith("This is not a release.")
    same = CliRunner().invoke(app, ["compare", standard, standard])
    assert same.exit_code == 0
    assert "0 looser or different" in same.output
    missing = CliRunner().invoke(app, ["compare", str(tmp_path / "no.yaml"), standard])
    assert missing.exit_code == 2
