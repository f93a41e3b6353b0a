"""Finding the project's own files, and reading its tables without YAML's guesses."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker import data


@pytest.fixture
def house(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A package folder of its own, as if the program were installed under tmp_path."""
    package = tmp_path / "checker"
    package.mkdir()
    monkeypatch.setattr(data, "PACKAGE", package)
    data.load_json.cache_clear()
    data.load_table.cache_clear()
    return tmp_path


def checkout(house: Path, name: str) -> Path:
    (house / "pyproject.toml").touch()
    return folder(house / name)


def installed(house: Path, name: str) -> Path:
    return folder(house / "checker" / "_data" / name)


def folder(path: Path) -> Path:
    path.mkdir(parents=True)
    return path


def table(house: Path, text: str) -> None:
    tables = folder(installed(house, "shared") / "tables")
    (tables / "pipes.yaml").write_text(text, encoding="utf-8")


def test_checkout_uses_the_folder_beside_the_package(house: Path) -> None:
    rules = checkout(house, "rules")
    installed(house, "rules")
    assert data.data_dir("rules") == rules


def test_installed_package_uses_its_own_copy(house: Path) -> None:
    # A folder of the same name that happens to stand beside an installed package is a stranger's.
    folder(house / "rules")
    own = installed(house, "rules")
    assert data.data_dir("rules") == own


def test_folder_that_is_nowhere_is_an_error_naming_both_places(house: Path) -> None:
    with pytest.raises(FileNotFoundError) as caught:
        data.data_dir("rules")
    assert str(house / "rules") in str(caught.value)
    assert str(house / "checker" / "_data" / "rules") in str(caught.value)


def test_json_is_read_from_shared(house: Path) -> None:
    (installed(house, "shared") / "a.json").write_text('{"title": "floor"}', encoding="utf-8")
    assert data.load_json("a.json") == {"title": "floor"}


def test_json_that_is_no_mapping_is_an_error(house: Path) -> None:
    (installed(house, "shared") / "a.json").write_text("[]", encoding="utf-8")
    with pytest.raises(ValueError, match=r"shared/a\.json must hold a mapping"):
        data.load_json("a.json")


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("4", 4),
        ("-3", -3),
        ("4.215", 4.215),
        (".5", 0.5),
        ("1e-5", 1e-5),
        ("yes", True),
        ("no", False),
        ("", None),
        ("null", None),
        # YAML 1.1 would make these 108, 8, a date, true and infinity.
        ("1:48", "1:48"),
        ("010", "010"),
        ("2031-04-11", "2031-04-11"),
        ("on", "on"),
        (".inf", ".inf"),
        ("'no'", "no"),
    ],
)
def test_table_values(house: Path, written: str, read: object) -> None:
    table(house, f"row: {written}\n")
    value = data.load_table("pipes")["row"]
    assert (value, type(value)) == (read, type(read))


def test_table_keys_stay_text_at_every_depth(house: Path) -> None:
    table(house, "4: {010: [{yes: 4.75}]}\n")
    assert data.load_table("pipes") == {"4": {"010": [{"yes": 4.75}]}}


def test_key_that_stands_twice_is_an_error_with_its_line(house: Path) -> None:
    table(house, "a: 1\nb:\n  x: 1\n  x: 2\n")
    with pytest.raises(ValueError, match="line 4: x stands twice"):
        data.load_table("pipes")


def test_table_that_is_no_mapping_is_an_error(house: Path) -> None:
    table(house, "- 1\n")
    with pytest.raises(ValueError, match=r"shared/tables/pipes\.yaml must hold a mapping"):
        data.load_table("pipes")
