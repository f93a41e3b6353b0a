"""Where the file is that a spec starts from, and whether it may be opened at all."""

from __future__ import annotations

import os
from pathlib import Path, PureWindowsPath

FENCE = "belowgrade.yaml"


class Refused(Exception):
    """A file that a spec may not start from, or that is not there; the message says why."""


def locate(written: str, spec: Path) -> Path:
    """Return the real path of the file that a spec starts from.

    `written` is relative to the spec's own folder; `spec` is the spec's real path. The file must
    lie, links followed, inside the fence: the nearest folder upward from the spec that holds a
    `belowgrade.yaml`, else the spec's own folder. Nothing outside it is opened or even looked
    for. Raises Refused.
    """
    if not written.isprintable() or "\\" in written:
        raise Refused("starts_from is a path with '/' between its folders")
    if PureWindowsPath(written).anchor:
        raise Refused(f"'{written}' is not relative: starts_from is a path from this file's folder")
    top, marked = _fence(spec.parent)
    target = Path(os.path.normpath(spec.parent / written))
    try:
        # Only a path that stays inside as it is written is followed through its links.
        inside = target.is_relative_to(top) and target.resolve().is_relative_to(top)
        there = inside and target.exists()
    except (OSError, RuntimeError):
        raise Refused(f"'{written}' cannot be followed to a file") from None
    if not inside:
        raise Refused(_leads_out(written, marked=marked))
    if not there:
        raise Refused(f"there is no file '{written}', seen from this file's folder")
    return target.resolve()


def _fence(folder: Path) -> tuple[Path, bool]:
    """Return the folder that no spec reaches out of, and whether a file marks it."""
    for top in (folder, *folder.parents):
        try:
            if (top / FENCE).is_file():
                return top, True
        except OSError:
            # A folder that may not be looked into marks nothing.
            continue
    return folder, False


def _leads_out(written: str, *, marked: bool) -> str:
    if marked:
        return f"'{written}' leads out of the folder that holds {FENCE}"
    return (
        f"'{written}' leads out of this file's folder. To start from a file above it, "
        f"put a {FENCE} into the folder that holds both"
    )
