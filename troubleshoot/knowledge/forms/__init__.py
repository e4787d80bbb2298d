"""The forms of all kinds of rule file, by kind, and what each of their lists holds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.forms.declared import form_of
from troubleshoot.knowledge.forms.pieces import FORMAT, SIGNED, SOURCE_OF_FILE
from troubleshoot.knowledge.model import (
    Complaint,
    Day,
    DriftAlarm,
    EquipmentFact,
    Fault,
    Hazard,
    HazardKind,
    Implication,
    NamedLimit,
    PlateValue,
    Procedure,
    Quantity,
    Relation,
    RoundPoint,
    SignOff,
    SoundReading,
    Subsystem,
    Test,
    TypicalUnit,
)
from troubleshoot.knowledge.shapes import (
    Choice,
    Field,
    Findings,
    ListOf,
    Name,
    NewId,
    OneOrMore,
    Pairs,
    Record,
    Text,
    Word,
    optional,
    required,
)
from troubleshoot.knowledge.vocabulary import PLACE_KINDS

_SOURCE: Final = Record(
    "source",
    (
        required("id", NewId(), "words joined by hyphens; never changed once in use"),
        required("published", Text(), "the published text"),
        optional("used-for", Text(), "the figures taken from it"),
    ),
)
_ALIAS: Final = Record(
    "alias",
    (
        required("from", Pairs(Word(), Word(), least=1, most=1), "old test and outcome"),
        required("to", Findings(), "the test and outcome that serve now"),
    ),
)


@frozen
class Listing:
    """A list of entries in a kind of file, and the field of `Knowledge` that keeps them.

    `called` is what the id of such an entry is a name of; nothing where entries have no id.
    """

    key: str
    item: Record
    meaning: str
    kept: str
    called: str = ""
    required: bool = True

    @property
    def field(self) -> Field:
        shape = ListOf(self.item, most=2000, apart=self.item.block)
        return Field(self.key, shape, self.meaning, self.required)


def _entries(thing: type, key: str, meaning: str, kept: str = "") -> Listing:
    form = form_of(thing)
    return Listing(key, form, meaning, kept or key, form.name)


def _some(thing: type, key: str, meaning: str, kept: str) -> Listing:
    return replace(_entries(thing, key, meaning, kept), required=False)


_IMPLIES: Final = replace(
    _some(Implication, "implies", "facts that follow from others", "implications"), called=""
)

LISTINGS: Final[Mapping[str, tuple[Listing, ...]]] = MappingProxyType(
    {
        "subsystems": (_entries(Subsystem, "subsystems", "the words for parts of the unit"),),
        "tests": (_entries(Test, "tests", "the tests"),),
        "procedures": (_entries(Procedure, "procedures", "the rules"),),
        "hazards": (_entries(Hazard, "hazards", "the hazards"),),
        "order-of-cautions": (
            _entries(HazardKind, "kinds", "kinds of hazard, read first to last", "hazard_kinds"),
        ),
        "complaints": (_entries(Complaint, "complaints", "the complaints"),),
        "equipment": (
            _some(EquipmentFact, "facts", "facts asked or read once", "facts"),
            _some(PlateValue, "nameplate", "values that limits lean on", "plate_values"),
            _IMPLIES,
        ),
        "quantities": (_entries(Quantity, "quantities", "the quantities"),),
        "limits": (_entries(NamedLimit, "limits", "conditions of many rules"),),
        "round": (
            _some(RoundPoint, "points", "the points of the round, in order", "round_points"),
            _some(DriftAlarm, "drift-alarms", "changes that deserve a look", "drift_alarms"),
        ),
        "sound-unit": (
            replace(_some(Day, "days", "the weather of a call", "days"), called=""),
            _entries(SoundReading, "sound", "what each quantity reads"),
        ),
        "relations": (_entries(Relation, "relations", "what always holds between readings"),),
        "sources": (Listing("sources", _SOURCE, "published texts", "sources", "source"),),
    }
)
"""What each kind of file lists, in the order in which it is written."""


ONE_A_FILE: Final[Mapping[str, Listing]] = MappingProxyType(
    {
        "fault": Listing("fault", form_of(Fault), "a fault card", "faults", "fault"),
        "unit": Listing("unit", form_of(TypicalUnit), "a unit", "typical_units", "typical unit"),
    }
)
"""What files of a single entry hold; its id stands under the key that is named here."""


def has_source(listing: Listing) -> bool:
    """Whether entries of a list name a source, and take that of their file where they do not."""
    return listing.item.field("source") is not None


_OF_FILE: Final[Mapping[str, tuple[Field, ...]]] = MappingProxyType(
    {
        "tests": (required("area", Name("area"), "part of the unit these tests are about"),),
        "hazards": (optional("kind", Name("hazard kind"), "what kind of danger these are"),),
        "sound-unit": (
            replace(SOURCE_OF_FILE, meaning="where the figures come from", required=True),
            optional("settled-first", OneOrMore(Name("quantity")), "what the others follow from"),
        ),
    }
)
"""What a kind of file says before its lists."""


def _file(kind: str) -> Record:
    lists = LISTINGS[kind]
    default = (SOURCE_OF_FILE,) if any(has_source(each) for each in lists) else ()
    fields = (FORMAT, *_OF_FILE.get(kind, ()), *default, *(each.field for each in lists))
    return Record(kind, fields)


def _alone(listing: Listing) -> Record:
    return replace(listing.item, fields=(FORMAT, *listing.item.fields))


FORMS: Final[Mapping[str, Record]] = MappingProxyType(
    {
        **{kind: _file(kind) for kind in LISTINGS},
        **{kind: _alone(listing) for kind, listing in ONE_A_FILE.items()},
        "retired": Record(
            "retired",
            (
                FORMAT,
                optional("retired", ListOf(Word(), most=2000), "ids never to be used again"),
                optional("aliases", ListOf(_ALIAS, most=2000), "old findings that stay readable"),
                SIGNED,
            ),
        ),
        "words": Record(
            "words",
            (
                FORMAT,
                required(
                    "words",
                    Pairs(Word(), Text(longest=80), most=5000),
                    "id -> how people say it; of an outcome or a value, what they type",
                ),
            ),
        ),
        "synonyms": Record(
            "synonyms",
            (
                FORMAT,
                required(
                    "alike",
                    Pairs(Text(longest=60), ListOf(Text(longest=60), least=1, most=60), most=2000),
                    "words as the rules have them -> what people say in their place",
                ),
                optional(
                    "places",
                    Pairs(Choice(PLACE_KINDS), ListOf(Text(longest=60), least=1, most=60)),
                    "a kind of place -> what people say for it beside its number",
                ),
                optional(
                    "idle",
                    ListOf(Text(longest=30), most=400),
                    "words that tell nothing of what is meant",
                ),
                optional(
                    "loose",
                    ListOf(Text(longest=30), most=400),
                    "words that tell something beside others, and nothing alone",
                ),
                optional(
                    "manner",
                    ListOf(Text(longest=30), most=100),
                    "words beside an answer that change nothing of it: iced up solid",
                ),
                optional(
                    "as-it-should-be",
                    ListOf(Text(longest=60), most=60),
                    "what people say of a thing they looked at in which nothing is wrong",
                ),
            ),
        ),
        "pack": Record(
            "pack",
            (
                FORMAT,
                required("name", Text(longest=80), "whose rules these are"),
                optional("version", Text(longest=20), "which edition of them this is"),
                optional("about", Text(), "what they add"),
                optional("signed", form_of(SignOff), "who has gone over them as they are"),
            ),
        ),
    }
)
