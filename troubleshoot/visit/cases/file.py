"""A case as people write it in a file: unit, conditions, complaint, readings -> Case.

The contract that scripts rely on. Anything not understood (a key, a test, an outcome, a place, a
unit) refuses the whole file, naming every such thing and what would do instead.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.plain_data import MOST_ENTRIES
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.measuring import read_quantity, read_text
from troubleshoot.reasoning.unit.equipment import InputRefused, Refusal, Unit, read_unit, suggest
from troubleshoot.reasoning.unit.places import Place, PlaceNotUnderstood, parse_place
from troubleshoot.safety.hearing.dangers import told_at
from troubleshoot.visit.cases.as_said import in_ids
from troubleshoot.visit.cases.words import as_list, as_text, numbers_named
from troubleshoot.visit.hearing.metered import as_a_file_counts
from troubleshoot.visit.hearing.number_and_rest import number_and_word

CASE_KEYS = ("unit", "own-record", "conditions", "complaint", "repaired", "readings")
READING_KEYS = ("test", "at", "text", "outcome", "valid", "instrument", "conditions")
ROUTINE = "routine-inspection"
MOST_READINGS = MOST_ENTRIES
MOST_REFUSALS = 100
"""Nobody mends more at once, and to look for the nearest known word takes its time."""


def read_case(knowledge: Knowledge, data: object) -> Case:
    """The case that a file's plain data describes.

    Raises InputRefused with every problem, or the first MOST_REFUSALS and that there are more.
    """
    reader = _CaseReader(knowledge)
    try:
        case = reader.read(data)
    except _Enough:
        more = Refusal("file", "more than this is not understood", "fix these first")
        raise InputRefused((*reader.refusals, more)) from None
    if reader.refusals:
        raise InputRefused(tuple(reader.refusals))
    return case


def read_in_part(knowledge: Knowledge, data: object) -> Case:
    """The case of what is understood in a file that is refused; nothing of one with too much."""
    try:
        return _CaseReader(knowledge).read(data)
    except _Enough:
        return Case()


class _Enough(Exception):
    """So much is not understood that the rest is not looked at."""


class _CaseReader:
    """Reads one case, collecting every refusal."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self.refusals: list[Refusal] = []

    def refuse(self, key: str, problem: str, instead: str) -> None:
        if len(self.refusals) >= MOST_REFUSALS:
            raise _Enough
        self.refusals.append(Refusal(key, problem, instead))

    def read(self, data: object) -> Case:
        if not isinstance(data, Mapping):
            self.refuse(
                "file", "this is not a case", "write keys such as unit, complaint, readings"
            )
            return Case()
        for key in data:
            if key not in CASE_KEYS:
                self.refuse(str(key), "not a key of a case", suggest(str(key), CASE_KEYS))
        entries = list(self._entries(data.get("readings")))
        if len(entries) > MOST_READINGS:
            self.refuse("readings", f"{len(entries)} are too many", f"keep to {MOST_READINGS}")
            return Case()
        unit = self._unit(data, entries)
        complaint = self._complaint(data.get("complaint"))
        conditions = self._conditions("conditions", data.get("conditions"))
        answers = list(self._answers(entries, unit))
        repaired = tuple(self._repaired(data.get("repaired")))
        routine = complaint in (None, ROUTINE)
        return Case(unit, complaint, tuple(answers), conditions, repaired=repaired, routine=routine)

    def _unit(self, data: Mapping[str, object], entries: Sequence[tuple[str, object]]) -> Unit:
        stated = self._mapping("unit", data.get("unit"))
        own = self._mapping("own-record", data.get("own-record"))
        named = numbers_named(entries)
        try:
            return read_unit(self.knowledge, stated, own, named)
        except InputRefused as error:
            self.refusals.extend(error.refusals)
            # Go on with what was understood, so that readings are not refused for it as well.
            bad = {refusal.key.split(".")[1] for refusal in error.refusals}
            good = {key: value for key, value in stated.items() if key not in bad}
            return read_unit(self.knowledge, good, None, named)

    def _mapping(self, key: str, value: object) -> Mapping[str, object]:
        if value is None:
            return {}
        if not isinstance(value, Mapping):
            self.refuse(key, "this must be keys with values", "write one `name: value` a line")
            return {}
        return {str(name): each for name, each in value.items()}

    def _complaint(self, value: object) -> str | None:
        if value is None or str(value) in self.knowledge.complaints:
            return None if value is None else str(value)
        self.refuse(
            "complaint",
            f'"{value}" is not a complaint of the rule base',
            suggest(str(value), self.knowledge.complaints),
        )
        return None

    def _repaired(self, value: object) -> Iterator[str]:
        for name in as_list(value):
            if str(name) in self.knowledge.faults:
                yield str(name)
            else:
                self.refuse(
                    "repaired",
                    f'"{name}" is not a fault of the rule base',
                    suggest(str(name), self.knowledge.faults),
                )

    def _conditions(self, key: str, value: object) -> dict[str, str]:
        found = {}
        for name, each in self._mapping(key, value).items():
            quantity = self.knowledge.quantities.get(name)
            if quantity is None:
                self.refuse(
                    f"{key}.{name}",
                    "not a quantity of the rule base",
                    suggest(name, self.knowledge.quantities),
                )
                continue
            text = as_text(each)
            try:
                read_quantity(quantity, text)
            except NotUnderstood as error:
                self.refuse(f"{key}.{name}", error.why, error.instead)
                continue
            found[name] = text
        return found

    def _entries(self, readings: object) -> Iterator[tuple[str, object]]:
        """Each reading with the key it is known by, whichever way they were written."""
        if isinstance(readings, Mapping):
            for test, answer in readings.items():
                several = isinstance(answer, list) and any(isinstance(a, Mapping) for a in answer)
                for each in answer if several and isinstance(answer, list) else [answer]:
                    own = dict(each) if isinstance(each, Mapping) else {"answer": each}
                    yield f"readings.{test}", {**own, "test": test}
        elif isinstance(readings, list):
            for index, entry in enumerate(readings):
                yield f"readings[{index}]", entry
        elif readings is not None:
            self.refuse(
                "readings",
                "this must be a list or test: answer lines",
                "write `- {test: NAME, text: READING}` a line",
            )

    def _answers(self, entries: Sequence[tuple[str, object]], unit: Unit) -> Iterator[Answer]:
        """The readings of which everything is understood."""
        for key, entry in entries:
            refused = len(self.refusals)
            answer = self._answer(key, entry, unit)
            if answer is not None and len(self.refusals) == refused:
                yield answer

    def _answer(self, key: str, entry: object, unit: Unit) -> Answer | None:
        if not isinstance(entry, Mapping):
            self.refuse(key, "a reading needs its keys", "write {test: NAME, text: READING}")
            return None
        for name in entry:
            if name not in READING_KEYS and name != "answer":
                self.refuse(
                    f"{key}.{name}", "not a key of a reading", suggest(str(name), READING_KEYS)
                )
        entry = in_ids(self.knowledge, self._renamed(entry))
        test = self.knowledge.tests.get(str(entry.get("test")))
        if test is None:
            self.refuse(
                f"{key}.test",
                f'"{entry.get("test")}" is not a test of the rule base',
                suggest(str(entry.get("test")), self.knowledge.tests),
            )
            return None
        places, shared = self._places(key, test, entry.get("at"), unit)
        outcomes, text = self._what(key, test, entry)
        valid = entry.get("valid")
        if valid is not None and not isinstance(valid, bool):
            self.refuse(f"{key}.valid", f'"{valid}" is neither true nor false', "true or false")
        answer = Answer(
            test.id,
            outcomes,
            text,
            places,
            shared,
            valid if isinstance(valid, bool) else None,
            str(entry["instrument"]) if entry.get("instrument") else None,
            conditions=self._conditions(f"{key}.conditions", entry.get("conditions")),
        )
        return as_a_file_counts(self.knowledge, unit, answer)

    def _renamed(self, entry: Mapping[str, object]) -> Mapping[str, object]:
        """The reading in today's words, where its test and outcome have other names by now."""
        key = next((k for k in ("outcome", "answer", "text") if entry.get(k) is not None), None)
        if key is None:
            return entry
        word = "-".join(str(entry[key]).lower().split())
        today = self.knowledge.aliases.get((str(entry.get("test")), word))
        return entry if today is None else {**entry, "test": today[0], key: today[1]}

    def _places(
        self, key: str, test: Test, at: object, unit: Unit
    ) -> tuple[tuple[Place | None, ...], bool]:
        everywhere = unit.layout.places(test.per) or (None,)
        if at is None:
            return everywhere, len(everywhere) > 1
        found: list[Place | None] = []
        several_named = False
        for words in as_list(at):
            try:
                places = parse_place(str(words), test.per, unit.layout)
            except PlaceNotUnderstood as error:
                self.refuse(f"{key}.at", error.problem, error.instead)
                continue
            several_named = several_named or len(places) > 1
            found.extend(places)
        return tuple(dict.fromkeys(found)) or everywhere, several_named

    def _what(
        self, key: str, test: Test, entry: Mapping[str, object]
    ) -> tuple[tuple[str, ...], str | None]:
        """The outcomes and the typed text of one reading."""
        text = None if entry.get("text") is None else as_text(entry["text"])
        if entry.get("outcome") is not None:
            return self._outcomes(key, test, entry["outcome"]), text
        answer = entry.get("answer")
        if isinstance(answer, list):
            return self._outcomes(key, test, answer), text
        if text is None and answer is not None:
            text = as_text(answer)
        if text is None:
            self.refuse(key, "the reading says nothing", "give it an outcome or a text")
            return (), None
        word = "-".join(text.lower().split())
        if word in {o.id for o in test.outcomes}:
            return (word,), None
        try:
            read_text(test, text, self.knowledge)
        except NotUnderstood as error:
            beside = number_and_word(self.knowledge, test, text)
            if beside is not None:
                return (beside[1],), beside[0]
            why = f"{error.why}{_danger_of(self.knowledge, test, text)}"
            self.refuse(f"{key}.text", why, _what_would_do(test, error))
        return (), text

    def _outcomes(self, key: str, test: Test, value: object) -> tuple[str, ...]:
        known = [o.id for o in test.outcomes]
        found = []
        for word in as_list(value):
            alias = self.knowledge.aliases.get((test.id, str(word)))
            outcome = alias[1] if alias else str(word)
            if outcome in known:
                found.append(outcome)
            else:
                self.refuse(
                    f"{key}.outcome",
                    f'"{word}" is not an outcome of {test.id}',
                    suggest(str(word), known),
                )
        if value == []:
            self.refuse(f"{key}.outcome", "no outcome is named", suggest("", known))
        if len(found) > 1 and test.choose == "one":
            self.refuse(f"{key}.outcome", f"{test.id} has exactly one outcome", "give one of them")
        return tuple(found)


def _danger_of(knowledge: Knowledge, test: Test, text: str) -> str:
    """What the danger asks for that a refused reading tells of; empty where it tells of none."""
    told = told_at(knowledge, test, text)
    return "".join(f". {hazard.signal}: {hazard.what_to_do}" for hazard in told[:1])


def _what_would_do(test: Test, error: NotUnderstood) -> str:
    words = [o.id for o in test.outcomes]
    if not words:
        return error.instead
    choices = "one of " + ", ".join(words)
    return f"{error.instead}; or {choices}" if test.reads else choices
