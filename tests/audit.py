"""Known faults of the libraries that come along, as the advisories of their index tell them.

`python -m tests.audit` asks with pip-audit, which must be installed, about the versions that are
installed here. Exit status: 0 no advisory, or nobody could be asked, which is said; 1 an advisory,
or an answer that leaves a library out or cannot be read.
"""

from __future__ import annotations

import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

from tests.libraries import installed, needed

_NOT_REACHED = re.compile(
    r"connection|could not connect|failed to resolve|timed out|HTTPError", re.IGNORECASE
)


def main() -> int:
    """Ask, print the answer, and return the exit status."""
    versions = installed(needed())
    with tempfile.TemporaryDirectory() as folder:
        asked = Path(folder, "asked.txt")
        lines = [f"{name}=={version}\n" for name, version in versions.items()]
        asked.write_text("".join(lines), encoding="utf-8")
        done = subprocess.run(
            [sys.executable, "-m", "pip_audit", "--requirement", asked, "--no-deps", "--disable-pip",
             "--format", "json", "--progress-spinner", "off"],
            capture_output=True, text=True, stdin=subprocess.DEVNULL, timeout=300, check=False,
        )  # fmt: skip
    status, says = judged(done.stdout, done.stderr)
    print(says)
    return status


def judged(out: str, complaint: str) -> tuple[int, str]:
    """Return the exit status that an answer of pip-audit earns, and what to say of it."""
    try:
        answers = json.loads(out)["dependencies"]
    except (ValueError, KeyError, TypeError):
        if _NOT_REACHED.search(complaint):
            return 0, "Nothing was audited: whoever keeps the advisories could not be reached."
        return 1, f"pip-audit gave no answer:\n{complaint}"
    if not answers:
        return 1, "pip-audit was asked about nothing."
    faults = [
        f"{one['name']} {one['version']}: {fault['id']}, mended in {fault['fix_versions']}"
        for one in answers
        for fault in one.get("vulns", ())
    ]
    left_out = [one["name"] for one in answers if "skip_reason" in one]
    if faults:
        return 1, "\n".join(faults)
    if len(left_out) == len(answers):
        # An index that only hands out files knows none of them.
        return 0, "Nothing was audited: the index that was asked keeps no advisories."
    if left_out:
        return 1, f"No answer about {', '.join(left_out)}."
    return 0, f"{len(answers)} libraries, and no advisory about any of them."


if __name__ == "__main__":
    sys.exit(main())
