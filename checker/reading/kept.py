"""Files composed once and kept as JSON in the user's cache, so that a command starts at once."""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

FORM = "2"


def kept(files: Sequence[Path], make: Callable[[], Any]) -> Any:
    """Return what `make` gives for these files: JSON values, made again when a file has changed.

    A cache that cannot be read or written is done without. What `make` raises is not caught.
    """
    place = _place(files)
    if place is None:
        return make()
    try:
        return json.loads(place.read_bytes())
    except (OSError, ValueError):
        content = make()
    _keep(place, content)
    return content


def _place(files: Sequence[Path]) -> Path | None:
    """Return where the content of these files in their present state is kept."""
    home = os.environ.get("XDG_CACHE_HOME") or os.path.expanduser("~/.cache")
    if not os.path.isabs(home):
        return None
    state = hashlib.sha256(FORM.encode())
    try:
        for file in files:
            at = file.stat()
            state.update(f"\0{file.absolute()}\0{at.st_size}\0{at.st_mtime_ns}".encode())
    except OSError:
        return None
    return Path(home, "belowgrade", f"{state.hexdigest()[:32]}.json")


def _keep(place: Path, content: Any) -> None:
    part = place.with_suffix(f".{os.getpid()}.part")
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        part.write_text(json.dumps(content), encoding="utf-8")
        part.replace(place)
    except OSError:
        with contextlib.suppress(OSError):
            part.unlink(missing_ok=True)
