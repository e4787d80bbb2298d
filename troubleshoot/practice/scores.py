"""The record of plays: one JSON line a play, a file an apprentice; progress and CSV from it."""

from __future__ import annotations

import csv
import io
import json
import os
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import asdict, fields
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.outside.files import make_private, open_regular, read_bytes, read_open
from troubleshoot.outside.plain_data import from_json
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_NAME, one_line
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.scoring import Score

FORMAT: Final = 1
MOST_RECORD: Final = 10_000_000
MOST: Final = 1_000_000
"""No count of a play comes near."""
FOLDER: Final = "practice"
NOBODY: Final = "apprentice"
"""Whose record it is where no name is given."""
ENOUGH: Final = 70
"""Points from which a scenario counts as mastered."""


@frozen
class Play:
    """One finished play as it stands in the record."""

    date: str
    apprentice: str
    scenario: str
    subsystem: str
    difficulty: int
    verdict: str
    failed: bool
    points: int
    minutes: int
    tests: int
    expert_minutes: int
    expert_tests: int
    hints: int
    guesses_close: int
    guesses: int


@frozen
class Progress:
    """How one subsystem stands: plays, the mean of the best result of each scenario, failures."""

    subsystem: str
    plays: int
    scenarios: int
    mean_best: float
    failures: int


class RecordDamaged(ValueError):
    """The record, or a line of it, cannot be read; the message names it."""


def play_of(
    scenario: Scenario, score: Score, apprentice: str, date: str, guesses: Sequence[bool]
) -> Play:
    """A play for the record. `guesses`: for each guess at a sound reading, whether it was close."""
    return Play(
        date,
        apprentice,
        scenario.id,
        scenario.subsystem,
        scenario.difficulty,
        score.verdict,
        score.failed,
        score.points,
        score.minutes,
        score.tests,
        score.expert_minutes,
        score.expert_tests,
        score.hints,
        sum(guesses),
        len(guesses),
    )


def record_path(data_folder: Path, apprentice: str) -> Path:
    """The file of one apprentice; a name becomes letters, digits and hyphens.

    Raises NotUsable for a name that is too long, or holds what cannot be shown.
    """
    apprentice = one_line(apprentice, "the apprentice's name", MOST_NAME)
    word = "-".join(re.findall(r"[a-z0-9]+", apprentice.lower())) or NOBODY
    return data_folder / FOLDER / f"{word}.jsonl"


def keep_play(path: Path, play: Play) -> None:
    """Add one play to its record; a line cut off before it goes. Raises OSError or NotUsable."""
    make_private(path.parent)
    line = json.dumps({"format": FORMAT, **asdict(play)}, ensure_ascii=False)
    with os.fdopen(open_regular(path, os.O_RDWR | os.O_CREAT), "r+b") as stream:
        kept = read_open(stream.fileno(), str(path), MOST_RECORD)
        stream.truncate(kept.rfind(b"\n") + 1)
        stream.seek(0, os.SEEK_END)
        stream.write(f"{line}\n".encode())


def read_plays(path: Path) -> tuple[Play, ...]:
    """Every play of a record, in order; none where there is no record yet.

    A last line cut off while it was written is left out. Raises RecordDamaged for any other.
    """
    if not os.path.lexists(path):
        return ()
    try:
        whole, _, _ = read_bytes(path, MOST_RECORD).rpartition(b"\n")
    except NotUsable as error:
        raise RecordDamaged(str(error)) from None
    plays = []
    for number, line in enumerate(whole.split(b"\n"), start=1):
        if not line:
            continue
        try:
            plays.append(_play(from_json(line, "the line")))
        except (ValueError, TypeError, KeyError):
            what = f"{path}: line {number} is damaged; fix or delete that line"
            raise RecordDamaged(what) from None
    return tuple(plays)


def _play(data: object) -> Play:
    if not isinstance(data, dict) or data.pop("format") != FORMAT:
        raise ValueError("another format")
    play = Play(**data)
    for field in fields(Play):
        value = getattr(play, field.name)
        if type(value).__name__ != field.type or (type(value) is int and not 0 <= value <= MOST):
            raise TypeError(field.name)
    return play


def best_of(plays: Iterable[Play]) -> Mapping[str, Play]:
    """Scenario -> its best play; the earlier of two alike."""
    best: dict[str, Play] = {}
    for play in plays:
        known = best.get(play.scenario)
        if known is None or play.points > known.points:
            best[play.scenario] = play
    return best


def progress(plays: Sequence[Play]) -> tuple[Progress, ...]:
    """How each subsystem stands, by its name."""
    best = best_of(plays)
    found = []
    for subsystem in sorted({play.subsystem for play in plays}):
        own = [play for play in plays if play.subsystem == subsystem]
        points = [play.points for play in best.values() if play.subsystem == subsystem]
        mean = sum(points) / len(points)
        failures = sum(play.failed for play in own)
        found.append(Progress(subsystem, len(own), len(points), mean, failures))
    return tuple(found)


def propose(plays: Sequence[Play], scenarios: Sequence[Scenario]) -> Scenario | None:
    """The scenario to play next: the weakest subsystem's easiest one that is not yet mastered.

    A subsystem never played stands at nothing.
    """
    means = {each.subsystem: each.mean_best for each in progress(plays)}
    best = best_of(plays)
    open_ = [s for s in scenarios if s.id not in best or best[s.id].points < ENOUGH]

    def weakest(scenario: Scenario) -> tuple[float, int, bool, str]:
        mean = means.get(scenario.subsystem, 0.0)
        return (mean, scenario.difficulty, scenario.id in best, scenario.id)

    return min(open_, key=weakest, default=None)


def as_csv(plays: Iterable[Play]) -> str:
    """The record as CSV (RFC 4180), a header first."""
    stream = io.StringIO()
    writer = csv.DictWriter(stream, fieldnames=list(Play.__dataclass_fields__))
    writer.writeheader()
    writer.writerows(_rows(plays))
    return stream.getvalue()


def _rows(plays: Iterable[Play]) -> Iterator[dict[str, object]]:
    """A text that a spreadsheet would take for a formula is given a quote before it."""
    for play in plays:
        yield {
            name: f"'{value}" if isinstance(value, str) and value[:1] in "=+-@" else value
            for name, value in asdict(play).items()
        }
