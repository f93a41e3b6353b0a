"""Edits by path: one value changes, every comment and every other character stays."""

from __future__ import annotations

import functools
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.reading.compose import compose
from checker.reading.faults import Unreadable
from checker.reading.reader import read_specs
from checker.reading.spec import Shown
from checker.reading.splice import insert, splice
from checker.reading.vocabulary import Leaf, plain_word, vocabulary
from checker.reading.walk import STAND_INS
from checker.reading.yaml_text import CannotSplice

SPECS = Path(__file__).parents[2] / "specs"

SPEC = """\
# lot 14, as the sub sent it
vocabulary: 1
job: {name: Quillwater Lane, lot: "14"}   # by the gate

levels:
  unit: ft
  footing_underside: {value: 90.67, from: sheet S-2}  # below frost
drain:
  present: yes
  diameter: '4"'
  material:            # asked on Monday
  corners:
    - {id: NE, invert: 91.16, run_to_next: 42 ft}
    # the porch is here
    - id: S.W
      invert: 90.86    # shot twice
stone:
  bedding: 2 in
"""


# -- one value -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("path", "new", "old_line", "new_line"),
    [
        ("stone.bedding", "3 in", "  bedding: 2 in", "  bedding: 3 in"),
        ("drain.corners.NE.invert", "91.20", "invert: 91.16,", "invert: 91.20,"),
        ("drain.corners.S.W.invert", "90.9", "invert: 90.86    # shot", "invert: 90.9    # shot"),
        ("levels.footing_underside", "90.5", "{value: 90.67, from", "{value: 90.5, from"),
        ("job.lot", "15", 'lot: "14"}   #', 'lot: "15"}   #'),
        ("drain.diameter", "6 in", "diameter: '4\"'", "diameter: '6 in'"),
        ("drain.diameter", "it's 4", "diameter: '4\"'", "diameter: 'it''s 4'"),
        ("job.lot", '4"', '"14"', "'4\"'"),
        ("drain.material", "abs", "material:            #", "material: abs            #"),
        # plain texts that would mean something else to YAML get quotes
        ("stone.bedding", "#57", "2 in", "'#57'"),
        ("stone.bedding", '3": min', "2 in", "'3\": min'"),
        ("stone.bedding", ">= 2 in", "2 in", "'>= 2 in'"),
        ("stone.bedding", "2 in # more", "2 in", "'2 in # more'"),
        ("job.name", "Lane, the second", "name: Quillwater Lane,", "name: 'Lane, the second',"),
        ("stone.bedding", "2 in, washed", "2 in", "2 in, washed"),
    ],
)
def test_splice(path: str, new: str, old_line: str, new_line: str) -> None:
    assert SPEC.count(old_line) == 1
    assert splice(SPEC, path, new) == SPEC.replace(old_line, new_line)


@pytest.mark.parametrize(
    ("text", "path", "words"),
    [
        (SPEC, "stone.cover", "there is no 'stone.cover'"),
        (SPEC, "drain.corners.XX.invert", "there is no"),
        (SPEC, "drain", "not one value"),
        (SPEC, "drain.corners", "not one value"),
        ("wall: {type: {as_written: '4'}}\n", "wall.type", "not one value"),
        ("drain: {material: [abs, clay]}\n", "drain.material", "not one value"),
        ("job:\n  name: |\n    Quillwater\n    Lane\n", "job.name", "as a block"),
        ("wall: {type: !word cast}\n", "wall.type", "with a tag"),
        ("wall: {type: &t cast}\n", "wall.type", "with a tag"),
        ("wall: {type: &t cast, form: *t}\n", "wall.type", "says things twice"),
        ("x-a: &t {b: 1}\nx-c: *t\nwall: {type: cast}\n", "wall.type", "says things twice"),
        ("wall: {type: cast}\n---\nwall: {}\n", "wall.type", "no document number 3"),
    ],
)
def test_splice_refuses(text: str, path: str, words: str) -> None:
    document = 2 if "number 3" in words else 0
    with pytest.raises(CannotSplice, match=words):
        splice(text, path, "block", document)


@pytest.mark.parametrize("new", ["", "   ", "two\nlines", "a\tb", "bell\a", "\ufeff"])
def test_a_value_is_one_line_that_can_be_seen(new: str) -> None:
    with pytest.raises(CannotSplice, match="one line"):
        splice(SPEC, "stone.bedding", new)


