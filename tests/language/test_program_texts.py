"""Texts are read off the syntax of the code: nothing is marked, and little is missed."""

from __future__ import annotations

import pytest

from troubleshoot.language.notes import COMMAND
from troubleshoot.language.program_texts import NOT_SHOWN, ONLY_HEARD, PACKAGE, texts_of
from troubleshoot.language.shown_in_code import PROMPTS, SINGLE_WORDS


def found(source: str, module: str = "cli/a.py") -> list[str]:
    return [each.english for each in texts_of(source, f"troubleshoot/{module}")]


@pytest.mark.parametrize(
    ("source", "texts"),
    [
        ('say("It is off.")', ["It is off."]),
        ('say(f"No place called {place.name}.")', ["No place called {name}."]),
        ('say(f"{a} is {b} and {a}")', ["{a} is {b} and {a2}"]),
        ('say(f"{a}{b}: gone")', ["{a_b}: gone"]),
        ("say(f\"{'Step' if x else 'Test'}: {name} done\")",
         ["Step: {name} done", "Test: {name} done"]),
        ("say(f\"It{' (sound)' if x else ''} is {y}\")", ["It (sound) is {y}", "It is {y}"]),
        ('said = ", once more" if x else ""', ["once more"]),
        ('said = f" at {where}" if where else ""', ["{before} at {where}"]),
        ('" or ".join(names)', ["{first} or {more}"]),
        ('say("one of: " + ", ".join(map(str, words)))', ["one of: {words}"]),
        ('say(f"about {test.minutes:.0f} min")', ["about {minutes} min"]),
        ('say(f"| what | {where} now |")', ["what", "{where} now"]),
        ('say("two\\nlines here")', ["two", "lines here"]),
        ('say(f"{{x}} stays {y}")', ["{{x}} stays {y}"]),
        ('x["a key"]', []),
        ('if x == "two words": pass', []),
        ('re.compile("a pattern")', []),
        ('def f(x: Literal["no text"]): pass', []),
        ('"""A docstring of a module."""', []),
        ('@click.command()\ndef f():\n    """Do it.\n\n    Then\n    stop.\n    """',
         ["Do it.", "Then stop."]),
    ],
)  # fmt: skip
def test_the_texts_of_a_piece_of_code(source: str, texts: list[str]) -> None:
    assert found(source) == texts


@pytest.mark.parametrize(
    "path", [*NOT_SHOWN, *SINGLE_WORDS, *PROMPTS, *(module for module, _ in ONLY_HEARD)]
)
def test_what_is_said_of_a_module_is_said_of_one_that_is_there(path: str) -> None:
    assert list(PACKAGE.glob(f"{path}*"))


def test_a_word_that_is_typed_at_a_prompt_says_so() -> None:
    source = 'if typed.lower() in ("q", "quit"): pass\nif typed.startswith("why not "): pass'
    texts = list(texts_of(source, "troubleshoot/dialogue/a.py"))
    assert {(each.english, each.note) for each in texts} == {
        ("q", COMMAND), ("quit", COMMAND), ("why not", COMMAND),
    }  # fmt: skip
