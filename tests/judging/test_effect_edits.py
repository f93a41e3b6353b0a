"""What was edited of a lot: values by file and line, the rules and settings of its house."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.judging.effect_data import NOTHING, OTHER, WORSE, Edit, Said
from checker.judging.judge import review
from checker.judging.review_data import NOT_SHOWN
from checker.reading.reader import load_spec
from tests.judging import houses
from tests.judging.effects import (
    BOOK,
    INCH,
    LOT,
    STANDARD,
    Collection,
    line_of,
    margins,
)

DIAMETER = "outside_diameter: 4.215 in"
COAT = "dry_thickness: at least 40 mil"


@pytest.fixture
def collection(tmp_path: Path) -> Collection:
    return Collection(tmp_path)


# -- what was edited -------------------------------------------------------------------------------


def test_an_edit_says_where_it_stands_and_what_it_was(collection: Collection) -> None:
    lot = collection.edit(COAT, "dry_thickness: 30 mil").on()
    line = line_of(COAT, collection.before / STANDARD)
    assert lot.edits == (
        Edit(
            "coat.dry_thickness", "dry coat thickness", STANDARD,
            Said("at least 40 mil", STANDARD, line), Said("30 mil", STANDARD, line),
        ),
    )  # fmt: skip
    assert lot.after.leans_on == (STANDARD,)


def test_only_what_is_said_counts_not_where_or_how(collection: Collection) -> None:
    collection.edit("coat:\n", "# The coat.\n\ncoat:\n")
    collection.edit("bedding: 2 in", 'bedding: 2"')
    collection.edit("  wall_thickness: 0.12 in\n", "")
    collection.edit("  position: beside\n", "  position: beside\n  wall_thickness: 0.120 in\n")
    effect = collection.effect()
    assert effect.lots == ()
    assert {paper.file for paper in effect.same} == {LOT, STANDARD}


def test_what_comes_first_may_decide_in_which_units_a_rule_is_read(collection: Collection) -> None:
    # 2,145 sq ft on sand at 14 gpm for each 1,000 are 30.03 gpm or 1.895 L/s. A paper without levels
    # is in the system of its first length: over 30 gpm a pit is to be 24 in wide, 1.9 L/s are not
    # reached.
    metric, american = "wall: {thickness: 250 mm}\n", "sump: {present: yes, diameter: 18 in}\n"
    more = "soil: {bearing: {usc: SP}}\nslab: {area: 2145 sq ft}\n"
    for side, first in ((collection.before, metric), (collection.after, american)):
        second = american if first == metric else metric
        text = "".join(["vocabulary: 1\n", first, second, more])
        (side / "lot-16.yaml").write_text(text, encoding="utf-8")
    lot = collection.on("lot-16.yaml")
    assert (lot.edits, lot.way) == ((), WORSE)
    assert [one.finding.rule for one in lot.of(WORSE)] == ["sump.pit-for-flow"]


def test_what_changes_nothing_that_a_review_sees_is_not_told(tmp_path: Path) -> None:
    names = ("K. Fenn", "R. Halloway")
    sides = [{"belowgrade": f"house: Harrow and Fenn Homes\napprovers: [{one}]\n"} for one in names]
    effect = of_house(tmp_path, *sides).effect()
    assert effect.lots == ()
    assert [paper.file for paper in effect.same] == [LOT_14]


def test_a_lot_that_says_its_own_is_not_reached(collection: Collection) -> None:
    own = ("\nlevels:\n", "\ncoat: {dry_thickness: 45 mil}\nlevels:\n")
    file = collection.lot(16, own)
    effect = collection.edit(COAT, "dry_thickness: 30 mil").effect()
    (same,) = effect.same
    assert (same.file, same.leans_on) == (file, (STANDARD,))


def test_a_lot_that_now_says_its_own_was_edited_itself(collection: Collection) -> None:
    own = "\ncoat: {dry_thickness: 45 mil}\nlevels:\n"
    lot = collection.edit("\nlevels:\n", own, file=LOT).on()
    (edit,) = lot.edits
    assert edit.file == LOT
    line = line_of(COAT, collection.before / STANDARD)
    assert edit.before == Said("at least 40 mil", STANDARD, line)
    assert edit.after == Said("45 mil", LOT, line_of("45 mil", collection.after / LOT))


def test_a_value_from_another_paper_is_told_apart(collection: Collection) -> None:
    lot = collection.edit("thickness: 12 in", "thickness: {value: 12 in, from: sheet S-2}").on()
    (edit,) = lot.edits
    assert edit.before is not None
    assert edit.after is not None
    assert (edit.before.text, edit.after.text) == ("12 in", "12 in (from sheet S-2)")
    assert lot.way == NOTHING


def test_a_list_and_a_section_are_told_whole(collection: Collection) -> None:
    collection.edit("outlets: [daylight]", "outlets: [daylight, sump]")
    collection.edit("insulation: {kind: none}", "insulation: not shown")
    collection.edit("- {id: wrap, kind: nonwoven", "- {id: filter, kind: nonwoven")
    lot = collection.on()
    told = {
        edit.path: tuple(side and side.text for side in (edit.before, edit.after))
        for edit in lot.edits
    }
    assert told["fits.outlets"] == ("daylight", "daylight, sump")
    assert told["fabrics"] == ("wrap", "filter")
    assert told["insulation"] == (None, "not shown")
    assert told["insulation.kind"] == ("none", None)


def test_the_one_item_of_a_list_is_the_same_by_another_name(collection: Collection) -> None:
    lot = collection.edit("- {id: wrap, kind: nonwoven", "- {id: filter, kind: nonwoven").on()
    assert [one for one in lot.turns if one.finding.rule.startswith("fabrics.")] == []


def test_an_item_asks_no_more_than_the_whole_list_did(collection: Collection) -> None:
    # Where no outlet is listed, the rules of outlets wait for the list; then for each outlet on it.
    text = (collection.before / STANDARD).read_text(encoding="utf-8")
    listed = text[text.index("outlets:\n  - ") : text.index("slab:\n")]
    collection.edit(listed, "# Nothing yet.\n", also=True)
    lot = collection.edit("# Nothing yet.\n", "outlets: [{id: main}, {id: rear}]\n").on()
    assert [edit.path for edit in lot.edits] == ["outlets"]
    (spec,) = load_spec(collection.after / LOT)
    waiting = [
        one
        for one in review(spec, BOOK).of(NOT_SHOWN)
        if one.rule.startswith("outlets.") and one.item
    ]
    assert {one.item for one in waiting} == {"main", "rear"}
    assert [one for one in lot.of(WORSE) if one.finding.rule.startswith("outlets.")] == []


# -- the house -------------------------------------------------------------------------------------

LOT_14 = "lots/lot-14.yaml"
HOUSE = "house: Harrow and Fenn Homes\nrules: [rules]\n"
BED = """\
- amends: stone.bedding
  reason: {reason}
  require: {{value: stone.bedding, at least: {depth}}}
  sources: house standard
