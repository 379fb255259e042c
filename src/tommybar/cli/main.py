"""The command ``tommybar``: what it is called with, and how it ends.

0 good; 1 refused input or wrong usage; 2 done, but findings that forbid
starting stand; 70 our own fault, which keeps its traceback.
"""

from __future__ import annotations

import gc
import os
import sys
import traceback
from pathlib import Path

import typer

from tommybar.cli import facts as facts_command
from tommybar.cli.builds import builds
from tommybar.cli.check import check
from tommybar.cli.export import export
from tommybar.cli.import_ import import_
from tommybar.cli.new import new
from tommybar.cli.pack import pack
from tommybar.cli.plan import plan
from tommybar.cli.record import record
from tommybar.cli.resize import resize
from tommybar.cli.serve import serve
from tommybar.refusals import OwnFault, Refusal
from tommybar.version import __version__

WrongUsage: type[Exception] = typer.BadParameter.__mro__[2]  # base of all that typer says about usage
GOOD, REFUSED, STOPS, FAULT = 0, 1, 2, 70
SELDOM = (100_000, 50, 100)  # how seldom garbage is collected; a plan takes under 1 MB more for it

app = typer.Typer(
    name="tommybar",
    help="From a design and a home shop to set-up cards, drawings and stock lists.",
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)


def _example(command: str) -> str:
    return f"Example:  tommybar {command}"


app.command(epilog=_example("new --disc 80 16 my-wheel"))(new)
app.command(epilog=_example("check my-wheel.yaml my-shop.yaml"))(check)
app.command(epilog=_example("plan my-wheel.yaml --shop my-shop.yaml"))(plan)
app.command(epilog=_example("resize my-wheel.yaml --shop small-bench"))(resize)
app.command(epilog=_example("pack my-wheel.yaml --shop my-shop.yaml --out my-pack"))(pack)
app.command(epilog=_example('record my-made.yaml wheel.bore 10.021 --with "plug 0.01"'))(record)
app.command(epilog=_example('facts fit "8 H7/g6"'), context_settings=facts_command.CONTEXT_SETTINGS)(
    facts_command.facts
)
app.command(epilog=_example("builds start my-wheel.yaml --shop my-shop.yaml"))(builds)
app.command(epilog=_example("export all.zip"))(export)
app.command("import", epilog=_example("import all.zip"))(import_)
app.command(epilog=_example("serve --port 8700"))(serve)


def _tell_version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"tommybar {__version__}")
        raise typer.Exit


@app.callback()
def _whole(
    version: bool = typer.Option(
        False, "--version", callback=_tell_version, is_eager=True, help="Say the version."
    ),
) -> None:
    pass


def run(arguments: list[str] | None = None) -> None:
    """Do what the command line says and end with its exit status."""
    gc.set_threshold(*SELDOM)  # what a command makes it needs to its end
    code = status_of(arguments if arguments is not None else sys.argv[1:])
    try:
        sys.stdout.flush()
    except OSError:
        code = _reader_gone()
    gc.freeze()  # nothing is searched for garbage on the way out
    sys.exit(code)


def status_of(arguments: list[str]) -> int:
    """Do what ``arguments`` say; the exit status, with one line on stderr for whatever went wrong."""
    try:
        code = app(arguments or ["--help"], standalone_mode=False, prog_name="tommybar")
        code = code if isinstance(code, int) else GOOD
        return code if arguments else REFUSED
    except WrongUsage as error:
        _say(f"{_usage_words(error)} See: {' '.join(['tommybar', *_command(arguments)])} --help")
    except Refusal as refusal:
        _say(str(refusal))
    except (BrokenPipeError, SystemExit):  # typer leaves in its own way when the reader is gone
        return _reader_gone()
    except (KeyboardInterrupt, typer.Abort):
        _say("Stopped.")
    except OSError as error:
        if not error.filename or _ours(error.filename):
            return _own_fault()
        _say(f"{error.filename} cannot be used: {error.strerror}. Check the name and its permissions.")
    except Exception:
        return _own_fault()
    return REFUSED


def _usage_words(error: Exception) -> str:
    words = str(getattr(error, "format_message", lambda: error)()).strip()
    return words if words.endswith(".") else f"{words}."


def _command(arguments: list[str]) -> list[str]:
    known = [one.name or getattr(one.callback, "__name__", "") for one in app.registered_commands]
    return [one for one in arguments[:1] if one in known]


def _ours(name: object) -> bool:
    """Whether a file belongs to the program, so that its lack is our fault."""
    return str(name).startswith(str(Path(__file__).resolve().parent.parent))


def _say(words: str) -> None:
    typer.echo(words, err=True)


def _own_fault() -> int:
    traceback.print_exc()
    fault = sys.exc_info()[1]
    known = f" {fault}" if isinstance(fault, OwnFault) else ""
    _say(f"This is a fault of tommybar {__version__} itself, not of your files.{known}")
    _say("Please report it with the lines above and the files that you gave.")
    return FAULT


def _reader_gone() -> int:
    """Whoever read our output went away; what is left of it goes nowhere, or Python would complain."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
    _say("The output was closed before all of it was written.")
    return REFUSED
