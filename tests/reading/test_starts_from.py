"""`starts_from`: what is taken over, from where, and which files are never opened."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from checker.reading.compose import read_text
from checker.reading.faults import Fault, Unreadable
from checker.reading.reader import find_specs, load_spec, read_specs
from checker.reading.spec import Spec

STANDARD = """vocabulary: 1
paper: standard
id: HF-FDN-02 rev C
drain:
  present: yes
  diameter: 4 in
  slope: 1/16 in/ft
fabrics:
  - {id: wrap, kind: nonwoven, aos: 0.21 mm}
"""


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """A job folder with a standard beside the folder of its lots."""
    write(tmp_path / "job" / "standards" / "HF.yaml", STANDARD)
    (tmp_path / "job" / "belowgrade.yaml").touch()
    return tmp_path / "job"


def write(path: Path, text: str) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


def lot(job: Path, body: str = "", start: str = "../standards/HF.yaml") -> Path:
    return write(
        job / "lots" / "15.yaml",
        f"vocabulary: 1\npaper: house\nstarts_from: {start}\njob: {{name: Quillwater Lane, lot: '15'}}\n{body}",
    )


def read(path: Path) -> Spec:
    (spec,) = load_spec(path)
    return spec


def refused(path: Path) -> Fault:
    """Return the one fault of a spec, which must stand at its starts_from line."""
    with pytest.raises(Unreadable) as raised:
        load_spec(path)
    (fault,) = raised.value.faults
    assert (fault.file, fault.line, fault.column, fault.path) == (str(path), 3, 14, "starts_from")
    return fault


# -- what is taken over ----------------------------------------------------------------------------


def test_a_value_keeps_its_place_in_the_other_file(job: Path) -> None:
    path = lot(job, "drain: {slope: 1 %}\n")
    spec = read(path)
    shown = spec.values["drain.diameter"]
    assert Path(shown.file) == job / "standards" / "HF.yaml"
    assert (shown.line, shown.column) == (6, 13)
    assert spec.values["drain.slope"].value == 0.01
    assert spec.values["drain.slope"].file == str(path)
    assert spec.lists["fabrics"] == ("wrap",)
    assert (spec.paper, spec.name) == ("house", "Quillwater Lane, lot 15")
    assert "id" not in spec.values


def test_the_other_file_is_called_as_it_is_reached_from_here(
    job: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    lot(job)
    monkeypatch.chdir(job)
    shown = read(Path("lots/15.yaml")).values["drain.diameter"]
    assert shown.file == os.path.join("standards", "HF.yaml")


def test_based_on_takes_over_nothing(job: Path) -> None:
    path = write(job / "standards" / "SUB.yaml", "vocabulary: 1\nbased_on: HF.yaml\n")
    assert set(read(path).values) == {"vocabulary", "based_on"}


def test_files_start_from_one_another_nearest_first(job: Path) -> None:
    write(
        job / "lots" / "model.yaml",
        "vocabulary: 1\nstarts_from: ../standards/HF.yaml\ndrain: {diameter: 6 in}\n",
    )
    spec = read(lot(job, start="model.yaml"))
    assert spec.values["drain.diameter"].written == "6 in"
    assert spec.values["drain.slope"].written == "1/16 in/ft"


def test_the_files_own_first_document_is_nearer_than_the_other_file(job: Path) -> None:
    text = (
        "vocabulary: 1\npaper: site\nstarts_from: ../standards/HF.yaml\ndrain: {diameter: 6 in}\n"
        "---\nvocabulary: 1\nassembly: front\n"
    )
    spec = read(write(job / "lots" / "16.yaml", text))
    assert spec.values["drain.diameter"].written == "6 in"
    assert spec.values["drain.slope"].written == "1/16 in/ft"


def test_a_documents_own_start_is_nearer_than_that_of_the_first(job: Path) -> None:
    write(job / "standards" / "other.yaml", "vocabulary: 1\ndrain: {slope: 2 %}\n")
    text = (
        "vocabulary: 1\npaper: site\nstarts_from: ../standards/HF.yaml\n"
        "---\nvocabulary: 1\nstarts_from: ../standards/other.yaml\n"
    )
    spec = read(write(job / "lots" / "16.yaml", text))
    assert spec.values["drain.slope"].written == "2 %"
    assert spec.values["drain.diameter"].written == "4 in"


@pytest.mark.parametrize("word", ["not shown", "n/a", ""])
def test_a_word_instead_of_a_path_starts_from_nothing(job: Path, word: str) -> None:
    assert "drain.diameter" not in read(lot(job, start=word)).values


def test_a_path_may_say_where_it_came_from(job: Path) -> None:
    spec = read(lot(job, start="{value: ../standards/HF.yaml, from: contract}"))
    assert "drain.diameter" in spec.values


def test_a_choice_of_the_standard_stays_a_choice(job: Path) -> None:
    from checker.values import Choice

    write(
        job / "standards" / "HF.yaml", STANDARD + "coat: {class: [dampproofing, waterproofing]}\n"
    )
    assert read(lot(job)).values["coat.class"].value == Choice(("dampproofing", "waterproofing"))


# -- what happened at another house ----------------------------------------------------------------

LOT_14 = """vocabulary: 1
paper: as built
job: {name: Quillwater Lane, lot: "14", stage: drain, done: [forms], builder: Harrow and Fenn Homes}
footing: {thickness: {value: 12 in, how: measured, by: R. Halloway, date: 2031-05-06}}
holds: [{id: H1, stage: drain, signed: yes, date: 2031-06-11}]
record: {levels_measured: yes}
measured: {by: R. Halloway, date: 2031-05-06, stone: {bedding: 2 in}}
"""


def test_what_was_seen_at_another_house_is_taken_as_a_plan(job: Path) -> None:
    write(job / "lots" / "14.yaml", LOT_14)
    spec = read(lot(job, start="14.yaml"))
    assert spec.values["footing.thickness"].written == "12 in"
    assert not spec.values["footing.thickness"].seen
    assert spec.values["holds.H1.stage"].value == "drain"
    gone = {"holds.H1.signed", "holds.H1.date", "record.levels_measured", "job.stage", "job.done"}
    assert not gone & spec.values.keys()
    assert not [path for path in spec.values if path.startswith("measured.")]
    assert spec.values["job.builder"].written == "Harrow and Fenn Homes"


def test_what_was_seen_at_this_house_stays_seen(job: Path) -> None:
    write(job / "lots" / "14.yaml", LOT_14)
    path = write(
        job / "lots" / "rear.yaml", "vocabulary: 1\nstarts_from: 14.yaml\nassembly: rear\n"
    )
    spec = read(path)
    assert spec.values["footing.thickness"].seen
    assert spec.values["holds.H1.signed"].value is True
    assert spec.values["job.stage"].value == "drain"
    assert spec.values["measured.stone.bedding"].written == "2 in"


# -- faults ----------------------------------------------------------------------------------------


def test_a_missing_file(job: Path) -> None:
    assert (
        "no file '../standards/HG.yaml'" in refused(lot(job, start="../standards/HG.yaml")).message
    )


def test_a_file_that_cannot_be_read_says_why_at_the_line(job: Path) -> None:
    write(job / "standards" / "HF.yaml", STANDARD.replace("4 in", "4"))
    fault = refused(lot(job))
    assert "HF.yaml:6:13: pipe size: 4 has no unit" in fault.message


def test_of_many_faults_the_first_are_told(job: Path) -> None:
    write(
        job / "standards" / "HF.yaml", "vocabulary: 1\n" + "".join(f"k{n}: 1\n" for n in range(9))
    )
    with pytest.raises(Unreadable) as raised:
        load_spec(lot(job))
    assert len(raised.value.faults) == 6
    assert "has 4 more faults" in str(raised.value)


def test_a_file_that_cannot_be_read_is_tried_once(job: Path) -> None:
    write(job / "standards" / "HF.yaml", STANDARD.replace("4 in", "4"))
    text = "vocabulary: 1\nstarts_from: ../standards/HF.yaml\n"
    path = write(job / "lots" / "15.yaml", f"{text}id: A\n---\n{text}id: B\n")
    with pytest.raises(Unreadable) as raised:
        load_spec(path)
    first, second = raised.value.faults
    assert "has no unit" in first.message
    assert (second.line, "first started from" in second.message) == (6, True)


def test_a_file_is_read_once_for_all_that_start_from_it(
    job: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from checker.reading import reader

    read: list[str] = []

    def reading(path: Path | None, name: str = "") -> str:
        read.append(name)
        return read_text(path, name)

    monkeypatch.setattr(reader, "read_text", reading)
    text = "vocabulary: 1\nstarts_from: ../standards/HF.yaml\n"
    path = write(job / "lots" / "15.yaml", f"{text}id: A\n---\n{text}id: B\n")
    assert [spec.values["drain.slope"].written for spec in load_spec(path)] == ["1/16 in/ft"] * 2
    assert len(read) == 2


def test_a_folder_is_no_file(job: Path) -> None:
    assert "not a regular file" in refused(lot(job, start="../standards")).message


def test_a_file_that_starts_from_itself(job: Path) -> None:
    assert "starts from this file" in refused(lot(job, start="15.yaml")).message


def test_files_that_start_from_one_another_in_a_ring(job: Path) -> None:
    write(job / "lots" / "b.yaml", "vocabulary: 1\nstarts_from: 15.yaml\n")
    fault = refused(lot(job, start="b.yaml"))
    assert "b.yaml:2:14: '15.yaml' starts from this file" in fault.message


def test_a_chain_without_end_is_cut(job: Path) -> None:
    for number in range(12):
        write(job / "lots" / f"c{number}.yaml", f"vocabulary: 1\nstarts_from: c{number + 1}.yaml\n")
    write(job / "lots" / "c12.yaml", "vocabulary: 1\n")
    assert "more than 10 files" in refused(lot(job, start="c0.yaml")).message


def test_a_chain_of_ten_is_read(job: Path) -> None:
    for number in range(9):
        write(job / "lots" / f"c{number}.yaml", f"vocabulary: 1\nstarts_from: c{number + 1}.yaml\n")
    write(job / "lots" / "c9.yaml", "vocabulary: 1\ndrain: {diameter: 6 in}\n")
    assert read(lot(job, start="c0.yaml")).values["drain.diameter"].written == "6 in"


def test_a_file_of_several_assemblies_names_them(job: Path) -> None:
    write(job / "standards" / "HF.yaml", "vocabulary: 1\nid: front\n---\nvocabulary: 1\nid: rear\n")
    fault = refused(lot(job))
    assert "holds 2 assemblies" in fault.message
    assert "front; rear" in fault.message


def test_a_file_of_one_assembly_under_a_site_document_will_do(job: Path) -> None:
    write(
        job / "standards" / "HF.yaml",
        f"vocabulary: 1\npaper: site\nroof: {{gutters: yes}}\n---\n{STANDARD}",
    )
    assert {"roof.gutters", "drain.diameter"} <= read(lot(job)).values.keys()


def test_standard_input_starts_from_nothing() -> None:
    with pytest.raises(Unreadable) as raised:
        read_specs("vocabulary: 1\nstarts_from: HF.yaml\n", "standard input")
    assert "stands in a file" in str(raised.value)


# -- the fence -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "start",
    [
        "/etc/passwd",
        r"C:\house\HF.yaml",
        "C:/house/HF.yaml",
        "//host/HF.yaml",
        r"..\HF.yaml",
        '"a\\0b"',
    ],
)
def test_only_a_relative_path_is_followed(job: Path, start: str) -> None:
    fault = refused(lot(job, start=start))
    assert "not relative" in fault.message or "'/' between its folders" in fault.message


@pytest.mark.parametrize(
    "start",
    ["../../etc/passwd", "../../../../../../../../etc/passwd", "../standards/../../HF.yaml", ".."],
)
def test_no_path_leads_out_of_the_marked_folder(job: Path, start: str) -> None:
    path = lot(job, start=start)
    if start == "..":
        (job / "belowgrade.yaml").rename(job / "lots" / "belowgrade.yaml")
    assert "leads out of the folder that holds belowgrade.yaml" in refused(path).message


def test_without_a_mark_the_fence_is_the_specs_own_folder(job: Path) -> None:
    (job / "belowgrade.yaml").unlink()
    fault = refused(lot(job))
    assert "put a belowgrade.yaml into the folder that holds both" in fault.message
    write(job / "lots" / "standards" / "HF.yaml", STANDARD)
    assert "drain.diameter" in read(lot(job, start="standards/HF.yaml")).values


def test_the_nearest_mark_is_the_fence(job: Path) -> None:
    (job / "lots").mkdir()
    (job / "lots" / "belowgrade.yaml").touch()
    assert "leads out" in refused(lot(job)).message


def test_a_link_that_leads_out_is_not_followed(
    job: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    outside = write(tmp_path_factory.mktemp("elsewhere") / "HF.yaml", STANDARD)
    (job / "standards" / "link.yaml").symlink_to(outside)
    assert "leads out" in refused(lot(job, start="../standards/link.yaml")).message
    (job / "house").symlink_to(outside.parent)
    assert "leads out" in refused(lot(job, start="../house/HF.yaml")).message


def test_what_is_there_and_what_is_not_look_alike_from_outside(job: Path) -> None:
    write(job.parent / "here.yaml", STANDARD)
    here, gone = (
        refused(lot(job, start=f"../../{name}.yaml")).message for name in ("here", "gone")
    )
    assert here == gone.replace("gone", "here")


def test_a_link_inside_the_fence_is_followed(job: Path) -> None:
    (job / "standards" / "current.yaml").symlink_to("HF.yaml")
    assert "drain.diameter" in read(lot(job, start="../standards/current.yaml")).values


def test_links_in_a_ring_are_a_fault(job: Path) -> None:
    (job / "lots").mkdir()
    (job / "lots" / "a.yaml").symlink_to("b.yaml")
    (job / "lots" / "b.yaml").symlink_to("a.yaml")
    assert refused(lot(job, start="a.yaml"))


def test_a_name_longer_than_any_file_is_a_fault(job: Path) -> None:
    assert refused(lot(job, start="x" * 5_000))


def test_a_pipe_is_not_opened(job: Path) -> None:
    os.mkfifo(job / "standards" / "pipe.yaml")
    assert "not a regular file" in refused(lot(job, start="../standards/pipe.yaml")).message


def test_a_spec_reached_through_a_link_is_fenced_by_where_it_is(
    job: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    real = lot(job)
    link = tmp_path_factory.mktemp("elsewhere") / "15.yaml"
    link.symlink_to(real)
    assert "drain.diameter" in read(link).values


def test_the_mark_is_no_spec(job: Path) -> None:
    lot(job)
    assert "belowgrade.yaml" not in [path.name for path, _ in find_specs([str(job)]) if path]