def test_what_is_no_yaml_is_unreadable() -> None:
    with pytest.raises(Unreadable):
        splice("wall: {type: cast\n", "wall.type", "block")


def test_documents_are_counted_without_the_blank_ones() -> None:
    text = "---\n# nothing\n---\nwall: {type: cast}\n---\nwall: {type: block}  # rear\n"
    assert splice(text, "wall.type", "icf", 1) == text.replace("block", "icf")


def test_line_ends_and_the_byte_order_mark_stay() -> None:
    text = "\ufeffjob: {name: Hazel Slope 🏠}\r\nwall:\r\n  type: cast\r\n"
    assert splice(text, "wall.type", "block") == text.replace("cast", "block")


def test_a_text_over_several_lines_becomes_one() -> None:
    text = "job:\n  name: Quillwater\n    Lane   # long\nwall: {type: cast}\n"
    assert (
        splice(text, "job.name", "Hazel Slope")
        == "job:\n  name: Hazel Slope   # long\nwall: {type: cast}\n"
    )


# -- one key more ----------------------------------------------------------------------------------


def added(text: str, section: str, key: str, value: str, *, after: str, lines: str) -> None:
    """Hold an insertion to the lines wanted after a line."""
    assert text.count(after) == 1
    assert insert(text, section, key, value) == text.replace(after, after + lines)


def test_insert_into_a_section_at_its_indent() -> None:
    added(SPEC, "stone", "cover", "6 in", after="  bedding: 2 in\n", lines="  cover: 6 in\n")


def test_insert_after_the_last_line_of_a_section_and_its_comment() -> None:
    added(
        SPEC,
        "drain",
        "outlet_at",
        "S.W",
        after="      invert: 90.86    # shot twice\n",
        lines="  outlet_at: S.W\n",
    )


def test_insert_into_braces() -> None:
    added(SPEC, "job", "stage", "drain", after='lot: "14"', lines=", stage: drain")
    added(
        SPEC,
        "drain.corners.NE",
        "turn",
        "left, by the oak",
        after="run_to_next: 42 ft",
        lines=", turn: 'left, by the oak'",
    )


def test_insert_into_an_item_of_a_list() -> None:
    added(
        SPEC,
        "drain.corners.S.W",
        "run_to_next",
        "40 ft",
        after="      invert: 90.86    # shot twice\n",
        lines="      run_to_next: 40 ft\n",
    )


def test_insert_a_section_on_the_way() -> None:
    added(
        SPEC,
        "slab",
        "thickness",
        "4 in",
        after="  bedding: 2 in\n",
        lines="\nslab:\n  thickness: 4 in\n",
    )


def test_insert_an_item_on_the_way() -> None:
    added(
        SPEC,
        "drain.corners.SE",
        "invert",
        "91.0",
        after="      invert: 90.86    # shot twice\n",
        lines="    - {id: SE, invert: 91.0}\n",
    )


def test_insert_what_was_measured_with_who_and_when() -> None:
    value = {"value": "91.25", "by": "R. Halloway, laser", "date": "2031-06-10"}
    text = insert(SPEC, "measured.drain.corners.NE", "invert", value)
    assert text == SPEC + (
        "\nmeasured:\n  drain:\n    corners:\n"
        "      - {id: NE, invert: {value: 91.25, by: 'R. Halloway, laser', date: 2031-06-10}}\n"
    )
    again = insert(text, "measured.drain.corners.SW", "invert", "90.86")
    assert again == text + "      - {id: SW, invert: 90.86}\n"
    third = insert(again, "measured.levels", "footing_top", "91.67")
    assert third == again + "  levels:\n    footing_top: 91.67\n"
    (spec,) = read_specs(third, "lot.yaml")
    assert spec.values["measured.drain.corners.NE.invert"].by == "R. Halloway, laser"


