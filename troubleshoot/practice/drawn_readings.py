"""What a drawn unit reads: an outcome of every test that the true fault's card speaks of.

Outcomes come from the card's rows, members of a group each given those drawn before. Pressures
are settled first, so that the temperatures that follow from them fit.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping

from troubleshoot.knowledge.model import Test
from troubleshoot.practice.realistic import free_input, input_showing, text_showing
from troubleshoot.practice.sound import SoundUnit
from troubleshoot.practice.texts import sound_text
from troubleshoot.reasoning.choosing.asking import Asking
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.hypotheses import Hypothesis
from troubleshoot.reasoning.evidence.outcome_chances import NONE_OF_THEM, Row, pattern_row
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.cases.file import read_case


class DrawnReadings:
    """Draws the readings of one case; each is settled in the light of those before it."""

    def __init__(
        self,
        reasoner: Reasoner,
        plate: Mapping[str, object],
        conditions: Mapping[str, object],
        complaint: str,
        truth: Hypothesis,
        dice: random.Random,
    ) -> None:
        self.knowledge = reasoner.knowledge
        self.plain: dict[str, object] = {
            "unit": plate,
            "conditions": conditions,
            "complaint": complaint,
        }
        self.truth = truth
        self.dice = dice
        self.kept: list[dict[str, object]] = []
        self.case = read_case(self.knowledge, {**self.plain, "readings": []})
        self.hypotheses, _ = reasoner.hypotheses(self.case.unit)

    def readings(self) -> list[dict[str, object]]:
        """The readings as they stand in a scenario file."""
        for test in self._tests():
            if test.kind in ("step", "input"):
                continue
            self._settle(test, self._place(test), self._outcome(test))
        return self.kept

    def _tests(self) -> Iterator[Test]:
        """The tests that the picture grades: what others follow from first, computed ones last."""
        names = dict.fromkeys(self.truth.picture.cells)
        for group in self.truth.picture.groups:
            names.update(dict.fromkeys(group.tests))
        tests = [self.knowledge.tests[name] for name in names]
        tests.sort(key=lambda test: (not self._settled_first(test), test.kind == "computed"))
        yield from tests

    def _settled_first(self, test: Test) -> bool:
        first = self.knowledge.settled_first
        return any(one.quantity in first for one in test.reads)

    def _place(self, test: Test) -> Place | None:
        """The place of the test that goes with the fault's own."""
        layout = self.case.unit.layout
        places = layout.places(test.per) or (None,)
        at = self.truth.at
        near = [place for place in places if layout.speaks_about(place, at)]
        same = [p for p in near if p is not None and at is not None and p.number == at.number]
        return (same or near or list(places))[0]

    def _outcome(self, test: Test) -> str | None:
        """An outcome by the card's row: the likelier of two throws, so that oddities stay rare."""
        row = self._row(test)
        names = list(row)
        thrown = self.dice.choices(names, [row[name] for name in names], k=2)
        drawn = max(thrown, key=lambda name: row[name])
        return test.healthy[0] if drawn == NONE_OF_THEM and test.healthy else drawn

    def _row(self, test: Test) -> Row:
        group = self.truth.picture.grouped(test.id)
        if group is not None:
            seen = {
                str(reading["test"]): {str(reading["drawn"]): 1.0}
                for reading in self.kept
                if reading["test"] in group.tests
            }
            return group.row_given(test.id, seen)
        return pattern_row(self.hypotheses.row(self.truth.picture, test.id))

    def _settle(self, test: Test, place: Place | None, outcome: str | None) -> None:
        """Keep the reading: a number where one shows the outcome, else its word."""
        if outcome is None:
            return
        if test.kind == "computed":
            self._settle_inputs(test, place)
        sound = self._sound()
        if test.kind == "computed":
            found = input_showing(self.knowledge, sound, self.case, test, place, outcome, self.dice)
            if found is not None:
                self._keep(found[0], place, outcome, text=found[1])
                return
        text = text_showing(self.knowledge, sound, self.case, test, place, outcome, self.dice)
        self._keep(test.id, place, outcome, text=text)

    def _sound(self) -> SoundUnit:
        _, values = take_readings(self.knowledge, self.case)
        return SoundUnit(self.case.unit, values, frozenset(self.case.conditions))

    def _settle_inputs(self, test: Test, place: Place | None) -> None:
        """Sound numbers for what a computed test takes beside the input that will decide it."""
        free = free_input(self.knowledge, test)
        asking = Asking(self.knowledge, self.case.unit, self.hypotheses.tests.values())
        _, values = take_readings(self.knowledge, self.case)
        for wanted in asking.asks(test, place, values):
            if wanted not in (test, free):
                at = place if place in self.case.unit.layout.places(wanted.per) else None
                text = sound_text(self.knowledge, self._sound(), wanted, at)
                if text:
                    self._keep(wanted.id, at, wanted.healthy[0] if wanted.healthy else "", text)

    def _keep(self, test: str, place: Place | None, outcome: str, text: str) -> None:
        reading: dict[str, object] = {"test": test}
        if place is not None and place in self.case.unit.layout.places(self._per(test)):
            reading["at"] = [str(place)]
        what = {"text": text} if text else {"outcome": [outcome], **self._says(test, outcome)}
        self.kept.append({**reading, **what, "drawn": outcome})
        readings = [self._as_case(each) for each in self.kept]
        self.case = read_case(self.knowledge, {**self.plain, "readings": readings})

    def _per(self, test: str) -> str | None:
        return self.knowledge.tests[test].per

    def _says(self, test: str, outcome: str) -> Mapping[str, str]:
        """What the outcome means, for a look; what a number means is the apprentice's to say."""
        known = self.knowledge.tests[test]
        means = next((o.means for o in known.outcomes if o.id == outcome), "")
        return {"says": means} if means and not known.reads else {}

    @staticmethod
    def _as_case(reading: Mapping[str, object]) -> dict[str, object]:
        return {key: reading[key] for key in ("test", "at", "text", "outcome") if key in reading}
