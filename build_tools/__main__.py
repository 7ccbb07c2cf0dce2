"""The command line: ``python3 -m build_tools`` builds the book and serves it; ``--help`` lists the other commands."""

import sys

# Before any other import, since an older Python stumbles over the words of the rest.
if sys.version_info < (3, 11):  # noqa: UP036, this is the line that says which version it must be
    sys.stderr.write("The book needs Python 3.11 or later; this is Python {}.{}.\n".format(*sys.version_info[:2]))
    sys.exit(2)

from build_tools.commands.cli import end_as_by_ctrl_c, main

if __name__ == "__main__":
    end_as_by_ctrl_c()
    sys.exit(main(sys.argv[1:]))
