"""`rules explain` shows every chain that the engine runs as a rule that a senior can read."""

from __future__ import annotations

from collections.abc import Callable

from troubleshoot.cli.chain_words import MOST_RULES, chain_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.chains import compile_chains

Call = Callable[..., tuple[int, str, str]]


def test_the_way_from_a_reading_to_a_caution_is_told(command: Call, shipped: Knowledge) -> None:
    look = shipped.tests["heat-exchanger-look"].name
    for entry in ("heat-exchanger-breach", "heat-exchanger-look"):
        said = " ".join(command("rules", "explain", entry)[1].split())
        assert f'If "{look}" is or may be crack' in said, entry
        assert "DANGER, heat exchanger breach, STOP whole job." in said


def test_every_rule_of_the_engine_can_be_said(shipped: Knowledge) -> None:
    owners = {rule.of for rule in compile_chains(shipped)}
    assert len(owners) > 100
    for owner in owners:
        lines = list(chain_of(shipped, owner))
        assert lines and len(lines) <= MOST_RULES + 1
        assert all(":" in line or line.startswith("and ") for line in lines)
        assert not any("helper" in line or "seen:" in line for line in lines)


def test_what_chains_nothing_has_no_such_part(command: Call) -> None:
    assert "engine chains" not in command("rules", "explain", "safe-advice")[1]
