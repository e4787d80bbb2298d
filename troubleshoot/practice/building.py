"""Plain data of a scenario file -> the scenario, and the case files it makes."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.scenario import Scenario, Shown, TrueFault, Truth, WorkedOut
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place, parse_place
from troubleshoot.visit.cases.file import read_case

_OF_A_READING = ("test", "at", "text", "outcome", "valid", "instrument", "conditions")


def case_data(data: Any) -> dict[str, object]:
    """The case file that a scenario's listed readings make."""
    return {
        "unit": data["unit"],
        "own-record": data.get("own-record", {}),
        "conditions": data.get("conditions", {}),
        "complaint": data["complaint"],
        "readings": [_reading(reading) for reading in data["readings"]],
    }


def proof_case_data(data: Any) -> dict[str, object]:
    """The case file that the readings after the repair make."""
    readings = data["truth"].get("proof-readings", [])
    return {**case_data(data), "readings": [_reading(reading) for reading in readings]}


def _reading(data: Mapping[str, object]) -> dict[str, object]:
    return {key: data[key] for key in _OF_A_READING if key in data}


def build_scenario(knowledge: Knowledge, data: Any) -> Scenario:
    """Build a scenario from data that passed its form and whose case and places can be read."""
    plain = case_data(data)
    case = read_case(knowledge, plain)
    listed = tuple(
        shown_as(answer, reading.get("says", ""), reading.get("why", ""))
        for answer, reading in zip(case.answers, data["readings"], strict=True)
    )
    return Scenario(
        id=data["scenario"],
        title=data["title"],
        subsystem=data["subsystem"],
        difficulty=data["difficulty"],
        week=data.get("week"),
        reaching_in=data.get("reaching-in", ""),
        season=data.get("season", ""),
        moves=data.get("moves", False),
        taught_by=tuple(data.get("taught-by", ())),
        way=tuple(
            (each["test"], _place_of(knowledge.tests[each["test"]].per, case.unit, each))
            for each in data.get("way", ())
        ),
        call=data["call"],
        complaint=data["complaint"],
        plain=plain,
        case=case,
        listed=listed,
        truth=_truth(knowledge, case.unit, data["truth"]),
        teaches=data["teaches"],
        unavailable={each["test"]: each["why"] for each in data.get("unavailable", ())},
        works_out=tuple(
            WorkedOut(each["quantity"], each.get("at"), each["value"])
            for each in data.get("works-out", ())
        ),
    )


def shown_as(answer: Answer, says: str = "", why: str = "") -> Shown:
    """An answer of a case file as the unit shows it."""
    return Shown(
        answer.test,
        answer.places,
        answer.shared,
        answer.text,
        answer.outcomes,
        says,
        answer.valid,
        why,
        answer.instrument,
        answer.conditions,
    )


def _truth(knowledge: Knowledge, unit: Unit, data: Any) -> Truth:
    return Truth(
        faults=tuple(
            TrueFault(each["fault"], _at(knowledge, unit, each)) for each in data["faults"]
        ),
        behind=tuple(data.get("behind", ())),
        repair=data["repair"],
        proof=data["proof"],
        proof_readings=tuple(_reading(reading) for reading in data.get("proof-readings", ())),
        stop=data.get("stop"),
    )


def _at(knowledge: Knowledge, unit: Unit, data: Any) -> Place | None:
    """Where a true fault is; None where it is the whole unit's, or might be at several places."""
    return _place_of(knowledge.faults[data["fault"]].per, unit, data)


def _place_of(kind: str | None, unit: Unit, data: Any) -> Place | None:
    """The place that is said, or the only one of its kind; else None."""
    places = unit.layout.places(kind)
    if "at" in data and kind is not None:
        return parse_place(data["at"], kind, unit.layout)[0]
    return places[0] if len(places) == 1 else None
