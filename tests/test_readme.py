"""What the README says is so: its specs read, its commands exist, its output is the program's."""

from __future__ import annotations

import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from checker.reading.reader import read_specs

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")

SPECS = re.findall(r"(?ms)^```yaml\n(.*?)^```$", README)
# Command and options, from every piece of code such as `belowgrade review SPEC --as json`.
CODE = re.sub(r"(?m)^<!--.*-->$", "", README)
USES = sorted(set(re.findall(r"\bbelowgrade ([a-z]+)((?: [^\s`|]+)*)", CODE)))
OUTPUTS = re.findall(
    r"(?ms)^<!-- output of: belowgrade ([^,\n]+?)(?:, first \d+ lines)? -->\n```text\n(.*?)^```\n<!-- end of output -->$",
    README,
)


def test_the_pythons_said_to_be_tested_are_those_of_the_package() -> None:
    package = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    named = re.findall(r":: Python :: (3\.\d+)", "\n".join(package["classifiers"]))
    assert package["requires-python"] == f">={named[0]}"
    (said,) = re.findall(r"with Python (3\.\d+) or newer \((.*?)\s+are tested\)", README, re.DOTALL)
    assert said[0] == named[0]
    assert re.findall(r"3\.\d+", said[1]) == named


def belowgrade(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "checker", *arguments],
        cwd=ROOT,
        capture_output=True,
        text=True,
        encoding="utf-8",
        stdin=subprocess.DEVNULL,
        timeout=60,
        check=False,
    )


def test_the_readme_still_has_what_is_tested_here() -> None:
    assert SPECS
    assert {command for command, _ in USES} >= {"review", "rules", "why", "calc"}
    assert len(OUTPUTS) == README.count("<!-- output of:") >= 4


@pytest.mark.parametrize("text", SPECS)
def test_a_spec_in_the_readme_can_be_read(text: str) -> None:
    (spec,) = read_specs(text, "README.md")
    assert spec.values["drain.corners.NE.invert"].written == "91.16"


@pytest.mark.parametrize(("command", "rest"), USES)
def test_a_command_in_the_readme_exists_with_its_options(command: str, rest: str) -> None:
    asked = belowgrade(command, "--help")
    assert asked.returncode == 0, asked.stderr
    for option in re.findall(r"(?<!\S)--[a-z-]+", rest):
        assert re.search(rf"{option}\b", asked.stdout), f"{command} knows no {option}"


@pytest.mark.parametrize(("command", "pasted"), OUTPUTS)
def test_output_in_the_readme_is_what_the_program_prints(command: str, pasted: str) -> None:
    """A line of three dots, after the first, stands for any number of lines left out."""
    printed = belowgrade(*command.split()).stdout
    parts = re.split(r"(?m)^ *\.\.\.\n", pasted)
    assert parts[0].strip(), "nothing has been pasted yet"
    wanted = r"(?:.*\n)*?".join(re.escape(part) for part in parts)
    assert re.fullmatch(wanted, printed), printed
