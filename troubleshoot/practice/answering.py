"""The unit that answers: what a test reads on the scenario's unit, listed or not.

A test that the scenario lists reads as listed, its repeats in their order. Any other reads as the
true fault's own card says it most often shows, and where the card is silent as on a sound unit:
with a number where one can be said, else with the sound outcome's word.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.practice.realistic import reading_of, text_showing
from troubleshoot.practice.scenario import Scenario, Shown
from troubleshoot.practice.sound import SoundUnit
from troubleshoot.practice.texts import sound_text
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.answers import Answer
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.hypotheses import Hypothesis
from troubleshoot.reasoning.measuring import read_text
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.readings import take_readings
from troubleshoot.reasoning.rows import NONE_OF_THEM, pattern_row
from troubleshoot.safety.declared import CONFIRMED

MOST_OFTEN: Final = 0.5
"""A card settles what an unlisted test shows where it gives one outcome this chance."""


def times_done(answers: Iterable[Answer], test: str, at: Place | None) -> int:
    """How often a test has been answered at a place."""
    return sum(
        answer.test == test and (at in answer.places or None in answer.places) for answer in answers
    )


class AnsweringUnit:
    """The unit of one scenario. Pure: the same question at the same turn has the same answer."""

    def __init__(self, reasoner: Reasoner, scenario: Scenario) -> None:
        self.knowledge: Knowledge = reasoner.knowledge
        self.scenario = scenario
        self.hypotheses, _ = reasoner.hypotheses(scenario.unit)
        _, self.values = take_readings(self.knowledge, scenario.case)
        stated = frozenset(scenario.case.conditions)
        self.sound = SoundUnit(scenario.unit, self.values, stated)
        self.inputs = replace(scenario.case, answers=tuple(self._input_answers()))
        self._true = tuple(self._true_pictures(reasoner))
        self._kept: dict[tuple[str, Place | None], Shown | None] = {}

    def _true_pictures(self, reasoner: Reasoner) -> Iterator[Hypothesis]:
        """Each true fault in the picture that best fits the listed readings."""
        ranking = reasoner.conclude(self.scenario.case).ranking
        chances = {id(ranked.hypothesis): ranked.probability for ranked in ranking.hypotheses}
        for true in self.scenario.truth.faults:
            found = [
                hypothesis
                for hypothesis in (*self.hypotheses.causes, *self.hypotheses.effects)
                if hypothesis.fault.id == true.fault and true.at in (None, hypothesis.at)
            ]
            if found:
                yield max(found, key=lambda h: chances.get(id(h), 0.0))

    def shows(self, test: Test, place: Place | None, times: int = 0) -> Shown | None:
        """What the test reads here after being done `times` before; None where it cannot be.

        A meter that gave no number once gives none the second time either.
        """
        if test.id in self.scenario.unavailable:
            return None
        listed = self.listed(test.id, place)
        if listed:
            return listed[min(times, len(listed) - 1)]
        if test.id in CONFIRMED:
            return Shown(test.id, (place,), outcomes=(CONFIRMED[test.id],))
        if (test.id, place) not in self._kept:
            self._kept[(test.id, place)] = self._unlisted(test, place)
        shown = self._kept[(test.id, place)]
        numberless = shown is not None and shown.text is None and bool(test.reads)
        return None if numberless and times else shown

    def listed(self, test: str, place: Place | None) -> tuple[Shown, ...]:
        """The scenario's own readings of a test that serve a place, in order."""
        return tuple(
            shown
            for shown in self.scenario.listed
            if shown.test == test
            and (place is None or place in shown.places or None in shown.places)
        )

    def _unlisted(self, test: Test, place: Place | None) -> Shown | None:
        usual = self._usual(test, place)
        if usual is not None:
            case = self.inputs
            text = text_showing(self.knowledge, self.sound, case, test, place, usual)
            return Shown(test.id, (place,), text=text or None, outcomes=() if text else (usual,))
        text = self._sound_text(test, place)
        if text:
            return Shown(test.id, (place,), text=text)
        healthy = next((o for o in test.healthy if o in self.hypotheses.outcomes(test.id)), None)
        if healthy is None:
            healthy = self._likeliest(test)
        return None if healthy is None else Shown(test.id, (place,), outcomes=(healthy,))

    def _usual(self, test: Test, place: Place | None) -> str | None:
        """The unhealthy outcome that a true fault's card gives more often than not."""
        for true in self._true:
            if test.id not in true.picture.cells or not test.outcomes:
                continue
            if not self.scenario.unit.layout.speaks_about(place, true.at):
                continue
            row = pattern_row(self.hypotheses.row(true.picture, test.id))
            outcome, chance = max(row.items(), key=lambda item: (item[1], item[0]))
            healthy = outcome in test.healthy or outcome == NONE_OF_THEM
            if chance >= MOST_OFTEN and not healthy:
                return outcome
        return None

    def _likeliest(self, test: Test) -> str | None:
        """For a test without a sound outcome: what is seen most often."""
        if not test.outcomes:
            return None
        row = pattern_row(self.hypotheses.background(test.id))
        return max((o for o in row if o != NONE_OF_THEM), key=lambda o: (row[o], o), default=None)

    def _sound_text(self, test: Test, place: Place | None) -> str:
        """A sound number, where the rules would also call it sound on this unit."""
        text = sound_text(self.knowledge, self.sound, test, place)
        if not text:
            return ""
        try:
            read_text(test, text, self.knowledge)
        except NotUnderstood:
            return ""
        if test.kind == "input":
            return text
        answer = Answer(test.id, (), text, (place,))
        reading = reading_of(self.knowledge, self.inputs, test, place, answer)
        seen = set() if reading is None else set(reading.seen)
        return text if seen and seen <= set(test.healthy) else ""

    def _input_answers(self) -> Iterator[Answer]:
        """The listed readings of input tests, which other numbers are judged against."""
        for answer in self.scenario.case.answers:
            if self.knowledge.tests[answer.test].kind == "input":
                yield answer
