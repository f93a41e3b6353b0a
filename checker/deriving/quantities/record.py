"""The record: where what was measured is not what was designed."""

from __future__ import annotations

from checker.deriving.quantity import quantity


@quantity(
    "record.differences",
    title="what was measured and is not as designed",
    kind="text",
    needs=("measured",),
    formula="measured values further from the designed ones than their readings can be trusted",
    source="definition",
)
def differences(found: tuple[str, ...]) -> str:
    """Return every measured value that differs from its design, or "none"."""
    return "; ".join(found) or "none"
