"""Writing a file that a person names, a page among them: never over one that is there."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from troubleshoot.cli.door import catalogue_in_use, tell, told
from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.practice.files import unwritable
from troubleshoot.outside.refusal import in_a_line


def write_new_file(file: str, text: str) -> None:
    """Write a text to a file that is not there yet. Raises Failure."""
    try:
        with Path(file).open("x", encoding="utf-8", newline="") as stream:
            stream.write(text)
    except FileExistsError:
        raise Failure([f"{in_a_line(file)} is there already; name another file"], USAGE) from None
    except OSError as error:
        raise unwritable(in_a_line(file), error) from None


def write_page(file: str, report: str, title: str, figures: Sequence[str] = ()) -> None:
    """Write a report as one page of HTML, in the language in use. Raises Failure."""
    from troubleshoot.records.page import as_page

    if catalogue_in_use() is not None:
        from troubleshoot.cli.told_markup import told_markdown

        report = told_markdown(report, told)
    write_new_file(file, as_page(report, title, figures))
    tell(f"Written: {in_a_line(file)}")
