"""Files to specs: the front door of reading."""

from __future__ import annotations

import dataclasses
import os
import re
from collections.abc import Iterator
from pathlib import Path

import yaml

from checker.reading.compose import compose, read_text
from checker.reading.faults import Fault, Unreadable
from checker.reading.layers import under
from checker.reading.measured import contradictions
from checker.reading.spec import Spec
from checker.reading.starts_from import FENCE, Refused, locate
from checker.reading.vocabulary import plain_word, vocabulary
from checker.reading.walk import STAND_INS, Walk, scalar_at

SUFFIXES = {".yaml", ".yml"}

_ITEMS = 20_000
_FAULTS = 500
_CHAIN = 10  # files that start from one another
_FAULTS_OF_A_BASE = 5


def load_spec(path: Path | str | None) -> list[Spec]:
    """Read every assembly of a file (None is standard input).

    Raises Unreadable with all faults of the file, each with line and column.
    """
    file = Path(path) if path is not None else None
    return read_specs(read_text(file), str(file) if file else "standard input", file)


def read_specs(text: str, name: str, file: Path | None = None) -> list[Spec]:
    """Read every assembly of a text; `name` is what faults and findings call the file.

    `file` is where the text stands; a text that stands in no file starts from none. Raises
    Unreadable.
    """
    return _File(text, name, (file.resolve(),) if file else (), {}).specs()


class _File:
    """One file being read. `chain` holds the files on the way to it, itself last."""

    def __init__(
        self, text: str, name: str, chain: tuple[Path, ...], bases: dict[Path, list[Spec]]
    ) -> None:
        self.text = text
        self.name = name
        self.chain = chain
        self.bases = bases
        self.faults: list[Fault] = []

    def specs(self) -> list[Spec]:
        """Return every assembly of the file. Raises Unreadable."""
        nodes = [node for node in compose(self.text, self.name) if not _blank(node)]
        if not nodes:
            message = "is empty: a spec begins with 'vocabulary: 1'"
            raise Unreadable([Fault(self.name, 1, 1, message)])
        specs: list[Spec] = []
        # What holds wherever a document is silent, the nearest first.
        shared: tuple[Spec, ...] = ()
        for index, node in enumerate(nodes):
            walk = Walk(self.name, self.text, vocabulary())
            base = self._base(node, walk)
            layers = (*shared[:1], *base, *shared[1:])
            spec = _document(node, walk, next(filter(None, map(_level_unit, layers)), ""))
            self.faults += walk.faults
            if index == 0 and len(nodes) > 1 and spec.paper == "site":
                shared = (spec, *base)
                continue
            for layer in layers:
                spec = under(spec, layer)
            self.faults += contradictions(spec)
            specs.append(dataclasses.replace(spec, name=_name(spec, index)))
            if sum(len(ids) for spec in specs for ids in spec.lists.values()) > _ITEMS:
                message = f"holds more than {_ITEMS} things in its lists: make several files of it"
                self.faults.append(Fault(self.name, 0, 0, message))
                break
        if self.faults:
            # What the documents share may be at fault once for each of them.
            raise Unreadable(_most(sorted(set(self.faults), key=_by_place)))
        return specs

    def _base(self, node: yaml.Node, walk: Walk) -> tuple[Spec, ...]:
        """Return the assembly that a document starts from, if it starts from one."""
        at = scalar_at(node, "starts_from")
        written = at.value.strip() if at else ""
        if at is None or not written or plain_word(written) in STAND_INS:
            return ()
        try:
            return (self._start(written),)
        except Refused as reason:
            walk.fault(at, str(reason), "starts_from")
        except Unreadable as error:
            for fault in error.faults[:_FAULTS_OF_A_BASE]:
                walk.fault(at, f"'{written}' cannot be read: {fault}", "starts_from")
            left = len(error.faults) - _FAULTS_OF_A_BASE
            if left > 0:
                walk.fault(at, f"'{written}' has {left} more faults", "starts_from")
        return ()

    def _start(self, written: str) -> Spec:
        """Read the file that a document starts from. Raises Refused and Unreadable."""
        if not self.chain:
            raise Refused("only a spec that stands in a file can start from another")
        path = locate(written, self.chain[-1])
        if path in self.chain:
            raise Refused(f"'{written}' starts from this file, directly or through others")
        if len(self.chain) > _CHAIN:
            raise Refused(f"more than {_CHAIN} files start from one another")
        if path not in self.bases:
            self.bases[path] = []  # until it has been read, which is tried once
            name = os.path.normpath(Path(self.name).parent / written)
            base = _File(read_text(path, name), name, (*self.chain, path), self.bases)
            self.bases[path] = base.specs()
        specs = self.bases[path]
        if not specs:
            raise Refused(f"'{written}' cannot be read, as said where it is first started from")
        if len(specs) > 1:
            names = "; ".join(spec.name for spec in specs)
            raise Refused(f"'{written}' holds {len(specs)} assemblies, and one is wanted: {names}")
        return specs[0]


