"""The sheet for the site: numbers against hand sums, blanks that stay blank, readings that count."""

from __future__ import annotations

import functools
import re
from pathlib import Path
from typing import Any

import pytest

from checker import load_rulebook, load_spec, review
from checker.reading.measured import as_measured
from checker.reading.reader import read_specs
from checker.reading.spec import Spec
from checker.showing.console import as_text as lines_as_text
from checker.showing.field_sheet import Sheet, in_form, sheet_of, words_in
from checker.showing.field_sheet.fill_in import fill_in
from checker.showing.field_sheet.rows import Row
from tests.support import spec_of

SPECS = Path(__file__).parents[3] / "specs"


@functools.cache
def example(name: str) -> Spec:
    return next(iter(load_spec(str(SPECS / f"{name}.yaml"))))


def made_of(spec: Spec, stage: str, instrument: str = "") -> Sheet:
    book = load_rulebook()
    return sheet_of(spec, review(spec, book, stage), book, instrument)


@functools.cache
def sheet(name: str, stage: str, instrument: str = "") -> Sheet:
    return made_of(example(name), stage, instrument)


@pytest.fixture
def drain() -> Sheet:
    return sheet("good", "drain", "105.32")


def row(made: Sheet, path: str) -> Row:
    (found,) = [one for one in made.rows if one.path == path]
    return found


def text_of(made: Sheet, language: str = "en") -> str:
    lines = in_form([made], words_in(language), "text", 80)
    assert isinstance(lines, list)
    return lines_as_text(lines)


def page_of(made: Sheet, language: str = "en") -> str:
    return str(in_form([made], words_in(language), "html", 80))


# -- numbers ---------------------------------------------------------------------------------------


def test_a_corner_has_what_is_expected_and_what_still_passes(drain: Sheet) -> None:
    corner = row(drain, "drain.corners.SW.invert")
    assert (corner.expected, corner.tolerance, corner.unit) == ("90.86 ft", "0.02 ft", "ft")
    # Lowest 90.67 + (0.12 + 2)/12 = 90.8467 ft, so 90.85 on the safe side.
    assert corner.low == "90.85 ft"
    # 90.86 - 90.8467 = 0.0133 ft = 0.16 in: 1/8 in on the safe side, less than 0.02 ft.
    assert corner.spare == "1/8 in"
    assert corner.ratio == pytest.approx(0.0133 / 0.02, abs=0.01)
    # Highest at NE: 91.67 - 4.095/12 = 91.3288 ft, so 91.32.
    assert row(drain, "drain.corners.NE.invert").high == "91.32 ft"


def test_rod_readings_are_what_is_left_up_to_the_instrument(drain: Sheet) -> None:
    tenths, inches = row(drain, "drain.corners.NE.invert").rods
    # 105.32 - 91.16 = 14.16 ft = 14 ft 1.92 in; the least 105.32 - 91.32875 = 13.99125 ft, which
    # is 13 ft 11.895 in: 14.00 ft and 14 ft 0 in on the safe side.
    assert (tenths.expected, tenths.least) == ("14.16 ft", "14.00 ft")
    assert (inches.expected, inches.least) == ("14'-1 7/8\"", "14'-0\"")
    # At SW the most is 105.32 - 90.84667 = 14.47333 ft = 14 ft 5.68 in.
    tenths, inches = row(drain, "drain.corners.SW.invert").rods
    assert (tenths.most, inches.most) == ("14.47 ft", "14'-5 5/8\"")


def test_a_metric_rod_reads_metres() -> None:
    (rod,) = row(sheet("metric", "drain", "101.5"), "drain.invert_high").rods
    # 101.5 - 98.640
    assert rod.expected == "2.860 m"


@pytest.mark.parametrize("text", ["blah", "104 to 105", "105.32 gal"])
def test_an_instrument_that_has_no_level_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="the level of the instrument"):
        made_of(example("good"), "drain", text)


