"""Visits that have come to a test or a step, led there by the words that confirm each step."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from functools import cache

from troubleshoot.dialogue.asides import takes_notes
from troubleshoot.dialogue.book import Forgotten, VisitBook
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import turns
from troubleshoot.dialogue.prompts import AskTest, DoStep, Ended, Prompt
from troubleshoot.dialogue.said import Sentence, Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.profiles import PROFILES
from troubleshoot.visit.events import Event, Started
from troubleshoot.visit.events.codec import record_of
from troubleshoot.visit.kept.lines import Record

UNIT = {
    "heat": "gas", "fuel": "natural-gas", "refrigerant": "R-410A", "refrigerant-class": "a1",
    "line-volts-class": "480-volt", "supply-phase": "three", "compressor-phase": "single",
    "condenser-fan-phase": "single", "duct-smoke-detector": "fitted", "condenser-fans": 1,
    "circuits": 1, "metering": "txv", "blower-motor": "single-phase-capacitor",
    "variable-speed-drive": "not-fitted",
}  # fmt: skip
PLACES = {
    "in": (
        "cooling-short-cycles",
        "do capacitance-out-of-circuit at capacitor condenser fan 1",
        "capacitance-out-of-circuit",
    ),
    "cock": ("no-heat", "do burner-orifices", "burner-orifices"),
    "manometer": ("no-heat", "do manifold-pressure", "manometer-on"),
    "live": ("no-cooling", "do contactor-coil-volts at contactor 1", "contactor-coil-volts"),
    "run": ("no-heat", "do flame-picture", "flame-picture"),
    "out": ("no-cooling", "do wiring-burn-marks", "tools-clear"),
    "lock-off": ("no-cooling", "do wiring-burn-marks", "lock-off"),
    "panels-off": ("no-cooling", "do wiring-burn-marks", "panels-off"),
    "verified-dead": ("no-cooling", "do wiring-burn-marks", "verified-dead"),
    "gas-cock-open": ("no-heat", "do burner-orifices", "gas-cock-open"),
}
"""The call, what is typed first, and the test or step at which the visit then stands."""
MOST = 120


class AtWork:
    """A visit that stands at one of `PLACES`, and what came of typing there."""

    def __init__(self, knowledge: Knowledge, place: str) -> None:
        records, self.moment = _led_to(knowledge, place)
        self.book = VisitBook(knowledge, "v", Forgotten(), lambda: self.moment, records)
        self.before = len(self.book.events)
        self.work = self.book.state.work
        self.dialogue = _held(self.book)

    @property
    def prompt(self) -> Prompt:
        return self.dialogue.prompt

    @property
    def at(self) -> str:
        """The test or step that is asked for; empty where none is."""
        return _at(self.prompt)

    @property
    def events(self) -> list[Event]:
        """What was kept since it stood there."""
        return self.book.events[self.before :]

    def types(self, typed: str) -> list[str]:
        """Type a line; returns the sentences that were said to it."""
        said = self.dialogue.answer(typed)
        return [each.text for each in said if isinstance(each, Sentence)]

    def goes_on_to(self, wanted: str) -> list[str]:
        """Confirm step after step until a test or step is asked for; returns those on the way."""
        met: list[str] = []
        while self.at != wanted:
            assert len(met) < MOST, met
            met.append(self.at)
            self.moment += timedelta(minutes=_wait(self.book.knowledge, self.at))
            self.types(_word(self.at) if self.at else "")
        return met


def _held(book: VisitBook) -> Dialogue:
    def talk(voice: Voice) -> Talk[Ended]:
        takes_notes(book, voice)
        return (yield from turns(book, voice))

    return Dialogue(talk)


@cache
def _led_to(knowledge: Knowledge, place: str) -> tuple[tuple[Record, ...], datetime]:
    """The records of a visit that has come to a place, and the time of day by then."""
    call, first, wanted = PLACES[place]
    moment = datetime(2026, 11, 26, 9, tzinfo=UTC)
    now: Callable[[], datetime] = lambda: moment  # noqa: E731 - the clock of this one visit
    book = VisitBook(knowledge, "v", Forgotten(), now)
    book.add(Started(complaint=call, name="RTU-7", unit=UNIT, profiles=tuple(PROFILES)))
    dialogue = _held(book)
    dialogue.answer(first)
    for _ in range(MOST):
        at = _at(dialogue.prompt)
        if at == wanted:
            return tuple(map(record_of, book.events)), moment
        moment += timedelta(minutes=_wait(knowledge, at))
        aimed = first.split()[1] == at
        typed = "done" if aimed else _word(at) if at in STEPS else ""
        dialogue.answer(typed or ("s" if at else ""))
    raise AssertionError(f"never came to {wanted}: {dialogue.prompt}")


def _at(prompt: Prompt) -> str:
    if isinstance(prompt, DoStep | AskTest) and prompt.decision.test is not None:
        return prompt.decision.test.id
    return ""


def _word(step: str) -> str:
    return "2 V" if STEPS[step].metered else STEPS[step].sound.replace("-", " ")


def _wait(knowledge: Knowledge, step: str) -> float:
    waits = step in STEPS and STEPS[step].waits_from is not None
    return knowledge.tests[step].wait_minutes if waits else 0.0
