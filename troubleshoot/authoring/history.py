"""A site's past cases, tried: what was found in the end stands beside what is ranked first now.

Each file holds `truth`, the faults that were found, and under `case` what `assess` takes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import islice
from pathlib import Path
from typing import Any, Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.layout import yaml_files
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.nodes import plain
from troubleshoot.knowledge.problems import RuleFileError
from troubleshoot.outside.files import read_bytes
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.equipment import InputRefused, suggest
from troubleshoot.visit.cases.file import read_case

MOST_FILES: Final = 5_000
KEYS: Final = ("truth", "case", "note")
AMONG: Final = 3
EVEN: Final = 0.5
"""With less no cause is told to people as likely; common practice, no source."""


@frozen
class PastCase:
    """One case. `told`: the causes with their chances, the likeliest first; `wrong`: why not."""

    file: str
    truth: tuple[str, ...] = ()
    told: tuple[tuple[str, float], ...] = ()
    effects: frozenset[str] = frozenset()
    wrong: str = ""

    @property
    def place(self) -> int | None:
        """At which place what was found stands, from 1; None where it stands nowhere.

        An effect that was seen counts as first; so does nothing wrong, where no cause is likelier.
        """
        if not self.truth:
            return 1 if all(chance < EVEN for _, chance in self.told) else None
        if self.effects & {*self.truth}:
            return 1
        places = (n for n, (fault, _) in enumerate(self.told, start=1) if fault in self.truth)
        return next(places, None)


def past_cases(knowledge: Knowledge, folder: Path) -> Iterator[PastCase]:
    """Every case of a folder and of those in it, in the order of their names; no link is followed.

    What cannot be read is told of in its place.
    """
    reasoner = Reasoner(knowledge)
    files = (path for path, entry in yaml_files(folder) if not entry.is_symlink())
    for name in islice(files, MOST_FILES):
        yield _tried(reasoner, folder / name)


def _tried(reasoner: Reasoner, path: Path) -> PastCase:
    try:
        data = plain(read_located(read_bytes(path), str(path)))
        truth, case = _parts(reasoner.knowledge, data)
        got = reasoner.conclude(read_case(reasoner.knowledge, case))
    except RuleFileError as error:
        return PastCase(str(path), wrong=str(error.problems[0]).removeprefix(f"{path}:"))
    except NotUsable as error:
        return PastCase(str(path), wrong=f"{error.what}; {error.instead}")
    except InputRefused as error:
        return PastCase(str(path), wrong=str(error))
    except ValueError as error:
        return PastCase(str(path), wrong=str(error))
    told = tuple((cause.fault.id, cause.probability) for cause in got.causes)
    effects = frozenset(effect.fault.id for effect in got.effects)
    return PastCase(str(path), truth, told, effects)


def _parts(knowledge: Knowledge, data: Any) -> tuple[tuple[str, ...], object]:
    """What was found, and the case. Raises ValueError with a sentence where it is no past case."""
    if not isinstance(data, Mapping) or not {"truth", "case"} <= {*data}:
        raise ValueError("this is no past case; write truth and case")
    for key in data:
        if key not in KEYS:
            raise ValueError(f"{key} is no key of a past case; {suggest(str(key), KEYS)}")
    truth = data["truth"] if isinstance(data["truth"], list) else [data["truth"]]
    names = tuple(map(str, truth))
    for name in names:
        if name not in knowledge.faults:
            raise ValueError(f"no fault is called {name}; {suggest(name, knowledge.faults)}")
    return names, data["case"]
