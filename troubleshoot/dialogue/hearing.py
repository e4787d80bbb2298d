"""What a person calls out at any prompt, whatever was asked."""

from __future__ import annotations


def called_danger(typed: str) -> str | None:
    """What is wrong, in the person's own words; None where no danger is called."""
    word, _, rest = typed.partition(" ")
    return rest.strip() if word.lower().rstrip(":,!") == "danger" else None
