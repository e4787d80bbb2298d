"""Told of a STOP is a person who answered, by a role that is not the asker's own."""

from __future__ import annotations

import pytest

from troubleshoot.safety.stops.result import NotAResult
from troubleshoot.safety.stops.told import told

APPRENTICE, TECHNICIAN = frozenset({"apprentice"}), frozenset({"technician", "gas"})
SUPERVISED, GAS_ALONE = frozenset({"supervised"}), frozenset({"gas"})


@pytest.mark.parametrize(
    ("typed", "profiles"),
    [
        ("the apprentice, just now", APPRENTICE),
        ("helper, 2 pm", APPRENTICE),
        ("the helper, just now", SUPERVISED),
        ("an apprentice, 2 pm", SUPERVISED),
        ("technician, just now", TECHNICIAN),
        ("the tech, 2:10 pm", TECHNICIAN),
        ("the service mechanic just now", TECHNICIAN),
        ("the journeyman, just now", TECHNICIAN),
        ("the installer, 2:10 pm", TECHNICIAN),
        ("me and the technician, just now", TECHNICIAN),
    ],
)
def test_whoever_asks_is_not_told_by_their_own_role(typed: str, profiles: frozenset[str]) -> None:
    with pytest.raises(NotAResult, match="Somebody else"):
        told(typed, profiles)


@pytest.mark.parametrize("typed", ["Somebody, just now", "a passer-by, 2 pm", "the trainee"])
@pytest.mark.parametrize("profiles", [APPRENTICE, TECHNICIAN, GAS_ALONE])
def test_a_name_without_a_role_is_nobody_to_call_and_what_would_do_is_said(
    typed: str, profiles: frozenset[str]
) -> None:
    """They are not told that they named themselves, which they did not."""
    with pytest.raises(NotAResult, match="Say by role who was told, and when: the supervisor"):
        told(typed, profiles)


@pytest.mark.parametrize(
    "typed",
    [
        "left a note for the supervisor, just now",
        "left the supervisor a message, 2 pm",
        "left word with the office, 2 pm",
        "tried the supervisor, just now",
        "supervisor, voicemail, 2 pm",
        "texted the boss, 2:10 pm",
        "emailed the gas company just now",
        "sent the owner a text 5 min ago",
        "the gas company is engaged, just now",
        "waiting for the supervisor, 2 pm",
        "note to the supervisor, 2 pm",
    ],
)
def test_who_has_not_answered_was_not_told(typed: str) -> None:
    with pytest.raises(NotAResult, match="has not answered"):
        told(typed, TECHNICIAN)


@pytest.mark.parametrize(
    ("typed", "profiles"),
    [
        ("the supervisor, just now", APPRENTICE),
        ("the technician, just now", APPRENTICE),
        ("the technician, just now", GAS_ALONE),
        ("the technician, just now", frozenset()),
        ("lead technician, 2 pm", TECHNICIAN),
        ("certified refrigerant technician, 2 pm", TECHNICIAN),
        ("the technician and the gas company, 2 pm", TECHNICIAN),
        ("gas utility, by phone, just now", TECHNICIAN),
        ("911 just now", TECHNICIAN),
        ("texted the boss, he answered, 2:10 pm", TECHNICIAN),
        ("left a message, then reached the supervisor, 2:20 pm", TECHNICIAN),
    ],
)
def test_somebody_else_who_answered_was_told(typed: str, profiles: frozenset[str]) -> None:
    assert told(typed, profiles) == typed
