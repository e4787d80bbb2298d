"""The forms of all kinds of rule file, by kind."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.knowledge.forms.fault_form import FAULT_FILE
from troubleshoot.knowledge.forms.procedure_form import HAZARDS_FILE, PROCEDURES_FILE
from troubleshoot.knowledge.forms.reference_form import (
    COMPLAINTS_FILE,
    EQUIPMENT_FILE,
    LIMITS_FILE,
    PACK_FILE,
    QUANTITIES_FILE,
    RETIRED_FILE,
    ROUND_FILE,
    SOURCES_FILE,
)
from troubleshoot.knowledge.forms.sound_form import RELATIONS_FILE, SOUND_UNIT_FILE, UNIT_FILE
from troubleshoot.knowledge.forms.test_form import TESTS_FILE
from troubleshoot.knowledge.shapes import Record

FORMS: Final[Mapping[str, Record]] = MappingProxyType(
    {
        "tests": TESTS_FILE,
        "fault": FAULT_FILE,
        "procedures": PROCEDURES_FILE,
        "hazards": HAZARDS_FILE,
        "complaints": COMPLAINTS_FILE,
        "equipment": EQUIPMENT_FILE,
        "quantities": QUANTITIES_FILE,
        "limits": LIMITS_FILE,
        "round": ROUND_FILE,
        "sound-unit": SOUND_UNIT_FILE,
        "relations": RELATIONS_FILE,
        "unit": UNIT_FILE,
        "sources": SOURCES_FILE,
        "retired": RETIRED_FILE,
        "pack": PACK_FILE,
    }
)
