"""What a visit at work shows: steps and tests with their cautions, findings, the ending."""

from __future__ import annotations

from collections.abc import Iterable

from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.prompts import AskTest, AtStop, Caution, DoStep, Settled
from troubleshoot.dialogue.said import (
    Agreement,
    Causes,
    Danger,
    HowTo,
    OtherTest,
    StopElsewhere,
    Verdict,
    WhatToType,
)
from troubleshoot.knowledge.model import Fault, Knowledge, Test
from troubleshoot.reasoning.conclude import Conclusions, FiredHazard
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.safety.declared import ENTER_CONFIRMS
from troubleshoot.safety.hazard_words import first_orders, said_hazard
from troubleshoot.safety.profiles import spoken
from troubleshoot.safety.stops.standing import Standing
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.telling.account import shown_causes
from troubleshoot.visit.telling.explain import because
from troubleshoot.visit.telling.wording import TAG_OUT, bar, cause_line, effect_line

CAUSES_SHOWN = 4
WORTH_SHOWING = 0.03

AT_AN_ENDING = (
    "Type repaired when it has been put right and proved, tests for other tests, "
    "done to put the unit back and close, or q to keep the visit."
)
HELP = (
    "At any question:",
    "  danger WORDS       stop at once: somebody is in danger, and what is wrong",
    "  ?  or how          how to do it, in steps",
    "  w  or why          why this is next",
    "  because [CAUSE]    what speaks for and against a cause (a number, or words of its name)",
    "  why not CAUSE      why a cause is not on top",
    "  what if OUTCOME    what an answer would change",
    "  tests              other tests worth doing now;  do N  takes number N of them",
    "  do TEST at PLACE   do a test of your own choice",
    "  again              take the last reading once more",
    "  causes             the causes as they stand",
    "  u  or undo         take the last answer back",
    "  s  or skip         go on without this one",
    "  invalid REASON     the last reading does not count; it is kept, with the reason",
    "  unit               what was told of the unit;  unit NAME VALUE  puts it right",
    "  note TEXT          write a note into the visit",
    "  repaired CAUSE     say that this has been put right",
    "  done               finish: put the unit back and close the visit",
    "  q  or quit         keep the visit and leave; starting again goes on from here",
)


def show_at_work(
    terminal: Terminal, knowledge: Knowledge, prompt: DoStep | AskTest | AtStop | Settled
) -> None:
    """A step, a test, a STOP or an ending, above the sign at which it is answered."""
    terminal.hold()
    if isinstance(prompt, AtStop):
        terminal.hold(first_orders(prompt.fired.hazard))
        show_stop(terminal, prompt.fired, prompt.tag)
        _show_what_lifts(terminal, prompt)
        return
    if isinstance(prompt, Settled):
        show_ending(terminal, prompt.conclusions, prompt.decision)
        terminal.say()
        terminal.say(AT_AN_ENDING)
        return
    terminal.say()
    show_cautions(terminal, prompt.cautions)
    _show_task(terminal, prompt)
    test = prompt.decision.test
    assert test is not None
    if isinstance(prompt, DoStep):
        _show_step_words(terminal, test, prompt.outcomes)
        return
    if prompt.decision.reason:
        terminal.say(f"Why now: {prompt.decision.reason}", 2)
    _show_choices(terminal, knowledge, test, prompt.outcomes)


def show_finding(
    terminal: Terminal,
    knowledge: Knowledge,
    said: Verdict | Agreement | Causes | Danger | StopElsewhere | HowTo | WhatToType | OtherTest,
) -> None:
    """What an answer has come to, or what was asked for besides."""
    if isinstance(said, Verdict):
        show_verdict(terminal, said.reading, knowledge)
        if not said.reading.valid:
            terminal.say(f"It does not count: {said.reading.why_invalid}", 1)
    elif isinstance(said, Agreement):
        terminal.say(said.text, 1)
    elif isinstance(said, Causes):
        show_causes(terminal, said.conclusions)
    elif isinstance(said, Danger):
        show_standing(terminal, said.standing)
    elif isinstance(said, StopElsewhere):
        terminal.hold(first_orders(said.stopped.fired.hazard))
        show_stop(terminal, said.stopped.fired, said.stopped.tag)
    elif isinstance(said, HowTo):
        show_how(terminal, said.test)
    elif isinstance(said, WhatToType):
        terminal.say_all(HELP)
    else:
        name = with_place(said.test.name, said.where)
        minutes = "" if said.minutes is None else f": {said.minutes:.0f} min"
        terminal.say(f"{said.number} {name}{minutes}", 2)


