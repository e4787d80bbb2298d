"""Bytes that nobody meant to write: whole inputs with a few things done to them."""

from __future__ import annotations

from random import Random

HOSTILE = (
    b"\x00", b"\xe9", b"\xff\xfe", b"\xed\xa0\x80", b"\x1b[2J", "\u202e".encode(), "²".encode(),
    "１".encode(), b"1" * 4301, b"9" * 400, b"1e999", b"-0", b"NaN", b"null", b"true", b"[]", b"{}",
    b"\"\\ud800\"", b"[" * 40, b"{\"a\":" * 40, b"- " * 40, b"? " * 40, b"&a ", b"*a", b"!!str ",
    b"%YAML", b"---\n", b"|\n", b"\t", b"#", b": ", b",", b"\n", b"\r\n", b"\xef\xbb\xbf",
    b"circuit 9", b"gone-by-now", b"undo", b"stop", b"x" * 3000, b"../../x", b"<script>", b"|",
)  # fmt: skip


def mutant(samples: list[bytes], dice: Random, most: int = 1_200_000) -> bytes:
    """A sample with one to five changes; now and then one that is as large as what is refused."""
    data = dice.choice(samples)
    for _ in range(dice.randint(1, 5)):
        start = dice.randint(0, len(data))
        end = min(len(data), start + dice.choice((0, 1, 1, 4, 20, 200)))
        piece = data[start:end]
        changed = dice.choice(
            (
                b"",
                dice.choice(HOSTILE),
                dice.choice(HOSTILE) + piece,
                piece * dice.choice((2, 3, 50)),
                bytes([dice.randint(0, 255)]),
                dice.randbytes(dice.randint(1, 8)),
            )
        )
        data = data[:start] + changed + data[end:]
    if dice.random() < 0.05:
        start = dice.randint(0, len(data))
        piece = data[start : start + dice.choice((1, 2, 10, 100))] or b" "
        data = data[:start] + piece * (most // len(piece)) + data[start:]
    return data[: 2 * most]
