"""The page of the work state tells what the program does, and nothing it does not."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from types import MappingProxyType

import pytest

from tests.cli.golden import golden
from tests.safety.test_work_state_guards import CIRCUIT_READY, MUST_NOT_STAND, MUST_STAND
from troubleshoot.cli import work_state_page as page
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import STEPS

Call = Callable[..., tuple[int, str, str]]

LOCKOUT = (
    'confirmed by: "locked"',
    "only after: the roof found safe to work on; every temporary jumper out; the occupants told; "
    "the fire panel on test; the unit stopped by its controls, or found not to stop",
    "locked: power: locked out; dead: not shown; discharged: none; fuse clips dead: no",
    "cannot lock: power: on; dead: not shown; discharged: none; fuse clips dead: no",
    "voided when: the lock comes off; nobody reported for half an hour, or since another day",
)
PROMISED = {
    "the lock comes off": ("dead: not shown", "discharged: none"),
    "a motor runs": ("dead: not shown", "discharged: none"),
    "an hour goes by": ("roof: not checked",),
    "nobody reported": (
        "meter: not proved",
        "dead: not shown",
        "gas: unsure",
        "occupants told: no",
    ),
}
"""An event -> what the README promises that it voids."""


def test_the_whole_page_is_as_it_was_last_read(command: Call) -> None:
    """It holds every declaration, so that none changes without a person who reads the page."""
    golden("work-state", command("rules", "explain", "work-state")[1])


def about(lines: list[str], step: str) -> list[str]:
    """The lines about one step."""
    start = next(i for i, line in enumerate(lines) if line.endswith(f"({step})"))
    return [line.strip() for line in lines[start + 1 : lines.index("", start)]]


@pytest.fixture
def lines(command: Call) -> list[str]:
    status, out, _ = command("rules", "explain", "work-state")
    assert status == 0
    return out.splitlines()


def test_every_step_stands_with_its_word_and_whether_enter_will_do(lines: list[str]) -> None:
    for step in STEPS.values():
        confirmed = next(each for each in about(lines, step.id) if each.startswith("confirmed by"))
        assert f'"{step.sound.replace("-", " ")}"' in confirmed
        assert ("Enter" in confirmed) is (step.by == "enter")


def test_a_step_has_something_to_come_after_where_the_order_of_work_says_so(
    lines: list[str],
) -> None:
    free = {step for step in STEPS if "only after: nothing, at any time" in about(lines, step)}
    bound = MUST_STAND.keys() | MUST_NOT_STAND.keys() | CIRCUIT_READY.keys()
    assert free == STEPS.keys() - bound


def test_the_lock_is_told_in_full(lines: list[str]) -> None:
    assert set(LOCKOUT) <= set(about(lines, "lockout"))


def test_what_the_readme_says_expires_does_so_on_the_page(lines: list[str]) -> None:
    voids = lines[lines.index("What voids what was confirmed:") :]
    for event, lost in PROMISED.items():
        line = next(each for each in voids if each.strip().startswith(event))
        assert all(words in line for words in lost), line


def test_hands_go_in_after_two_tests_for_dead_each_with_its_proof_of_the_meter(
    lines: list[str], shipped: Knowledge
) -> None:
    way = [line.partition(". ")[2] for line in lines if line[:4].strip().isdigit()]
    name = {step: shipped.tests[step].name for step in STEPS}
    order = [
        name["tester-proof"], name["lockout"], name["arc-clothing-on"], name["panels-off"],
        name["verified-dead"],
        f"{name['tester-proof']}, once more", f"{name['capacitor-discharge']}, capacitor",
        f"{name['drive-discharge']}, drive", f"{name['verified-dead']}, once more",
        f"{name['tester-proof']}, once more", name["panels-on"], name["lock-off"],
        name["restart-and-watch"],
    ]  # fmt: skip
    rest = iter(way)
    assert all(step in rest for step in order), way


def test_the_page_follows_the_declarations(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = list(page.work_state_page(shipped))
    careless = replace(STEPS["lockout"], by="enter", after=(), lost={})
    monkeypatch.setattr(page, "STEPS", MappingProxyType({**STEPS, "lockout": careless}))
    now = about(list(page.work_state_page(shipped)), "lockout")
    gone = set(about(before, "lockout")) - set(now)
    assert gone == {LOCKOUT[0], LOCKOUT[1], LOCKOUT[4]}
    assert "only after: nothing, at any time" in now
