"""When a test pays: by its rate against what doubt is left, or by the wrong calls it spares."""

from __future__ import annotations

import pytest

from tests.building import base, case, fault, test_of
from tests.reasoning.choosing.test_next_test import one_question
from troubleshoot.reasoning.choosing.stopping import VALUE_OF_RIGHT, entropy, least_rate_on, pays
from troubleshoot.reasoning.conclude import Reasoner


def test_the_least_rate_is_doubt_among_the_causes_over_what_a_wrong_repair_costs() -> None:
    knowledge = one_question()
    found = Reasoner(knowledge).conclude(case(knowledge))
    causes = sum(c.probability for c in found.causes)
    chances = [c.probability / causes for c in found.causes]
    least = least_rate_on(found.ranking)
    assert least == pytest.approx(entropy(chances) / (1.1 * VALUE_OF_RIGHT * (1 - max(chances))))
    assert pays(least * 10, 0.0, 9.9, least) and not pays(least * 10, 0.0, 10.1, least)


def test_with_one_cause_alone_the_doubt_is_whether_it_is_there() -> None:
    knowledge = base([test_of("t", "low")], [fault("f", {"often": [{"t": "low"}]})])
    found = Reasoner(knowledge).conclude(case(knowledge))
    ranking = found.ranking
    chances = [found.causes[0].probability, ranking.nothing_wrong, ranking.outside]
    dearest = 1.1 * VALUE_OF_RIGHT * (1 - max(chances))
    assert least_rate_on(ranking) == pytest.approx(entropy(chances) / dearest)


def test_a_test_also_pays_where_the_wrong_calls_it_spares_cost_more_than_it_does() -> None:
    never_by_rate = 1e9
    assert pays(1.0, 0.2, 0.19 * VALUE_OF_RIGHT, never_by_rate)
    assert not pays(1.0, 0.2, 0.21 * VALUE_OF_RIGHT, never_by_rate)
