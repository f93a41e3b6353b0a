"""A company standard with the lots that start from it, before and after an edit."""

from __future__ import annotations

import shutil
from pathlib import Path

from checker.judging.effect import Terms, find_effect, tasks_of
from checker.judging.effect_data import Effect, Lot, Margin, Turn
from checker.judging.rulebook import load_rulebook

SPECS = Path(__file__).parents[2] / "specs"
BOOK = load_rulebook()
STANDARD = "standards/HF-FDN-02.yaml"
LOT = "house.yaml"
INCH = 0.0254
MIL = INCH / 1000


class Collection:
    """The example standard and lot 15, which starts from it, twice: before and after."""

    def __init__(self, folder: Path) -> None:
        self.before, self.after = folder / "before", folder / "after"
        for side in (self.before, self.after):
            (side / "standards").mkdir(parents=True)
            for name in (STANDARD, LOT):
                shutil.copy(SPECS / name, side / name)

    def edit(self, old: str, new: str, *, file: str = STANDARD, also: bool = False) -> Collection:
        """Change the one place of a file that holds a text, after the edit or `also` before it."""
        for side in (self.before, self.after) if also else (self.after,):
            _change(side / file, old, new)
        return self

    def lot(self, number: int, *changes: tuple[str, str], name: str = "") -> str:
        """Add a lot to both sides, as lot 15 but for its number and some changes."""
        file = name or f"lot-{number}.yaml"
        for side in (self.before, self.after):
            shutil.copy(SPECS / LOT, side / file)
            for old, new in (('lot: "15"', f'lot: "{number}"'), *changes):
                _change(side / file, old, new)
        return file

    def effect(self, *, jobs: int = 1, by: str = "", day: str = "") -> Effect:
        """Return what the edit does."""
        terms = Terms(self.before, self.after, BOOK, by, day)
        return find_effect(tasks_of(self.before, self.after), terms, jobs)

    def on(self, file: str = LOT) -> Lot:
        """Return what the edit does to the one lot in a file."""
        (found,) = [lot for lot in self.effect().lots if lot.after.file == file]
        return found


def _change(file: Path, old: str, new: str) -> None:
    text = file.read_text(encoding="utf-8")
    assert text.count(old) == 1, old
    file.write_text(text.replace(old, new), encoding="utf-8")


def turns(lot: Lot) -> dict[str, Turn]:
    """Return the findings of a lot that went some way, by rule."""
    return {one.finding.rule: one for one in lot.turns}


def margins(lot: Lot) -> dict[str, Margin]:
    """Return the comparisons of a lot that have other room, by rule."""
    return {one.finding.rule: one for one in lot.margins}


def line_of(text: str, file: Path) -> int:
    """Return the line of a file that a text stands in."""
    lines = file.read_text(encoding="utf-8").splitlines()
    (found,) = [number for number, line in enumerate(lines, start=1) if text in line]
    return found
