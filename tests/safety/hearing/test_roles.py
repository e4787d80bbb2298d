"""Who is named by the trade's words and by everyday ones, who has come, and who only stands near.

How people speak of them is common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.safety.hearing.roles import (
    ROLES,
    has_not_come,
    names_a_role,
    names_oneself,
    roles_in,
    without_gas_people,
    without_help,
)

SPOKEN = {
    "fire-service": (
        "fire service", "fire brigade", "fire department", "fire dept", "fire company", "fire co",
        "fire crew", "fire chief", "fire officer", "fire marshal", "firefighter", "firefighters",
        "firemen",
    ),
    "medical-service": (
        "medical service", "ambulance", "paramedic", "paramedics", "emt", "medic", "hospital",
        "doctor", "emergency room",
    ),
    "gas-utility": (
        "gas utility", "gas company", "gas co", "gas board", "gas supplier", "gas man", "gas men",
        "gas guy", "gas guys", "gas people", "gas crew", "gas lady", "gas woman", "gas department",
        "gas service", "gas emergency line", "gasco",
    ),
    "gas-fitter": (
        "gas fitter", "gasfitter", "gas plumber", "gas technician", "gas tech", "gas techs",
        "gas mechanic", "gas contractor",
    ),
    "combustion": (
        "combustion", "combustion tech", "combustion technician",
    ),
    "heating-contractor": (
        "heating contractor", "heating company", "heating co", "burner technician",
    ),
    "electrician": (
        "electrician", "electricians", "sparky", "electrical contractor",
    ),
    "electric-utility": (
        "electric utility", "electric company", "electric co", "power company", "power co",
        "power utility", "utility lineman", "lineman", "line crew",
    ),
    "refrigerant": (
        "refrigerant technician", "refrigerant tech", "refrigeration technician",
        "refrigeration tech", "refrigeration mechanic",
    ),
    "fire-alarm": (
        "fire alarm technician", "fire alarm tech", "fire alarm contractor", "alarm company",
        "alarm co", "alarm contractor", "fire panel company", "monitoring company",
    ),
    "building-owner": (
        "building owner", "owner", "owners", "landlord", "building manager", "building engineer",
        "facility manager", "facilities manager", "facility engineer", "facilities",
        "property manager", "caretaker", "custodian", "janitor",
    ),
    "supervisor": (
        "supervisor", "supervising technician", "boss", "foreman", "forewoman", "superintendent",
        "lead technician", "lead tech", "lead mechanic", "service manager", "site manager",
    ),
}  # fmt: skip
OTHERS = (
    "utility", "police", "manager", "management", "dispatcher", "dispatch", "office", "engineer",
    "maintenance", "operator", "plumber", "contractor", "technician", "tech", "mechanic",
    "journeyman", "installer", "inspector", "safety officer", "security", "guard", "tenant",
    "tenants", "occupant", "occupants", "customer", "client", "caller", "receptionist",
    "reception", "front desk", "secretary", "administrator", "shift leader", "team leader",
    "crew leader", "coworker", "colleague", "partner", "helper", "apprentice", "permit holder",
    "pest control", "teacher", "principal", "nurse", "chef", "cook", "store keeper", "shopkeeper",
    "employer", "director", "control room",
)  # fmt: skip


WRITTEN_OUT = {
    "fire-service": "the fire service",
    "medical-service": "the medical service",
    "gas-utility": "the gas utility",
    "gas-fitter": "a licensed gas fitter",
    "combustion": "a combustion-qualified person, with an analyzer",
    "heating-contractor": "a licensed heating contractor",
    "electrician": "a licensed electrician",
    "electric-utility": "the electric utility",
    "refrigerant": "a certified refrigerant technician, trained for this refrigerant",
    "fire-alarm": "a person licensed for fire alarms",
    "building-owner": "the building's owner",
    "supervisor": "the supervisor",
}


def test_whom_the_papers_call_for_is_licensed_or_in_charge() -> None:
    assert list(ROLES.items()) == list(WRITTEN_OUT.items()), "in the order of the list"


def test_each_way_to_speak_of_somebody_means_one_role() -> None:
    for role, ways in SPOKEN.items():
        assert role in ROLES
        for way in (*ways, role.replace("-", " ")):
            assert roles_in(f"told the {way}.") == (role,), way
            assert names_a_role(f"told the {way.upper()}"), way


@pytest.mark.parametrize("said", ["called 911", "the emergency services came"])
def test_whoever_is_called_for_help_may_be_either_of_two(said: str) -> None:
    assert roles_in(said) == ("fire-service", "medical-service")


def test_others_may_be_told_and_make_nothing_safe_by_being_that() -> None:
    for other in OTHERS:
        assert names_a_role(f"told the {other}"), other
        assert roles_in(f"told the {other}") == (), other


@pytest.mark.parametrize(
    ("said", "roles"),
    [
        ("the gas company's man", ("gas-utility",)),
        ("the gas company\u2019s man", ("gas-utility",)),
        ("the owner and an electrician", ("electrician", "building-owner")),
        ("fire alarm tech", ("fire-alarm",)),
        ("co-owner", ("building-owner",)),
        ("Joe", ()),
        ("", ()),
    ],
)
def test_each_role_is_named_once(said: str, roles: tuple[str, ...]) -> None:
    assert roles_in(said) == roles


@pytest.mark.parametrize(
    "said", ["no electrician", "nobody told the owner", "could not reach the boss", "Joe"]
)
def test_a_denied_role_or_a_name_is_nobody_to_be_found_again(said: str) -> None:
    assert not names_a_role(said)


@pytest.mark.parametrize(
    "said",
    [
        "unlicensed electrician", "expired license electrician", "electrician or helper",
        "electrician is on his way", "electrician will come",
        "called the electrician, i have called", "electrician's apprentice", "ex electrician",
        "electrician?", "helper of the electrician", "electrician by phone", "Un licensed",
    ],
)  # fmt: skip
def test_who_is_to_come_or_only_like_one_has_not_come(said: str) -> None:
    assert has_not_come(said) == (said != "Un licensed")


@pytest.mark.parametrize(
    "said", ["electrician", "electrician and his apprentice", "electrician with two helpers"]
)
def test_who_brought_a_helper_came(said: str) -> None:
    assert not has_not_come(said)


@pytest.mark.parametrize(
    ("said", "oneself"),
    [
        ("myself", True), ("Me", True), ("I, the apprentice", True), ("told by me", False),
        ("electrician with me", False), ("the owner", False),
    ],
)  # fmt: skip
def test_oneself_is_who_types_it(said: str, oneself: bool) -> None:
    assert names_oneself(said) is oneself


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("called an ambulance, he is cold", " , he is cold"),
        ("Called the Fire Department, hose is out", " , hose is out"),
        ("called 911", " "),
        ("the gas company came", "the they came"),
        ("need an ambulance", "need an ambulance"),
        ("call 911", "call 911"),
        ("no ambulance", "no ambulance"),
        ("he is cold", "he is cold"),
    ],
)
def test_help_that_was_called_is_no_danger_and_help_that_is_cried_for_is(
    said: str, left: str
) -> None:
    assert without_help(said) == left


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("Gas Company came", "they came"), ("the gas fitter", "the they"), ("gas", "gas"),
        ("gasfitters", "gasfitters"),
    ],
)  # fmt: skip
def test_those_who_see_to_the_gas_are_no_gas(said: str, left: str) -> None:
    assert without_gas_people(said) == left
