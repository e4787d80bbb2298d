"""Trade knowledge stands in the rules: code names hardly any rule.

A literal id in Python is knowledge that a senior technician can neither read nor change. Counted
are the ids of tests, faults, hazards, complaints, quantities, equipment facts and plate values.
Not counted are procedures, limits, sources and points of the round, which no code ever named; a
word that the forms of rule files list themselves (formulas, needs, profiles, keys); and what
stands in `quantities/`, which knows no rules: its words are keys of calculations and kinds of unit.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.shapes import (
    Choice,
    Later,
    ListOf,
    OneOrMore,
    Pairs,
    Record,
    Shape,
    Tagged,
)

PACKAGE = Path(__file__).parent.parent / "troubleshoot"

DECLARED = {
    "safety/steps.py": "names the safety steps",
    "safety/declared/": "declares the safety steps: what confirms each is no matter of taste",
    "knowledge/advice/": "looks for plain words in advice: power, charge",
    "physics/": "a unit made from physics: what each instrument shows stands under its test",
    "measure/physics/": "units drawn from it: the card of each knob, and what is seen of it",
    "knowledge/checks/implied/": "says what an author may not leave out, so no author may edit it",
}
"""Modules and folders that may name any rule."""

MAY_STAND: Mapping[str, tuple[str, str]] = {
    "knowledge/spoken.py": (
        "combustible-gas-sweep refrigerant-sweep-a2l room-carbon-monoxide",
        "how the sweeps of the work state are said",
    ),
    "dialogue/readable.py": ("capacitance", "a kind of unit, which the tester shows"),
    "safety/hearing/unit_words.py": ("fuel", "whose values are not told by the rest of a row"),
    "safety/hearing/among_words.py": ("lockout", "a word that people say: the tag is gone"),
    "visit/hearing/static_read.py": (
        "external-static",
        "whose number people tell by its two sides, and no other is told so",
    ),
    "dialogue/metered_in_words.py": (
        "subcooling superheat",
        "words beside which a number is no volts of a test for dead",
    ),
    "dialogue/high_over_low.py": (
        "head-pressure suction-pressure",
        "the two sides that people read out as one, the higher first",
    ),
    "safety/hearing/hinting_words.py": (
        "burns-and-eyes carbon-monoxide-evacuate carbon-monoxide-in-room caught-in-machine "
        "gas-odour gas-pressure-too-high gas-valve-does-not-close heat-will-not-stop "
        "over-fired-or-wrong-fuel heat-exchanger-breach jumpered-safety lightning live-now "
        "lock-of-somebody-else machine-on-a-line refrigerant-escaping refrigerant-on-skin "
        "rollout-tripped scorched-or-hot-wiring "
        "smoke-or-heat-now somebody-hurt unexplained-voltage wet-electrical wind-or-slick-roof",
        "what a hint is of, so that a yes shows that danger; and a word that people say",
    ),
    "safety/stops/outright.py": (
        "smoke-detector",
        "beside the sweeps of the air: what is shown by a sensor, which may be unplugged",
    ),
    "safety/stops/afresh.py": (
        "live-work",
        "what asks, before a finding is taken afresh, whether a panel stands open live",
    ),
    "cli/work_state_page.py": (
        "circuits power",
        "parts of the work state that are called like a fact and an area",
    ),
    "reasoning/unit/equipment.py": (
        "blower-motor compressor-phase condenser-fan-phase fans-serve line-volts-class "
        "nameplate-volts supply-phase",
        "which capacitors a unit has, whom its fans serve, and what a plate of 208/230/3 tells",
    ),
    "reasoning/unit/facts_said.py": (
        "supply-phase fuel condenser-fans blower-motor",
        "how a supply is written (480/3/60), a fuel that says which heat, and whose a motor is",
    ),
    "reasoning/readings/expected_now.py": (
        "compressor-rla cooling-tons entering-air-temperature metering outdoor-temperature "
        "return-wet-bulb",
        "what the ranges of sound units are read by: each is an input of that calculation",
    ),
    "records/history/collecting.py": (
        "outdoor-temperature",
        "the weather that is told beside each number of before",
    ),
    "records/history/before.py": (
        "compare-with-last-visits",
        "the look at all numbers of before, beside which it is told what drifts",
    ),
    "reasoning/unit/facts_listed.py": (
        "cooling-tons",
        "a size told in tons beside facts: nobody asks for it, and nothing else would keep it",
    ),
    "reasoning/readings/misreadings.py": (
        "repeat-reading",
        "a reading that is about another reading",
    ),
    "reasoning/readings/withdrawal.py": (
        "tester-proof",
        "a meter that fails its proof takes back readings",
    ),
    "dialogue/complaint.py": (
        "fuel ignition",
        "facts of the unit that many a complaint names too: gas; it sparks",
    ),
    "visit/hearing/proof_numbers.py": ("capacitance", "a kind of number, and a fact of a plate"),
    "visit/hearing/legs_read.py": ("supply-phase", "how many legs there are to read"),
    "visit/cases/file.py": ("routine-inspection", "the complaint of a round, which nobody made"),
    "safety/cautions.py": (
        "flammable-refrigerant refrigerant-not-known line-volts-class refrigerant-class",
        "cautions of the work state's own guards",
    ),
    "safety/hearing/dangers.py": ("danger-reported", "what a danger told in plain words becomes"),
    "safety/hearing/other_matters.py": ("ignition", "a word people say beside a bang"),
    "safety/hearing/vocabulary.py": ("lightning", "a word people say, whatever a hazard is called"),
    "cli/screens/refrigerant.py": ("circuits", "how many circuits there are to tell of"),
    "dialogue/asides.py": ("circuits", "which circuit a weight told at a prompt is of"),
    "dialogue/reading_out.py": ("suction-pressure", "what gauges show, told before their step"),
    "dialogue/step_weighed.py": ("weight", "a part of a pattern"),
    "records/history/parts.py": (
        "blower-amps blower-drive blower-fla blower-motor blower-rpm compressor-amps "
        "compressor-phase compressor-rla compressor-type condenser-fan-amps condenser-fan-fla "
        "condenser-fan-phase",
        "what tells one motor from the one before it",
    ),
    "records/refrigerant/of_unit.py": ("charge", "the charge of a circuit by its data plate"),
    "records/refrigerant/sheet.py": ("weight", "the column of a weight"),
    "records/refrigerant/told.py": ("weight", "a part of what was weighed"),
    "visit/hearing/weighed.py": ("circuits weight", "parts of what was weighed, and of which"),
    "visit/weights.py": ("charge-weight", "the kind of number that a charge is"),
    "safety/declaration.py": ("lock-off", "an event of the work state"),
    "safety/facts_first.py": ("refrigerant-class", "what settles whether a refrigerant burns"),
    "safety/needs.py": (
        "roof-edge-under-6-ft roof-edge-6-to-15-ft carbon-monoxide-in-room "
        "carbon-monoxide-evacuate fire-alarm-interlock compressor-in-vacuum ignition "
        "heating-call heating-supply-temperature operating-sequence ignition-trials "
        "made-safe",
        "hazards and an area that mean a need of the work state, stated or not",
    ),
    "safety/transitions.py": (
        "nitrogen-pressure temporary-jumper delayed-light-off failed-lights",
        "hazards that leave something behind in the unit: unburnt gas too",
    ),
    "safety/unit_at_work.py": (
        "blower-motor duct-smoke-detector line-volts-class nameplate-volts refrigerant-class "
        "service-ports supply-phase variable-speed-drive",
        "the facts that make work more dangerous; what is not known counts as the worse",
    ),
    "safety/at_ports.py": (
        "live-work",
        "the one caution that goes where every panel is on",
    ),
    "practice/slips.py": (
        "lockout-and-verify-dead tester-failed-proof second-power-source stored-charge "
        "working-alone arc-flash-480-volt rotating-parts compressor-in-vacuum",
        "the hazard that explains each guard of the work state",
    ),
    "knowledge/checks/safety_readings.py": ("tester-proof", "the step that proves the others"),
}
"""Module -> the ids that may stand in it, and why."""


def words_of(shape: Shape) -> Iterator[str]:
    """The words that a form lists itself: its keys and its choices."""
    if isinstance(shape, Choice):
        yield from shape.options
    elif isinstance(shape, Record):
        for field in shape.fields:
            yield field.key
            yield from words_of(field.shape)
    elif isinstance(shape, Tagged):
        for tag, option in shape.options:
            yield tag
            if not isinstance(option, Later):
                yield from words_of(option)
        if shape.otherwise is not None:
            yield from words_of(shape.otherwise)
    elif isinstance(shape, ListOf | OneOrMore):
        yield from words_of(shape.item)
    elif isinstance(shape, Pairs):
        yield from words_of(shape.value)


def ids_of(knowledge: Knowledge) -> frozenset[str]:
    named = (
        knowledge.tests, knowledge.faults, knowledge.hazards, knowledge.complaints,
        knowledge.quantities, knowledge.facts, knowledge.plate_values,
    )  # fmt: skip
    own = {word for form in FORMS.values() for word in words_of(form)}
    return frozenset(name for kind in named for name in kind) - own


def literals(source: str) -> Iterator[str]:
    """Every text of a module that is no docstring."""
    tree = ast.parse(source)
    said = {node.value for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and node not in said:
            yield node.value


def named_in(module: str, knowledge: Knowledge) -> set[str]:
    return ids_of(knowledge) & set(literals((PACKAGE / module).read_text("utf-8")))


def modules() -> Iterator[str]:
    for path in sorted(PACKAGE.rglob("*.py")):
        module = path.relative_to(PACKAGE).as_posix()
        if not module.startswith(("quantities/", *DECLARED)):
            yield module


def test_code_names_no_rule_but_those_with_a_reason(shipped: Knowledge) -> None:
    found = {module: named_in(module, shipped) for module in modules()}
    allowed = {module: set(ids.split()) for module, (ids, _) in MAY_STAND.items()}
    more = {m: sorted(ids - allowed.get(m, set())) for m, ids in found.items()}
    assert {m: ids for m, ids in more.items() if ids} == {}, "say it in the rules"


@pytest.mark.parametrize("module", MAY_STAND)
def test_no_excuse_outlives_its_reason(module: str, shipped: Knowledge) -> None:
    assert named_in(module, shipped) == set(MAY_STAND[module][0].split())


def test_a_new_rule_in_code_would_be_found(shipped: Knowledge) -> None:
    source = (
        '"""About superheat."""\nX = {"liquid-line-temperature": f(a="suction")}\n"superheat"\n'
    )
    assert ids_of(shipped) & set(literals(source)) == {"liquid-line-temperature"}
