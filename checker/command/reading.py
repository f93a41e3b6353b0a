"""Files read for a command, one after another."""

from __future__ import annotations

import gc
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from checker.command.printing import complain

if TYPE_CHECKING:
    from checker.judging.many import Asked, Made
    from checker.judging.rulebook import Rulebook
    from checker.judging.settle import Settled
    from checker.reading.faults import Fault
    from checker.reading.spec import Spec
    from checker.showing.forms import End

# How many objects are made before the collector looks among them. A review makes fewer.
_SELDOM = 20_000


class Reading:
    """Reads specs one after another; what cannot be read is said and does not stop the others."""

    def __init__(self) -> None:
        self.unreadable = False
        self.faults: list[Fault] = []
        self._said: set[Fault] = set()

    def files(self, paths: list[str], *, specs_only: bool = False) -> list[Path | None]:
        """Return every spec file among files, folders and `-`, which is None."""
        from checker.reading.reader import find_specs

        found: list[Path | None] = []
        for path, note in find_specs(paths, specs_only=specs_only):
            if not note:
                found.append(path)
            elif not specs_only:
                complain(f"{path}: {note}")
        return found

    def specs(self, paths: list[str]) -> Iterator[Spec]:
        """Yield every assembly that can be read."""
        from checker.reading.faults import Unreadable
        from checker.reading.reader import load_spec

        for path in self.files(paths):
            try:
                yield from load_spec(path)
            except Unreadable as error:
                self.note(error.faults)

    def settled(
        self, paths: list[str], rulebook: Rulebook, basis: str = "design"
    ) -> Iterator[Settled]:
        """Yield every assembly that can be read, with what it is judged by."""
        from checker.judging.settle import settle
        from checker.reading.faults import Unreadable
        from checker.reading.measured import on_basis

        for spec in self.specs(paths):
            for one in on_basis(spec, basis):
                try:
                    yield settle(one, rulebook)
                except Unreadable as error:
                    self.note(error.faults)

    def judged(
        self, files: list[Path | None], asked: Asked[Made], jobs: int, *, quiet: bool = False
    ) -> Iterator[Made]:
        """Yield what is made of every assembly; how far that has come is said unless `quiet`."""
        from checker.judging.many import judge_files
        from checker.showing.progress import Progress

        # A review leaves nothing behind that refers to itself in a circle. To look for that as
        # often as Python does takes a twentieth of the time, here and in copies of this process.
        gc.set_threshold(_SELDOM)
        progress = Progress(None if quiet else sys.stderr, len(files))
        try:
            for one in judge_files(files, asked, jobs):
                progress.step()
                if one.faults:
                    progress.clear()
                    self.note(one.faults)
                yield from one.made
        finally:
            progress.clear()

    def found_nothing(self) -> None:
        """Say so, unless what could not be read was said already."""
        if not self.unreadable:
            complain("no spec was found: a spec is a YAML file that begins with 'vocabulary: 1'")
            self.unreadable = True

    def status(self, held: bool) -> int:
        """Return the exit status; `held` says that something stands open."""
        return 2 if self.unreadable else int(held)

    def end(self, held: bool) -> End:
        """Return how the run ended."""
        from checker.showing.forms import End

        return End(self.faults, self.status(held))

    def note(self, faults: Iterable[Fault]) -> None:
        """Say what is wrong with a file."""
        self.unreadable = True
        for fault in faults:
            # A house file at fault is at fault for every spec of the house.
            if fault not in self._said:
                self._said.add(fault)
                self.faults.append(fault)
                complain(str(fault))
