"""The page of the work state: every safety step as it is declared, and the ways it leads.

Nothing here is told twice: what a step does, what comes before it and what takes it back is read
off the declarations, tried on a unit as it is found and on one made ready for hands.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import fields
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.safety.declaration import EVENT_WORDS, SafetyStep
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.needs import Needs, for_dead_work
from troubleshoot.safety.route import steps_to, steps_to_leave
from troubleshoot.safety.steps import GAS_SWEEP, REFRIGERANT_SWEEP, ROOM_AIR, Step
from troubleshoot.safety.transitions import after_step, expire
from troubleshoot.safety.work_state import WHOLE_UNIT, UnitAtWork, WorkState

WORK_STATE: Final = "work-state"

_HERE: Final = "this place"
_UNIT: Final = UnitAtWork(
    capacitors=("capacitor",), drives=("drive",), circuits=("circuit",),
    flammable=True, fire_panel=True, volts_480=True, burns_gas=True,
)  # fmt: skip
"""A unit on which everything has to be done."""

_AS_FOUND: Final = WorkState()
_READY: Final = WorkState(
    power="locked-out", panels="off", calls="off", dead="proved", meter="proved",
    only_steps_since_proof=True,
    second_source="locked", discharged=frozenset({_HERE}), leads_off=frozenset({_HERE}),
    hooked_up=frozenset({_HERE}),
    jumpers=frozenset({_HERE}), gas="shut", unburnt=True, taps_open=frozenset({_HERE}),
    hoses_on=frozenset({_HERE}), plugs_untested=frozenset({_HERE}),
    circuits=((_HERE, "gauges-on"),),
    clear=frozenset({REFRIGERANT_SWEEP, GAS_SWEEP, ROOM_AIR}), occupants_told=True,
    fire_panel="on-test", roof="go", second_person=True, arc_clothing=True,
    area_clear=True, clips_dead=True, doors_open=True,
)  # fmt: skip
"""Everything that can be confirmed, and everything that can be left behind."""

_PARTS: Final[Mapping[str, str]] = {
    "power": "power",
    "panels": "panels",
    "calls": "calls",
    "dead": "dead",
    "meter": "meter",
    "only_steps_since_proof": "only steps since the meter's proof",
    "second_source": "second source",
    "discharged": "discharged",
    "leads_off": "leads off",
    "hooked_up": "hooked up for a reading",
    "jumpers": "jumpers",
    "gas": "gas",
    "gas_swept": "gas swept",
    "unburnt": "unburnt gas",
    "taps_open": "taps open",
    "hoses_on": "hoses on",
    "plugs_untested": "plugs not tested under gas",
    "circuits": "circuits",
    "clear": "clear",
    "occupants_told": "occupants told",
    "fire_panel": "fire panel",
    "roof": "roof",
    "second_person": "second person",
    "arc_clothing": "arc clothing",
    "area_clear": "area clear",
    "clips_dead": "fuse clips dead",
    "doors_open": "doors open",
}
"""What the parts of the work state are called."""


def work_state_page(knowledge: Knowledge) -> Iterator[str]:
    """Every step with what confirms it, what comes before it, what it changes and what voids it."""
    yield "The work state and its safety steps"
    yield ""
    yield "A test is shown only once all that it needs of the work state stands. Where something is"
    yield "not known the worse counts. A step reported out of its turn confirms nothing."
    for step in STEPS.values():
        yield ""
        yield from _about(knowledge, step)
    yield ""
    yield "What voids what was confirmed:"
    for event, words in EVENT_WORDS.items():
        yield f"  {words}: {_changed(_READY, expire(_READY, event))}"
    yield ""
    yield from _ways(knowledge)


def _about(knowledge: Knowledge, step: SafetyStep) -> Iterator[str]:
    test = knowledge.tests[step.id]
    yield f"{test.name}  ({step.id})"
    if step.at != "unit":
        yield f"  done: once for each {spoken(step.at)}"
    yield f"  confirmed by: {_confirmed_by(step, test)}"
    if step.metered:
        yield "  in a file: only by the number on the meter"
    yield f"  only after: {'; '.join(g.words for g in step.after) or 'nothing, at any time'}"
    for outcomes, change in _by_change(step, test).items():
        yield f"  {outcomes}: {change}"
    lost = [words for event, words in EVENT_WORDS.items() if event in step.lost]
    if lost:
        yield f"  voided when: {'; '.join(lost)}"
    if step.gone is not None:
        gone = ((each, step.gone(each, WHOLE_UNIT)) for each in (_READY, WorkState()))
        said = next(_changed(before, after) for before, after in gone if after != before)
        yield f"  once somebody says that it has gone: {said}"
    taken_back = [knowledge.tests[other].name for other in _taking_back(knowledge, step)]
    if taken_back:
        yield f"  taken back by: {'; '.join(taken_back)}"
    facts = dict.fromkeys((*step.hangs_on, *(f for at in step.hangs_on_at.values() for f in at)))
    if facts:
        yield f"  hangs on: {', '.join(map(knowledge.spoken, facts))}"
    for outcome, (fact, value) in step.settles.items():
        settled = f"{knowledge.spoken(fact)} is {knowledge.spoken(value)}"
        yield f"  {test.spoken(outcome)} settles: {settled}"


def _confirmed_by(step: SafetyStep, test: Test) -> str:
    word = f'"{test.spoken(step.sound)}"'
    if step.by == "enter":
        return f"Enter, or {word}"
    number = ", or the number on the meter" if test.reads else ""
    if step.number_says_part:
        number = ", with the number that was measured or without"
    wait = f"; the word only {test.wait_minutes:.0f} min later" if step.waits_from else ""
    return f"{word}{number}{wait}"


def _by_change(step: SafetyStep, test: Test) -> dict[str, str]:
    """Outcomes in words -> what they change; outcomes that change the same stand together."""
    alike: dict[str, list[str]] = defaultdict(list)
    for outcome in (step.sound, *(o.id for o in test.outcomes if o.id != step.sound)):
        alike[_effect(step, outcome)].append(test.spoken(outcome))
    return {" / ".join(outcomes): change for change, outcomes in alike.items()}


def _effect(step: SafetyStep, outcome: str) -> str:
    """What an outcome changes of a unit as found, or of one made ready."""
    changes = (_changed(s, step.effect(s, _HERE, (outcome,))) for s in (_AS_FOUND, _READY))
    parts = dict.fromkeys(part for each in changes for part in each.split("; "))
    parts.pop(_NOTHING, None)
    return "; ".join(parts) or _NOTHING


def _taking_back(knowledge: Knowledge, step: SafetyStep) -> Iterator[str]:
    """The other steps that change what this one has confirmed, whatever comes of them."""
    done = step.effect(_READY, _HERE, (step.sound,))
    for other in STEPS.values():
        ends = [(o.id,) for o in knowledge.tests[other.id].outcomes]
        if other is not step and any(
            step.does(after, _HERE) != after
            for after in (other.effect(done, _HERE, outcomes) for outcomes in ends)
        ):
            yield other.id


def _ways(knowledge: Knowledge) -> Iterator[str]:
    yield "The way to hands inside a unit of 480 V with gas heat, and back until it runs:"
    to_dead = steps_to(_AS_FOUND, for_dead_work(_UNIT), _UNIT)
    state = _AS_FOUND
    for step in to_dead:
        state = after_step(state, step, (STEPS[step.id].sound,), _UNIT)
    yield from _numbered(knowledge, (*to_dead, *steps_to_leave(state, _UNIT)))
    yield ""
    yield "The way to a live reading with the panel off:"
    live = Needs(
        energy="energised-open", roof=True, occupants=True, fire_panel=True, second_person=True,
        arc_clothing=True, meter=True, sweeps=(REFRIGERANT_SWEEP, GAS_SWEEP),
    )  # fmt: skip
    yield from _numbered(knowledge, steps_to(_AS_FOUND, live, _UNIT))


def _numbered(knowledge: Knowledge, way: tuple[Step, ...]) -> Iterator[str]:
    for number, step in enumerate(way, start=1):
        where = f", {step.place}" if step.place else ""
        again = ", once more" if step.again else ""
        yield f"{number:4}. {knowledge.tests[step.id].name}{where}{again}"


_NOTHING: Final = "nothing changes"


def _changed(before: WorkState, after: WorkState) -> str:
    """What differs, in words."""
    parts = [
        f"{_PARTS[field.name]}: {_said(now)}"
        for field in fields(WorkState)
        if (now := getattr(after, field.name)) != getattr(before, field.name)
    ]
    return "; ".join(parts) or _NOTHING


def _said(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, frozenset):
        return ", ".join(sorted(map(spoken, value))) or "none"
    if isinstance(value, tuple):
        return ", ".join(f"{place}: {spoken(now)}" for place, now in value) or "closed"
    return spoken(str(value))
