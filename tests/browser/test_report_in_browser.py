"""The report in a real browser, opened as from a memory stick: read, filtered, unfolded, printed.

`.ci/run` installs what this needs: Chromium, and playwright-core and axe-core into .ci/browser.
"""

from __future__ import annotations

import json
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pypdf
import pytest

from checker import load_rulebook, load_spec
from checker import review as judge
from checker.judging.review_data import NOT_MET, Finding
from checker.showing.report.html import report_page

ROOT = Path(__file__).parents[2]
PARTS = ROOT / ".ci" / "browser" / "node_modules"
CHROMIUM = next(filter(None, map(shutil.which, ("chromium", "chromium-browser"))), None)

LACKING = [
    name
    for name, there in (
        ("node", shutil.which("node")),
        ("chromium", CHROMIUM),
        (".ci/browser with playwright-core", (PARTS / "playwright-core").is_dir()),
        (".ci/browser with axe-core", (PARTS / "axe-core").is_dir()),
    )
    if not there
]

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(bool(LACKING), reason=f"not installed here: {', '.join(LACKING)}"),
]


@pytest.fixture(scope="module")
def faults() -> list[Finding]:
    """What is not met in the spec with the most faults, whose report is opened."""
    (spec,) = load_spec(ROOT / "specs" / "bad.yaml")
    return list(judge(spec, load_rulebook()).of(NOT_MET))


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where the report and its prints stand; a blank in its name must do no harm."""
    return tmp_path_factory.mktemp("memory stick")


@pytest.fixture(scope="module")
def seen(folder: Path) -> Any:
    """What the browser saw."""
    book = load_rulebook()
    pairs = [(spec, judge(spec, book)) for spec in load_spec(ROOT / "specs" / "bad.yaml")]
    report = folder / "report.html"
    report.write_text(report_page(pairs), encoding="utf-8")
    done = subprocess.run(
        ["node", str(Path(__file__).with_name("look_at.cjs")), PARTS, str(CHROMIUM), report, folder],
        capture_output=True, text=True, timeout=300, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


@pytest.fixture(scope="module")
def printed(seen: Any, folder: Path) -> dict[str, list[tuple[float, float, str]]]:
    """The pages of each print: width, height and text, which takes its time to read."""
    assert seen["whole"]
    return {
        paper: [
            (float(page.mediabox.width), float(page.mediabox.height), page.extract_text())
            for page in pypdf.PdfReader(folder / f"{paper}.pdf").pages
        ]
        for paper in ("Letter", "A4")
    }


def named(faults: list[Finding]) -> list[str]:
    return sorted(f"{one.rule} {one.item}" for one in faults)


def test_nothing_is_asked_of_any_network_and_nothing_complains(seen: Any) -> None:
    assert seen["requests"]
    assert [url for url in seen["requests"] if not url.startswith("file:")] == []
    assert seen["console"] == []


@pytest.mark.parametrize("width", ["320", "800", "1280"])
def test_nothing_has_to_be_scrolled_sideways(seen: Any, width: str) -> None:
    assert seen["widths"][width] == int(width)
    assert seen["unfoldedWidths"][width] == int(width)


@pytest.mark.parametrize("width", ["320", "1280"])
def test_page_can_be_read_by_everybody(seen: Any, width: str) -> None:
    assert seen["accessible"][width]["passes"] > 20
    assert seen["accessible"][width]["violations"] == []


def test_sheet_for_a_trade_leaves_the_others_out(seen: Any, faults: list[Finding]) -> None:
    wanted = [one for one in faults if one.trade == "drain"]
    assert 0 < len(wanted) < len(faults)
    assert sorted(seen["whole"]) == named(faults)
    assert sorted(seen["trade"]) == named(wanted)
    assert len(seen["tradeLine"]) == 1
    assert f"{len(wanted)} of the {len(faults)} not met" in seen["tradeLine"][0]
    assert seen["tradeSafety"]
    assert seen["wholeAgain"] == seen["whole"]


def test_sheet_for_a_stage_leaves_the_others_out(seen: Any, faults: list[Finding]) -> None:
    wanted = [one for one in faults if one.stage == "coating"]
    assert 0 < len(wanted) < len(faults)
    assert sorted(seen["stage"]) == named(wanted)


def test_fault_unfolds_to_its_reasons(seen: Any) -> None:
    assert not seen["folded"]
    assert seen["unfolded"]


def test_keynote_leads_to_its_fault_and_focus_is_seen(seen: Any) -> None:
    assert seen["keynote"]
    assert seen["focus"] == "solid"


# Points, lying: 11 by 8.5 in, and 297 by 210 mm.
@pytest.mark.parametrize(("paper", "size"), [("Letter", (792, 612)), ("A4", (842, 595))])
def test_print_has_numbered_pages_with_nothing_folded(
    printed: dict[str, Any], paper: str, size: tuple[int, int]
) -> None:
    pages = printed[paper]
    assert len(pages) > 5
    for number, (width, height, text) in enumerate(pages, start=1):
        assert (width, height) == pytest.approx(size, abs=2)
        assert f"page {number} of {len(pages)}" in text
    text = " ".join(" ".join(text for *_, text in pages).split())
    # One is folded into the calculation of a fault, one into the list of what does not apply.
    assert "crown = invert + outside diameter - wall thickness" in text
    assert "faults not looked for" in text


@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_first_printed_page_holds_the_whole_frame(printed: dict[str, Any], paper: str) -> None:
    *_, first = printed[paper][0]
    assert "DANGER" in first
    assert "Keynotes" in first
    assert "reviewed by" in first
    assert "This is not a release." in first
