"""Which papers of two folders belong together, and that nothing falls between."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.judging.effect import Terms, both_sides, find_effect, tasks_of
from checker.judging.effect_data import WORSE, Effect
from tests.judging.effects import BOOK, LOT, STANDARD, Collection

COAT = ("dry_thickness: at least 40 mil", "dry_thickness: 30 mil")


@pytest.fixture
def collection(tmp_path: Path) -> Collection:
    return Collection(tmp_path)


def files(effect: Effect) -> dict[str, list[tuple[str, str]]]:
    """Return what was paired with what, and what is left over."""
    return {
        "lots": sorted((lot.before.file, lot.after.file) for lot in effect.lots),
        "gone": [(paper.file, "") for paper in effect.gone],
        "new": [("", paper.file) for paper in effect.new],
    }


def test_the_same_folder_twice_has_no_effect(collection: Collection) -> None:
    effect = collection.effect()
    assert (effect.lots, effect.gone, effect.new, effect.unread) == ((), (), (), ())
    assert [paper.file for paper in effect.same] == [LOT, STANDARD]
    assert not effect.holds("minor")


def test_a_file_that_was_renamed_is_the_same_lot(collection: Collection) -> None:
    collection.edit(*COAT)
    (collection.after / LOT).rename(collection.after / "lot-15.yaml")
    effect = collection.effect()
    assert files(effect) == {
        "lots": [(LOT, "lot-15.yaml"), (STANDARD, STANDARD)], "gone": [], "new": [],
    }  # fmt: skip
    assert effect.lots[0].way == WORSE


def test_a_lot_that_was_renumbered_in_its_file_is_the_same(collection: Collection) -> None:
    collection.edit("id: HF-FDN-02 rev C", "id: HF-FDN-02 rev D").edit(*COAT)
    collection.edit('lot: "15"', 'lot: "15A"', file=LOT)
    effect = collection.effect()
    assert files(effect)["lots"] == [(LOT, LOT), (STANDARD, STANDARD)]
    names = {(lot.before.name, lot.after.name) for lot in effect.lots}
    assert names == {
        ("Quillwater Lane, lot 15", "Quillwater Lane, lot 15A"),
        ("HF-FDN-02 rev C", "HF-FDN-02 rev D"),
    }


def test_lots_that_changed_places_go_by_their_names(collection: Collection) -> None:
    collection.lot(16, name="b.yaml")
    lot, other = collection.after / LOT, collection.after / "b.yaml"
    texts = lot.read_text(encoding="utf-8"), other.read_text(encoding="utf-8")
    lot.write_text(texts[1], encoding="utf-8")
    other.write_text(texts[0], encoding="utf-8")
    effect = collection.effect()
    assert effect.lots == ()
    assert sorted(paper.file for paper in effect.same) == ["b.yaml", LOT, STANDARD]


def test_what_stands_on_one_side_alone_is_new_or_gone(collection: Collection) -> None:
    new, gone = collection.lot(16), collection.lot(17)
    (collection.before / new).unlink()
    (collection.after / gone).unlink()
    effect = collection.effect()
    assert files(effect) == {"lots": [], "gone": [(gone, "")], "new": [("", new)]}
    assert not effect.holds("minor")


def test_papers_without_a_name_are_not_taken_for_each_other(collection: Collection) -> None:
    for side, name in ((collection.before, "a.yaml"), (collection.after, "b.yaml")):
        (side / name).write_text("vocabulary: 1\ndrain: {present: yes}\n", encoding="utf-8")
    assert files(collection.effect()) == {
        "lots": [], "gone": [("a.yaml", "")], "new": [("", "b.yaml")],
    }  # fmt: skip


def test_two_of_one_name_in_one_file_go_by_their_order(collection: Collection) -> None:
    one = 'vocabulary: 1\njob: {lot: "18"}\nstone: {bedding: BED}\n'
    for side, beds in ((collection.before, ("4 in", "4 in")), (collection.after, ("4 in", "5 in"))):
        text = "---\n".join(one.replace("BED", bed) for bed in beds)
        (side / "two.yaml").write_text(text, encoding="utf-8")
    effect = collection.effect()
    (lot,) = effect.lots
    assert (lot.after.file, lot.after.nth) == ("two.yaml", 1)


@pytest.mark.parametrize("side", ["before", "after"])
def test_what_cannot_be_read_is_told_with_its_side(collection: Collection, side: str) -> None:
    broken = getattr(collection, side) / LOT
    broken.write_text("vocabulary: 1\ndrain: {presnt: yes}\n", encoding="utf-8")
    effect = collection.edit(*COAT).effect()
    (fault,) = effect.unread
    assert (fault.side, fault.fault.file, fault.fault.line) == (side, str(broken), 2)
    assert str(fault).startswith(f"{side}: {broken}:2:")
    # Neither new nor gone: it was not compared.
    assert files(effect) == {"lots": [(STANDARD, STANDARD)], "gone": [], "new": []}


def test_a_standard_that_cannot_be_read_is_told_once_of_every_lot(collection: Collection) -> None:
    collection.lot(16)
    collection.edit("paper: standard", "paper: standrd")
    effect = collection.effect()
    assert {Path(one.fault.file).name for one in effect.unread} == {
        "HF-FDN-02.yaml", LOT, "lot-16.yaml",
    }  # fmt: skip
    assert {one.side for one in effect.unread} == {"after"}
    assert (effect.lots, effect.same) == ((), ())


def test_the_gravest_lot_comes_first(collection: Collection) -> None:
    # Lot 16 lies 0.1 ft lower, so the thicker pipe stays under its slab and nothing critical fails.
    collection.lot(16, ("NE, invert: 91.25", "NE, invert: 91.15"), name="a.yaml")
    effect = collection.edit("outside_diameter: 4.215 in", "outside_diameter: 5.5 in").effect()
    worst = [(lot.after.file, lot.turns[0].finding.severity) for lot in effect.lots]
    assert worst[0] == (LOT, "critical")
    assert sorted(worst[1:]) == [("a.yaml", "major"), (STANDARD, "major")]


def test_several_processes_find_the_same(collection: Collection) -> None:
    for number in range(16, 22):
        collection.lot(number)
    (collection.after / "lot-16.yaml").rename(collection.after / "renamed.yaml")
    (collection.after / "lot-17.yaml").write_text("vocabulary: 2\n", encoding="utf-8")
    collection.edit(*COAT)
    assert collection.effect(jobs=3) == collection.effect()


def test_one_step_is_told_for_every_file(collection: Collection) -> None:
    steps: list[None] = []
    terms = Terms(collection.before, collection.after, BOOK)
    find_effect(tasks_of(collection.before, collection.after), terms, 1, lambda: steps.append(None))
    assert len(steps) == 2


def test_two_files_that_are_named_are_each_other_s_like(collection: Collection) -> None:
    collection.edit('lot: "15"', 'lot: "99"', file=LOT)
    other = (collection.after / LOT).rename(collection.after / "other.yaml")
    before = collection.before / LOT
    effect = find_effect(tasks_of(before, other), Terms(before, other, BOOK))
    assert files(effect) == {"lots": [(LOT, "other.yaml")], "gone": [], "new": []}


def test_a_side_without_a_spec_is_no_state_of_anything(
    collection: Collection, tmp_path: Path
) -> None:
    empty = tmp_path / "empty"
    empty.mkdir()
    for sides in ((empty, collection.after), (collection.before, empty)):
        with pytest.raises(LookupError, match="no spec was found"):
            tasks_of(*sides)


def test_both_sides_of_a_lot_can_be_had_again(collection: Collection) -> None:
    effect = collection.edit(*COAT).effect()
    lot = next(lot for lot in effect.lots if lot.after.file == LOT)
    terms = Terms(collection.before, collection.after, BOOK)
    (was, first), (now, second) = both_sides(lot, terms)
    assert (was.text("coat.dry_thickness"), now.text("coat.dry_thickness")) == (
        "at least 40 mil", "30 mil",
    )  # fmt: skip
    found = {one.rule: one for one in second.findings}
    turn = next(one for one in lot.turns if one.finding.rule == "coat.thickness")
    assert found["coat.thickness"] == turn.after
    assert turn.before in first.findings
