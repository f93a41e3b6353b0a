"""Documents under one another: what a file's first document shares, and what it leaves alone."""

from __future__ import annotations

import pytest

from checker.reading.reader import read_specs
from checker.reading.spec import Spec

SITE = """vocabulary: 1
paper: site
id: SITE-1
job: {name: Hazel Slope, lot: "3"}
levels: {unit: ft, datum: iron pin, floor_top: 92.00}
drain:
  present: yes
  diameter: 4 in
  corners:
    - {id: NE, invert: 91.16}
    - {id: SW, invert: 90.86}
sheet: not applicable
fabrics: by others
roof: {gutters: yes}
"""


def of_site(document: str) -> Spec:
    """Return the one assembly under the site document."""
    (spec,) = read_specs(f"{SITE}---\nvocabulary: 1\npaper: submittal\n{document}", "lot.yaml")
    return spec


def test_a_site_document_is_no_assembly() -> None:
    text = f"{SITE}---\nvocabulary: 1\nassembly: front\n---\nvocabulary: 1\nassembly: rear\n"
    assert [spec.name for spec in read_specs(text, "lot.yaml")] == [
        "Hazel Slope, lot 3, front",
        "Hazel Slope, lot 3, rear",
    ]


def test_a_site_document_alone_or_second_shares_nothing() -> None:
    (alone,) = read_specs(SITE, "lot.yaml")
    assert alone.paper == "site"
    first, second = read_specs(f"vocabulary: 1\nid: A\n---\n{SITE}", "lot.yaml")
    assert "drain.diameter" not in first.values
    assert second.paper == "site"


def test_silence_takes_what_is_shared_with_its_place() -> None:
    spec = of_site("assembly: front\n")
    shown = spec.values["drain.diameter"]
    assert (shown.written, shown.line, shown.file) == ("4 in", 8, "lot.yaml")
    assert spec.lists["drain.corners"] == ("NE", "SW")
    assert spec.places["drain"] == (6, 1, "lot.yaml")


def test_what_a_document_says_itself_wins_value_by_value() -> None:
    spec = of_site("drain: {diameter: 6 in}\n")
    assert spec.values["drain.diameter"].written == "6 in"
    assert spec.values["drain.present"].value is True


@pytest.mark.parametrize("word", ["not shown", "by others", "unknown", "not applicable"])
def test_a_word_in_place_of_a_value_is_an_answer(word: str) -> None:
    assert of_site(f"drain: {{diameter: {word}}}\n").values["drain.diameter"].word == word


def test_what_a_paper_says_of_itself_is_its_own() -> None:
    spec = of_site("roof: {gutters: no}\n")
    assert spec.paper == "submittal"
    assert "id" not in spec.values
    assert spec.name == "Hazel Slope, lot 3"


def test_a_list_is_taken_whole() -> None:
    spec = of_site("drain: {corners: [{id: SW, run_to_next: 40 ft}]}\n")
    assert spec.lists["drain.corners"] == ("SW",)
    assert "drain.corners.SW.invert" not in spec.values
    assert "drain.corners.NE.invert" not in spec.values
    assert spec.values["drain.diameter"].written == "4 in"


@pytest.mark.parametrize("empty", ["none", "[]"])
def test_an_empty_list_is_an_answer(empty: str) -> None:
    spec = of_site(f"fabrics: {empty}\n")
    assert spec.lists["fabrics"] == ()
    assert "fabrics" not in spec.words


def test_a_word_in_place_of_a_list_or_section_is_an_answer_for_all_of_it() -> None:
    spec = of_site("drain: {corners: not shown}\nroof: not applicable\n")
    assert "drain.corners" not in spec.lists
    assert not [path for path in spec.values if path.startswith(("drain.corners.", "roof."))]
    assert spec.words["drain.corners"] == "not shown"
    assert spec.words["roof"] == "not applicable"
    assert spec.values["drain.diameter"].written == "4 in"


def test_a_shared_word_gives_way_to_anything_said_under_it() -> None:
    spec = of_site("sheet: {kind: dimpled_plain}\nfabrics: [{id: wrap, kind: nonwoven}]\n")
    assert "sheet" not in spec.words
    assert "fabrics" not in spec.words


def test_a_shared_word_holds_where_nothing_is_said() -> None:
    assert of_site("assembly: front\n").words == {"sheet": "not applicable", "fabrics": "by others"}


def test_bare_levels_are_in_the_shared_unit() -> None:
    # 91.67 ft x 0.3048 = 27.941 m
    spec = of_site("levels: {slab_underside: 91.67}\n")
    assert spec.values["levels.slab_underside"].value == pytest.approx(27.941016)


def test_an_own_unit_holds_for_own_levels_only() -> None:
    spec = of_site("levels: {unit: m, slab_underside: 27.94}\n")
    assert spec.values["levels.slab_underside"].value == 27.94
    assert spec.values["levels.floor_top"].value == pytest.approx(92 * 0.3048)


def test_levels_on_another_datum_are_not_mixed() -> None:
    spec = of_site("levels: {unit: ft, datum: top of form = 0, slab_underside: 0}\n")
    assert "levels.floor_top" not in spec.values
    assert "drain.corners.NE.invert" not in spec.values
    assert spec.lists["drain.corners"] == ("NE", "SW")
    assert any("another datum" in note for note in spec.notes)


def test_the_same_datum_in_other_capitals_is_the_same() -> None:
    assert "levels.floor_top" in of_site("levels: {datum: Iron Pin}\n").values


def test_faults_in_the_shared_document_are_said_once() -> None:
    from checker.reading.faults import Unreadable

    text = SITE.replace("4 in", "4") + "---\nvocabulary: 1\nid: A\n---\nvocabulary: 1\nid: B\n"
    with pytest.raises(Unreadable) as raised:
        read_specs(text, "lot.yaml")
    assert [fault.line for fault in raised.value.faults] == [8]
