"""The hazards that come with the program: each STOP can be met, told, tagged and lifted again."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from itertools import permutations
from typing import Any

import pytest

from tests.building import case, unit_of
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.safety.hearing.nets import is_net

GAS_UNIT = {"heat": "gas", "fuel": "natural-gas", "draft": "induced"}


def stopping(knowledge: Knowledge) -> Iterator[Hazard]:
    return (hazard for hazard in knowledge.hazards.values() if hazard.stop is not None)


def spoken(outcome: str) -> str:
    return outcome.replace("-", " ")


def callers(knowledge: Knowledge) -> dict[str, set[str]]:
    """Outcome in words -> the hazards that some test's outcome of that name calls up."""
    called = defaultdict(set)
    for hazard in knowledge.hazards.values():
        for trigger in hazard.triggers:
            for finding in trigger.findings:
                for outcome in finding.outcomes:
                    called[spoken(outcome)].add(hazard.id)
    return called


def test_every_stop_has_a_sentence_for_its_tag(shipped: Knowledge) -> None:
    bad = [h.id for h in stopping(shipped) if not h.tag.endswith(".") or h.id in h.tag]
    assert bad == []


def test_every_stop_names_a_test_with_a_sound_outcome_as_its_all_clear(shipped: Knowledge) -> None:
    clearing = {h.id: shipped.tests.get(h.all_clear or "") for h in stopping(shipped)}
    assert [name for name, test in clearing.items() if test is None or not test.healthy] == []
    assert [name for name, test in clearing.items() if test and test.per] == []


def test_only_somebody_named_makes_safe_what_stops_the_whole_job(shipped: Knowledge) -> None:
    final = [h for h in stopping(shipped) if h.stop and h.stop.scope == "whole-job"]
    assert len(final) > 10
    assert [h.id for h in final if not h.cleared_by] == []
    assert "building-owner" not in {role for h in final for role in h.cleared_by}


def test_gas_and_carbon_monoxide_are_not_cleared_by_the_wrong_trade(shipped: Knowledge) -> None:
    strangers = {"fire-alarm", "electrician", "refrigerant", "medical-service", "supervisor"}
    for name in ("gas-odour", "carbon-monoxide-evacuate", "heat-exchanger-breach"):
        assert strangers.isdisjoint(shipped.hazards[name].cleared_by), name


def test_every_stop_can_be_reported(shipped: Knowledge) -> None:
    """By words: a finding alone leaves whoever meets the danger elsewhere without a way."""
    assert [h.id for h in stopping(shipped) if not h.words] == []


def test_words_are_short_and_plain(shipped: Knowledge) -> None:
    words = [word for hazard in shipped.hazards.values() for word in hazard.words]
    assert [w for w in words if w != " ".join(w.lower().split())] == []
    assert [w for w in words if len(w.split()) > 7 and not is_net(w)] == []


def test_a_phrase_belongs_to_one_hazard_only(shipped: Knowledge) -> None:
    owners = defaultdict(set)
    for hazard in shipped.hazards.values():
        for word in hazard.words:
            if not word.startswith("read:"):  # there the number tells which it is
                owners[word].add(hazard.id)
    shared = {word: found for word, found in owners.items() if len(found) > 1}
    assert shared == {"hissing": {"gas-odour", "refrigerant-escaping"}}, "a hiss may be either gas"


def test_no_phrase_hides_inside_the_phrase_of_another_hazard(shipped: Knowledge) -> None:
    """Phrases of two words or more are looked for in whatever is typed."""
    phrases = [
        (word, hazard.id)
        for hazard in shipped.hazards.values()
        for word in hazard.words
        if " " in word and not is_net(word)
    ]
    hidden = [
        (inner, outer)
        for (inner, of_inner), (outer, of_outer) in permutations(phrases, 2)
        if of_inner != of_outer and f" {inner} " in f" {outer} "
    ]
    assert hidden == []


def test_an_ordinary_answer_is_no_report_of_another_danger(shipped: Knowledge) -> None:
    called = callers(shipped)
    outcomes = {spoken(o.id) for test in shipped.tests.values() for o in test.outcomes}
    strange = [
        (word, hazard.id)
        for hazard in shipped.hazards.values()
        for word in hazard.words
        if " " in word and word in outcomes and hazard.id not in called[word]
    ]
    assert strange == []


