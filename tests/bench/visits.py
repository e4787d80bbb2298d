"""Ten calls held from the call to the close: python tests/bench/visits.py [NUMBER ...] [--orders]

Prints for each how many prompts and facts it takes, how many pages turn at 40 columns and 20 rows,
how often the unit changes its state, is locked out and started, the meter is proved, and something
is asked on the roof that is found out below; with `--orders` what was asked, in its order.
"""

from __future__ import annotations

import argparse
from collections import Counter
from collections.abc import Mapping
from typing import Final

from tests.bench.small_screen import SmallScreen
from tests.dialogue.on_a_round import RoundVisit
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import turns
from troubleshoot.dialogue.prompts import (
    AskFact,
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
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.safety import steps
from troubleshoot.safety.needs import IN_THE_BUILDING
from troubleshoot.visit.events import Answered
from troubleshoot.visit.telling.account import cause_to_repair

CHANGES: Final = (
    steps.STOP_BY_CONTROLS,
    steps.LOCKOUT,
    steps.PANELS_OFF,
    steps.PANELS_OFF_ENERGISED,
    steps.PANELS_ON,
    steps.LOCK_OFF,
    steps.RESTART,
)
"""Steps that change how the unit stands."""


@frozen
class Call:
    """A call, what the unit is, and what is not sound on it: of a test, or of one at a place.

    What begins with a digit is typed as a reading, all else is an outcome.
    """

    what: str
    complaint: str
    unit: Mapping[str, object]
    odd: Mapping[str, str]
    season: str = ""


_SMALL: Final = {
    "line-volts-class": "208-to-240-volt",
    "supply-phase": "single",
    "refrigerant": "R-410A",
    "metering": "txv",
    "circuits": 1,
    "condenser-fans": 1,
    "heat": "gas",
}
_ELECTRIC: Final = {**_SMALL, "heat": "electric"}
_MIDDLING: Final = {**_SMALL, "supply-phase": "three", "condenser-fans": 2}
_LARGE: Final = {**_MIDDLING, "line-volts-class": "480-volt", "circuits": 2}
_WARM_SUPPLY: Final = {"supply-air-temperature": "66 F", "mixed-air-temperature": "77 F"}
_NOTHING_RUNS: Final = {"condenser-fan-turning": "nothing-runs", "cooling-call": "present"}
CALLS: Final = (
    Call("filters", "weak-airflow", _SMALL, {"air-filters": "loaded"}),
    Call(
        "fan capacitor",
        "cooling-short-cycles",
        _ELECTRIC,
        {
            "condenser-fan-turning": "stopped",
            "condenser-fan-hum": "hums",
            "capacitance-out-of-circuit at capacitor condenser fan 1": "very-low",
        },
    ),
    Call(
        "low charge",
        "weak-cooling",
        _LARGE,
        {
            **_WARM_SUPPLY,
            "suction-pressure at circuit 1": "82 psig",
            "head-pressure at circuit 1": "300 psig",
            "suction-line-temperature at circuit 1": "52 F",
            "liquid-line-temperature at circuit 1": "93 F",
            "leak-search": "found",
        },
    ),
    Call(
        "belt",
        "no-air",
        {**_LARGE, "blower-drive": "belt"},
        {"blower-belt": "broken", "blower-rpm": "zero"},
    ),
    Call(
        "contactor coil",
        "no-cooling",
        _ELECTRIC,
        {
            **_NOTHING_RUNS,
            "contactor-pull-in": "does-not-pull-in",
            "contactor-coil-ohms": "open",
            "compressor-start-attempt": "silent",
            "compressor-amps": "zero",
            "condenser-fan-amps": "zero",
        },
    ),
    Call(
        "economizer",
        "weak-cooling",
        {**_LARGE, "economizer": "fitted"},
        {
            "outdoor-temperature": "95 F",
            "return-air-temperature": "78 F",
            "mixed-air-temperature": "92 F",
            "supply-air-temperature": "72 F",
            "economizer-damper": "stuck-open",
        },
    ),
    Call(
        "thermostat wire",
        "no-cooling",
        _ELECTRIC,
        {
            **_NOTHING_RUNS,
            "cooling-call": "absent",
            "operating-sequence": "no-call-arrives",
            "thermostat-cable-ohms": "open",
        },
    ),
    Call(
        "flame rod",
        "heat-short-cycles",
        _MIDDLING,
        {"ignition-trials": "retries", "flame-current": "low", "flame-rod": "coated"},
    ),
    Call(
        "switch hose",
        "no-heat",
        _SMALL,
        {
            "ignition-trials": "no-trial",
            "pressure-switch-tube": "port-blocked",
            "draft-at-pressure-switch": "below",
            "pressure-switch-action": "open-for-low-draft",
        },
    ),
    Call(
        "PM",
        "routine-inspection",
        {**_LARGE, "blower-drive": "belt"},
        {"contactor-contacts at contactor 1": "pitted"},
        "spring",
    ),
)
TOLD: Final = {
    "blower-motor": "single-phase-capacitor",
    "compressor-phase": "three",
    "condenser-fan-phase": "single",
    "contactor-opens": "every-leg",
    "duct-smoke-detector": "not-fitted",
    "economizer": "not-fitted",
    "variable-speed-drive": "not-fitted",
}
"""What is said of the unit where it is asked."""


class Held(RoundVisit):
    """A visit whose likeliest cause is repaired once, after which all is sound; no proof is told.

    `said`: every prompt by a word of its own, in order. `sprung`: what is found out below, or on
    the phone, and was asked on the roof. `screen`: what all of it takes on a small one.
    """

    def __init__(self, reasoner: Reasoner, call: Call) -> None:
        super().__init__(
            reasoner, call.unit, call.season, call.odd, "keeps it", complaint=call.complaint
        )
        self.said: list[str] = []
        self.sprung: list[str] = []
        self.screen = SmallScreen(reasoner.knowledge)

    def drive(self) -> None:
        """Answer prompt after prompt, each shown on the screen, until there is no reply."""
        dialogue = Dialogue(lambda voice: turns(self.book, voice, decider=self.decider))
        self.screen.shows(dialogue.said, dialogue.prompt)
        while (reply := self.reply(dialogue.prompt)) is not None:
            self.screen.shows(dialogue.answer(reply), dialogue.prompt)

    def reply(self, prompt: Prompt) -> Reply | None:
        self.said.append(_word(prompt))
        if isinstance(prompt, AskFact):
            return TOLD.get(prompt.fact.id, "")
        if isinstance(prompt, Settled) and prompt.decision.ending != "round":
            if cause_to_repair(prompt.conclusions) is None or self.state.repairs:
                return "done"
            self.odd = {}
            return "repaired"
        if isinstance(prompt, AtStop | Ended):
            return None
        return super().reply(prompt)

    def _answer(self, prompt: AskTest) -> Reply:
        test, at = prompt.decision.test, prompt.decision.at
        assert test is not None
        below = test.kind == "question" or test.area == IN_THE_BUILDING
        if below and self.state.work.roof != "not-checked":
            self.sprung.append(test.id)
        odd = self.odd.get(f"{test.id} at {at}", self.odd.get(test.id, ""))
        if odd[:1].isdigit():
            return Answered.by(Answer(test.id, text=odd, places=(at,)))
        return super()._answer(prompt)


def _word(prompt: Prompt) -> str:
    """What a prompt asks for, in a word; a step in brackets."""
    if isinstance(prompt, DoStep | AskTest):
        test, at = prompt.decision.test, prompt.decision.at
        name = "" if test is None else test.id
        return f"[{name}]" if isinstance(prompt, DoStep) else f"{name} {at or ''}".strip()
    if isinstance(prompt, AskFact):
        return f"fact {prompt.fact.id}"
    if isinstance(prompt, AskPlate):
        return f"plate {prompt.plate.id}"
    if isinstance(prompt, AskProof):
        return f"proof {prompt.read_by.id if prompt.read_by else prompt.text}"
    return prompt.question if isinstance(prompt, Choose) else type(prompt).__name__


def counted(visit: Held) -> Counter[str]:
    """The figures of one visit."""
    times = Counter(visit.said)
    return Counter(
        {
            "prompts": len(visit.said),
            "pages": visit.screen.pages_turned,
            "thin": visit.screen.thin,
            "facts": sum(word.startswith("fact ") for word in visit.said),
            "changes": sum(times[f"[{step}]"] for step in CHANGES),
            "locks": times[f"[{steps.LOCKOUT}]"],
            "starts": times[f"[{steps.RESTART}]"],
            "meter": times[f"[{steps.METER_PROOF}]"],
            "sprung": len(visit.sprung),
            "minutes": round(visit.state.minutes),
        }
    )


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("which", type=int, nargs="*")
    parser.add_argument("--orders", action="store_true")
    given = parser.parse_args()
    reasoner = Reasoner(load_shipped())
    total: Counter[str] = Counter()
    for number, call in enumerate(CALLS, start=1):
        if given.which and number not in given.which:
            continue
        visit = Held(reasoner, call)
        visit.drive()
        total += counted(visit)
        repaired = ", ".join(said.fault for said in visit.state.repairs)
        print(f"{number}. {call.what}: {dict(counted(visit))}; repaired: {repaired}")
        for word in visit.said if given.orders else ():
            print(f"    {word}")
    print(f"all: {dict(total)}")


if __name__ == "__main__":
    main()
