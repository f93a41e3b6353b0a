"""What cannot be read: a fault with its place, in a sentence a builder understands."""

from __future__ import annotations

from typing import NamedTuple


class Fault(NamedTuple):
    """One thing in a file that could not be read. Lines and columns count from 1; 0 is unknown."""

    file: str
    line: int
    column: int
    message: str
    path: str = ""

    def __str__(self) -> str:
        place = f"{self.file}:{self.line}:{self.column}" if self.line else self.file
        return f"{place}: {self.message}"


class Unreadable(Exception):
    """A file that could not be read, with every fault found in it."""

    def __init__(self, faults: list[Fault]) -> None:
        super().__init__("\n".join(str(fault) for fault in faults))
        self.faults = faults
