"""What each ratio should be, in one place; nothing fails where it is not."""

from __future__ import annotations

# More than two hundred rules are asked, with their reasons, where libyaml only finds the nodes.
WARM = "at most 10"
# Whoever waits for one linter should not wait much longer for another.
COLD = "at most 2"
MANY = "at most 1"
# Two processes halve the work at best; each has to start and to hand over what it made.
JOBS = "at most 0.6"
# What has been written is let go: neither files nor rules nor lists cost more for being many.
MEMORY = "at most 1.1"
GROWTH = "at most 1.1"
