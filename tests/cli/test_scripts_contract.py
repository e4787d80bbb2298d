"""The contract that scripts rely on: keys, endings, exit codes, and refusal of the whole file."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.visit.telling.account import WOULD_SEPARATE

Call = Callable[..., tuple[int, str, str]]
Write = Callable[[dict[str, Any]], str]

KEYS = [
    "schema", "ending", "complaint", "causes", "effects", "outside", "beyond",
    "nothing_wrong", "asked",
    "computed", "cautions", "stop", "standing_stops", "unexplained", "not_judged", "proofs",
    "behind", "minutes", "would_separate",
]  # fmt: skip

POLE: dict[str, Any] = {
    "unit": {
        "refrigerant": "R-410A",
        "metering": "txv",
        "circuits": 2,
        "supply-phase": "three",
        "compressor-phase": "three",
        "compressor-rla": "8.9 A",
    },
    "conditions": {"outdoor-temperature": "94 F", "minutes-running": 20},
    "complaint": "fails-hot-afternoons",
    "readings": [
        {"test": "suction-pressure", "at": "circuit 1", "text": "128 psig"},
        {"test": "suction-line-temperature", "at": "circuit 1", "text": "54 F"},
        {"test": "compressor-start-attempt", "at": "circuit 2", "outcome": "hums-and-trips"},
        {"test": "contactor-contacts", "at": "contactor 2", "outcome": ["pole-burnt-away"]},
        {"test": "compressor-amps", "at": "compressor 2", "outcome": "one-leg-zero"},
        {"test": "compressor-windings", "text": "2.31/2.33/2.30 ohm", "valid": False},
    ],
}


def test_a_test_that_would_tell_says_at_which_of_two_places(
    command: Call, case_file: Write
) -> None:
    """Regression: with two circuits the same line stood twice, without the circuit."""
    case = {"unit": {"circuits": 2, "refrigerant": "R-410A"}, "complaint": "fails-hot-afternoons"}
    out = command("assess", case_file(case))[1]
    lines = [line for line in out.splitlines() if line.endswith(" min)")]
    assert len(lines) == len(set(lines)) == WOULD_SEPARATE
    assert any(", circuit 2 (about" in line for line in lines)


@pytest.mark.parametrize(
    ("how", "first", "last"),
    [
        (["assess"], ["standing"], ["before_anything"]),
        (
            ["diagnose", "--answers"],
            ["standing", "left_before", "certifies"],
            ["repairs", "unread"],
        ),
    ],
)
def test_an_account_has_exactly_the_keys_of_the_contract(
    how: list[str], first: list[str], last: list[str], command: Call, case_file: Write
) -> None:
    code, out, _ = command(*how, case_file(POLE), "--json")
    assert code == 0
    assert list(json.loads(out)) == [*first, *KEYS, *last]


def test_text_and_data_offer_the_same_next_tests(
    command: Call, case_file: Write, shipped: Knowledge
) -> None:
    case = {"unit": {"circuits": 2, "refrigerant": "R-410A"}, "complaint": "fails-hot-afternoons"}
    out = command("assess", case_file(case))[1]
    rows = json.loads(command("assess", case_file(case), "--json")[1])["would_separate"]
    assert [line.strip() for line in out.splitlines() if line.endswith(" min)")] == [
        f"{with_place(shipped.tests[r['test']].name, r['at'])} (about {r['minutes']} min)"
        for r in rows
    ]


def test_every_hazard_of_an_assessment_has_its_whole_text(
    command: Call, case_file: Write, shipped: Knowledge
) -> None:
    """Regression: a DANGER was listed by its id alone, for a likely jumper."""
    found = {"test": "jumper-search", "outcome": "found-on-call"}
    case = {"unit": {"heat": "gas"}, "complaint": "cooling-will-not-stop", "readings": [found]}
    for each in (POLE, case):
        cautions = json.loads(command("assess", case_file(each), "--json")[1])["cautions"]
        assert cautions
        for row in cautions:
            assert isinstance(row["stands"], bool)
            assert any(shipped.hazards[row["id"]].what_to_do in line for line in row["says"])


WINDINGS = {"test": "compressor-windings", "at": "compressor 1", "text": "1.42/0.88/1.40"}


@pytest.mark.parametrize(
    ("reading", "unit", "missing"),
    [
        (WINDINGS, {}, ["compressor phase"]),
        ({"test": "compressor-amps", "text": "12 A"}, {}, ["compressor RLA"]),
        (
            {"test": "suction-line-temperature", "text": "54 F"},
            {"refrigerant": "R-410A"},
            ["suction pressure"],
        ),
    ],
)
def test_a_reading_that_comes_to_nothing_says_what_is_missing(
    reading: dict[str, str],
    unit: dict[str, str],
    missing: list[str],
    command: Call,
    case_file: Write,
    shipped: Knowledge,
) -> None:
    """Regression: windings without the compressor's phase were thrown away in silence."""
    path = case_file({"unit": unit, "complaint": "no-cooling", "readings": [reading]})
    name = shipped.tests[reading["test"]].name
    for how in (["assess"], ["diagnose", "--answers"]):
        text = command(*how, path)[1]
        (row,) = json.loads(command(*how, path, "--json")[1])["not_judged"]
        assert (row["test"], row["missing"]) == (reading["test"], missing)
        line = next(line for line in text.splitlines() if f"missing {missing[0]}" in line)
        assert name in line and reading["text"] in line


