"""A single file of hazards, as bases had it before -> one file a kind.

Kinds are told by the ids that a rule base already knows. A file with a hazard of which nobody has
said what kind it is stays whole: it loads as it always did.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from troubleshoot.knowledge.comments import top_comments
from troubleshoot.knowledge.formatting import written
from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.reading_forms import read_form


def kinds_of(knowledge: Knowledge) -> dict[str, str]:
    """What kind each hazard is of, where its file says so."""
    return {hazard.id: hazard.kind for hazard in knowledge.hazards.values() if hazard.kind}


def split_by_kind(text: str, kinds: Mapping[str, str]) -> dict[str, str]:
    """A well-formed file of hazards as files by their kind; none where it has to stay whole.

    Within a kind the order stays. Comments at the top go with the first of them.
    """
    data, _ = read_form(FORMS["hazards"], read_located(text, "the file"), "the file")
    if "kind" in data or not all(hazard["id"] in kinds for hazard in data["hazards"]):
        return {}
    source = {"source": data["source"]} if "source" in data else {}
    parts: dict[str, list[Any]] = {}
    for hazard in data["hazards"]:
        parts.setdefault(kinds[hazard["id"]], []).append({**source, **hazard})
    comments = top_comments(text)
    files = {}
    for kind, hazards in parts.items():
        whole = {"format": data["format"], "kind": kind, "hazards": hazards}
        files[kind] = written("hazards", whole, comments)
        comments = []
    return files
