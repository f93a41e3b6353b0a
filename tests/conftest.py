"""What holds for every test: examples that hypothesis makes up are not timed."""

from __future__ import annotations

import os

from hypothesis import settings

# A busy machine is no fault of the code. In continuous integration the examples are the same
# every run, so that a change is judged by what it changed.
settings.register_profile("here", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True)
settings.load_profile("ci" if os.environ.get("CI") else "here")
