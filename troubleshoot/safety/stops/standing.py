"""Which hazards stand now, and what they forbid: one answer for every output.

A hazard stands when a finding or the complaint called it up. What it forbids its entry says under
`forbids`, by the area, work state and place of the tests; a subsystem is all of its areas. Nothing
it forbids is offered, chosen or listed as long as it stands. What a step on the way makes sure of
(the lock, the proof of dead, the roof) is no matter of a ban: there the guards of the work state
watch.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from operator import eq

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.gravity import gravest_first
from troubleshoot.knowledge.model import Ban, Finding, Hazard, Test
from troubleshoot.knowledge.vocabulary import STOP_SCOPES
from troubleshoot.reasoning.chaining.clearing import cleared_complaint
from troubleshoot.reasoning.choosing.asking import Asking
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.hazard_words import said_standing
from troubleshoot.safety.needs import MADE_SAFE
from troubleshoot.safety.stops.alone import alone, wants_company
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.unit_at_work import unit_at_work

EVERYTHING = (Ban(),)
"""What a STOP forbids that stops more than one step and says nothing narrower."""


@frozen
class Standing:
    """A hazard that is shown for what is known now; `stops`: its STOP stands.

    `where`: the one circuit of several that it is about, in words.
    """

    hazard: Hazard
    stops: bool = False
    where: str | None = None

    @property
    def lines(self) -> tuple[str, ...]:
        """The caution as people read it, the same everywhere."""
        return said_standing(self.hazard, self.stops, self.where)


def standing_hazards(conclusions: Conclusions) -> tuple[Standing, ...]:
    """Every hazard that stands, what halts the job first, then the gravest.

    What was found, and what the call brings up: a STOP that stands stops more than one that only
    may be called up.
    """
    fired = {each.hazard.id: each for each in conclusions.hazards if each.found}
    known = conclusions.hypotheses.knowledge.hazards
    called = {*fired, *_hazards_of_call(conclusions)}
    names = dict.fromkeys((*(name for name in known if name in called), *fired))
    hazards = (fired[name].hazard if name in fired else known[name] for name in names)
    standing = (
        called_up(conclusions, fired[hazard.id]) if hazard.id in fired else Standing(hazard)
        for hazard in gravest_first(hazards)
    )
    return tuple(sorted(standing, key=_how_it_halts))


def _how_it_halts(standing: Standing) -> int:
    """Rank of what a STOP that stands halts: the widest first; one for a step halts no visit."""
    stop = standing.hazard.stop if standing.stops else None
    return (
        len(STOP_SCOPES)
        if stop is None or stop.scope == "this-step"
        else (STOP_SCOPES.index(stop.scope))
    )


def beside(conclusions: Conclusions, told: FiredHazard) -> tuple[Hazard, ...]:
    """What halts the visit beside the STOP that is told whole, the gravest first."""
    halting = (fired.hazard for fired in conclusions.standing_stops)
    return gravest_first(hazard for hazard in halting if hazard.id != told.hazard.id)


def called_up(conclusions: Conclusions, fired: FiredHazard) -> Standing:
    """A hazard as it is shown that a finding, the call or a likely fault has called up."""
    several = len(conclusions.case.unit.layout.places("circuit")) > 1
    one = several and len(fired.circuits) == 1
    where = str(Place("circuit", fired.circuits[0])) if one else None
    return Standing(fired.hazard, fired.stops, where)


def _hazards_of_call(conclusions: Conclusions) -> tuple[str, ...]:
    """The hazards that are shown first on such a call, until the all-clear has been given."""
    knowledge, case = conclusions.hypotheses.knowledge, conclusions.case
    complaint = knowledge.complaints.get(case.complaint or "")
    if complaint is None or cleared_complaint(knowledge, case, conclusions.readings):
        return ()
    return complaint.hazards_first


def tests_behind(conclusions: Conclusions, fired: FiredHazard) -> set[str]:
    """The tests that found a hazard, and what a computed one of them is read from."""
    known, unit = conclusions.hypotheses.knowledge, conclusions.case.unit
    atoms = (atom.split(":") for atom in fired.because)
    found = {parts[1] for parts in atoms if len(parts) > 1 and parts[1] in known.tests}
    asking = Asking(known, unit, known.tests.values())
    unread = Values(known, unit, {})
    for test in (known.tests[name] for name in tuple(found)):
        for place in unit.layout.places(test.per)[:1]:
            found |= {each.id for each in asking.asks(test, place, unread)}
    return found


def put_right_before(conclusions: Conclusions, test: Test) -> FiredHazard | None:
    """The STOP that a look has called up, where somebody has to put it right first.

    Under one that stops more than a step no test is chosen. A reading, or a look that is its own
    all-clear, is taken anew as often as anybody doubts it.
    """
    if test.kind != "look":
        return None
    return next(
        (
            fired
            for fired in conclusions.hazards
            if fired.stops and fired.hazard.all_clear == MADE_SAFE
            if test.id in tests_behind(conclusions, fired)
        ),
        None,
    )


class Forbidden:
    """What the hazards that stand on a case forbid."""

    def __init__(self, conclusions: Conclusions) -> None:
        self._conclusions = conclusions
        self._layout = conclusions.case.unit.layout
        self._bans = tuple(_bans(conclusions))
        self._alone = alone(conclusions)
        self._at_work = unit_at_work(conclusions.case.unit)

    def by(self, test: Test, at: Place | None) -> Hazard | None:
        """The hazard that forbids a test at a place, or that keeps a person alone from it."""
        against = next((fired.hazard for fired, _ in self._against(test, at)), None)
        if against is None and self._alone and wants_company(test, at, self._at_work):
            return self._alone
        return against

    def even_if_chosen(self, test: Test, at: Place | None) -> Hazard | None:
        """The same for a test that a person chose: what was found may be looked at once more.

        Only a fresh finding takes a hazard away, so its own is left to the person, with its
        cautions; it is never proposed.
        """
        for fired, ban in self._against(test, at):
            if ban.own or test.id not in tests_behind(self._conclusions, fired):
                return fired.hazard
        return None

    def holding(self) -> tuple[FiredHazard, ...]:
        """The hazards that forbid anything, each once."""
        return tuple({fired.hazard.id: fired for fired, _ in self._bans}.values())

    def _against(self, test: Test, at: Place | None) -> Iterator[tuple[FiredHazard, Ban]]:
        for fired, ban in self._bans:
            if not _ends(ban, test) and self._covers(fired, ban, test, at):
                yield fired, ban

    def _covers(self, fired: FiredHazard, ban: Ban, test: Test, at: Place | None) -> bool:
        return (
            (not ban.tests or test.id in ban.tests)
            and (not ban.areas or not {test.area, test.subsystem}.isdisjoint(ban.areas))
            and (not ban.work_states or test.work_state in ban.work_states)
            and (not ban.places or (at is not None and at.kind in ban.places))
            and (ban.at == "unit" or self._layout.circuits_of(at) <= set(fired.circuits))
        )


def has_ended(conclusions: Conclusions, fired: FiredHazard, ban: Ban) -> bool:
    """Whether all the findings that end a ban of a hazard have been read wherever it asks for them.

    That is at every place there is; of a ban at circuits at those circuits, and where the hazard
    names kinds of place at those.
    """
    asked_for = _asked_for(conclusions, fired, ban)
    ends = [end for end in ban.until if end.test in conclusions.hypotheses.tests]
    return bool(ends) and all(_read(conclusions, end, asked_for) for end in ends)


def _asked_for(
    conclusions: Conclusions, fired: FiredHazard, ban: Ban
) -> Callable[[Place | None], bool]:
    """At which places the findings are wanted that end a ban of a hazard."""
    layout = conclusions.case.unit.layout
    circuits = layout.circuits_of(None) if ban.at == "unit" else {*fired.circuits}
    kinds = {kind for each in bans_of(fired.hazard) for kind in each.places}

    def asked_for(place: Place | None) -> bool:
        return not layout.circuits_of(place).isdisjoint(circuits) and (
            place is None or not kinds or place.kind in kinds
        )

    return asked_for


def unread_ends(conclusions: Conclusions) -> Iterator[Spot]:
    """What ends the bans of what keeps the unit off and nobody has read yet, place by place."""
    read = {(reading.test, at) for reading in conclusions.readings for at in _places_of(reading)}
    layout, tests = conclusions.case.unit.layout, conclusions.hypotheses.tests
    for fired, ban in _bans(conclusions):
        for end in ban.until if fired.hazard.keeps_off == "unit" else ():
            if end.test in tests and ban.at == "unit":
                spots = ((end.test, at) for at in layout.places(tests[end.test].per))
                yield from (spot for spot in spots if spot not in read)


def would_lift(conclusions: Conclusions, fired: FiredHazard) -> tuple[Spot, ...]:
    """What would end the bans of a hazard and is not read sound yet, place by place."""
    layout, tests = conclusions.case.unit.layout, conclusions.hypotheses.tests
    spots: dict[Spot, None] = {}
    for ban in bans_of(fired.hazard):
        asked_for = _asked_for(conclusions, fired, ban)
        for end in ban.until:
            for at in layout.places(tests[end.test].per) if end.test in tests else ():
                if asked_for(at) and not _read(conclusions, end, partial(eq, at)):
                    spots[end.test, at] = None
    return tuple(spots)


def _places_of(reading: Reading) -> tuple[Place | None, ...]:
    return reading.among or (reading.at,)


def _bans(conclusions: Conclusions) -> Iterator[tuple[FiredHazard, Ban]]:
    """Every ban that holds, with the hazard it comes from."""
    for fired in conclusions.hazards:
        if fired.found:
            for ban in bans_of(fired.hazard):
                if not has_ended(conclusions, fired, ban):
                    yield fired, ban


def bans_of(hazard: Hazard) -> tuple[Ban, ...]:
    """What a hazard forbids while it stands."""
    wide = hazard.stop is not None and hazard.stop.scope != "this-step"
    return hazard.forbids or (EVERYTHING if wide else ())


def _ends(ban: Ban, test: Test) -> bool:
    """Whether a test is one whose reading may end the ban."""
    return any(finding.test == test.id for finding in ban.until)


def _read(
    conclusions: Conclusions, wanted: Finding, asked_for: Callable[[Place | None], bool]
) -> bool:
    """Whether a finding was read, and nothing worse is possible, at every place asked for.

    What was read last at a place counts.
    """
    test = conclusions.hypotheses.knowledge.tests[wanted.test]
    sound: dict[Place | None, bool] = {}
    for reading in conclusions.readings:
        if reading.test == wanted.test and reading.valid and reading.possible:
            for place in _places_of(reading):
                sound[place] = reading.possible <= set(wanted.outcomes)
    places = conclusions.case.unit.layout.places(test.per)
    return all(sound.get(place, False) for place in places if asked_for(place))
