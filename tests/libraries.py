"""The libraries that come along with an installation: what the package needs, and what they need.

`python -m tests.libraries` prints which versions of them are installed here.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable
from importlib.metadata import PackageNotFoundError, metadata, requires, version
from itertools import product
from pathlib import Path
from typing import Any

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).parents[1]
SYSTEMS = ("Linux", "Windows", "Darwin")


def stated() -> set[str]:
    """Return the versions of Python that the package says were tested, such as 3.12."""
    named = "\n".join(_project()["classifiers"])
    return set(re.findall(r"(?m)^Programming Language :: Python :: (3\.\d+)$", named))


def needed() -> set[str]:
    """Return the names of all of them, on any system and any Python, with those for docx."""
    project = _project()
    waiting = [*project["dependencies"], *project["optional-dependencies"]["docx"]]
    names: set[str] = set()
    while waiting:
        asked = Requirement(waiting.pop())
        name = canonicalize_name(asked.name)
        if name not in names and _ever(asked):
            names.add(name)
            waiting += _needs(name)
    return names


def installed(names: Iterable[str]) -> dict[str, str]:
    """Return the versions of those that are installed here."""
    found: dict[str, str] = {}
    for name in sorted(names):
        try:
            found[name] = version(name)
        except PackageNotFoundError:
            continue
    return found


def licence(name: str) -> str:
    """Return what an installed library says of its own licence, in its own words."""
    says = metadata(name)
    for key in ("License-Expression", "License"):
        for short in says.get_all(key) or []:
            # Some put the whole text there.
            if "\n" not in short:
                return str(short)
    heads = "License :: OSI Approved :: "
    classed = says.get_all("Classifier") or []
    return ", ".join(one.removeprefix(heads) for one in classed if one.startswith(heads))


def _project() -> dict[str, Any]:
    text = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    project: dict[str, Any] = tomllib.loads(text)["project"]
    return project


def _needs(name: str) -> list[str]:
    try:
        return requires(name) or []
    except PackageNotFoundError:
        return []


def _ever(asked: Requirement) -> bool:
    """Say whether it is needed by any Python that is tested, on any system."""
    return asked.marker is None or any(
        asked.marker.evaluate({"extra": "", "platform_system": system, "python_version": python})
        for system, python in product(SYSTEMS, stated())
    )


if __name__ == "__main__":
    print(", ".join(f"{name} {number}" for name, number in installed(needed()).items()))
