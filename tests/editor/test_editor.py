"""What a person's editor makes of a spec, asked of the language server that most of them use."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from checker.data import load_json
from tests.editor.language_server import ROOT, SCHEMA, Server, command, running

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(command() is None, reason="no yaml-language-server: see .ci/run"),
]

SPECS = ROOT / "specs"
# Beside the specs stand a house file and its rules, which have schemas of their own.
EXAMPLES = sorted(
    path
    for path in SPECS.rglob("*.yaml")
    if path.name != "belowgrade.yaml" and path.parent.name != "rules"
)
MODELINE = f"# yaml-language-server: $schema={SCHEMA.as_uri()}\n"
BODY = "vocabulary: 1\ndrain:\n  present: yes\n  material: rigid_pvc\n"


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    with running(tmp_path_factory.mktemp("job")) as one:
        yield one


def faults(server: Server, name: str, body: str) -> list[tuple[int, str]]:
    return server.diagnostics(f"{name}.yaml", MODELINE + body)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.name)
def test_no_example_is_underlined(server: Server, path: Path) -> None:
    assert faults(server, f"example-{path.stem}", path.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(
    ("name", "body", "line", "words"),
    [
        ("key", BODY + "  materiall: abs\n", 6, "materiall is not allowed"),
        ("section", BODY + "dran: {present: yes}\n", 6, "dran is not allowed"),
        ("word", BODY.replace("rigid_pvc", "rigid_pcv"), 5, "rigid_pvc"),
        ("unit", "vocabulary: 1\nstone:\n  bedding: 2\n", 4, "string"),
        ("item", "vocabulary: 1\noutlets:\n  - {kind: daylight}\n", 4, "id"),
        ("version", "vocabulary: 2\n", 2, "1"),
        ("header", "drain: {present: yes}\n", 2, "vocabulary"),
    ],
)
def test_what_is_wrong_is_underlined(
    server: Server, name: str, body: str, line: int, words: str
) -> None:
    found = faults(server, f"wrong-{name}", body)
    assert {at for at, _ in found} == {line}
    assert any(words in said for _, said in found)


def test_hover_says_what_a_key_means(server: Server) -> None:
    uri = server.open("hover.yaml", MODELINE + BODY)
    said = server.ask("hover", uri, 5, 5)["contents"]["value"]
    material = load_json("spec.schema.json")["$defs"]["drain"]["properties"]["material"]
    assert material["description"] in said.replace("\n\n", " ")


def labels(answer: Any) -> set[str]:
    return {item["label"] for item in answer["items"]}


def test_completion_offers_the_keys_of_a_section(server: Server) -> None:
    uri = server.open("keys.yaml", f"{MODELINE}{BODY}  \n")
    offered = labels(server.ask("completion", uri, 6, 3))
    assert {"diameter", "slope", "corners", "holes"} <= offered
    assert not offered & {"bedding", "present", "material"}


def test_completion_offers_the_words_of_a_key(server: Server) -> None:
    uri = server.open("words.yaml", MODELINE + BODY.replace("rigid_pvc", ""))
    offered = labels(server.ask("completion", uri, 5, 13))
    assert {"rigid_pvc", "abs", "not shown", "by others"} <= offered
