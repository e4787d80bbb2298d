"""From answers to readings: each answer's outcome at each place, how sure, and whether it counts.

A reading keeps what was typed, the value, the chance of each outcome, the verdict, and whether it
is valid and why not. Computed tests become readings by themselves when their inputs are known.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import field, replace

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.between_repairs import (
    Stretch,
    own_values,
    told_between_repairs,
)
from troubleshoot.reasoning.readings.classify import POSSIBLE, Classified, classify
from troubleshoot.reasoning.readings.measuring import stated_conditions
from troubleshoot.reasoning.readings.misreadings import repeats
from troubleshoot.reasoning.readings.superseded import COMPUTED_SINCE, rests_on, superseded
from troubleshoot.reasoning.readings.values import Key, Values
from troubleshoot.reasoning.readings.withdrawal import withdraw
from troubleshoot.reasoning.unit.places import Place

ERROR_OF_QUESTION = 0.06
ERROR_OF_METER = 0.03
ERROR_OF_LOOK = 0.02
"""Chance that a report is wrong (common practice, no source)."""


@frozen
class Reading:
    """One outcome of one test at one place.

    `seen`: the outcomes ticked (one, or several for a test of signs; empty for an input test).
    `chances`: the chance of each outcome where the number lies near a limit, else {outcome: 1}.
    `among`: the places one unplaced reading may belong to; empty where the place is known.
    `before`: what earlier readings of the same test and place made of the outcomes.
    """

    test: str
    at: Place | None
    seen: tuple[str, ...]
    chances: Mapping[str, float]
    text: str | None
    classified: Classified | None = None
    valid: bool = True
    why_invalid: str = ""
    stated_valid: bool | None = None
    computed: bool = False
    among: tuple[Place | None, ...] = ()
    conditions: Mapping[str, str] = field(default_factory=dict)
    before: tuple[Mapping[str, float], ...] = ()
    after_repair: bool = False

    @property
    def possible(self) -> frozenset[str]:
        """Every outcome the reading may be: nothing is sound that may be worse."""
        near = {outcome for outcome, chance in self.chances.items() if chance > POSSIBLE}
        return frozenset(self.seen) | near

    @property
    def at_worst(self) -> frozenset[str]:
        """What it may be, at either end of the meter's accuracy too: what lifts a STOP is sound."""
        return self.possible if self.classified is None else self.possible | self.classified.at_ends

    @property
    def calls_up(self) -> frozenset[str]:
        """Every outcome it may be by the meter's own accuracy, for hazards: the worse side counts.

        That a number was rounded where it was typed calls up nothing: 10 is read as 10.
        """
        return self.possible if self.classified is None else self.classified.by_meter


def report_error(test: Test) -> float:
    """Chance that the report of this test is wrong."""
    if test.kind in ("measurement", "computed", "input"):
        return ERROR_OF_METER
    return ERROR_OF_QUESTION if test.kind == "question" else ERROR_OF_LOOK


def take_readings(knowledge: Knowledge, case: Case) -> tuple[tuple[Reading, ...], Values]:
    """All readings of a case, one for each test and place, and the values behind them.

    A test read again at the same place is one reading, the latest, that remembers what the earlier
    ones that counted made of it; one taken after a repair stands alone. A reading that does not
    count, taken after one that does, is kept beside it: what it may mean for safety still stands.
    """
    case = replace(case, answers=withdraw(knowledge, repeats(knowledge, case.answers)))
    told = told_between_repairs(knowledge, case)
    older = dict(pair for each in told for pair in superseded(knowledge, case.answers, each))
    gone = frozenset[Key]().union(*older.values())
    told = tuple(replace(each, values=each.values.without(gone)) for each in told)
    values_of = {each.repairs: each.values for each in told}
    latest: dict[tuple[str, Place | None], Reading] = {}
    beside: dict[tuple[str, Place | None], Reading] = {}
    for answer in case.answers:
        test = knowledge.tests[answer.test]
        for place in answer.places if not answer.shared else (None,):
            reading = _reading(knowledge, test, answer, place, values_of[answer.repairs])
            key = (test.id, place)
            earlier = latest.get(key)
            if reading.valid or earlier is None or not earlier.valid:
                latest.pop(key, None)
                beside.pop(key, None)
                latest[key] = _again(test, reading, earlier)
            else:
                beside[key] = reading
    for reading in _computed(knowledge, case, told, older):
        key = (reading.test, reading.at)
        if key in older:
            beside[key] = voided(latest[key], COMPUTED_SINCE)
        elif key in latest:
            beside[key] = latest[key]
        latest[key] = reading
    return (*latest.values(), *beside.values()), told[-1].values


