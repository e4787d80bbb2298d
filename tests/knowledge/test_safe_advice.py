"""Advice that offers a way round safety is found; a text that forbids or reports it is left alone.

`advice/bad.txt` and `advice/harmless.txt` hold one sentence a line. Add what you hear on the job.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.knowledge.small_rules import LOW_CHARGE, said, write_rules
from troubleshoot.knowledge.checks.safe_advice import bad_advice

FOLDER = Path(__file__).parent / "advice"
BAD = (FOLDER / "bad.txt").read_text("utf-8").splitlines()
OF_AN_ATTACKER = (FOLDER / "of_an_attacker.txt").read_text("utf-8").splitlines()
HARMLESS = (FOLDER / "harmless.txt").read_text("utf-8").splitlines()

WAY_ROUND = "a way round a safety device"
WEAKENED = "a protection set or sized past its limit"
UNGUARDED = "a lock, ground or guard left off"
SHORTED = "a capacitor shorted with a tool"
LET_GO = "refrigerant let into the air"
RESET = "a tripped safety reset without finding out why"
UNPROVED = "a proof or protection left out"
LIVE = "hands on live or turning parts"
FLAME = "a flame, gas or pressure where it can explode"


def advised(text: str) -> list[str]:
    return [what for what, _ in bad_advice(text)]


def test_the_corpus_is_large_enough_to_mean_something() -> None:
    assert len(set(BAD)) >= 60
    assert len(set(HARMLESS)) >= 60


@pytest.mark.parametrize("text", BAD)
def test_advice_that_could_kill_is_found(text: str) -> None:
    assert advised(text)


@pytest.mark.parametrize("text", OF_AN_ATTACKER)
def test_what_an_attacker_wrote_is_found(text: str) -> None:
    """Regression: 27 of these 40 passed."""
    assert advised(text)


JUMPER = "Jumper the high pressure switch and let it run."


@pytest.mark.parametrize(
    "text",
    [
        JUMPER.replace("p", "\u0440").replace("e", "\u0435"),
        JUMPER.replace("umper", "um\u00adper"),
        "".join(chr(ord(c) + 0xFEE0) if c.isalpha() else c for c in JUMPER),
        JUMPER.replace("J", "J\u0301"),
        JUMPER.replace("Jumper", "Jum-per"),
        JUMPER.replace("Jumper", "J.u.m.p.e.r"),
        JUMPER.replace("Jumper", "Jummper"),
        JUMPER.replace("Jumper", "Jump3r"),
        "It is not forbidden to jumper the high pressure switch and let it run.",
        "Do not forget to jumper the high pressure switch and let it run.",
        "Nobody forbids you to jumper the high pressure switch.",
        "Jumper the high pressure switch, it is not forbidden.",
        "Never jumper the high pressure switch unless the day is hot; then let it run.",
    ],
)
def test_no_disguise_and_no_ban_that_is_none_hides_it(text: str) -> None:
    """Regression: each of these passed where the plain sentence was found."""
    assert advised(text) == [WAY_ROUND]


@pytest.mark.parametrize("text", HARMLESS)
def test_a_text_that_forbids_or_reports_is_left_alone(text: str) -> None:
    assert advised(text) == []


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("Use a jumper on the low-pressure switch.", WAY_ROUND),
        ("Wire round the smoke detector.", WAY_ROUND),
        ("Tape the pressure switch closed.", WAY_ROUND),
        ("Do not wait: bypass the smoke detector.", WAY_ROUND),
        ("The limit trips again. Take it out of the circuit.", WAY_ROUND),
        ("Fit a 60 A fuse in place of the 40 A one.", WEAKENED),
        ("Turn the high-pressure cut-out up past the plate.", WEAKENED),
        ("Leave the lock off, it is only ten minutes.", UNGUARDED),
        ("A screwdriver across the capacitor bleeds it.", SHORTED),
        ("Let the charge blow down.", LET_GO),
        ("Reset the rollout switch and let it run.", RESET),
        ("No need to prove the meter.", UNPROVED),
        ("Work it live.", LIVE),
        ("Look for the gas leak with a lighter.", FLAME),
    ],
)
def test_what_is_advised_is_said_once(text: str, what: str) -> None:
    assert advised(text) == [what]


@pytest.mark.parametrize(
    ("ban", "advice"),
    [
        ("Never jumper a limit.", "Do not wait, jumper the limit."),
        ("Do not bypass or tape the limit.", "Do not worry about it, just tape the limit closed."),
        ("Never mind who jumpered the limit.", "Never mind the limit, bypass it."),
        ("Somebody bypassed the detector.", "Have somebody bypass the detector."),
        ("Find a bypass at the detector.", "Fit a bypass at the detector."),
        ("Take the capacitor out of the circuit.", "Find the limit; take it out of the circuit."),
        ("Fit a 40 A fuse in place of the 60 A one.", "Swap the 40 A fuse for a 60 A one."),
        ("Leave the breaker open.", "Leave the ground wire off."),
    ],
)
def test_a_ban_and_advice_in_nearly_the_same_words_are_told_apart(ban: str, advice: str) -> None:
    assert advised(ban) == []
    assert advised(advice) != []


@pytest.mark.parametrize("word", ["old", "surely"])
def test_a_harmless_word_anywhere_hides_nothing(word: str) -> None:
    hidden = []
    for text in BAD:
        for space in re.finditer(r" (?!A\b)", text):
            longer = f"{text[: space.start()]} {word}{text[space.start() :]}"
            if not advised(longer):
                hidden.append(longer)
    assert hidden == []


US_AND_BRITISH = (
    (" round ", " around "),
    ("energize", "energise"),
    ("pressurize", "pressurise"),
    ("ground", "earth"),
    ("wrench", "spanner"),
    ("odor", "odour"),
    ("bypass", "by-pass"),
    ("do not", "don't"),
)
HYPHENS = ("-", " ", "\u2010", "\u2011")
CASES = (str.upper, str.lower, str.title, str.swapcase, str)


@given(
    st.sampled_from(BAD),
    st.sampled_from(HYPHENS),
    st.sampled_from(CASES),
    st.lists(st.sampled_from(US_AND_BRITISH)),
    st.sampled_from(("", "  ", "\n ")),
)
def test_case_hyphens_and_spelling_hide_nothing(
    text: str, hyphen: str, case: Callable[[str], str], spellings: list[tuple[str, str]], space: str
) -> None:
    for american, british in spellings:
        text = text.replace(american, british)
    text = text.replace("-", hyphen)
    assert advised(case(text.replace(" ", space or " ")))


@given(st.sampled_from(HARMLESS), st.sampled_from(CASES), st.sampled_from(HYPHENS))
def test_case_and_hyphens_make_no_harmless_text_bad(
    text: str, case: Callable[[str], str], hyphen: str
) -> None:
    assert advised(case(text.replace("-", hyphen))) == []


@given(st.text(max_size=200))
def test_any_text_at_all_can_be_scanned(text: str) -> None:
    assert all(what and instead for what, instead in bad_advice(text))


def test_bad_advice_is_named_at_its_place(tmp_path: Path) -> None:
    change = (LOW_CHARGE, "Find the leak, mend it, weigh the charge in.", "Vent the charge.")
    assert said(write_rules(tmp_path, change)) == [
        "rules/faults/refrigerant/low-charge.yaml:17:9: the text advises refrigerant let into the "
        "air; say: recover it [safe-advice]"
    ]
