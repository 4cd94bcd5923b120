"""The command line: `scantling serve`, `sum`, `ask`, `pieces`, `boards`, `prove`, `export`, `restore`, `demo`, ….

Every figure comes from the desk. A refusal is one sentence on standard error, with a caret under the place where that
helps, and exit status 2; so is a fault of our own, with its name. `python -X dev -m scantling …` shows where that was.
The notebook's folder is the user's data folder, or the one that --data names.

    parser     the commands by name, and what stands before or after each of them
    command    what commands stand on: files read, a notebook opened, the desk asked
    output     what may reach a terminal, and what a file
    rooms      a question about one room or all
    serving    serve, demo
    asking     sum, ask
    listing    pieces, boards, prove
    keeping    export, backup, restore, check
    looking    doctor
"""

from __future__ import annotations

import sys
from collections.abc import Sequence

from scantling.cli.command import REFUSED, CommandError, Refused
from scantling.cli.output import complain, give_up_output
from scantling.cli.parser import parse_command
from scantling.engine.errors import EngineError

INTERRUPTED = 130


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command: 0, or 2 after a refusal on standard error."""
    try:
        return _run(arguments)
    except Refused as refusal:
        complain(f"{refusal}{_caret(refusal)}")
    except EngineError as error:
        complain(error.message)
    except BrokenPipeError:
        give_up_output()  # the reader, such as head, has gone, and nobody is there to be told
    except OSError as error:
        give_up_output()
        complain(CommandError("system", why=error.strerror or error).message)
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as error:
        if sys.flags.dev_mode:
            raise
        complain(CommandError("failed", what=f"{type(error).__name__}: {error}").message)
    return REFUSED


def _run(arguments: Sequence[str] | None) -> int:
    chosen = parse_command(arguments)
    status = int(chosen.run(chosen) or 0)
    sys.stdout.flush()  # or a full device would be noticed when nobody is left to say so
    return status


def _caret(refusal: Refused) -> str:
    if refusal.at is None or not refusal.text.isprintable():
        return ""
    return f"\n  {refusal.text}\n  {' ' * refusal.at}^"
