"""What was measured: laid over the design item by item, and told apart by what a reading is worth."""

from __future__ import annotations

from typing import Any

import pytest

from checker.judging.judge import review
from checker.judging.review_data import DOES_NOT_APPLY, MET, NOT_MET, Finding
from checker.judging.rulebook import load_rulebook
from checker.reading.faults import Unreadable
from checker.reading.measured import as_measured, differences, on_basis
from checker.reading.reader import read_specs
from checker.reading.spec import Spec
from tests.support import spec_of

DESIGN = """vocabulary: 1
job: {stage: pre_backfill}
levels: {unit: ft, datum: nail in east kerb, slab_underside: 91.67, footing_underside: 90.67}
drain:
  present: yes
  material: rigid_pvc
  slope: 1 %
  corners:
    - {id: NE, invert: 91.16, run_to_next: 42 ft}
    - {id: SW, invert: 90.86, run_to_next: 42 ft}
stone: {bedding: 2 in, side: 6 to 8 in}
"""
MEASURED = """measured:
  by: R. Halloway
  date: 2031-06-10
  instrument: rotating laser, 0.01 ft rod
"""


def read(measured: str, design: str = DESIGN) -> Spec:
    (spec,) = read_specs(design + MEASURED + measured, "lot.yaml")
    return spec


def told(measured: str, design: str = DESIGN) -> list[str]:
    return [str(one) for one in differences(read(measured, design))]


# -- laid over the design --------------------------------------------------------------------------


def test_what_was_measured_stands_in_place_of_the_design() -> None:
    spec = as_measured(read("  drain: {corners: [{id: NE, invert: 91.25}]}\n"))
    shown = spec.values["drain.corners.NE.invert"]
    assert (shown.path, shown.pattern) == ("drain.corners.NE.invert", "drain.corners.each.invert")
    assert (shown.written, shown.line) == ("91.25", 16)
    assert (shown.how, shown.by, shown.date) == ("measured", "R. Halloway", "2031-06-10")
    assert shown.seen


def test_what_was_not_measured_stays_as_designed() -> None:
    spec = as_measured(read("  drain: {corners: [{id: NE, invert: 91.25}]}\n"))
    assert spec.lists["drain.corners"] == ("NE", "SW")
    assert spec.values["drain.corners.NE.run_to_next"].written == "42 ft"
    assert spec.values["drain.corners.SW.invert"].written == "90.86"
    assert not spec.values["drain.corners.SW.invert"].seen


def test_an_item_nobody_designed_comes_last() -> None:
    spec = as_measured(
        read("  drain: {corners: [{id: SE, invert: 90.9}, {id: SW, invert: 90.8}]}\n")
    )
    assert spec.lists["drain.corners"] == ("NE", "SW", "SE")


def test_a_value_keeps_its_own_name_and_day() -> None:
    own = "{value: 2 in, by: D. Osterlund, date: 2031-06-11}"
    shown = as_measured(read(f"  stone: {{bedding: {own}}}\n")).values["stone.bedding"]
    assert (shown.how, shown.by, shown.date) == ("measured", "D. Osterlund", "2031-06-11")


def test_what_was_assumed_on_site_is_not_seen() -> None:
    own = "{value: 2 in, how: assumed}"
    assert not as_measured(read(f"  stone: {{bedding: {own}}}\n")).values["stone.bedding"].seen


@pytest.mark.parametrize("word", ["not shown", "unknown", "by others"])
def test_a_word_measures_nothing(word: str) -> None:
    assert (
        as_measured(read(f"  stone: {{bedding: {word}}}\n")).values["stone.bedding"].written
        == "2 in"
    )


def test_not_there_is_something_found() -> None:
    spec = as_measured(read("  stone: {bedding: not applicable}\n"))
    assert spec.values["stone.bedding"].word == "not applicable"


def test_a_section_nobody_designed_is_no_longer_not_shown() -> None:
    design = DESIGN.replace("stone: {bedding: 2 in, side: 6 to 8 in}", "stone: not shown")
    spec = as_measured(read("  stone: {bedding: 2 in}\n", design))
    assert spec.values["stone.bedding"].written == "2 in"
    assert "stone" not in spec.words