def test_what_callers_complain_of_is_no_report_of_another_danger(shipped: Knowledge) -> None:
    strange = [
        (complaint.id, phrase, hazard.id)
        for complaint in shipped.complaints.values()
        for hazard in shipped.hazards.values()
        for phrase in hazard.words
        for said in (complaint.says, *complaint.words)
        if " " in phrase and f" {phrase} " in f" {said.lower()} "
        if hazard.id not in complaint.hazards_first
    ]
    assert strange == []


@pytest.mark.parametrize(
    ("said", "hazard"),
    [
        ("i smell gas", "gas-odour"),
        ("there is smoke", "smoke-or-heat-now"),
        ("somebody is hurt", "somebody-hurt"),
        ("skylight next to it", "skylight-or-roof-hole"),
        ("ladder slipped", "ladder-and-hatch"),
        ("no rated gloves", "live-work"),
        ("no arc flash label", "arc-flash-480-volt"),
        ("switch did not open", "pressure-switch-testing"),
        ("no supervisor", "apprentice-unsupervised"),
        ("water in the switch", "wet-electrical"),
        ("everybody has a headache", "carbon-monoxide-evacuate"),
    ],
)
def test_what_people_say_is_among_the_words(shipped: Knowledge, said: str, hazard: str) -> None:
    assert said in shipped.hazards[hazard].words


@pytest.mark.parametrize(
    ("answer", "hazard"),
    [
        # Common practice and, for 14 in wc (1/2 psi), from memory: the limit of appliance valves.
        (Answer("gas-inlet-pressure-all-firing", text="16.2 in wc"), "gas-pressure-too-high"),
        (Answer("gas-inlet-pressure-all-firing", text="22 in wc"), "gas-pressure-too-high"),
        (Answer("gas-manifold-pressure", text="4.4 in wc"), "over-fired-or-wrong-fuel"),
        (Answer("gas-meter-clocking", ("over",)), "over-fired-or-wrong-fuel"),
        (Answer("burner-orifices", ("wrong-fuel",)), "over-fired-or-wrong-fuel"),
        (Answer("flame-current", ("reads-without-flame",)), "flame-signal-without-flame"),
        (Answer("smoke-detector", ("alarm",)), "smoke-detector-alarm"),
        (Answer("walk-round", ("water-in-electrics",)), "wet-electrical"),
        (Answer("roof-conditions", ("opening-unguarded",)), "skylight-or-roof-hole"),
        (Answer("roof-conditions", ("ladder-not-safe",)), "ladder-and-hatch"),
        (Answer("roof-conditions", ("power-line-near",)), "overhead-line-near"),
        (Answer("roof-conditions", ("antenna-near",)), "antenna-near"),
        (Answer("verified-dead", ("live",)), "second-power-source"),
        (Answer("ground-and-bond", text="47 V"), "unexplained-voltage"),
        (Answer("ground-and-bond", ("open-ground",)), "cabinet-not-bonded"),
    ],
)
def test_a_finding_halts_until_it_is_made_safe(
    shipped: Knowledge, answer: Answer, hazard: str
) -> None:
    found = Reasoner(shipped).conclude(case(shipped, answer, unit=unit_of(shipped, **GAS_UNIT)))
    assert hazard in [fired.hazard.id for fired in found.standing_stops]


def test_gas_that_stays_within_its_limits_while_firing_calls_nothing_up(shipped: Knowledge) -> None:
    unit: dict[str, Any] = {**GAS_UNIT, "gas-inlet-minimum": "5 in wc"}
    for limit in ({}, {"gas-inlet-maximum": "10.5 in wc"}):
        answer = Answer("gas-inlet-pressure-all-firing", text="7.0 in wc")
        found = Reasoner(shipped).conclude(
            case(shipped, answer, unit=unit_of(shipped, **unit, **limit))
        )
        assert [fired.hazard.id for fired in found.hazards] == []
        assert [sorted(reading.possible) for reading in found.readings] == [["normal"]]


def called_up(knowledge: Knowledge, text: str, **facts: Any) -> set[str]:
    """What a head of so much calls up, the fans turning."""
    answers = Answer("condenser-fan-turning", ("normal",)), Answer("head-pressure", text=text)
    found = Reasoner(knowledge).conclude(
        case(knowledge, *answers, unit=unit_of(knowledge, **facts))
    )
    heads = {"head-near-its-switch", "head-at-its-switch", "safety-does-not-open"}
    return heads & {fired.hazard.id for fired in found.hazards}


