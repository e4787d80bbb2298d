"""Who made it safe: somebody of the role who came, and not who stands near one or was one once.

Regression: an apprentice, a helper, somebody on the phone and a question were taken for the gas
utility or a licensed fitter. The second ten and the harmless were written before it was mended.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.reopening import fitting_roles, role
from troubleshoot.safety.stops.result import NotAResult

NOT_OF_THE_ROLE = [
    "gas utility apprentice",
    "licensed gas fitter's helper",
    "gas utility said on the phone it is fine",
    "a licensed gas fitter I used to know",
    "ex gas utility worker",
    "gas utility?",
    "fire service dog",
    "the gas man, I guess",
    "a trainee of the gas company",
    "gas fitter in training",
    "the gas guy's buddy",
    "gas utility, by text message",
    "gas fitter whose license lapsed",
    "some gas fitter, don't know who",
    "gas fitter student",
    "gas utility answering machine",
    "a so to speak gas fitter",
    "my neighbor, an old gas fitter",
    "the gas fitter, tomorrow",
    "the gas utility in 10 min",
    "licensed gas fitter, later",
]
OF_THE_ROLE = [
    ("gas utility, crew 4", "gas-utility"),
    ("licensed gas fitter with his apprentice", "gas-fitter"),
    ("the gas company's man, badge 77", "gas-utility"),
    ("gas fitter, license 1123", "gas-fitter"),
    ("gas utility emergency crew", "gas-utility"),
    ("gas man and his helper", "gas-utility"),
    ("somebody from the gas company", "gas-utility"),
]


@pytest.mark.parametrize("typed", NOT_OF_THE_ROLE)
def test_who_is_not_of_the_role_made_nothing_safe(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult):
        role(typed, fitting_roles(shipped.hazards["gas-odour"]))


@pytest.mark.parametrize(("typed", "named"), OF_THE_ROLE)
def test_who_came_is_of_the_role_with_whoever_helped(
    typed: str, named: str, shipped: Knowledge
) -> None:
    assert role(typed, fitting_roles(shipped.hazards["gas-odour"])) == named
