"""Reads the command line, enters the environment, runs the command, and turns what went wrong into words."""

from __future__ import annotations

import argparse
import os
import signal
import sys
from collections.abc import Sequence
from typing import NoReturn

from build_tools import environment
from build_tools.book.diagnostics import did_you_mean
from build_tools.book.printable import printable, printable_lines
from build_tools.commands import bench, build, check, compute, new, pack, plan, records, serve, test
from build_tools.commands.command import FAILURE, INTERRUPTED, USAGE_ERROR, Command
from build_tools.commands.usage_error import UsageError

COMMANDS: dict[str, Command] = {
    module.COMMAND.name: module.COMMAND
    for module in (serve, build, check, plan, compute, new, pack, records, test, bench)
}
PROGRAM = "python3 -m build_tools"
EXIT_CODES = "Exit codes: 0 all is well, 1 the book has mistakes or a check failed, 2 called wrongly."


class Parser(argparse.ArgumentParser):
    """A parser whose mistakes are told in one line with a way to the help."""

    def error(self, message: str) -> NoReturn:
        self.exit(USAGE_ERROR, f"{message}\n    see '{self.prog} --help'\n")


def main(arguments: Sequence[str]) -> int:
    """Carry out one command; the exit code."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    try:
        command, options = read(arguments)
        environment.enter(command.extras, arguments)
        return command.run(options)
    except UsageError as mistake:
        print(printable_lines(str(mistake)), file=sys.stderr)
        return USAGE_ERROR
    except environment.EnvironmentFailed as failure:
        print(failure, file=sys.stderr)
        return FAILURE
    except KeyboardInterrupt:
        print(file=sys.stderr)
        return INTERRUPTED
    except BrokenPipeError:
        # Whoever read the output has gone (a pager that was closed): nothing is wrong.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except OSError as error:
        print(printable(f"{error.filename or 'a file'}: {error.strerror}"), file=sys.stderr)
        return USAGE_ERROR


def end_as_by_ctrl_c() -> None:
    """Put things away as Ctrl-C does when the system says to end, or the terminal is shut.

    A signal that whoever started this wants ignored (``nohup``) stays ignored.
    """
    for name in ("SIGTERM", "SIGHUP"):
        number = getattr(signal, name, None)
        if number is not None and signal.getsignal(number) == signal.SIG_DFL:
            signal.signal(number, signal.default_int_handler)


def read(arguments: Sequence[str]) -> tuple[Command, argparse.Namespace]:
    """The command with its options. Without a name it is ``serve``; what follows ``test`` goes to pytest as it is."""
    words = list(arguments)
    if not words or (words[0].startswith("-") and words[0] not in ("-h", "--help")):
        words.insert(0, "serve")
    name = words[0]
    if name == "test" and words[1:] not in (["-h"], ["--help"]):
        return COMMANDS["test"], argparse.Namespace(pytest_arguments=words[1:])
    if not name.startswith("-") and name not in COMMANDS:
        hint = did_you_mean(name, COMMANDS) or f"the commands are {', '.join(COMMANDS)}"
        raise UsageError(f"there is no command '{name}'\n    {hint}")
    parser = _parser()
    options, rest = parser.parse_known_args(words)
    if name == "compute" and not any(word.startswith("-") for word in rest):
        options.inputs += rest  # inputs may stand after an option as well
    elif rest:
        parser.error(f"unrecognized arguments: {' '.join(rest)}")
    return COMMANDS.get(name, COMMANDS["serve"]), options


def _parser() -> Parser:
    parser = Parser(
        prog=PROGRAM,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        description="Builds the book of standard methods. Without a command it serves the book on this machine, and\n"
        "builds it again whenever a file is saved. The first run makes the environment, .venv.",
        epilog=f"{PROGRAM} COMMAND --help says more of a command.\n{EXIT_CODES}",
    )
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", title="commands", parser_class=Parser)
    for command in COMMANDS.values():
        examples = "\n".join(f"    {PROGRAM} {example}" for example in command.examples)
        below = commands.add_parser(
            command.name,
            help=command.help,
            description=command.description,
            formatter_class=argparse.RawDescriptionHelpFormatter,
            epilog=f"for example:\n{examples}" if examples else None,
        )
        command.add_arguments(below)
    return parser
