"""What a practice shows: the call, lists of tests and steps, readings, how the unit stands."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.practice.played import Done, Stopped
from troubleshoot.practice.scenario import Scenario, Shown
from troubleshoot.practice.session import Session
from troubleshoot.practice.slips import Slip, grave_kinds
from troubleshoot.practice.standing import held_steps, lacking_for_dead
from troubleshoot.reasoning.unit.places import Place, with_place
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import Step
from troubleshoot.safety.work_state import open_items

HELP = (
    "  tests [AREA] areas; an area's tests",
    "  find WORD    tests with that word",
    "  4, or do 4   do number 4 of the list",
    "  steps        the safety steps",
    "  step 2       do one, by number or word",
    "  how [4]      how it is done",
    "  unit         the call, the nameplate",
    "  state        how the unit stands now",
    "  readings     what you have read",
    "  again        read the last one again",
    "  doubt WHY    the last does not count",
    "  act WORDS    do it to a unit that moves",
    "  hint         the expert's next; 5 min",
    "  stop         a STOP: hand it over",
    "  call         say what it is",
    "  show         give up, be told it all",
    "  q            leave; kept as left",
)


def show_call(terminal: Terminal, knowledge: Knowledge, scenario: Scenario) -> None:
    """The title, the caller's words, the nameplate, the unit's own record, and the day."""
    terminal.say(scenario.title, strong=True)
    terminal.say(f'"{scenario.call}"')
    terminal.say()
    for key in ("unit", "own-record", "conditions"):
        values = scenario.plain.get(key)
        if isinstance(values, dict):
            for name, value in values.items():
                terminal.say(f"{knowledge.spoken(name)}: {_plain(knowledge, value)}", 2)


def _plain(knowledge: Knowledge, value: object) -> str:
    if isinstance(value, dict):
        return ", ".join(f"{place} {each}" for place, each in value.items())
    return knowledge.spoken(str(value))


STEP_NUMBERS = {name: number for number, name in enumerate(CONFIRMED, start=1)}

STATES = {
    "running": ", running",
    "running-open": ", live and running",
    "energised-open": ", live",
    "locked-closed": ", locked out",
    "locked-out": ", locked out",
}


def show_tests(terminal: Terminal, session: Session, tests: Sequence[Test]) -> None:
    """A numbered list of tests with their minutes and the work state they need."""
    for number, test in enumerate(tests, start=1):
        places = len(session.places(test))
        where = f", {places} places" if places > 1 else ""
        state = STATES.get(test.work_state, "")
        terminal.say(f"{number} {test.name} ({test.minutes:.0f} min{where}{state})", 2)


def show_needs(terminal: Terminal, session: Session, test: Test) -> None:
    """What a test needs and the unit has not, in the order of work, at the first of its places."""
    missing = session.needs(test, session.places(test)[0])
    if missing:
        terminal.say("Needs first:", 2)
    for each in missing:
        terminal.say(f"- {each}", 4)


def show_areas(terminal: Terminal, session: Session) -> None:
    """The areas of tests with how many each holds, on one screen of a small terminal."""
    areas: dict[str, int] = {}
    for test in session.tests():
        areas[test.area] = areas.get(test.area, 0) + 1
    terminal.say("; ".join(f"{session.knowledge.spoken(a)}: {n}" for a, n in areas.items()), 2)
    terminal.say("tests AREA lists one; find WORD searches all.")


def show_done(terminal: Terminal, session: Session, done: Done) -> None:
    """What was seen, and what it cost."""
    for shown in done.shown:
        terminal.say(f"{name_of(session, shown)}: {said(session.knowledge, shown)}", 1)
    if done.test.kind == "computed":
        show_computed(terminal, session, done)
    terminal.say(f"+{done.minutes:.0f} min, {session.minutes:.0f} in all", 1)


def name_of(session: Session, shown: Shown) -> str:
    """The test's name, with the place where the unit has several."""
    test = session.knowledge.tests[shown.test]
    layout = session.scenario.unit.layout
    places = [layout.shown(test.per, place) for place in shown.places if place is not None]
    known = [place for place in places if place is not None]
    return f"{test.name}, {' and '.join(known)}" if known and not shown.shared else test.name