def test_insert_at_the_top() -> None:
    added(SPEC, "", "id", "SUB-03", after="  bedding: 2 in\n", lines="id: SUB-03\n")


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("wall:\n", "wall:\n  type: cast\n"),
        ("wall:   # later\njob: {lot: '3'}\n", "wall:   # later\n  type: cast\njob: {lot: '3'}\n"),
        ("wall: {}\n", "wall: {type: cast}\n"),
        ("wall: {height: 8 ft,}\n", "wall: {height: 8 ft, type: cast,}\n"),
        (
            "wall: {height: 8 ft,\n       thickness: 8 in}  # S-2\n",
            "wall: {height: 8 ft,\n       thickness: 8 in, type: cast}  # S-2\n",
        ),
        ("wall: {height: }\n", "wall: {height: , type: cast}\n"),
        ("wall:\n    height: 8 ft", "wall:\n    height: 8 ft\n    type: cast"),
        ("wall:\r\n  height: 8 ft\r\n", "wall:\r\n  height: 8 ft\r\n  type: cast\r\n"),
        (
            "wall:\n  height: 8 ft\n\n# the slab\nslab: {thickness: 4 in}\n",
            "wall:\n  height: 8 ft\n  type: cast\n\n# the slab\nslab: {thickness: 4 in}\n",
        ),
        (
            "wall:\n  honeycomb: |\n    none\n    to be seen\njob: {lot: '3'}\n",
            "wall:\n  honeycomb: |\n    none\n    to be seen\n  type: cast\njob: {lot: '3'}\n",
        ),
        (
            "wall:\n  height: 8 ft\n---\nwall:\n  height: 9 ft\n",
            "wall:\n  height: 8 ft\n  type: cast\n---\nwall:\n  height: 9 ft\n",
        ),
    ],
)
def test_insert_by_layout(text: str, wanted: str) -> None:
    assert insert(text, "wall", "type", "cast") == wanted


def test_insert_into_lists_of_braces() -> None:
    text = "drain: {corners: [{id: NE, invert: 91.16}]}\n"
    assert insert(text, "drain.corners.SW", "invert", "90.86") == text.replace(
        "}]", "}, {id: SW, invert: 90.86}]"
    )
    assert (
        insert("fabrics: []\n", "fabrics.wrap", "kind", "nonwoven")
        == "fabrics: [{id: wrap, kind: nonwoven}]\n"
    )


@pytest.mark.parametrize(
    ("text", "section", "key", "words"),
    [
        (SPEC, "stone", "bedding", "is there already"),
        (SPEC, "drain", "material", "is there already"),
        (SPEC, "stone", "beding", "no value of a spec"),
        (SPEC, "", "slab", "no value of a spec"),
        ("sheet: not applicable\n", "sheet", "kind", "'not applicable' stands in place"),
        ("fabrics: none\n", "fabrics.wrap", "kind", "'none' stands in place"),
        ("drain: {corners: }\n", "drain.corners.NE", "invert", "stands in place"),
        ("- a\n", "stone", "cover", "more than this value"),
    ],
)
def test_insert_refuses(text: str, section: str, key: str, words: str) -> None:
    with pytest.raises(CannotSplice, match=words):
        insert(text, section, key, "6 in")


# -- every value of every example ------------------------------------------------------------------


# A run may meet the first use of a library, which takes its time.
SLOWLY = settings(deadline=None)


class Place:
    """One value that may be spliced: its file's text, its document and its path."""

    def __init__(self, text: str, document: int, shown: Shown) -> None:
        self.text, self.document, self.shown = text, document, shown

    def __repr__(self) -> str:
        return f"{self.shown.path} (document {self.document})"


@functools.cache
def places() -> list[Place]:
    """Every single value of the example specs, as each document by itself says it."""
    found = []
    for path in sorted(SPECS.rglob("*.yaml")):
        text = path.read_text(encoding="utf-8")
        if "\nvocabulary:" not in text:
            continue  # the house file and its rules
        for number, part in enumerate(text.split("\n---\n")):
            # What a document takes from another stands somewhere else.
            alone = part.replace("starts_from:", "x-starts_from:")
            (spec,) = read_specs(alone, path.name)
            leaves = vocabulary()
            found += [
                Place(text, number, shown)
                for shown in spec.values.values()
                if (leaf := leaves.leaf(shown.pattern)) is not None
                and leaf.kind not in ("words", "texts", "curve")
                and not isinstance(shown.value, tuple)
                and ", " not in shown.written
                # what was kept as written is no value
                and (shown.value is not None or plain_word(shown.written) in STAND_INS)
            ]
    return found


