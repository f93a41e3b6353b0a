"""belowgrade: judge below-grade assemblies against written rules before they are buried.

The whole of it is one line: `load_spec(path)` gives assemblies, `load_rulebook(*paths)` gives
rules, and `review(spec, rulebook)` gives a Review, which is plain data.
"""

from __future__ import annotations

__all__ = ["load_rulebook", "load_spec", "review"]

# As the library typing has it, which takes its time to load: until this is done, whoever interrupts
# the program sees Python's own complaint.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from checker.judging.judge import review
    from checker.judging.rulebook import load_rulebook
    from checker.reading.reader import load_spec

_HOMES = {
    "load_spec": "checker.reading.reader",
    "load_rulebook": "checker.judging.rulebook",
    "review": "checker.judging.judge",
}


def __getattr__(name: str) -> Any:
    # Imported when asked for, so that a command that needs one part does not pay for all.
    if name in _HOMES:
        import importlib

        return getattr(importlib.import_module(_HOMES[name]), name)
    raise AttributeError(name)
