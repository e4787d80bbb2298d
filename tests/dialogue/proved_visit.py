"""A visit that begins with a repair, and reads for each of its proofs what a sound unit reads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from troubleshoot.dialogue.driven import DrivenVisit
from troubleshoot.dialogue.prompts import (
    AskPlate,
    AskProof,
    AskTest,
    AtStop,
    Choose,
    DoStep,
    Ended,
    Prompt,
    Settled,
)
from troubleshoot.dialogue.talk import Reply
from troubleshoot.knowledge.model import Fault, Knowledge, Proof, Test, TypicalUnit
from troubleshoot.practice.sound import SoundUnit
from troubleshoot.practice.texts import sound_text
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.reaching import steps_before
from troubleshoot.visit.events import (
    Answered,
    Closing,
    Repaired,
    Skipped,
    Started,
    StepDone,
    after,
)
from troubleshoot.visit.hearing.proof_read import unproved
from troubleshoot.visit.state import VisitState

DEAD = "contactor-contacts"
"""A look behind the open panel, locked out and proved dead: where hands have been in."""

READ: Mapping[str, str] = MappingProxyType({
    "Amp unbalance no more than those volts make of it": "12.1/12.0/12.2 A",
    "Amp unbalance under 5 %": "12.1/12.0/12.2 A",
    "Amps down": "14.2 A, 16.4 before",
    "At most 2 % loaded, and over 1 % the motors loaded no more than derated": "460/461/459 V",
    "Bulb and equalizer as they should be": "both tight and right",
    "Flue steady through three blower starts": "0.1 %, three starts",
    "Full speed and within its data plate amps": "0.8 A, full speed",
    "Input within 5 % of the data plate by the meter": "119000 Btu/h",
    "Input within 5 % of the data plate, derated for altitude": "119000 Btu/h",
    "Limit stays closed through 30 minutes of full heat": "closed, 30 minutes of full heat",
    "Measured fraction within 5 points of the minimum": "21 %",
    "Motor amps at or under the data plate": "3.1 A of 3.6 A",
    "Opens and closes within its band": "opened at 20 psig",
    "Opens within its band on the gauge": "opened at 610 psig",
    "Pressure drop within 20 % of its clean value": "0.26 in wc",
    "Same speed, more amps, more air": "3.0 A, 2.6 before, same speed",
    "Starts after its delay three times running": "3 starts, 4 min each",
    "Starts by itself when the delay is over and runs on": "4 min, then starts and runs on",
    "Static back to this unit's own value": "0.55 in wc",
    "Static back under the data plate's limit": "0.55 in wc",
    "Static under the data plate's limit": "0.55 in wc",
    "Suction back in band": "128 psig",
    "The call arrives and goes away with the thermostat": "26 V",
    "The load on it is within its VA": "31 of 40 VA",
    "The sensor clears by itself in clean air": "clears by itself",
    "The sensor has cleared by itself in clean air": "cleared by itself",
    "The unit starts within its delay": "starts after 4 min",
    "Three legs within 5 %": "12.1/12.0/12.2 A",
    "Two sweeps an hour apart find nothing": "nothing on two sweeps",
    "Two sweeps find nothing": "nothing on two sweeps",
    "What was changed is back as it was, and written down": "back as it was, written down",
})  # fmt: skip
"""What is typed where a sound unit's own number says too little; invented."""

PLATE: Mapping[str, str] = MappingProxyType({
    "high-pressure-switch-band-low": "590 psig", "high-pressure-switch-band-high": "630 psig",
    "inducer-fla": "1.1 A", "low-pressure-switch-band-low": "15 psig",
    "low-pressure-switch-band-high": "25 psig", "maximum-external-static": "0.8 in wc",
})  # fmt: skip
NO_DANGER = "high-energy-bill"
"""A call that stops no visit and whose words no proof is told in."""
OWN_RECORD = {"own-evaporator-drop": "0.25 in wc"}


