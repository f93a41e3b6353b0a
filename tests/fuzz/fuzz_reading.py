"""Look for a text that reading neither takes nor refuses, led by which lines of it are reached.

Needs atheris, which `pip install atheris` gives where it is built for the system and the Python at
hand. `python tests/fuzz/fuzz_reading.py 600` looks for ten minutes; what it finds stays in a file
`crash-...` in the folder it was started in.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

import atheris

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

with atheris.instrument_imports(include=["checker.reading"]):
    from checker.reading.faults import Unreadable
    from checker.reading.measured import on_basis
    from checker.reading.reader import read_specs
    from checker.reading.vocabulary import vocabulary

from checker.judging.judge import review  # noqa: E402  (after what is instrumented)
from checker.judging.rulebook import load_rulebook  # noqa: E402

RULEBOOK = load_rulebook()
# Longer texts reach nothing that shorter ones do not, and take longer.
LONGEST = 4_000


def read_and_judge(data: bytes) -> None:
    """Read bytes as a spec, and judge what could be read."""
    text = data.decode("utf-8", "replace")
    try:
        specs = read_specs(text, "fuzz.yaml")
    except Unreadable as error:
        if not error.faults:
            raise AssertionError("a text is refused without a reason") from error
        return
    for spec in specs:
        for one in on_basis(spec, "both"):
            review(one, RULEBOOK)


def _words() -> list[str]:
    """Return what a spec is made of: its keys, and every example of a value."""
    nodes = vocabulary().nodes
    keys = {step for path in nodes for step in path.split(".")}
    values = {str(one) for node in nodes.values() for one in getattr(node, "examples", ())}
    stand_ins = {"not shown", "by others", "one of", "value", "as_written"}
    return sorted(filter(None, keys | values | stand_ins))


def _quoted(word: str) -> str:
    return '"' + "".join(f"\\x{byte:02x}" for byte in word.encode()) + '"\n'


def start(seconds: int) -> None:
    """Look for so long, starting from the small specs of the tests and the words of the schema."""
    with tempfile.TemporaryDirectory() as folder:
        corpus = Path(folder, "corpus")
        corpus.mkdir()
        for number, file in enumerate(sorted(ROOT.glob("tests/causes/*.yaml"))):
            (corpus / str(number)).write_bytes(file.read_bytes()[:LONGEST])
        dictionary = Path(folder, "words")
        dictionary.write_text("".join(map(_quoted, _words())), encoding="ascii")
        options = [f"-max_total_time={seconds}", f"-max_len={LONGEST}", f"-dict={dictionary}"]
        atheris.Setup([sys.argv[0], *options, "-timeout=20", str(corpus)], read_and_judge)
        atheris.Fuzz()


if __name__ == "__main__":
    start(int(sys.argv[1]) if len(sys.argv) > 1 else 60)
