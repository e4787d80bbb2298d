"""The hypotheses that live on one unit: every fault at every place it can be, in every picture.

A card's evidence is layered: the card itself, then what equipment facts override, then the picture
(mild, severe). The layers give, per test, the cells from which rows are made, and the statements
that join tests into groups.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Evidence, Fault, Given, Knowledge, Picture, Test
from troubleshoot.knowledge.vocabulary import PROBABILITY
from troubleshoot.reasoning.evidence.grades import HOW_COMMON
from troubleshoot.reasoning.evidence.groups import (
    MOST_TESTS,
    Group,
    InfeasibleGroup,
    Statement,
    joint,
)
from troubleshoot.reasoning.evidence.outcome_chances import (
    NONE_OF_THEM,
    Cell,
    Row,
    Signs,
    background,
    cells_of,
    pattern_row,
    row,
    sign_row,
)
from troubleshoot.reasoning.readings.classify import outcomes_here
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place


@frozen
class FaultPicture:
    """One picture of one fault on this unit: its evidence by test, and its groups.

    Rows do not depend on the place; every place of the fault shares them.
    """

    fault: Fault
    name: str
    cells: Mapping[str, tuple[Cell, ...]]
    groups: tuple[Group, ...] = ()

    def grouped(self, test: str) -> Group | None:
        if not self.groups:  # as with most
            return None
        return next((g for g in self.groups if test in g.tests), None)


@frozen
class Hypothesis:
    """A picture of a fault at a place, with its share of the prior."""

    picture: FaultPicture
    at: Place | None
    prior: float

    @property
    def fault(self) -> Fault:
        return self.picture.fault


@dataclass(slots=True)
class Hypotheses:
    """All hypotheses of one unit, and the rows they give to tests (made once, when asked for)."""

    knowledge: Knowledge
    unit: Unit
    causes: tuple[Hypothesis, ...]
    effects: tuple[Hypothesis, ...]
    tests: Mapping[str, Test]
    _outcomes: dict[str, tuple[str, ...]] = field(default_factory=dict)
    _rows: dict[tuple[str, str, str], Row | Signs] = field(default_factory=dict)
    _backgrounds: dict[str, Row | Signs] = field(default_factory=dict)
    _usual: dict[str, Row] = field(default_factory=dict)

    def outcomes(self, test: str) -> tuple[str, ...]:
        if test not in self._outcomes:
            self._outcomes[test] = tuple(
                o.id for o in outcomes_here(self.knowledge.tests[test], self.unit)
            )
        return self._outcomes[test]

    def background(self, test: str) -> Row | Signs:
        if test not in self._backgrounds:
            known = self.knowledge.tests[test]
            chances = background(known, self.outcomes(test))
            several = known.choose == "several"
            self._backgrounds[test] = sign_row(known, (), chances) if several else chances
        return self._backgrounds[test]

    def usual(self, test: str) -> Row:
        """The background over single outcomes."""
        if test not in self._usual:
            self._usual[test] = pattern_row(self.background(test))
        return self._usual[test]

    def row(self, picture: FaultPicture, test: str) -> Row | Signs:
        """The row of a test under a picture, without any group."""
        key = (picture.fault.id, picture.name, test)
        if key not in self._rows:
            self._rows[key] = self._graded(test, picture.cells.get(test, ()))
        return self._rows[key]

    def _graded(self, test: str, cells: tuple[Cell, ...]) -> Row | Signs:
        usual = self.background(test)
        if not cells:
            return usual
        if isinstance(usual, Signs):
            return sign_row(self.knowledge.tests[test], cells, usual.signs)
        return row(self.knowledge.tests[test], cells, usual)


def hypotheses_for(knowledge: Knowledge, unit: Unit) -> Hypotheses:
    """Every live hypothesis on the unit. What cannot exist here is taken off the list."""
    live_tests = {
        test.id: test
        for test in knowledge.tests.values()
        if unit.allows(test.exists_when) and unit.layout.places(test.per)
    }
    found = Hypotheses(knowledge, unit, (), (), live_tests)
    causes: list[Hypothesis] = []
    effects: list[Hypothesis] = []
    for fault in knowledge.faults.values():
        places = unit.layout.places(fault.per)
        if not unit.allows(fault.exists_when) or not places:
            continue
        pictures = _pictures(found, fault)
        prior = HOW_COMMON[fault.how_common] / (len(places) * len(pictures))
        kept = effects if fault.is_effect else causes
        kept.extend(Hypothesis(p, place, prior) for place in places for p in pictures)
    found.causes, found.effects = tuple(causes), tuple(effects)
    return found


def _pictures(all_: Hypotheses, fault: Fault) -> tuple[FaultPicture, ...]:
    unit = all_.unit
    layers = [layer for layer in fault.overrides if unit.proves(layer.when)]
    drawn = [picture for picture in fault.pictures if unit.proves(picture.when)]
    if not drawn:
        return (_picture(all_, fault, "", layers),)
    return tuple(_picture(all_, fault, picture.name, [*layers, picture]) for picture in drawn)


def _picture(all_: Hypotheses, fault: Fault, name: str, layers: Iterable[Picture]) -> FaultPicture:
    evidence = _live(all_, fault.evidence)
    given = list(fault.given)
    for layer in layers:
        evidence = _overridden(evidence, _live(all_, layer.evidence))
        spoken = {_joining(item) for item in layer.given}
        given = [*layer.given, *(item for item in given if _joining(item) not in spoken)]
    cells = {
        test: tuple(found)
        for test in dict.fromkeys(f.test for e in evidence for f in e.findings)
        if (found := cells_of(all_.knowledge.tests[test], evidence, all_.outcomes(test)))
    }
    picture = FaultPicture(fault, name, cells)
    statements = [s for s in (*_any_of(all_, evidence), *_given(all_, given)) if s is not None]
    return FaultPicture(fault, name, cells, _groups(all_, picture, statements))


def _live(all_: Hypotheses, evidence: Iterable[Evidence]) -> list[Evidence]:
    """Evidence that this unit can show: its tests exist here, and some of its outcomes do."""
    kept = []
    for item in evidence:
        findings = tuple(
            f
            for f in item.findings
            if f.test in all_.tests and not set(f.outcomes).isdisjoint(all_.outcomes(f.test))
        )
        if findings:
            kept.append(Evidence(item.grade, findings))
    return kept


def _overridden(below: list[Evidence], above: list[Evidence]) -> list[Evidence]:
    """The upper layer replaces the lower where it names the same outcomes of the same test."""
    spoken: dict[str, set[str]] = {}
    for item in above:
        for finding in item.findings:
            spoken.setdefault(finding.test, set()).update(finding.outcomes)
    kept = []
    for item in below:
        findings = []
        for finding in item.findings:
            outcomes = tuple(o for o in finding.outcomes if o not in spoken.get(finding.test, ()))
            if outcomes:
                findings.append(type(finding)(finding.test, outcomes))
        if findings:
            kept.append(Evidence(item.grade, tuple(findings)))
    return [*above, *kept]


def _joining(item: Given) -> tuple[str, frozenset[str]]:
    """What a `given` statement is about: an upper layer replaces a lower one about the same."""
    return item.finding.test, frozenset(f.test for f in item.given)


def _any_of(all_: Hypotheses, evidence: Iterable[Evidence]) -> list[Statement]:
    return [
        Statement(
            PROBABILITY[item.grade],
            {f.test: _here(all_, f.test, f.outcomes) for f in item.findings},
            {},
            any_of=True,
        )
        for item in evidence
        if len(item.findings) > 1
    ]


def _given(all_: Hypotheses, given: Iterable[Given]) -> list[Statement | None]:
    return [
        Statement(
            PROBABILITY[item.grade],
            {item.finding.test: _here(all_, item.finding.test, item.finding.outcomes)},
            {f.test: _here(all_, f.test, f.outcomes) for f in item.given},
        )
        if all(f.test in all_.tests for f in (item.finding, *item.given))
        and all(_here(all_, f.test, f.outcomes) for f in (item.finding, *item.given))
        else None
        for item in given
    ]


def _here(all_: Hypotheses, test: str, outcomes: Iterable[str]) -> frozenset[str]:
    """The outcomes as the group's table knows them; the healthy one of signs is "none"."""
    here = frozenset(outcomes) & frozenset(all_.outcomes(test))
    known = all_.knowledge.tests[test]
    if known.choose == "several":
        here = frozenset(NONE_OF_THEM if o in known.healthy else o for o in here)
    return here


