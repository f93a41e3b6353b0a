"""The README names every library that comes along, under the license that it claims for itself."""

from __future__ import annotations

import re

import pytest
from packaging.utils import canonicalize_name

from tests.libraries import ROOT, installed, licence, needed

# Each license that may come along, none of which asks anything of the program's own, and what
# libraries call it.
PERMISSIVE = {
    "MIT": {"MIT", "MIT License"},
    "BSD-3-Clause": {"BSD-3-Clause", "BSD License"},
    "BSD-2-Clause": {"BSD-2-Clause"},
    "ISC": {"ISC License", "ISC"},
    "PSF-2.0": {"PSF-2.0"},
}


def said() -> dict[str, str]:
    """What the README says: the license of each library."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    (table,) = re.findall(r"(?s)<!-- libraries -->\n(.*?)<!-- end of libraries -->", text)
    rows = [line.strip("| ").split(" | ") for line in table.splitlines()[2:]]
    return {
        canonicalize_name(name.split()[-1]): licence
        for licence, names in rows
        for name in re.split("[,;]", names)
    }


LIBRARIES = installed(needed())


def test_the_readme_names_every_library_and_no_other() -> None:
    assert {"jinja2", "lxml", "mdurl"} <= needed()
    assert said().keys() == needed()


@pytest.mark.parametrize("name", LIBRARIES)
def test_a_library_is_under_the_license_that_the_readme_names(name: str) -> None:
    assert licence(name) in PERMISSIVE[said()[name]]
