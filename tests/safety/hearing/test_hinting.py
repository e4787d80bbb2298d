"""Where words hint at a danger and no phrase is heard it is asked; harmless words are not.

What is asked about stops nothing, so the net may be wide; it must not nag.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.safety.hearing.test_spoken_dangers import lines
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import named, spoken_of
from troubleshoot.safety.hearing.hinting import hinted, hints
from troubleshoot.safety.hearing.hinting_words import MOST_AT_INLET, MOST_AT_MANIFOLD
from troubleshoot.safety.hearing.reporting import reported

KNOWLEDGE = load_shipped()
HINTED = lines("hints.txt")
ONE_IN = 10
"""Of everyday complaints that may be asked about: one in so many."""


@pytest.mark.parametrize("typed", HINTED)
def test_what_is_in_no_phrase_is_asked_about(typed: str) -> None:
    assert hints(typed)
    assert not spoken_of(KNOWLEDGE, typed) and not told_among(KNOWLEDGE, typed)


@pytest.mark.parametrize("typed", lines("ordinary.txt"))
def test_ordinary_talk_is_not_asked_about(typed: str) -> None:
    assert not hints(typed)


@pytest.mark.parametrize("name", ["everyday_complaints.txt", "near_classes.txt"])
def test_hardly_any_harmless_sentence_is_asked_about(name: str) -> None:
    said = lines(name)
    assert len([typed for typed in said if hints(typed)]) <= len(said) / ONE_IN


def test_no_complaint_of_the_rules_is_asked_about_in_its_own_words() -> None:
    for complaint in KNOWLEDGE.complaints.values():
        own = " ".join((complaint.says, *complaint.words))
        assert [text for text in (complaint.says, *complaint.words) if hints(text, [own])] == []


def test_no_proof_is_asked_about_in_its_own_words() -> None:
    texts = [proof.text for fault in KNOWLEDGE.faults.values() for proof in fault.proof]
    assert [text for text in texts if hints(text, [text])] == []


def test_no_sound_outcome_is_asked_about() -> None:
    """They are answers wherever they are asked for, and are told as proofs as well."""
    sound = [
        text
        for test in KNOWLEDGE.tests.values()
        for outcome in test.outcomes
        if outcome.id in test.healthy
        for text in (outcome.spoken, *outcome.words)
    ]
    assert [text for text in sound if hints(text)] == ["glows", "arc gear on"]


@pytest.mark.parametrize(
    "typed",
    [
        "no haze, flicker or glow", "nobody is pale or dizzy", "found the seal that blew, fixed it",
        "tested the CO alarm, it beeps, ok", "42 ppm", "277 V", "12 % LEL", "", "...",
        "had a burst hose, replaced it", "the haze has gone",
    ],
)  # fmt: skip
def test_what_is_denied_mended_tested_or_a_plain_number_is_no_hint(typed: str) -> None:
    assert not hints(typed)


@pytest.mark.parametrize("typed", ["she is not moving", "he isn't breathing", "can't breathe here"])
def test_a_denial_that_is_the_danger_is_a_hint(typed: str) -> None:
    assert hints(typed)


@given(st.text(max_size=80))
def test_any_words_do(typed: str) -> None:
    assert hints(typed) in (True, False)


@pytest.mark.parametrize("typed", lines("flue_and_bursts.txt"))
def test_what_comes_out_of_the_flue_or_bursts_is_asked_about(typed: str) -> None:
    """Of ten written before the words were, one was heard and none asked about."""
    assert hints(typed) or spoken_of(KNOWLEDGE, typed)


@pytest.mark.parametrize("typed", lines("near_flue_and_bursts.txt"))
def test_what_only_sounds_like_it_is_not(typed: str) -> None:
    assert not hints(typed) and not spoken_of(KNOWLEDGE, typed)


@pytest.mark.parametrize(
    ("typed", "hazards"),
    [
        ("runs fine now but his sleeve is wound round the shaft", ["caught-in-machine"]),
        ("the meter on my belt went off and reads 90 parts", ["carbon-monoxide-evacuate"]),
        ("there's an orange flicker behind the louvres", ["smoke-or-heat-now"]),
        ("water is trickling down the bus bars", ["wet-electrical"]),
        ("she slumped against the curb and her lips are blue", ["somebody-hurt"]),
        ("tape is holding the float switch down", ["jumpered-safety"]),
        ("cabinet buzzes my fingers when i touch it", ["unexplained-voltage"]),
        ("I am getting the bolt cutters for that lock", ["lock-of-somebody-else"]),
        ("line side is dead but the load side still shows 277 to ground", ["live-now"]),
        (
            "the capacitor popped and there's stuff on my face",
            ["somebody-hurt", "smoke-or-heat-now"],
        ),
    ],
)
def test_whoever_says_yes_it_is_a_danger_is_told_of_the_one_that_was_hinted_at(
    typed: str, hazards: list[str]
) -> None:
    """In no phrase of theirs: without the hint each was the danger that stands for all others."""
    assert not named(KNOWLEDGE, typed)
    assert [each.id for each in reported(KNOWLEDGE, typed)] == hazards


@pytest.mark.parametrize(
    ("test", "where", "most"),
    [
        ("gas-manifold-pressure", "manifold", MOST_AT_MANIFOLD),
        ("gas-inlet-pressure-idle", "inlet", MOST_AT_INLET),
    ],
)
def test_a_pressure_of_the_gas_that_its_test_would_stop_at_is_asked_about(
    test: str, where: str, most: float
) -> None:
    high = next(o for o in KNOWLEDGE.tests[test].outcomes if o.id == "high")
    bounds = [b for line in high.limits for b in line.bounds if b.relative_to is None]
    assert min(b.above for b in bounds if b.above is not None) == most
    assert hints(f"the {where} has {most + 0.1:.1f} inches on it")
    assert not hints(f"the {where} has {most} in wc on it")


@pytest.mark.parametrize("typed", ["half an inch at 1 psi on the gas inlet", '15" on the inlet'])
def test_a_pressure_is_known_in_whatever_unit(typed: str) -> None:
    assert hinted(typed) == {"gas-pressure-too-high"}


@pytest.mark.parametrize(
    ("typed", "asks"),
    [
        ("3 flashes, ignition lockout", False),
        ("4 flashes open limit", False),
        ("2 flashes at the contactor", True),
        ("3 flashes, lockout, and smoke out of the panel", True),
        ("flash at the panel, lockout", True),
    ],
)
def test_flashes_that_are_counted_before_a_fault_are_a_code(typed: str, asks: bool) -> None:
    """Regression: a code told a prompt early was asked of as a danger."""
    assert hints(typed) is asks
