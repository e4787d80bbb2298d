"""`rules test --changed` may try too much and never too little, whatever was edited."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from troubleshoot.authoring.footing import Footing
from troubleshoot.authoring.held import run_examples
from troubleshoot.authoring.trial import case_data
from troubleshoot.knowledge.model import Evidence, Example, Fault, Finding, Given, Knowledge
from troubleshoot.knowledge.vocabulary import GRADES
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.cases.file import read_case

Call = Callable[..., tuple[int, str, str]]
Edit = Callable[[random.Random, Knowledge, Fault], Knowledge]

COIL = "contactor-coil-open"


def with_card(knowledge: Knowledge, fault: Fault) -> Knowledge:
    return replace(knowledge, faults={**knowledge.faults, fault.id: fault})


def another_grade(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    evidence = list(fault.evidence)
    number = rng.randrange(len(evidence))
    evidence[number] = replace(evidence[number], grade=rng.choice(GRADES))
    return with_card(knowledge, replace(fault, evidence=tuple(evidence)))


def one_less(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    gone = rng.choice(fault.evidence)
    left = tuple(each for each in fault.evidence if each is not gone)
    return with_card(knowledge, replace(fault, evidence=left))


def any_finding(rng: random.Random, knowledge: Knowledge) -> Finding:
    test = rng.choice([each for each in knowledge.tests.values() if each.outcomes])
    return Finding(test.id, (rng.choice(test.outcomes).id,))


def one_more(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    findings = tuple(any_finding(rng, knowledge) for _ in range(rng.choice([1, 1, 2])))
    more = Evidence(rng.choice(GRADES), findings)
    return with_card(knowledge, replace(fault, evidence=(more, *fault.evidence)))


def given_together(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    pair = rng.sample([item.findings[0] for item in fault.evidence] * 2, 2)
    told = Given(rng.choice(GRADES), pair[0], (pair[1],))
    return with_card(knowledge, replace(fault, given=(told, *fault.given)))


def as_common(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    return with_card(knowledge, replace(fault, how_common=rng.choice(["very-common", "rare"])))


def on_other_units(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    needed = rng.choice([each.exists_when for each in knowledge.faults.values()])
    return with_card(knowledge, replace(fault, exists_when=needed))


def without_layers(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    return with_card(knowledge, replace(fault, overrides=(), pictures=fault.pictures[:1]))


def gone(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    left = {name: each for name, each in knowledge.faults.items() if name != fault.id}
    return replace(knowledge, faults=left)


def twin(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    return with_card(knowledge, replace(fault, id=f"{fault.id}-too"))


def brings_another_call(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    call = rng.choice(list(knowledge.complaints.values()))
    brought = {**call.brought_by, fault.id: rng.choice(GRADES)}
    calls = {**knowledge.complaints, call.id: replace(call, brought_by=brought)}
    return replace(knowledge, complaints=calls)


def another_test(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    """An outcome fewer, in use or not: limits and chances move."""
    test = rng.choice([each for each in knowledge.tests.values() if len(each.outcomes) > 2])
    changed = replace(test, outcomes=test.outcomes[:-1])
    return replace(knowledge, tests={**knowledge.tests, test.id: changed})


def no_procedure(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    left = dict(knowledge.procedures)
    left.pop(rng.choice(list(left)))
    return replace(knowledge, procedures=left)


def no_hazard(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Knowledge:
    left = dict(knowledge.hazards)
    left.pop(rng.choice(list(left)))
    return replace(knowledge, hazards=left)


EDITS: tuple[Edit, ...] = (
    another_grade, one_less, one_more, given_together, as_common, on_other_units, without_layers,
    gone, twin, brings_another_call, another_test, no_procedure, no_hazard,
)  # fmt: skip


def some_examples(rng: random.Random, knowledge: Knowledge, fault: Fault) -> Iterator[Any]:
    near = [fault, *(knowledge.faults[name] for name in fault.look_alikes)]
    for card in (*near[:3], *rng.sample(list(knowledge.faults.values()), 4)):
        if card.examples:
            yield card, rng.choice(card.examples)


def comes_to(knowledge: Knowledge, example: Example) -> object:
    """All that is told of an example, to the last bit, or the error that it is."""
    try:
        got = Reasoner(knowledge).conclude(read_case(knowledge, case_data(example)))
    except (KeyError, ValueError) as error:
        return repr(error)
    told = [(c.fault.id, c.at, c.probability) for c in got.causes]
    return told, [(e.fault.id, e.probability) for e in got.effects]


@settings(max_examples=13)
@given(st.integers(0, 2**32))
def test_what_is_left_out_comes_to_the_same_to_the_last_bit(shipped: Knowledge, seed: int) -> None:
    rng = random.Random(seed)
    fault = rng.choice([each for each in shipped.faults.values() if len(each.evidence) > 2])
    changed = rng.choice(EDITS)(rng, shipped, fault)
    changed = replace(changed, digest=f"edited {seed}")
    before, after = Footing(shipped), Footing(changed)
    for card, example in some_examples(rng, shipped, fault):
        if before.mark(card, example) == after.mark(card, example):
            assert comes_to(shipped, example) == comes_to(changed, example)


def test_only_what_a_grade_can_affect_is_tried(shipped: Knowledge, tmp_path: Path) -> None:
    cards = [each for each in shipped.faults.values() if each.subsystem == "contactors"]
    first = run_examples(shipped, cards, tmp_path, changed=True)
    assert first.unchanged == 0 and not any(trial.failure for trial in first.trials)
    fault = shipped.faults[COIL]
    moved = replace(fault.evidence[0], grade="sometimes")
    changed = with_card(shipped, replace(fault, evidence=(moved, *fault.evidence[1:])))
    changed = replace(changed, digest="moved")
    cards = [changed.faults[each.id] for each in cards]
    second = run_examples(changed, cards, tmp_path, changed=True)
    assert 0 < len(second.trials) < len(first.trials) / 2
    assert {COIL} <= {trial.fault for trial in second.trials}
    assert second.unchanged + len(second.trials) == len(first.trials)


def test_what_fails_is_tried_again_until_it_holds(shipped: Knowledge, tmp_path: Path) -> None:
    fault = shipped.faults[COIL]
    example = replace(fault.examples[0], names_it=not fault.examples[0].names_it)
    wrong = replace(fault, examples=(example,))
    for _ in range(2):
        run = run_examples(shipped, [wrong], tmp_path, changed=True)
        assert run.unchanged == 0 and run.trials[0].failure
    unread = replace(example, readings=({"test": "supply-air-temperature", "text": "14 psig"},))
    for _ in range(2):
        run = run_examples(shipped, [replace(fault, examples=(unread,))], tmp_path, changed=True)
        assert run.trials[0].failure.startswith("it cannot be read")


def test_where_nothing_can_be_kept_everything_is_tried(shipped: Knowledge) -> None:
    fault = shipped.faults[COIL]
    for _ in range(2):
        assert len(run_examples(shipped, [fault], None, changed=True).trials) == len(fault.examples)


def test_the_command_says_what_it_left_out(command: Call) -> None:
    code, out, _ = command("rules", "test", COIL)
    tried = int(out.split()[0])
    code, out, _ = command("rules", "test", COIL, "--changed")
    assert code == 0 and out.splitlines() == [
        f"Left out, as nothing that they rest on has changed since they held: {tried}",
        "0 examples tried, 0 failed, 0 known gaps in draft cards",
    ]
