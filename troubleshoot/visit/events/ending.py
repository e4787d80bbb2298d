"""What is written down on the way out: notes, a repair and its proof, the end."""

from __future__ import annotations

from dataclasses import replace
from typing import ClassVar

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.before_repair import was_live
from troubleshoot.safety.stops.record import Given
from troubleshoot.safety.transitions import after_repair, unlit
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events.called import unit_as_called
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.events.way import put_aside
from troubleshoot.visit.state import RepairSaid, VisitState


@frozen
class Noted(Event):
    """A note, in whatever words."""

    kind: ClassVar[str] = "note"

    text: str

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        return replace(state, notes=(*state.notes, self.text))


@frozen
class ProofRead(Event):
    """What was read to prove the repair that was begun last; no text where it was not taken.

    Read once more, the later one counts. Journals of before have it in front of its repair.
    `of_before`: the fault of a repair made before the visit, where it is to prove that.
    """

    kind: ClassVar[str] = "proof"

    reason: str
    text: str | None
    of_before: str = ""

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        read, fault = self._read(state)
        return replace(read, work=self._lit_badly(knowledge, read, fault))

    def _read(self, state: VisitState) -> tuple[VisitState, str]:
        """The state with what was read, and the fault of the repair that it is of, if any."""
        if self.of_before:
            told = tuple(
                replace(said, proofs=self._among(said.proofs)) if self._is_of(said) else said
                for said in state.repairs_before
            )
            return replace(state, repairs_before=told), self.of_before
        begun = state.repair_begun
        if begun is None:
            return replace(state, proofs=self._among(state.proofs)), ""
        read = replace(begun, proofs=self._among(begun.proofs))
        return replace(state, repairs=(*state.repairs[:-1], read)), begun.fault

    def _is_of(self, said: RepairSaid) -> bool:
        return said.fault == self.of_before

    def _among(self, proofs: tuple[tuple[str, str], ...]) -> tuple[tuple[str, str], ...]:
        others = (proof for proof in proofs if proof[0] != self.reason)
        return (*others, (self.reason, self.text or ""))

    def _lit_badly(self, knowledge: Knowledge, read: VisitState, fault: str) -> WorkState:
        """The work state after a proof that a burner was lit for, and that it did not give."""
        proofs = knowledge.faults[fault].proof if fault in knowledge.faults else ()
        proof = next((p for p in proofs if p.text == self.reason), None)
        test = None if proof is None or proof.finding is None else proof.finding.test
        if not self.text or test is None or not knowledge.tests[test].leaves_unburnt:
            return read.work
        # Judging a proof takes the reasoning, which most visits need not have imported here.
        from troubleshoot.visit.hearing.proof_read import NOT_RIGHT, lacking_of

        if lacking_of(knowledge, read, self.of_before).get(self.reason) != NOT_RIGHT:
            return read.work
        return unlit(read.work, knowledge.tests[test], unit_as_called(knowledge, read))


@frozen
class RepairedBefore(Event):
    """A fault of which somebody tells that it was put right before the visit, in which words.

    It proves nothing: the cause stays, and no STOP and no finding goes with it.
    """

    kind: ClassVar[str] = "repaired-before"

    fault: str
    words: str

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        said = RepairSaid(self.fault, self.time, words=self.words)
        others = (each for each in state.repairs_before if each.fault != self.fault)
        return replace(state, repairs_before=(*others, said))


@frozen
class RepairWanted(Event):
    """A repair that is about to be done: what has to stand before hands go in comes next.

    `at`: where the fault is, in words.
    """

    kind: ClassVar[str] = "repair-wanted"

    fault: str
    at: str = ""

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        return replace(put_aside(knowledge, state), repair_wanted=(self.fault, self.at))


@frozen
class Repaired(Event):
    """A fault mended. `words`: what was typed when asked whether the complaint is still there.

    It is begun without them, and said once more, with them, when its proofs have been asked.
    """

    kind: ClassVar[str] = "repaired"
    reports: ClassVar[bool] = True

    fault: str
    words: str = ""

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        fault, work = knowledge.faults.get(self.fault), state.work
        before, last = state.repairs[:-1], state.repairs[-1:]
        made = max(state.mended_here, 1)
        if last and last[0].fault == self.fault and not last[0].still:
            said = replace(last[0], proofs=(*last[0].proofs, *state.proofs), still=self.words)
        else:
            live, answers = fault is not None and was_live(fault, work), len(state.answers)
            said = RepairSaid(
                self.fault, self.time, state.proofs, self.words, answers, live,
                search=state.case.search, apart=state.case.apart,
            )  # fmt: skip
            before, made = state.repairs, state.mended_here + 1
            work = work if fault is None else after_repair(work, fault, state.at_work)
        return replace(
            state,
            trying=False,
            repaired=tuple(dict.fromkeys((*state.repaired, self.fault))),
            repairs=(*before, said),
            proofs=(),
            work=work,
            mended_here=made,
            closing=False,
            repair_wanted=None,
        )


@frozen
class Closing(Event):
    """The way out begins: the unit is put back as it was. `cured`: the complaint is gone.

    `chosen`: by the person, so that undo takes it back; else it follows from a repair.
    """

    kind: ClassVar[str] = "closing"

    cured: bool = False
    chosen: bool = False

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        aside = put_aside(knowledge, state)
        return replace(aside, closing=True, cured=self.cured, repair_wanted=None)


@frozen
class PartGiven(Event):
    """One part of a hand-over, or of its result, as it was given; no words take it back."""

    kind: ClassVar[str] = "given"

    part: str
    words: str

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        others = tuple(each for each in state.given if each.part != self.part)
        own = (Given(self.part, self.words, self.time),) if self.words else ()
        return replace(state, given=(*others, *own))


@frozen
class VisitEnded(Event):
    """The end of the visit: closed, or stopped and handed over to somebody, at some time.

    `ending`: `closed` or `stopped`. `told`: who was told of a STOP and when, `told_at`: by the
    clock. `left_off`: the hazards for which something was left off, and the step that opens a gas
    cock which was not left open.
    """

    kind: ClassVar[str] = "end"

    ending: str
    told: str = ""
    told_at: str = ""
    left_off: tuple[str, ...] = ()

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        stops = state.stops
        if stops and self.ending == "stopped":
            stops = (*stops[:-1], replace(stops[-1], told=self.told, told_at=self.told_at))
        return replace(state, ended=self.ending, stops=stops, given=())
