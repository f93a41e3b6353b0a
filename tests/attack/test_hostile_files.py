"""A file made to do harm is refused in a sentence, in bounded time and memory, and stops no other."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from checker.reading.faults import Unreadable
from checker.reading.reader import load_spec, read_specs
from tests.attack.conftest import Ended, belowgrade

HEAD = "vocabulary: 1\n"


def bomb(levels: int, width: int, *, at: str) -> str:
    """A few lines that stand for `width` to the power of `levels` values, at a key that is read."""
    lines = [f"x-0: &n0 [{', '.join(['x'] * width)}]"]
    lines += [f"x-{n}: &n{n} [{', '.join([f'*n{n - 1}'] * width)}]" for n in range(1, levels)]
    return HEAD + "\n".join(lines) + "\n" + at.format(f"*n{levels - 1}") + "\n"


def chain(length: int) -> str:
    links = "".join(f"x-{n}: &n{n} [*n{n - 1}]\n" for n in range(1, length))
    return f"{HEAD}x-0: &n0 [x]\n{links}wall: {{type: *n{length - 1}}}\n"


PLACES = (
    "wall: {{type: {0}}}", "wall: {0}", "grade: {{sides: {0}}}", "stone: {{gradation: {0}}}",
    "coat: {{compatible_with: {0}}}", "wall: {{thickness: {{value: {0}}}}}", "unknown: {0}",
)  # fmt: skip

# Name, text, and what the refusal says.
TEXTS = [
    *((f"aliases at {at[:12]}", bomb(9, 10, at=at), "aliases") for at in PLACES),
    ("wide aliases", bomb(4, 200, at="wall: {{type: {0}}}"), "aliases"),
    ("a chain of aliases", chain(900), "aliases"),
    ("a ring", f"{HEAD}wall: {{type: &a [*a]}}", "leads back"),
    ("a ring of keys", f"{HEAD}wall: &a {{type: *a}}", "leads back"),
    ("a document in itself", "&a {vocabulary: 1, wall: *a}", "leads back"),
    ("10,000 lists in lists", f"{HEAD}x-a: " + "[" * 10_000 + "]" * 10_000, "nested too deep"),
    ("10,000 keys in keys", f"{HEAD}x-a: " + "{a: " * 10_000 + "}" * 10_000, "nested too deep"),
    ("10,000 dashes", f"{HEAD}x-a:\n  " + "- " * 10_000 + "a", "nested too deep"),
    ("10,000 indents", HEAD + "".join(" " * n + "a:\n" for n in range(1, 1_900)), "nested too deep"),
    ("10,000 complex keys", f"{HEAD}x-a:\n  " + "? " * 10_000 + "a", "nested too deep"),
    ("a million documents", "--- a\n" * 300_000, "documents"),
    ("documents between old line ends", "vocabulary: 1\r---\r" * 50_000, "documents"),
    ("a line of tabs", HEAD + "\t" * 1_900_000, "tab"),
    ("a line of colons", HEAD + "a: " * 600_000, "second ':'"),
    ("20,000 things in a list",
     f"{HEAD}grade:\n  sides:\n" + "".join(f"    - {{id: s{n}, fall: }}\n" for n in range(20_000)),
     "more than 1000 things"),
    ("two megabytes of id", f"{HEAD}grade: {{sides: [{{id: {'a' * 1_900_000}}}]}}", "an id is a short word"),
    ("20,000 unknown keys", f"{HEAD}wall:\n" + "".join(f"  k{n}: 1\n" for n in range(20_000)), "more faults"),
    ("a number of 6,000 digits", f"{HEAD}wall: {{thickness: {'9' * 6_000} in}}", "characters long"),
    ("a number too great", f"{HEAD}wall: {{thickness: 1e999 in}}", "thickness"),
    ("a hundred thousand numbers", f"{HEAD}wall: {{thickness: '{'1 ' * 100_000}in'}}", "characters long"),
    ("a fraction of fractions", f"{HEAD}wall: {{thickness: {'1/' * 100_000}1 in}}", "characters long"),
    ("NUL", f"{HEAD}job: {{name: a\0b}}", "not YAML"),
    ("an escape character", f"{HEAD}job: {{name: a\x1b[2Jb}}", "not YAML"),
    ("two thousand tags", "%TAG ! a\n" * 2_000 + "---\na", "YAML"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "says"), [case[1:] for case in TEXTS], ids=[case[0] for case in TEXTS]
)
def test_text_is_refused(text: str, says: str) -> None:
    with pytest.raises(Unreadable) as raised:
        read_specs(text, "lot.yaml")
    assert len(raised.value.faults) <= 501
    assert any(says in fault.message for fault in raised.value.faults), raised.value.faults[:3]


# What no text can hold, or what is only seen from outside.
BYTES = {
    "nul": (b"vocabulary: 1\njob: {name: a\0b}\n", "not YAML"),
    "latin": (b"vocabulary: 1\njob: {name: caf\xe9}\n", "not UTF-8"),
    "utf-16": ("vocabulary: 1\n".encode("utf-16"), "not UTF-8"),
    "utf-32": ("vocabulary: 1\n".encode("utf-32"), "not UTF-8"),
    "surrogate": (b"vocabulary: 1\njob: {name: \xed\xa0\x80}\n", "not UTF-8"),
    "overlong": (b"vocabulary: 1\njob: {name: \xc0\xaf}\n", "not UTF-8"),
    "bomb": (bomb(9, 10, at=PLACES[0]).encode(), "aliases"),
    "deep": (HEAD.encode() + b"x-a: " + b"[" * 500_000, "nested too deep"),
}


def test_hostile_files_stop_no_other(beside: Callable[..., Ended], folder: Path) -> None:
    for name, (data, _) in BYTES.items():
        (folder / f"{name}.yaml").write_bytes(data)
    with (folder / "sparse.yaml").open("wb") as stream:
        stream.write(HEAD.encode() + b"x-a: ")
        stream.truncate(1_000_000_000)
    ended = beside()
    assert ended.status == 2
    said = dict(line.split(".yaml", 1) for line in ended.err.splitlines())
    for name, (_, says) in BYTES.items():
        assert says in said[name], name
    assert "larger than 2 MB" in said["sparse"]
    shared = beside("--jobs", "2")
    assert (shared.out, shared.err) == (ended.out, ended.err)


def test_what_lies_in_a_folder_and_is_no_file(beside: Callable[..., Ended], folder: Path) -> None:
    os.mkfifo(folder / "pipe.yaml")
    (folder / "folder.yaml").mkdir()
    (folder / "inside").mkdir()
    (folder / "inside" / "round").symlink_to("..", target_is_directory=True)
    (folder / "itself.yaml").symlink_to("itself.yaml")
    (folder / "nowhere.yaml").symlink_to("gone")
    (folder / "null.yaml").symlink_to("/dev/zero")
    ended = beside()
    assert ended.status == 2
    assert ended.assemblies == ["Quillwater Lane, lot 14"]
    for name in ("pipe", "itself", "nowhere", "null"):
        assert f"{name}.yaml: cannot be opened" in ended.err
    assert "folder.yaml" not in ended.err


@pytest.mark.parametrize(
    "name",
    [
        "pipe.yaml",
        "/dev/zero",
        "/dev/stdin",
        "gone.yaml",
        "a" * 5_000,
        "itself.yaml",
        "good.yaml/a",
    ],
)
def test_what_is_named_and_is_no_file(folder: Path, name: str) -> None:
    os.mkfifo(folder / "pipe.yaml")
    (folder / "itself.yaml").symlink_to("itself.yaml")
    ended = belowgrade("review", name, "good.yaml", "--as", "jsonl", folder=folder)
    assert (ended.status, ended.assemblies) == (2, ["Quillwater Lane, lot 14"])
    assert "cannot be opened" in ended.err


NAMES = ("\x1b[2Jx.yaml", "new\nline.yaml", "caf\udce9.yaml", "-.yaml", "a\u202eb.yaml", "<b>.yaml")


@pytest.mark.parametrize("form", ["text", "json", "jsonl", "sarif", "junit", "html"])
def test_names_of_files_are_text(folder: Path, form: str) -> None:
    for name in NAMES:
        shutil.copy(folder / "good.yaml", folder / name)
        (folder / f"broken{name}").write_text("vocabulary: 1\nwal: {}\n", encoding="utf-8")
    ended = belowgrade("review", ".", "--as", form, folder=folder)
    assert ended.status == 2
    assert ended.err.count("there is no 'wal'") == len(NAMES)
    for text in (ended.out, ended.err):
        assert all(line.isprintable() for line in text.split("\n"))


@pytest.mark.parametrize(
    "written",
    ["../../etc/passwd", "/etc/passwd", "file:///etc/passwd", "..", ".", "~/x.yaml", "out.yaml",
     "pipe.yaml", "C:\\x.yaml", "\\\\host\\x.yaml", "a\0b", "$HOME/x.yaml", "lot.yaml", "a" * 5_000,
     "good.yaml/../../x.yaml", "loop/loop/x.yaml"],
)  # fmt: skip
def test_a_spec_starts_from_nothing_outside_its_folder(folder: Path, written: str) -> None:
    secret = folder.parent / f"{folder.name}-secret.yaml"
    secret.write_text("vocabulary: 1\nwall: {type: secret}\n", encoding="utf-8")
    (folder / "out.yaml").symlink_to(secret)
    (folder / "loop").symlink_to(".", target_is_directory=True)
    os.mkfifo(folder / "pipe.yaml")
    quoted = written.replace("\\", "\\\\").replace("\0", "\\0")
    lot = folder / "lot.yaml"
    lot.write_text(f'vocabulary: 1\nstarts_from: "{quoted}"\n', encoding="utf-8")
    with pytest.raises(Unreadable) as raised:
        load_spec(lot)
    (fault,) = raised.value.faults
    assert (fault.line, fault.column) == (2, 14)
    assert "secret" not in fault.message.replace(written, "")
    assert "root:" not in fault.message


def test_a_file_that_vanishes_or_changes_while_it_is_read(folder: Path) -> None:
    good = (folder / "good.yaml").read_bytes()
    lot = folder / "lot.yaml"
    for size in range(0, len(good), len(good) // 40):
        lot.write_bytes(good[:size])
        try:
            load_spec(lot)
        except Unreadable as error:
            said = str(error)
        else:
            said = "lot.yaml"
        assert "lot.yaml" in said
    lot.unlink()
    with pytest.raises(Unreadable, match="cannot be opened"):
        load_spec(lot)


def test_a_file_that_vanishes_after_it_was_found(folder: Path) -> None:
    from checker.command.reading import Reading
    from checker.judging.many import Asked, judge_files
    from checker.judging.rulebook import load_rulebook

    (folder / "gone.yaml").write_text("vocabulary: 1\n", encoding="utf-8")
    files = Reading().files([str(folder)])
    (folder / "gone.yaml").unlink()
    gone, good = judge_files(files, Asked(load_rulebook(), lambda spec, review: spec.name))
    assert "cannot be opened" in gone.faults[0].message
    assert good.made == ("Quillwater Lane, lot 14",)
