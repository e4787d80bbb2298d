"""What a card costs and brings: the same visits led by the rules with it and by those without.

By each call that it brings, units with other faults are visited twice, with the same dice: how many
minutes a visit takes longer, and how many first calls become others, right or wrong. Units with the
card's own fault are visited with it.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from statistics import fmean

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Complaint, Fault, Knowledge
from troubleshoot.measure.simulated import SimulatedVisit, Visit
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.hypotheses import Hypothesis
from troubleshoot.reasoning.unit.equipment import read_unit


@frozen
class CostOnCall:
    """What a card costs on one call, on one kind of unit.

    `minutes`: longer on the mean, over visits to other faults; `changed`: of these the first calls
    that became others, of which `better` are right now and `worse` were; `own_right`: of as many
    visits to its own fault those whose first call is right.
    """

    call: Complaint
    about: str
    visits: int
    minutes: float
    changed: int
    better: int
    worse: int
    own_right: int


def cost_of_card(knowledge: Knowledge, card: Fault, visits: int, seed: int) -> Iterator[CostOnCall]:
    """The cost on each call that a card brings, a row for each kind of unit that may have it."""
    reasoners = Reasoner(without(knowledge, card)), Reasoner(knowledge)
    for typical in knowledge.typical_units.values():
        unit = read_unit(knowledge, typical.unit)
        if typical.serves != "measuring" or not unit.allows(card.exists_when):
            continue
        for name, grade in card.calls.items():
            if grade != "never":
                call = knowledge.complaints[name]
                found = _on_call(reasoners, typical.unit, card, call, visits, seed)
                if found is not None:
                    yield replace(found, about=typical.about)


def without(knowledge: Knowledge, card: Fault) -> Knowledge:
    """The rules as they were before a card: nothing names it any more."""
    faults = {
        name: replace(
            fault, behind=_but(fault.behind, card), look_alikes=_but(fault.look_alikes, card)
        )
        for name, fault in knowledge.faults.items()
        if name != card.id
    }
    complaints = {
        name: replace(call, brought_by={f: g for f, g in call.brought_by.items() if f != card.id})
        for name, call in knowledge.complaints.items()
    }
    digest = f"{knowledge.digest} without {card.id}"
    return replace(knowledge, faults=faults, complaints=complaints, digest=digest)


def _but(names: Sequence[str], card: Fault) -> tuple[str, ...]:
    return tuple(name for name in names if name != card.id)


def _on_call(
    reasoners: tuple[Reasoner, Reasoner],
    facts: Mapping[str, object],
    card: Fault,
    call: Complaint,
    visits: int,
    seed: int,
) -> CostOnCall | None:
    """The cost on one call; None where nothing else brings it on this unit, or the card cannot."""
    before, after = reasoners
    others = _bringing(before, facts, call)
    own = [each for each in _bringing(after, facts, call) if each.fault.id == card.id]
    if not others or not own:
        return None
    dice = random.Random(f"{seed} {call.id}")
    drawn = dice.choices(others, [each.prior for each in others], k=visits)
    pairs = [
        (_visit(before, facts, truth, call, number), _visit(after, facts, truth, call, number))
        for number, truth in enumerate(drawn)
    ]
    own_visits = [_visit(after, facts, own[n % len(own)], call, n) for n in range(visits)]
    changed = [(old, new) for old, new in pairs if old.call != new.call]
    return CostOnCall(
        call,
        "",
        visits,
        fmean(new.minutes - old.minutes for old, new in pairs),
        len(changed),
        sum(new.right for _, new in changed),
        sum(old.right for old, _ in changed),
        sum(visit.right for visit in own_visits),
    )


def _bringing(reasoner: Reasoner, facts: Mapping[str, object], call: Complaint) -> list[Hypothesis]:
    """The causes on this unit that bring a call, as a rule base has them."""
    hypotheses, _ = reasoner.hypotheses(read_unit(reasoner.knowledge, facts))
    listed = reasoner.knowledge.complaints[call.id]
    names = {*listed.faults, *listed.also}
    return [each for each in hypotheses.causes if each.fault.id in names]


def _visit(
    reasoner: Reasoner, facts: Mapping[str, object], truth: Hypothesis, call: Complaint, number: int
) -> Visit:
    """A visit to a unit with this fault, as this rule base leads it."""
    hypotheses, _ = reasoner.hypotheses(read_unit(reasoner.knowledge, facts))
    key = (truth.fault.id, truth.at, truth.picture.name)
    same = next(h for h in hypotheses.causes if (h.fault.id, h.at, h.picture.name) == key)
    own = reasoner.knowledge.complaints[call.id]
    return SimulatedVisit(reasoner, facts, same, own, random.Random(number)).visit()
