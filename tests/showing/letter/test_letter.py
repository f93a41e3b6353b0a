"""The comment letter: the same findings as the review, a suggestion for each, nothing filled in."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from checker import load_rulebook, load_spec, review
from checker.judging.review_data import NOT_MET, NOT_SHOWN, SEVERITIES
from checker.judging.rulebook import TRADES
from checker.reading.spec import Spec
from checker.showing.json_report import as_json as review_as_json
from checker.showing.letter import Dispositions, Letter, in_form, letter_of, load_dispositions
from tests.support import spec_of

SPECS = Path(__file__).parents[3] / "specs"
EXAMPLES = sorted(SPECS.glob("*.yaml"))
FORMS = ("markdown", "html")

TOO_HIGH: dict[str, Any] = {
    "job": {"name": "Quillwater Lane", "lot": "14", "builder": "Harrow and Fenn Homes",
            "codes": [{"id": "IRC", "edition": "2018"}]},
    "documents": [
        {"id": "SUB-03", "type": "submittal", "trade": "drain", "firm": "Tallgrass Drain Co.",
         "rev": "1", "date": "2031-04-11", "covers": ["pipe"]},
        {"id": "SUB-04", "type": "submittal", "trade": "coating", "rev": "0"},
    ],
    "levels": {"unit": "ft", "slab_underside": "91.67", "footing_top": "91.67",
               "footing_underside": "90.67"},
    "drain": {
        "present": "yes", "position": "beside", "outside_diameter": "4.2 in",
        "wall_thickness": "0.1 in",
        "corners": [{"id": "NE", "invert": {"value": "91.60", "from": "SUB-03 p2"}}],
    },
}  # fmt: skip


def letter(mapping: dict[str, Any], **options: Any) -> Letter:
    spec = spec_of(mapping, paper="submittal")
    return letter_of(spec, review(spec, load_rulebook()), **options)


# -- the same as the review ------------------------------------------------------------------------


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_a_letter_holds_what_the_json_holds(path: Path) -> None:
    for spec in load_spec(str(path)):
        judged = review(spec, load_rulebook())
        (told,) = json.loads(review_as_json([judged]))["reviews"]
        written = letter_of(spec, judged)
        not_met = [f"{one['rule']} {one['item']}".rstrip() for one in told["findings"]
                   if one["outcome"] == NOT_MET]  # fmt: skip
        not_shown = {one["rule"] for one in told["findings"] if one["outcome"] == NOT_SHOWN}
        assert sorted(one.key.removeprefix("rule ") for one in written.faults) == sorted(not_met)
        assert {rule for one in written.questions for rule in one.rules} == not_shown
        assert written.met == told["counts"]["met"]
        assert sum(part.findings for part in written.good) == told["counts"]["met"]


@pytest.mark.parametrize("form", [*FORMS, "json"])
def test_every_form_has_every_number_title_and_figure(form: str) -> None:
    spec = next(iter(load_spec(str(SPECS / "bad.yaml"))))
    written = letter_of(spec, review(spec, load_rulebook()))
    text = plain_text(str(in_form([written], form)), form)
    for item in written.faults:
        assert squeezed(item.title) in text
        for figure in item.figures:
            assert squeezed(figure.needed) in text
    for item in written.questions:
        assert squeezed(item.action) in text


def test_letters_to_each_trade_hold_everything_together_under_the_same_numbers() -> None:
    spec = next(iter(load_spec(str(SPECS / "bad.yaml"))))
    judged = review(spec, load_rulebook())
    whole = letter_of(spec, judged)
    parts = [letter_of(spec, judged, trade) for trade in TRADES]
    numbers = {item.number: item.key for item in whole.items}
    assert len(numbers) == len(whole.items)
    assert {item.number: item.key for part in parts for item in part.items} == numbers
    # A fault is one trade's.
    assert sum(len(part.faults) for part in parts) == len(whole.faults)
    assert sum(part.met for part in parts) == whole.met


# -- what an item says -----------------------------------------------------------------------------


def test_an_item_says_where_what_how_far_and_on_whose_word() -> None:
    (item,) = [one for one in letter(TOO_HIGH).faults if one.rules == ("drain.above-slab",)]
    # Crown 91.60 + (4.2 - 0.1)/12 = 91.942 ft; the slab's underside lies 0.272 ft = 3.26 in lower.
    (figures,) = item.figures
    assert (figures.shown, figures.off_by) == ("91.94 ft", "3.3 in")
    assert item.places[0].startswith("SUB-03 p2: invert at the corner (NE) 91.60")
    assert item.places[1].startswith("example.yaml: line ")
    assert item.sources == ("common practice: no code is cited for it",)
    assert item.suggestion == "send back"


def test_where_there_is_no_room_the_action_is_stop() -> None:
    tight = TOO_HIGH | {"levels": TOO_HIGH["levels"] | {"footing_underside": "91.50"}}
    written = letter(tight | {"stone": {"bedding": "2 in"}})
    stopped = [one for one in written.faults if one.stop]
    assert stopped
    for form in FORMS:
        assert "STOP" in str(in_form([written], form))


def test_a_question_is_neutral_and_quotes_what_was_kept_as_written() -> None:
    spec = TOO_HIGH | {"stone": {"bedding": {"as_written": "2", "from": "SUB-03 p2"}}}
    (item,) = [one for one in letter(spec).questions if one.paths == ("stone.bedding",)]
    assert item.places == ('SUB-03 p2 says "2"',)
    assert "without it this cannot be ruled out: " in item.why.lower()
    assert item.stage


def test_papers_of_the_trade_alone_are_listed() -> None:
    assert [one.id for one in letter(TOO_HIGH, trade="drain").papers] == ["SUB-03"]
    assert [one.id for one in letter(TOO_HIGH).papers] == ["SUB-03", "SUB-04"]
    assert letter(TOO_HIGH, trade="drain").papers[0].text == (
        "submittal, covers pipe, Tallgrass Drain Co., revision 1, 2031-04-11"
    )


# -- suggestions -----------------------------------------------------------------------------------


def all_of(word: str) -> Dispositions:
    pairs = {
        (outcome, severity): word for outcome in (NOT_MET, NOT_SHOWN) for severity in SEVERITIES
    }
    return Dispositions(pairs, ("no exceptions taken", "returned"))


def test_the_worst_item_governs() -> None:
    usual = letter(TOO_HIGH)
    assert {one.suggestion for one in usual.items} == {"send back", "ask first"}
    assert usual.suggestion == "send back"
    mild = all_of("no comment from these rules")
    one_worse = Dispositions(mild.suggestions | {(NOT_MET, "critical"): "ask first"}, mild.stamp)
    assert letter(TOO_HIGH, dispositions=mild).suggestion == "no comment from these rules"
    assert letter(TOO_HIGH, dispositions=one_worse).suggestion == "ask first"


def test_nothing_judged_is_never_no_comment() -> None:
    written = letter({"job": {"name": "x"}}, dispositions=all_of("no comment from these rules"))
    assert not written.judged
    assert written.suggestion == "ask first"


def test_the_shared_setting_is_whole() -> None:
    setting = load_dispositions()
    assert setting.of(NOT_MET, "critical") == "send back"
    assert len(setting.suggestions) == 6
    assert "approved" in setting.stamp


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            "suggestions: {not met: {critical: approved}}\nstamp: [a]",
            "not met, critical: 'approved'",
        ),
        ("stamp: [a]", "'suggestions' and 'stamp' are wanted"),
        ("- a\n- b", "'suggestions' and 'stamp' are wanted"),
        ("suggestions: [", "mine.yaml: "),
    ],
)
def test_a_setting_that_says_something_else_is_refused(
    tmp_path: Path, text: str, said: str
) -> None:
    file = tmp_path / "mine.yaml"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(ValueError, match=re.escape(said)):
        load_dispositions(file)


# -- what is left to a person ----------------------------------------------------------------------


@pytest.mark.parametrize("form", FORMS)
def test_boxes_and_signatures_stay_empty(form: str) -> None:
    written = letter(TOO_HIGH | {"job": TOO_HIGH["job"] | {"superintendent": "D. Osterlund"}})
    page = str(in_form([written], form))
    assert "Osterlund" not in page
    assert not re.search(r"\[[xX]\]|\N{BALLOT BOX WITH CHECK}|\N{BALLOT BOX WITH X}|<input", page)
    boxes = page.count("\N{BALLOT BOX}") if form == "markdown" else page.count('class="box"')
    # One row of boxes for the whole and one for each item that is not met.
    assert boxes == (1 + len(written.faults)) * len(written.stamp)


@pytest.mark.parametrize("form", FORMS)
def test_the_foot_says_what_the_letter_is_not(form: str) -> None:
    written = letter(TOO_HIGH)
    text = plain_text(str(in_form([written], form)), form)
    assert squeezed(
        f"Prepared with rules of belowgrade, digest {written.digest[:12]}. Not a code review. "
        "The local authority, the competent person and the licensed engineer decide."
    ) in text  # fmt: skip


# -- text stays text -------------------------------------------------------------------------------

HOSTILE = "<script>alert(1)</script> | `x` [y](z) \x1b[31m *b*"


def hostile_spec() -> Spec:
    mapping = TOO_HIGH | {
        "job": {"name": HOSTILE, "lot": HOSTILE, "builder": HOSTILE, "jurisdiction": HOSTILE},
        "stone": {"bedding": {"as_written": HOSTILE, "from": HOSTILE}},
    }
    return spec_of(mapping, paper="submittal")


def test_markup_from_a_spec_is_text_in_html() -> None:
    import html5lib

    spec = hostile_spec()
    page = str(in_form([letter_of(spec, review(spec, load_rulebook()))], "html"))
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    root = parser.parse(page)
    assert root.findall(".//script") == []
    assert "\x1b" not in page
    assert "<script>alert(1)</script> | `x` [y](z)  *b*" in "".join(root.itertext())


def test_markup_from_a_spec_is_text_in_markdown() -> None:
    spec = hostile_spec()
    page = str(in_form([letter_of(spec, review(spec, load_rulebook()))], "markdown"))
    assert "<script>" not in page.replace("\\<script\\>", "")
    assert "\x1b" not in page
    assert "\\<script\\>alert(1)\\</script\\> \\| \\`x\\` \\[y\\](z) \\*b\\*" in page


def test_the_same_letter_is_the_same_bytes_in_every_form() -> None:
    written = [letter(TOO_HIGH)]
    for form in (*FORMS, "json", "docx"):
        assert in_form(written, form) == in_form(written, form)


def test_a_word_processor_gets_the_same_items() -> None:
    import io

    from docx import Document

    spec = hostile_spec()
    written = letter_of(spec, review(spec, load_rulebook()))
    content = in_form([written], "docx")
    assert isinstance(content, bytes)
    paper = Document(io.BytesIO(content))
    texts = [one.text for one in paper.paragraphs]
    cells = [cell.text for table in paper.tables for row in table.rows for cell in row.cells]
    for item in written.faults:
        assert f"{item.number}. {item.title}" in texts
    for item in written.questions:
        assert any(item.why in cell for cell in cells)
    assert not any("\x1b" in one for one in texts + cells)
    assert paper.core_properties.author == ""


def plain_text(page: str, form: str) -> str:
    """Return what a reader of a page sees, without spaces."""
    if form == "html":
        import html5lib

        page = "".join(html5lib.parse(page, namespaceHTMLElements=False).itertext())
    elif form == "markdown":
        page = re.sub(r"\\(.)", r"\1", page)
    else:
        page = json.dumps(json.loads(page), ensure_ascii=False).replace('\\"', '"')
    return squeezed(page)


def squeezed(text: str) -> str:
    return "".join(text.split())
