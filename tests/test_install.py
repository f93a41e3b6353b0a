"""The rule book arrives whole, however the program is installed."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import sysconfig
import tomllib
import venv
import zipfile
from pathlib import Path

import pytest

pytestmark = pytest.mark.slow

ROOT = Path(__file__).parents[1]
SCRIPTS = "Scripts" if os.name == "nt" else "bin"


def run(*command: str | Path, cwd: Path) -> subprocess.CompletedProcess[str]:
    # With a path to a checkout in it, what is installed would not be what is run.
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    return subprocess.run(
        [str(part) for part in command],
        cwd=cwd,
        env=environment,
        capture_output=True,
        text=True,
        stdin=subprocess.DEVNULL,
        timeout=300,
        check=False,
    )


def must(*command: str | Path, cwd: Path) -> str:
    done = run(*command, cwd=cwd)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built from the unpacked source archive as an index would get it."""
    out = tmp_path_factory.mktemp("dist")
    must(sys.executable, "-m", "build", "--no-isolation", "--outdir", out, ROOT, cwd=out)
    (built,) = out.glob("*.whl")
    return built


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """An empty environment that borrows the libraries of this one, so that nothing is fetched."""
    home = tmp_path / "environment"
    venv.create(home, with_pip=False, symlinks=os.name != "nt")
    # Last in the alphabet, so that whatever is installed here comes before what is borrowed.
    borrowed = {sysconfig.get_path("purelib"), sysconfig.get_path("platlib")}
    (site_of(home) / "zz_borrowed.pth").write_text("\n".join(borrowed), encoding="utf-8")
    return home


def site_of(home: Path) -> Path:
    return Path(sysconfig.get_path("purelib", "venv", {"base": str(home)}))


def install(home: Path, *what: str | Path) -> None:
    pip = (sys.executable, "-m", "pip", "--python", home / SCRIPTS / "python")
    offline = ("--quiet", "--no-index", "--no-deps", "--no-build-isolation", "--ignore-installed")
    must(*pip, "install", *offline, *what, cwd=home)


def ids_in_source() -> list[str]:
    """The ids as they stand in the files, found without the program."""
    texts = [path.read_text(encoding="utf-8") for path in (ROOT / "rules").glob("*.yaml")]
    return sorted(found for text in texts for found in re.findall(r"(?m)^- id: (\S+)$", text))


def ids_listed(home: Path) -> list[str]:
    """The ids that `belowgrade rules` lists: the first word of a line, when it is one."""
    listing = must(home / SCRIPTS / "belowgrade", "rules", cwd=home)
    return sorted(re.findall(r"(?m)^\s*([a-z_]+\.[a-z0-9-]+)\b", listing))


def test_wheel_carries_every_file_of_rules_and_shared(wheel: Path) -> None:
    carried = set(zipfile.ZipFile(wheel).namelist())
    wanted = {
        f"checker/_data/{path.relative_to(ROOT).as_posix()}"
        for name in ("rules", "shared")
        for path in (ROOT / name).rglob("*")
        if path.is_file()
    }
    assert any(name.endswith("/spec.schema.json") for name in wanted)
    assert wanted - carried == set()


def test_wheel_carries_every_part_of_the_report(wheel: Path) -> None:
    carried = set(zipfile.ZipFile(wheel).namelist())
    report = ROOT / "checker" / "showing" / "report"
    wanted = {path.relative_to(ROOT).as_posix() for path in report.rglob("*.*")}
    wanted = {name for name in wanted if not name.endswith(".pyc")}
    assert {Path(name).suffix for name in wanted} >= {".py", ".j2", ".css", ".js"}
    assert wanted - carried == set()


def test_installed_wheel_lists_every_rule(wheel: Path, home: Path) -> None:
    install(home, wheel)
    assert ids_in_source()
    assert ids_listed(home) == ids_in_source()


def test_installed_wheel_reviews_as_the_checkout_does(wheel: Path, home: Path) -> None:
    install(home, wheel)
    spec = ROOT / "specs" / "good.yaml"
    there = run(home / SCRIPTS / "belowgrade", "review", spec, cwd=home)
    here = run(sys.executable, "-m", "checker", "review", spec, cwd=ROOT)
    assert here.stdout.strip()
    assert (there.returncode, there.stdout) == (here.returncode, here.stdout), there.stderr


def test_editable_install_lists_every_rule_and_copies_none(tmp_path: Path, home: Path) -> None:
    checkout = tmp_path / "checkout"
    for name in ("checker", "rules", "shared"):
        leave = shutil.ignore_patterns("__pycache__")
        shutil.copytree(ROOT / name, checkout / name, ignore=leave)
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copy(ROOT / name, checkout)
    install(home, "-e", checkout)
    assert ids_listed(home) == ids_in_source()
    # A copy left behind would be read one day instead of the files that somebody edits.
    assert not (site_of(home) / "checker").exists()


def built(folder: Path, *, mask: int, day: int, backwards: bool) -> dict[str, bytes]:
    """Copy the sources under a mask of rights, date them, and build both archives there."""
    contents = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    tops = contents["tool"]["hatch"]["build"]["targets"]["sdist"]["include"]
    under = [ROOT / top.lstrip("/") for top in [*tops, "/pyproject.toml", "/.gitignore"]]
    files = [file for top in under for file in (top.rglob("*") if top.is_dir() else [top])]
    before = os.umask(mask)
    try:
        for file in sorted(files, reverse=backwards):
            if file.is_file() and "__pycache__" not in file.parts:
                copy = folder / "checkout" / file.relative_to(ROOT)
                copy.parent.mkdir(parents=True, exist_ok=True)
                shutil.copyfile(file, copy)
                os.utime(copy, (day, day))
        out = folder / "dist"
        command = (sys.executable, "-m", "build", "--no-isolation", "--outdir", out)
        must(*command, folder / "checkout", cwd=folder)
    finally:
        os.umask(before)
    return {archive.name: archive.read_bytes() for archive in out.iterdir()}


def test_the_same_sources_give_the_same_archives(tmp_path: Path) -> None:
    """Whoever builds a release, from whatever copy and at whatever time, gets the same bytes."""
    one = built(tmp_path / "one", mask=0o022, day=1_000_000_000, backwards=False)
    other = built(tmp_path / "a longer name", mask=0o077, day=1_900_000_000, backwards=True)
    assert sorted(Path(name).suffix for name in one) == [".gz", ".whl"]
    assert one == other


@pytest.mark.parametrize("state", ["empty", "missing"])
def test_installation_without_rules_is_an_error(wheel: Path, home: Path, state: str) -> None:
    install(home, wheel)
    rules = site_of(home) / "checker" / "_data" / "rules"
    shutil.rmtree(rules)
    if state == "empty":
        rules.mkdir()
    done = run(home / SCRIPTS / "belowgrade", "rules", cwd=home)
    assert (done.returncode, done.stdout) == (2, "")
    assert "rule" in done.stderr
    assert "Traceback" not in done.stderr