"""
LAID = """\
vocabulary: 1
paper: house
job: {name: Quillwater Lane, lot: "14", as_of: 2031-05-01}
drain: {present: yes, kind: pipe, slope: 1/32 in/ft, run_long: 72 ft}
stone: {kind: crushed_stone, bedding: 3 in}
"""


def of_house(folder: Path, before: dict[str, str], after: dict[str, str]) -> Collection:
    """Return a lot of a house whose files differ."""
    collection = Collection(folder / "specs")
    for side, files in (("before", before), ("after", after)):
        (folder / side).mkdir()
        houses.write(folder / side, lot=LAID, **files)
    collection.before, collection.after = folder / "before", folder / "after"
    return collection


def test_a_stricter_rule_of_the_house_is_told_with_what_it_fails(tmp_path: Path) -> None:
    # 3 in of bed, where the house asked 2 in and now asks 4 in: 1 in of room, then 1 in short.
    collection = of_house(
        tmp_path,
        {"belowgrade": HOUSE, "book": BED.format(reason="our clay is soft", depth="2 in")},
        {"belowgrade": HOUSE, "book": BED.format(reason="our clay is soft", depth="4 in")},
    )
    lot = collection.on(LOT_14)
    assert lot.edits == ()
    (rule,) = lot.rules
    assert (rule.file, rule.rule.id) == ("belowgrade.yaml", "stone.bedding")
    (turn,) = lot.turns
    assert (turn.way, turn.finding.rule) == (WORSE, "stone.bedding")
    assert turn.before is not None
    assert turn.before.compared[0].margin == pytest.approx(INCH)
    assert turn.finding.compared[0].margin == pytest.approx(-INCH)


def test_the_house_file_is_called_as_it_is_seen_through_a_link(tmp_path: Path) -> None:
    books = [BED.format(reason="our clay is soft", depth=depth) for depth in ("2 in", "4 in")]
    collection = of_house(tmp_path, *[{"belowgrade": HOUSE, "book": book} for book in books])
    (tmp_path / "elsewhere").mkdir()
    for side in ("before", "after"):
        link = tmp_path / "elsewhere" / side
        link.symlink_to(getattr(collection, side), target_is_directory=True)
        setattr(collection, side, link)
    (rule,) = collection.on(LOT_14).rules
    assert rule.file == "belowgrade.yaml"


def test_the_least_room_of_a_rule_is_what_counts(tmp_path: Path) -> None:
    # At least 2 in and at most 6 in: 5 in leave 1 in, 5 1/2 in leave 1/2 in, both at the top.
    both = BED.format(reason="no room", depth="2 in").replace(
        "{value: stone.bedding, at least: 2 in}",
        "{all: [{value: stone.bedding, at least: 2 in}, {value: stone.bedding, at most: 6 in}]}",
    )
    collection = of_house(tmp_path, *[{"belowgrade": HOUSE, "book": both}] * 2)
    collection.edit("bedding: 3 in", "bedding: 5 in", file=LOT_14, also=True)
    lot = collection.edit("bedding: 5 in", "bedding: 5 1/2 in", file=LOT_14).on(LOT_14)
    assert margins(lot)["stone.bedding"].change == pytest.approx(-INCH / 2)


@pytest.mark.parametrize(
    ("was", "now", "way"), [("minor", "major", WORSE), ("major", "minor", OTHER)]
)
def test_the_same_fault_is_worse_where_it_is_held_graver(
    tmp_path: Path, was: str, now: str, way: str
) -> None:
    book = "- {{amends: drain.flat, reason: silt in two lots, severity: {}}}\n"
    sides = [{"belowgrade": HOUSE, "book": book.format(severity)} for severity in (was, now)]
    lot = of_house(tmp_path, *sides).on(LOT_14)
    (turn,) = lot.turns
    assert (turn.way, turn.finding.rule, turn.finding.severity) == (way, "drain.flat", now)


def test_a_reason_that_is_worded_anew_changes_no_lot(tmp_path: Path) -> None:
    collection = of_house(
        tmp_path,
        {"belowgrade": HOUSE, "book": BED.format(reason="our clay is soft", depth="2 in")},
        {"belowgrade": HOUSE, "book": BED.format(reason="our clay is very soft", depth="2 in")},
    )
    lot = collection.on(LOT_14)
    assert [rule.rule.id for rule in lot.rules] == ["stone.bedding"]
    assert (lot.way, lot.turns, lot.margins) == (NOTHING, (), ())


def test_a_rule_that_is_switched_off_is_not_better(tmp_path: Path) -> None:
    # 1/32 in/ft is flatter than any rule asks: it stays so, whoever stops asking.
    off = "house: Harrow and Fenn Homes\noff:\n  - {rule: drain.flat, reason: settled elsewhere}\n"
    collection = of_house(
        tmp_path, {"belowgrade": "house: Harrow and Fenn Homes\n"}, {"belowgrade": off}
    )
    lot = collection.on(LOT_14)
    (turn,) = lot.turns
    assert (turn.way, turn.finding.rule, turn.after) == (OTHER, "drain.flat", None)
    assert [rule.after for rule in lot.rules] == [None]
    assert not lot.holds("minor")


def test_a_variance_makes_nothing_better_and_its_end_makes_it_worse(tmp_path: Path) -> None:
    sides: tuple[dict[str, str], dict[str, str]] = (
        {"belowgrade": "house: Harrow and Fenn Homes\n"},
        {"belowgrade": houses.VARIANCE},
    )
    granted = of_house(tmp_path / "granted", *sides).on(LOT_14)
    ended = of_house(tmp_path / "ended", *reversed(sides)).on(LOT_14)
    assert [one.way for one in granted.turns] == [OTHER]
    assert [one.way for one in ended.turns] == [WORSE]
    assert [edit.path for edit in granted.edits] == ["variances.V-07"]
    (edit,) = granted.edits
    assert edit.after is not None
    assert edit.after.text.startswith("drain.flat, 2031-04-15 to 2031-07-15")


def test_the_house_says_from_which_severity_on_it_holds(tmp_path: Path) -> None:
    strict, loose = (f"{HOUSE}hold_at: {severity}\n" for severity in ("minor", "critical"))
    book = {depth: BED.format(reason="our clay is soft", depth=depth) for depth in ("2 in", "4 in")}
    for house, holds in ((strict, True), (loose, False)):
        folder = tmp_path / str(holds)
        folder.mkdir()
        collection = of_house(
            folder,
            {"belowgrade": house, "book": book["2 in"]},
            {"belowgrade": house, "book": book["4 in"]},
        )
        lot = collection.on(LOT_14)
        assert lot.turns[0].finding.severity != "critical"
        assert lot.holds() is holds