def _blank(node: yaml.Node) -> bool:
    return isinstance(node, yaml.ScalarNode) and node.value.strip() == ""


def _most(faults: list[Fault]) -> list[Fault]:
    """Return as many faults as somebody may still read, and how many there are beside them."""
    left = len(faults) - _FAULTS
    if left <= 0:
        return faults
    return [*faults[:_FAULTS], Fault(faults[0].file, 0, 0, f"has {left} more faults")]


def _by_place(fault: Fault) -> tuple[int, int, str]:
    return fault.line, fault.column, fault.message


def _level_unit(spec: Spec) -> str:
    return spec.text("levels.unit")


def _document(node: yaml.Node, walk: Walk, level_unit: str) -> Spec:
    if not isinstance(node, yaml.MappingNode):
        message = "is not a spec: a spec is a list of keys and begins with 'vocabulary: 1'"
        walk.fault(node, message, "")
        return Spec(walk.file, "", "", {}, {}, {}, {})
    plain = walk.document(node, level_unit)
    if not walk.sound or "vocabulary" not in walk.values:
        # Only a document with something wrong pays for the validator.
        from checker.reading.schema_faults import schema_faults

        walk.faults += schema_faults(plain, walk)
        if not walk.faults:
            walk.fault(node, "does not obey the vocabulary, though no one key could be named", "")
    paper = walk.values["paper"].value if "paper" in walk.values else ""
    return Spec(
        walk.file,
        "",
        str(paper or ""),
        walk.values,
        walk.lists,
        walk.places,
        walk.words,
        tuple(walk.notes),
    )


def _name(spec: Spec, index: int) -> str:
    job = [spec.text("job.name"), spec.text("job.lot")]
    house = [spec.text("id") or ", lot ".join(filter(None, job)), spec.text("assembly")]
    return ", ".join(filter(None, house)) or f"assembly {index + 1}"


def find_specs(paths: list[str], *, specs_only: bool = False) -> Iterator[tuple[Path | None, str]]:
    """Yield every spec file among files, folders and `-`, and a note for what is left alone.

    Yields (path, "") for a spec and (path, note) for a file that is no spec. Files come in
    the order of their names, folders are searched all the way down; links to folders are not
    followed. A file that is named itself is taken for a spec, unless `specs_only` says to leave
    alone what does not claim to be one.
    """
    for given in paths:
        if given == "-":
            yield None, ""
        elif _is_folder(Path(given)):
            for found in sorted(Path(given).rglob("*")):
                if found.suffix.lower() in SUFFIXES and not _is_folder(found):
                    yield from _look_at(found)
        elif specs_only:
            yield from _look_at(Path(given))
        else:
            yield Path(given), ""


def _is_folder(path: Path) -> bool:
    try:
        return path.is_dir()
    except OSError:
        # What cannot be looked at is said when it is opened.
        return False


def _look_at(path: Path) -> Iterator[tuple[Path, str]]:
    if path.name != FENCE:
        claims = _claims_to_be_spec(path)
        yield path, "" if claims else "is no spec (no 'vocabulary:'), left alone"


# With a mark of its encoding before it, and at any break of lines that YAML knows.
_CLAIM = re.compile(rb"""(?:\A(?:\xef\xbb\xbf)?|[\r\n])["']?vocabulary["']?[ \t]*:""")


def _claims_to_be_spec(path: Path) -> bool:
    try:
        if not path.is_file():
            return True
        with path.open("rb") as stream:
            head = stream.read(200_000)
    except OSError:
        return True
    # Anything that is not plain text is tried as a spec, so that the reader says what is wrong.
    return bool(_CLAIM.search(head)) or b"\0" in head
