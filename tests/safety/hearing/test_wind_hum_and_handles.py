"""Dangers of the moment that were told in other words than the rules had: wind, hum, hot handles.

Regression: wind is 45 mph was a unit's name, and one article decided whether a hot disconnect
stopped. The sentences are a judge's and, beside them, the mender's own. A gust throws a person at
about 25 mph (common practice, no source).
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.reporting import reported

KNOWLEDGE = load_shipped()


@pytest.mark.parametrize(
    ("hazard", "typed"),
    [
        ("wind-or-slick-roof", "gusts are rocking me, must be 40 mph"),
        ("wind-or-slick-roof", "wind is 45 mph"),
        ("wind-or-slick-roof", "gusts to 40 mph"),
        ("wind-or-slick-roof", "wind must be 30 mph up here"),
        ("scorched-or-hot-wiring", "disconnect handle is hot and buzzing"),
        ("scorched-or-hot-wiring", "the disconnect is hot and buzzing"),
        ("scorched-or-hot-wiring", "handle of the disconnect is buzzing and hot"),
        ("scorched-or-hot-wiring", "disconnect handle is hot"),
        ("scorched-or-hot-wiring", "contactor is hot and buzzing"),
        ("scorched-or-hot-wiring", "fused disconnect is sizzling and warm"),
        ("wind-or-slick-roof", "it is blowing 50 miles an hour up here"),
        ("compressor-hums", "scroll is growling and the amp clamp says 95 amps"),
        ("unexplained-voltage", "frame of the unit measures 48 volts to the conduit"),
        ("compressor-hums", "comp is humming right now and drawing 90 amps"),
        ("compressor-hums", "compressor humming and pulling 120 a"),
        ("compressor-hums", "compressor is humming right now"),
        ("delayed-light-off", "loud bang when the heat lights"),
        ("delayed-light-off", "loud bang when the burner lights"),
        ("delayed-light-off", "went bang when it lit"),
        ("smoke-or-heat-now", "loud bang and the lights went out"),
        ("smoke-or-heat-now", "loud bang when the lights went out"),
        ("smoke-or-heat-now", "loud bang at the panel when the heat starts"),
        ("smoke-or-heat-now", "loud bang from the panel"),
        ("smoke-or-heat-now", "loud bang, then smoke, when the heat lights"),
    ],
)
def test_it_is_told_first_as_what_it_is(hazard: str, typed: str) -> None:
    assert spoken_of(KNOWLEDGE, typed)[0].id == reported(KNOWLEDGE, typed)[0].id == hazard
    assert told_among(KNOWLEDGE, typed)


@pytest.mark.parametrize(
    "typed",
    [
        "wind is 10 mph",
        "wind is calm",
        "wind under 25 mph",
        "wind was 40 mph yesterday",
        "disconnect is 25 ft away, wind is fine",
        "disconnect handle is up",
        "hot leg at the disconnect, contactor buzzing",
        "contactor buzzing",
        "compressor hums and draws 7 amps like it should",
        "compressor running, drawing 20 amps, hum is normal",
        "compressor hummed yesterday at 90 amps",
        "transformer hums",
        "transformer is warm and humming",
        "fan is blowing 25 miles of air",
        "scroll growls on start, then runs fine",
    ],
)
def test_what_is_near_to_it_stops_nothing(typed: str) -> None:
    assert spoken_of(KNOWLEDGE, typed) == told_among(KNOWLEDGE, typed) == ()
