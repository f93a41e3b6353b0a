"""Where the rule book and the shared files are, in a checkout or in the installed package."""

from __future__ import annotations

import functools
import json
import re
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import yaml

PACKAGE = Path(__file__).parent


def data_dir(name: str) -> Path:
    """Return the folder `name` ("rules" or "shared").

    A checkout, also one installed with `pip install -e`, uses the folder beside the package. An
    installed wheel carries its own copy inside the package. Raises FileNotFoundError when neither
    is there.
    """
    checkout = PACKAGE.parent
    if (checkout / "pyproject.toml").is_file() and (checkout / name).is_dir():
        return checkout / name
    installed = PACKAGE / "_data" / name
    if installed.is_dir():
        return installed
    raise FileNotFoundError(
        f"this installation of belowgrade has no folder {name!r}: "
        f"looked for {checkout / name} and {installed}"
    )


@functools.cache
def load_json(name: str) -> dict[str, Any]:
    """Return the JSON file `name` of shared/, such as "spec.schema.json".

    Every caller gets the same object and must not change it. Raises OSError when the file is not
    there, ValueError when it is not JSON or holds something other than a mapping.
    """
    content = json.loads((data_dir("shared") / name).read_text(encoding="utf-8"))
    return _mapping(content, f"shared/{name}")


@functools.cache
def load_table(name: str) -> dict[str, Any]:
    """Return the table shared/tables/<name>.yaml; `name` has no ending, as in "pipes".

    Values that are numbers, yes/no, true/false or null are read as such; everything else, and
    every key, stays the text that was written, so `1:48` is not 108 and `2031-04-11` not a date.
    Every caller gets the same object and must not change it. Raises OSError when the file is not
    there, ValueError when a key stands twice in one mapping or the file holds no mapping.
    """
    # PyYAML takes 25 ms to load, which a command that needs no table should not pay.
    import yaml

    text = (data_dir("shared") / "tables" / f"{name}.yaml").read_text(encoding="utf-8")
    return _mapping(yaml.load(text, _table_loader()), f"shared/tables/{name}.yaml")


def _mapping(content: object, name: str) -> dict[str, Any]:
    if not isinstance(content, dict):
        raise ValueError(f"{name} must hold a mapping")
    return content


# In this order, by the first letters a text of the kind can have.
_PLAIN_KINDS = (
    ("bool", r"(?:yes|no|true|false)", "yntf"),
    ("null", r"(?:null|~|)", ["n", "~", ""]),
    ("int", r"[-+]?(?:0|[1-9][0-9]*)", "-+0123456789"),
    ("float", r"[-+]?(?:[0-9]+\.[0-9]*|\.[0-9]+|[0-9]+(?=e))(?:e[-+]?[0-9]+)?", "-+.0123456789"),
)


@functools.cache
def _table_loader() -> type[yaml.SafeLoader]:
    import yaml

    base: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

    class TableLoader(base):  # type: ignore[misc]
        """YAML without the guesses of YAML 1.1, and without silent second keys."""

    def construct_mapping(loader: Any, node: yaml.MappingNode) -> dict[str, Any]:
        mapping: dict[str, Any] = {}
        for key, value in node.value:
            if key.value in mapping:
                line = key.start_mark.line + 1
                raise ValueError(f"line {line}: {key.value} stands twice in one mapping")
            mapping[key.value] = loader.construct_object(value, deep=True)
        return mapping

    TableLoader.yaml_implicit_resolvers = {}
    for kind, pattern, first in _PLAIN_KINDS:
        TableLoader.add_implicit_resolver(
            f"tag:yaml.org,2002:{kind}", re.compile(f"^{pattern}$"), list(first)
        )
    TableLoader.add_constructor("tag:yaml.org,2002:map", construct_mapping)
    return TableLoader
