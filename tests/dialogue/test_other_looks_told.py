"""Which look words tell of, at which place, and what is done about it: each choice by itself.

The looks are invented; how people put it is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest

from tests.building import base, test_of, unit_of
from tests.safety.hearing.invented import job
from troubleshoot.dialogue import other_looks
from troubleshoot.dialogue.other_looks import OtherLooks, Seen
from troubleshoot.dialogue.talk import DangerCalled, Leave
from troubleshoot.knowledge.model import Finding, Knowledge, Test, Trigger
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.events import Answered, Noted


def look(name: str, *outcomes: str, **more: Any) -> Test:
    return replace(test_of(name.lower().replace(" ", "-"), *outcomes), name=name, **more)


BELT = look("Fan belt", "torn", words=("belt",))
GUARD = look("Fan belt guard", "torn", "bent")
PLAIN = look("Belt", "torn")
END = look("Belt end", "torn")
LOUVER = look("Vane", "cracked", words=("front air louver",))
AIR = look("Air louver", "cracked")
STARTER = look("Starter", "pitted", per="circuit")
EXPECTED = SimpleNamespace(test=None, step=None)


class Stub:
    """The book, the voice and the readings of one conversation; keeps what it is told."""

    def __init__(self, knowledge: Knowledge, *, unseen: str = "", **facts: Any) -> None:
        self.knowledge = knowledge
        self.state = SimpleNamespace(unit=unit_of(knowledge, **facts))
        self.readable = self.telling = self
        self.unseen = unseen
        self.kept: list[object] = []

    def why_not(self, decision: object, test: Test, at: Place | None) -> str:
        return "first the lock" if test.id in self.unseen.split() else ""

    def keep(self, kept: object) -> None:
        self.kept.append(kept)

    add = say = keep_reading = go_on_with = keep

    def what_follows(self) -> None:
        self.kept.append("what follows")


def others(*looks: Test, unseen: str = "", hazards: Any = (), **facts: Any) -> OtherLooks:
    stub: Any = Stub(base(tests=looks, hazards=hazards), unseen=unseen, **facts)
    return OtherLooks(stub, stub, stub)


def told(looks: OtherLooks, typed: str, expected: Any = EXPECTED) -> list[tuple[str, ...]]:
    found = looks.told(expected, typed)
    return [(each.test.id, *each.outcomes) for each in found]


def test_a_look_is_told_of_by_its_name_or_by_what_people_say_for_it() -> None:
    assert told(others(LOUVER), "vane is cracked") == [("vane", "cracked")]
    assert told(others(LOUVER), "front air louver is cracked") == [("vane", "cracked")]
    assert told(others(LOUVER), "air louver is cracked") == []
    assert told(others(LOUVER), "cracked") == []
    assert told(others(LOUVER), "vane") == []


def test_where_it_is_so_on_the_thing_may_be_told_besides() -> None:
    assert told(others(LOUVER), "vane is cracked on the left side") == [("vane", "cracked")]
    assert told(others(LOUVER), "vane is cracked by a hammer") == []


def test_the_look_that_is_named_in_most_words_is_meant() -> None:
    assert told(others(BELT, GUARD), "fan belt guard torn") == [("fan-belt-guard", "torn")]
    assert told(others(BELT, PLAIN), "fan belt torn") == [("fan-belt", "torn")]
    for end in (END, replace(END, words=("belt",))):
        assert told(others(PLAIN, end), "belt end torn") == [("belt-end", "torn")]
    edge = look("Edge", "torn", words=("belt end",))
    assert told(others(PLAIN, edge), "belt end edge torn") == [("edge", "torn")]
    said = "vane front air louver cracked"
    assert told(others(LOUVER, AIR), said) == [("vane", "cracked")]
    assert told(others(LOUVER, GUARD), "vane cracked") == [("vane", "cracked")]


@pytest.mark.parametrize(("number", "found"), [(3, 3), (4, 0)])
def test_of_more_looks_than_can_be_asked_about_none_is_meant(number: int, found: int) -> None:
    vanes = [replace(look("Vane", "cracked"), id=f"vane-{at}") for at in range(number)]
    assert len(told(others(*vanes), "vane cracked")) == found


def test_only_another_look_that_this_unit_has_is_told_of() -> None:
    assert told(others(LOUVER), "vane cracked", SimpleNamespace(test=LOUVER)) == []
    assert told(others(replace(LOUVER, kind="computed")), "vane cracked") == []
    fitted = replace(LOUVER, exists_when={"metering": ("txv",)})
    assert told(others(fitted, metering="txv"), "vane cracked") == [("vane", "cracked")]
    assert told(others(fitted, metering="fixed-orifice"), "vane cracked") == []


def test_what_can_be_seen_now_goes_before_what_cannot() -> None:
    both = (replace(LOUVER, words=()), replace(LOUVER, id="other", words=()))
    assert told(others(*both), "vane cracked") == [("vane", "cracked"), ("other", "cracked")]
    assert told(others(*both, unseen="vane"), "vane cracked") == [("other", "cracked")]
    assert told(others(*both, unseen="vane other"), "vane cracked") == [("vane", "cracked")]


def test_an_all_clear_is_never_taken_from_another_look() -> None:
    clearing = replace(job("danger"), all_clear="vane")
    looks = others(LOUVER, hazards=[clearing])
    assert told(looks, "vane normal") == []
    assert told(looks, "vane cracked") == [("vane", "cracked")]
    assert told(others(LOUVER), "vane normal") == [("vane", "normal")]


def test_each_place_that_may_be_meant_is_told_of_and_one_that_is_not_there_is_none() -> None:
    looks = others(STARTER, circuits="2")
    found = looks.told(EXPECTED, "starter pitted")  # type: ignore[arg-type]
    assert len(found) > 1 and {each.at for each in found} == {
        *looks.book.state.unit.layout.places("circuit")
    }
    assert looks.told(EXPECTED, "starter pitted at circuit 9") == ()  # type: ignore[arg-type]


def answers(monkeypatch: pytest.MonkeyPatch, answer: object) -> list[tuple[object, ...]]:
    """Whatever is asked is answered so; returns what was asked."""
    asked: list[tuple[object, ...]] = []

    def talk(*given: object) -> Iterator[object]:
        asked.append(given)
        if isinstance(answer, Exception):
            raise answer
        return answer
        yield

    monkeypatch.setattr(other_looks, "pick", talk)
    monkeypatch.setattr(other_looks, "agrees", talk)
    return asked


def taken(looks: OtherLooks, *seen: Seen) -> bool:
    talk: Any = looks.take("listener", "decision", "as typed", seen)  # type: ignore[arg-type]
    with pytest.raises(StopIteration) as end:
        next(talk)
    return bool(end.value.value)


CRACKED = Seen(LOUVER, None, ("cracked",), "")
SOUND = Seen(LOUVER, None, ("normal",), "")


def test_one_that_is_not_sound_is_taken_unasked(monkeypatch: pytest.MonkeyPatch) -> None:
    looks, asked = others(LOUVER), answers(monkeypatch, False)
    assert taken(looks, CRACKED) and not asked
    assert looks.voice.kept == [  # type: ignore[attr-defined]
        "Taken: Vane: cracked.",
        Answered("vane", None, outcomes=("cracked",)),
        "what follows",
        "decision",
    ]


def test_what_is_seen_at_a_place_is_taken_there(monkeypatch: pytest.MonkeyPatch) -> None:
    looks, _ = others(STARTER), answers(monkeypatch, False)
    place = looks.book.state.unit.layout.places("circuit")[0]
    assert taken(looks, Seen(STARTER, place, ("pitted",), ""))
    answered = Answered("starter", (str(place),), outcomes=("pitted",))
    assert answered in looks.voice.kept  # type: ignore[attr-defined]


def test_what_cannot_be_seen_now_is_a_note(monkeypatch: pytest.MonkeyPatch) -> None:
    looks, asked = others(LOUVER), answers(monkeypatch, False)
    assert taken(looks, replace(SOUND, why_not="first the lock")) and not asked
    said, note = looks.voice.kept  # type: ignore[attr-defined]
    assert said.startswith("Not taken: Vane: normal: first the lock. ")
    assert note == Noted("seen, and not taken: as typed")


@pytest.mark.parametrize("agreed", [True, False])
def test_what_is_sound_or_stops_the_work_is_asked_about(
    agreed: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = answers(monkeypatch, agreed)
    assert taken(others(LOUVER), SOUND) is agreed
    words = 'You typed "as typed". Is this meant: Vane: normal?'
    assert asked == [("listener", words, "Vane: normal")]
    stops = replace(job("danger"), triggers=(Trigger((Finding("vane", ("cracked",)),)),))
    assert taken(others(LOUVER, hazards=[stops]), CRACKED) is agreed
    assert len(asked) == 2


@pytest.mark.parametrize(("answer", "is_taken"), [(0, True), (1, True), (None, False)])
def test_of_several_one_is_chosen(
    answer: int | None, is_taken: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    looks, asked = others(LOUVER), answers(monkeypatch, answer)
    assert taken(looks, CRACKED, SOUND) is is_taken
    assert [each[2:] for each in asked] == [
        ("Which of these was seen?", ["Vane: cracked", "Vane: normal"])
    ]
    kept = [each for each in looks.voice.kept if isinstance(each, Answered)]  # type: ignore[attr-defined]
    outcomes = [("cracked",), ("normal",)]
    assert [each.outcomes for each in kept] == ([] if answer is None else [outcomes[answer]])


@pytest.mark.parametrize("left", [Leave(), DangerCalled("smoke")])
def test_who_leaves_meanwhile_leaves_what_was_typed_as_a_note(
    left: Exception, monkeypatch: pytest.MonkeyPatch
) -> None:
    looks, _ = others(LOUVER), answers(monkeypatch, left)
    with pytest.raises(type(left)):
        taken(looks, SOUND)
    assert looks.voice.kept == [Noted("typed, and not confirmed: as typed")]  # type: ignore[attr-defined]
