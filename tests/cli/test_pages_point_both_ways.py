"""A page says what its entry points to, and what points to it; which examples hold it."""

from __future__ import annotations

from troubleshoot.cli.pages import page_about
from troubleshoot.knowledge.model import Knowledge


def page(knowledge: Knowledge, name: str) -> list[str]:
    lines = page_about(knowledge, name)
    assert lines is not None
    return lines


def test_a_card_names_those_that_take_it_for_theirs(shipped: Knowledge) -> None:
    lines = page(shipped, "contactor-coil-open")
    (taken,) = (line for line in lines if line.startswith("Taken for it: "))
    takers = [f.name for f in shipped.faults.values() if "contactor-coil-open" in f.look_alikes]
    assert takers and all(name in taken for name in takers)


def test_a_card_names_what_it_may_lie_behind(shipped: Knowledge) -> None:
    (line,) = (x for x in page(shipped, "supply-voltage-low") if x.startswith("May lie behind: "))
    assert shipped.faults["contactor-coil-open"].name in line


def test_a_card_lists_its_examples(shipped: Knowledge) -> None:
    fault = shipped.faults["contactor-coil-open"]
    lines = page(shipped, fault.id)
    for example in fault.examples:
        wanted = "must name it" if example.names_it else "must not name it"
        assert f"Example, {wanted}: {example.name}" in lines


def test_a_test_names_the_cards_whose_examples_read_it(shipped: Knowledge) -> None:
    (line,) = (x for x in page(shipped, "contactor-coil-ohms") if x.startswith("In examples of: "))
    assert shipped.faults["contactor-coil-open"].name in line


def test_a_test_names_the_calls_that_begin_with_it(shipped: Knowledge) -> None:
    (line,) = (x for x in page(shipped, "air-filters") if x.startswith("Looked at first on: "))
    calls = [c.says for c in shipped.complaints.values() if "air-filters" in c.first_tests]
    assert calls and all(says in line for says in calls)
