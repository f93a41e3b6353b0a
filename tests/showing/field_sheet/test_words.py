"""The words of the sheet: every fixed text has its Spanish, and nobody is told that it was read."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest
import yaml

from checker import load_rulebook, load_spec, review
from checker.data import data_dir
from checker.judging.passing import rests_on
from checker.judging.review_data import STAGES
from checker.reading.vocabulary import vocabulary
from checker.showing.console import as_text as lines_as_text
from checker.showing.field_sheet import in_form, languages, sheet_of, words_in
from checker.showing.field_sheet.dates import earliest
from checker.showing.field_sheet.photos import VISIBLE
from checker.showing.field_sheet.scope import on_site
from tests.support import spec_of

ROOT = Path(__file__).parents[3]
SOURCE = ROOT / "checker" / "showing" / "field_sheet"


def fixed_texts() -> set[str]:
    """Every text that the code or the template asks the words for, by their own account."""
    found = set(VISIBLE.values())
    for file in SOURCE.glob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "words":
                found |= {str(one.value) for one in node.args if isinstance(one, ast.Constant)}
    for file in (SOURCE / "templates").glob("*.j2"):
        found |= set(re.findall(r'\bw\("([^"]+)"', file.read_text(encoding="utf-8")))
    return found


def shared(name: str) -> list[dict[str, object]]:
    loaded = yaml.safe_load((data_dir("shared") / name).read_text(encoding="utf-8"))
    return loaded if isinstance(loaded, list) else loaded["stages"]


def test_the_search_for_fixed_texts_finds_them() -> None:
    found = fixed_texts()
    assert {"Measure", "never more than {distance}", "Photo cards"} <= found
    assert len(found) > 50


def test_every_fixed_text_has_its_spanish() -> None:
    spanish = words_in("es")
    assert sorted(text for text in fixed_texts() if not spanish.knows(text)) == []


def test_safety_stages_and_what_they_bury_have_their_spanish() -> None:
    spanish = words_in("es")
    texts = [" ".join(str(one["text"]).split()) for one in shared("cautions.yaml")]
    texts += [stage.replace("_", " ") for stage in STAGES]
    for one in shared("stages.yaml"):
        buries = one["buries"]
        assert isinstance(buries, list)
        texts += buries
    assert [text for text in texts if not spanish.knows(text)] == []


def test_every_value_that_a_row_can_be_about_has_its_spanish() -> None:
    spanish, keys = words_in("es"), set[str]()
    for rule in load_rulebook().rules:
        keys |= rests_on(rule)
    leaves = [leaf for key in sorted(keys) if (leaf := vocabulary().leaf(key)) is not None]
    told = {leaf.path: leaf.title for leaf in leaves if any(on_site(leaf, at) for at in STAGES)}
    assert len(told) > 100
    unknown = {path: title for path, title in told.items() if not spanish.knows(title)}
    # What lives hang on is never told in a mixture; of the rest hardly anything.
    assert [path for path in unknown if path.startswith(("excavation.", "backfill."))] == []
    assert len(unknown) <= len(told) // 20, unknown


def test_every_step_and_what_moves_it_has_its_spanish() -> None:
    spanish = words_in("es")
    dated = {
        "wall": {"poured": "2031-05-14", "strength": "3000 psi", "strength_design": "3500 psi"},
        "coat": {"maker_wall_age": "7 days", "maker_cure": "36 h", "applied": "2031-05-22"},
    }
    for mapping in (dated, {"wall": {"poured": "2031-05-14"}}):
        steps = earliest(spec_of(mapping), "footing_poured")
        assert len(steps) == 4
        texts = {text for one in steps for text in (one.step, one.because, one.moved_by) if text}
        assert [text for text in texts if not spanish.knows(text)] == []


def test_braces_are_the_same_in_both_languages() -> None:
    entries = yaml.safe_load((data_dir("shared") / "words.yaml").read_text(encoding="utf-8"))
    for entry in entries["words"]:
        braces = [sorted(re.findall(r"\{\w+\}", entry[key])) for key in ("en", "es")]
        assert braces[0] == braces[1], entry["en"]


def test_no_text_has_two_entries() -> None:
    entries = yaml.safe_load((data_dir("shared") / "words.yaml").read_text(encoding="utf-8"))
    texts = [entry["en"] for entry in entries["words"]]
    assert len(texts) == len(set(texts))


def test_spanish_that_nobody_read_says_so_on_every_page() -> None:
    (spec,) = load_spec(str(ROOT / "specs" / "good.yaml"))
    book = load_rulebook()
    sheet = sheet_of(spec, review(spec, book, "drain"), book)
    spanish = words_in("es")
    lines = in_form([sheet], spanish, "text", 80)
    assert isinstance(lines, list)
    text = " ".join(lines_as_text(lines).split())
    assert "not yet read by a speaker" in text
    assert "aún no leído por un hablante" in text
    assert "PELIGRO" in text
    assert "not yet read" in str(in_form([sheet], spanish, "html", 80))
    assert "not yet read" not in str(in_form([sheet], words_in("en"), "html", 80))


def test_a_language_without_words_is_none() -> None:
    assert languages() == ("en", "es")
    with pytest.raises(KeyError):
        words_in("fr")
