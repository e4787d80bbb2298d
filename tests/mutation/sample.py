"""A small sample of mutants, each with a test that kills it: run on every change, in a copy.

`python -m tests.mutation.sample FOLDER` prints what came of each, a line of JSON: the mutant's name
and the test that killed it.
"""

from __future__ import annotations

import json
import sys
from dataclasses import replace
from pathlib import Path

from tests.mutation.mutate import CHECKOUT, all_mutants
from tests.mutation.trying import copy_of, ready, tried

SAMPLE = {
    "safety/guards.py:GUARDS:without charge_is_bled": (
        "safety/test_work_state_guards.py::test_a_test_is_shown_exactly_when_nothing_is_missing"
    ),
    "safety/stops/parts.py:_serves:always:at is None or at in places or None in places": (
        "safety/stops/test_lifting.py::test_one_answer_for_the_whole_unit_serves_each_place"
    ),
    "safety/stops/lifting.py:finding_of:without outcome in reading.possible:reading.test == test "
    "and outcome in reading.possible": (
        "safety/stops/test_findings.py::test_a_stop_hangs_on_the_place_where_the_outcome_was_found"
    ),
    "safety/stops/afresh.py:taken_by:without *(knowledge.tests[step.id] for step in s:(test, "
    "*(knowledge.tests[step.id] for step in steps[:1]))": (
        "safety/stops/test_afresh.py::test_the_person_for_the_next_step_on_the_way_is_asked_for_not_only_for_"
        "the_finding"
    ),
    "safety/work_state.py:cautious:right of:one.leads_off | other.leads_off": (
        "safety/test_cautious.py::test_what_protects_must_be_so_in_both_and_what_is_left_behind_in_either"
    ),
    'safety/work_state.py:cautious:first:one.gas if one.gas == other.gas else "unsure"': (
        "safety/test_cautious.py::test_what_could_be_either_is_unsure"
    ),
    "safety/work_state.py:cautious:without one.gas == other.gas:one.gas_swept and other.gas_swept "
    "and one.gas == other.gas": (
        "safety/test_cautious.py::test_gas_that_was_shut_or_not_is_swept_for_again"
    ),
    "safety/transitions.py:after_step:without:changed = changed.with_facts(area_clear=False)": (
        "safety/test_transitions.py::test_the_area_is_no_longer_clear_once_work_goes_on"
    ),
    "safety/declared/roof_and_people.py:_edge_or_no_go:without found <= _NEAR_AN_EDGE:bool(found) "
    "and found <= _NEAR_AN_EDGE": (
        "safety/test_step_effects.py::test_a_step_changes_this_and_nothing_else"
    ),
    'safety/needs.py:needs_of:without "meter-proved" in needed:"meter-proved" in needed or '
    '(test.kind == "measurement" and ': (
        "safety/test_needs.py::test_a_meter_is_proved_where_it_says_what_is_live"
    ),
    'safety/profiles.py:required:without test.exposes != "none":test.work_state in _LIVE or '
    'test.exposes != "none"': (
        "safety/test_who_and_which_unit.py::test_what_a_test_opens_says_who_does_it"
    ),
    "visit/events/undoing.py:WALLS:without DangerReported": (
        "visit/events/test_undoing.py::test_no_undo_reaches_past_a_stop_a_danger_or_what_came_of_it"
    ),
    "visit/events/undoing.py:_dropped:always:not follows(events[i])": (
        "visit/events/test_undoing.py::test_what_was_aimed_at_since_goes_with_it_and_what_was_aimed_at_"
        "before_stays"
    ),
}
"""Mutant -> the test that kills it. Most of them lived once."""

NOTHING_CHANGED = "nothing changed"
"""Stands in the sample for the sound module, which has to survive."""


def results(folder: Path) -> dict[str, str]:
    """Mutant -> the test that killed it, or nothing; makes its copy in the folder."""
    made = {mutant.name: mutant for mutant in all_mutants()}
    copy = copy_of(CHECKOUT, folder)
    ready(copy)
    tests = {name: f"tests/{test}" for name, test in SAMPLE.items()}
    some = made[next(iter(SAMPLE))]
    sound = replace(some, name=NOTHING_CHANGED, end=some.start, new="")
    killers = {NOTHING_CHANGED: tried(sound, copy, sorted(set(tests.values())))}
    for name, test in tests.items():
        killers[name] = tried(made[name], copy, [test]).removeprefix("tests/")
    return killers


if __name__ == "__main__":
    print(json.dumps(results(Path(sys.argv[1]))))
