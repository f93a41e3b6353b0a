"""A calculation that somebody with a pocket calculator can follow, held to hand arithmetic."""

from __future__ import annotations

import re

import pytest

from checker.deriving.quantity import REGISTRY
from checker.reading.reader import read_specs
from checker.reading.spec import Spec
from checker.showing.calc_sheet import SI_UNITS, calc_sheet
from checker.showing.console import as_text

SPEC = """\
vocabulary: 1
job: {name: Quillwater Lane, lot: "14"}
levels:
  unit: ft
  slab_underside: 91.67
  footing_underside: 90.67
drain:
  present: yes
  outside_diameter: 4.215 in
  wall_thickness: {value: 0.12 in, from: SUB-03 p2}
  corners:
    - {id: NE, invert: 91.16}
    - {id: SW, invert: 90.86}
grade:
  sides:
    - {id: north, fall: 6 in, in_distance: 10 ft}
    - {id: east, fall: 5 in, in_distance: 7 ft}
"""


def spec(text: str = SPEC) -> Spec:
    (one,) = read_specs(text, "lot14.yaml")
    return one


def sheet(quantity: str = "", text: str = SPEC) -> str:
    return as_text(calc_sheet(spec(text), quantity))


def flat(text: str) -> str:
    return " ".join(text.split())


def steps(text: str) -> list[str]:
    """The path of every step, in order."""
    return re.findall(r"^\d+\. [^(]*\(([a-zA-Z_.]+)\)", flat_titles(text), re.MULTILINE)


def flat_titles(text: str) -> str:
    return re.sub(r"\n    (?=\S+\)$)", " ", text, flags=re.MULTILINE)


def test_formula_inputs_result_and_source_are_shown() -> None:
    text = flat(sheet("drain.crown_high"))
    assert "formula crown = invert + outside diameter - wall thickness" in text
    # 91.16 ft + 4.215 in - 0.12 in = 91.16 ft + 4.095 in / 12 = 91.50125 ft = 27.88958 m
    assert "gives 91.501 ft (27.8896 m) source geometry" in text


def test_inputs_are_shown_in_their_unit_and_in_si_with_their_place() -> None:
    text = flat(sheet("drain.crown_high"))
    # 4.215 in x 25.4 = 107.061 mm; 0.12 in x 25.4 = 3.048 mm; 91.16 ft x 0.3048 = 27.78557 m
    assert "4.215 in (0.107061 m) [drain.outside_diameter, lot14.yaml:9]" in text
    assert "0.12 in (0.003048 m) [drain.wall_thickness, lot14.yaml:10, SUB-03 p2]" in text
    assert "91.16 ft (27.7856 m) [drain.corners.NE.invert, lot14.yaml:12]" in text


def test_step_comes_after_the_steps_it_uses_and_names_them() -> None:
    text = sheet("drain.floor_cover")
    order = steps(text)
    assert order[-2:] == ["drain.crown_high", "drain.floor_cover"]
    assert order.index("drain.highest_invert") < order.index("drain.crown_high")
    number = order.index("drain.crown_high") + 1
    last = flat(text[text.index("drain.floor_cover") :])
    assert f"91.501 ft (27.8896 m) [step {number}]" in last
    # 91.67 - 91.50125 ft = 0.16875 ft = 2.025 in = 51.435 mm
    assert "gives 2.025 in (0.051435 m)" in last


def test_every_step_is_written_once() -> None:
    order = steps(sheet())
    assert len(order) == len(set(order))
    assert len(order) > 5


def test_each_item_of_a_list_has_a_step_of_its_own() -> None:
    text = flat(sheet("grade.sides.each.slope"))
    # 6 in in 120 in = 5 %; 5 in in 84 in = 5.952 %
    assert "(grade.sides.north.slope)" in text
    assert "gives 5 % (0.05 m/m)" in text
    assert "(grade.sides.east.slope)" in text
    assert "gives 5.952 % (0.0595238 m/m)" in text


def test_what_was_assumed_is_marked() -> None:
    bare = SPEC.replace(
        "  outside_diameter: 4.215 in\n", "  diameter: 4 in\n  material: rigid_pvc\n"
    )
    text = flat(sheet("drain.pipe_outside_diameter", bare))
    assert "assumed outside diameter of the pipe: " in text
    assert "not shown drain.outside_diameter" in text
    assert "assumed" not in sheet("drain.pipe_outside_diameter")


def test_named_quantity_without_a_value_says_what_is_missing() -> None:
    without = SPEC.replace("  slab_underside: 91.67\n", "")
    text = flat(sheet("drain.floor_cover", without))
    assert "(drain.floor_cover)" in text
    assert re.search(r"gives no value: .*not shown: .*levels\.slab_underside", text)


def test_word_in_place_of_a_value_is_quoted() -> None:
    word = SPEC.replace("slab_underside: 91.67", "slab_underside: by others")
    assert 'the spec says "by others"' in flat(sheet("drain.floor_cover", word))


def test_every_quantity_is_either_a_step_or_listed_without_a_value() -> None:
    steps_part, _, rest = sheet().partition("\nWithout a value: ")
    for name in REGISTRY:
        if ".each." in name:
            continue
        is_step = f"({name})" in steps_part
        is_listed = f"({name}):" in rest
        assert is_step != is_listed, name


def test_range_is_shown_by_its_ends() -> None:
    ranged = SPEC.replace("fall: 6 in, in_distance: 10 ft", "fall: 5 to 6 in, in_distance: 10 ft")
    # 5 in in 120 in = 4.167 %
    text = flat(sheet("grade.sides.each.slope", ranged))
    assert "gives 4.167 % to 5 % (0.0416667 to 0.05 m/m)" in text


def test_value_written_in_its_si_unit_is_not_said_twice() -> None:
    metric = "vocabulary: 1\ngrade: {sides: [{id: north, fall: 0.15 m, in_distance: 300 cm}]}\n"
    text = flat(sheet("grade.sides.each.slope", metric))
    assert "fall of the ground = 0.15 m [" in text
    assert "300 cm (3 m) [" in text


def test_unknown_quantity_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        calc_sheet(spec(), "drain.crown_hihg")


def test_every_kind_of_number_with_a_unit_has_its_si_unit() -> None:
    wordy = {"text", "texts", "word", "words", "date", "year", "yes_no", "curve"}
    bare = {"count", "number", "ratio"}
    kinds = {quantity.kind for quantity in REGISTRY.values()}
    assert kinds - wordy - bare <= set(SI_UNITS)


def test_no_line_is_wider_than_80_in_a_pipe_nor_obeyed_by_a_terminal() -> None:
    evil = SPEC.replace("Quillwater Lane", '"\\e[2JQuill"').replace("SUB-03 p2", '"\\e[31mpage"')
    text = sheet(text=evil)
    assert "page" in text
    assert all(one.isprintable() for one in text.split("\n"))
    assert max(len(one) for one in text.splitlines()) <= 80
