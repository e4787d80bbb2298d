"""Who people are, by role: read from what is typed, in the trade's words and in everyday ones.

A name alone tells whoever comes next nobody to call. A role does.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.outside.text import as_said, plain_words

ROLES: Final[Mapping[str, str]] = MappingProxyType(
    {
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
)
"""Who may have made a place safe. Which of them fits is the hazard's to say."""

_SPOKEN: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType(
    {
        "fire-service": (
            "fire brigade", "fire department", "fire dept", "fire company",
            "fire co", "fire crew", "fire chief", "fire officer", "fire marshal", "firefighter",
            "firefighters", "firemen", "911", "emergency services",
        ),
        "medical-service": (
            "ambulance", "paramedic", "paramedics", "emt", "medic", "hospital",
            "doctor", "emergency room", "911", "emergency services",
        ),
        "gas-utility": (
            "gas company", "gas co", "gas board", "gas supplier", "gas man",
            "gas men", "gas guy", "gas guys", "gas people", "gas crew", "gas lady", "gas woman",
            "gas department", "gas service", "gas emergency line", "gasco",
        ),
        "gas-fitter": (
            "gasfitter", "gas plumber", "gas technician", "gas tech", "gas techs",
            "gas mechanic", "gas contractor",
        ),
        "combustion": (),
        "heating-contractor": ("heating company", "heating co", "burner technician"),
        "electrician": ("electricians", "sparky", "electrical contractor"),
        "electric-utility": (
            "electric company", "electric co", "power company", "power co", "power utility",
            "lineman", "line crew",
        ),
        "refrigerant": (
            "refrigeration technician", "refrigeration tech", "refrigeration mechanic",
        ),
        "fire-alarm": (
            "alarm company", "alarm co", "alarm contractor", "fire panel company",
            "monitoring company",
        ),
        "building-owner": (
            "owner", "owners", "landlord", "building manager", "building engineer",
            "facility manager", "facility engineer", "facilities", "property manager", "caretaker",
            "custodian", "janitor",
        ),
        "supervisor": (
            "supervising technician", "boss", "foreman", "forewoman",
            "superintendent", "lead technician", "lead tech", "lead mechanic", "service manager",
            "site manager",
        ),
    }
)  # fmt: skip
"""How each is spoken of, beside its own name."""

_OTHERS: Final = (
    "utility", "police", "manager", "management", "dispatcher",
    "dispatch", "office", "engineer", "maintenance", "operator", "plumber", "contractor",
    "technician", "tech", "mechanic", "journeyman", "installer", "inspector", "safety officer",
    "security", "guard", "tenant", "tenants", "occupant", "occupants", "customer", "client",
    "caller", "receptionist", "reception", "front desk", "secretary", "administrator",
    "shift leader", "team leader", "crew leader", "coworker", "colleague", "partner", "helper",
    "apprentice", "permit holder", "pest control", "teacher", "principal", "nurse", "chef", "cook",
    "store keeper", "shopkeeper", "employer", "director", "control room",
)  # fmt: skip
"""Others who may be told, though none of them makes a place safe by being that."""

_NOBODY: Final = re.compile(
    r"\b(?:no|nobody|none|not|never|cannot|can't|couldn't|didn't|won't|unable|without|no-?one)\b"
)
_CALLED_FOR: Final = re.compile(r"\b(?:need|needs|send|get)\b|^call\b")
"""Words that still cry for help, and do not say that it was called."""


def _ways(*roles: str) -> tuple[str, ...]:
    """Every way to speak of these roles."""
    spoken = ((plain_words(role), *ways) for role, ways in _SPOKEN.items() if role in roles)
    return tuple(way for ways in spoken for way in ways)


