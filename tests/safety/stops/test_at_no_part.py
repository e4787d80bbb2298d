"""A danger is not made safe at a part that it cannot have come from.

A trainer's deeds, which lifted STOPs to their end: a thermostat, an air filter and a belt for
carbon monoxide, for smoke and for water in a switch. What makes carbon monoxide and what it comes
through (burner, exchanger, flue, vent, draft, gas pressure, air for combustion): common practice.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.at_no_part import why_at_no_part
from troubleshoot.safety.stops.reopening import NotAResult, in_words

CO, OUT, BREACH = "carbon-monoxide-in-room", "carbon-monoxide-evacuate", "heat-exchanger-breach"
SMOKE, WATER, GAS = "smoke-or-heat-now", "wet-electrical", "gas-odour"

AT_NO_PART = [
    *(
        (hazard, deed)
        for hazard in (CO, OUT, BREACH)
        for deed in (
            "replaced the thermostat", "replaced the air filter", "put in a new blower belt",
            "changed the contactor and the capacitor", "cleaned the evaporator coil",
            "replaced the blower motor, 0 ppm with the burner on", "cleared the drain",
            "replaced it with a new one",
        )
    ),
    (SMOKE, "replaced the thermostat"), (SMOKE, "changed the air filter, burnt smell gone"),
    (SMOKE, "replaced the batteries in the thermostat"), (SMOKE, "cleaned the condenser coil"),
    (SMOKE, "cleared the drain and the trap"), (SMOKE, "replaced it with a new one"),
    (WATER, "replaced the air filter and the belt"), (WATER, "replaced the thermostat"),
    (WATER, "new blower bearings fitted"), (WATER, "cleaned the fan wheel"),
    (GAS, "replaced the thermostat"),
]  # fmt: skip
AT_A_PART = [
    (CO, "flue was blocked by a nest, cleared it"), (CO, "replaced the heat exchanger"),
    (CO, "adjusted the gas pressure to 3.5 in wc"), (CO, "new inducer fitted, draft proved"),
    (CO, "unblocked the combustion air louver"), (CO, "cleaned and adjusted the burners"),
    (CO, "replaced the filter and the cracked exchanger"),
    (OUT, "boiler in the cellar was spilling, vent pipe refitted"),
    (OUT, "generator was moved to the far side of the roof"),
    (BREACH, "replaced the heat exchanger"),
    (SMOKE, "replaced the contactor and its burnt leads"), (SMOKE, "motor burnt out, replaced it"),
    (SMOKE, "replaced the belt that slipped and smoked"), (SMOKE, "lug remade and torqued"),
    (SMOKE, "thermostat had melted, replaced the thermostat"),
    (SMOKE, "filter had burnt, replaced the filter"),
    (WATER, "dried the disconnect, replaced its gasket"), (WATER, "sealed the conduit hub"),
    (WATER, "roof leak above it flashed and sealed, lugs replaced"),
    (SMOKE, "replaced the breaker and the air filter"),
    (WATER, "dried the fuses, replaced the wet air filter"),
    (WATER, "rewired the box after the water was out"),
]  # fmt: skip
AT_ANOTHER_PART = [
    (CO, "sealed the hatch by the heater"), (SMOKE, "refitted the bracket that rubbed"),
    (WATER, "refitted the rain hood over it"),
]  # fmt: skip
"""At a part that stands in no list: it may have come from there."""


@pytest.mark.parametrize(("hazard", "deed"), AT_NO_PART)
def test_what_cannot_make_it_is_no_result(hazard: str, deed: str, shipped: Knowledge) -> None:
    assert why_at_no_part(deed, shipped.hazards[hazard])
    with pytest.raises(NotAResult, match="names no part that"):
        in_words(shipped, deed, shipped.hazards[hazard])


@pytest.mark.parametrize(("hazard", "deed"), [*AT_A_PART, *AT_ANOTHER_PART])
def test_what_it_comes_from_is_one(hazard: str, deed: str, shipped: Knowledge) -> None:
    assert in_words(shipped, deed, shipped.hazards[hazard]) == deed


def test_a_part_is_wanted_only_where_a_danger_has_one(shipped: Knowledge) -> None:
    """A storm and somebody hurt come from no part of a unit."""
    for hazard in ("lightning", "somebody-hurt", "line-down-or-touched"):
        assert not why_at_no_part("replaced the thermostat", shipped.hazards[hazard])
