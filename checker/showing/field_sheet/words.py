"""The fixed words of the pages for the site, in the languages of shared/words.yaml."""

from __future__ import annotations

import functools
from dataclasses import dataclass
from typing import Any

from checker.data import data_dir
from checker.reading.compose import TextLoader

ENGLISH = "en"


@dataclass(frozen=True, slots=True)
class Words:
    """The words of one language; what it has no word for stays English.

    `mark` says that no speaker of the language has read the words yet, in both languages.
    """

    language: str
    mark: str
    texts: dict[str, str]

    def __call__(self, text: str, /, **numbers: object) -> str:
        """Return a text of ours in the language, with what it speaks of filled in."""
        told = self.texts.get(text, text)
        for name, value in numbers.items():
            told = told.replace(f"{{{name}}}", str(value))
        return told

    def knows(self, text: str) -> bool:
        """Say whether the language has its own words for a text."""
        return self.language == ENGLISH or text in self.texts


@functools.cache
def languages() -> tuple[str, ...]:
    """Return the languages that there are words in, English first."""
    return (ENGLISH, *_file()["languages"])


@functools.cache
def words_in(language: str) -> Words:
    """Return the words of a language. Raises KeyError when there are none."""
    if language == ENGLISH:
        return Words(ENGLISH, "", {})
    described = _file()["languages"][language]
    texts = {
        " ".join(entry["en"].split()): " ".join(entry[language].split())
        for entry in _file()["words"]
        if language in entry
    }
    return Words(language, described["mark"] if not described["read_by"] else "", texts)


@functools.cache
def _file() -> dict[str, Any]:
    import yaml

    text = (data_dir("shared") / "words.yaml").read_text(encoding="utf-8")
    loaded: dict[str, Any] = yaml.load(text, TextLoader)
    return loaded
