"""The letter as a DOCX file, for those who answer in a word processor."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import TYPE_CHECKING

from docx import Document
from docx.shared import Pt

from checker.showing.finding_text import stage_words
from checker.showing.letter import wording
from checker.showing.letter.contents import Letter
from checker.showing.letter.items import Item
from checker.showing.lines import clean, counted

if TYPE_CHECKING:
    from docx.document import Document as Paper

_BOX = "\N{BALLOT BOX}"
_BLANK = "_" * 28
# The file is the same on every run, so nothing in it may tell when it was made.
_NO_DAY = datetime(2000, 1, 1)
_NO_TIME = (1980, 1, 1, 0, 0, 0)


def as_docx(letters: Sequence[Letter]) -> bytes:
    """Return letters as the bytes of one DOCX file, each from a new page on."""
    paper = Document()
    paper.styles["Normal"].font.size = Pt(10)
    _properties(paper, letters)
    for number, letter in enumerate(letters):
        title = paper.add_heading(wording.TITLE, 1)
        title.paragraph_format.page_break_before = number > 0
        _letter(paper, letter)
    whole = io.BytesIO()
    paper.save(whole)
    return _timeless(whole.getvalue())


def _properties(paper: Paper, letters: Sequence[Letter]) -> None:
    about = paper.core_properties
    about.title = clean(f"{wording.TITLE}: {letters[0].assembly}") if letters else wording.TITLE
    about.author, about.comments = "", ""
    about.created = about.modified = _NO_DAY


def _timeless(content: bytes) -> bytes:
    """Return the archive with the time taken out of every part."""
    into = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(content)) as old,
        zipfile.ZipFile(into, "w", zipfile.ZIP_DEFLATED) as new,
    ):
        for part in old.infolist():
            entry = zipfile.ZipInfo(part.filename, _NO_TIME)
            entry.compress_type = zipfile.ZIP_DEFLATED
            new.writestr(entry, old.read(part.filename))
    return into.getvalue()


def _letter(paper: Paper, letter: Letter) -> None:
    rows = [(label, text or _BLANK) for label, text in wording.head(letter)]
    rows += [(f"Paper {one.id}", one.text) for one in letter.papers]
    _table(paper, (), rows)
    for signal, text in letter.cautions:
        _labelled(paper, signal, text)
    _labelled(paper, "Suggested for the whole", wording.suggestion(letter))
    _text(paper, wording.summary(letter))
    _text(paper, f"The reviewer ticks one: {_boxes(letter)}")
    _text(paper, f"Reviewed by {_BLANK} Date {_BLANK}")
    _revisions(paper, letter)
    if letter.faults:
        paper.add_heading(f"Items not met: {len(letter.faults)}", 2)
    for item in letter.faults:
        _fault(paper, item, letter)
    _questions(paper, letter)
    if letter.variances:
        paper.add_heading("Variances that allow nothing here", 2)
        for text in letter.variances:
            _text(paper, text)
    if letter.for_a_person:
        title = "No objection from these rules; a competent person or the engineer decides"
        paper.add_heading(title, 2)
        _text(paper, ", ".join(letter.for_a_person))
    if letter.good:
        paper.add_heading(f"Checked and good: {letter.met}", 2)
        for part in letter.good:
            _labelled(paper, f"{part.name} ({part.findings})", ", ".join(part.faults))
    _text(paper, wording.prepared(letter))


def _revisions(paper: Paper, letter: Letter) -> None:
    if letter.changed:
        paper.add_heading("Changed though nobody asked for it", 2)
        rows = [(f"{one.title} ({one.path})", one.was, one.now) for one in letter.changed]
        _table(paper, ("value", "was", "now"), rows)
    if letter.closed:
        paper.add_heading("Closed since the last letter", 2)
        for one in letter.closed:
            _text(paper, f"Item {one.number}. {one.title}: {one.how}")


def _fault(paper: Paper, item: Item, letter: Letter) -> None:
    paper.add_heading(clean(f"{item.number}. {item.title}"), 3)
    _labelled(paper, "Suggested", f"{item.suggestion} ({wording.item_head(item)})")
    if item.figures:
        _table(paper, ("", "shown", "needed", "off by"), item.figures)
    _labelled(paper, "STOP" if item.stop else "Action", item.action)
    _labelled(paper, "Safety", item.safety)
    _labelled(paper, "Variance", item.varied)
    _labelled(paper, "Place", "; ".join(item.places))
    _labelled(paper, "Source", "; ".join(item.sources))
    _text(paper, _boxes(letter))


def _questions(paper: Paper, letter: Letter) -> None:
    if not letter.questions:
        return
    paper.add_heading(f"Questions: {counted(len(letter.questions), 'value')} not shown", 2)
    heads = ("item", "question, and why it is asked", "needed by stage", "suggested", "answer")
    rows = [
        (
            str(one.number), " ".join((one.action, *one.places, one.why)), stage_words(one.stage),
            f"{one.suggestion} {one.revision}".rstrip(), "",
        )
        for one in letter.questions
    ]  # fmt: skip
    _table(paper, heads, rows)


def _boxes(letter: Letter) -> str:
    return "   ".join(f"{_BOX} {word}" for word in letter.stamp)


def _text(paper: Paper, text: str) -> None:
    paper.add_paragraph(clean(text))


def _labelled(paper: Paper, label: str, text: str) -> None:
    if text:
        row = paper.add_paragraph()
        row.add_run(f"{clean(label)}: ").bold = True
        row.add_run(clean(text))


def _table(paper: Paper, heads: Sequence[str], rows: Iterable[Sequence[str]]) -> None:
    every = [*([heads] if heads else []), *rows]
    if not every:
        return
    table = paper.add_table(rows=0, cols=len(every[0]), style="Table Grid")
    for number, cells in enumerate(every):
        row = table.add_row().cells
        for cell, words in zip(row, cells, strict=True):
            run = cell.paragraphs[0].add_run(clean(words))
            run.italic = bool(heads) and number == 0
