"""What several tests share: a spec from a mapping, as rule examples are written."""

from __future__ import annotations

from typing import Any

import yaml

from checker.reading.reader import read_specs
from checker.reading.spec import Spec


def spec_of(mapping: dict[str, Any], **header: str) -> Spec:
    """Return the spec that a mapping of keys describes, read the way a file is read."""
    document = {"vocabulary": "1", **header, **mapping}
    text = yaml.safe_dump(document, sort_keys=False, allow_unicode=True)
    (spec,) = read_specs(text, "example.yaml")
    return spec
