"""What comes next of a repair that was begun: its proofs in the order of work, then the complaint.

What is read dead or from outside is asked at once. What is read live behind an open panel is led to
step by step, as its test would be, before that panel goes on. A finding that a danger wants taken
afresh may close the panel first: what was found bad is not started for a reading. Where no safe way
leads to a proof it is not asked for, and stays not proved. The rest is read once the unit is back
and runs.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge, Proof, Test
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.at_ports import AT_PORTS, as_read_on
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.closed_ways import is_closed
from troubleshoot.safety.needs import BURNER_AREAS, HOOK_UPS, OPEN_LIVE, UNDER_GAS, needs_of
from troubleshoot.safety.reaching import beyond, is_blocked, steps_before
from troubleshoot.safety.route import steps_to_leave_off
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.deciding.decision import Decision, to_do
from troubleshoot.visit.deciding.judging_proofs import judged_by, read_to_judge
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.hearing.proof_read import is_proved_since, is_read_bad
from troubleshoot.visit.hearing.proofs_wanted import proofs_today
from troubleshoot.visit.state import RepairSaid, VisitState

_DEAD_OR_OUTSIDE: Final = frozenset({"any", "locked-out", "proved-dead"})


def next_of_repair(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions, *, is_back: bool
) -> Decision | None:
    """The next proof, a step towards one, or the question whether the complaint is still there.

    Nothing where no repair is begun, or where what is left waits until the unit is back. Once one
    proof was read bad, no step leads on to another.
    """
    left = left_to_prove(knowledge, state)
    unlit = _left_unlit(knowledge, state, conclusions, left)
    if (judging := read_to_judge(knowledge, state, conclusions)) is not None:
        return judging
    for proof in left:
        test = test_of(knowledge, state, proof)
        if unlit and _wants_a_burner(knowledge, state, proof, state.repair_begun):
            continue
        if can_be_read(knowledge, state, proof):
            cautions = _cautions(knowledge, state, proof, test)
            return Decision("prove", test, cautions=cautions, proof=proof)
    if state.repair_begun is not None and is_read_bad(knowledge, state):
        return Decision("prove")
    for proof in left:
        test = test_of(knowledge, state, proof)
        if (
            test is not None
            and _is_led_to(test)
            and _may_be_reached(knowledge, state, conclusions, test)
        ):
            return to_do(knowledge, state, _steps_to(state, test)[0])
    if is_back and (judging := read_to_judge(knowledge, state, conclusions, is_back=True)):
        return judging
    if state.repair_begun is None:
        return None
    later = waiting(knowledge, state) or judged_by(knowledge, state)
    return None if later and not is_back else Decision("prove")


def _cautions(
    knowledge: Knowledge, state: VisitState, proof: Proof, test: Test | None
) -> tuple[Hazard, ...]:
    """What is told before a proof: all of its test, but of what is dead or has only to be told."""
    if test is None:
        return ()
    is_act = test.work_state not in _DEAD_OR_OUTSIDE and not proof.runs
    under_gas = UNDER_GAS in test.needs_state
    return cautions_before(knowledge, state, test) if is_act or under_gas else ()


def _left_unlit(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions, left: Iterable[Proof]
) -> bool:
    """Whether joints are still to be found tight before a burner is lit, and can be."""
    tests = (test for proof in left if (test := test_of(knowledge, state, proof)) is not None)
    return any(
        UNDER_GAS in test.needs_state
        and (not _steps_to(state, test) or _may_be_reached(knowledge, state, conclusions, test))
        for test in tests
    )


def next_of_before(knowledge: Knowledge, state: VisitState) -> Decision | None:
    """The next proof of a repair made before the visit, of those that can be read as it stands.

    No step leads to one: what was done before opens no panel now.
    """
    for said in state.repairs_before:
        for proof in left_of(knowledge, state, said):
            if can_be_read(knowledge, state, proof, said):
                test = test_of(knowledge, state, proof)
                cautions = _cautions(knowledge, state, proof, test)
                return Decision("prove", test, cautions=cautions, proof=proof, of_before=said.fault)
    return None


def before_any_start(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions
) -> Decision | None:
    """The next of the proofs that are read live and that nothing is called for, or a step to it.

    They are read while the unit stands open, before a finding that is taken afresh closes and
    starts it. Nothing where no such proof is left, or a danger keeps the power off.
    """
    work = state.work
    dead = any(map(_keeps_power_off, left_off(conclusions).unit))
    is_open = work.panels == "off" and work.calls != "on" and not dead
    if state.repair_begun is None or not is_open or is_read_bad(knowledge, state):
        return None
    for proof in left_to_prove(knowledge, state):
        test = test_of(knowledge, state, proof)
        if test is None or test.work_state != "energised-open":
            continue
        if can_be_read(knowledge, state, proof):
            cautions = cautions_before(knowledge, state, test)
            return Decision("prove", test, cautions=cautions, proof=proof)
        if _may_be_reached(knowledge, state, conclusions, test):
            return to_do(knowledge, state, _steps_to(state, test)[0])
    return None


def while_dead(knowledge: Knowledge, state: VisitState) -> Decision | None:
    """The next of the proofs that hands read behind the open panel, locked out; None for none.

    They are read before a finding that is taken afresh closes it and starts the unit.
    """
    if state.work.panels != "off" or state.work.power != "locked-out":
        return None
    for proof in left_to_prove(knowledge, state):
        test = test_of(knowledge, state, proof)
        dead = test is not None and test.work_state == "locked-out"
        if dead and can_be_read(knowledge, state, proof):
            return Decision("prove", test, proof=proof)
    return None


def _keeps_power_off(fired: FiredHazard) -> bool:
    """Whether a danger that keeps the unit off keeps the power off too, not its motors alone."""
    live = any("energised-open" in ban.work_states for ban in fired.hazard.forbids)
    return fired.hazard.stop is not None or live


def stopped_first(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions
) -> Decision | None:
    """The unit stopped before any test, where a proof was read bad and a danger keeps it off.

    What stopping it needs comes first, as anywhere: after a break the roof and the people below.
    """
    off = left_off(conclusions)
    runs = state.work.power == "on" and state.work.calls == "on"
    if not runs or not (off.unit or off.circuits) or not is_read_bad(knowledge, state):
        return None
    steps = steps_to_leave_off(state.work, state.at_work)
    return to_do(knowledge, state, steps[0]) if steps else None


def left_to_prove(knowledge: Knowledge, state: VisitState) -> tuple[Proof, ...]:
    """The proofs of the repair that was begun last that have not been asked for yet."""
    said = state.repair_begun
    if said is None:
        return ()
    fault, left = knowledge.faults[said.fault], left_of(knowledge, state, said)
    return tuple(each for each in left if not is_proved_since(knowledge, state, fault, each))


def left_of(knowledge: Knowledge, state: VisitState, said: RepairSaid) -> tuple[Proof, ...]:
    """The proofs of one repair that have not been asked for yet."""
    asked = {what for what, _ in said.proofs}
    wanted = proofs_today(knowledge, state.unit, knowledge.faults[said.fault])
    return tuple(proof for proof in wanted if proof.text not in asked)


def waiting(knowledge: Knowledge, state: VisitState) -> tuple[Proof, ...]:
    """What is read once the unit is back and runs."""
    left = ((proof, test_of(knowledge, state, proof)) for proof in left_to_prove(knowledge, state))
    return tuple(
        proof
        for proof, test in left
        if not (test and _is_led_to(test)) and not can_be_read(knowledge, state, proof)
    )


def read_live(knowledge: Knowledge, state: VisitState) -> tuple[Proof, ...]:
    """What is left to be read with the power on behind an open panel."""
    left = ((proof, test_of(knowledge, state, proof)) for proof in left_to_prove(knowledge, state))
    return tuple(proof for proof, test in left if test and is_read_live(test))


def test_of(knowledge: Knowledge, state: VisitState, proof: Proof) -> Test | None:
    """The test that a proof is read by, where the rules name one, as proof and unit have it."""
    test = knowledge.read_by(proof)
    if test and proof.runs:
        return replace(test, work_state="running", needs_state=())
    called = replace(test, work_state="running-open") if test and proof.called else test
    return as_read_on(called, state.at_work) if called else None


def is_read_live(test: Test) -> bool:
    """Whether a test is read with the power on behind an open panel."""
    return test.work_state in OPEN_LIVE


def _is_led_to(test: Test) -> bool:
    """Whether steps lead to a proof: read live, under gas, with gauges, or on what is hooked up."""
    hooked_up = not HOOK_UPS.keys().isdisjoint(test.needs_state)
    from_outside = not {UNDER_GAS, AT_PORTS}.isdisjoint(test.needs_state)
    return is_read_live(test) or from_outside or hooked_up


def can_be_read(
    knowledge: Knowledge, state: VisitState, proof: Proof, of_before: RepairSaid | None = None
) -> bool:
    """Whether a proof can be read as the unit stands; without a test, on a unit that runs.

    No burner is read before its gas cock is known to be open, nor before the roof, where it is lit,
    was found safe, nor behind an open panel where its test wants it shut. `of_before`: the repair
    that it proves, where that was made before the visit.
    """
    test = test_of(knowledge, state, proof)
    if test is not None and _is_led_to(test):
        return not _steps_to(state, test) and not is_blocked(state, test, _nearest(state, test))
    if test is not None and test.work_state in _DEAD_OR_OUTSIDE:
        of_charge = "gauges-on" in test.needs_state
        return not (of_charge and state.work.circuits_without_charge)
    work = state.work
    runs = work.power == "on" and work.calls != "off"
    closed = work.panels == "on" or test is None or test.work_state != "running"
    lit = work.gas == "on" and work.roof == "go" and closed
    said = of_before or state.repair_begun
    return runs and (lit or not _wants_a_burner(knowledge, state, proof, said))


def _nearest(state: VisitState, test: Test) -> Place | None:
    """Where a proof is read with the fewest steps: gauges that are on one circuit are enough."""
    places = state.unit.layout.places(test.per)
    return min(places, key=lambda at: len(steps_before(state, test, at)))


def _steps_to(state: VisitState, test: Test) -> tuple[Step, ...]:
    return steps_before(state, test, _nearest(state, test))


def _wants_a_burner(
    knowledge: Knowledge, state: VisitState, proof: Proof, said: RepairSaid | None
) -> bool:
    """Whether a burner has to be lit for a proof."""
    test = test_of(knowledge, state, proof)
    if test is not None and UNDER_GAS in test.needs_state:
        return False
    if said is None or not state.at_work.burns_gas:
        return False
    if test is None:
        return knowledge.faults[said.fault].subsystem in BURNER_AREAS
    return proof.runs == "heat" or needs_of(test, None, state.at_work).gas == "on"


def _may_be_reached(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions, test: Test
) -> bool:
    """Whether a safe way leads to a test for whoever is asking now, wherever on the unit it is."""
    forbidden = Forbidden(conclusions)
    places = (None, *state.unit.layout.places(test.per))
    return (
        bool(_steps_to(state, test))
        and not is_closed(state, test, None)
        and beyond(knowledge, state, (test,), None) is None
        and not any(forbidden.even_if_chosen(test, at) for at in places)
    )
