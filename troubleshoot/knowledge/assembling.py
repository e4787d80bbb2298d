"""The rule files of all folders -> the whole rule base."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Any, Final, get_args

from troubleshoot.knowledge.building import build, build_record
from troubleshoot.knowledge.forms import LISTINGS, ONE_A_FILE, Listing, has_source
from troubleshoot.knowledge.forms.pieces import SIGNED
from troubleshoot.knowledge.model import (
    Complaint,
    Fault,
    Hazard,
    HazardKind,
    Knowledge,
    Subsystem,
    Test,
)
from troubleshoot.knowledge.vocabulary import GRADES, HowCommon

_COMMON: Final = get_args(HowCommon)


def build_knowledge(files: Iterable[tuple[str, Any]], digest: str = "") -> Knowledge:
    """Build the whole rule base from (kind, plain data that passed its form), in file order."""
    lists = [*ONE_A_FILE.values(), *(each for lists in LISTINGS.values() for each in lists)]
    kept: dict[str, Any] = {each.kept: {} if each.called else [] for each in lists}
    kept |= {"aliases": {}, "retired": set(), "signed": [], "settled_first": [], "words": {}}
    kept |= {"alike": {}, "place_words": {}, "idle": [], "loose": [], "manner": []}
    kept |= {"as_it_should_be": []}
    for kind, data in files:
        for listing in LISTINGS.get(kind, ()):
            _keep(kept[listing.kept], listing, data)
        kept["settled_first"] += data.get("settled-first", ())
        if kind == "words":
            kept["words"] = {**data["words"], **kept["words"]}
        if kind == "synonyms":
            _add(kept["alike"], data["alike"])
            _add(kept["place_words"], data.get("places", {}))
            kept["idle"] += data.get("idle", ())
            kept["loose"] += data.get("loose", ())
            kept["manner"] += data.get("manner", ())
            kept["as_it_should_be"] += data.get("as-it-should-be", ())
        if kind in ONE_A_FILE:
            alone = ONE_A_FILE[kind]
            kept[alone.kept][data[alone.key]] = build_record(alone.item, data)
        elif kind == "retired":
            kept["retired"] |= set(data.get("retired", ()))
            kept["aliases"] |= dict(_aliases(data))
            kept["signed"] += build(SIGNED.shape, data.get("signed", ()))
    kept = {key: tuple(each) if isinstance(each, list) else each for key, each in kept.items()}
    kept["complaints"] = _brought(kept["complaints"], kept["faults"])
    kept["tests"] = _in_subsystems(kept["tests"], kept["subsystems"])
    kept["hazards"] = _by_kind(kept["hazards"], kept["hazard_kinds"])
    words = kept["words"]
    kept["tests"] = {name: _spoken_test(test, words) for name, test in kept["tests"].items()}
    for kind in ("hazards", "quantities"):
        kept[kind] = {
            name: replace(each, spoken=words.get(name, name)) for name, each in kept[kind].items()
        }
    return Knowledge(**kept | {"retired": frozenset(kept["retired"])}, digest=digest)


def _add(kept: dict[str, tuple[str, ...]], more: Mapping[str, Iterable[str]]) -> None:
    """Add what people say for names that other files may have words for as well."""
    for name, others in more.items():
        kept[name] = (*kept.get(name, ()), *others)


def _keep(kept: Any, listing: Listing, data: Any) -> None:
    """Add the entries of one file: of its area or kind where it has one, and of its source where
    they name none.
    """
    more = {key: data[key] for key in ("area", "kind") if key in data}
    default = {"source": data["source"]} if "source" in data and has_source(listing) else {}
    for item in ({**default, **each} for each in data.get(listing.key, ())):
        if listing.kept == "sources":
            kept[item["id"]] = item["published"]
        elif listing.called:
            kept[item["id"]] = build_record(listing.item, item, **more)
        else:
            kept.append(build_record(listing.item, item))


def _in_subsystems(
    tests: Mapping[str, Test], subsystems: Mapping[str, Subsystem]
) -> dict[str, Test]:
    """Tests with the subsystem that their area is part of; what nothing declares is its own."""
    of = {area: each.id for each in subsystems.values() for area in each.areas}
    return {
        name: replace(test, subsystem=of.get(test.area, test.area)) for name, test in tests.items()
    }


def _by_kind(hazards: Mapping[str, Hazard], kinds: Mapping[str, HazardKind]) -> dict[str, Hazard]:
    """Hazards in the order of their kinds, then as they were read; those of no kind come last."""
    place = {kind: number for number, kind in enumerate(kinds)}
    ordered = sorted(hazards.values(), key=lambda hazard: place.get(hazard.kind, len(place)))
    return {hazard.id: hazard for hazard in ordered}


def _spoken_test(test: Test, words: Mapping[str, str]) -> Test:
    """A test whose outcomes have their words."""
    own = (replace(each, spoken=words.get(each.id, each.id)) for each in test.outcomes)
    return replace(test, outcomes=tuple(own))


def _brought(
    complaints: Mapping[str, Complaint], faults: Mapping[str, Fault]
) -> dict[str, Complaint]:
    """Complaints with what the cards say of themselves, the likeliest first."""
    commonest = sorted(faults.values(), key=lambda fault: _COMMON.index(fault.how_common))
    found = {}
    for name, complaint in complaints.items():
        grades = {fault.id: fault.calls[name] for fault in commonest if name in fault.calls}
        grades |= complaint.brought_by
        likeliest = sorted(grades.items(), key=lambda each: GRADES.index(each[1]))
        found[name] = replace(complaint, brought_by=dict(likeliest))
    return found


def _aliases(data: Any) -> Iterator[tuple[tuple[str, str], tuple[str, str]]]:
    """Yield ((old test, old outcome), (test, outcome)) for findings written under old names."""
    for item in data.get("aliases", ()):
        (old,) = item["from"].items()
        ((test, outcomes),) = item["to"].items()
        yield old, (test, outcomes[0])
