"""What an edit of a standard does to a lot that starts from it, worked out by hand.

Lot 15 by hand, as the head of specs/house.yaml has it: crown at the highest corner
91.25 + (4.215 - 0.12)/12 = 91.59125 ft, and the slab's underside at 91.67 ft, so that
(91.67 - 91.25) x 12 - 4.095 = 0.945 in are left.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.judging.effect import BETTER, NOTHING, OTHER, ROOM, WORSE, Edit, Said
from checker.judging.judge import review
from checker.judging.review_data import MET, NOT_MET, NOT_SHOWN
from checker.reading.reader import load_spec
from tests.judging import houses
from tests.judging.effects import (
    BOOK,
    INCH,
    LOT,
    MIL,
    STANDARD,
    Collection,
    line_of,
    margins,
    turns,
)

DIAMETER = "outside_diameter: 4.215 in"
COAT = "dry_thickness: at least 40 mil"


@pytest.fixture
def collection(tmp_path: Path) -> Collection:
    return Collection(tmp_path)


# -- room ------------------------------------------------------------------------------------------


def test_a_thicker_pipe_takes_its_thickness_from_the_room_under_the_slab(
    collection: Collection,
) -> None:
    # 4.5 - 4.215 = 0.285 in; 0.945 - 0.285 = 0.66 in are left.
    lot = collection.edit(DIAMETER, "outside_diameter: 4.5 in").on()
    above = margins(lot)["drain.above-slab"]
    assert above.before is not None
    assert above.before.margin == pytest.approx(0.945 * INCH, abs=1e-6)
    assert above.after.margin == pytest.approx(0.66 * INCH, abs=1e-6)
    assert above.change == pytest.approx(-0.285 * INCH, abs=1e-6)
    assert (above.after.kind, above.after.unit, above.after.room) == ("level", "in", "0.66 in")
    # 12 in of footing - 2 (bed) - 4.5 (pipe) = 5.5 in for 4.68 in of fall: 0.82 in of 1.105.
    budget = margins(lot)["drain.vertical-budget"]
    assert budget.after.margin == pytest.approx(0.82 * INCH, abs=1e-6)
    # At 1/16 in/ft 5.5 in are enough for 88 ft, and the standard is said to fit runs of up to 92.
    assert set(turns(lot)) == {"footing.fits-too-far"}


def test_what_gains_room_says_so(collection: Collection) -> None:
    lot = collection.edit("retarder_thickness: 10 mil", "retarder_thickness: 15 mil").on()
    (margin,) = lot.margins
    assert (lot.way, lot.turns) == (ROOM, ())
    assert not lot.holds("minor")
    assert margin.finding.rule == "slab.retarder"
    assert margin.change == pytest.approx(5 * MIL)


def test_what_is_tight_is_told_when_it_becomes_so(collection: Collection) -> None:
    # A rod reads to 0.02 ft = 0.24 in. 0.945 in are tight on a rod and a tape already, so a lot is
    # taken whose corner lies 0.1 ft = 1.2 in lower: 2.145 in, then 2.145 - 1.285 = 0.86 in.
    lower = [
        ("NE, invert: 91.25", "NE, invert: 91.15"),
        ("NW, invert: 91.01", "NW, invert: 90.95"),
        ("SE, invert: 91.10", "SE, invert: 91.00"),
    ]
    file = collection.lot(16, *lower)
    lot = collection.edit(DIAMETER, "outside_diameter: 5.5 in").on(file)
    above = margins(lot)["drain.above-slab"]
    assert above.before is not None
    assert above.before.margin == pytest.approx(2.145 * INCH, abs=1e-6)
    assert above.after.margin == pytest.approx(0.86 * INCH, abs=1e-6)
    assert above.tight
    assert lot.margins[0].tight


# -- worse and better ------------------------------------------------------------------------------


def test_a_pipe_that_reaches_over_the_slab_is_worse(collection: Collection) -> None:
    # 91.25 + (5.5 - 0.12)/12 = 91.69833 ft, 0.34 in over 91.67 ft.
    lot = collection.edit(DIAMETER, "outside_diameter: 5.5 in").on()
    above = turns(lot)["drain.above-slab"]
    assert lot.turns[0] == above
    assert above.way == lot.way == WORSE
    assert above.before is not None
    assert above.after is not None
    assert (above.before.outcome, above.after.outcome) == (MET, NOT_MET)
    assert above.finding.severity == "critical"
    (compared,) = above.after.compared
    assert compared.margin == pytest.approx(-0.34 * INCH, abs=1e-6)
    assert (above.before.compared[0].shown, compared.shown) == ("91.59 ft", "91.70 ft")
    assert lot.holds("critical")
    assert "drain.above-slab" not in margins(lot)


# From, to, which way the coat went, and both outcomes. The coat is asked to be 40 mil.
COATS = [
    ("at least 40 mil", "30 mil", WORSE, MET, NOT_MET),
    ("30 mil", "at least 40 mil", BETTER, NOT_MET, MET),
    # One end of the range will do and the other will not.
    ("at least 40 mil", "at least 30 mil", WORSE, MET, NOT_SHOWN),
    ("at least 30 mil", "30 mil", WORSE, NOT_SHOWN, NOT_MET),
    # Missed by more is worse, by less better.
    ("30 mil", "20 mil", WORSE, NOT_MET, NOT_MET),
    ("20 mil", "30 mil", BETTER, NOT_MET, NOT_MET),
    # What is taken away has mended nothing, and was open before.
    ("30 mil", "not shown", OTHER, NOT_MET, NOT_SHOWN),
    ("40 mil", "not shown", WORSE, MET, NOT_SHOWN),
]  # fmt: skip


@pytest.mark.parametrize(("was", "now", "way", "before", "after"), COATS)
def test_which_way_a_coat_goes(
    tmp_path: Path, was: str, now: str, way: str, before: str, after: str
) -> None:
    collection = Collection(tmp_path).edit(COAT, f"dry_thickness: {was}", also=True)
    lot = collection.edit(f"\n  dry_thickness: {was}\n", f"\n  dry_thickness: {now}\n").on()
    coat = turns(lot)["coat.thickness"]
    assert coat.way == way
    assert coat.before is not None
    assert coat.after is not None
    assert (coat.before.outcome, coat.after.outcome) == (before, after)
    assert lot.holds("minor") is any(one.way == WORSE for one in lot.turns)


def test_what_is_worse_counts_from_its_severity_on(collection: Collection) -> None:
    lot = collection.edit(COAT, "dry_thickness: 30 mil").on()
    assert {one.finding.severity for one in lot.of(WORSE)} == {"major"}
    assert (lot.holds("critical"), lot.holds("major"), lot.holds()) == (False, True, True)


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


def test_what_comes_first_may_decide_which_units_a_rule_is_read_in(collection: Collection) -> None:
    # A paper without levels is in the system of its first length, and rules have twins in both.
    lengths = ("wall: {thickness: 250 mm}\n", "stone: {bedding: 2 in}\n")
    for side, order in ((collection.before, lengths), (collection.after, lengths[::-1])):
        (side / "lot-16.yaml").write_text("".join(["vocabulary: 1\n", *order]), encoding="utf-8")
    assert collection.on("lot-16.yaml").edits == ()


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


def test_the_standard_itself_is_reviewed_as_one(collection: Collection) -> None:
    # By hand, in its head: for the longest house 5.785 in for 5.75 in of fall, 0.035 in are left;
    # a pipe 0.285 in thicker takes all of that.
    lot = collection.edit(DIAMETER, "outside_diameter: 4.5 in").on(STANDARD)
    assert lot.after.paper == "standard"
    budget = turns(lot)["drain.vertical-budget"]
    assert budget.after is not None
    assert (budget.way, budget.after.outcome) == (WORSE, NOT_MET)
    assert budget.after.compared[0].margin == pytest.approx(-0.25 * INCH, abs=1e-6)


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