def test_what_a_computed_test_made_use_of_is_not_said_to_lack_anything(
    command: Call, case_file: Write
) -> None:
    """The suction pressure has no limits of its own on this unit, but it gives the superheat."""
    plain = json.loads(command("assess", case_file(POLE), "--json")[1])
    assert plain["not_judged"] == [] and plain["computed"]


def test_what_is_judged_is_not_said_to_lack_anything(command: Call, case_file: Write) -> None:
    case = {"unit": {"compressor-phase": "three"}, "complaint": "no-cooling",
            "readings": [WINDINGS]}  # fmt: skip
    plain = json.loads(command("assess", case_file(case), "--json")[1])
    assert plain["not_judged"] == [] and plain["causes"][0]["id"] == "compressor-turns-shorted"


def test_assess_says_what_was_made_of_every_reading(command: Call, case_file: Write) -> None:
    account = json.loads(command("assess", case_file(POLE), "--json")[1])
    rows = {(row["test"], row["at"]): row for row in account["asked"]}
    assert len(rows) == len(POLE["readings"])
    windings = rows["compressor-windings", None]
    assert windings["valid"] is False and windings["text"] == "2.31/2.33/2.30 ohm"
    assert rows["contactor-contacts", "contactor 2"]["outcome"] == "pole-burnt-away"
    assert account["minutes"] == round(sum(row["minutes"] for row in account["asked"]))


def test_a_burnt_pole_is_named_at_its_own_contactor(command: Call, case_file: Write) -> None:
    account = json.loads(command("assess", case_file(POLE), "--json")[1])
    first = account["causes"][0]
    assert (first["id"], first["at"]) == ("contactor-pole-burnt-away", "contactor 2")
    assert first["probability"] >= 0.9 and account["ending"] == "named"
    assert first["probability"] == round(first["probability"], 4)
    accused = {(c["id"], c["at"]): c["probability"] for c in account["causes"]}
    assert accused.get(("contactor-pole-burnt-away", "contactor 1"), 0.0) < 0.01


def test_superheat_appears_by_itself_where_both_its_inputs_are_known(
    command: Call, case_file: Write
) -> None:
    account = json.loads(command("assess", case_file(POLE), "--json")[1])
    row = next(r for r in account["computed"] if r["test"] == "superheat")
    assert row["at"] == "circuit 1" and row["unit"] == "F"
    # R-410A at 128 psig has its dew point at 44.1 F (reference equations of state, as printed in
    # published pressure-temperature tables), so a 54 F line is 9.9 F above it.
    assert row["value"] == pytest.approx(9.9, abs=0.2)
    assert row["outcome"] == "normal-txv"


def test_everything_not_understood_is_named_and_nothing_is_taken(
    command: Call, case_file: Write
) -> None:
    case = {
        "unit": {"circuits": 2, "refrigerent": "R-22"},
        "complaint": "fails-hot-afternoon",
        "colour": "red",
        "readings": [
            {"test": "superheet", "text": "12 F"},
            {"test": "superheat", "outcome": "hihg"},
            {"test": "suction-pressure", "at": "circuit 3", "text": "128 psig"},
            {"test": "suction-pressure", "at": "circuit 1", "text": "12 V"},
        ],
    }
    code, out, err = command("assess", case_file(case), "--json")
    assert code == 3
    rows = json.loads(out)["error"]
    assert {row["key"] for row in rows} == {
        "unit.refrigerent", "complaint", "colour", "readings[0].test", "readings[1].outcome",
        "readings[2].at", "readings[3].text",
    }  # fmt: skip
    assert all(row["problem"] and row["instead"] for row in rows)
    assert "did you mean refrigerant" in err and "did you mean fails-hot-afternoons" in err


def test_a_mapping_of_readings_serves_as_well_as_a_list(command: Call, case_file: Write) -> None:
    case = {
        "complaint": "no-cooling",
        "readings": {"condenser-fan-turning": "stopped", "condenser-fan-hand-spin": "free"},
    }
    code, out, _ = command("assess", case_file(case), "--json")
    assert code == 0
    assert json.loads(out)["complaint"] == "no-cooling"


def test_a_gas_smell_stops_everything_and_offers_no_next_test(
    command: Call, case_file: Write
) -> None:
    for how in (["assess"], ["diagnose", "--answers"]):
        code, out, _ = command(*how, case_file({"complaint": "gas-smell"}), "--json")
        account = json.loads(out)
        assert code == 0
        assert account["ending"] == "stopped"
        assert account["stop"]["scope"] == "whole-job"
        assert account["stop"]["what_to_do"] and account["stop"]["defer_to"]
        assert account["would_separate"] == [] and account["causes"]


