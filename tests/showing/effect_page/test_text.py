"""The page as text: the edit first, then the lots, nothing left out without being counted."""

from __future__ import annotations

import re

from checker.judging.effect import Terms, find_effect, tasks_of
from checker.judging.effect_data import WORSE
from checker.showing.effect_page.contents import contents_of
from checker.showing.effect_page.names import MOST_NAMES, listed, papers
from tests.judging.effects import BOOK, LOT, STANDARD, Collection, line_of
from tests.showing.effect_page.conftest import shown


def text(collection: Collection, width: int = 80) -> str:
    return shown(collection.effect(), "text", collection, width)


def squeezed(page: str) -> str:
    """Return a page on one line, however it was wrapped."""
    return " ".join(page.split())


def test_the_edit_comes_before_the_lots_and_what_is_worse_first(thicker: Collection) -> None:
    page = text(thicker)
    parts = [
        "What an edit does", "3 lots and 1 standard worse, 3 lots of them by something critical",
        f"Edited: {STANDARD}", "reaches 3 lots and 1 standard; 1 lot starts from it", "Worse: 4",
        "critical Drain too high", "This is not a release.",
    ]  # fmt: skip
    page = squeezed(page)
    places = [page.index(part) for part in parts]
    assert places == sorted(places)


def test_an_edit_is_told_once_with_its_line_and_both_values(thicker: Collection) -> None:
    page = squeezed(text(thicker))
    line = line_of("outside_diameter: 5.5 in", thicker.after / STANDARD)
    told = f"line {line} outside diameter (drain.outside_diameter) 4.215 in, now 5.5 in"
    assert page.count(told) == 1


def test_a_finding_has_its_figures_before_and_after(thicker: Collection) -> None:
    # 91.25 + 5.38/12 = 91.698 ft against 91.67 ft: 0.945 in were left, 0.34 in are wanting.
    page = squeezed(text(thicker))
    assert (
        "critical Drain too high to protect the floor (drain.above-slab): was met, now not met "
        "shown 91.59 ft, now 91.70 ft (crown of the pipe at its highest corner) "
        "needed below underside of the slab 91.67 ft "
        "room 0.94 in left, now off by 0.34 in: 1.3 in lost"
    ) in page


def test_room_that_is_lost_is_told_with_how_much(thicker: Collection) -> None:
    # 16 in beyond the footing, less 2 to 4 in of offset, 4.215 in of pipe and 6 in of side stone,
    # leaves 1.785 in at the least; 5.5 in of pipe leave 1/2 in: 1.285 in are lost.
    page = squeezed(text(thicker))
    assert "(stone.parts-agree): 1.7 in left, now 1/2 in left: 1.3 in lost" in page


def test_lots_to_which_the_same_happens_are_named_with_their_own_figures(
    thicker: Collection,
) -> None:
    page = squeezed(text(thicker))
    assert page.count("drain.above-slab") == 1
    assert (
        "and 2 more lots alike: Quillwater Lane, lot 17: off by 0.34 in; "
        "Quillwater Lane, lot 18: off by 0.34 in"
    ) in page


def test_the_lot_that_misses_by_most_stands_for_those_alike(thicker: Collection) -> None:
    thicker.lot(19, ("NE, invert: 91.25", "NE, invert: 91.27"))
    page = squeezed(text(thicker))
    # 0.02 ft = 0.24 in higher: 0.58 in.
    assert "1. Quillwater Lane, lot 19 (lot-19.yaml)" in page
    assert "now off by 0.58 in" in page
    assert "3 more lots alike: Quillwater Lane, lot 15: off by 0.34 in" in page


def test_the_same_words_are_not_told_twice(thicker: Collection) -> None:
    # The standard fails at the same figure of its own fits as every lot does.
    page = squeezed(text(thicker))
    assert page.count("Standard is meant for longer houses") == 1
    assert re.search(
        r"2\. HF-FDN-02 rev C, the standard itself .*worse as in 1: footing\.fits", page
    )