class ProvedVisit(DrivenVisit):
    """Every step is done, and all that judges a proof is read; `asked`: the proofs, in order."""

    def __init__(self, reasoner: Reasoner, typical: TypicalUnit, fault: Fault) -> None:
        knowledge = reasoner.knowledge
        unit = {**typical.unit, **OWN_RECORD}
        start = Started(complaint=NO_DANGER, unit=unit, profiles=(*FULLY_QUALIFIED,))
        super().__init__(reasoner, start)
        self.fault = fault
        self.plate = {**typical.plate, **PLATE}
        self.asked: list[str] = []
        while fault.repair.hands != "outside":
            steps = steps_before(self.state, knowledge.tests[DEAD], None)
            if not steps:
                break
            self.book.add(StepDone.of(steps[0], (CONFIRMED[steps[0].id],)))
        self.book.add(Repaired(fault.id), Closing())

    def not_proved(self) -> dict[str, str]:
        """What is not proved at the end, and why."""
        said = next(said for said in self.state.repairs if said.fault == self.fault.id)
        return unproved(self.knowledge, self.state, self.fault, dict(said.proofs))

    def reply(self, prompt: Prompt) -> Reply | None:
        if isinstance(prompt, Settled | AtStop | Ended):
            return None
        if isinstance(prompt, DoStep):
            step = prompt.decision.step
            assert step is not None
            return StepDone.of(step, (CONFIRMED[step.id],))
        if isinstance(prompt, AskProof):
            self.asked.append(prompt.text)
            return self._read(next(p for p in self.fault.proof if p.text == prompt.text))
        if isinstance(prompt, AskTest):
            assert prompt.decision.test is not None
            return self._answer(prompt.decision.test, prompt.decision.at, prompt.outcomes)
        if isinstance(prompt, AskPlate):
            told = self.plate.get(prompt.plate.id, "")
            return str(next(iter(told.values())) if isinstance(told, Mapping) else told)
        return ("1" if prompt.options else "n") if isinstance(prompt, Choose) else ""

    def _answer(self, test: Test, at: Place | None, outcomes: tuple[str, ...]) -> Reply:
        text = "7 %" if test.id == "flue-oxygen" else self._sound(test, at)
        if text:
            return Answered(test.id, None if at is None else (str(at),), text=text)
        sound = tuple(outcome for outcome in outcomes if outcome in test.healthy)[:1]
        return (
            Answered.by(Answer(test.id, sound, places=(at,)))
            if sound
            else Skipped.over(test.id, at)
        )

    def _sound(self, test: Test, at: Place | None) -> str:
        _, values = take_readings(self.knowledge, self.state.case)
        return sound_text(self.knowledge, SoundUnit(self.state.unit, values), test, at)

    def _read(self, proof: Proof) -> str:
        """What proves it; the first of what may be typed where nothing does."""
        typed = [*self._ways(proof)]
        return next((text for text in typed if self._proves(proof, text)), typed[0])

    def _proves(self, proof: Proof, text: str) -> bool:
        lacking = unproved(self.knowledge, self.state, self.fault, {proof.text: text})
        return proof.text not in lacking

    def _ways(self, proof: Proof) -> Iterator[str]:
        if proof.text in READ:
            yield READ[proof.text]
            return
        test = self.knowledge.read_by(proof)
        number = self._sound(test, self._place(test)) if test is not None and test.reads else ""
        if number:  # leg by leg where it asks for both, or for all
            one, _, unit = number.partition(" ")
            yield from (number, f"{one}/{one} {unit}", f"{one}/{one}/{one} {unit}")
            return
        outcomes = test.outcomes if test is not None else ()
        for outcome in outcomes:
            if proof.finding is not None and outcome.id in proof.finding.outcomes:
                yield from (outcome.spoken, *outcome.words)
        yield proof.text

    def _place(self, test: Test) -> Place | None:
        places = self.state.unit.layout.places(test.per)
        own = (at for at in places if at is not None and at.kind == self.fault.per)
        return next(own, places[0])


def unit_of(knowledge: Knowledge, fault: Fault) -> TypicalUnit | None:
    """The first unit of practice that can have a fault."""
    for typical in knowledge.typical_units.values():
        unit = after(knowledge, VisitState(), Started(unit=dict(typical.unit))).unit
        if typical.serves == "practice" and unit.allows(fault.exists_when):
            return typical
    return None