def test_unmentioned_safety_steps_are_confirmed_in_the_safe_order(
    command: Call, case_file: Write
) -> None:
    case = {
        "complaint": "cooling-short-cycles",
        "unit": {"supply-phase": "single", "circuits": 1, "condenser-fan-phase": "single"},
        "readings": [
            {"test": "condenser-fan-turning", "outcome": "stopped"},
            {"test": "condenser-fan-hand-spin", "outcome": "free"},
            {
                "test": "capacitance-out-of-circuit",
                "at": "capacitor condenser fan 1",
                "outcome": "very-low",
            },
        ],
    }
    account = json.loads(command("diagnose", "--answers", case_file(case), "--json")[1])
    order = [row["test"] for row in account["asked"]]
    hands_in = order.index("capacitance-out-of-circuit")
    before = order[:hands_in]
    for step in ("roof-conditions", "tell-occupants", "lockout", "panels-off"):
        assert step in before
    # 29 CFR 1910.333(b)(2)(iv): test for dead with equipment proved before and after.
    first, last = (
        before.index("verified-dead"),
        len(before) - 1 - before[::-1].index("verified-dead"),
    )
    assert before.index("tester-proof") < before.index("lockout") < first
    assert first < before.index("capacitor-discharge") < last
    assert "tester-proof" in before[last:]
    cautioned = {row["before"] for row in account["cautions"]}
    assert {"verified-dead", "capacitor-discharge", "lockout"} <= cautioned
    assert account["causes"][0]["id"] == "condenser-fan-capacitor-weak"


def test_yaml_on_standard_input_is_read(command: Call, monkeypatch: pytest.MonkeyPatch) -> None:
    import io

    text = "complaint: no-cooling\nreadings:\n  - {test: condenser-fan-turning, outcome: stopped}\n"
    monkeypatch.setattr("sys.stdin", io.StringIO(text))
    code, out, _ = command("assess", "-", "--json")
    assert code == 0 and json.loads(out)["complaint"] == "no-cooling"


@pytest.mark.parametrize(
    ("text", "where"),
    [("complaint: [", "1:"), ("a: 1\na: 2\n", "2:"), ("just words", "file")],
)
def test_a_broken_file_is_one_sentence_with_its_place(
    text: str, where: str, command: Call, tmp_path: Path
) -> None:
    path = tmp_path / "broken.yaml"
    path.write_text(text, "utf-8")
    code, _, err = command("assess", str(path))
    assert code == 3 and where in err and "Traceback" not in err


def test_a_file_that_is_not_there_is_a_usage_error(command: Call) -> None:
    code, _, err = command("assess", "no-such-file.yaml")
    assert code == 2 and "cannot be read" in err


def test_a_step_beyond_the_profile_is_handed_over_and_never_asked(
    command: Call, case_file: Write
) -> None:
    case = {
        "complaint": "cooling-short-cycles",
        "readings": {
            "condenser-fan-turning": "stopped",
            "condenser-fan-amps": "zero",
            "capacitance-out-of-circuit": "very-low",
        },
    }
    words = ["diagnose", "--answers", case_file(case), "--json", "--profile", "apprentice"]
    account = json.loads(command(*words)[1])
    asked = {row["test"] for row in account["asked"]}
    assert "condenser-fan-turning" in asked
    assert not asked & {"verified-dead", "tester-proof", "condenser-fan-amps"}
    assert "capacitor-discharge" not in asked
    # What calls up a danger speaks, whoever may read it; nobody is led to it.
    of_the_file = {row["test"] for row in account["asked"] if row["said_by"] == "file"}
    assert "capacitance-out-of-circuit" in of_the_file


def test_the_page_of_a_complaint_names_what_is_looked_at_first_and_what_may_be_behind_it(
    command: Call,
) -> None:
    code, out, _ = command("rules", "explain", "no-free-cooling")
    assert code == 0
    first, _, rest = out.partition("First tests: ")[2].partition("\n")
    assert first.count("; ") >= 2
    assert "Economizer settings wrong" in rest.partition("Now and then:")[0]
    assert "Sensor open or shorted" in rest.partition("Now and then:")[2]


def test_a_file_may_hold_the_inputs_of_what_is_asked(command: Call, case_file: Write) -> None:
    """Regression: without mixed air, or the drop itself, the inputs given were passed over."""
    case = {
        "unit": {"refrigerant": "R-410A", "metering": "txv", "circuits": 1},
        "conditions": {"outdoor-temperature": "90 F", "minutes-running": 25},
        "complaint": "weak-cooling",
        "readings": [
            {"test": "return-air-temperature", "text": "75 F"},
            {"test": "supply-air-temperature", "text": "62 F"},
            {"test": "drier-in-temperature", "text": "88 F"},
            {"test": "drier-out-temperature", "text": "76 F"},
        ],
    }
    account = json.loads(command("diagnose", "--answers", case_file(case), "--json")[1])
    computed = {row["test"]: row["value"] for row in account["computed"]}
    assert computed["air-temperature-split"] == 13.0
    assert computed["drier-temperature-drop"] == 12.0
