"""A case as people write it in a file: what is taken, and what is refused with what would do."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.building import base, fault, measured, test_of
from troubleshoot.knowledge.model import Complaint, Knowledge, PlateValue, Quantity, Read, Test
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.equipment import InputRefused
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.cases.file import CASE_KEYS, READING_KEYS, read_case

BANDS = {"normal": {"at_most": 10}, "high": {"above": 10}}
TESTS = [
    measured("amps", BANDS, reads=(Read("amps"),), per="compressor"),
    Test("suction", "suction", "area", "input", (), reads=(Read("suction"),), per="circuit"),
    test_of("poles", "pitted", "burnt-away", choose="several", per="contactor"),
    test_of("look", "bad"),
]
KNOWLEDGE: Knowledge = replace(
    base(
        TESTS,
        [fault("f", {"often": [{"look": "bad"}]}), fault("g", {"often": [{"amps": "high"}]})],
        complaints=[Complaint("hot", "It is hot"), Complaint("routine-inspection", "A round")],
        quantities=[
            Quantity("amps", "A", "amps", per="compressor"),
            Quantity("suction", "psig", "low side", per="circuit"),
            Quantity("outdoor-temperature", "F", "outdoors"),
            Quantity("minutes-running", "min", "time run"),
        ],
        plates=[PlateValue("rla", "A", "nameplate", "rated", per="compressor")],
    ),
    aliases={("old-look", "dirty"): ("look", "bad"), ("look", "filthy"): ("look", "bad")},
)
TWO = {"circuits": 2}


def taken(readings: Any, **more: Any) -> Case:
    return read_case(KNOWLEDGE, {"readings": readings, **more})


def one(reading: dict[str, Any], **more: Any) -> Answer:
    (answer,) = taken([reading], **more).answers
    return answer


def refused(data: Any) -> dict[str, tuple[str, str]]:
    with pytest.raises(InputRefused) as error:
        read_case(KNOWLEDGE, data)
    return {r.key: (r.problem, r.instead) for r in error.value.refusals}


def test_an_empty_case_is_a_round_on_an_unknown_unit() -> None:
    found = read_case(KNOWLEDGE, {})
    assert found.routine and found.complaint is None and found.answers == ()


@pytest.mark.parametrize(
    ("complaint", "routine"), [(None, True), ("routine-inspection", True), ("hot", False)]
)
def test_a_complaint_makes_it_a_call(complaint: str | None, routine: bool) -> None:
    assert read_case(KNOWLEDGE, {"complaint": complaint}).routine is routine


def test_a_whole_case_is_read() -> None:
    found = read_case(
        KNOWLEDGE,
        {
            "unit": {"circuits": 2, "rla": {"compressor 1": "8.9 A"}},
            "own-record": {"suction": "118 psig"},
            "conditions": {"outdoor-temperature": "94 F", "minutes-running": 20},
            "complaint": "hot",
            "repaired": ["f"],
            "readings": [{"test": "suction", "at": "circuit 1", "text": "128 psig"}],
        },
    )
    assert found.unit.plate_value("rla", Place("compressor", 1)) == 8.9
    assert found.unit.plate_value("own-suction", None) == 118
    assert found.conditions == {"outdoor-temperature": "94 F", "minutes-running": "20"}
    assert (found.complaint, found.repaired) == ("hot", ("f",))
    assert found.answers == (Answer("suction", (), "128 psig", (Place("circuit", 1),)),)


def test_readings_may_be_a_list_in_order_or_a_mapping() -> None:
    listed = taken([{"test": "look", "outcome": "bad"}, {"test": "amps", "text": "9 A"}])
    mapped = taken({"look": "bad", "amps": "9 A"})
    assert listed.answers == mapped.answers


@pytest.mark.parametrize(
    ("answer", "outcomes", "text"),
    [
        ("12.4 A", (), "12.4 A"),
        (12.4, (), "12.4"),
        ("high", ("high",), None),
        ("High", ("high",), None),
        ({"text": "12.4 A"}, (), "12.4 A"),
        ({"text": {"value": 12.4, "unit": "A"}}, (), "12.4 A"),
        ({"outcome": "high"}, ("high",), None),
        ({"outcome": "high", "text": "9 A"}, ("high",), "9 A"),
    ],
)
def test_an_answer_is_a_word_a_text_or_a_mapping(
    answer: Any, outcomes: tuple[str, ...], text: str | None
) -> None:
    (found,) = taken({"amps": answer}).answers
    assert (found.outcomes, found.text) == (outcomes, text)


@pytest.mark.parametrize(
    ("text", "outcome", "number"),
    [
        ("25 ft safe", "safe", "25 ft"), ("safe, 25 ft", "safe", "25 ft"),
        ("5 ft safe", "edge-under-6-ft", "5 ft"), ("25 ft too hot", "too-hot", "25 ft"),
    ],
)  # fmt: skip
def test_a_number_and_its_word_are_read_as_at_a_prompt(
    text: str, outcome: str, number: str, shipped: Knowledge
) -> None:
    """Regression: "25 ft safe" held no unit, and a file had no other way in one line."""
    (answer,) = read_case(shipped, {"readings": {"roof-conditions": text}}).answers
    assert (answer.outcomes, answer.text, answer.valid) == ((outcome,), number, None)


@pytest.mark.parametrize("text", ["25 ft zebra", "ft safe", "safe safe 25 ft"])
def test_a_number_beside_words_that_say_nothing_is_refused(text: str, shipped: Knowledge) -> None:
    with pytest.raises(InputRefused):
        read_case(shipped, {"readings": {"roof-conditions": text}})


def test_a_test_may_stand_in_a_mapping_with_several_answers() -> None:
    found = taken(
        {"amps": [{"at": "compressor 1", "text": "9 A"}, {"at": "compressor 2", "text": "12 A"}]},
        unit=TWO,
    )
    assert [a.places for a in found.answers] == [
        (Place("compressor", 1),), (Place("compressor", 2),),
    ]  # fmt: skip


def test_signs_are_a_list_of_all_that_were_seen() -> None:
    assert one({"test": "poles", "outcome": ["pitted", "burnt-away"]}).outcomes == (
        "pitted", "burnt-away",
    )  # fmt: skip
    (found,) = taken({"poles": ["pitted", "burnt-away"]}).answers
    assert found.outcomes == ("pitted", "burnt-away")


@pytest.mark.parametrize(
    ("at", "places", "shared"),
    [
        ("contactor 2", (2,), False),
        ("contactor B", (2,), False),
        ("circuit 2", (2,), False),
        (["contactor 1", "contactor 2"], (1, 2), False),
        ("contactor", (1, 2), True),
        (None, (1, 2), True),
    ],
)
def test_a_place_is_named_listed_or_left_open(
    at: Any, places: tuple[int, ...], shared: bool
) -> None:
    found = one({"test": "poles", "at": at, "outcome": "pitted"}, unit=TWO)
    assert found.places == tuple(Place("contactor", n) for n in places)
    assert found.shared is shared


def test_with_one_of_a_kind_no_place_is_needed() -> None:
    found = one({"test": "poles", "outcome": "pitted"}, unit={"circuits": "one"})
    assert found.places == (Place("contactor", 1),) and not found.shared


def test_a_reading_that_names_a_second_circuit_says_there_is_one() -> None:
    found = taken([{"test": "poles", "at": "contactor 2", "outcome": "pitted"}])
    assert len(found.unit.layout.places("circuit")) == 2
    stated = refused(
        {"unit": {"circuits": 1}, "readings": [{"test": "poles", "at": "contactor 2",
                                                "outcome": "pitted"}]}
    )  # fmt: skip
    assert "readings[0].at" in stated


@pytest.mark.parametrize("valid", [True, False, None])
def test_a_stated_validity_is_kept(valid: bool | None) -> None:
    assert one({"test": "look", "outcome": "bad", "valid": valid}).valid is valid


def test_a_reading_keeps_its_instrument_and_its_own_conditions() -> None:
    own = {"minutes-running": "5 min"}
    found = one({"test": "amps", "text": "9 A", "instrument": "old clamp", "conditions": own})
    assert found.instrument == "old clamp" and found.conditions == own


@pytest.mark.parametrize(
    "reading",
    [
        {"test": "old-look", "outcome": "dirty"}, {"test": "old-look", "text": "Dirty"},
        {"test": "look", "outcome": "filthy"}, {"test": "look", "text": "filthy"},
    ],
)  # fmt: skip
def test_words_of_earlier_editions_are_understood(reading: dict[str, Any]) -> None:
    found = one(reading)
    assert (found.test, found.outcomes) == ("look", ("bad",))
    (mapped,) = taken({reading["test"]: reading.get("outcome", reading.get("text"))}).answers
    assert mapped == found


@pytest.mark.parametrize(
    ("data", "key", "would_do"),
    [
        ([], "file", "write keys such as unit, complaint, readings"),
        ({"reading": []}, "reading", "did you mean readings?"),
        ({"complaint": "hto"}, "complaint", "did you mean hot?"),
        ({"repaired": ["x"]}, "repaired", "one of f, g"),
        ({"unit": "R-22"}, "unit", "write one `name: value` a line"),
        ({"unit": {"circuits": "many"}}, "unit.circuits", "one of one, two-or-more"),
        ({"own-record": {"nothing": 1}}, "own-record.nothing", None),
        ({"conditions": {"outdor-temperature": "90 F"}}, "conditions.outdor-temperature",
         "did you mean outdoor-temperature?"),
        ({"conditions": {"outdoor-temperature": "90 psig"}}, "conditions.outdoor-temperature",
         None),
        ({"readings": "look"}, "readings", None),
        ({"readings": ["look"]}, "readings[0]", "write {test: NAME, text: READING}"),
        ({"readings": [{"test": "lok", "outcome": "bad"}]}, "readings[0].test",
         "did you mean look?"),
        ({"readings": [{"test": "look"}]}, "readings[0]", "give it an outcome or a text"),
        ({"readings": [{"test": "look", "outcome": "dad"}]}, "readings[0].outcome",
         "did you mean bad?"),
        ({"readings": [{"test": "look", "outcome": []}]}, "readings[0].outcome",
         "one of bad, normal"),
        ({"readings": [{"test": "look", "outcome": ["bad", "normal"]}]}, "readings[0].outcome",
         "give one of them"),
        ({"readings": [{"test": "look", "outcome": "bad", "at": "circuit 1"}]}, "readings[0].at",
         "leave the place out"),
        ({"readings": [{"test": "look", "outcome": "bad", "where": "roof"}]}, "readings[0].where",
         None),
        ({"readings": [{"test": "look", "outcome": "bad", "valid": "no"}]}, "readings[0].valid",
         "true or false"),
        ({"readings": [{"test": "look", "outcome": "bad", "valid": 1}]}, "readings[0].valid",
         "true or false"),
        ({"readings": [{"test": "look", "text": "12 V"}]}, "readings[0].text",
         "one of normal, bad"),
        ({"readings": [{"test": "amps", "text": "12 psig"}]}, "readings[0].text", None),
        ({"readings": [{"test": "amps", "text": "9 A", "conditions": {"rain": "1"}}]},
         "readings[0].conditions.rain", None),
        ({"readings": {"amps": "9 psig"}}, "readings.amps.text", None),
    ],
)  # fmt: skip
def test_what_is_not_understood_is_named_with_what_would_do(
    data: Any, key: str, would_do: str | None
) -> None:
    found = refused(data)
    assert list(found) == [key]
    problem, instead = found[key]
    assert problem and instead
    if would_do is not None:
        assert instead == would_do


@pytest.mark.parametrize(
    ("test", "outcome", "taken_for"),
    [
        ("Look at the contacts", "pole burnt away", ("contactor-contacts", ("pole-burnt-away",))),
        ("look at the  contacts", ["Pitted"], ("contactor-contacts", ("pitted",))),
        ("Condenser fan spun by hand", "seized up", ("condenser-fan-hand-spin", ("tight",))),
    ],
)
def test_a_test_and_its_outcome_are_taken_in_peoples_words(
    shipped: Knowledge, test: str, outcome: object, taken_for: tuple[str, tuple[str, ...]]
) -> None:
    case = {"readings": [{"test": test, "outcome": outcome}]}
    (answer,) = read_case(shipped, case).answers
    assert (answer.test, answer.outcomes) == taken_for


def test_no_safety_step_is_confirmed_in_a_files_loose_words(shipped: Knowledge) -> None:
    steps = [test for test in shipped.tests.values() if test.kind == "step"]
    loose = [(t, w) for t in steps for o in t.outcomes for w in o.words]
    assert loose
    known = {(test.id, outcome.id) for test in steps for outcome in test.outcomes}
    for test, word in loose:
        if (test.id, word) not in known and (test.id, word) not in shipped.aliases:
            with pytest.raises(InputRefused):
                read_case(shipped, {"readings": [{"test": test.id, "outcome": word}]})


def test_words_that_are_of_two_things_or_of_none_are_refused(shipped: Knowledge) -> None:
    """Half a name, and words of another test's outcome, name nothing."""
    for test, outcome in (("look at", "pitted"), ("Look at the contacts", "bad")):
        with pytest.raises(InputRefused):
            read_case(shipped, {"readings": [{"test": test, "outcome": outcome}]})