def test_the_tape_is_told_in_eighths_on_the_safe_side(drain: Sheet) -> None:
    text = " ".join(text_of(drain).split())
    # SW: 91.67 - (90.86 + 4.095/12) = 0.46875 ft = 5.625 in; the lowest invert 90.84667 gives
    # 5.785 in, so 5 3/4; the form's top stands for the footing's before the pour.
    assert "Top of the pipe 5 5/8 in below the top of the footing at SW" in text
    assert re.search(r"at SW, never less than [^.]+, never more than 5 3/4 in\.", text)
    forms = text_of(sheet("good", "forms"))
    assert "top of the form at SW" in " ".join(forms.split())


def test_before_there_are_inverts_the_highest_corner_is_told() -> None:
    spec = spec_of(
        {
            "levels": {"unit": "in", "footing_top": "0", "footing_underside": "-12",
                       "slab_underside": "0"},
            "drain": {"present": "yes", "outside_diameter": "4.2 in", "wall_thickness": "0.1 in",
                      "slope": "1/16 in/ft", "run_long": "48 ft"},
            "stone": {"bedding": "2 in"},
        }
    )  # fmt: skip
    (word,) = made_of(spec, "forms").pipe
    # Highest: crown level with the slab, 0 in under the form. Lowest: 12 - 2 - 4.2 - 48/16 = 2.8 in,
    # 2 3/4 on the safe side.
    assert (word.shown, word.least, word.most) == (None, ("0 in", False), ("2 3/4 in", False))


def test_a_pipe_above_the_form_is_told_as_above() -> None:
    text = " ".join(text_of(sheet("bad", "drain")).split())
    # NE: 91.75 + (4.215 - 0.12)/12 - 91.67 = 0.42125 ft = 5.06 in
    assert "Top of the pipe 5 in above the top of the footing at NE" in text


# -- the three first -------------------------------------------------------------------------------


def test_the_smallest_margin_against_its_tolerance_is_measured_first(drain: Sheet) -> None:
    ratios = [one.row.ratio for one in drain.first]
    assert len(ratios) == 3
    every = sorted(one.ratio for one in drain.measure if one.ratio is not None)
    assert ratios == every[:3]
    # The bed is as thin as it may be: nothing to spare.
    assert drain.first[0].row.path == "stone.bedding"
    assert "0 in to spare, less than it can be read to" in " ".join(text_of(drain).split())


def test_what_is_missing_and_critical_fills_up_the_three() -> None:
    first, *others = sheet("prepour", "forms").first
    assert all(one.row.missing and one.row.critical for one in others)
    assert not first.row.as_shown


# -- the same as the review ------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "stage"),
    [("bad", "excavation"), ("bad", "drain"), ("good", "pre_backfill"), ("bad", "final_grade"),
     ("prepour", "forms"), ("prepour", "desk"), ("inside_drain", "slab")],
)  # fmt: skip
def test_rows_rest_on_what_the_review_rests_on(name: str, stage: str) -> None:
    judged = review(example(name), load_rulebook(), stage)
    made = sheet(name, stage)
    spoken = {place.path for one in judged.findings for place in one.places}
    spoken |= {path for one in judged.findings for path in one.missing}
    assert {one.path for one in made.rows} <= spoken
    assert made.open_faults == len(judged.of("not met"))
    assert [text for _, text in made.cautions] == [one.text for one in judged.cautions]
    assert made.buried == judged.buried
    assert [one.number for one in made.rows] == list(range(1, len(made.rows) + 1))


def test_what_a_rule_asks_first_whether_it_applies_is_not_what_passes() -> None:
    rows = sheet("as_built", "excavation").rows
    # The rule on mottling asks first whether there is any; that is no wish for mottling.
    assert all(one.needed != "yes" for one in rows if one.path == "site.mottling")


# -- blanks and readings ---------------------------------------------------------------------------


@pytest.mark.parametrize("stage", ["forms", "drain", "pre_backfill"])
def test_blanks_are_empty(stage: str) -> None:
    made = sheet("good", stage)
    text = text_of(made)
    assert text.count("__________ ") + text.count("[ ] yes") >= len(made.measure)
    assert "[x]" not in text
    for line in fill_in(made, words_in("en")):
        if not line.lstrip().startswith("- id:"):
            assert re.fullmatch(r"\s*[a-z_]+:(  #.*)?", line), line