def scalars(text: str) -> list[str]:
    """Every scalar of a text in the order of the file."""
    found = []
    waiting = list(reversed(compose(text, "a spec")))
    while waiting:
        node = waiting.pop()
        if isinstance(node, yaml.ScalarNode):
            found.append(node.value)
        elif isinstance(node, yaml.MappingNode):
            waiting += [part for pair in reversed(node.value) for part in reversed(pair)]
        elif isinstance(node, yaml.SequenceNode):
            waiting += reversed(node.value)
    return found


def changed(before: str, after: str) -> tuple[str, str]:
    """What stands between the longest equal beginning and the longest equal end."""
    start = 0
    while start < min(len(before), len(after)) and before[start] == after[start]:
        start += 1
    end = 0
    while end < min(len(before), len(after)) - start and before[-1 - end] == after[-1 - end]:
        end += 1
    return before[start : len(before) - end], after[start : len(after) - end]


# Texts that a person could write, rich in what YAML takes for its own.
TEXTS = st.text(
    st.sampled_from("abc 14,:#'\"{}[]&*!|>@%`-?~\\=½é🏠"), min_size=1, max_size=12
).filter(str.strip)


@SLOWLY
@given(st.sampled_from(places()), TEXTS)
def test_whatever_is_spliced_reads_back_and_nothing_else_changes(place: Place, new: str) -> None:
    after = splice(place.text, place.shown.path, new, place.document)
    differing = [
        (old, now)
        for old, now in zip(scalars(place.text), scalars(after), strict=True)
        if old != now
    ]
    assert differing in ([], [(place.shown.written, new)])
    if new != place.shown.written:
        assert differing
    old, _ = changed(place.text, after)
    assert "\n" not in old
    assert len(old) <= len(place.shown.written) + place.shown.written.count("'") + 2


@SLOWLY
@given(st.sampled_from(places()), st.data())
def test_a_value_of_the_vocabulary_is_read_in_the_spec_as_it_was_spliced(
    place: Place, data: st.DataObject
) -> None:
    leaf = vocabulary().leaf(place.shown.pattern)
    assert leaf is not None
    new = data.draw(st.sampled_from([*leaf.examples, "not shown"]))
    if leaf.path.endswith((".id", "vocabulary", "paper", "starts_from", "unit")):
        return
    after = splice(place.text, place.shown.path, new, place.document)
    part = after.split("\n---\n")[place.document].replace("starts_from:", "x-starts_from:")
    (spec,) = read_specs(part, "lot.yaml")
    shown = spec.values[place.shown.path]
    assert (shown.written, shown.line, shown.column) == (new, place.shown.line, place.shown.column)
    assert (shown.source, shown.how, shown.by) == (
        place.shown.source,
        place.shown.how,
        place.shown.by,
    )


def leaves_to_add() -> list[tuple[str, str]]:
    """Every value that stands in no list, with an example of it."""
    return [
        (path, node.examples[0])
        for path, node in vocabulary().nodes.items()
        if isinstance(node, Leaf)
        and "." in path
        and ".each." not in path
        and node.kind not in ("words", "texts", "curve", "level")
        # those of the design and of what was measured must agree
        and not path.endswith(("levels.datum", "levels.unit"))
    ]


def _refused(text: str, section: str, key: str, value: str) -> str:
    """Return why an insertion is refused, or nothing."""
    try:
        insert(text, section, key, value)
    except CannotSplice as reason:
        return str(reason)
    return ""


@SLOWLY
@given(st.sampled_from(sorted(SPECS.glob("*.yaml"))), st.sampled_from(leaves_to_add()))
def test_whatever_is_added_is_read_and_not_a_character_is_lost(
    path: Path, leaf: tuple[str, str]
) -> None:
    text = path.read_text(encoding="utf-8")
    section, _, key = leaf[0].rpartition(".")
    if refused := _refused(text, section, key, leaf[1]):
        assert "already" in refused or "in place" in refused
        return
    after = insert(text, section, key, leaf[1])
    gone, added = changed(text, after)
    assert gone == ""
    assert f"{key}: " in added
    # a blank line, and a line for each step of the path
    assert added.count("\n") <= 1 + len(leaf[0].split("."))
    first = after.split("\n---\n")[0].replace("starts_from:", "x-starts_from:")
    (spec,) = read_specs(first, path.name)
    assert spec.values[leaf[0]].written == leaf[1]
