"""Drawing a new scenario from the rule base: a fault, its picture, a unit, and what it reads.

Outcomes are drawn from the card's own rows, numbers are found that the limits call by those words,
and the case is kept only if its numbers can be true together and an expert's way that is short
enough to copy finds the fault.
The same seed draws the same case.
"""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any, Final

from troubleshoot.knowledge.model import Complaint, Fault, Knowledge, TypicalUnit
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.building import build_scenario
from troubleshoot.practice.consistency import consistency_problems
from troubleshoot.practice.drawn_readings import DrawnReadings
from troubleshoot.practice.drawn_way import short_way
from troubleshoot.practice.drawn_words import LIES, MISNOTED, NOT_TODAY, PLACES
from troubleshoot.practice.expert import ExpertPath, expert_path
from troubleshoot.practice.realistic import text_showing
from troubleshoot.practice.scenario import Scenario
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.hypotheses import Hypothesis
from troubleshoot.reasoning.unit.equipment import read_unit

MOST_TRIES: Final = 40
MOST_BLOCKED: Final = 3
"""So many tests are tried as the one that cannot be done."""
HARDEST: Final = 3
STILL_FOUND: Final = 0.5
"""The least chance at which the expert's first cause counts as found."""


class NothingDrawn(ValueError):
    """No case could be drawn; the message says why."""


def draw_scenario(
    reasoner: Reasoner, of: str, seed: int, difficulty: int = 1
) -> tuple[Scenario, ExpertPath]:
    """A new scenario of a subsystem, or of one fault, and the expert's way through it.

    Raises NothingDrawn.
    """
    dice = random.Random(f"{of} {seed} {difficulty}")
    faults = reasoner.knowledge.faults
    subsystems = sorted({fault.subsystem for fault in faults.values()})
    if of not in (*subsystems, *faults):
        told = f"{of} is no subsystem and no fault; one of {', '.join(subsystems)}"
        raise NothingDrawn(told)
    for _ in range(MOST_TRIES):
        drawn = _drawn(reasoner, of, seed, difficulty, dice)
        if drawn is None:
            continue
        expert = _found(reasoner, drawn)
        if expert is not None and difficulty > 1:
            harder = _harder(reasoner, drawn, expert, difficulty, dice)
            drawn, expert = harder if harder is not None else (drawn, None)
        short = None if expert is None else short_way(reasoner, drawn, expert)
        if short is not None:
            return _with_stop(*short), short[1]
    raise NothingDrawn(f"no case of {of} came out with seed {seed}; try another seed")


def _drawn(
    reasoner: Reasoner, of: str, seed: int, difficulty: int, dice: random.Random
) -> Scenario | None:
    """One trial: None where this unit has no such fault, or the numbers do not hold together."""
    knowledge = reasoner.knowledge
    units = sorted(knowledge.typical_units.values(), key=lambda typical: typical.id)
    typical = [unit for unit in units if unit.serves == "practice"]
    if not typical:
        raise NothingDrawn("no unit for practice stands in the rules; add one under units/")
    drawn_on = dice.choice(typical)
    unit = read_unit(knowledge, drawn_on.unit, drawn_on.own_record)
    hypotheses, _ = reasoner.hypotheses(unit)
    listed = _complaints(knowledge)
    able = [
        hypothesis
        for hypothesis in hypotheses.causes
        if of in (hypothesis.fault.subsystem, hypothesis.fault.id) and hypothesis.fault.id in listed
    ]
    if not able:
        return None
    truth = dice.choices(able, [hypothesis.prior for hypothesis in able])[0]
    complaint = dice.choice(listed[truth.fault.id])
    conditions = _conditions(knowledge, truth.fault.subsystem, dice)
    readings = DrawnReadings(
        reasoner, drawn_on.unit, conditions, complaint.id, truth, dice
    ).readings()
    data = _data(truth, complaint, drawn_on, conditions, readings)
    data |= {
        "scenario": f"drawn-{of}-{difficulty}-{seed}",
        "title": f"Drawn case {seed}, {dice.choice(PLACES)}",
        "difficulty": difficulty,
    }
    scenario = build_scenario(knowledge, data)
    return None if any(consistency_problems(reasoner, scenario)) else scenario


def _conditions(knowledge: Knowledge, subsystem: str, dice: random.Random) -> Mapping[str, str]:
    """The weather of a call, and what else holds: the day of this subsystem, or of all others."""
    own = [day for day in knowledge.days if subsystem in day.subsystems]
    others = [day for day in knowledge.days if not day.subsystems]
    conditions = {}
    for day in (own or others)[:1]:
        for name, (low, high) in day.conditions.items():
            number = low if low == high else dice.randint(low, high)
            conditions[name] = f"{number} {knowledge.quantities[name].unit}"
    return conditions


