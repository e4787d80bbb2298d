"""Files from outside: whatever lies behind a name, an answer comes at once and is bounded."""

from __future__ import annotations

import io
import os
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.outside.files import make_private, read_bytes, read_start, read_stream, read_text
from troubleshoot.outside.refusal import NotUsable


def _nothing(path: Path) -> None:
    pass


def _a_pipe(path: Path) -> None:
    os.mkfifo(path)


def _a_link_to_a_device(path: Path) -> None:
    path.symlink_to("/dev/zero")


def _a_folder(path: Path) -> None:
    path.mkdir()


def _a_large_file(path: Path) -> None:
    with path.open("wb") as file:
        file.truncate(1 << 40)


def _other_bytes(path: Path) -> None:
    path.write_bytes(b"first line\ncaf\xe9\n")


@pytest.mark.parametrize(
    ("make", "said"),
    [
        (_nothing, "cannot be opened (No such file or directory)"),
        (_a_pipe, "no regular file"),
        (_a_link_to_a_device, "no regular file"),
        (_a_folder, "no regular file"),
        (_a_large_file, "over 1000 bytes"),
        (_other_bytes, "line 2 is not UTF-8 text"),
    ],
)
def test_what_is_no_text_file_is_one_sentence(
    tmp_path: Path, make: Callable[[Path], None], said: str
) -> None:
    path = tmp_path / "file"
    make(path)
    with pytest.raises(NotUsable) as caught:
        read_text(path, 1000)
    assert said in str(caught.value) and "\n" not in str(caught.value)


@pytest.mark.parametrize("name", ["x" * 5000, "nul\0byte", "half \ud800"])
def test_a_name_that_no_file_can_have_is_refused(name: str) -> None:
    with pytest.raises(NotUsable):
        read_bytes(name)


@given(st.binary(max_size=40), st.integers(0, 40))
def test_a_file_is_read_whole_or_not_at_all(
    tmp_path_factory: pytest.TempPathFactory, data: bytes, most: int
) -> None:
    path = tmp_path_factory.getbasetemp() / "whole"
    path.write_bytes(data)
    try:
        assert read_bytes(path, most) == data
    except NotUsable:
        assert len(data) > most


def test_a_byte_order_mark_is_no_text(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes("\ufefföl".encode())
    assert read_text(tmp_path / "file") == "öl"


@pytest.mark.parametrize("errors", ["strict", "surrogateescape"])
def test_what_is_piped_in_is_bounded_and_is_text(errors: str) -> None:
    def piped(data: bytes) -> io.TextIOWrapper:
        return io.TextIOWrapper(io.BytesIO(data), "utf-8", errors)

    assert read_stream(piped("öl\n".encode()), "-", 3) == "öl\n"
    with pytest.raises(NotUsable, match="over 2 letters"):
        read_stream(piped(b"oil\n"), "-", 2)
    with pytest.raises(NotUsable, match="not UTF-8"):
        read_stream(piped(b"caf\xe9"), "-")


def test_folders_are_made_for_their_owner_alone_and_others_are_left(tmp_path: Path) -> None:
    mine = tmp_path / "mine"
    mine.mkdir(mode=0o755)
    make_private(mine / "a" / "b")
    make_private(mine / "a" / "b")
    modes = [p.stat().st_mode & 0o777 for p in (mine, mine / "a", mine / "a" / "b")]
    assert modes == [0o755, 0o700, 0o700]


@pytest.mark.parametrize("length", [0, 3, 4, 5, 3_000_000])
def test_of_a_file_however_long_the_first_bytes_can_be_read(length: int, tmp_path: Path) -> None:
    path = tmp_path / "long"
    path.write_bytes(b"x" * length)
    assert read_start(path, 4) == b"x" * min(length, 4)