def _groups(
    all_: Hypotheses, picture: FaultPicture, statements: list[Statement]
) -> tuple[Group, ...]:
    """The groups that the statements join; a test belongs to one group.

    The strongest statement comes first; one that would make a group too large, or that contradicts
    those before it, is left out.
    """
    joined: list[tuple[list[str], list[Statement]]] = []
    for statement in sorted(statements, key=_strength):
        tests = [*statement.target, *(t for t in statement.condition if t not in statement.target)]
        touching = [each for each in joined if set(each[0]) & set(tests)]
        merged = list(dict.fromkeys([t for each in touching for t in each[0]] + tests))
        if len(merged) > MOST_TESTS:
            continue
        joined = [each for each in joined if each not in touching]
        joined.append((merged, [s for each in touching for s in each[1]] + [statement]))
    return tuple(
        _agreeing({test: pattern_row(all_.row(picture, test)) for test in tests}, stated)
        for tests, stated in joined
    )


def _strength(statement: Statement) -> float:
    """Where a statement stands: the one that says most is the first."""
    return -abs(statement.chance - 0.5)


def _agreeing(rows: Mapping[str, Row], stated: list[Statement]) -> Group:
    """The table of all statements or, where they contradict one another, of those that agree."""
    with suppress(InfeasibleGroup):
        return joint(rows, stated)
    kept: list[Statement] = []
    for statement in sorted(stated, key=_strength):
        with suppress(InfeasibleGroup):
            joint(rows, [*kept, statement])
            kept.append(statement)
    return joint(rows, kept)
