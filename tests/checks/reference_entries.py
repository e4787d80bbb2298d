"""Reading the file of reference values, and comparing what we compute with what it expects."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from troubleshoot.quantities.catalogue import answer

REFERENCE = Path(__file__).parent / "reference" / "values.yaml"

UNIT_WORDS = {
    "degF": "F",
    "degC": "C",
    "degF_difference": "F",
    "-": "",
    "in w.c.": "in wc",
    "megohm": "Mohm",
    "% dry": "%",
    "ft3 per turn": "ft3",
}


@dataclass(frozen=True)
class Entry:
    """One reference value: what goes in, what must come out, how close, and who says so."""

    id: str
    kind: str
    quantity: str
    inputs: Mapping[str, Mapping[str, Any]]
    expected: Any
    tolerance: Any
    source: str
    confirmed: str

    @property
    def from_memory(self) -> bool:
        """Say whether nobody has seen the source: then the value is a lead, never a check."""
        return self.confirmed.startswith("from memory")

    def number(self, name: str) -> float:
        """Return one input as a number."""
        return float(self.inputs[name]["value"])

    def typed(self, name: str) -> str:
        """Return one input as a person would type it, with its unit."""
        given = self.inputs[name]
        unit = str(given["unit"])
        return f"{given['value']} {UNIT_WORDS.get(unit, unit)}".strip()

    def pair(self, name: str) -> tuple[str, str]:
        """Return a dry bulb and a wet bulb written as 80/67, each typed with its unit."""
        dry, wet = str(self.inputs[name]["value"]).split("/")
        return f"{dry} F", f"{wet} F"


@cache
def entries() -> Mapping[str, Entry]:
    """Return the whole reference file by id."""
    with REFERENCE.open(encoding="utf-8") as file:
        raw = yaml.load(file, yaml.CSafeLoader)["values"]
    return {
        one["id"]: Entry(
            id=one["id"],
            kind=one["kind"],
            quantity=one["quantity"],
            inputs=one["inputs"],
            expected=one["expected"]["value"],
            tolerance=one["tolerance"],
            source=one["source"],
            confirmed=one["confirmed"],
        )
        for one in raw
    }


def compute(name: str, **typed: str) -> Mapping[str, Any]:
    """Return the results of a named calculation; `_` in a keyword stands for the hyphen."""
    pairs = [(key.replace("_", "-"), text) for key, text in typed.items()]
    return {result.name: result.figure for result in answer(name, pairs).results}


def allowed(tolerance: Any, key: str | None, wanted: float) -> float:
    """Return by how much a number may differ from the one wanted."""
    if tolerance == "exact":
        return 1e-9 * max(1.0, abs(wanted))
    words = tolerance.get(key, tolerance) if key else tolerance
    if isinstance(words, str):
        how, _, size = words.partition(" ")
        words = {how: float(size)}
    ((how, size),) = words.items()
    return float(size if how == "abs" else size * abs(wanted))


def differences(entry: Entry, got: Any) -> list[str]:
    """Return one line for each figure that misses; `got` may hold a part of what is expected."""
    if isinstance(got, Mapping):
        assert got, f"{entry.id}: nothing was computed"
        pairs = [(str(key), figure, entry.expected[key]) for key, figure in got.items()]
    else:
        pairs = [("", got, entry.expected)]
    lines = []
    for key, figure, wanted in pairs:
        many = isinstance(wanted, Sequence) and not isinstance(wanted, str)
        couples = zip(figure, wanted, strict=True) if many else [(figure, wanted)]
        for one, other in couples:
            if isinstance(other, str) or isinstance(one, str):
                near = one == other
            else:
                near = abs(one - other) <= allowed(entry.tolerance, key, other)
            if not near:
                lines.append(f"{key or entry.quantity}: computed {one}, {entry.source}: {other}")
    return lines
