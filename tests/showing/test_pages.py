"""The generated pages: complete, text throughout, and told apart from what is stale."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from checker.data import data_dir
from checker.judging.rulebook import load_rulebook
from checker.judging.standing import register
from checker.reading.notations import read_quantity
from checker.reading.vocabulary import Leaf, vocabulary
from checker.showing import markdown, pages
from checker.showing.register_page import register_page
from checker.showing.vocabulary_page import INTRODUCTION, vocabulary_page

ROW = re.compile(r"^\| (.*) \|$", re.MULTILINE)


def cells(line: str) -> list[str]:
    return re.split(r"(?<!\\) \| ", line)


def tables(text: str) -> list[list[list[str]]]:
    """Every table of a page, as rows of cells."""
    found = re.findall(r"(?:^\|.*\|\n)+", text, re.MULTILINE)
    return [[cells(row) for row in ROW.findall(table)] for table in found]


@pytest.mark.parametrize(
    ("words", "shown"),
    [
        ("a | b", "a \\| b"),
        ("<b>&", "\\<b\\>&"),
        ("*x* and rigid_pvc and _y_", "\\*x\\* and rigid_pvc and \\_y\\_"),
        ("[a](b) `c`", "\\[a\\](b) \\`c\\`"),
        ("two\nlines \x1b[31mred", "two lines red"),
    ],
)
def test_words_come_out_as_words(words: str, shown: str) -> None:
    assert markdown.text(words) == shown


def test_code_keeps_its_words_in_a_table() -> None:
    assert markdown.code("8'-2 1/2\"") == "`8'-2 1/2\"`"
    assert markdown.code("a|b") == "`a\\|b`"
    assert markdown.code("a`b") == "a\\`b"
    assert markdown.code("") == ""


def test_every_table_has_as_many_cells_in_each_row() -> None:
    for text in (vocabulary_page(), register_page(), pages.rules_page()):
        assert tables(text)
        for table in tables(text):
            assert {len(row) for row in table} == {len(table[0])}


def test_every_key_of_the_vocabulary_stands_on_its_page() -> None:
    text = vocabulary_page()
    for path, node in vocabulary().nodes.items():
        if isinstance(node, Leaf):
            assert re.search(
                rf"^\| `(?:\w+\.)*{path.rsplit('.', 1)[-1]}` \|", text, re.MULTILINE
            ), path


def test_key_is_shown_with_how_it_is_read_what_it_means_and_an_example() -> None:
    text = vocabulary_page()
    line = next(one for one in text.splitlines() if one.startswith("| `slab_underside` |"))
    key, read, nature, meaning, example = cells(line[2:-2])
    assert (key, read, nature) == ("`slab_underside`", "level, to 0.02 ft", "choice")
    assert meaning.startswith("Level of the bottom face of the basement slab.")
    assert "`91.67`" in example


def test_notations_that_the_vocabulary_promises_are_read() -> None:
    # Said in the introduction of the page; each is read here as somebody would write it.
    for kind, text in (
        ("length", "4 in"), ("length", "2'-6\""), ("length", "100 mm"), ("slope", "1/8 in/ft"),
        ("slope", "2 %"), ("length", "2 to 4 in"), ("length", "40 mil min"),
    ):  # fmt: skip
        assert f"`{text}`" in INTRODUCTION
        read_quantity(kind, text)


def test_every_source_and_place_of_the_register_stands_on_its_page() -> None:
    text = register_page()
    places = {(row[0], row[1]) for table in tables(text) for row in table if len(row) > 1}
    for (ref, at), source in register().items():
        assert f"**`{ref}`**" in text
        assert (markdown.text(at), markdown.text(source.says)) in places, (ref, at)


def test_every_table_stands_on_the_page_with_all_its_rows() -> None:
    text = register_page()
    for path in (data_dir("shared") / "tables").glob("*.yaml"):
        assert f"`tables/{path.stem}.yaml`" in text
    # As printed in the federal trench rule, Appendix B, Table B-1.
    for row in ("| A | 0.75H:1V |", "| B | 1H:1V |", "| C | 1.5H:1V |"):
        assert row in text
    assert "| below 15 % | 0.43 mm |" in text


def test_every_rule_stands_on_the_page_and_in_its_sections_table() -> None:
    text = pages.rules_page()
    for rule in load_rulebook().rules:
        assert f"\n### {rule.id}\n" in text
        assert f"| [{rule.id}](#{rule.id.replace('.', '')}) | {rule.severity} |" in text


def test_stale_and_missing_pages_are_told_from_fresh_ones(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(
        pages, "PAGES", {"rules/README.md": lambda: "r\n", "a.json": lambda: "{}\n"}
    )
    monkeypatch.setattr(pages, "PACKAGE", tmp_path / "checker")
    (tmp_path / "pyproject.toml").touch()

    assert pages.main(["--check"]) == 1
    assert "rules/README.md is stale" in capsys.readouterr().err
    assert not (tmp_path / "rules").exists()

    assert pages.main([]) == 0
    assert pages.main(["--check"]) == 0
    assert (tmp_path / "rules" / "README.md").read_text(encoding="utf-8") == "r\n"

    (tmp_path / "a.json").write_text("{ }\n", encoding="utf-8")
    assert pages.main(["--check"]) == 1
    complaint = capsys.readouterr().err
    assert "a.json is stale" in complaint
    assert "rules/README.md" not in complaint


def test_pages_are_written_into_a_checkout_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(pages, "PACKAGE", tmp_path / "checker")
    assert pages.main([]) == 2
    assert list(tmp_path.iterdir()) == []


def test_pages_are_the_same_every_time() -> None:
    assert vocabulary_page() == vocabulary_page()
    assert register_page() == register_page()
    assert pages.editor_schema_page() == pages.editor_schema_page()
