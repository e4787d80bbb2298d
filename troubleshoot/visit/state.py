"""What one visit has come to, as it stands after its events."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.meters import NO_METERS, Meters
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.on_record import OnRecord
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.record import Given, LeftOn, Spot, StopMet
from troubleshoot.safety.work_state import UnitAtWork, WorkState
from troubleshoot.visit.round.season import Season
from troubleshoot.visit.weighing import Weighing


@frozen
class Asked:
    """One thing asked and what came of it, for the record.

    `place`: for a safety step, its place in words, which need not be one of the unit's tree.
    `nobody`: nobody says that it was done; an account from a file took it as done to go on.
    `time`: the moment of its event, empty where not known.
    """

    test: str
    at: Place | None
    outcome: str | None
    text: str | None
    valid: bool
    minutes: float
    work_state: str
    place: str | None = None
    nobody: bool = False
    time: str = ""


@frozen
class RepairSaid:
    """A repair as somebody said it: when, in which words, and what they read to prove it.

    `proofs`: what was to be read, and what was typed for it, empty where it was not taken.
    `still`: what was typed when asked whether the complaint is still there. `answers`: how many had
    been given before it; what was read after it can prove it. `live`: by the record the unit was
    live with its panel open when it was said. `words`: in which a repair of before the visit was
    told. `search`, `apart`: whose cause a round looked for when it was said, and what else it had
    found.
    """

    fault: str
    time: str = ""
    proofs: tuple[tuple[str, str], ...] = ()
    still: str = ""
    answers: int = 0
    live: bool = False
    words: str = ""
    search: tuple[Spot, ...] = ()
    apart: frozenset[Spot] = frozenset()


@frozen
class Round:
    """The routine round that a visit walks.

    `kept`: findings that were not sound and are kept for its end; `searched`: those whose cause was
    looked for, `search`: is being looked for now. `apart`: the other findings, which weigh nothing
    in that search: each has its own.
    """

    season: Season
    kept: frozenset[Spot] = frozenset()
    searched: frozenset[Spot] = frozenset()
    search: tuple[Spot, ...] = ()
    apart: frozenset[Spot] = frozenset()


@frozen
class VisitState:
    """Everything one visit has come to.

    `on_record`: what the register knows of the unit, beside what was told here (`unit_data`).
    `lock_by`: under which profiles the lock was hung last.
    `failed_steps`: since each was last sound, once for each time (`safety/closed_ways.py`).
    `aim`: the test that is on the way; `aim_chosen`: by the person, and not by what tells most;
    `aim_since`: how many answers had been given before that;
    `shown`: another test that is in hand on the way to it.
    `fresh`: the finding that is being taken once more to see whether a STOP can be lifted;
    `fresh_read`: one has been, and nothing has broken the way to the rest since; `fresh_since`: how
    many answers had been given before that. `work_before`: the work state that
    the last answer or step started from. `proofs`: read for the repair that is about to be said.
    `last_time`: when hands or eyes last reported from the unit, `latest_time`: of anything that was
    kept, which a clock goes behind only where it was set back, `roof_time`: when the roof was last
    found good, `power_off_time`: when the lock went on, `gas_shut_time`: when the gas cock was
    shut; moments as the events have them, empty where not known. `left_before`: what earlier visits
    had left off on the unit, as it was told; `left_on`: the dangers for which they did;
    `repairs_before`: told as made before the visit; they prove nothing and clear no cause.
    `repair_wanted`: the fault whose repair is about to be done, and where: it is made safe for.
    `mended_here`: how many repairs have been made on this visit. `cock_left`: they did not leave
    its gas cock known to be open. `round`: the points of a season are walked; a routine visit of
    before, or from a file, has none. `given`: the parts of a hand-over, or of its result, of which
    not all has been given. `weighed`: refrigerant that was told of beside what was asked.
    `meters`: what it is read with, as the register had it at the start.
    """

    unit_data: Mapping[str, object] = field(default_factory=dict)
    on_record: OnRecord = field(default_factory=OnRecord)
    own_record: Mapping[str, object] = field(default_factory=dict)
    unit: Unit = field(default_factory=Unit)
    at_work: UnitAtWork = field(default_factory=UnitAtWork)
    complaint: str | None = None
    name: str = ""
    words: str = ""
    routine: bool = False
    profiles: frozenset[str] = FULLY_QUALIFIED
    lock_by: frozenset[str] = frozenset()
    conditions: Mapping[str, str] = field(default_factory=dict)
    answers: tuple[Answer, ...] = ()
    asked: tuple[Asked, ...] = ()
    failed_steps: tuple[Step, ...] = ()
    skipped: frozenset[Spot] = frozenset()
    not_known: frozenset[str] = frozenset()
    work: WorkState = field(default_factory=WorkState)
    work_before: WorkState = field(default_factory=WorkState)
    last_time: str = ""
    latest_time: str = ""
    roof_time: str = ""
    power_off_time: str = ""
    gas_shut_time: str = ""
    trying: bool = False
    aim: Spot | None = None
    aim_reason: str = ""
    aim_chosen: bool = False
    aim_since: int = 0
    shown: Spot | None = None
    stops: tuple[StopMet, ...] = ()
    fresh: Spot | None = None
    fresh_read: bool = False
    fresh_since: int = 0
    notes: tuple[str, ...] = ()
    left_before: tuple[str, ...] = ()
    left_on: tuple[LeftOn, ...] = ()
    cock_left: bool = False
    repaired: tuple[str, ...] = ()
    proofs: tuple[tuple[str, str], ...] = ()
    repairs: tuple[RepairSaid, ...] = ()
    repairs_before: tuple[RepairSaid, ...] = ()
    mended_here: int = 0
    closing: bool = False
    cured: bool = False
    repair_wanted: tuple[str, str] | None = None
    round: Round | None = None
    ended: str | None = None
    given: tuple[Given, ...] = ()
    weighed: tuple[Weighing, ...] = ()
    meters: Meters = NO_METERS

    @property
    def case(self) -> Case:
        """The case that the reasoning starts from."""
        return Case(
            self.unit,
            self.complaint,
            self.answers,
            self.conditions,
            self.skipped,
            self.repaired,
            self.routine,
            tuple(dict.fromkeys(met.hazard for met in self.stops if met.on_record)),
            tuple(dict.fromkeys(said.fault for said in self.repairs_before)),
            frozenset() if self.round is None else self.round.apart,
            () if self.round is None else self.round.search,
            self.words,
            self.meters,
        )

    def met(self, hazard: str) -> StopMet | None:
        """The last time that a hazard's STOP halted the visit."""
        return next((met for met in reversed(self.stops) if met.hazard == hazard), None)

    def done_last_at(self, spot: Spot) -> str | None:
        """The place of a step in words, as it was when it was last done."""
        done = (asked.place for asked in reversed(self.asked) if (asked.test, asked.at) == spot)
        return next(done, None)

    @property
    def repair_begun(self) -> RepairSaid | None:
        """The last repair, while nobody has said yet whether the complaint is still there."""
        return next((said for said in self.repairs[-1:] if not said.still), None)

    @property
    def walking(self) -> Round | None:
        """The round, while no search for a cause stands between."""
        return None if self.round is None or self.round.search else self.round

    @property
    def minutes(self) -> float:
        return sum(each.minutes for each in self.asked)
