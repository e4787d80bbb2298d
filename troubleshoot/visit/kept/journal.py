"""The journal of a visit: append-only, one line an event, synced before the next question.

A torn last line (power lost while writing) is dropped with a notice; damage is reported with its
record number, never skipped. Undo is an event like any other. Whoever only reads opens the file for
reading and leaves it as it is. Nothing here reads a clock: times come in with the events.
"""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path
from typing import Final

from troubleshoot.outside.files import make_private, open_regular
from troubleshoot.outside.plain_data import from_json
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.visit.kept.bytes_of import MOST_BYTES, MOVE_IT, bytes_in, bytes_of
from troubleshoot.visit.kept.lines import (
    ENDINGS,
    FORMAT,
    Lines,
    LinesDamaged,
    NewerFormat,
    Record,
    line_of,
    read_lines,
)
from troubleshoot.visit.kept.names import SUFFIX, kept_visits

ENDS_OR_OPENS: Final = ("end", "reopened", "danger")
"""The events that say whether a visit is over: the last of them does. A damaged record may hold
anything, so what it holds is compared and never hashed."""

MOST_EVENTS: Final = 5_000
"""A long visit has a few hundred; what no version of ours wrote need not be waited for."""

TORN: Final = "The last record was cut off while it was written; it has been dropped."


class JournalError(Exception):
    """The journal cannot be used; the message says why and what to do."""


class JournalFailed(JournalError):
    """An event could not be made durable; nothing may go on as if it had been."""


class JournalGone(JournalFailed):
    """What was kept is no longer where it will be looked up: not this event, nor any before it."""


class JournalDamaged(JournalError):
    """A record is not as it was written."""


class JournalNewer(JournalError):
    """A newer version of the program wrote this visit; this one neither reads nor writes it."""


class JournalBusy(JournalError):
    """Another program has this visit open."""


class Journal:
    """One visit's journal, held open and locked for this program alone."""

    def __init__(self, path: Path, descriptor: int) -> None:
        self.path = path
        self.notice = ""
        self._descriptor = descriptor
        self._failed = False
        self._checksum = 0
        self._size = 0
        self._records: list[Record] = []

    @classmethod
    def create(cls, folder: Path, visit_id: str, header: Record) -> Journal:
        """Begin a visit's journal; its first record is the header (program, rules, date)."""
        path = folder / f"{visit_id}{SUFFIX}"
        try:
            make_private(folder)
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
        """Open a journal to go on with it, and read every event in it. Raises JournalError."""
        try:
            descriptor = open_regular(path, os.O_RDWR)
        except NotUsable as error:
            raise JournalFailed(str(error)) from None
        journal = cls(path, descriptor)
        try:
            journal._lock()
            journal._read()
        except JournalError:
            journal.close()
            raise
        return journal

    @property
    def events(self) -> tuple[Record, ...]:
        """Every event after the header."""
        return tuple(self._records[1:])

    @property
    def header(self) -> Record:
        return self._records[0] if self._records else {}

    def append(self, *events: Record) -> None:
        """Make events durable, those that belong together by one write.

        Raises JournalFailed, and refuses everything after a failure.
        """
        if self._failed:
            raise JournalFailed(f"{self.path}: an earlier record could not be kept; start again")
        self.confirm()
        lines, checksum = b"", self._checksum
        for number, event in enumerate(events, start=len(self._records)):
            line, checksum = line_of(number, checksum, event)
            lines += line
        is_full = len(self._records) + len(events) > MOST_EVENTS + 1
        if is_full or self._size + len(lines) > MOST_BYTES:
            raise JournalFailed(f"{self.path}: it is full; go on in a new visit")
        try:
            written = os.write(self._descriptor, lines)
            if written != len(lines):
                raise OSError("the disk took only part of the record")
            _make_durable(self._descriptor)
        except OSError as error:
            self._failed = True
            raise JournalFailed(_sentence(self.path, error)) from None
        self._checksum = checksum
        self._size += len(lines)
        self._records.extend(map(dict, events))
        self.confirm()

    def confirm(self) -> None:
        """Make sure that what was kept is where it will be looked up, and as long as it was.

        Raises JournalGone: a folder may be moved, removed or mounted over, and a tool that copies
        files puts another in their place.
        """
        try:
            here, ours = self.path.stat(), os.fstat(self._descriptor)
        except OSError:
            is_ours = False
        else:
            is_ours = os.path.samestat(here, ours) and ours.st_size == self._size
        if not is_ours:
            self._failed = True
            raise JournalGone(
                f"{self.path}: cannot be kept (it was moved, removed or replaced while the visit "
                "was open); put it back or name another folder with --data"
            )

    def __enter__(self) -> Journal:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """Give the visit free for another program."""
        with suppress(OSError):
            os.close(self._descriptor)

    def _lock(self) -> None:
        if not may_lock(self._descriptor):
            raise JournalBusy(
                f"{self.path.stem} is open in another window; go on there or close it"
            )

    def _read(self) -> None:
        try:
            data = bytes_of(self._descriptor, self.path)
        except NotUsable as error:
            raise JournalDamaged(str(error)) from None
        lines = lines_in(self.path, data)
        if lines.torn:
            self.notice = TORN
            try:
                os.ftruncate(self._descriptor, lines.whole)
            except OSError as error:
                raise JournalFailed(_sentence(self.path, error)) from None
        os.lseek(self._descriptor, lines.whole, os.SEEK_SET)
        self._records = [lines.header, *lines.events]
        self._checksum, self._size = lines.checksum, lines.whole


def open_visits(folder: Path) -> tuple[Path, ...]:
    """The journals of visits that have not been closed, the latest first.

    One that cannot be read is among them: opening it tells what is wrong.
    """
    return tuple(path for path in kept_visits(folder) if not _is_closed(path))


def _is_closed(path: Path) -> bool:
    """Whether the visit was ended, and not opened again since; a note opens nothing."""
    try:
        whole = bytes_in(path).rpartition(b"\n")[0]
        for line in reversed(whole.splitlines()):
            record = from_json(line, "the line")
            event = record.get("event") if isinstance(record, dict) else None
            if isinstance(event, dict) and (kind := event.get("event")) in ENDS_OR_OPENS:
                return kind == "end" and event.get("ending") in ENDINGS
    except NotUsable:
        pass
    return False


def lines_in(path: Path, data: bytes) -> Lines:
    """The lines of a journal's bytes; what is wrong with them in sentences."""
    try:
        lines = read_lines(data, MOST_EVENTS)
    except LinesDamaged as error:
        raise JournalDamaged(f"{path}: {error} {_how(error)}; {MOVE_IT}") from None
    except NewerFormat as error:
        raise JournalNewer(
            f"{path}: version {error.program} of the program wrote it, in a form that this version "
            "does not know; nothing has been changed. Go on with it in that version"
        ) from None
    if len(lines.events) > MOST_EVENTS:
        raise JournalDamaged(f"{path}: it holds more than {MOST_EVENTS} events; {MOVE_IT}")
    return lines


def _how(error: LinesDamaged) -> str:
    return "is damaged" if error.written else "is gone, as after a power cut"


def may_lock(descriptor: int, shared: bool = False) -> bool:
    """Lock a journal until it is closed; False where another program has it open.

    `shared`: only against whoever writes, as whoever reads does.
    """
    try:
        import fcntl
    except ImportError:  # no such locks on this platform: two programs at once are unlikely
        return True
    try:
        fcntl.flock(descriptor, (fcntl.LOCK_SH if shared else fcntl.LOCK_EX) | fcntl.LOCK_NB)
    except OSError:
        return False
    return True


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