def _complaints(knowledge: Knowledge) -> Mapping[str, list[Complaint]]:
    """Fault -> the complaints that list it."""
    listed: dict[str, list[Complaint]] = {}
    for complaint in knowledge.complaints.values():
        for fault in complaint.faults:
            listed.setdefault(fault, []).append(complaint)
    return listed


def _data(
    truth: Hypothesis,
    complaint: Complaint,
    drawn_on: TypicalUnit,
    conditions: Mapping[str, str],
    readings: list[dict[str, object]],
) -> dict[str, Any]:
    fault = truth.fault
    if complaint.all_clear is not None:
        cleared: dict[str, object] = {"test": complaint.all_clear, "outcome": ["cleared"]}
        readings = [cleared, *readings]
    where = {} if truth.at is None else {"at": str(truth.at)}
    return {
        "subsystem": fault.subsystem,
        "call": complaint.says,
        "complaint": complaint.id,
        "unit": dict(drawn_on.unit),
        "own-record": dict(drawn_on.own_record),
        "conditions": dict(conditions),
        "readings": readings,
        "truth": {
            "faults": [{"fault": fault.id, **where}],
            "repair": fault.repair.what,
            "proof": "; ".join(proof.text for proof in fault.proof) or "The complaint is gone.",
        },
        "teaches": _teaches(fault),
        "moves": True,
    }


def _teaches(fault: Fault) -> str:
    return f"What brings it about: {fault.why}" if fault.why else f"If it is left: {fault.if_left}"


def _found(reasoner: Reasoner, scenario: Scenario) -> ExpertPath | None:
    """The expert's way, where it finds the fault; None where it does not."""
    expert = expert_path(reasoner, scenario, AnsweringUnit(reasoner, scenario))
    (true,) = scenario.truth.faults
    first = expert.conclusions.causes[0]
    found = first.fault.id == true.fault and first.at == true.at
    sure = first.probability >= STILL_FOUND or expert.ending == "stopped"
    return expert if found and sure else None


def _with_stop(scenario: Scenario, expert: ExpertPath) -> Scenario:
    """Where a STOP for the whole job ends the expert's way, obeying it is part of the truth."""
    stop = expert.account["stop"]
    if not isinstance(stop, dict) or stop["scope"] != "whole-job":
        return scenario
    return replace(scenario, truth=replace(scenario.truth, stop=str(stop["id"])))


def _harder(
    reasoner: Reasoner,
    scenario: Scenario,
    expert: ExpertPath,
    difficulty: int,
    dice: random.Random,
) -> tuple[Scenario, ExpertPath] | None:
    """The case with one of the card's tests out of reach (2), and one that misleads as well (3)."""
    listed = {shown.test for shown in scenario.listed}
    taken = [move.test for move in expert.tests if move.test in listed]
    dice.shuffle(taken)
    for blocked in taken[:MOST_BLOCKED]:
        harder: Scenario | None = replace(scenario, unavailable={blocked: dice.choice(NOT_TODAY)})
        if difficulty >= HARDEST and harder is not None:
            harder = _misleading(reasoner, harder, [t for t in taken if t != blocked], dice)
        still = None if harder is None else _found(reasoner, harder)
        if harder is not None and still is not None:
            return harder, still
    return None


def _misleading(
    reasoner: Reasoner, scenario: Scenario, taken: Sequence[str], dice: random.Random
) -> Scenario | None:
    """The case with the first reading of one test wrong, and right only when taken again."""
    unit = AnsweringUnit(reasoner, scenario)
    for index, shown in enumerate(scenario.listed):
        test = reasoner.knowledge.tests[shown.test]
        wrong = [o.id for o in test.outcomes if o.id not in (*test.healthy, *shown.outcomes)]
        if shown.test not in taken or test.kind == "step" or not wrong:
            continue
        outcome, place = dice.choice(wrong), shown.places[0]
        text = text_showing(reasoner.knowledge, unit.sound, unit.inputs, test, place, outcome)
        if text == shown.text:
            continue
        what: dict[str, Any] = {
            "text": text or None,
            "outcomes": () if text else (outcome,),
            "valid": False,
        }
        lie = replace(shown, says="", why=dice.choice(LIES) if text else MISNOTED, **what)
        answers = list(scenario.case.answers)
        answers.insert(index, replace(answers[index], **what))
        listed = (*scenario.listed[:index], lie, *scenario.listed[index:])
        case = replace(scenario.case, answers=tuple(answers))
        return replace(scenario, listed=listed, case=case)
    return None
