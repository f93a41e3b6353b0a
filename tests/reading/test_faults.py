"""What cannot be read is said with its place, in a sentence that helps, all of a file in one go."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.reading.faults import Fault, Unreadable
from checker.reading.reader import load_spec, read_specs


def faults_of(text: str) -> list[Fault]:
    """Return the faults of a text that must have some."""
    with pytest.raises(Unreadable) as raised:
        read_specs(text, "lot.yaml")
    return raised.value.faults


HEAD = "vocabulary: 1\n"

CASES = [
    # what is wrong, text after the head, line, column, words that must stand in the message
    ("missing unit", "wall:\n  thickness: 10\n", 3, 14, ["no unit", "in, ft"]),
    ("wrong unit", "footing:\n  thickness: 4 gal\n", 3, 14, ["gal", "volume", "length"]),
    ("too many inches", "wall:\n  height: 4' 13\"\n", 3, 11, ["13"]),
    ("negative thickness", "footing:\n  thickness: -8 in\n", 3, 14, ["-8 in", "cannot be"]),
    ("negative in another unit", "coat:\n  dry_thickness: -1 mm\n", 3, 18, ["cannot be"]),
    ("same key twice", "wall:\n  type: cast\n  type: block\n", 4, 3, ["twice", "line 3"]),
    ("unknown key", "footing:\n  thicknes: 8 in\n", 3, 3, ["thicknes", "nearest known: thickness"]),
    ("unknown section", "foting:\n  width: 20 in\n", 2, 1, ["nearest known: footing"]),
    ("unknown word", "wall:\n  type: cst\n", 3, 9, ["cst", "nearest known: cast"]),
    ("neither yes nor no", "drain:\n  present: maybe\n", 3, 12, ["maybe", "neither yes nor no"]),
    ("a comma became a key", "job:\n  codes: [{id: IRC, local_amendment: ordinance 41, drain inside}]\n", 3, 52,
     ["after the comma", "quotes"]),
    ("a comment swallowed the value", "stone:\n  size_number: #57\n", 3, 15, ["comment", "#57", "quotes"]),
    ("starts with more-than", "coat:\n  dry_thickness: >= 40 mil\n", 3, None, ["'>'", "quotes"]),
    ("starts with at", "job:\n  name: @home\n", 3, None, ["'@'", "quotes"]),
    ("inch mark in double quotes", 'drain:\n  diameter: "4""\n', 3, None, ["quotes do not pair"]),
    ("colon inside", "wall:\n  design_by: see: S-2\n", 3, None, ["second ':'", "quotes"]),
    ("tab", "wall:\n\ttype: cast\n", 3, None, ["tab"]),
    ("a list where one thing belongs", "wall:\n  thickness: [8 in]\n", 3, 14, ["one value"]),
    ("one thing where keys belong", "wall: cast\n", 2, None, ["group of keys", "cast"]),
    ("keys where a list belongs", "grade:\n  sides: {id: north}\n", 3, None, ["list"]),
    ("item without id", "grade:\n  sides:\n    - {fall: 6 in, in_distance: 10 ft}\n", 4, 7, ["id"]),
    ("two items of one id", "grade:\n  sides:\n    - {id: a}\n    - {id: a}\n", 5, 7, ["two", "'a'"]),
    ("impossible day", "wall:\n  poured: 2031-02-30\n", 3, 11, ["2031-02-30", "year-month-day"]),
    ("share over one", "coat:\n  solids: 140 %\n", 3, 11, ["140 %", "cannot be"]),
    ("range backwards", "stone:\n  bedding: 4 to 2 in\n", 3, 12, ["4 to 2 in"]),
    ("ambiguous word", "coat:\n  base: tar\n", 3, 9, ["more than one meaning", "which"]),
    ("unknown provenance", "wall:\n  thickness: {value: 8 in, form: S-2}\n", 3, 28, ["form", "from"]),
    ("provenance without value", "wall:\n  thickness: {from: S-2}\n", 3, 14, ["value:"]),
    ("bare ratio for a dug bank", "excavation:\n  run_per_rise: \"1.5:1\"\n", 3, 17, ["1.5H:1V"]),
]  # fmt: skip


@pytest.mark.parametrize(
    ("what", "text", "line", "column", "words"), CASES, ids=[case[0] for case in CASES]
)
def test_fault(what: str, text: str, line: int, column: int | None, words: list[str]) -> None:
    (fault,) = faults_of(HEAD + text)
    assert fault.line == line, fault
    if column is not None:
        assert fault.column == column, fault
    for word in words:
        assert word in fault.message, fault


def test_all_faults_of_a_file_in_one_go() -> None:
    text = HEAD + "wall:\n  thickness: 10\n  typ: cast\nfooting:\n  thickness: -8 in\n  form: box\n"
    assert [fault.line for fault in faults_of(text)] == [3, 4, 6, 7]


@pytest.mark.parametrize("text", ["", "\n\n", "# nothing but a comment\n", "---\n"])
def test_empty_file(text: str) -> None:
    (fault,) = faults_of(text)
    assert "empty" in fault.message


@pytest.mark.parametrize("text", ["just words", "- a\n- b\n", "42"])
def test_not_a_spec(text: str) -> None:
    (fault,) = faults_of(text)
    assert "is not a spec" in fault.message


def test_header_is_asked_for() -> None:
    (fault,) = faults_of("wall: {type: cast}\n")
    assert "vocabulary" in fault.message


def test_not_yaml() -> None:
    (fault,) = faults_of(HEAD + "wall: {type: cast\njob: {name: x}\n")
    assert fault.line >= 2
    assert "is not YAML" in fault.message


def test_not_utf8(tmp_path: Path) -> None:
    path = tmp_path / "lot.yaml"
    path.write_bytes(b"vocabulary: 1\njob:\n  name: Quillwater \xff\n")
    with pytest.raises(Unreadable) as raised:
        load_spec(path)
    (fault,) = raised.value.faults
    assert (fault.line, fault.column) == (3, 20)
    assert "UTF-8" in fault.message


@pytest.mark.parametrize(
    "text",
    [
        "vocabulary: 1\nx-a: " + "[" * 100_000,
        "vocabulary: 1\nx-a: " + "- " * 10_000 + "a",
        "vocabulary: 1\n" + "".join(" " * depth + "a:\n" for depth in range(1, 3_000)),
        "--- a\n" * 5_000,
        "a: &a [x]\n" + "x-b: [" + "*a, " * 5_000 + "]",
    ],
    ids=["flow", "dashes", "indents", "documents", "aliases"],
)
def test_hostile_file_is_refused(text: str) -> None:
    assert faults_of(text)


def test_no_such_file(tmp_path: Path) -> None:
    with pytest.raises(Unreadable) as raised:
        load_spec(tmp_path / "nothing.yaml")
    assert "cannot be opened" in raised.value.faults[0].message


def test_fifo_is_not_opened(tmp_path: Path) -> None:
    import os

    path = tmp_path / "pipe.yaml"
    os.mkfifo(path)
    with pytest.raises(Unreadable):
        load_spec(path)
