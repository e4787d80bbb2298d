"""Told of a STOP is a person who answered, by a role that is not the asker's own."""

from __future__ import annotations

import pytest

from troubleshoot.safety.stops.reopening import NotAResult
from troubleshoot.safety.stops.told import told

APPRENTICE, TECHNICIAN = frozenset({"apprentice"}), frozenset({"technician", "gas"})


@pytest.mark.parametrize(
    ("typed", "profiles"),
    [
        ("the apprentice, just now", APPRENTICE),
        ("helper, 2 pm", APPRENTICE),
        ("technician, just now", TECHNICIAN),
        ("the tech, 2:10 pm", TECHNICIAN),
        ("the service mechanic just now", TECHNICIAN),
        ("me and the technician, just now", TECHNICIAN),
    ],
)
def test_whoever_asks_is_not_told_by_their_own_role(typed: str, profiles: frozenset[str]) -> None:
    with pytest.raises(NotAResult, match="Somebody else"):
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