def test_two_lots_of_one_name_are_told_apart_by_their_files(thicker: Collection) -> None:
    thicker.lot(17, name="twin.yaml")
    page = squeezed(text(thicker))
    assert "Quillwater Lane, lot 17 (lot-17.yaml): off by 0.34 in" in page
    assert "Quillwater Lane, lot 17 (twin.yaml): off by 0.34 in" in page
    assert "Quillwater Lane, lot 18: off by 0.34 in" in page


def test_what_is_left_out_of_a_long_list_is_counted() -> None:
    names = [f"lot {number}" for number in range(MOST_NAMES + 7)]
    assert listed(names).endswith(f"lot {MOST_NAMES - 1}; and 7 more")
    assert listed(names[:MOST_NAMES]).endswith(names[MOST_NAMES - 1])


def test_many_lots_of_their_own_kind_are_named_where_they_are_not_told(
    collection: Collection,
) -> None:
    # Each lot is edited in its own file, so no two are reached by the same edit.
    for number in range(16, 40):
        file = collection.lot(number)
        collection.edit("slab_underside: 91.67", "slab_underside: 91.50", file=file)
    page = squeezed(text(collection))
    contents = contents_of(collection.effect())
    (worse,) = [section for section in contents.sections if section.way == WORSE]
    assert worse.lots == len(worse.alike) == 24
    assert "and 4 more: Quillwater Lane, lot 36" in page
    assert "4 more: lot-36.yaml; lot-37.yaml; lot-38.yaml; lot-39.yaml" in page


def test_nothing_edited_is_said_so(collection: Collection) -> None:
    page = text(collection)
    assert "Nothing that a review could see differs." in page
    assert "1 lot and 1 standard judged alike on both sides." in page
    assert page.splitlines()[-1] == "2 compared: 0 worse, 0 better. This is not a release."


def test_the_summary_says_how_many_fail_something_critical(thicker: Collection) -> None:
    before, after = thicker.before / LOT, thicker.after / LOT
    effect = find_effect(tasks_of(before, after), Terms(before, after, BOOK))
    summary = contents_of(effect).summary
    assert summary == "1 lot worse, each by something critical."


def test_what_was_not_compared_is_listed(thicker: Collection) -> None:
    (thicker.after / "lot-17.yaml").write_text("vocabulary: 3\n", encoding="utf-8")
    (thicker.after / "lot-18.yaml").unlink()
    page = text(thicker)
    assert "Gone: 1\n  - Quillwater Lane, lot 18 (lot-18.yaml)" in page
    assert "Not compared, because it could not be read: 1\n  - after: " in page
    assert "3 compared, 1 file not read: 2 worse, 0 better." in page


def test_a_renamed_lot_says_what_it_was(thicker: Collection) -> None:
    (thicker.after / LOT).rename(thicker.after / "a.yaml")
    assert "Quillwater Lane, lot 15 (a.yaml); before: house.yaml" in squeezed(text(thicker))


def test_lines_are_as_wide_as_was_asked_and_no_wider(thicker: Collection) -> None:
    for width in (60, 80):
        *lines, last = text(thicker, width).splitlines()
        assert max(map(len, lines)) <= width
        assert last.endswith("This is not a release.")


def test_a_name_is_text_and_moves_no_cursor(hostile: Collection) -> None:
    page = text(hostile)
    assert "alert(1)" in page
    assert all(line.isprintable() for line in page.split("\n"))


def test_lots_and_standards_are_counted_apart(thicker: Collection) -> None:
    effect = thicker.effect()
    after = [lot.after for lot in effect.lots]
    lots, standards = ([p for p in after if p.paper == kind] for kind in ("house", "standard"))
    assert papers(after) == "3 lots and 1 standard"
    assert papers(lots[:1]) == "1 lot"
    assert papers(standards) == "1 standard"
    assert papers([]) == "0 lots"
