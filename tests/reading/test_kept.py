"""What is kept is what was read, until a file changes; a cache that fails is done without."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from checker.judging.rulebook import load_rulebook
from checker.reading.kept import kept


@pytest.fixture
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty cache of the test's own."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return tmp_path / "cache"


def test_made_once_and_again_when_the_file_changes(tmp_path: Path, cache: Path) -> None:
    file = tmp_path / "a.yaml"
    file.write_text("one", encoding="utf-8")
    made: list[str] = []

    def make() -> list[str]:
        made.append(file.read_text(encoding="utf-8"))
        return list(made)

    assert kept([file], make) == ["one"]
    assert kept([file], make) == ["one"]
    assert made == ["one"]
    file.write_text("other", encoding="utf-8")
    assert kept([file], make) == ["one", "other"]


@pytest.mark.parametrize("spoiled", [b"", b"{", b"\xff"])
def test_a_spoiled_cache_is_made_anew(tmp_path: Path, cache: Path, spoiled: bytes) -> None:
    file = tmp_path / "a.yaml"
    file.touch()
    assert kept([file], lambda: 1) == 1
    (place,) = (cache / "belowgrade").iterdir()
    place.write_bytes(spoiled)
    assert kept([file], lambda: 2) == 2
    assert kept([file], lambda: 3) == 2


def test_a_cache_that_cannot_be_written_is_done_without(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    blocked = tmp_path / "file"
    blocked.touch()
    monkeypatch.setenv("XDG_CACHE_HOME", str(blocked))
    assert kept([blocked], lambda: [1]) == [1]
    monkeypatch.setenv("XDG_CACHE_HOME", "relative")
    assert kept([blocked], lambda: [2]) == [2]
    assert not Path("relative").exists()


def test_the_rule_book_from_the_cache_is_the_rule_book(cache: Path) -> None:
    first = load_rulebook()
    assert any((cache / "belowgrade").iterdir())
    second = load_rulebook()
    assert first == second
    assert os.listdir(cache / "belowgrade")
