"""The comment letter on a submittal: numbered items, what each asks, and what stands behind it."""

from checker.showing.letter.contents import Letter, letter_of
from checker.showing.letter.data import as_json
from checker.showing.letter.dispositions import Dispositions, load_dispositions
from checker.showing.letter.earlier import Earlier, load_earlier
from checker.showing.letter.html import as_html
from checker.showing.letter.markdown import as_markdown

__all__ = [
    "Dispositions",
    "Earlier",
    "Letter",
    "as_html",
    "as_json",
    "as_markdown",
    "letter_of",
    "load_dispositions",
    "load_earlier",
]
