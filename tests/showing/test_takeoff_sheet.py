"""What to order, as a builder reads it, and what comes of a spec that cannot be reckoned."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner

from checker.command import app
from checker.deriving.quantity import REGISTRY
from checker.reading.reader import read_specs
from checker.reading.vocabulary import Leaf, vocabulary
from checker.showing.console import as_text
from checker.showing.takeoff_sheet import PARTS, takeoff_sheet

ROOT = Path(__file__).parents[2]
GOOD = ROOT / "specs" / "good.yaml"


def sheet(text: str) -> str:
    return "\n".join(as_text(takeoff_sheet(spec)) for spec in read_specs(text, "lot14.yaml"))


def flat(text: str) -> str:
    return " ".join(text.split())


def run(*arguments: str, given: str = "") -> tuple[int, str]:
    done = CliRunner().invoke(app, ["takeoff", *arguments], input=given)
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    return done.exit_code, done.output


def test_every_entry_is_a_quantity_and_what_was_ordered_is_a_key() -> None:
    for _, entries in PARTS:
        for entry in entries:
            assert entry.quantity in REGISTRY
            assert not entry.ordered or isinstance(vocabulary().nodes[entry.ordered], Leaf)


def test_amounts_of_the_good_house() -> None:
    # By hand in the header of the spec and in tests/published/test_takeoff.py.
    status, output = run(str(GOOD))
    text = flat(output)
    assert status == 0
    assert "152.07 ft perforated pipe that the drain takes" in text
    assert "14.1 cu yd stone that the drain takes (stone.volume)" in text
    assert "shown stone ordered 15 cu yd" in text
    assert "19.1 short ton" in text
    assert "8.13 ft width of the fabric with its lap, wrap" in text
    assert "60.5 gal coat to order" in text
    assert "100 pcf for loose crushed stone" in text
    assert "5 % is lost to rough wall" in text


def test_what_is_missing_is_named_and_nothing_is_guessed() -> None:
    text = flat(sheet("vocabulary: 1\n"))
    assert "Without an amount: 1" in text
    assert "stone that the drain takes" in text
    assert "stone.beyond_footing" in text
    assert "gal" not in text


def test_what_the_spec_says_is_not_there_is_not_asked_for() -> None:
    text = sheet(
        "vocabulary: 1\nwall: {perimeter: 144 ft}\n"
        "backfill: {free_draining_width: 18 in, cap_material: paving, cap_thickness: 2 in}\n"
    )
    assert "cap_volume" not in text


def test_a_range_is_an_amount_by_its_ends() -> None:
    # 1200 to 1500 sq ft x 4 in = 14.8 to 18.5 cu yd
    text = flat(sheet("vocabulary: 1\nslab: {area: 1200 to 1500 sq ft, base_thickness: 4 in}\n"))
    assert "14.8 cu yd to 18.5 cu yd" in text


def test_metric_specs_are_told_in_metric_units() -> None:
    # 100 m2 x 100 mm = 10 m3; 100 lb/ft3 = 1602 kg/m3: 16 tonnes
    text = flat(sheet("vocabulary: 1\nslab: {area: 100 m2, base_thickness: 100 mm}\n"))
    assert "10 m3 base under the slab" in text
    assert "16.02 tonne base under the slab, by weight" in text


def test_several_assemblies_and_a_folder() -> None:
    status, output = run(str(ROOT / "specs" / "walkout.yaml"))
    assert status == 0
    assert output.count("Takeoff for ") == 2


def test_no_line_is_wider_than_80_nor_obeyed_by_a_terminal() -> None:
    evil = 'vocabulary: 1\njob: {name: "\\e[2JQuill"}\nslab: {area: 1200 sq ft, base_thickness: 4 in}\n'
    text = sheet(evil)
    assert "Quill" in text
    assert all(one.isprintable() for one in text.split("\n"))
    assert max(len(one) for one in text.splitlines()) <= 80


@pytest.mark.parametrize(
    "text",
    [
        "vocabulary: 1\nlevels: {unit: ft}\nstone: {beyond_footing: 0 in, top_level: 90}\n",
        "vocabulary: 1\nlevels: {unit: ft, footing_top: 95}\nwall: {perimeter: 144 ft}\n"
        "footing: {width: 8 in}\ncoat: {top_level: 90, bottom_level: 92, area: by others}\n",
        "vocabulary: 1\nwall: {perimeter: unknown, thickness: 10 in}\nfabrics: none\noutlets: none\n",
        "vocabulary: 1\ncoat: {loss: unknown, area: 10 sq ft, dry_thickness: 40 mil, solids: TBD}\n",
        "vocabulary: 1\nlevels: {unit: ft}\ndrain: {invert_low: 95, wall_thickness: 0.1 in}\n"
        "stone: {top_level: 90, bedding: 2 in, beyond_footing: 1 ft}\nfooting: {projection: 0 in}\n",
        "vocabulary: 1\nsheet: {roll_width: 1 in, side_lap: 6 in, top_level: 1, bottom_level: 0}\n"
        "levels: {unit: m}\nwall: {perimeter: 40 m}\n",
    ],
)
def test_impossible_figures_give_reasons_and_no_traceback(text: str) -> None:
    status, output = run("-", given=text)
    assert status == 0
    assert "Without an amount" in output
    assert "Traceback" not in output


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("vocabulary: 1\nstone: {quantity: 15}\n", "15 has no unit"),
        ("vocabulary: 1\nstone: {unit_weight: 100 lb}\n", "measures mass"),
        ("vocabulary: 1\nfabrics: [{id: wrap, roll_widht: 8 ft}]\n", "roll_width"),
        ("vocabulary: 1\nsheet: {quantity: -10 sq ft}\n", "which cannot be"),
        ("stone: 1\n", "vocabulary"),
    ],
)
def test_what_cannot_be_read_is_said_with_its_place(text: str, says: str) -> None:
    status, output = run("-", given=text)
    assert status == 2
    assert says in output
    assert "Traceback" not in output


def test_a_file_that_is_not_there() -> None:
    status, output = run("no-such.yaml")
    assert status == 2
    assert "no-such.yaml" in output


def test_a_sheet_is_written_to_a_file(tmp_path: Path) -> None:
    target = tmp_path / "takeoff.txt"
    status, output = run(str(GOOD), "--to", str(target))
    assert (status, output) == (0, "")
    assert "Takeoff for Quillwater Lane, lot 14" in target.read_text(encoding="utf-8")


@pytest.mark.skipif(
    sys.platform == "win32" or os.geteuid() == 0, reason="root writes where nobody else may"
)
def test_a_folder_that_cannot_be_written_is_said(tmp_path: Path) -> None:
    tmp_path.chmod(0o500)
    status, output = run(str(GOOD), "--to", str(tmp_path / "takeoff.txt"))
    assert status == 2
    assert "cannot be written" in output


def test_a_place_that_is_no_file_is_said(tmp_path: Path) -> None:
    status, output = run(str(GOOD), "--to", str(tmp_path / "none" / "takeoff.txt"))
    assert status == 2
    assert "cannot be written" in output
