"""A scenario: the call, the unit, what each test reads on it, and what is really wrong."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place


@frozen
class Shown:
    """What one test reads at its places, in the order in which repeats read.

    `shared`: read once, and it is not known at which of the places. `says`: the finding in the
    words of a person standing there. `valid`: False for a reading that misleads; `why` then says
    how. Everything else is as in a case file.
    """

    test: str
    places: tuple[Place | None, ...] = (None,)
    shared: bool = False
    text: str | None = None
    outcomes: tuple[str, ...] = ()
    says: str = ""
    valid: bool | None = None
    why: str = ""
    instrument: str | None = None
    conditions: Mapping[str, str] = field(default_factory=dict)


@frozen
class TrueFault:
    """One fault that is really there; `at` is None where it is the whole unit's or unplaced."""

    fault: str
    at: Place | None = None


@frozen
class WorkedOut:
    """A value that follows from the readings, as the author of the scenario has it.

    `value` is a typed text with its unit.
    """

    quantity: str
    at: str | None
    value: str


@frozen
class Truth:
    """What is really wrong, in order; without faults nothing is. `proof_readings`: plain data."""

    faults: tuple[TrueFault, ...]
    behind: tuple[str, ...]
    repair: str
    proof: str
    proof_readings: tuple[Mapping[str, object], ...] = ()
    stop: str | None = None

    @property
    def nothing_wrong(self) -> bool:
        return not self.faults


@frozen
class Scenario:
    """One case to practise on.

    `plain` is the case file that the scenario makes with its listed readings; `case` is the same
    read, and `listed` its readings as the unit shows them. `unavailable`: test -> why. `season`:
    when the call comes; may be "". `week`: of the course; None for a case outside it. `way`: the
    tests that an old hand takes, with their places, in order; empty where the engine's own choice
    is as good. `taught_by`: the tests on which the lesson rests. `moves`: something may be done to
    the unit, and it answers. `reaching_in`: who is about to reach in at the call; may be "".
    """

    id: str
    title: str
    subsystem: str
    difficulty: int
    call: str
    complaint: str
    plain: Mapping[str, object]
    case: Case
    listed: tuple[Shown, ...]
    truth: Truth
    teaches: str
    unavailable: Mapping[str, str] = field(default_factory=dict)
    works_out: tuple[WorkedOut, ...] = ()
    week: int | None = None
    season: str = ""
    way: tuple[tuple[str, Place | None], ...] = ()
    taught_by: tuple[str, ...] = ()
    moves: bool = False
    reaching_in: str = ""

    @property
    def unit(self) -> Unit:
        return self.case.unit
