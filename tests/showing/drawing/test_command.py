"""`belowgrade section` writes a file, prints, and refuses what it cannot read."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from pathlib import Path

from typer.testing import CliRunner

from checker.command import app
from tests.showing.drawing.conftest import ROOT

GOOD = str(ROOT / "specs" / "good.yaml")


def test_a_drawing_is_written_whole(tmp_path: Path) -> None:
    to = tmp_path / "wall.svg"
    done = CliRunner().invoke(app, ["section", GOOD, "--to", str(to)])
    assert (done.exit_code, done.stdout) == (0, "")
    assert ET.fromstring(to.read_text(encoding="utf-8")).get("viewBox") == "0 0 792 612"
    assert list(tmp_path.iterdir()) == [to]


def test_other_pictures_are_asked_for_by_name() -> None:
    done = CliRunner().invoke(app, ["section", GOOD, "--picture", "levels"])
    assert done.exit_code == 0
    assert "crown of the pipe" in done.stdout
    assert CliRunner().invoke(app, ["section", GOOD, "--picture", "front"]).exit_code == 2


def test_a_spec_that_cannot_be_read_is_no_drawing(tmp_path: Path) -> None:
    broken = tmp_path / "broken.yaml"
    broken.write_text("vocabulary: 1\nlevels: {footing_top: [}\n")
    done = CliRunner().invoke(app, ["section", str(broken)])
    assert done.exit_code == 2
    assert done.stdout == ""