def show_cautions(terminal: Terminal, cautions: Iterable[Caution]) -> None:
    """Cautions before a step: in full the first time a panel is opened, by name after that."""
    cautions = tuple(cautions)
    before = [caution.hazard.id.replace("-", " ") for caution in cautions if caution.told]
    if before:
        terminal.say(f"Cautions as before: {', '.join(before)}.")
    for hazard in (caution.hazard for caution in cautions if not caution.told):
        terminal.say(said_hazard(hazard), strong=True)
        if hazard.stop is not None:
            terminal.say(f"Stop if: {hazard.stop.covers}", 2)


def _show_what_lifts(terminal: Terminal, prompt: AtStop) -> None:
    if prompt.lifted_by is None:
        terminal.say("No further test is offered. Type over to hand the job over.")
    elif prompt.beyond is not None:
        terminal.say(
            f"Only {prompt.lifted_by}, taken afresh, lifts this, and that is beyond you: "
            f"{prompt.beyond}."
        )
        terminal.say("Type over to hand the job over.")
    else:
        terminal.say(
            f"Only a fresh finding lifts this: type again to do {prompt.lifted_by} once more, or "
            "over to hand the job over."
        )


def _show_task(terminal: Terminal, prompt: DoStep | AskTest) -> None:
    """The step or test itself."""
    decision, test = prompt.decision, prompt.decision.test
    assert test is not None
    name = with_place(test.name, prompt.where)
    kind = "Step" if isinstance(prompt, DoStep) else "Test"
    again = ", once more" if decision.step is not None and decision.step.again else ""
    minutes = f"about {test.minutes:.0f} min" if test.minutes >= 1 else "moments"
    terminal.say(f"{kind}: {name}{again} ({minutes})", strong=True)
    if isinstance(prompt, DoStep):
        for sentence in test.how:
            terminal.say(sentence, 2)


def show_how(terminal: Terminal, test: Test) -> None:
    """How a test is done, with what, and what makes its reading worthless."""
    for number, sentence in enumerate(test.how, start=1):
        terminal.say(f"{number}. {sentence}", 2)
    if test.instrument:
        terminal.say(f"With: {test.instrument}", 2)
    for reason in test.invalid_when:
        terminal.say(f"Does not count if: {reason}", 2)
    if test.source:
        terminal.say(f"Source: {test.source}", 2)


def _show_choices(
    terminal: Terminal, knowledge: Knowledge, test: Test, outcomes: tuple[str, ...]
) -> None:
    """The answers that will do."""
    unit = _unit_to_type(knowledge, test)
    means = {o.id: o.means for o in test.outcomes}
    if unit:
        terminal.say(f"Type the reading ({unit}){', or a word:' if outcomes else ':'}")
    for number, outcome in enumerate(outcomes, start=1):
        text = f": {means[outcome]}" if means[outcome] else ""
        start = "-" if unit else f"{number}"
        terminal.say(f"{start} {outcome.replace('-', ' ')}{text}", 2)
    if test.choose == "several":
        terminal.say("Several may be true: give their numbers with commas.", 2)


def _show_step_words(terminal: Terminal, test: Test, outcomes: tuple[str, ...]) -> None:
    """What may come of a safety step, in the words that are typed."""
    words = ", ".join(o.replace("-", " ") for o in outcomes)
    number = "the number on the meter, or " if test.reads else ""
    enter = "Enter when done; or" if test.id in ENTER_CONFIRMS else "Type"
    terminal.say(f"{enter} {number}what came of it: {words}", 2)


def _unit_to_type(knowledge: Knowledge, test: Test) -> str:
    """The unit of the number a test reads; a difference of temperatures is typed in plain ones."""
    if not test.reads:
        return ""
    one = test.reads[0]
    return (one.unit or knowledge.quantities[one.quantity].unit).removesuffix("-diff")