@pytest.mark.parametrize(
    ("basis", "bases"),
    [("design", ["design"]), ("measured", ["measured"]), ("both", ["design", "measured"])],
)
def test_on_what_basis(basis: str, bases: list[str]) -> None:
    spec = read("  stone: {bedding: 2 in}\n")
    assert [one.basis for one in on_basis(spec, basis)] == bases


@pytest.mark.parametrize("basis", ["measured", "both"])
def test_nothing_measured_is_judged_as_designed_and_says_so(basis: str) -> None:
    (spec,) = read_specs(DESIGN, "lot.yaml")
    (one,) = on_basis(spec, basis)
    assert one.basis == "design"
    assert one.notes == ("nothing was measured, so the design was judged",)


# -- differences -----------------------------------------------------------------------------------

# x-tolerance of the keys: levels 0.02 ft, bedding and side 1/2 in, slope 0.1 %


@pytest.mark.parametrize(
    ("measured", "wanted"),
    [
        # 91.16 + 0.02 is within what a rod reads, 0.03 ft = 0.36 in is not
        ("drain: {corners: [{id: NE, invert: 91.18}]}", []),
        ("drain: {corners: [{id: NE, invert: 91.19}]}", ["drain.corners.NE.invert 91.16, measured 91.19, 0.36 in higher"]),
        # 90.86 - 90.80 = 0.06 ft = 0.72 in
        ("drain: {corners: [{id: SW, invert: 90.80}]}", ["drain.corners.SW.invert 90.86, measured 90.80, 0.72 in lower"]),
        ("stone: {bedding: 2 1/2 in}", []),
        ("stone: {bedding: 1 1/4 in}", ["stone.bedding 2 in, measured 1 1/4 in, 3/4 in less"]),
        ("stone: {side: 7 in}", []),
        ("stone: {side: 9 in}", ["stone.side 6 to 8 in, measured 9 in, 1 in more"]),
        ("stone: {side: 5 to 7 in}", ["stone.side 6 to 8 in, measured 5 to 7 in, 1 in less"]),
        ("drain: {slope: 0.95 %}", []),
        ("drain: {slope: 0.5 %}", ["drain.slope 1 %, measured 0.5 %, 0.5 % less"]),
        ("drain: {material: rigid_pvc}", []),
        ("drain: {material: abs}", ["drain.material rigid_pvc, measured abs"]),
        ("drain: {present: no}", ["drain.present yes, measured no"]),
        # nothing designed to differ from
        ("stone: {cover: 6 in}", []),
    ],
)  # fmt: skip
def test_difference(measured: str, wanted: list[str]) -> None:
    assert told(f"  {measured}\n") == wanted


def test_a_choice_of_the_standard_holds_what_was_laid() -> None:
    design = DESIGN.replace("vocabulary: 1", "vocabulary: 1\npaper: standard").replace(
        "rigid_pvc", "[rigid_pvc, abs]"
    )
    assert told("  drain: {material: abs}\n", design) == []
    assert told("  drain: {material: clay}\n", design) == [
        "drain.material rigid_pvc, abs, measured clay"
    ]


def test_one_sided_design() -> None:
    design = DESIGN + "coat: {dry_thickness: 40 mil min}\n"
    assert told("  coat: {dry_thickness: 65 mil}\n", design) == []
    assert told("  coat: {dry_thickness: 30 mil}\n", design) == [
        "coat.dry_thickness 40 mil min, measured 30 mil, 10 mil less"
    ]


def test_a_temperature_differs_by_degrees_and_not_by_a_thermometer() -> None:
    # 52 F and 49 F are 3 F apart, more than the 2 F a thermometer is good for
    design = DESIGN + "coat: {air_temp_min: 52 F}\n"
    assert told("  coat: {air_temp_min: 51 F}\n", design) == []
    assert told("  coat: {air_temp_min: 49 F}\n", design) == [
        "coat.air_temp_min 52 F, measured 49 F, 3 F less"
    ]


def test_differences_are_the_same_on_either_basis() -> None:
    spec = read("  drain: {corners: [{id: NE, invert: 91.25}]}\n")
    assert differences(as_measured(spec)) == differences(spec)
    assert differences(spec)


