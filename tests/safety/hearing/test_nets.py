"""A hazard's words may be a net: a word of each group in one sentence, in any order."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from tests.building import base
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Hazard, Stop
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import may_be_danger, spoken_of
from troubleshoot.safety.hearing.hinting_words import HINTS
from troubleshoot.safety.hearing.nets import Net, is_net, net_of
from troubleshoot.safety.hearing.netted import netted, read_in_doubt
from troubleshoot.safety.hearing.reporting import reported
from troubleshoot.safety.hearing.words import spoken_words


def hazard(name: str, *words: str) -> Hazard:
    return Hazard(name, "DANGER", "keep off", (), Stop("whole-job", name), words=words)


KNOWN = base(
    hazards=[
        hazard("live", "off/open + still + load + 50/hot - touch"),
        hazard("down", "helper + down + not/no + answer"),
        hazard("danger-reported", "danger"),
    ]
)
CRANE = base(hazards=[hazard("dropping", "bridle + slipped"), hazard("swinging", "snatch block")])


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("switch off but the load side is still hot", ["live"]),
        ("went up at nine. switch off but the load is still hot. came down", ["live"]),
        ("the load still reads 277, and the switch is open", ["live"]),
        ("OPENED it. Load still hot", []),
        ("load still hot", []),
        ("off, still 49 on the load", []),
        ("off and still hot to touch on the load", []),
        ("off and no load is still hot", []),
        ("my helper went down; no answer", []),
        ("my helper went down, no answer", ["down"]),
        ("my helper went down and does not answer", ["down"]),
        ("nobody answers, my helper is down and it is not off", []),
        ("off, the flue load is still 70", []),
    ],
)
def test_a_sentence_is_caught_that_holds_a_word_of_each_group(typed: str, named: list[str]) -> None:
    """What denies lets it go, but where a group names it; a flue's number is no one's air."""
    assert [each.id for each in spoken_of(KNOWN, typed)] == named
    assert [each.id for each in told_among(KNOWN, typed)] == named


@pytest.mark.parametrize("typed", ["load still", "load hot", "hot load, hot to the touch"])
def test_a_net_is_no_phrase_by_which_the_nearest_is_guessed(typed: str) -> None:
    assert [each.id for each in reported(KNOWN, typed)] == ["danger-reported"]


def test_a_word_of_a_net_by_itself_sounds_like_no_danger() -> None:
    """It is an everyday word: only a sentence that fills the net says anything."""
    assert may_be_danger(CRANE, "pass me that snatch")
    assert not may_be_danger(CRANE, "pass me that bridle")


def test_a_net_is_knit_of_words_as_they_are_spelt_and_no_other_is_taken_for_a_slip() -> None:
    assert [each.id for each in spoken_of(CRANE, "the bridle of it slipped")] == ["dropping"]
    assert spoken_of(CRANE, "the bride slipped away") == ()
    assert [each.id for each in spoken_of(CRANE, "the snach block")] == ["swinging"], "of a phrase"


def test_what_stops_nothing_is_heard_by_no_net() -> None:
    cold = replace(hazard("cold", "hands + cold/numb"), signal="CAUTION", stop=None)
    assert spoken_of(base(hazards=[cold]), "my hands are getting cold up here") == ()


def test_every_shipped_net_can_be_said_and_says_nothing_twice() -> None:
    nets = {
        words: net_of(words)
        for each in load_shipped().hazards.values()
        for words in each.words
        if is_net(words)
    }
    for words, net in nets.items():
        assert net.catches(tuple(group[0] for group in net.groups)), words
        assert not {*net.unless} & {word for group in net.groups for word in group}, words


def test_what_hints_speak_of_are_hazards_that_stop() -> None:
    hazards = load_shipped().hazards
    assert {hint.hazard for hint in HINTS if hint.hazard} <= {
        name for name, each in hazards.items() if each.stop is not None
    }


def test_each_word_of_a_net_is_heard_as_one_word() -> None:
    """Regression: light-headed was knit as light and headed, and caught gas that does not light."""
    nets = [words for h in load_shipped().hazards.values() for words in h.words if is_net(words)]
    each = {word for net in nets for word in re.split(r" [+-] |/", net)}
    each = {word for word in each if not word.startswith("read:")}
    assert {word for word in each if len(spoken_words(word, str)) != 1} == set()


def test_a_net_is_written_as_its_groups_what_lets_go_and_what_is_read() -> None:
    assert net_of("cord/hemp + torn - dry") == Net((("cord", "hemp"), ("torn",)), ("dry",))
    assert net_of("read:gas-in-air + lel + pit") == Net((("lel",), ("pit",)), (), "gas-in-air")


def test_a_net_is_found_by_any_of_its_words_and_beside_another() -> None:
    known = base(
        hazards=[
            hazard("torn", "rope + torn/frayed"),
            hazard("wet", "rope + wet/soaked"),
            hazard("high", "rope/line + 50"),
        ]
    )
    said = {"the rope is frayed": "torn", "the rope is soaked": "wet", "60 on the line": "high"}
    for typed, named in said.items():
        assert [each.id for each in netted(known, typed, read=True)] == [named], typed
    on_fire = netted(load_shipped(), "the box outside is on fire", read=True)
    assert [each.id for each in on_fire] == ["rollout-tripped"]


def test_a_number_read_in_the_flue_is_in_no_air_that_people_breathe() -> None:
    net = net_of("air + 50")
    assert net.catches(("air", "60"))
    assert not net.catches(("air", "60", "flue-co")) and not net.catches(("air", "60", "flu"))


def test_a_net_of_words_that_deny_is_not_let_go_by_them() -> None:
    assert net_of("not + never").catches(("not", "never"))
    assert not net_of("not + rope").catches(("not", "rope", "never"))


@pytest.mark.parametrize(
    ("typed", "in_doubt"),
    [
        ("lel was at 25", ["gas-odour"]), ("lel is 25", []), ("lel was at 0", []),
        ("the helper was down and no answer", []),
    ],
)  # fmt: skip
def test_only_a_reading_that_may_be_none_is_in_doubt(typed: str, in_doubt: list[str]) -> None:
    assert [each.id for each in read_in_doubt(load_shipped(), typed)] == in_doubt
    assert not read_in_doubt(KNOWN, typed)
