"""The record of plays: one JSON line a play, a file an apprentice; CSV of it for a supervisor."""

from __future__ import annotations

import csv
import io
import json
import os
import re
import unicodedata
from collections.abc import Iterable, Iterator
from contextlib import suppress
from dataclasses import asdict, fields, replace
from pathlib import Path
from typing import Any, Final

from troubleshoot.outside.files import make_private, open_regular, read_bytes, read_open
from troubleshoot.outside.plain_data import from_json
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.table import runs
from troubleshoot.outside.text import MOST_NAME, one_line
from troubleshoot.practice.scores import Play, counting, shows_for_little

FORMAT: Final = 3
SECOND_FORMAT: Final = 2
"""Of records kept before it was told what had been shown under another name."""
FIRST_FORMAT: Final = 1
"""Of records kept before it was asked whether a call is reasoned, and how sure of it one is."""
MOST_RECORD: Final = 10_000_000
MOST: Final = 1_000_000
"""No count of a play comes near."""
FOLDER: Final = "practice"
MOST_LETTERS: Final = 60
"""Of a file's name: it has room for 255 bytes, and a letter takes up to four."""


class RecordDamaged(ValueError):
    """The record, or a line of it, cannot be read; the message names it."""


def record_path(data_folder: Path, apprentice: str) -> Path:
    """The file of one apprentice; a name becomes letters of any script, digits and hyphens.

    Raises NotUsable for a name that is too long, has none of these, or holds what cannot be shown.
    """
    apprentice = one_line(apprentice, "the apprentice's name", MOST_NAME)
    word = _word_of(apprentice)
    if not word:
        raise NotUsable("the apprentice's name", "no letter in it", "say it with letters or digits")
    return data_folder / FOLDER / f"{word[:MOST_LETTERS]}.jsonl"


def _word_of(apprentice: str) -> str:
    """What tells apprentices apart: the letters and digits of a name, whatever their case."""
    plain = unicodedata.normalize("NFKC", apprentice).casefold()
    return "-".join(re.findall(r"[^\W_]+", plain))


def other_spelling(plays: Iterable[Play], apprentice: str) -> str:
    """How the name of whose record it is was written first, where that is not so; may be ""."""
    first = next((play.apprentice for play in plays), apprentice)
    return "" if first == apprentice else first


def keep_play(path: Path, play: Play) -> None:
    """Add one play to its record; a line cut off before it goes. Raises OSError or NotUsable."""
    make_private(path.parent)
    line = json.dumps({"format": FORMAT, **asdict(play)}, ensure_ascii=False)
    with os.fdopen(open_regular(path, os.O_RDWR | os.O_CREAT), "r+b") as stream:
        kept = read_open(stream.fileno(), str(path), MOST_RECORD)
        stream.truncate(kept.rfind(b"\n") + 1)
        stream.seek(0, os.SEEK_END)
        stream.write(f"{line}\n".encode())


def keep_open(path: Path, play: Play) -> None:
    """Keep a play that goes on beside its record, as left, whatever ends it. Raises OSError or
    NotUsable.
    """
    open_path(path).unlink(missing_ok=True)
    keep_play(open_path(path), play)


def close_open(path: Path) -> None:
    """Add a play that nobody ended to its record. Raises OSError, NotUsable or RecordDamaged."""
    for play in _plays_in(open_path(path)):
        keep_play(path, play)
    open_path(path).unlink(missing_ok=True)


def open_path(path: Path) -> Path:
    """The file of the play that goes on, beside the record of its apprentice."""
    return path.with_suffix(".open")


def read_plays(path: Path) -> tuple[Play, ...]:
    """Every play of a record, in order, and the one that goes on or that nobody ended.

    None where there is no record yet. A last line cut off while it was written is left out.
    Raises RecordDamaged for any other.
    """
    return (*_plays_in(path), *_plays_in(open_path(path)))


def all_records(data_folder: Path) -> tuple[tuple[Play, ...], ...]:
    """The plays of every apprentice of a data folder, a record each, by the name of its file.

    Raises RecordDamaged for one that cannot be read.
    """
    files = sorted({*(data_folder / FOLDER).glob("*.jsonl"), *_left(data_folder)})
    return tuple(read_plays(path) for path in files)


def _left(data_folder: Path) -> Iterator[Path]:
    """The records whose only play is one that nobody has ended."""
    yield from (path.with_suffix(".jsonl") for path in (data_folder / FOLDER).glob("*.open"))


def shown_to_others(data_folder: Path, own: Path, scenario: str) -> bool:
    """Whether a scenario's answer was asked for under another name in this data folder.

    So was one that was called after a reading or two that bear nothing out: its debrief tells as
    much. A record that cannot be read tells nothing.
    """
    for path in sorted((data_folder / FOLDER).glob("*.jsonl")):
        with suppress(RecordDamaged):
            if path != own and any(shows_for_little(play, scenario) for play in read_plays(path)):
                return True
    return False


def _plays_in(path: Path) -> tuple[Play, ...]:
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
    if not isinstance(data, dict):
        raise TypeError("no play")
    kept: dict[str, Any] = data
    of = kept.pop("format")
    if of == FIRST_FORMAT:
        kept = {"reasoned": kept["verdict"] == "right", "sure": "", "parts": 0, **kept}
    elif of not in (SECOND_FORMAT, FORMAT):
        raise ValueError("another format")
    if of != FORMAT:
        kept = {"shown_before": False, **kept}
    play = Play(**kept)
    for field in fields(Play):
        value = getattr(play, field.name)
        if type(value).__name__ != field.type or (type(value) is int and not 0 <= value <= MOST):
            raise TypeError(field.name)
    return play


def as_csv(*records: Iterable[Play]) -> str:
    """Records, one an apprentice, as CSV (RFC 4180), a header first; `counts` tells first plays
    from later ones.

    The subsystem of a case that was only left is not told: it may be played yet.
    """
    stream = io.StringIO()
    writer = csv.DictWriter(stream, fieldnames=[*Play.__dataclass_fields__, "counts"])
    writer.writeheader()
    for plays in map(tuple, records):
        ended = {play.scenario for play in plays if play.verdict != "left"}
        for play, counts in counting(plays):
            told = play if play.scenario in ended else replace(play, subsystem="")
            cells = {name: _cell(value) for name, value in asdict(told).items()}
            writer.writerow({**cells, "counts": "yes" if counts else "no"})
    return stream.getvalue()


def _cell(value: object) -> object:
    """A text that a spreadsheet would take for a formula is given a quote before it."""
    return f"'{value}" if isinstance(value, str) and runs(value) else value
