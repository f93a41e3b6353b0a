"""A YAML language server driven over its standard streams, as an editor drives it."""

from __future__ import annotations

import contextlib
import json
import queue
import shutil
import subprocess
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
# Where .ci/run installs it; any other on the search path will do.
INSTALLED = ROOT / ".ci" / "editor" / "node_modules" / ".bin" / "yaml-language-server"
SCHEMA = ROOT / "shared" / "spec.editor.schema.json"
# The first document makes the server read the schema, which takes longest.
_PATIENCE = 60.0

Message = dict[str, Any]


def command() -> list[str] | None:
    """Return how to start the server, or None where it is not installed."""
    found = shutil.which(str(INSTALLED)) or shutil.which("yaml-language-server")
    return [found, "--stdio"] if found and shutil.which("node") else None


class Server:
    """One running server. Its answers come in a thread, so that a silent server cannot hang us."""

    def __init__(self, process: subprocess.Popen[bytes], root: Path) -> None:
        self.process = process
        self.root = root
        self.number = 0
        self.answers: dict[int, Any] = {}
        self.faults: dict[str, list[Message]] = {}
        self.heard: queue.Queue[Message | None] = queue.Queue()
        threading.Thread(target=self._listen, daemon=True).start()
        self.request(
            "initialize", {"processId": None, "rootUri": root.as_uri(), "capabilities": {}}
        )
        self.tell("initialized", {})

    def open(self, name: str, text: str) -> str:
        """Open a document and return what it is called; its faults are known then."""
        uri = (self.root / name).as_uri()
        document = {"uri": uri, "languageId": "yaml", "version": 1, "text": text}
        self.tell("textDocument/didOpen", {"textDocument": document})
        while uri not in self.faults:
            self._hear()
        return uri

    def diagnostics(self, name: str, text: str) -> list[tuple[int, str]]:
        """Return what an editor underlines in a document: line from 1, and message."""
        found = self.faults[self.open(name, text)]
        return [(one["range"]["start"]["line"] + 1, one["message"]) for one in found]

    def ask(self, what: str, uri: str, line: int, column: int) -> Any:
        """Ask for hover or completion at a place counted from 1."""
        place = {"line": line - 1, "character": column - 1}
        return self.request(
            f"textDocument/{what}", {"textDocument": {"uri": uri}, "position": place}
        )

    def request(self, method: str, parameters: Message) -> Any:
        """Send a request and return its result."""
        self.number += 1
        asked = self.number
        self._send({"id": asked, "method": method, "params": parameters})
        while asked not in self.answers:
            self._hear()
        return self.answers.pop(asked)

    def tell(self, method: str, parameters: Message) -> None:
        """Send a notice that has no answer."""
        self._send({"method": method, "params": parameters})

    def _send(self, message: Message) -> None:
        assert self.process.stdin is not None
        body = json.dumps({"jsonrpc": "2.0", **message}).encode()
        self.process.stdin.write(b"Content-Length: %d\r\n\r\n%s" % (len(body), body))
        self.process.stdin.flush()

    def _hear(self) -> None:
        message = self.heard.get(timeout=_PATIENCE)
        if message is None:
            raise EOFError("the language server went away")
        if message.get("method") == "textDocument/publishDiagnostics":
            found = message["params"]
            self.faults[found["uri"]] = found["diagnostics"]
        elif "method" in message and "id" in message:
            self._send({"id": message["id"], "result": _settings(message)})
        elif "id" in message:
            if "error" in message:
                raise RuntimeError(message["error"])
            self.answers[message["id"]] = message["result"]

    def _listen(self) -> None:
        stream = self.process.stdout
        assert stream is not None
        while header := stream.readline():
            length = int(header.split(b":")[1])
            while stream.readline().strip():
                pass
            self.heard.put(json.loads(stream.read(length)))
        self.heard.put(None)


def _settings(asked: Message) -> Any:
    """Answer what the server asks the editor: no schema but ours, and nothing from the network."""
    if asked["method"] != "workspace/configuration":
        return None
    ours = {
        "schemaStore": {"enable": False},
        "validate": True,
        "hover": True,
        "completion": True,
        "yamlVersion": "1.2",
    }
    return [ours if item.get("section") == "yaml" else {} for item in asked["params"]["items"]]


@contextlib.contextmanager
def running(root: Path) -> Iterator[Server]:
    """Run a server for the documents of a folder."""
    start = command()
    assert start is not None
    with subprocess.Popen(
        start, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL
    ) as process:
        try:
            yield Server(process, root)
        finally:
            process.kill()
