"""What holds for every test: examples that hypothesis makes up are not timed, and what the program
keeps for its next run does not go into the cache of whoever runs the tests."""

from __future__ import annotations

import os
import tempfile

import pytest
from hypothesis import settings

# A busy machine is no fault of the code. In continuous integration the examples are the same
# every run, so that a change is judged by what it changed.
settings.register_profile("here", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True)
settings.load_profile("ci" if os.environ.get("CI") else "here")


def pytest_configure(config: pytest.Config) -> None:
    # Processes that share the tests are started after this, and share the cache as well.
    if "PYTEST_XDIST_WORKER" not in os.environ:
        cache = tempfile.TemporaryDirectory(prefix="belowgrade-tests-")
        config.add_cleanup(cache.cleanup)
        os.environ["XDG_CACHE_HOME"] = cache.name


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    # What takes longest comes first, so that no process is left with it at the end.
    items.sort(key=lambda item: item.get_closest_marker("slow") is None)
