"""Carbon monoxide in the air of a gas unit: what makes it and lets it out comes first.

Trade texts on alarms look at vent, exchanger, soot and exhaust drawn back in before anything else
(common practice, no source); the limits are those of carbon-monoxide summaries.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from troubleshoot.cli.assess import assess
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.equipment import InputRefused
from troubleshoot.visit.cases.file import read_case

UNIT = {"heat": "gas", "fuel": "natural gas", "draft": "induced", "refrigerant": "R-454B"}
MAKE_IT = {
    "vent-blocked", "heat-exchanger-cracked", "heat-exchanger-sooted",
    "exhaust-drawn-into-outdoor-air",
}  # fmt: skip


@pytest.mark.parametrize("complaint", ["heat-short-cycles", "carbon-monoxide-alarm"])
@pytest.mark.parametrize("read", ["45 ppm", "180 ppm"])
def test_vent_and_exchanger_come_first(complaint: str, read: str, shipped: Knowledge) -> None:
    """A flame rod came first, and the reading was not explained."""
    readings = [{"test": "room-carbon-monoxide", "text": read}]
    case = read_case(shipped, {"unit": UNIT, "complaint": complaint, "readings": readings})
    causes = [cause.fault.id for cause in Reasoner(shipped).conclude(case).causes]
    assert {*causes[:2]} <= MAKE_IT, causes


def case_of(test: str, text: str) -> dict[str, Any]:
    return {"unit": UNIT, "complaint": "no-heat", "readings": [{"test": test, "text": text}]}


def refusal_of(knowledge: Knowledge, test: str, text: str) -> str:
    with pytest.raises(InputRefused) as refused:
        read_case(knowledge, case_of(test, text))
    return str(refused.value)


@pytest.mark.parametrize(
    ("text", "hazard"),
    [
        ("180 ppm", "carbon-monoxide-evacuate"),
        ("70 ppm", "carbon-monoxide-evacuate"),
        ("20 ppm", "carbon-monoxide-in-room"),
    ],
)
def test_a_number_in_the_supply_air_is_taken(
    text: str, hazard: str, tmp_path: Path, shipped: Knowledge
) -> None:
    file = tmp_path / "case.json"
    file.write_text(json.dumps(case_of("supply-air-carbon-monoxide", text)), "utf-8")
    done = CliRunner().invoke(assess, [str(file)])
    said = " ".join(done.output.split())
    assert done.exit_code == 0 and f"STOP: {shipped.hazards[hazard].what_to_do}" in said


@pytest.mark.parametrize(
    ("test", "text", "hazard"),
    [
        ("refrigerant-sweep-a2l", "30 % LFL", "flammable-refrigerant-found"),
        ("refrigerant-sweep-a2l", "40 ppm", "flammable-refrigerant-found"),
        ("supply-air-carbon-monoxide", "about 180 or so", "carbon-monoxide-evacuate"),
        ("gas-joint-bubble-test", "20 % LEL at the union", "gas-odour"),
        ("service-receptacle", "90 V from the cabinet to ground", "unexplained-voltage"),
    ],
)
def test_what_is_refused_does_not_hide_its_danger(
    test: str, text: str, hazard: str, shipped: Knowledge
) -> None:
    """A form error said nothing of it."""
    assert shipped.hazards[hazard].what_to_do in refusal_of(shipped, test, text)


def test_what_is_refused_and_harmless_tells_of_no_danger(shipped: Knowledge) -> None:
    assert "DANGER" not in refusal_of(shipped, "refrigerant-sweep-a2l", "0 % LFL")