@pytest.mark.parametrize(
    ("refrigerant", "text", "hazard"),
    [
        # Common practice: sound on a day of 115 F is 140 F condensing, 541 psig in one manual.
        ("R-410A", "541 psig", None),
        ("R-410A", "580 psig", "head-near-its-switch"),
        ("R-410A", "620 psig", "head-at-its-switch"),
        ("R-410A", "690 psig", "safety-does-not-open"),
        ("R-454B", "620 psig", "head-at-its-switch"),
        ("R-22", "337 psig", None),
        ("R-22", "380 psig", "head-near-its-switch"),
        ("R-22", "420 psig", "head-at-its-switch"),
        ("R-22", "480 psig", "safety-does-not-open"),
    ],
)
def test_a_head_near_its_switch_is_told_by_what_is_measured(
    shipped: Knowledge, refrigerant: str, text: str, hazard: str | None
) -> None:
    assert called_up(shipped, text, refrigerant=refrigerant) == ({hazard} if hazard else set())


def test_an_unknown_refrigerant_is_no_leave_to_run_at_600_psig(shipped: Knowledge) -> None:
    assert called_up(shipped, "625 psig") == {"head-at-its-switch"}


@pytest.mark.parametrize(
    ("text", "hazard"),
    [
        ("470 psig", None),
        ("510 psig", "head-near-its-switch"),
        ("545 psig", "head-at-its-switch"),
        ("575 psig", "safety-does-not-open"),
    ],
)
def test_the_band_on_the_switch_comes_before_what_is_usual(
    shipped: Knowledge, text: str, hazard: str | None
) -> None:
    plate = {"refrigerant": "R-410A", "high-pressure-switch-band-high": "555 psig"}
    assert called_up(shipped, text, **plate) == ({hazard} if hazard else set())


@pytest.mark.parametrize(
    ("answer", "hazard"),
    [
        (Answer("safety-string-walk", ("high-pressure-open",)), "high-pressure-switch-open"),
        (Answer("compressor-start-attempt", ("hums-and-trips",)), "compressor-hums"),
        (Answer("compressor-start-attempt", ("runs-backward",)), "compressor-turns-backward"),
        (Answer("phase-rotation", ("reversed",)), "compressor-turns-backward"),
    ],
)
def test_a_compressor_that_must_not_be_tried_again_is_told_of(
    shipped: Knowledge, answer: Answer, hazard: str
) -> None:
    unit = unit_of(shipped, **{"supply-phase": "three", "compressor-phase": "three"})
    found = Reasoner(shipped).conclude(case(shipped, answer, unit=unit))
    assert hazard in [fired.hazard.id for fired in found.hazards]


def test_at_its_switch_nothing_is_run_on_that_circuit(shipped: Knowledge) -> None:
    """But the search for air goes on: the coil is looked at with the power off."""
    forbids = shipped.hazards["head-at-its-switch"].forbids
    assert {"running", "running-open"} <= {s for ban in forbids for s in ban.work_states}
    assert "locked-out" not in {s for ban in forbids for s in ban.work_states}


LIKE_FINDINGS = (
    "This meter", "Gas goes", "Flame has", "Heat with", "Everybody", "Shut the", "Stop the",
    "Take the", "Treat it", "Leave it", "Lock the", "Touch no", "Do not leave", "Soot is",
    "A safety", "Cooling off",
)  # fmt: skip


def test_a_caution_before_a_step_does_not_read_as_if_it_had_been_found(shipped: Knowledge) -> None:
    """Regression: "This meter has proved nothing" stood before the meter was proved."""
    shown = {name for test in shipped.tests.values() for name in test.hazards}
    texts = {name: shipped.hazards[name].what_to_do for name in sorted(shown)}
    assert [name for name, text in texts.items() if text.startswith(LIKE_FINDINGS)] == []


def test_what_keeps_the_burners_off_forbids_every_call_for_heat(shipped: Knowledge) -> None:
    """Below "keep the burner off" the heating call at the board was proposed."""
    burners = {"gas", "ignition", "combustion"}
    off = [
        hazard
        for hazard in shipped.hazards.values()
        if any(burners <= {*ban.areas} and "running" in ban.work_states for ban in hazard.forbids)
    ]
    assert len(off) > 5
    for hazard in off:
        forbidden = {test for ban in hazard.forbids for test in ban.tests}
        whole = any(ban.work_states and not ban.areas for ban in hazard.forbids)
        assert whole or {"heating-call", "operating-sequence"} <= forbidden, hazard.id
