"""The journal of a visit: append-only, one line an event, synced before the next question.

Each line holds a sequence number, the event and a checksum chained over everything before it. A
torn last line (power lost while writing) is dropped with a notice; damage anywhere else is
reported with its record number, never skipped. Undo is an event like any other. Nothing here reads
a clock: times come in with the events.
"""

from __future__ import annotations

import json
import os
import zlib
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any, Final

FORMAT: Final = 1
SUFFIX: Final = ".journal"


class JournalError(Exception):
    """The journal cannot be used; the message says why and what to do."""


class JournalFailed(JournalError):
    """An event could not be made durable; nothing may go on as if it had been."""


class JournalDamaged(JournalError):
    """A record before the last one is not as it was written."""


class JournalBusy(JournalError):
    """Another program has this visit open."""


class Journal:
    """One visit's journal, held open and locked for this program alone."""

    def __init__(self, path: Path, descriptor: int) -> None:
        self.path = path
        self.notice = ""
        self._descriptor = descriptor
        self._failed = False
        self._sequence = 0
        self._checksum = 0
        self._events: list[dict[str, Any]] = []

    @classmethod
    def create(cls, folder: Path, visit_id: str, header: Mapping[str, Any]) -> Journal:
        """Begin a visit's journal; its first record is the header (program, rules, date)."""
        path = folder / f"{visit_id}{SUFFIX}"
        try:
            folder.mkdir(parents=True, exist_ok=True)
            descriptor = os.open(path, os.O_RDWR | os.O_CREAT | os.O_EXCL, 0o600)
        except OSError as error:
            raise JournalFailed(_sentence(path, error)) from None
        journal = cls(path, descriptor)
        journal._lock()
        try:
            journal.append({"event": "journal", "format": FORMAT, **header})
        except JournalFailed:
            journal.close()
            with suppress(OSError):  # a visit that never began leaves nothing behind
                path.unlink()
            raise
        _sync_folder(folder)
        return journal

    @classmethod
    def open(cls, path: Path) -> Journal:
        """Open a journal and read every event in it. Raises JournalError."""
        try:
            descriptor = os.open(path, os.O_RDWR)
        except OSError as error:
            raise JournalFailed(_sentence(path, error)) from None
        journal = cls(path, descriptor)
        journal._lock()
        try:
            journal._read()
        except JournalDamaged:
            journal.close()
            raise
        return journal

    @property
    def events(self) -> tuple[dict[str, Any], ...]:
        """Every event after the header."""
        return tuple(self._events[1:])

    @property
    def header(self) -> Mapping[str, Any]:
        return self._events[0] if self._events else {}

    def append(self, event: Mapping[str, Any]) -> None:
        """Make one event durable. Raises JournalFailed, and refuses everything after a failure."""
        if self._failed:
            raise JournalFailed(f"{self.path}: an earlier record could not be kept; start again")
        line, checksum = _line(self._sequence, self._checksum, event)
        try:
            written = os.write(self._descriptor, line)
            if written != len(line):
                raise OSError("the disk took only part of the record")
            _make_durable(self._descriptor)
        except OSError as error:
            self._failed = True
            raise JournalFailed(_sentence(self.path, error)) from None
        self._sequence += 1
        self._checksum = checksum
        self._events.append(dict(event))

    def __enter__(self) -> Journal:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """Give the visit free for another program."""
        with suppress(OSError):
            os.close(self._descriptor)

    def _lock(self) -> None:
        try:
            import fcntl
        except ImportError:  # no such locks on this platform: two programs at once are unlikely
            return
        try:
            fcntl.flock(self._descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            os.close(self._descriptor)
            raise JournalBusy(
                f"{self.path.stem} is open in another window; go on there or close it"
            ) from None

    def _read(self) -> None:
        with os.fdopen(os.dup(self._descriptor), "rb") as stream:
            stream.seek(0)
            data = stream.read()
        start = 0
        lines = data.split(b"\n")
        for number, line in enumerate(lines[:-1], start=1):
            event = self._checked(line)
            if event is None:
                if number == len(lines) - 1 and not lines[-1]:
                    break
                raise JournalDamaged(
                    f"{self.path}: record {number} is damaged; nothing has been changed. "
                    "Copy the file to safety and start a new visit"
                )
            self._events.append(event)
            start += len(line) + 1
        if not self._events:
            raise JournalDamaged(
                f"{self.path}: record 1 was never written whole, so nothing was kept in it; "
                "delete the file and start a new visit"
            )
        if start < len(data):
            self.notice = "The last record was cut off while it was written; it has been dropped."
            os.ftruncate(self._descriptor, start)
        os.lseek(self._descriptor, start, os.SEEK_SET)

    def _checked(self, line: bytes) -> dict[str, Any] | None:
        """The event of a line as it was written, or nothing; moves the chain on."""
        try:
            record = json.loads(line)
            event = record["event"]
            again, checksum = _line(self._sequence, self._checksum, event)
        except (ValueError, KeyError, TypeError):
            return None
        if again.rstrip(b"\n") != line:
            return None
        self._sequence += 1
        self._checksum = checksum
        return dict(event)


def _line(sequence: int, before: int, event: Mapping[str, Any]) -> tuple[bytes, int]:
    """A record's bytes, and the checksum over it and all before it."""
    body = json.dumps(event, ensure_ascii=True, sort_keys=True, separators=(",", ":"))
    checksum = zlib.crc32(f"{sequence}:{body}".encode(), before)
    text = json.dumps({"n": sequence, "event": event, "sum": f"{checksum:08x}"}, sort_keys=True)
    return text.encode() + b"\n", checksum


def open_visits(folder: Path) -> tuple[Path, ...]:
    """The journals of visits that have not been closed, the latest first."""
    paths = sorted(folder.glob(f"*{SUFFIX}"), reverse=True)
    return tuple(path for path in paths if not _is_closed(path))


def _is_closed(path: Path) -> bool:
    """Whether the last whole record is the end of the visit."""
    try:
        whole = path.read_bytes().rpartition(b"\n")[0]
        return bool(json.loads(whole.rpartition(b"\n")[2])["event"]["event"] == "end")
    except (OSError, ValueError, KeyError, TypeError):
        return False  # opening it will tell what is wrong


def _make_durable(descriptor: int) -> None:
    """Until this returns, the disk may not hold what was written."""
    sync = getattr(os, "fdatasync", os.fsync)
    sync(descriptor)


def _sync_folder(folder: Path) -> None:
    with suppress(OSError):  # a file system that cannot sync folders keeps the file all the same
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


def _sentence(path: Path, error: OSError) -> str:
    reason = error.strerror or str(error)
    return f"{path}: cannot be kept ({reason}); make room or name another folder with --data"
