"""What was typed for a proof proves it only where it says that it was read, and is right."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Proof
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.unit.equipment import Unit, read_unit
from troubleshoot.safety.stops.numbers_shown import own_units
from troubleshoot.visit.hearing.proof_read import NO_BEFORE, NOT_RIGHT, why_unproved
from troubleshoot.visit.hearing.proofs_wanted import proofs_on

KNOWLEDGE = load_shipped()
PROOFS = [proof for fault in KNOWLEDGE.faults.values() for proof in fault.proof]
MEASURED = [p for p in PROOFS if p.finding and KNOWLEDGE.tests[p.finding.test].reads]
OTHERS = ("ppm", "uF", "V", "A", "ohm", "F")
EXCHANGER = KNOWLEDGE.faults["heat-exchanger-cracked"].proof


ON_THREE = read_unit(KNOWLEDGE, {"supply-phase": "three", "compressor-phase": "three"})
PLATED = read_unit(KNOWLEDGE, {"heat-rise-low": "30 F", "heat-rise-high": "60 F"})


def why(number: int, typed: str) -> str:
    return why_unproved(KNOWLEDGE, PLATED, EXCHANGER[number], typed)


@pytest.mark.parametrize(
    ("number", "typed"),
    [
        (0, "steady, 3 starts"), (0, "flue steady 3 starts"), (1, "none"), (1, "nothing"),
        (1, "0 ppm"), (1, "nothing in the supply"), (2, "42 F"), (2, "42"), (2, "in range"),
        (3, "60 ppm, under limit"), (3, "under limit"), (4, "5 ppm"), (4, "3 ppm in the office"),
    ],
)  # fmt: skip
def test_a_sound_reading_proves(number: int, typed: str) -> None:
    assert why(number, typed) == ""


@pytest.mark.parametrize(
    ("number", "typed"),
    [
        (0, "steady"), (0, "cant yet its locked out n panels off"),
        (0, "rose at blower start"), (0, "28 ppm"),
        (1, "supply air"), (2, "28 ppm"), (2, "cant know til tmrw"), (3, "n"), (3, "no"),
        (4, "dunno"), (4, "y"), (4, "ok"), (2, "ok"), (3, "i think 60 ppm"),
    ],
)  # fmt: skip
def test_what_says_nothing_of_it_does_not(number: int, typed: str) -> None:
    """Regression: a cracked exchanger was proved by these, and the heat went on."""
    assert why(number, typed)


@pytest.mark.parametrize(
    ("number", "typed"),
    [(1, "35 ppm in supply air"), (2, "400 F"), (3, "600 ppm"), (4, "28 ppm"), (4, "40 ppm")],
)
def test_a_reading_that_is_not_right_is_told_so(number: int, typed: str) -> None:
    assert why(number, typed) == NOT_RIGHT


ROD = KNOWLEDGE.faults["flame-rod-dirty"].proof


@pytest.mark.parametrize(
    ("number", "typed"),
    [
        (0, "flame is steady blue on all four tubes"), (0, "good"), (0, "twice what it needs"),
        (1, "the burner lights smoothly but goes out after ten seconds"),
        (1, "lights first try, then dies"), (1, "it lights and goes out again"),
    ],
)  # fmt: skip
def test_words_are_no_reading_and_the_complaint_is_no_proof(number: int, typed: str) -> None:
    """Regression: a steady blue flame passed for microamperes, the complaint for a proof."""
    assert why_unproved(KNOWLEDGE, Unit(), ROD[number], typed, "heat-short-cycles")


@pytest.mark.parametrize(
    ("number", "typed"), [(0, "3.2 uA steady"), (1, "5 of 5 at the first try")]
)
def test_a_repaired_burner_is_proved(number: int, typed: str) -> None:
    assert why_unproved(KNOWLEDGE, Unit(), ROD[number], typed, "heat-short-cycles") == ""


def proof(fault: str, begins: str) -> Proof:
    found = KNOWLEDGE.faults[fault].proof
    return next(each for each in found if each.text.startswith(begins))


NOTHING_PROVED = {
    ("flame-rod-dirty", "Five cold"): (
        "ya good", "boss says its fine", "4 starts", "first try every time", "3 s, first try",
    ),
    ("control-transformer-open", "The load on it"): ("looks fine", "50 va", "52 va of 40 fuse 10a"),
    ("control-transformer-open", "The control fuse"): ("looks fine", "good", "fuse 10a"),
    ("control-transformer-open", "24 to 28 V"): (
        "25.5 v yesterday", "25.5 before i changed it", "boss said 26 v", "2 all called",
    ),
    ("condenser-coil-dirty", "Light shows"): ("burners look clean no rollout marks", "good"),
    ("condenser-coil-dirty", "Amps down"): ("7.2 A", "9 from 8.4", "was 7.2 now 7.4"),
    ("condenser-coil-dirty", "Condensing"): ("45 F", "45 over", "20 psig"),
    ("air-in-refrigerant", "Standing pressure"): ("20 A",),
}  # fmt: skip
PROVED = {
    ("flame-rod-dirty", "Five cold"): ("5 of 5", "first try five times", "5/5 first try"),
    ("flame-rod-dirty", "Flame current"): ("3.1 steady", "3.1", "3.1 uA"),
    ("control-transformer-open", "The load on it"): ("38 va of 40", "38 VA, rated 40", "38 of 40"),
    ("control-transformer-open", "The control fuse"): ("3 a as the plate names", "fuse good"),
    ("control-transformer-open", "24 to 28 V"): ("26.4 all called", "26.4", "meter says 26 V"),
    ("condenser-coil-dirty", "Light shows"): ("clean", "coil clean", "light shows all through"),
    ("condenser-coil-dirty", "Amps down"): (
        "7.2 from 8.4", "was 8.4 now 7.2", "7.2 A, 8.4 before", "8.4 A before, 7.2 A now",
        "8.4 down to 7.2", "7.2/7.1 A from 8.4/8.3 A",
    ),
    ("condenser-coil-dirty", "Condensing"): ("20 F", "20 over", "20", "20 F over ambient"),
}  # fmt: skip
COOLING = read_unit(
    KNOWLEDGE, {"refrigerant": "R-410A", "compressor-rla": "9 A", "supply-phase": "single"}
)


@pytest.mark.parametrize(
    ("asked", "typed"), [(asked, typed) for asked, all_ in NOTHING_PROVED.items() for typed in all_]
)
def test_what_leaves_out_what_is_asked_proves_nothing(asked: tuple[str, str], typed: str) -> None:
    """Regression: an approval, hearsay, too few starts, an overload and another day proved it."""
    assert why_unproved(KNOWLEDGE, COOLING, proof(*asked), typed)


@pytest.mark.parametrize(
    ("asked", "typed"), [(asked, typed) for asked, all_ in PROVED.items() for typed in all_]
)
def test_an_honest_reading_proves(asked: tuple[str, str], typed: str) -> None:
    """Regression: a number beside words of the proof itself was no reading."""
    assert why_unproved(KNOWLEDGE, COOLING, proof(*asked), typed) == ""


@pytest.mark.parametrize(
    ("asked", "typed"),
    [
        (("flame-rod-dirty", "Five cold"), "4 of 5"),
        (("control-transformer-open", "The load on it"), "52 va of 40 fuse 10a"),
        (("condenser-coil-dirty", "Condensing"), "45 F"),
        (("condenser-coil-dirty", "Amps down"), "9 from 8.4"),
    ],
)
def test_what_falls_short_is_read_and_bad(asked: tuple[str, str], typed: str) -> None:
    assert why_unproved(KNOWLEDGE, COOLING, proof(*asked), typed) == NOT_RIGHT


@pytest.mark.parametrize(("before", "why_not"), [(8.4, ""), (7.0, NOT_RIGHT), (None, NO_BEFORE)])
def test_down_is_beside_what_it_was_in_this_visit(before: float | None, why_not: str) -> None:
    asked = proof("condenser-coil-dirty", "Amps down")
    found = why_unproved(KNOWLEDGE, COOLING, asked, "7.2 A", before=before)
    assert found == why_not


@pytest.mark.parametrize(
    ("fault", "typed", "missing"),
    [
        ("heat-exchanger-cracked", "42 F", "heat rise high"),
        ("heat-exchanger-cracked", "60 ppm", "flue oxygen"),
        ("condenser-fan-motor-seized", "1.8 A", "condenser fan FLA"),
        ("compressor-locked-rotor", "9.1/9.0/9.2 A", "compressor RLA"),
    ],
)
def test_a_number_that_nothing_judges_is_no_proof(fault: str, typed: str, missing: str) -> None:
    """Regression: what no plate value was there to judge counted as right."""
    found = [
        why_unproved(KNOWLEDGE, Unit(), proof, typed) for proof in KNOWLEDGE.faults[fault].proof
    ]
    assert any("not judged" in why and missing in why for why in found), found


def test_a_plate_value_of_any_place_judges() -> None:
    plate = {"condenser-fans": "several", "condenser-fan-fla": {"condenser-fan 2": "2 A"}}
    proof = KNOWLEDGE.faults["condenser-fan-motor-seized"].proof[1]
    unit_of_two = read_unit(KNOWLEDGE, plate)
    assert why_unproved(KNOWLEDGE, unit_of_two, proof, "1.8 A") == ""
    assert why_unproved(KNOWLEDGE, unit_of_two, proof, "2.8 A") == NOT_RIGHT


def test_a_unit_of_one_phase_has_two_legs_to_read() -> None:
    fault = KNOWLEDGE.faults["contactor-pole-burnt-away"]
    for phase, legs in (("single", "Both legs"), ("three", "Three legs")):
        texts = [p.text for p in proofs_on(KNOWLEDGE, Unit({"supply-phase": phase}), fault)]
        (asked,) = (text for text in texts if " legs " in text)
        assert asked.startswith(legs)


def test_nobody_is_asked_for_what_his_unit_has_not() -> None:
    single = Unit({"supply-phase": "single", "compressor-phase": "single"})
    for fault in KNOWLEDGE.faults.values():
        told = " ".join(proof.text.lower() for proof in proofs_on(KNOWLEDGE, single, fault))
        assert "three legs" not in told and "three pairs" not in told


@given(st.sampled_from(PROOFS), st.sampled_from(["", "n", "y", "dunno", "tomorrow", "s", "..."]))
def test_nothing_proves_any(proof: Proof, typed: str) -> None:
    assert why_unproved(KNOWLEDGE, Unit(), proof, typed)


@given(
    st.sampled_from(MEASURED),
    st.integers(0, 9_999).map(lambda n: n / 10),
    st.sampled_from(OTHERS),
)
def test_a_number_of_another_kind_proves_none(proof: Proof, number: float, other: str) -> None:
    assert proof.finding is not None
    own = own_units(KNOWLEDGE, KNOWLEDGE.tests[proof.finding.test])
    kinds = {unit(each).kind.partition(" ")[0] for each in own}
    of_nothing = number == 0 and {"percent-LEL"} & {*own} and other in ("ppm", "%")
    if unit(other).kind.partition(" ")[0] not in kinds and not of_nothing:
        assert why_unproved(KNOWLEDGE, Unit(), proof, f"{number:g} {other}")


@given(st.sampled_from(PROOFS), st.text(max_size=60))
def test_whatever_is_typed_is_judged(proof: Proof, typed: str) -> None:
    assert isinstance(why_unproved(KNOWLEDGE, Unit(), proof, typed), str)


def proof_of(fault: str, begins: str) -> Proof:
    return next(p for p in KNOWLEDGE.faults[fault].proof if p.text.startswith(begins))


@pytest.mark.parametrize(
    ("fault", "begins", "typed"),
    [
        ("contactor-pole-burnt-away", "Each pole", "0.1 0.1 0.1 V with the compressor off"),
        ("contactor-coil-open", "Each pole", "0.1/0.1/0.1 V, no load"),
        ("gas-shut-off-or-tank-empty", "Lights", "lit on the third try"),
        ("gas-shut-off-or-tank-empty", "Lights", "lights first try, 60 ppm CO in the return"),
        ("blower-motor-winding-failed", "Pairs alike", "pairs alike, T1 to the frame 40 ohm"),
        ("condenser-fan-motor-winding-failed", "Windings", "read right, to ground 0.3 megohm"),
        ("compressor-overload-open-when-hot", "Windings", "1.1 1.1 1.1 ohm, 3 kohm to ground"),
        ("compressor-overload-open-when-hot", "Windings", "1.1 1.1 0.4 ohm, 200 Mohm to ground"),
        ("compressor-overload-open-when-hot", "Windings", "1.1 ohm"),
        ("contactor-pole-burnt-away", "Windings at", "0.3 megohm"),
    ],
)
def test_what_is_not_as_the_proof_asks_proves_nothing(fault: str, begins: str, typed: str) -> None:
    """Regression: numbers of another test, a dead load and the third try counted as right."""
    assert why_unproved(KNOWLEDGE, ON_THREE, proof_of(fault, begins), typed)


@pytest.mark.parametrize(
    ("fault", "begins", "typed"),
    [
        ("contactor-pole-burnt-away", "Each pole", "0.1/0.1/0.1 V with the compressor on"),
        ("compressor-overload-open-when-hot", "Windings", "1.1 1.1 1.1 ohm, 200 Mohm to ground"),
        ("compressor-overload-open-when-hot", "Windings", "1.1/1.1/1.1 ohm, OL to ground"),
        ("contactor-pole-burnt-away", "Windings at", "1.1 1.1 1.1 ohm, 200 megohm to ground"),
        ("contactor-pole-burnt-away", "Windings at", "5 Mohm"),
    ],
)
def test_an_honest_reading_beside_another_proves(fault: str, begins: str, typed: str) -> None:
    assert why_unproved(KNOWLEDGE, ON_THREE, proof_of(fault, begins), typed) == ""


BY_TEXT = {proof.text: proof for proof in PROOFS}
DRAFT = "Draft beats the set point by 0.1 in wc"


@pytest.mark.parametrize("set_point", ["-.60", "0.60"])
@pytest.mark.parametrize(("typed", "is_right"), [("-0.93", True), ("0.93", True), ("-0.30", False)])
def test_a_draft_is_a_size(set_point: str, typed: str, is_right: bool) -> None:
    """Regression: a set point stamped -.60 was beaten by a draft of 0.30."""
    unit = read_unit(KNOWLEDGE, {"pressure-switch-set-point": set_point})
    assert (why_unproved(KNOWLEDGE, unit, BY_TEXT[DRAFT], typed) == "") == is_right


NITROGEN = "Leak repaired and the nitrogen test holds"
FULL_CALL = "Stays on through a full call"
LIMIT = "Seen to open with the air held back, and to close again"
COIL = "Light shows through the whole coil"


@pytest.mark.parametrize(
    ("text", "typed"),
    [
        (NITROGEN, "300 psig on nitrogen, no drop in 60 minutes"), (NITROGEN, "holds"),
        (FULL_CALL, "stayed on 20 min, 24 A every leg"),
        (FULL_CALL, "read 24 A on all three legs for 20 minutes, stayed on"),
        (LIMIT, "opened at 160 F with half the filter blocked, closed again at 120 F"),
        (LIMIT, "bank dropped out at 158 F, came back at 120 F"),
        (COIL, "light thru all of it"),
    ],
)  # fmt: skip
def test_true_words_of_the_trade_prove(text: str, typed: str) -> None:
    """Regression: honest men got "not proved" in the report for their wording."""
    assert why_unproved(KNOWLEDGE, ON_THREE, BY_TEXT[text], typed) == ""


@pytest.mark.parametrize(
    ("text", "typed"),
    [
        (NITROGEN, "300 on nitrogen"), (NITROGEN, "300 psig nitrogen, dropped 5 psi"),
        (NITROGEN, "not holding pressure"), (NITROGEN, "drop of 5 psi"),
        (FULL_CALL, "24 A every leg"), (FULL_CALL, "dropped out after 5 min"),
        (FULL_CALL, "never stayed on"), (LIMIT, "never opened"), (LIMIT, "stayed on to 200 F"),
        (LIMIT, "160 F with half the filter blocked"), (COIL, "the light is on"),
    ],
)  # fmt: skip
def test_a_word_out_of_them_proves_nothing(text: str, typed: str) -> None:
    assert why_unproved(KNOWLEDGE, ON_THREE, BY_TEXT[text], typed)


KILLED = next(p for p in PROOFS if p.text == "What killed the old one is found and fixed")


@pytest.mark.parametrize(
    "typed",
    ["found and fixed, bulb was loose", "fixed, the crankcase heater had failed",
     "loose bulb, strapped it down and insulated, fixed", "found it: burnt contact, replaced"],
)  # fmt: skip
def test_what_was_wrong_may_be_named_where_it_is_mended(typed: str) -> None:
    """Regression: "loose" said of what had been fixed made it not right."""
    assert why_unproved(KNOWLEDGE, ON_THREE, KILLED, typed) == ""


@pytest.mark.parametrize(
    "typed",
    ["bulb was loose", "bulb is loose, fan fixed", "bulb still loose, tightened the other",
     "found but not fixed, bulb was loose", "fixed but it trips again"],
)  # fmt: skip
def test_what_is_still_wrong_proves_no_cause_mended(typed: str) -> None:
    assert why_unproved(KNOWLEDGE, ON_THREE, KILLED, typed)


THREE_PHASE = ("compressor-winding-grounded", "compressor-turns-shorted", "compressor-winding-open",
               "compressor-locked-rotor", "compressor-bearing-wear")  # fmt: skip
FANS = ("condenser-fan-motor-winding-failed", "condenser-fan-motor-seized")


@pytest.mark.parametrize("fault", [*THREE_PHASE, *FANS, "blower-motor-winding-failed"])
def test_a_new_motor_is_seen_to_turn_the_right_way(fault: str) -> None:
    """A three-phase motor turns backward on two legs changed over; a scroll then pumps nothing.

    Common practice, no source; makers of scrolls ask for suction to fall and head to rise at once.
    """
    seen = {"compressor-pumping": "pumps", "condenser-fan-turning": "normal",
            "blower-rotation": "right"}  # fmt: skip

    def turning(on: Unit) -> list[Proof]:
        proofs = proofs_on(KNOWLEDGE, on, KNOWLEDGE.faults[fault])
        return [
            p for p in proofs if p.finding and p.finding.outcomes == (seen.get(p.finding.test),)
        ]

    assert len(turning(ON_THREE)) == 1
    on_one = read_unit(KNOWLEDGE, {"supply-phase": "single", "compressor-phase": "single"})
    assert len(turning(on_one)) == (0 if fault in THREE_PHASE else 1)
