"""What each ratio should be, in one place; nothing fails where it is not."""

from __future__ import annotations

# Five times what libyaml takes to find the nodes of a spec is what nobody notices in an editor.
WARM = "at most 5"
# Whoever waits for one linter should not wait longer for another.
COLD = "at most 1"
# A company's whole collection while a pull request is opened: ten and four times as fast.
MANY = {"yamllint": "at most 0.1", "check-jsonschema": "at most 0.25"}
# Two processes halve the work at best; each has to start and to hand over what it made.
JOBS = "at most 0.67"
# What has been written is let go: neither files nor rules nor lists cost more for being many.
MEMORY = "at most 1.3"
GROWTH = "at most 1.1"
