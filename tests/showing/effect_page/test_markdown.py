"""The page as a comment under a pull request: tables that hold, and names that call nobody."""

from __future__ import annotations

import re

from checker.showing.effect_page.contents import contents_of
from checker.showing.effect_page.markdown import MOST, as_markdown, text
from tests.judging.effects import STANDARD, Collection
from tests.showing.effect_page.conftest import HOSTILE, shown


def cells(row: str) -> list[str]:
    """Return the cells of a row of a table, as a renderer parts them."""
    return [cell.strip() for cell in re.split(r"(?<!\\)\|", row)[1:-1]]


def test_the_edit_and_each_finding_stand_in_tables(thicker: Collection) -> None:
    page = shown(thicker.effect(), "markdown", thicker)
    rows = [cells(line) for line in page.splitlines() if line.startswith("|")]
    assert {len(row) for row in rows} == {3, 5}
    (edit,) = [row for row in rows if "drain.outside_diameter" in row[1]]
    assert edit[2:] == ["4.215 in", "5.5 in", "all of them"]
    (finding,) = [row for row in rows if "`drain.above-slab`" in row[0]]
    assert finding[0].startswith("**critical** Drain too high to protect the floor")
    assert finding[1] == "met<br>91.59 ft, 0.94 in left"
    assert finding[2] == "**not met**<br>91.70 ft, off by 0.34 in, 1.3 in lost"


def test_the_page_says_what_it_is_and_releases_nothing(thicker: Collection) -> None:
    lines = shown(thicker.effect(), "markdown", thicker).splitlines()
    assert lines[0] == "## What this edit does"
    assert lines[2] == "**3 lots and 1 standard worse, 3 lots of them by something critical.**"
    assert f"### Edited: `{STANDARD}`, reaches 3 lots" in "\n".join(lines)
    assert lines[-1] == "**5 compared: 4 worse, 0 better. This is not a release.**"


def test_a_name_is_text_and_calls_nobody(hostile: Collection) -> None:
    page = shown(hostile.effect(), "markdown", hostile)
    # What is left of the page once everything that is escaped is taken out of it.
    bare = re.sub(r"<!-- -->|<br>", "\0", re.sub(r"\\.", "", page))
    assert "alert(1)" in page
    assert re.search(r"@\w|#\d|GH-\d|://|www\.\w", bare) is None
    assert re.search(r"[<>\[\]]", bare) is None
    assert all(line.isprintable() for line in page.split("\n"))
    assert {len(cells(line)) for line in page.splitlines() if line.startswith("|")} == {3, 5}


def test_what_begins_a_line_of_a_list_begins_nothing_else(collection: Collection) -> None:
    for number, name in enumerate(("# big", "1. one", "- item", "--- rule")):
        spec = f'vocabulary: 1\njob: {{name: "{name}", lot: "1"}}\ndrain: {{present: yes}}\n'
        (collection.after / f"{number}.yaml").write_text(spec, encoding="utf-8")
    page = shown(collection.effect(), "markdown", collection)
    listed = page[page.index("### New") :].splitlines()[2:6]
    assert listed == [
        r"- \# big, lot 1 (0.yaml)", r"- 1\. one, lot 1 (1.yaml)", r"- \- item, lot 1 (2.yaml)",
        r"- \--- rule, lot 1 (3.yaml)",
    ]  # fmt: skip


def test_text_reads_as_what_was_written() -> None:
    assert re.sub(r"<!-- -->|\\(?=.)", "", text("a@b #57 http://x www.y")) == (
        "a@b #57 http://x www.y"
    )
    assert text("No. 57 stone, 3/4 in") == "No. 57 stone, 3/4 in"


def test_a_page_stays_shorter_than_a_comment_may_be(thicker: Collection) -> None:
    long = HOSTILE * 8
    for number in range(19, 31):
        file = thicker.lot(number, ("superintendent: D. Osterlund", "superintendent: nobody"))
        thicker.edit("slab_underside: 91.67", f"slab_underside: 91.{number}", file=file)
    thicker.edit("superintendent: D. Osterlund", f'superintendent: "{long}"', file="lot-17.yaml")
    contents = contents_of(thicker.effect())
    edited = contents.edited[0]
    heavy = contents._replace(edited=(edited._replace(rows=edited.rows * 40),) * 30)
    for one in (contents, heavy):
        page = as_markdown(one)
        assert len(page) <= MOST
        assert page.rstrip().endswith("This is not a release.**")
    monster = contents.sections[0].alike[0]._replace(name="x" * MOST)
    section = contents.sections[0]._replace(alike=(monster,))
    page = as_markdown(contents._replace(sections=(section,)))
    assert "too long for a comment" in page
    assert page.rstrip().endswith("This is not a release.**")
