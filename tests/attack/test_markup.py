"""Text from a spec stays text in every output: no tag, no script, no link, no escape comes of it."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from xml.etree import ElementTree

import html5lib
import pytest

from tests.attack.conftest import ROOT, belowgrade
from tests.attack.mutations import at, places, plain, written

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
# Leaves whose text is the writer's own and is shown somewhere.
FREE = (
    "job.name", "job.lot", "assembly", "id", "wall.design_by", "levels.datum",
    "job.jurisdiction", "grade.sides.0.id", "drain.corners.0.id", "outlets.0.id",
)  # fmt: skip


def spec_with(text: str) -> str:
    """The bad spec, with a text of our own wherever a text is free, and at every item of a list."""
    tree = plain((ROOT / "specs" / "bad.yaml").read_text(encoding="utf-8"))
    for path in places(tree):
        name = ".".join(map(str, path))
        free = name in FREE or path[-1] in ("id", "from", "by", "note", "basis")
        if free and isinstance(at(tree, path), str):
            at(tree, path[:-1])[path[-1]] = f"{text} {name}"
    return written(tree)


@pytest.fixture(scope="module")
def clean_tags(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Counter[str]]:
    folder = tmp_path_factory.mktemp("clean")
    (folder / "lot.yaml").write_text(spec_with("plain"), encoding="utf-8")
    return {form: tags(form, output(form, folder)) for form in ("html", "junit", "svg")}


def output(form: str, folder: Path) -> str:
    command = ["section"] if form == "svg" else ["review", "--as", form]
    ended = belowgrade(*command, "lot.yaml", folder=folder)
    assert ended.status in (0, 1), ended.err
    return ended.out


def tags(form: str, text: str) -> Counter[str]:
    """Count the elements of an output, and its attributes, none of which comes from a spec."""
    if form == "html":
        root = html5lib.parse(text, namespaceHTMLElements=False)
    else:
        root = ElementTree.fromstring(text)
    found: Counter[str] = Counter()
    for element in root.iter():
        if isinstance(element.tag, str):
            found[element.tag] += 1
            found.update(f"@{name}" for name in element.attrib)
    return found


@pytest.mark.parametrize("evil", EVIL)
def test_no_markup_comes_of_a_text(
    evil: str, tmp_path: Path, clean_tags: dict[str, Counter[str]]
) -> None:
    (tmp_path / "lot.yaml").write_text(spec_with(evil), encoding="utf-8")
    for form, clean in clean_tags.items():
        text = output(form, tmp_path)
        # A longer text may take more lines: kinds of elements are compared, not how many.
        assert set(tags(form, text)) == set(clean), form
        assert "\u202e" not in text
        assert tags(form, text)["script"] == clean["script"]
    for form in ("text", "json", "sarif"):
        assert all(line.isprintable() for line in output(form, tmp_path).split("\n"))
