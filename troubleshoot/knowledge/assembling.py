"""The rule files of all folders -> the whole rule base."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from troubleshoot.knowledge.building import build, build_record
from troubleshoot.knowledge.forms import FORMS, LISTINGS, Listing, has_source
from troubleshoot.knowledge.model import Knowledge


def build_knowledge(files: Iterable[tuple[str, Any]], digest: str = "") -> Knowledge:
    """Build the whole rule base from (kind, plain data that passed its form), in file order."""
    kept: dict[str, Any] = {listing.kept: {} for each in LISTINGS.values() for listing in each}
    kept |= {"faults": {}, "implications": [], "aliases": {}, "retired": set(), "signed": []}
    for kind, data in files:
        for listing in LISTINGS.get(kind, ()):
            _keep(kept[listing.kept], listing, data)
        if kind == "fault":
            fault = build_record(FORMS["fault"], data)
            kept["faults"][fault.id] = fault
        elif kind == "retired":
            kept["retired"] |= set(data.get("retired", ()))
            kept["aliases"] |= dict(_aliases(data))
            signed = FORMS["retired"].field("signed")
            kept["signed"] += build(signed.shape, data.get("signed", ())) if signed else ()
    for name in ("implications", "signed"):
        kept[name] = tuple(kept[name])
    return Knowledge(**kept | {"retired": frozenset(kept["retired"])}, digest=digest)


def _keep(kept: Any, listing: Listing, data: Any) -> None:
    """Add the entries of one file: of its area where it has one, and of its source where they
    name none.
    """
    more = {"area": data["area"]} if "area" in data else {}
    default = {"source": data["source"]} if "source" in data and has_source(listing) else {}
    for item in ({**default, **each} for each in data.get(listing.key, ())):
        if listing.kept == "sources":
            kept[item["id"]] = item["published"]
        elif listing.called:
            kept[item["id"]] = build_record(listing.item, item, **more)
        else:
            kept.append(build_record(listing.item, item))


def _aliases(data: Any) -> Iterator[tuple[tuple[str, str], tuple[str, str]]]:
    """Yield ((old test, old outcome), (test, outcome)) for findings written under old names."""
    for item in data.get("aliases", ()):
        (old,) = item["from"].items()
        ((test, outcomes),) = item["to"].items()
        yield old, (test, outcomes[0])