def show_causes(terminal: Terminal, conclusions: Conclusions) -> None:
    """The most likely causes with bars, what happened, and the rest in one line."""
    causes = [c for c in shown_causes(conclusions) if c.probability >= WORTH_SHOWING]
    for number, cause in enumerate(causes[:CAUSES_SHOWN], start=1):
        terminal.say(f"{number} {cause_line(conclusions, cause)}", 1)
    if not causes:
        terminal.say("nothing stands out yet", 1)
    ranking = conclusions.ranking
    for chance, text in (
        (ranking.nothing_wrong, "nothing wrong"),
        (ranking.outside, "something outside the rules"),
    ):
        if chance >= 0.2:
            terminal.say(f"  {bar(chance)} {100 * chance:7.0f} %  {text}", 1)
    for effect in conclusions.effects:
        terminal.say(effect_line(conclusions, effect), 1)


def show_verdict(terminal: Terminal, reading: Reading, knowledge: Knowledge) -> None:
    """What a typed number was taken for."""
    found = reading.classified
    if found is None:
        if reading.text and not reading.seen:
            terminal.say("Kept. It cannot be judged until more is known.", 1)
        return
    unit = knowledge.quantities[found.quantity].unit.removesuffix("-diff")
    spread = f" +/-{2 * found.u:.2g}" if found.u else ""
    words = [f"{found.value:.4g}{spread} {unit}: {found.outcome.replace('-', ' ')}"]
    if found.low is not None or found.high is not None:
        low = "" if found.low is None else f"{found.low:.4g}"
        high = "" if found.high is None else f"{found.high:.4g}"
        band = (
            f"{low} to {high}" if low and high else f"at least {low}" if low else f"at most {high}"
        )
        words.append(f"{found.verdict}; a sound unit reads {band}")
    terminal.say(" - ".join(words), 1)


def show_standing(terminal: Terminal, standing: Standing) -> None:
    """A danger that stands or may; with a STOP of its own it stops this step at least."""
    first, *more = standing.lines
    terminal.say(first, strong=True)
    for line in more:
        terminal.say(line, 2)
    stop = standing.hazard.stop
    if stop is not None and not standing.stops:
        terminal.say(f"Stop if: {stop.covers}", 2)


def show_stop(terminal: Terminal, fired: FiredHazard, tag: Iterable[str] = ()) -> None:
    """A STOP: what to do, who takes over, what the tag says; never a way round."""
    hazard = fired.hazard
    terminal.say()
    terminal.say(f"{hazard.signal} - STOP", strong=True)
    terminal.say(hazard.what_to_do, strong=True)
    terminal.say(f"Hand over to: {hazard.defer_to}", 2)
    lines = tuple(tag)
    if lines:
        terminal.say("Write on the tag:", 2)
    for line in lines:
        terminal.say(line, 4)


def show_repair(terminal: Terminal, fault: Fault) -> None:
    """Why it failed, what to do about it, who may, and the proof."""
    who = [spoken((each,)) for each in fault.repair.who]
    if fault.repair.hand_over:
        terminal.say(TAG_OUT, strong=True)
    terminal.say(f"Repair: {fault.repair.what}")
    terminal.say(f"Who: {(' and ' if fault.repair.who_rule == 'all' else ' or ').join(who)}", 2)
    terminal.say(f"About {fault.repair.minutes:.0f} minutes; part: {fault.repair.part_cost}", 2)
    terminal.say(f"Why it failed: {fault.why}", 2)
    terminal.say(f"If left: {fault.if_left}", 2)
    for proof in fault.proof:
        terminal.say(f"Proof: {proof.text}", 2)


def show_ending(terminal: Terminal, conclusions: Conclusions, decision: Decision) -> None:
    """How the search ended, and what follows."""
    heads = {
        "named": "The cause is named.",
        "shortlist": "No test left is worth its time. The shortlist:",
        "nothing-wrong": "Nothing wrong has been found.",
        "outside": "The findings fit nothing in the rule base well.",
    }
    terminal.say()
    terminal.say(heads.get(decision.ending, decision.ending), strong=True)
    show_causes(terminal, conclusions)
    named = conclusions.named
    if named is not None:
        terminal.say_all(because(conclusions, named))
        show_repair(terminal, named.fault)
    for fault in conclusions.behind:
        terminal.say(f"Behind it, look for: {fault.name}", 2)
    for reading in conclusions.unexplained:
        name = conclusions.hypotheses.knowledge.tests[reading.test].name
        terminal.say(f"Not explained by it: {name}: {', '.join(reading.seen)}", 2)
    for test, phrase in decision.handed_over:
        name = conclusions.hypotheses.knowledge.tests[test].name
        terminal.say(f"Beyond your profile: {name}: {phrase}", 2)