def test_a_hold_has_a_line_and_no_name_on_it() -> None:
    text = text_of(sheet("good", "pre_backfill"))
    assert re.search(r"hold H1; hold; Town of Marrowfield\s+signed\s+____", text)
    assert "Osterlund" not in text


def test_the_empty_block_measures_nothing(drain: Sheet) -> None:
    text = (SPECS / "good.yaml").read_text(encoding="utf-8")
    block = "\n".join(fill_in(drain, words_in("en")))
    (spec,) = read_specs(f"{text}\n{block}\n", "filled.yaml")
    assert as_measured(spec).values.keys() == spec.values.keys()
    # Nothing stands in place of what was drawn but the names of corners and outlets.
    assert {path for path in as_measured(spec).drawn if not path.endswith(".id")} == set()


def test_what_is_typed_into_the_block_is_judged(drain: Sheet) -> None:
    block = "\n".join(fill_in(drain, words_in("en")))
    number = row(drain, "drain.corners.SW.invert").number
    filled = block.replace(f"invert:  # {number},", f"invert: 90.80  # {number},")
    filled = filled.replace("  by:", "  by: R. Halloway").replace("  date:", "  date: 2031-06-10")
    assert filled.count("90.80") == 1
    text = (SPECS / "good.yaml").read_text(encoding="utf-8")
    (spec,) = read_specs(f"{text}\n{filled}\n", "filled.yaml")
    measured = review(as_measured(spec), load_rulebook())
    # 90.80 - 2.12/12 = 90.623 ft, under the footing's 90.67.
    assert "drain.below-bearing" in {one.rule for one in measured.of("not met")}
    assert "drain.below-bearing" not in {
        one.rule for one in review(spec, load_rulebook()).of("not met")
    }


def test_every_row_has_its_number_in_the_block(drain: Sheet) -> None:
    block = "\n".join(fill_in(drain, words_in("en")))
    numbers = [int(one) for one in re.findall(r"# (\d+)", block)]
    assert sorted(numbers) == [one.number for one in drain.rows]


@pytest.mark.parametrize("identity", ["a.b", "SW: yes", "#1", "\x07", "'", '"', "- x", "é"])
def test_any_id_can_stand_in_the_block(identity: str) -> None:
    mapping = {
        "levels": {"unit": "ft", "slab_underside": "91.67", "footing_top": "91.67",
                   "footing_underside": "90.67"},
        "drain": {"present": "yes", "position": "beside", "outside_diameter": "4.2 in",
                  "wall_thickness": "0.1 in", "corners": [{"id": identity, "invert": "91.16"}]},
    }  # fmt: skip
    try:
        spec = spec_of(mapping)
    except Exception:  # an id that no spec may have needs no block
        return
    made = made_of(spec, "drain")
    block = "\n".join(fill_in(made, words_in("en"))).replace("invert:", "invert: 91.00")
    (again,) = read_specs(f"vocabulary: 1\nlevels: {{unit: ft}}\n{block}\n", "x.yaml")
    (path,) = [one for one in again.values if one.endswith(".invert")]
    assert path == f"measured.drain.corners.{spec.lists['drain.corners'][0]}.invert"


# -- photographs and dates -------------------------------------------------------------------------


def test_each_corner_has_its_pictures_and_their_names(drain: Sheet) -> None:
    (card,) = [one for one in drain.photos if one.at == "SW"]
    assert card.files == (
        "lot14-drain-SW-pipe_with_rod.jpg",
        "lot14-drain-SW-stone_with_rule.jpg",
        "lot14-drain-SW-fabric_closed.jpg",
    )
    assert card.rows == (row(drain, "drain.corners.SW.invert").number,)


