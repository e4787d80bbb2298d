"""`rules go-over`: a card's page is read; then it is gone over, or somebody answers for it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any, Final

import click

from troubleshoot.authoring.trial import Trial, try_examples
from troubleshoot.cli import clock
from troubleshoot.cli.failures import CHECKS_FOUND, INTERRUPTED, RULES_INVALID, USAGE, Failure
from troubleshoot.cli.pages import page_about
from troubleshoot.cli.rule_base import rules_in_force, site_folders, takes_rules
from troubleshoot.cli.workshop.asker import Asker, AuthorTerminal, Back, Left
from troubleshoot.knowledge.base import read_texts
from troubleshoot.knowledge.checks import check_rules
from troubleshoot.knowledge.comments import top_comments
from troubleshoot.knowledge.formatting import format_file, written
from troubleshoot.knowledge.layout import RuleText
from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.knowledge.model import Fault, Knowledge
from troubleshoot.knowledge.problems import RuleFileError, did_you_mean
from troubleshoot.knowledge.signed_cards import OF_TRUST, digest_of_card
from troubleshoot.outside.files import is_file, read_text
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.outside.text import MOST_NAME
from troubleshoot.visit.telling.trust_told import trust_line

LEFT_AS_IT_IS: Final = "The card is left as it is."
NOT_SIGNED: Final = "nobody has signed it"
_ABOUT: Final = (
    "g: you have read every line as the one who will be led by it, and would do so yourself. "
    "s: the same, and you answer for it by your role, which people will see. Enter leaves it."
)
_ABOUT_ROLE: Final = "A role or initials, no more: senior technician, S.T."
_MOST_BECAUSE: Final = 200


@click.command("go-over", short_help="Read a card's page, then go over it or sign it.")
@click.argument("card")
@takes_rules
@click.pass_context
def go_over_command(ctx: click.Context, card: str) -> None:
    """Show the page of CARD and what its examples come to; then it is gone over, signed or left.

    A signature is of the card as it is read here: who answers for it by role, the day, and a hash
    of what it says. Once the card says something else, rules check tells that it has changed.
    """
    knowledge = rules_in_force()
    fault = knowledge.faults.get(card)
    if fault is None:
        said = f"no card is called {card}; {did_you_mean(card, knowledge.faults)}"
        raise Failure([said], USAGE)
    path = _file_of(fault)
    terminal = AuthorTerminal()
    try:
        _read_aloud(terminal, knowledge, fault)
        trials = list(try_examples(knowledge, frozenset({card})))
        _refuse_to_fix(path, trials)
        terminal.say(f"Its examples hold: {len(trials)} of {len(trials)}.")
        _ask_and_write(Asker(terminal), path)
    except (Left, Back):
        terminal.say(LEFT_AS_IT_IS)
    except KeyboardInterrupt:
        terminal.say()
        terminal.say(LEFT_AS_IT_IS)
        ctx.exit(INTERRUPTED)
    else:
        (told,) = (each for each in rules_in_force().faults.values() if each.id == card)
        terminal.say(f"{told.name}: {trust_line(rules_in_force(), told)}")


def _file_of(fault: Fault) -> Path:
    """The file of a card: each lies in the folder of its subsystem, and is called as its id."""
    inside = Path("faults") / fault.subsystem / f"{fault.id}.yaml"
    for folder in (*site_folders(), shipped_folder()):
        if is_file(folder / inside):
            return folder / inside
    raise Failure([f"{fault.id} has no file of its own; see: troubleshoot rules check"], USAGE)


def _read_aloud(terminal: AuthorTerminal, knowledge: Knowledge, fault: Fault) -> None:
    for line in page_about(knowledge, fault.id) or ():
        terminal.say(line.strip(), len(line) - len(line.lstrip()))


def _refuse_to_fix(path: Path, trials: Sequence[Trial]) -> None:
    """Raises Failure where the check or an example finds something to put right in the card."""
    found = check_rules([shipped_folder(), *site_folders()])
    wrong = [str(each) for each in found if each.path == str(path) and each.level == "error"]
    wrong += [f"{each.example.name}: {each.failure}" for each in trials if each.failure]
    if wrong:
        raise Failure([*wrong, "put this right first; the card is left as it is"], CHECKS_FOUND)


def _ask_and_write(asker: Asker, path: Path) -> None:
    """Take the word of whoever read the card, and write it down. Raises Left, Back, Failure."""
    while True:
        typed = asker.line("g gone over, s signed, Enter leaves it >", _ABOUT).lower()
        if not typed:
            raise Left
        if typed in ("g", "gone over"):
            about = "What nobody has done yet: not signed by a licensed person. Enter: not signed."
            because = asker.words("still to do >", about, _MOST_BECAUSE, may_be_empty=True)
            _write(path, {"status": "gone-over", "because": because or NOT_SIGNED})
            return
        if typed in ("s", "sign", "signed"):
            role = asker.words("who answers for it, by role >", _ABOUT_ROLE, MOST_NAME)
            _write(path, {"status": "signed", "signed": {"by": role, "on": _today()}})
            return
        asker.terminal.say("g, s, or Enter.")


def _today() -> str:
    return f"{clock.now():%Y-%m-%d}"


def _write(path: Path, trust: dict[str, Any]) -> None:
    """Write a card anew with how far it is trusted. Raises Failure rather than lose a comment."""
    try:
        text = format_file(read_text(path), str(path), "fault")
    except (NotUsable, RuleFileError) as error:
        raise Failure(str(error).splitlines(), RULES_INVALID) from None
    name = "/".join(path.parts[-3:])
    (file,) = read_texts([RuleText(str(path), name, 0, text.encode())]).files
    told = {key: value for key, value in file.data.items() if key not in OF_TRUST}
    if "signed" in trust:
        trust["signed"]["card"] = digest_of_card(told)
    try:
        path.write_text(written("fault", told | trust, top_comments(text)), "utf-8", newline="\n")
    except OSError as error:
        said = f"{in_a_line(str(path))} could not be written ({error.strerror})"
        raise Failure([said], USAGE) from None
