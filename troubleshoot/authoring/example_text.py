"""An example as it stands on a card, to be put there."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from troubleshoot.knowledge.formatting import written_in_list
from troubleshoot.knowledge.forms.declared import form_of
from troubleshoot.knowledge.model import Example


def example_lines(example: Example) -> list[str]:
    """The lines of an example under `examples` of its card."""
    data: dict[str, Any] = {"name": example.name, "names-it": example.names_it}
    if example.at_least is not None:
        data["at-least"] = f"{round(100 * example.at_least)} %"
    data |= {"complaint": example.complaint, "unit": dict(example.unit)}
    data |= {"conditions": dict(example.conditions)}
    data["readings"] = [row_as_written(row) for row in example.readings]
    told = {key: value for key, value in data.items() if value not in (None, {})}
    return written_in_list(form_of(Example), told)


def row_as_written(row: Mapping[str, object]) -> dict[str, object]:
    """A reading as its form has it: an outcome is a list."""
    said = row.get("outcome")
    return {**row, "outcome": [said]} if isinstance(said, str) else dict(row)