def test_everything_wrong_is_named_at_once_and_nothing_is_taken() -> None:
    found = refused(
        {"complaint": "x", "unit": {"y": 1}, "what": 1,
         "readings": [{"test": "z"}, {"test": "amps", "text": "?"}, {"test": "look", "at": "q",
                                                                     "outcome": "bad"}]}
    )  # fmt: skip
    assert set(found) == {
        "complaint", "unit.y", "what", "readings[0].test", "readings[1].text", "readings[2].at",
    }  # fmt: skip


def test_the_mapping_form_reads_the_same_as_the_list_to_the_reasoning() -> None:
    reasoner = Reasoner(KNOWLEDGE)
    listed = taken([{"test": "look", "outcome": "bad"}, {"test": "amps", "text": "12 A"}])
    mapped = taken({"amps": "12 A", "look": "bad"})
    one_, other = (reasoner.conclude(each).causes for each in (listed, mapped))
    assert [c.probability for c in one_] == [c.probability for c in other]


SCALARS = st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=12)
WORDS = st.sampled_from(
    ["look", "amps", "bad", "high", "12 A", "contactor 2", "circuits", "hot", "f", *CASE_KEYS,
     *READING_KEYS]
)  # fmt: skip
ANYTHING = st.recursive(
    SCALARS | WORDS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(WORDS, inner, max_size=4),
    max_leaves=20,
)


@settings(max_examples=300, deadline=None)
@given(ANYTHING | st.fixed_dictionaries({}, optional=dict.fromkeys(CASE_KEYS, ANYTHING)))
def test_no_data_does_anything_but_become_a_case_or_be_refused(data: Any) -> None:
    try:
        found = read_case(KNOWLEDGE, data)
    except InputRefused as error:
        assert all(r.key and r.problem and r.instead for r in error.refusals)
        return
    Reasoner(KNOWLEDGE).conclude(found)
