"""Pages about entries of the rule base, as `rules explain` shows them."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from troubleshoot.knowledge.checks import CHECKS, page_of
from troubleshoot.knowledge.model import Knowledge

Call = Callable[..., tuple[int, str, str]]


def test_a_state_of_the_limits_has_a_page_with_what_leans_on_it(
    command: Call, shipped: Knowledge
) -> None:
    out = " ".join(command("rules", "explain", "cold-outdoors")[1].split())
    assert shipped.limits["cold-outdoors"].applies_to in out
    assert shipped.procedures["refrigerant-readings-in-cold-weather"].reason in out


@pytest.mark.parametrize("name", ["live-work", "voltage-unbalance", "cold-outdoors"])
def test_a_page_names_the_published_text_of_its_source(
    name: str, command: Call, shipped: Knowledge
) -> None:
    """Regression: only the source's id was shown, and nothing read what it stands for."""
    entries = {**shipped.hazards, **shipped.tests, **shipped.limits}
    first = entries[name].source.split("; ")[0]
    assert shipped.sources[first] in command("rules", "explain", name)[1]


def test_every_check_is_listed_with_what_it_finds(command: Call) -> None:
    code, out, _ = command("rules", "explain", "checks")
    lines = out.splitlines()
    assert code == 0 and len(CHECKS) >= 30
    for name in CHECKS:
        assert lines[lines.index(f"  {name}") + 1].strip() == page_of(name)[0]