def test_what_is_photographed_already_is_not_asked_again() -> None:
    photos = {one.at: one for one in sheet("as_built", "pre_backfill").photos}
    assert photos["NE"].taken == ("joint", "sheet_bottom", "pipe_with_rod")
    assert photos["NE"].shows == ("stone_with_rule", "fabric_closed")


def test_a_file_name_holds_nothing_that_a_system_minds() -> None:
    mapping = {
        "job": {"lot": "../14 b"},
        "drain": {"corners": [{"id": "north/west", "invert": "91.0"}]},
        "levels": {"unit": "ft"},
    }
    (photo, *_) = made_of(spec_of(mapping), "drain").photos
    assert photo.files[0] == "lot-14-b-drain-north-west-pipe_with_rod.jpg"


DATED = {
    "wall": {"poured": "2031-05-14"},
    "coat": {"maker_wall_age": "7 days", "maker_cure": "36 h"},
}


def test_the_coat_waits_for_the_age_the_maker_asks() -> None:
    made = made_of(spec_of(DATED), "wall_stripped")
    coat, cover, backfill = made.dates
    # 14 May + 7 days
    assert coat.day == "2031-05-21"
    assert (cover.day, backfill.day) == ("", "")
    text = " ".join(text_of(made).split())
    assert "coat the wall: not before 2031-05-21 (wall poured, and the maker's age of" in text
    assert "moved by: a later pour, cold, or another coat" in text


def test_the_cover_waits_for_the_cure_in_whole_days() -> None:
    coated = DATED | {"coat": DATED["coat"] | {"applied": "2031-05-22"}}
    cover, _ = made_of(spec_of(coated), "sheet").dates
    # 36 h are a day and a half: from the 22nd to the 24th.
    assert (cover.step, cover.day) == ("cover the coat", "2031-05-24")


def test_no_day_is_told_for_backfill_by_days_alone() -> None:
    strong = DATED | {"wall": {"poured": "2031-05-14", "strength": "3600 psi",
                               "strength_design": "3500 psi"}}  # fmt: skip
    for mapping in (DATED, strong):
        (backfill,) = made_of(spec_of(mapping), "pre_backfill").dates
        assert backfill.day == ""


def test_without_any_day_nothing_is_said_of_days() -> None:
    assert sheet("good", "sheet").dates == ()


# -- text stays text -------------------------------------------------------------------------------


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("stage", ["forms", "drain", "pre_backfill"])
def test_markup_from_a_spec_is_text(stage: str, language: str) -> None:
    import html5lib

    hostile = "<script>alert(1)</script>\x1b[31m{corner}"
    mapping: dict[str, Any] = {
        "job": {"name": hostile, "lot": hostile},
        "levels": {"unit": "ft", "datum": hostile, "slab_underside": "91.67",
                   "footing_top": "91.67", "footing_underside": "90.67"},
        "drain": {"present": "yes", "outside_diameter": "4.2 in", "wall_thickness": "0.1 in",
                  "corners": [{"id": "<b>NE", "invert": "91.16"}]},
        "holds": [{"id": "H1", "stage": stage, "by": hostile}],
    }  # fmt: skip
    made = made_of(spec_of(mapping), stage)
    page = page_of(made, language)
    root = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    assert root.findall(".//script") == []
    for text in (page, text_of(made, language)):
        assert "\x1b" not in text
    assert "<script>alert(1)</script>" in "".join(root.itertext())


def test_the_page_and_the_text_have_the_same_rows(drain: Sheet) -> None:
    import html5lib

    page = "".join(html5lib.parse(page_of(drain), namespaceHTMLElements=False).itertext())
    text = text_of(drain)
    for one in drain.rows:
        for figure in (one.expected, one.high, *(rod.expected for rod in one.rods)):
            assert figure in page
            assert figure in text


def test_what_two_rules_ask_of_one_value_is_told_together() -> None:
    soil = row(sheet("prepour", "forms"), "footing.base_condition")
    # One rule minds soil that cannot carry, another soil that is wet.
    assert soil.needed.count("none of ") == 2
    assert "none of wet" in soil.needed.split("; ")
