"""The page to take to the site: what to measure, what still passes, what to photograph."""

from checker.showing.field_sheet.contents import Sheet, sheet_of
from checker.showing.field_sheet.html import as_html
from checker.showing.field_sheet.text import as_text
from checker.showing.field_sheet.words import languages, words_in

__all__ = ["Sheet", "as_html", "as_text", "languages", "sheet_of", "words_in"]
