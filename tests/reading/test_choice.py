"""What a standard may leave open, how it is written, and who may not."""

from __future__ import annotations

import pytest

from checker.reading.faults import Unreadable
from checker.reading.reader import read_specs
from checker.reading.spec import Shown
from checker.values import Choice

PIPES = Choice(("rigid_pvc", "abs"))


def of_standard(body: str, paper: str = "standard") -> dict[str, Shown]:
    (spec,) = read_specs(f"vocabulary: 1\npaper: {paper}\n{body}", "HF.yaml")
    return spec.values


def fault(body: str, paper: str = "standard") -> str:
    with pytest.raises(Unreadable) as raised:
        of_standard(body, paper)
    (one,) = raised.value.faults
    assert one.line == 3
    return one.message


@pytest.mark.parametrize(
    "written",
    [
        "[rigid_pvc, abs]",
        "{one of: [rigid_pvc, abs]}",
        "{one_of: [Rigid PVC, ABS]}",
        "{one of: [rigid_pvc, abs], from: sheet 2, how: standard}",
        "{value: [rigid_pvc, abs], from: sheet 2}",
    ],
)
def test_one_of_several_words(written: str) -> None:
    shown = of_standard(f"drain: {{material: {written}}}\n")["drain.material"]
    assert shown.value == PIPES
    assert shown.written.lower().replace(" ", "_") == "rigid_pvc,_abs"


def test_provenance_goes_with_it() -> None:
    shown = of_standard("drain: {material: {one of: [rigid_pvc, abs], from: sheet 2}}\n")[
        "drain.material"
    ]
    assert shown.source == "sheet 2"


def test_one_of_one_is_no_choice() -> None:
    assert of_standard("drain: {material: [abs]}\n")["drain.material"].value == "abs"


def test_sizes_are_texts_and_are_left_open_by_name() -> None:
    values = of_standard('stone: {size_number: {one of: ["57", "67"]}}\n')
    assert values["stone.size_number"].value == Choice(("57", "67"))


def test_items_of_a_list_leave_things_open_too() -> None:
    values = of_standard("fabrics: [{id: wrap, kind: [nonwoven, woven]}]\n")
    assert values["fabrics.wrap.kind"].value == Choice(("nonwoven", "woven"))


@pytest.mark.parametrize("paper", ["standard", "Standard", "standard detail", "{value: standard}"])
def test_a_standard_by_any_of_its_names(paper: str) -> None:
    assert (
        of_standard("drain: {material: [rigid_pvc, abs]}\n", paper)["drain.material"].value == PIPES
    )


@pytest.mark.parametrize("paper", ["submittal", "house", "as built", "not shown"])
def test_only_a_standard_leaves_a_choice(paper: str) -> None:
    message = fault("drain: {material: [rigid_pvc, abs]}\n", paper)
    assert "pipe material: only a standard leaves a choice" in message
    assert "rigid_pvc or abs" in message


@pytest.mark.parametrize(
    ("body", "words"),
    [
        ("drain: {diameter: {one of: [4 in, 6 in]}}\n", "as a range"),
        ("drain: {present: {one of: [yes, no]}}\n", "leaving the key out"),
        ("drain: {diameter: [4 in, 6 in]}\n", "one value belongs here"),
        ("drain: {material: [rigid_pvc, pcv]}\n", "'pcv' is not a known word"),
        ("drain: {material: [pcv, rigid_pvc]}\n", "'pcv' is not a known word"),
        ("drain: {material: []}\n", "a list of words"),
        ("drain: {material: {one of: abs}}\n", "a list of words"),
        ("drain: {material: [{a: b}]}\n", "a list of words"),
        ("drain: {material: [abs, ABS]}\n", "stands here twice"),
        ("drain: {material: {value: abs, one of: [abs]}}\n", "'one of' stands beside 'value'"),
        ("coat: {base: [tar, liquid_rubber]}\n", "more than one meaning"),
        ("job: {stage: [desk, drain]}\n", "somebody chooses"),
    ],
)
def test_what_cannot_be_left_open(body: str, words: str) -> None:
    assert words in fault(body)


def test_a_list_where_one_text_belongs_is_a_fault_of_provenance() -> None:
    assert "by: one text" in fault("drain: {diameter: {value: 4 in, by: [R. Halloway]}}\n")


def test_a_gradation_may_say_where_it_came_from() -> None:
    shown = of_standard("stone: {gradation: {value: {No. 4: 5 %, 1 in: 100 %}, from: ticket}}\n")
    assert shown["stone.gradation"].source == "ticket"
    value: object = shown["stone.gradation"].value
    assert value == ((0.00475, 0.05), (0.0254, 1.0))