def said(knowledge: Knowledge, shown: Shown) -> str:
    """A finding as the person standing there would give it."""
    words = ", ".join(map(knowledge.tests[shown.test].spoken, shown.outcomes))
    first = shown.text or words
    return f"{first}. {shown.says}" if shown.says else first


def show_computed(terminal: Terminal, session: Session, done: Done) -> None:
    """The number a computed test comes to; judging it is the apprentice's."""
    at = done.at if isinstance(done.at, Place) else None
    for reading in session.conclusions.readings:
        found = reading.classified
        if (reading.test, reading.at) == (done.test.id, at) and found is not None:
            unit = session.knowledge.quantities[found.quantity].unit.removesuffix("-diff")
            terminal.say(f"{done.test.name}: {found.value:z.1f} {unit}", 1)


def show_stopped(terminal: Terminal, session: Session, stopped: Stopped) -> None:
    """Why something did not happen."""
    slip = stopped.slip
    terminal.say()
    if slip.grave:
        terminal.say("STOPPED: this could have hurt someone.", strong=True)
    else:
        terminal.say("Not yet.", strong=True)
    if slip.past_stop:
        said_before = sum(each.missing == slip.missing for each in session.slips) > 1
        asks = "do what was said above." if said_before else slip.missing[0]
        terminal.say(f"A STOP stands: {asks}")
        terminal.say("stop hands the job over.")
    else:
        terminal.say(f"{slip.tried} needs first:")
        for missing in slip.missing:
            terminal.say(f"- {missing}", 2)
        if len(session.slips) == 1:
            terminal.say("steps lists the steps; state tells what is done.")
    if slip.grave:
        terminal.say(_price_of(session, slip))


def _price_of(session: Session, slip: Slip) -> str:
    """What a grave slip costs: the first of its kind half, the same again the play."""
    if grave_kinds(session.slips)[slip.kind] == 1:
        return "This once it is explained, for half the points. The same again fails the play."
    return "The play counts as failed. Go on all the same, and do it right."


def show_state(terminal: Terminal, session: Session) -> None:
    """How the unit stands, what holds and until when, and what dead still lacks."""
    work = session.state.work
    known = (f"energy: {spoken(work.energy)}", f"meter: {spoken(work.meter)}")
    for line in (*known, *(f"open: {item}" for item in open_items(work))):
        terminal.say(line, 2)
    held = held_steps(session)
    for each in held:
        if each.holds:
            until = f" (until {' or '.join(each.ends)})" if each.ends else ""
            terminal.say(f"done: {_step(session, each.step)}{until}", 2)
    for each in held:
        if not each.holds:
            terminal.say(f"expired: {_step(session, each.step)}", 2)
    lacking = lacking_for_dead(session)
    if lacking:
        steps = dict.fromkeys(_step(session, step) for step in lacking)
        terminal.say(f"dead still lacks: {'; '.join(steps)}", 2)
    else:
        terminal.say("proved dead: hands may go in", 2)


def _step(session: Session, step: Step) -> str:
    name = with_place(session.knowledge.tests[step.id].name, step.place)
    return f"{name}, once more" if step.again else name


def show_readings(terminal: Terminal, session: Session) -> None:
    """Everything read so far, in order; safety steps are left out."""
    for reading in session.conclusions.readings:
        test = session.knowledge.tests[reading.test]
        if test.kind == "step" or test.id in CONFIRMED:
            continue
        where = session.scenario.unit.layout.shown(test.per, reading.at)
        mark = "" if reading.valid else " (does not count)"
        read = reading.text or ", ".join(map(test.spoken, reading.seen))
        if reading.computed and reading.classified is not None:
            unit = session.knowledge.quantities[reading.classified.quantity].unit
            read = f"{reading.classified.value:z.1f} {unit.removesuffix('-diff')}"
        terminal.say(f"{with_place(test.name, where)}: {read}{mark}", 2)


def show_steps(terminal: Terminal, steps: Iterable[Test]) -> None:
    """The safety steps by number: each has the same on every unit."""
    for step in steps:
        terminal.say(f"{STEP_NUMBERS[step.id]} {step.name}", 2)
    terminal.say(
        "step 2, or step with a word of it; one that protects somebody is a line of its own."
    )
