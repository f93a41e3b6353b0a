"""Files to specs: the front door of reading."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import yaml

from checker.reading.compose import compose, read_text
from checker.reading.faults import Fault, Unreadable
from checker.reading.spec import Shown, Spec
from checker.reading.vocabulary import vocabulary
from checker.reading.walk import Walk

SUFFIXES = {".yaml", ".yml"}


def load_spec(path: Path | str | None) -> list[Spec]:
    """Read every assembly of a file (None is standard input).

    Raises Unreadable with all faults of the file, each with line and column.
    """
    source = Path(path) if path is not None else None
    return read_specs(read_text(source), str(source) if source else "standard input")


def read_specs(text: str, name: str) -> list[Spec]:
    """Read every assembly of a text; `name` is what faults and findings call the file."""
    nodes = [node for node in compose(text, name) if not _blank(node)]
    if not nodes:
        raise Unreadable([Fault(name, 1, 1, "is empty: a spec begins with 'vocabulary: 1'")])
    specs: list[Spec] = []
    faults: list[Fault] = []
    shared: Spec | None = None
    for index, node in enumerate(nodes):
        walk = Walk(name, text, vocabulary())
        spec = _read_document(node, walk, index)
        faults += walk.faults
        if spec.paper == "site" and index == 0 and len(nodes) > 1:
            shared = spec
        else:
            specs.append(_with_shared(spec, shared) if shared else spec)
    if faults:
        raise Unreadable(
            sorted(faults, key=lambda fault: (fault.line, fault.column, fault.message))
        )
    return specs


def _blank(node: yaml.Node) -> bool:
    return isinstance(node, yaml.ScalarNode) and node.value.strip() == ""


def _read_document(node: yaml.Node, walk: Walk, index: int) -> Spec:
    if not isinstance(node, yaml.MappingNode):
        walk.fault(
            node, "is not a spec: a spec is a list of keys and begins with 'vocabulary: 1'", ""
        )
        return Spec(walk.file, "", "", {}, {}, {}, {})
    plain = walk.document(node)
    if not walk.sound or "vocabulary" not in walk.values:
        # Only a document with something wrong pays for the validator.
        from checker.reading.schema_faults import schema_faults

        walk.faults += schema_faults(plain, walk)
        if not walk.faults:
            walk.fault(node, "does not obey the vocabulary, though no one key could be named", "")
    name = _name(walk, index)
    paper = walk.values["paper"].value if "paper" in walk.values else ""
    return Spec(
        walk.file,
        name,
        str(paper or ""),
        walk.values,
        walk.lists,
        walk.places,
        walk.words,
        tuple(walk.notes),
    )


def _name(walk: Walk, index: int) -> str:
    identity = walk.values.get("id")
    if identity and identity.written:
        return identity.written
    job = [walk.values[path].written for path in ("job.name", "job.lot") if path in walk.values]
    if job:
        return ", lot ".join(job)
    return f"assembly {index + 1}"


def _with_shared(spec: Spec, shared: Spec) -> Spec:
    """Return a spec that holds what its file's site document says, wherever it is silent itself."""
    lists = shared.lists | spec.lists
    values: dict[str, Shown] = {
        path: shown
        for path, shown in shared.values.items()
        if not _replaced(path, spec) and path != "paper"
    }
    return Spec(
        spec.file,
        spec.name,
        spec.paper,
        values | spec.values,
        lists,
        shared.places | spec.places,
        shared.words | spec.words,
        shared.notes + spec.notes,
    )


def _replaced(path: str, spec: Spec) -> bool:
    # A list is taken whole from one document: items of two documents are never mixed.
    return any(path.startswith(f"{listed}.") for listed in spec.lists)


def find_specs(paths: list[str]) -> Iterator[tuple[Path | None, str]]:
    """Yield every spec file among files, folders and `-`, and a note for what is left alone.

    Yields (path, "") for a spec and (path, note) for a file that is no spec. Files come in
    the order of their names, folders are searched all the way down; links to folders are not
    followed.
    """
    for given in paths:
        if given == "-":
            yield None, ""
            continue
        path = Path(given)
        if not path.is_dir():
            yield path, ""
            continue
        for found in sorted(path.rglob("*")):
            if found.suffix.lower() in SUFFIXES and found.is_file():
                yield (
                    found,
                    ""
                    if _claims_to_be_spec(found)
                    else "is no spec (no 'vocabulary:'), left alone",
                )


def _claims_to_be_spec(path: Path) -> bool:
    try:
        with path.open("rb") as stream:
            head = stream.read(200_000)
    except OSError:
        return True
    # Anything that is not plain text is tried as a spec, so that the reader says what is wrong.
    return head.startswith(b"vocabulary:") or b"\nvocabulary:" in head or b"\0" in head
