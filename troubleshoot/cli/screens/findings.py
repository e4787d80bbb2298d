"""What an answer has come to: readings judged, causes, dangers, the ending and its repair."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from troubleshoot.cli.screens.cautions import whole_caution
from troubleshoot.cli.screens.stops import show_stop
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.prompts import Settled
from troubleshoot.dialogue.said import (
    Agreement,
    Causes,
    Danger,
    HowTo,
    OtherTest,
    StopElsewhere,
    StopNow,
    Verdict,
    WhatToType,
)
from troubleshoot.knowledge.model import Fault, Knowledge, Proof, Test
from troubleshoot.knowledge.spoken import spoken as spoken_word
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.ranking import Cause
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.safety.hazard_words import also_stands, first_orders
from troubleshoot.safety.stops.standing import Standing
from troubleshoot.visit.hearing.proofs_wanted import proofs_on
from troubleshoot.visit.telling.account import (
    cause_to_repair,
    causes_to_repair,
    listed_causes,
)
from troubleshoot.visit.telling.as_read import as_computed
from troubleshoot.visit.telling.explain import because
from troubleshoot.visit.telling.wording import (
    OUTSIDE_WHAT_THE_RULES_KNOW,
    TAG_OUT,
    bar,
    cause_line,
    effect_line,
    proof_line,
    who_repairs,
)

WOULD_TELL_MORE = "To know more, with the way there counted in:"
ONCE_IT_CHANGES = "Once that has changed, do TEST leads there again; tests lists what is left."

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
    "  refrigerant added 1 lb 4 oz from C-7",
    "                     keep what was weighed (or recovered ... into), with its cylinder",
    "  repaired CAUSE     say that this has been put right",
    "  done               finish: put the unit back and close the visit",
    "  q  or quit         keep the visit and leave; starting again goes on from here",
)


def show_finding(
    terminal: Terminal,
    knowledge: Knowledge,
    said: Verdict
    | Agreement
    | Causes
    | Danger
    | StopNow
    | StopElsewhere
    | HowTo
    | WhatToType
    | OtherTest,
) -> None:
    """What an answer has come to, or what was asked for besides."""
    if isinstance(said, Verdict):
        show_verdict(terminal, knowledge, said)
        if not said.reading.valid:
            terminal.say(f"It does not count: {said.reading.why_invalid}", 1)
    elif isinstance(said, Agreement):
        terminal.say(said.text, 1)
    elif isinstance(said, Causes):
        show_causes(terminal, said.conclusions)
    elif isinstance(said, Danger):
        show_standing(terminal, said.standing)
    elif isinstance(said, StopNow):
        show_stop(terminal, said.fired, said.tag, map(also_stands, said.others))
    elif isinstance(said, StopElsewhere):
        terminal.hold(first_orders(said.stopped.fired.hazard))
        others = map(also_stands, said.stopped.others)
        show_stop(terminal, said.stopped.fired, said.stopped.tag, others)
    elif isinstance(said, HowTo):
        show_how(terminal, knowledge, said.test)
        for hazard in said.cautions:
            terminal.say_together(whole_caution(hazard))
    elif isinstance(said, WhatToType):
        terminal.say_all(HELP)
    else:
        show_other_test(terminal, said)


def show_other_test(terminal: Terminal, other: OtherTest, lead: str = "") -> None:
    """A test to choose from, by its number behind the word that takes it."""
    name = with_place(other.test.name, other.where)
    minutes = "" if other.minutes is None else f": {other.minutes:.0f} min"
    terminal.say(f"{lead}{other.number} {name}{minutes}", 2)


def show_how(terminal: Terminal, knowledge: Knowledge, test: Test) -> None:
    """How a test is done, with what, and what makes its reading worthless."""
    for number, sentence in enumerate(test.how, start=1):
        terminal.say(f"{number}. {sentence}", 2)
    if test.instrument:
        terminal.say(f"With: {test.instrument}", 2)
    for reason in test.invalid_when:
        terminal.say(f"Does not count if: {reason}", 2)
    if terminal.is_small:  # there the question may have left out what they mean
        for outcome in test.outcomes:
            if outcome.means:
                terminal.say(f"{test.spoken(outcome.id)}: {outcome.means}", 2)
    if test.source:
        terminal.say(f"Source: {knowledge.published(test.source)}", 2)


def show_verdict(terminal: Terminal, knowledge: Knowledge, said: Verdict) -> None:
    """What a typed number was taken for; with its name what others make of it."""
    reading, found = said.reading, said.reading.classified
    if found is None:
        if reading.text and not reading.seen:
            lacks = said.lacks or "It cannot be judged until more is known."
            terminal.say(f"Kept. {lacks}", 1)
        return
    unit = knowledge.quantities[found.quantity].unit.removesuffix("-diff")
    spread = f" +/-{2 * found.u:.2g}" if found.u else ""
    outcome = knowledge.tests[reading.test].spoken(found.outcome)
    value = as_computed(found.value) if reading.computed else f"{found.value:.4g}"
    by = f" by {said.read_with}" if said.read_with else ""
    words = [f"{f'{said.name}: ' if said.name else ''}{value}{spread} {unit}{by}: {outcome}"]
    if found.low is not None or found.high is not None:
        low = "" if found.low is None else f"{found.low:.4g}"
        high = "" if found.high is None else f"{found.high:.4g}"
        band = (
            f"{low} to {high}" if low and high else f"at least {low}" if low else f"at most {high}"
        )
        words.append(f"{found.verdict}; a sound unit reads {band}")
    elif other := found.at_ends - {found.outcome}:
        test = knowledge.tests[reading.test]
        words.append(f"by the meter it may be {' or '.join(map(test.spoken, sorted(other)))}")
    if said.expected is not None:
        words.append(f"expected about {said.expected.span} {said.expected.unit}")
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


def show_causes(terminal: Terminal, conclusions: Conclusions) -> None:
    """The most likely causes with bars, what happened, and the rest in one line."""
    if conclusions.beyond:
        terminal.say_all((*conclusions.beyond, OUTSIDE_WHAT_THE_RULES_KNOW), 1)
        return
    causes = listed_causes(conclusions)
    for number, cause in enumerate(causes, start=1):
        line = cause_line(conclusions, cause, with_bar=not terminal.is_small)
        terminal.say(f"{number} {line}", 1)
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


def show_ending(terminal: Terminal, ending: Settled) -> None:
    """How the search ended, and what follows."""
    conclusions, decision = ending.conclusions, ending.decision
    heads = {
        "named": "The cause is named.",
        "shortlist": "No test left is worth its time. The shortlist:",
        "nothing-wrong": "Nothing wrong has been found.",
        "outside": "The findings fit nothing in the rule base well.",
    }
    if conclusions.beyond:
        heads["outside"] = "This unit is outside what the rules know."
    terminal.say()
    found = [fired.hazard.spoken for fired in conclusions.hazards if fired.found]
    if found and decision.ending == "nothing-wrong":
        besides = f"Nothing wrong has been found besides what stands: {'; '.join(found)}."
        terminal.say(besides, strong=True)
    else:
        terminal.say(heads.get(decision.ending, decision.ending), strong=True)
    show_causes(terminal, conclusions)
    accused = cause_to_repair(conclusions)
    if accused is not None:
        terminal.say_all(because(conclusions, accused))
        knowledge, unit = conclusions.hypotheses.knowledge, conclusions.case.unit
        proofs = proofs_on(knowledge, unit, accused.fault)
        show_repair(terminal, accused.fault, proofs, ending.before_repair)
    else:
        show_who_repairs(terminal, causes_to_repair(conclusions), ending.before_repair)
    for fault in conclusions.behind:
        terminal.say(f"Behind it, look for: {fault.name}", 2)
    for reading in conclusions.unexplained:
        test = conclusions.hypotheses.knowledge.tests[reading.test]
        seen = ", ".join(map(test.spoken, reading.seen))
        terminal.say(f"Not explained by it: {test.name}: {seen}", 2)
    for beyond, phrase in decision.handed_over:
        name = conclusions.hypotheses.knowledge.tests[beyond].name
        terminal.say(f"Beyond your profile: {name}: {phrase}", 2)
    for step in decision.left_out:
        name = conclusions.hypotheses.knowledge.tests[step].name
        terminal.say(f"Left out: all that needs this first: {name}. It failed each time.", 2)
    if decision.left_out:
        terminal.say(ONCE_IT_CHANGES, 2)
    if ending.left:
        terminal.say(WOULD_TELL_MORE)
    for other in ending.left:
        show_other_test(terminal, other, "do ")


def show_who_repairs(terminal: Terminal, causes: Sequence[Cause], before: str) -> None:
    """Who may repair each of the leading causes, after what stands `before` any of it."""
    if not causes:
        return
    if any(cause.fault.repair.hand_over for cause in causes):
        terminal.say(TAG_OUT, strong=True)
    if before:
        terminal.say(before, strong=True)
    for number, cause in enumerate(causes, start=1):
        terminal.say(f"Who repairs {number}: {who_repairs(cause.fault)}", 2)


def show_repair(terminal: Terminal, fault: Fault, proofs: Iterable[Proof], before: str) -> None:
    """Why it failed, what to do about it after what stands `before` it, who may, and the proof."""
    if fault.repair.hand_over:
        terminal.say(TAG_OUT, strong=True)
    if before:
        terminal.say(before, strong=True)
    terminal.say(f"Repair: {fault.repair.what}")
    terminal.say(f"Who: {who_repairs(fault)}", 2)
    cost = spoken_word(fault.repair.part_cost)
    terminal.say(f"About {fault.repair.minutes:.0f} minutes; part: {cost}", 2)
    terminal.say(f"Why it failed: {fault.why}", 2)
    terminal.say(f"If left: {fault.if_left}", 2)
    for proof in proofs:
        terminal.say(proof_line(proof), 2)
