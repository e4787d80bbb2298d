"""What a reading would make of a visit, before it is kept: what it cannot stand beside, the digit
that decides it, the temperature that was taken for a difference."""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Quantity, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.classify import limit_in_rounding
from troubleshoot.reasoning.readings.doubted import doubted
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.readings.relations import Broken, broken_relations
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.places import Place, with_place
from troubleshoot.visit.events import Answered
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.telling.as_read import as_read


@frozen
class Told:
    """A reading that something rests on, in words; `answer` None for a fact or a plate value."""

    words: str
    answer: Answer | None
    is_new: bool = False


@frozen
class Impossible:
    """Readings that cannot be right together, the one just typed among them."""

    broken: Broken
    told: tuple[Told, ...]

    @property
    def where(self) -> str:
        return "" if self.broken.at is None else str(self.broken.at)


def impossible_with(knowledge: Knowledge, state: VisitState, event: Answered) -> Impossible | None:
    """What a reading cannot stand beside that it could not have stood beside before."""
    if not _may_break(knowledge, knowledge.tests[event.test]):
        return None
    case = event.apply(knowledge, state).case
    before = {(each.relation.id, each.at) for each in _broken(knowledge, state.case)}
    new = case.answers[-1]
    for broken in _broken(knowledge, case):
        if (broken.relation.id, broken.at) not in before:
            return Impossible(broken, tuple(_told(knowledge, case, broken, new)))
    return None


def _may_break(knowledge: Knowledge, test: Test) -> bool:
    return bool(test.reads) and any(each.on_visits for each in knowledge.relations.values())


def _broken(knowledge: Knowledge, case: Case) -> list[Broken]:
    _, values = take_readings(knowledge, case)
    return [*broken_relations(knowledge, values, beyond_meters=True)]


def _told(knowledge: Knowledge, case: Case, broken: Broken, new: Answer) -> Iterator[Told]:
    _, values = take_readings(knowledge, case)
    seen: set[int] = set()
    for name in broken.read:
        if name in knowledge.facts:
            value = case.unit.facts.get(name, "")
            yield Told(f"{knowledge.spoken(name)} {value}", None)
            continue
        answer = _answer_of(knowledge, case, values, name, broken.at)
        if answer is None:
            plate = values.get(name, broken.at)
            if plate is not None:
                yield Told(f"{knowledge.spoken(name)} {plate.number:g}", None)
        elif id(answer) not in seen:
            seen.add(id(answer))
            yield Told(_words(knowledge, case, answer), answer, answer is new)


def _answer_of(
    knowledge: Knowledge, case: Case, values: Values, name: str, at: Place | None
) -> Answer | None:
    """The last answer that counts and gave a quantity at a place."""
    quantity = knowledge.quantities.get(name)
    if quantity is None:
        return None
    place = values.place_for(quantity.per, at)
    for answer in reversed(case.answers):
        reads = (one.quantity for one in knowledge.tests[answer.test].reads)
        gives = answer.text and answer.valid is not False and not answer.shared and name in reads
        if gives and place in {values.place_for(quantity.per, each) for each in answer.places}:
            return answer
    return None


def _words(knowledge: Knowledge, case: Case, answer: Answer) -> str:
    test = knowledge.tests[answer.test]
    where = case.unit.layout.shown(test.per, answer.places[0])
    return f"{with_place(test.name, where)}: {as_read(knowledge, test, answer.text or '')}"


def limit_typed_over(
    knowledge: Knowledge, state: VisitState, event: Answered
) -> tuple[float, float, float] | None:
    """From where to where a rounded number may lie, and the limit between; None where none is."""
    test = knowledge.tests[event.test]
    if not test.reads or event.text is None or not test.outcomes:
        return None
    typed = read_text(test, event.text, knowledge)
    if len(typed.values) != 1 or typed.bounded:
        return None
    case = event.apply(knowledge, state).case
    _, values = take_readings(knowledge, case)
    return limit_in_rounding(test, case.answers[-1].places[0], values)


def temperatures_meant(
    knowledge: Knowledge, state: VisitState, test: Test, text: str
) -> tuple[Test, ...]:
    """Which temperatures a number may be that hardly can be the difference which is asked for."""
    quantity = knowledge.quantities[test.reads[0].quantity] if test.reads else None
    if quantity is None or quantity.unit != "F-diff" or doubted(knowledge, test, text) is None:
        return ()
    found: dict[str, Test] = {}
    for name in _temperatures_of(knowledge, quantity):
        for each in knowledge.tests.values():
            reads = each.kind == "input" and each.reads[0].quantity == name
            if reads and state.unit.allows(each.exists_when) and _fits(knowledge, each, text):
                found.setdefault(each.id, each)
    return tuple(found.values())


def _temperatures_of(knowledge: Knowledge, quantity: Quantity) -> Iterator[str]:
    """The temperatures that a difference is taken of."""
    for way in quantity.computed:
        for name in way.inputs:
            known = knowledge.quantities.get(name)
            if known is not None and known.unit == "F":
                yield name


def _fits(knowledge: Knowledge, test: Test, text: str) -> bool:
    try:
        read_text(test, text, knowledge)
    except NotUnderstood:
        return False
    return doubted(knowledge, test, text) is None