def outcomes_of(
    knowledge: Knowledge, answer: Answer, place: Place | None, values: Values
) -> tuple[str, ...]:
    """What one answer comes to at a place, whatever was read after it."""
    return _reading(knowledge, knowledge.tests[answer.test], answer, place, values).seen


def _again(test: Test, reading: Reading, earlier: Reading | None) -> Reading:
    """A reading taken again, with what the earlier ones made of it."""
    counts = earlier is not None and earlier.valid and earlier.chances and reading.chances
    if not counts or earlier is None or test.kind == "step":
        return reading
    if reading.after_repair and not earlier.after_repair:
        return reading
    if test.choose == "several":
        return reading
    return replace(reading, before=(*earlier.before, earlier.chances))


def _reading(
    knowledge: Knowledge, test: Test, answer: Answer, place: Place | None, values: Values
) -> Reading:
    classified = None
    seen = answer.outcomes
    chances: Mapping[str, float] = {}
    if answer.text is not None and test.reads and not seen:
        own = values.with_typed(
            stated_conditions(knowledge, values.unit, answer.conditions)
            | own_values(knowledge, test, answer, place, values)
        )
        classified = classify(test, place, own)
        if classified is not None:
            seen, chances = classified.seen, classified.chances
    if seen and not chances:
        chances = dict.fromkeys(seen, 1.0)
    return Reading(
        test.id,
        place,
        seen,
        chances,
        answer.text,
        classified,
        valid=answer.valid is not False,
        why_invalid=answer.why_invalid or ("stated" if answer.valid is False else ""),
        stated_valid=answer.valid,
        among=answer.places if answer.shared else (),
        conditions=answer.conditions,
        after_repair=answer.after_repair,
    )


def _computed(
    knowledge: Knowledge, case: Case, told: Sequence[Stretch], older: Collection[Key]
) -> list[Reading]:
    """Tests whose quantities are known by now without being asked, at every place of their kind.

    By what was typed since the last repair, else as they were before it. An answer that does not
    count leaves the test open to what its inputs say; so does one that is `older` than they are.
    """
    answered = {(a.test, p) for a in case.answers if a.valid is not False for p in a.places}
    found = []
    for test in knowledge.tests.values():
        if not _knows_itself(knowledge, test) or not case.unit.allows(test.exists_when):
            continue
        for place in case.unit.layout.places(test.per):
            if (test.id, place) in answered and (test.id, place) not in older:
                continue
            reading = _computed_last(knowledge, test, place, told)
            if reading is not None:
                found.append(reading)
    return found


def _computed_last(
    knowledge: Knowledge, test: Test, place: Place | None, told: Sequence[Stretch]
) -> Reading | None:
    """A computed test by the last numbers that between two repairs give it; None without them."""
    for each in reversed(told):
        classified = classify(test, place, each.values)
        if classified is not None:
            return Reading(
                test.id,
                place,
                classified.seen,
                classified.chances,
                None,
                classified,
                computed=True,
                after_repair=each.repairs > 0 and rests_on(knowledge, test, place, each),
            )
    return None


def _knows_itself(knowledge: Knowledge, test: Test) -> bool:
    """Computed tests, and measurements of a quantity that others may give (drier in, drier out)."""
    if test.kind != "measurement" or not test.reads:
        return test.kind == "computed"
    return bool(knowledge.quantities[test.reads[0].quantity].computed)


def voided(reading: Reading, reason: str) -> Reading:
    """The reading, kept, but weighing nothing."""
    return replace(reading, valid=False, why_invalid=reason)
