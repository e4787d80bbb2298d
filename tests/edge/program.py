"""The program as a person starts it, with the clock of a file: CLOCK names it, if anything.

Run as a script with the program's own arguments; `person.py` does so in a pseudo-terminal. The file
holds one moment (2026-11-26T09:00:00+00:00), read again whenever the program asks for the time, so
that a test can let a night pass while a prompt is open.
"""

from __future__ import annotations

import os
from datetime import datetime
from pathlib import Path

from troubleshoot.cli import clock
from troubleshoot.cli.main import main


def moment() -> datetime:
    """The moment that the file holds now."""
    return datetime.fromisoformat(Path(os.environ["CLOCK"]).read_text("ascii").strip())


def begin() -> None:
    """The program, by the clock of the file where the environment names one."""
    if "CLOCK" in os.environ:
        clock.now = moment
    main()


if __name__ == "__main__":
    begin()
