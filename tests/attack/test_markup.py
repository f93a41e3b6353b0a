"""Text from a spec stays text in every output: no tag, no script, no link, no escape comes of it."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from xml.etree import ElementTree

import html5lib
import pytest

from tests.attack.conftest import belowgrade
from tests.attack.mutations import at, places, plain, text_of, written

EVIL = (
    "<script>alert(1)</script>",
    "\"><svg onload='alert(1)'>",
    "'><img src=x onerror=alert(1)>",
    "</style><script>alert(1)</script>",
    "]]></text><script/>",
    "javascript:alert(1)",
    "&lt;b&gt; &#60;i&#62; &amp;",
    "{{ 7 * 7 }} {% raw %}",
    "[click](http://example.invalid/)",
    "\u202egnp.exe \u200b\u2066",
)
# Keys whose texts are the writer's own and are shown somewhere.
FREE = (
    "name",
    "lot",
    "assembly",
    "id",
    "from",
    "by",
    "design_by",
    "datum",
    "jurisdiction",
    "basis",
)


def spec_with(*texts: str) -> str:
    """The bad spec with these texts, in turn, wherever a text is free."""
    tree = plain(text_of("specs/bad.yaml"))
    for number, path in enumerate(places(tree)):
        if path[-1] in FREE and isinstance(at(tree, path), str):
            # With a number after it, because an id is asked to be the only one.
            at(tree, path[:-1])[path[-1]] = f"{texts[number % len(texts)]} {number}"
    return written(tree)


def output(form: str, folder: Path) -> str:
    command = ["section"] if form == "svg" else ["review", "--as", form]
    ended = belowgrade(*command, "lot.yaml", folder=folder)
    assert ended.status in (0, 1), ended.err
    return ended.out


def tags(form: str, text: str) -> Counter[str]:
    """Count the elements of an output, and their attributes."""
    if form == "html":
        root = html5lib.parse(text, namespaceHTMLElements=False)
    else:
        root = ElementTree.fromstring(text)
    elements = [one for one in root.iter() if isinstance(one.tag, str)]
    return Counter(one.tag for one in elements) + Counter(
        f"@{name}" for one in elements for name in one.attrib
    )


@pytest.mark.parametrize("form", ["html", "junit", "svg"])
def test_no_markup_comes_of_a_text(form: str, tmp_path: Path) -> None:
    lot = tmp_path / "lot.yaml"
    lot.write_text(spec_with("plain"), encoding="utf-8")
    clean = tags(form, output(form, tmp_path))
    lot.write_text(spec_with(*EVIL), encoding="utf-8")
    text = output(form, tmp_path)
    # A longer text may take more lines: kinds of elements are compared, not how many.
    assert set(tags(form, text)) == set(clean)
    assert tags(form, text)["script"] == clean["script"]
    assert "alert(1)" in text
    assert "\u202e" not in text


@pytest.mark.parametrize("form", ["text", "json", "jsonl", "sarif"])
def test_no_control_comes_of_a_text(form: str, tmp_path: Path) -> None:
    (tmp_path / "lot.yaml").write_text(spec_with(*EVIL), encoding="utf-8")
    text = output(form, tmp_path)
    assert "alert(1)" in text
    assert all(line.isprintable() for line in text.split("\n"))
    if form == "sarif":
        assert "](http" not in text
