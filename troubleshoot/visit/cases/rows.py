"""The readings of a file as rows: one for each answer and place, also of what was read again."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.unit.places import Place, with_place
from troubleshoot.visit.hearing.metered import too_little
from troubleshoot.visit.telling.account import Plain, taken

READ_BESIDE_STOP = "Read beside the STOP, which nothing in a file lifts"


def rows_of(reasoner: Reasoner, case: Case, answers: Iterable[Answer]) -> list[Plain]:
    """What the case made of these of its answers; what was read again since is judged by itself."""
    together = reasoner.conclude(case)
    rows = []
    for answer in answers:
        alone: Conclusions | None = None
        for place in (None,) if answer.shared else answer.places:
            reading = _reading_of(together, answer, place)
            if reading is None:
                alone = alone or reasoner.conclude(replace(case, answers=(answer,)))
                reading = _reading_of(alone, answer, place)
            assert reading is not None, f"an answer to {answer.test} is no reading"
            rows.append(taken(together, reading))
    return rows


def row_in_words(knowledge: Knowledge, row: Mapping[str, Any]) -> str:
    """One row as a line: what was read, where, as typed, and what it was taken for."""
    test = knowledge.tests[row["test"]]
    name, outcome = with_place(test.name, row["at"]), test.spoken_all(row["outcome"])
    said = f"{row['text']} ({outcome})" if row["text"] and outcome else row["text"] or outcome
    if row["valid"]:
        return f"{name}: {said}"
    why = too_little(knowledge, row["test"], (row["outcome"],), row["text"])
    return f"{name}: {said}, does not count{why and f': {why}'}"


def _reading_of(conclusions: Conclusions, answer: Answer, place: Place | None) -> Reading | None:
    for reading in conclusions.readings:
        same = (reading.test, reading.at, reading.text) == (answer.test, place, answer.text)
        ticked = not answer.outcomes or reading.seen == answer.outcomes
        if same and ticked and not reading.computed:
            return reading
    return None
