"""The steps before any tool is taken out: the roof, the people, who helps, what is worn."""

from __future__ import annotations

from typing import Final

from troubleshoot.safety import steps
from troubleshoot.safety.changes import any_other, only_if, sets
from troubleshoot.safety.declaration import Outcomes, SafetyStep
from troubleshoot.safety.step_guards import (
    ARC_CLOTHING_IF_480,
    ARC_CLOTHING_IF_LIVE,
    ARC_CLOTHING_IF_OPEN,
    ARC_CLOTHING_ON,
    AWAY_FROM_LIVE,
    EDGE_NEAR,
    FIRE_PANEL_IN_SERVICE,
    FIRE_PANEL_ON_TEST,
    HELP_THERE,
    HELP_THERE_IF_LIVE,
    HELP_THERE_IF_OPEN,
    PANEL_ON_TEST,
    PEOPLE_TOLD,
    ROOF_SAFE,
)
from troubleshoot.safety.work_state import WorkState

_NEAR_AN_EDGE: Final = frozenset({"edge-6-to-15-ft", "edge-under-6-ft"})


def _edge_or_no_go(state: WorkState, place: str, outcomes: Outcomes) -> WorkState:
    """Within 15 ft of an edge nobody works before it is said what protects them there."""
    found = set(outcomes) - {"safe"}
    near = bool(found) and found <= _NEAR_AN_EDGE
    return state.with_facts(roof="edge-near" if near else "no-go")


def _panel_may_be_on_test(state: WorkState, place: str) -> WorkState:
    return state if state.fire_panel == "in-service" else state.with_facts(fire_panel="unsure")


def _looked_at(state: WorkState) -> bool:
    return state.roof in ("go", "edge-near")


ROOF: Final = SafetyStep(
    id=steps.ROOF,
    sound="safe",
    also_sound=_NEAR_AN_EDGE,
    number_says_part=True,
    less_is_worse=True,
    brings=(ROOF_SAFE,),
    does=sets(roof="go"),
    otherwise=_edge_or_no_go,
    lost={"hour-passed": sets(roof="not-checked"), "resumed": sets(roof="not-checked")},
    gone=only_if(_looked_at, sets(roof="not-checked")),
)
EDGE_PROTECTION: Final = SafetyStep(
    id=steps.EDGE_PROTECTION,
    sound="on",
    after=(EDGE_NEAR,),
    brings=ROOF.brings,
    does=sets(roof="go"),
    otherwise=any_other(sets(roof="edge-near")),
    lost=ROOF.lost,
    gone=ROOF.gone,
)
TELL_OCCUPANTS: Final = SafetyStep(
    id=steps.TELL_OCCUPANTS,
    sound="told",
    brings=(PEOPLE_TOLD,),
    does=sets(occupants_told=True),
    otherwise=any_other(sets(occupants_told=False)),
    lost={"resumed": sets(occupants_told=False)},
    gone=sets(occupants_told=False),
)
TELL_FIRE_PANEL: Final = SafetyStep(
    id=steps.TELL_FIRE_PANEL,
    sound="on-test",
    brings=(FIRE_PANEL_ON_TEST, PANEL_ON_TEST),
    does=sets(fire_panel="on-test"),
    otherwise=any_other(sets(fire_panel="unsure")),
    lost={"resumed": _panel_may_be_on_test},
    gone=_panel_may_be_on_test,
    hangs_on=("duct-smoke-detector",),
    settles={"no-detector": ("duct-smoke-detector", "not-fitted")},
)
FIRE_PANEL_BACK: Final = SafetyStep(
    id=steps.FIRE_PANEL_BACK,
    sound="in-service",
    brings=(FIRE_PANEL_IN_SERVICE,),
    does=sets(fire_panel="in-service"),
    in_other_words=frozenset({steps.TELL_FIRE_PANEL}),
)
SECOND_PERSON: Final = SafetyStep(
    id=steps.SECOND_PERSON,
    sound="there",
    brings=(HELP_THERE, HELP_THERE_IF_OPEN, HELP_THERE_IF_LIVE),
    does=sets(second_person=True),
    otherwise=any_other(sets(second_person=False)),
    lost={"resumed": sets(second_person=False)},
    gone=sets(second_person=False),
    hangs_on=("line-volts-class",),
)

# What was locked out counts as live until it has been tested dead (NFPA 70E 120.5), so that this
# comes before its panel too. Nobody dresses in front of an open, live one, but where a jumper has
# to come out before it can be switched off.
ARC_CLOTHING: Final = SafetyStep(
    id=steps.ARC_CLOTHING,
    sound="dressed",
    after=(AWAY_FROM_LIVE,),
    brings=(ARC_CLOTHING_ON, ARC_CLOTHING_IF_480, ARC_CLOTHING_IF_OPEN, ARC_CLOTHING_IF_LIVE),
    does=sets(arc_clothing=True),
    otherwise=any_other(sets(arc_clothing=False)),
    lost={"resumed": sets(arc_clothing=False)},
    gone=sets(arc_clothing=False),
    hangs_on=SECOND_PERSON.hangs_on,
)
