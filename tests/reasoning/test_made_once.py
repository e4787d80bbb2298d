"""What is made of a rule base is made once for all who reason over it, and no other's is taken."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace

from tests.building import base, case, fault, test_of, unit_of
from tests.reasoning.test_hazards import said
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.made_once import MOST_BASES, MOST_KINDS, made_of
from troubleshoot.reasoning.unit.equipment import read_unit

KNOWLEDGE = base(
    [test_of("look", "bad"), test_of("other", "bad")],
    [fault("one", {"often": [{"look": "bad"}]}), fault("two", {"often": [{"other": "bad"}]})],
)


def test_reasoners_side_by_side_conclude_what_each_would_alone() -> None:
    bad, other = said("look", "bad"), said("other", "bad")
    cases = [case(KNOWLEDGE, bad), case(KNOWLEDGE, other), case(KNOWLEDGE, bad, other)]
    one, two = Reasoner(KNOWLEDGE), Reasoner(KNOWLEDGE)
    for each in (*cases, *reversed(cases)):
        alone = Reasoner(replace(KNOWLEDGE)).conclude(each)
        for reasoner in (one, two):
            found = reasoner.conclude(each)
            assert found.readings == alone.readings and found.procedures == alone.procedures
            assert [c.fault.id for c in found.causes] == [c.fault.id for c in alone.causes]
            assert [c.probability for c in found.causes] == [c.probability for c in alone.causes]


def test_it_is_kept_by_the_very_rule_base_and_the_kind_of_unit() -> None:
    made = made_of(KNOWLEDGE)
    turned = replace(KNOWLEDGE, faults=dict(reversed(KNOWLEDGE.faults.items())))
    assert turned == KNOWLEDGE and made_of(turned) is not made
    assert made_of(KNOWLEDGE) is made
    units = [
        unit_of(KNOWLEDGE, condenser_fans=n % 8 + 1, circuits=n // 8 + 1) for n in range(MOST_KINDS)
    ]
    found = [made.of_unit(unit)[0] for unit in units]
    assert [each.unit for each in found] == units
    assert all(made.of_unit(u)[0] is h for u, h in zip(units, found, strict=True))
    made.of_unit(unit_of(KNOWLEDGE))
    assert made.of_unit(units[0])[0] is not found[0]
    for _ in range(MOST_BASES):
        made_of(replace(KNOWLEDGE))
    assert made_of(KNOWLEDGE) is not made


def test_units_of_one_kind_have_the_same_hypotheses(shipped: Knowledge) -> None:
    """The weights hang on which plate values are known, never on what they are."""
    made = made_of(shipped)
    facts = {"refrigerant": "R-410A", "compressor-rla": "8.9 A"}
    first = made.of_unit(read_unit(shipped, facts))[0]
    assert made.of_unit(read_unit(shipped, {**facts, "compressor-rla": "21 A"}))[0] is first
    for other in ({"refrigerant": "R-410A"}, {**facts, "refrigerant": "R-22"},
                  {**facts, "circuits": 2}, {**facts, "blower-fla": "4 A"}):  # fmt: skip
        assert made.of_unit(read_unit(shipped, other))[0] is not first


def test_no_thread_runs_the_chains_of_another() -> None:
    with ThreadPoolExecutor(1) as elsewhere:
        assert elsewhere.submit(made_of, KNOWLEDGE).result() is not made_of(KNOWLEDGE)