_HELP: Final = "|".join(_ways("fire-service", "medical-service"))
_OF_GAS: Final = re.compile(
    rf"\b(?:{'|'.join(_ways('gas-utility', 'gas-fitter'))})\b", re.IGNORECASE
)
_ONESELF: Final = re.compile(
    r"(?<!by )(?<!with )(?<!beside )(?<!near )\b(?:me|my ?self|my own self|us|our ?selves|"
    r"yours truly|i'?m|i am|we are|we're)\b|\bonly (?:i|we)\b|^i\b(?=\W*(?:$|[,;]|as\b|the\b))"
)
_NOT_COME: Final = re.compile(
    r"\b(?:un|not |non-?|no )(?:licensed|qualified|certified|trained|authori[sz]ed|licen[cs]e)\b"
    r"|\b(?:will|shall|wait(?:s|ing)?|await\w*|coming|comes|promised|expected|scheduled|booked|"
    r"soon|should|may|might|could|hopefully|supposed|so[- ]called|former|retired)\b"
    r"|\bon (?:the|his|her|their|its|our) way\b|\b(?:en route|underway|under way|head(?:ed|ing)|"
    r"dispatched|sent for|refus\w+|declin\w+|cancel\w+|unavailable|turned (?:us|it|me) (?:down|"
    r"away)|too busy|(?:did|could|would|can|was|were)(?: not|n't)|cannot)\b"
    r"|\b(?:i|we) (?:have )?(?:called|phoned|rang|told)\b"
)
_ONLY_LIKE_ONE: Final = re.compile(
    r"\b(?:apprentices?|helpers?|trainees?|learners?|students?|interns?|assistants?|in training|"
    r"budd(?:y|ies)|friends?|mates?|cousin|brother|uncle|son|neighbou?r|dogs?|secretary|"
    r"receptionist|dispatch\w*|answering machine|voice ?mail|ex|used to|was once|former\w*|"
    r"on the phone|by phone|over the phone|telephone|phoned|by (?:text|mail|e-?mail|radio)|texted|"
    r"i guess|guess\w*|i think|i believe|suppose\w*|perhaps|probably|not sure|no idea|"
    r"(?:do not|don't) know|some (?:gas|fitter|guy|man)|says? (?:he|she|they)|"
    r"pretend\w*|self[- ](?:taught|styled)|so to speak|kind of|sort of|"
    r"(?:licen[cs]e|card|ticket)(?: \w+)? (?:lapsed|expired|revoked|suspended|gone)|"
    r"(?:lapsed|expired|revoked|suspended|no|without a?) ?(?:licen[cs]e|card|ticket)|or)\b|\?"
)
"""Who only stands near such a person, was one once, or is not known to be one."""
_WITH_HELP: Final = re.compile(
    r"(?:\band|\bwith|\bplus|,|&|\+) *(?:(?:his|her|their|an?|the|one|two) +)*"
    r"(?:apprentices?|helpers?|trainees?|assistants?|mates?)\b"
)
_NOT_LETTERS: Final = re.compile(r"[^a-z0-9]+")


def roles_in(text: str) -> tuple[str, ...]:
    """The roles of ROLES that are spoken of, each once."""
    words = _words(text)
    return tuple(role for role in _SPOKEN if any(f" {way} " in words for way in _ways(role)))


def without_help(text: str) -> str:
    """What is said beside the help that was called; all of it where help is still cried for.

    Those who are called after the gas they see to are no gas.
    """
    text = without_gas_people(text)
    if _CALLED_FOR.search(as_said(text)) or not names_a_role(text):
        return text
    return re.sub(
        rf"\b(?:call(?:ed)? )?(?:an? |the )?(?:{_HELP})\b", " ", text, flags=re.IGNORECASE
    )


def without_gas_people(text: str) -> str:
    """What is said, with those who are called after the gas they see to as they."""
    return _OF_GAS.sub("they", text)


def has_not_come(text: str) -> bool:
    """Whether who is named has not come, or may not do the work: on the way, a helper, once one.

    Who brought a helper came.
    """
    said = as_said(text)
    alone = _WITH_HELP.sub(" ", said)
    return _NOT_COME.search(said) is not None or _ONLY_LIKE_ONE.search(alone) is not None


def names_oneself(text: str) -> bool:
    """Whether whoever types it names themselves: myself, apprentice; not: told by me."""
    return _ONESELF.search(as_said(text)) is not None


def names_a_role(text: str) -> bool:
    """Whether somebody is named whom others can find again: a role, and no word that denies it."""
    if _NOBODY.search(as_said(text)):
        return False
    words = _words(text)
    return bool(roles_in(text)) or any(f" {other} " in words for other in _OTHERS)


def _words(text: str) -> str:
    """Words in lower case between single blanks, with a blank at both ends; no possessive."""
    plain = text.lower().replace("'s ", " ").replace("\u2019s ", " ")
    return f" {_NOT_LETTERS.sub(' ', plain).strip()} "
