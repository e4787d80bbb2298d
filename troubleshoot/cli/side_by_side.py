"""Rows of a table judged by several processes at once, and handed on in the table's order.

No more rows are on their way than keep the processes busy, so that memory does not grow with the
table. What a row comes to hangs on the row alone, and so not on who judges it.
"""

from __future__ import annotations

import gc
import multiprocessing
import os
import signal
import threading
from collections import deque
from collections.abc import Iterable, Iterator
from concurrent.futures import Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from itertools import islice
from typing import TYPE_CHECKING, Any, Final

from troubleshoot.cli.failures import JOURNAL_FAILED, Failure

if TYPE_CHECKING:
    from troubleshoot.outside.table import Row
    from troubleshoot.records.logged.judging import Judge, Judged

ROWS: Final = 8
"""Rows that a process is given at once: few enough that 45 are shared out evenly."""
AHEAD: Final = 2
"""Such pieces that are on their way for each process."""
RUBBISH: Final = 20_000
"""Objects that wait to be looked at: those of about a thousand rows."""

_made: list[Judge] = []
"""What judges in this process, made when the process began."""


def processors() -> int:
    """How many processes can run at once here."""
    own = getattr(os, "sched_getaffinity", None)
    return len(own(0)) if own is not None else os.cpu_count() or 1


def judged_rows(rows: Iterable[Row], workers: int, parts: tuple[Any, ...]) -> Iterator[Judged]:
    """What each row comes to, in order. `parts`: those of a Judge. Raises Failure.

    A table that one piece holds is judged here: to begin a process would take longer.
    """
    from troubleshoot.records.logged.judging import Judge

    waiting = iter(rows)
    first = list(islice(waiting, ROWS))
    if workers == 1 or len(first) < ROWS:
        _look_for_rubbish()
        judge = Judge(*parts)
        yield from map(judge.judged, first)
        yield from map(judge.judged, waiting)
        return
    pool = ProcessPoolExecutor(workers, _context(), _begin, parts)
    try:
        yield from _in_order(pool, _pieces(first, waiting), AHEAD * workers)
    except BrokenProcessPool:
        said = "a process that judges rows was ended from outside; try: --workers 1"
        raise Failure([said], JOURNAL_FAILED) from None
    finally:
        pool.shutdown(cancel_futures=True)


def _pieces(first: list[Row], waiting: Iterator[Row]) -> Iterator[list[Row]]:
    piece = first
    while piece:
        yield piece
        piece = list(islice(waiting, ROWS))


def _in_order(
    pool: ProcessPoolExecutor, pieces: Iterable[list[Row]], ahead: int
) -> Iterator[Judged]:
    running: deque[Future[list[Judged]]] = deque()
    for piece in pieces:
        running.append(pool.submit(_judge, piece))
        if len(running) > ahead:
            yield from running.popleft().result()
    while running:
        yield from running.popleft().result()


def _context() -> Any:
    """Processes that share the rules in memory, where the system can."""
    able = multiprocessing.get_all_start_methods()
    return multiprocessing.get_context("fork" if "fork" in able else None)


def _begin(*parts: Any) -> None:
    """Begin a process; Ctrl-C is left to the one that began it."""
    from troubleshoot.records.logged.judging import Judge

    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_parent, daemon=True).start()
    _look_for_rubbish()
    _made[:] = [Judge(*parts)]


def _end_with_parent() -> None:
    """End with the process that began this one: where that is killed, nothing else ends it."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


def _look_for_rubbish() -> None:
    """Have rubbish looked for now and then, which a start is spared, but among the rules never."""
    gc.freeze()
    gc.set_threshold(RUBBISH)


def _judge(rows: list[Row]) -> list[Judged]:
    return [_made[0].judged(row) for row in rows]