# -- faults ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("levels", "words"),
    [
        ("{unit: m, slab_underside: 27.94}", "measured in the unit of the design, 'ft', not 'm'"),
        ("{datum: top of form, slab_underside: 91.67}", "on the datum of the design"),
    ],
)
def test_levels_are_measured_as_they_are_designed(levels: str, words: str) -> None:
    with pytest.raises(Unreadable) as raised:
        read(f"  levels: {levels}\n")
    (fault,) = raised.value.faults
    assert words in fault.message
    assert fault.line == 16


def test_a_shared_contradiction_is_said_once() -> None:
    text = (
        "vocabulary: 1\npaper: site\nlevels: {unit: ft}\nmeasured: {levels: {unit: m}}\n"
        "---\nvocabulary: 1\nid: A\n---\nvocabulary: 1\nid: B\n"
    )
    with pytest.raises(Unreadable) as raised:
        read_specs(text, "lot.yaml")
    assert len(raised.value.faults) == 1


def test_the_same_unit_may_be_said_again() -> None:
    assert told("  levels: {unit: ft, datum: Nail in east kerb, slab_underside: 91.67}\n") == []


def test_the_unit_of_what_was_measured_will_do_alone() -> None:
    (spec,) = read_specs(
        "vocabulary: 1\nmeasured: {levels: {unit: m, floor_top: 28}}\n", "lot.yaml"
    )
    assert spec.values["measured.levels.floor_top"].value == 28.0


# -- judged ----------------------------------------------------------------------------------------

BOOK = load_rulebook()


def judged(rule: str, spec: Spec) -> Finding:
    (finding,) = (f for f in review(spec, BOOK).findings if f.rule == rule)
    return finding


def test_the_design_may_be_met_and_what_was_laid_not() -> None:
    # crown: invert + 4.215 in - 0.12 in = invert + 0.341 ft. 91.16 -> 91.501 under 91.67;
    # 91.40 -> 91.741, over it by 0.071 ft = 0.86 in
    design = DESIGN.replace(
        "material: rigid_pvc", "outside_diameter: 4.215 in\n  wall_thickness: 0.12 in"
    )
    spec = read("  drain: {corners: [{id: NE, invert: 91.40}]}\n", design)
    by_design, by_measure = (judged("drain.above-slab", one) for one in on_basis(spec, "both"))
    assert by_design.outcome == MET
    assert by_measure.outcome == NOT_MET
    assert by_measure.compared[0].off_by == "0.86 in"


def test_a_difference_is_a_finding_with_both_places() -> None:
    finding = judged("record.differs", read("  drain: {corners: [{id: NE, invert: 91.25}]}\n"))
    assert (finding.outcome, finding.severity) == (NOT_MET, "minor")
    assert [(at.path, at.line) for at in finding.places] == [
        ("drain.corners.NE.invert", 9),
        ("measured.drain.corners.NE.invert", 16),
    ]


def test_judged_by_what_was_measured_the_difference_is_still_told() -> None:
    spec = as_measured(read("  drain: {corners: [{id: NE, invert: 91.25}]}\n"))
    finding = judged("record.differs", spec)
    assert finding.outcome == NOT_MET
    assert [at.line for at in finding.places] == [16]


def test_where_nothing_was_measured_there_is_nothing_to_differ() -> None:
    spec: dict[str, Any] = {"job": {"stage": "pre_backfill"}, "stone": {"bedding": "2 in"}}
    finding = judged("record.differs", spec_of(spec))
    assert (finding.outcome, finding.because) == (
        DOES_NOT_APPLY,
        "the spec holds nothing that was measured",
    )


def test_as_designed_is_met() -> None:
    assert judged("record.differs", read("  stone: {bedding: 2 in}\n")).outcome == MET


def test_tolerances_are_in_si() -> None:
    from checker.reading.vocabulary import vocabulary

    leaf = vocabulary().leaf("coat.air_temp_min")
    assert leaf is not None
    # 2 F = 2 x 5/9 K
    assert leaf.tolerance == pytest.approx(2 * 5 / 9)
